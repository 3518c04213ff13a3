"""Filter the rows of the book by a query; no entry is read for it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from library.book.rows import Rows
from library.book.value_ranges import ranges_of
from library.search.query import Condition, Query, parse
from library.search.ranked import Ranked
from library.search.ranking import ranked
from library.search.sizes import Size
from library.units.system import Display


class Found(NamedTuple):
    """What a text with conditions finds.

    Attributes:
        numbers: of the rows, the likeliest first.
        size: what it says of the tool's size.
        told: sentences about what could not be understood of it; that part is left out.
    """

    numbers: Sequence[int]
    size: Size | None = None
    told: str = ""


def fitting(rows: Rows, query: Query) -> Ranked:
    """The rows that have every word and fit every condition, the likeliest first.

    Args:
        rows: of the book.
        query: what is sought.
    """
    found = ranked(rows, " ".join(query.words))
    for condition in query.conditions:
        fit = _fit(rows, condition)
        found = found._replace(numbers=[number for number in found.numbers if number in fit])
    return found


def by_condition(rows: Rows, text: str, display: Display) -> Found:
    """The rows that fit a text that is being typed, with conditions such as ``rake>8``.

    Args:
        rows: of the book.
        text: as far as it is typed.
        display: the units that a number without one is read in.
    """
    query = parse(text, display, is_typing=True)
    found = fitting(rows, query)
    return Found(
        found.numbers, found.size, " ".join([*query.troubles, *([found.told] if found.told else [])])
    )


def _fit(rows: Rows, condition: Condition) -> set[int]:
    return {
        number
        for key in condition.keys
        for number, told in rows.values_of(key).items()
        if condition.fits(key, ranges_of(told))
    }
