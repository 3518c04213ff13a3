"""A form of labelled lines of text, each with what is wrong with it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from tui.view.lines import EMPTY, Line, Piece, fit, line, wrap
from tui.view.text_line import TextLine

LABEL_WIDTH = 16


@dataclass(frozen=True)
class Blank:
    """One line to fill in.

    Attributes:
        key: what the form knows it by.
        label: stands before it.
        hint: what belongs there, shown while it is in hand.
        choices: the words to pick from with Left and Right, where there are only these.
        overtype: whether what stood there at the start gives way to the first character typed.
    """

    key: str
    label: str
    hint: str = ""
    choices: tuple[str, ...] = ()
    overtype: bool = False


class TextForm:
    """The lines of a form, and which of them is in hand.

    Attributes:
        blanks: the lines.
        texts: what stands in each.
        started: what stood in each when the form was opened.
        focus: the place of the line in hand.
        wrong: what is wrong, by line; an empty key is for the form as a whole.
    """

    def __init__(self, blanks: tuple[Blank, ...], started: Mapping[str, str]) -> None:
        self.blanks = blanks
        self.started = {blank.key: started.get(blank.key, "") for blank in blanks}
        self.texts = {key: TextLine.ending(text) for key, text in self.started.items()}
        self.focus = 0
        self.wrong: Mapping[str, str] = {}
        self._touched: set[str] = set()

    @property
    def blank(self) -> Blank:
        """The line in hand."""
        return self.blanks[self.focus]

    def values(self) -> dict[str, str]:
        """What stands in each line now."""
        return {key: text.text for key, text in self.texts.items()}

    def is_changed(self) -> bool:
        """Whether anything is different from what was there at the start."""
        return {key: text.strip() for key, text in self.values().items()} != {
            key: text.strip() for key, text in self.started.items()
        }

    def fill(self, texts: Mapping[str, str]) -> None:
        """Put texts into the lines of those keys, as if they were typed."""
        for key, text in texts.items():
            if key in self.texts:
                self.texts[key] = TextLine.ending(text)

    def move(self, by: int) -> None:
        """Go to another line, round the ends."""
        self.focus = (self.focus + by) % len(self.blanks)

    def type(self, text: str) -> None:
        """Type into the line in hand; a line of choices takes the one that begins so."""
        blank = self.blank
        if blank.choices:
            begun = [choice for choice in blank.choices if choice.startswith(text[:1].casefold())]
            if begun:
                self.texts[blank.key] = TextLine.ending(begun[0])
            return
        untouched = blank.overtype and blank.key not in self._touched
        old = TextLine() if untouched else self.texts[blank.key]
        self._touched.add(blank.key)
        self.texts[blank.key] = old.insert(text)

    def edit(self, key: str) -> None:
        """Apply an editing key to the line in hand."""
        blank = self.blank
        self._touched.add(blank.key)
        step = {"left": -1, "right": 1}.get(key)
        if blank.choices and step is not None:
            now = self.texts[blank.key].text
            at = blank.choices.index(now) if now in blank.choices else -max(step, 0)
            self.texts[blank.key] = TextLine.ending(blank.choices[(at + step) % len(blank.choices)])
        else:
            self.texts[blank.key] = self.texts[blank.key].edited(key)

    def clear(self) -> None:
        """Empty the line in hand."""
        self.texts[self.blank.key] = TextLine()

    def draw(self, width: int) -> list[Line]:
        """The form as lines, the hint of the line in hand and every complaint with it."""
        lines: list[Line] = []
        for place, blank in enumerate(self.blanks):
            lines += self._drawn(blank, width, in_hand=place == self.focus)
        if whole := self.wrong.get(""):
            lines += [EMPTY, *wrap(whole, width, "watch", first="! ", rest="  ")]
        return lines

    def _drawn(self, blank: Blank, width: int, *, in_hand: bool) -> list[Line]:
        text = self.texts[blank.key]
        room = max(width - LABEL_WIDTH - 4, 8)
        shown = text.pieces(room) if in_hand else line(Piece(fit(text.text, room), "typed"))
        first = line(
            Piece("> " if in_hand else "  ", "strong"),
            Piece(fit(blank.label, LABEL_WIDTH), "strong" if in_hand else "plain"),
            "  ",
            *shown,
        )
        lines = [first]
        indent = " " * (LABEL_WIDTH + 4)
        if blank.key in self.wrong:
            lines += wrap(self.wrong[blank.key], width, "watch", first=f"{indent}! ", rest=f"{indent}  ")
        elif in_hand and blank.hint:
            lines += wrap(blank.hint, width, "quiet", first=indent, rest=indent)
        return lines
