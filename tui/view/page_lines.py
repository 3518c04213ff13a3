"""Render a page of the library as lines of a screen."""

from __future__ import annotations

from collections.abc import Iterable

from rich.cells import cell_len

from library.pages import lines
from library.pages.page import Block, Page
from library.pages.reader import Line as Told
from library.pages.reader import Reader
from library.sanitize import sanitize
from tui.view.lines import EMPTY, Line, Piece


def page_lines(page: Page, width: int) -> list[Line]:
    """A page without its title, which a screen has at its head."""
    return shown(lines.page_lines(page, reader(width)))


def block_lines(blocks: Iterable[Block], width: int) -> list[Line]:
    """Some parts of a page, one under the other."""
    return [one for block in blocks for one in shown(lines.block_lines(block, reader(width)))]


def part_lines(parts: Iterable[Iterable[Block | None]], width: int) -> list[Line]:
    """Parts of a page with an empty line between them; empty parts are left out."""
    lines: list[Line] = []
    for part in parts:
        told = block_lines((block for block in part if block is not None), width)
        lines += ([EMPTY, *told] if lines else told) if told else []
    return lines


def reader(width: int) -> Reader:
    """A screen so many cells wide."""
    return Reader(width, sanitize, cell_len)


def shown(told: Iterable[Told]) -> list[Line]:
    """Lines in the pieces of a screen."""
    return [tuple(Piece(run.text, run.role) for run in one) for one in told]
