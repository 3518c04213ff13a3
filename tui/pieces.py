"""The stuff of styled lines: a piece of text in a role, and a line of pieces."""

from __future__ import annotations

from typing import Literal, NamedTuple

Role = Literal[
    "plain",
    "quiet",
    "strong",
    "head",
    "chosen",
    "cursor",
    "typed",
    "pass",
    "watch",
    "stop",
    "warn",
    "rule",
    "key",
]
"""What a piece of text is to the reader; ``tui.theme`` decides how a terminal shows it."""


class Piece(NamedTuple):
    """Some text in one role."""

    text: str
    role: Role = "plain"


Line = tuple[Piece, ...]
"""One line of a screen, from its left edge."""


def text_of(one: Line) -> str:
    """The words of a line without their roles."""
    return "".join(piece.text for piece in one)
