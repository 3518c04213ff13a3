"""A page as Markdown; whatever a card or a book holds is text there and never markup."""

from __future__ import annotations

import re
from collections.abc import Sequence

from library.pages import page as blocks
from library.pages.page import Block, Page
from library.sanitize import sanitize

_SPECIAL = re.compile(r"([\\`*_{}\[\]<>#|~&!])")
_LINE_START = re.compile(r"^([0-9]*)([-+=.)])(?=\s|$)")

RULE = "______________"
"""A line to write on."""


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
    parts = [*filter(None, map(_block, page.before)), f"# {plain(page.title)}"]
    parts += [plain(page.aside)] if page.aside else []
    for section in page.sections:
        if section.heading:
            parts.append(f"{'###' if section.part else '##'} {plain(section.heading)}")
        parts += [text for block in section.blocks if (text := _block(block))]
    return "\n\n".join(parts) + "\n"


def _block(block: Block) -> str:
    text = ""
    match block:
        case blocks.Facts():
            text = "\n".join(f"- {plain(title)}: {plain(fact)}" for title, fact in block.pairs)
        case blocks.Said():
            mark = "**" if block.role in {"strong", "stop"} else ""
            text = "\n\n".join(
                f"{mark}{plain(part)}{mark}" for one in block.texts for part in one.splitlines()
            )
        case blocks.Values():
            text = _values(block)
        case blocks.Items():
            text = _items(block)
        case blocks.Table() | blocks.SideBySide() | blocks.Boxes():
            text = _table(block.with_boxes("") if isinstance(block, blocks.Table) else block.table())
        case blocks.ToWrite():
            text = "\n".join(f"- {plain(word)}: {plain(told) or RULE}" for word, told in block.pairs)
        case blocks.Checks():
            text = "\n".join(f"- {_verdict(state)}{plain(said)}" for state, said in block.checks)
        case blocks.Cautions():
            text = _cautions(block)
        case blocks.CautionWords() | blocks.Labelled():
            text = "\n\n".join(
                f"**{plain(label)}** {plain(part)}"
                for label, told in block.parts
                for part in told.splitlines()
            )
        case blocks.Words():
            text = "\n".join(
                f"- **{plain(one.title)}** {plain(one.more)}\n  {plain(' '.join(one.texts))}"
                for one in block.words
            )
        case blocks.Sources():
            text = plain(block.told())
        case blocks.Drawing():
            pass
    return text


def _verdict(state: str) -> str:
    """The word before a sentence that tested something; a note carries none."""
    return "" if state == "note" else f"**{plain(state.upper())}** "


def _values(block: blocks.Values) -> str:
    lines = []
    for one in block.values:
        lines.append(f"- {plain(one.title)}: **{plain(one.value)}** {plain(one.beside)}".rstrip())
        lines += [f"  - {plain(text)}" for text in one.below]
    return "\n".join(lines)


def _cautions(block: blocks.Cautions) -> str:
    return "\n".join(f"- **{plain(one.title)}**: {plain(one.told)}" for one in block.cautions)


def _items(block: blocks.Items) -> str:
    lines = []
    for number, item in enumerate(block.items, 1):
        more = f" ({plain(item.beside)})" if item.beside else ""
        lines.append(f"{number}. [ ] {plain(item.title)}: **{plain(item.value)}**{more}")
    return "\n".join(lines)


def _table(table: blocks.Table) -> str:
    lines = [_row(table.heading), "|" + "|".join([" --- ", *[" ---: "] * (len(table.heading) - 1)]) + "|"]
    return "\n".join([*lines, *(_row((*row, *[""] * (len(table.heading) - len(row)))) for row in table.rows)])


def _row(cells: Sequence[str]) -> str:
    return "| " + " | ".join(plain(cell) or " " for cell in cells) + " |"
