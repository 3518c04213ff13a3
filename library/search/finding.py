"""Filter the rows of the book by a query; no entry is read for it."""

from __future__ import annotations

from collections.abc import Iterable

from library.book.rows import Rows
from library.book.value_ranges import ranges_of
from library.search.query import Condition, Query


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


def _fit(rows: Rows, condition: Condition) -> set[int]:
    return {
        number
        for key in condition.keys
        for number, told in rows.values_of(key).items()
        if condition.fits(key, ranges_of(told))
    }
