"""A setup sheet as Markdown; whatever a card holds is text there and never markup."""

from __future__ import annotations

import re
from collections.abc import Sequence

from library.book.harmless import harmless
from library.setup_sheet.page import (
    Block,
    Boxes,
    Cautions,
    Checks,
    Drawing,
    Facts,
    Items,
    Page,
    Said,
    Table,
)

_SPECIAL = re.compile(r"([\\`*_{}\[\]<>#|~&!])")
_LINE_START = re.compile(r"^([0-9]*)([-+=.)])(?=\s|$)")


def plain(text: str) -> str:
    r"""Text in which no character is markup.

    Example:
        >>> plain("a|b *c* <d> [e](f)")
        'a\\|b \\*c\\* \\<d\\> \\[e\\](f)'
    """
    escaped = _SPECIAL.sub(r"\\\1", " ".join(harmless(text).split()))
    return _LINE_START.sub(r"\1\\\2", escaped)


def as_markdown(page: Page) -> str:
    """The page as Markdown."""
    parts = [f"# {plain(page.title)}"]
    for section in page.sections:
        if section.heading:
            parts.append(f"## {plain(section.heading)}")
        parts += [text for block in section.blocks if (text := _block(block))]
    return "\n\n".join(parts) + "\n"


def _block(block: Block) -> str:
    text = ""
    match block:
        case Facts():
            text = "\n".join(f"- {plain(title)}: {plain(fact)}" for title, fact in block.pairs)
        case Said():
            text = "\n\n".join(map(plain, block.texts))
        case Items():
            text = _items(block)
        case Table():
            text = _table(block.heading, block.rows)
        case Checks():
            text = "\n".join(f"- {_verdict(state)}{plain(said)}" for state, said in block.checks)
        case Boxes():
            text = _boxes(block)
        case Cautions():
            told = "\n".join(f"- **{plain(one.title)}**: {plain(one.sentence)}" for one in block.cautions)
            text = f"{told}\n\n**{plain(block.last)}**".strip()
        case Drawing():
            pass
    return text


def _verdict(state: str) -> str:
    """The word before a sentence that tested something; a note carries none."""
    return "" if state == "note" else f"**{plain(state.upper())}** "


def _items(block: Items) -> str:
    lines = []
    for number, item in enumerate(block.items, 1):
        more = f" ({plain(item.more)})" if item.more else ""
        lines.append(f"{number}. {plain(item.title)}: **{plain(item.value)}**{more}")
    return "\n".join(lines)


def _table(heading: Sequence[str], rows: Sequence[Sequence[str]]) -> str:
    lines = [_row(heading), "|" + "|".join([" --- ", *[" ---: "] * (len(heading) - 1)]) + "|"]
    return "\n".join([*lines, *map(_row, rows)])


def _row(cells: Sequence[str]) -> str:
    return "| " + " | ".join(plain(cell) or " " for cell in cells) + " |"


def _boxes(block: Boxes) -> str:
    most = max((len(row.boxes) for row in block.rows), default=0)
    heading = ("", "wanted", *(str(number) for number in range(1, most + 1)))
    rows = [(row.title, row.wanted, *row.boxes, *[""] * (most - len(row.boxes))) for row in block.rows]
    return _table(heading, rows)
