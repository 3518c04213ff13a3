"""The state of a one-line text field: text and cursor."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from library.sanitize import MARK, sanitize
from tui.view.lines import Line, Piece, Role

LONGEST = 200
"""Characters that a line takes; far above any number or search, and a bound for what a paste can bring."""


@dataclass(frozen=True)
class TextLine:
    """A text and the place in it where the next character goes; each edit gives a new one.

    Example:
        >>> TextLine("3.2", 3).insert(" mm").left().erase_back()
        TextLine(text='3.2 m', cursor=4)
    """

    text: str = ""
    cursor: int = 0

    @classmethod
    def ending(cls, text: str) -> TextLine:
        """The text with the cursor after it."""
        return cls(text, len(text))

    def insert(self, typed: str, longest: int = LONGEST) -> TextLine:
        """With ``typed`` at the cursor; characters that cannot be shown, or are too many, are left out."""
        clean = sanitize(typed).replace(MARK, "")[: max(longest - len(self.text), 0)]
        return TextLine(self.text[: self.cursor] + clean + self.text[self.cursor :], self.cursor + len(clean))

    @property
    def room(self) -> int:
        """Characters that it still takes."""
        return LONGEST - len(self.text)

    def erase_back(self) -> TextLine:
        """Without the character before the cursor."""
        start = max(self.cursor - 1, 0)
        return TextLine(self.text[:start] + self.text[self.cursor :], start)

    def erase_forward(self) -> TextLine:
        """Without the character under the cursor."""
        return TextLine(self.text[: self.cursor] + self.text[self.cursor + 1 :], self.cursor)

    def left(self) -> TextLine:
        """With the cursor one character to the left."""
        return TextLine(self.text, max(self.cursor - 1, 0))

    def right(self) -> TextLine:
        """With the cursor one character to the right."""
        return TextLine(self.text, min(self.cursor + 1, len(self.text)))

    def edited(self, key: str) -> TextLine:
        """After a key that edits; unchanged for any other key."""
        edit = _EDITS.get(key)
        return edit(self) if edit is not None else self

    def pieces(self, width: int, role: Role = "typed") -> Line:
        """The text with its cursor, ``width`` cells of it, scrolled so that the cursor is seen; a mark where it is cut."""
        start = max(0, self.cursor - width + 1)
        before = self.text[start : self.cursor]
        if start and before:
            before = f"…{before[1:]}"
        under = self.text[self.cursor : self.cursor + 1] or " "
        after = self.text[self.cursor + 1 : start + width]
        padding = " " * (width - len(before) - 1 - len(after))
        return tuple(
            piece
            for piece in (Piece(before, role), Piece(under, "cursor"), Piece(after + padding, role))
            if piece.text
        )


_EDITS: Mapping[str, Callable[[TextLine], TextLine]] = {
    "backspace": TextLine.erase_back,
    "delete": TextLine.erase_forward,
    "left": TextLine.left,
    "right": TextLine.right,
    "home": lambda line: TextLine(line.text, 0),
    "end": lambda line: TextLine.ending(line.text),
}
"""What each editing key does."""

EDITING = frozenset(_EDITS)
"""The keys that edit a line."""
