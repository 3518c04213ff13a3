"""Filter the rows of the book by a query; no entry is read for it."""

from __future__ import annotations

from library.book.rows import Rows
from library.book.value_ranges import ranges_of
from library.search.leaving_out import found_without
from library.search.query import Condition, Query, parse
from library.search.ranked import Ranked
from library.search.ranking import ranked
from library.units.system import Display


def fitting(rows: Rows, query: Query) -> Ranked:
    """The rows that have every word and fit every condition, the likeliest first.

    Args:
        rows: of the book.
        query: what is sought.
    """
    text = " ".join(query.words)
    found = found_without(rows, text, ranked(rows, text))
    for condition in query.conditions:
        fit = _fit(rows, condition)
        found = found._replace(numbers=[number for number in found.numbers if number in fit])
    return found


def by_condition(rows: Rows, text: str, display: Display) -> Ranked:
    """The rows that fit a text that is being typed, with conditions such as ``rake>8``.

    Args:
        rows: of the book.
        text: as far as it is typed.
        display: the units that a number without one is read in.
    """
    query = parse(text, display, is_typing=True)
    # Behind a sign a number is still to come: on the find line that is no mistake yet.
    is_begun = query.unfinished.rstrip().endswith(("<", ">", "="))
    return fitting(rows, query)._replace(troubles=query.troubles if is_begun else query.told)


def _fit(rows: Rows, condition: Condition) -> set[int]:
    return {
        number
        for key in condition.keys
        for number, told in rows.values_of(key).items()
        if condition.fits(key, ranges_of(told))
    }
