"""A page as Markdown; whatever a card or a book holds is text there and never markup."""

from __future__ import annotations

import re
from collections.abc import Sequence

from library.pages.page import (
    Block,
    Boxes,
    Cautions,
    Checks,
    Drawing,
    Facts,
    Items,
    Page,
    Said,
    SideBySide,
    Sources,
    Table,
    Values,
    Words,
)
from library.pages.short import first_sentence
from library.sanitize import sanitize

_SPECIAL = re.compile(r"([\\`*_{}\[\]<>#|~&!])")
_LINE_START = re.compile(r"^([0-9]*)([-+=.)])(?=\s|$)")


def plain(text: str) -> str:
    r"""Text in which no character is markup.

    Example:
        >>> plain("a|b *c* <d> [e](f)")
        'a\\|b \\*c\\* \\<d\\> \\[e\\](f)'
    """
    escaped = _SPECIAL.sub(r"\\\1", " ".join(sanitize(text).split()))
    return _LINE_START.sub(r"\1\\\2", escaped)


def as_markdown(page: Page) -> str:
    """The page as Markdown."""
    parts = [f"# {plain(page.title)}"]
    for section in page.sections:
        if section.heading:
            parts.append(f"{'###' if section.part else '##'} {plain(section.heading)}")
        parts += [text for block in section.blocks if (text := _block(block))]
    return "\n\n".join(parts) + "\n"


def _block(block: Block) -> str:
    text = ""
    match block:
        case Facts():
            text = "\n".join(f"- {plain(title)}: {plain(fact)}" for title, fact in block.pairs)
        case Said():
            text = "\n\n".join(plain(part) for one in block.texts for part in one.splitlines())
        case Values():
            text = _values(block)
        case Items():
            text = _items(block)
        case Table():
            text = _table(block.heading, block.rows)
        case SideBySide():
            text = _table(block.table().heading, block.table().rows)
        case Checks():
            text = "\n".join(f"- {_verdict(state)}{plain(said)}" for state, said in block.checks)
        case Boxes():
            text = _boxes(block)
        case Cautions():
            text = _cautions(block)
        case Words():
            text = "\n".join(
                f"- **{plain(one.title)}** {plain(one.more)}\n  {plain(' '.join(one.texts))}"
                for one in block.words
            )
        case Sources():
            text = plain("; ".join(f"[{mark}] {source}" for mark, source in block.marks.items()))
        case Drawing():
            pass
    return text


def _verdict(state: str) -> str:
    """The word before a sentence that tested something; a note carries none."""
    return "" if state == "note" else f"**{plain(state.upper())}** "


def _values(block: Values) -> str:
    lines = []
    for one in block.values:
        lines.append(f"- {plain(one.title)}: **{plain(one.value)}** {plain(one.beside)}".rstrip())
        lines += [f"  - {plain(text)}" for text in one.below]
    return "\n".join(lines)


def _cautions(block: Cautions) -> str:
    lines = []
    for one in block.cautions:
        said = one.text if block.full else first_sentence(one.text)
        lines.append(
            f"- **{plain(one.title)}**: {plain(said)}{plain(f' [{one.source}]') if block.full and one.source else ''}"
        )
    last = f"**{plain(block.last)}**" if block.last else ""
    return "\n\n".join(part for part in ("\n".join(lines), last) if part)


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
