"""A page as plain text, for paper and for what a command prints."""

from __future__ import annotations

from library.pages.lines import page_lines
from library.pages.page import Page
from library.pages.reader import Reader, text_of
from library.pages.texts import in_ascii

PAPER = Reader(80, in_ascii)
"""Eighty columns, ASCII only, so that any printer prints it."""


def as_text(page: Page, reader: Reader = PAPER) -> str:
    r"""The page as text, its title first.

    Example:
        >>> as_text(Page("Tap", dense=True))
        'Tap\n===\n'
    """
    title = [text_of(one) for one in reader.lines(page.title)]
    under = "=" * min(reader.width, reader.measure(" ".join(title))) if page.dense else ""
    lines = [*title, under, *map(text_of, page_lines(page, reader))]
    return "\n".join(line.rstrip() for line in lines) + "\n"
