"""The theme: the style of each role of a text, in the sixteen colours of the terminal or in none."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Literal

from rich.style import Style

from tui.view.lines import Role

_WITHOUT_COLOUR: dict[Role, Style] = {
    "plain": Style(),
    "quiet": Style(dim=True),
    "strong": Style(bold=True),
    "head": Style(bold=True),
    "chosen": Style(reverse=True),
    "cursor": Style(reverse=True),
    "typed": Style(bold=True),
    "pass": Style(bold=True),
    "watch": Style(bold=True, reverse=True),
    "stop": Style(bold=True, reverse=True),
    "warn": Style(bold=True),
    "rule": Style(dim=True),
    "key": Style(bold=True),
}

_COLOURS: dict[Role, Style] = {
    "pass": Style(color="black", bgcolor="bright_green", bold=True),
    "stop": Style(color="bright_white", bgcolor="red", bold=True),
}
"""Each with its own ground, so that it reads on a black terminal and on a white one."""


Drawing = Literal["braille", "blocks", "ascii"]


@dataclass(frozen=True)
class Theme:
    """The style of each role, and whether only ASCII may be sent.

    Attributes:
        styles: by role; no meaning rests on them, for every state is also a word or a mark.
        ascii: true where every cell must hold an ASCII character.
        drawing: the characters of drawings, by the name of an alphabet of ``tui.figure``.
    """

    styles: dict[Role, Style]
    ascii: bool = False
    drawing: Drawing = "braille"


@cache
def theme(*, colour: bool = True, ascii_only: bool = False, drawing: Drawing = "braille") -> Theme:
    """The theme for a terminal with or without colour, with or without Unicode.

    Args:
        colour: whether colour may be sent.
        ascii_only: whether only ASCII may be sent; drawings are then of ASCII too.
        drawing: the characters of drawings.
    """
    styles = _WITHOUT_COLOUR | (_COLOURS if colour else {})
    return Theme(styles, ascii_only, "ascii" if ascii_only else drawing)
