"""Filter the list of the book by a query, such as words or ``rake>8``."""

from __future__ import annotations

from library.book.rows import Rows
from library.search.finding import fitting
from library.search.query import parse
from library.units.system import Display
from tui.view.book_page import Found


def by_condition(rows: Rows, text: str, display: Display) -> Found:
    """The rows that fit a text with conditions.

    Args:
        rows: all there are.
        text: as it is being typed.
        display: the units that a number without one is read in.
    """
    query = parse(text, display, is_typing=True)
    return Found(fitting(rows, query), " ".join(query.words), " ".join(query.troubles))
