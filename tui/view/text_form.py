"""The state of a form of labelled text fields, each with what is wrong with it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from tui.view.brought_back import BroughtBack
from tui.view.lines import EMPTY, Line, Piece, cut, fit, line, wrap
from tui.view.text_line import TextLine

LABEL_WIDTH = 16

MOST_LINES = 5
"""Lines of the screen over which a long text in hand is spread."""

GIVES_WAY = (
    "What is typed now takes the place of this line; End goes behind it, and so does a blank or a comma."
)
"""Told beside a fault that is come back to, for most want only a part changed."""


@dataclass(frozen=True)
class Blank:
    """One line to fill in.

    Attributes:
        key: what the form knows it by.
        label: stands before it.
        hint: what belongs there, shown while it is in hand.
        choices: the words to pick from with Left and Right, where there are only these.
        overtype: whether a number or such belongs there, which gives way to the first character typed as in the
            calculator, and no free text.
    """

    key: str
    label: str
    hint: str = ""
    choices: tuple[str, ...] = ()
    overtype: bool = False


class TextForm(BroughtBack):
    """The lines of a form, and which of them is in hand.

    Attributes:
        blanks: the lines.
        started: what stood in each when the person began; for a line that was not touched, what the book has now.
        wrong: what is wrong, by line; an empty key is for the form as a whole.
    """

    LONGEST = 4096
    """As many characters as a text of the book may have."""

    def __init__(self, blanks: tuple[Blank, ...], started: Mapping[str, str]) -> None:
        super().__init__(blanks[0].key, {})
        self.blanks = blanks
        self.wrong: Mapping[str, str] = {}
        self.started: dict[str, str] = {}
        self.start_over(started)

    @property
    def blank(self) -> Blank:
        """The line in hand."""
        return next(one for one in self.blanks if one.key == self.focus)

    def choices(self) -> tuple[str, ...]:
        """The words that the line in hand takes, where it takes only these."""
        return self.blank.choices

    def is_value(self, key: str) -> bool:
        """Whether what stands in the line gives way to typing."""
        return next(one for one in self.blanks if one.key == key).overtype

    def values(self) -> dict[str, str]:
        """What stands in each line now."""
        return {key: text.text for key, text in self.typed.items()}

    def is_changed(self) -> bool:
        """Whether anything is different from what was there at the start."""
        return any(text.strip() != self.started[key].strip() for key, text in self.values().items())

    def start_over(self, now: Mapping[str, str]) -> None:
        """Put into every line what the book has now."""
        self.started = {blank.key: now.get(blank.key, "") for blank in self.blanks}
        self.typed = {key: TextLine.ending(text) for key, text in self.started.items()}
        self.typed_over.clear()
        self.leave()

    def fill(self, texts: Mapping[str, str]) -> None:
        """Put texts into the lines of those keys; nobody typed them, so they give way to typing."""
        for key, text in texts.items():
            if key in self.typed:
                self.typed[key] = TextLine.ending(text)

    def take_up(self, typed: Mapping[str, str], began: Mapping[str, str]) -> None:
        """Put back what was typed earlier, and with it what stood there when the person began.

        A line that he had not touched keeps what the book has now.
        """
        for key in self.typed:
            if key in typed and typed[key] != began.get(key, ""):
                self.typed[key] = TextLine.ending(typed[key])
                self.started[key] = began.get(key, "")

    def follow(self, now: Mapping[str, str]) -> list[str]:
        """Take what the book has now into the lines that nobody touched.

        Returns:
            The labels of the lines that the person and somebody else changed both; these stay as they are.
        """
        both = []
        for blank in self.blanks:
            key, theirs = blank.key, now.get(blank.key, "")
            if self.typed[key].text == self.started[key]:
                if theirs != self.started[key]:
                    self.started[key], self.typed[key] = theirs, TextLine.ending(theirs)
            elif theirs not in (self.started[key], self.typed[key].text):
                both.append(blank.label)
        return both

    def clear(self) -> None:
        """Bring back what was typed over in the line in hand, else empty it, unless one word of a few belongs there."""
        before = self.stood_here
        if not self.blank.choices:
            super().clear()
            self.put(before)
        self.typed_over.pop(self.focus, None)

    def draw(self, width: int) -> list[Line]:
        """The form as lines, the hint of the line in hand and every complaint with it."""
        lines: list[Line] = []
        for blank in self.blanks:
            lines += self._drawn(blank, width, in_hand=blank.key == self.focus)
        if whole := self.wrong.get(""):
            lines += [EMPTY, *wrap(whole, width, "warn", first="! ", rest="  ")]
        return lines

    def _drawn(self, blank: Blank, width: int, *, in_hand: bool) -> list[Line]:
        label = (
            Piece("> " if in_hand else "  ", "strong"),
            Piece(fit(blank.label, LABEL_WIDTH), "strong" if in_hand else "plain"),
            "  ",
        )
        indent = " " * (LABEL_WIDTH + 4)
        first, *rest = self._text(blank, max(width - len(indent), 8), in_hand=in_hand)
        lines = [line(*label, *first), *(line(indent, *one) for one in rest)]
        if blank.key in self.wrong:
            lines += wrap(self.wrong[blank.key], width, "warn", first=f"{indent}! ", rest=f"{indent}  ")
            if in_hand and self.gives_way(blank.key):
                lines += wrap(GIVES_WAY, width, "quiet", first=f"{indent}  ", rest=f"{indent}  ")
        elif in_hand and blank.hint:
            lines += wrap(blank.hint, width, "quiet", first=indent, rest=indent)
        return lines

    def _text(self, blank: Blank, room: int, *, in_hand: bool) -> list[Line]:
        """What stands in a line; a long text in hand is spread over several."""
        text = self.typed[blank.key]
        if not in_hand:
            return [line(Piece(fit(text.text, room), "typed"))]
        if blank.choices:
            return [line(Piece(fit(text.text, room), "chosen"))]
        text = self.drawn
        if len(text.text) < room:
            return [text.pieces(room)]
        return _spread(text, room)


def _spread(text: TextLine, room: int) -> list[Line]:
    """A text over several lines of the screen, of which those around the cursor are shown."""
    rows: list[Line] = []
    start = in_hand = 0
    parts = cut(text.text, room - 1)
    for part in parts:
        is_last = start + len(part) == len(text.text)
        cursor = text.cursor - start
        if 0 <= cursor < len(part) or (is_last and cursor == len(part)):
            in_hand = len(rows)
            rows.append(TextLine(part, cursor).pieces(max(len(part), cursor + 1)))
        else:
            rows.append(line(Piece(part, "typed")))
        start += len(part)
    first = max(0, min(in_hand - MOST_LINES + 2, len(rows) - MOST_LINES))
    return rows[first : first + MOST_LINES]
