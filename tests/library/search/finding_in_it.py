"""The shipped book as the tests of finding ask it, and small ones made of titles."""

from __future__ import annotations

from functools import cache

from library.book.model import Book
from library.book.opening import open_book
from library.book.rows import Row, Rows
from library.book.search_text import search_text
from library.search.ranking import ranked


@cache
def the_book() -> Book:
    return open_book()


@cache
def shipped() -> Rows:
    rows = the_book().rows
    assert isinstance(rows, Rows)
    return rows


def found(text: str) -> list[Row]:
    return [shipped()[number] for number in ranked(shipped(), text).numbers]


def made(*titles: str) -> Rows:
    return Rows.of(
        Row("entry", f"e{n}", title, search=search_text([title])) for n, title in enumerate(titles)
    )
