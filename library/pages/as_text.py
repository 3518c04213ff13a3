"""A page as plain text, for paper and for what a command prints."""

from __future__ import annotations

from dataclasses import replace

from library.pages.lines import block_lines, page_lines
from library.pages.page import Page
from library.pages.reader import Reader, text_of
from library.pages.texts import in_ascii

PAPER = Reader(80, in_ascii)
"""Eighty columns, ASCII only, so that any printer prints it."""


def as_text(page: Page, reader: Reader = PAPER) -> str:
    r"""The page as text: what stands before everything, the title, the rest.

    Example:
        >>> as_text(Page("Tap", dense=True))
        'Tap\n===\n'
    """
    title = [text_of(one) for one in reader.lines(page.title)]
    under = ["=" * min(reader.width, reader.measure(" ".join(title))) if page.dense else ""]
    above = [text_of(one) for block in page.before for one in block_lines(block, reader)]
    told = page_lines(replace(page, before=()), reader)
    lines = [*above, *title, *([] if page.close else under), *map(text_of, told)]
    return "\n".join(line.rstrip() for line in lines) + "\n"
