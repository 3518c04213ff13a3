"""Filter the rows of the book by a query; no entry is read for it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from library.book.rows import Rows
from library.book.value_ranges import ranges_of
from library.search.query import Condition, Query, parse
from library.units.system import Display


class Found(NamedTuple):
    """What a text with conditions finds.

    Attributes:
        numbers: of the rows.
        words: what it holds besides conditions.
        told: sentences about what could not be understood of it; that part is left out.
    """

    numbers: Sequence[int]
    words: str = ""
    told: str = ""


def fitting(rows: Rows, query: Query, among: Iterable[int] | None = None) -> list[int]:
    """The numbers of the rows that have every word and fit every condition, in the order of the list.

    Args:
        rows: of the book.
        query: what is sought.
        among: where it is known that only these can match.
    """
    found = rows.matching(" ".join(query.words), among)
    for condition in query.conditions:
        fit = _fit(rows, condition)
        found = [number for number in found if number in fit]
    return found


def by_condition(rows: Rows, text: str, display: Display) -> Found:
    """The rows that fit a text that is being typed, with conditions such as ``rake>8``.

    Args:
        rows: of the book.
        text: as far as it is typed.
        display: the units that a number without one is read in.
    """
    query = parse(text, display, is_typing=True)
    return Found(fitting(rows, query), " ".join(query.words), " ".join(query.troubles))


def _fit(rows: Rows, condition: Condition) -> set[int]:
    return {
        number
        for key in condition.keys
        for number, told in rows.values_of(key).items()
        if condition.fits(key, ranges_of(told))
    }
