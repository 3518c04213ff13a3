"""What calculator, forms of the book and job card have in common: fields of which one is in hand and is typed into."""

from __future__ import annotations

import re
from collections.abc import Sequence

from tui.view import choice_words
from tui.view.text_line import EDITING, LONGEST, TextLine

_STEPS = {"left": -1, "right": 1}

GOES_ON = (",", ";")
"""What is typed to go on with a list; no value begins so."""

_A_UNIT_BEHIND = re.compile(r" +[^0-9.+-]*")
"""A blank goes on too, with the unit that is wanted yet; a number that is pasted with a blank before it does not."""


class Fields:
    """Fields that are filled in; a form says which there are, what may stand in them and where their texts go.

    What stands in a field gives way to the first character typed, whoever gave it: what was carried there, was filled in,
    or was typed earlier and come back to. Only what is being typed there now is added to; Left, Right, End or Home takes
    what stands there in hand, to change a part of it, and a comma or a blank goes on with it. Free text is always added to.

    Attributes:
        typed: the texts of the fields.
        begun: what was typed of a choice of the field in hand, in small letters.
    """

    LONGEST = LONGEST
    """Characters that a field takes."""

    def __init__(self, focus: str, typed: dict[str, TextLine]) -> None:
        self._focus = focus
        self.begun = ""
        self.typed = typed
        self._typing: tuple[str, str] | None = None

    @property
    def focus(self) -> str:
        """The key of the field in hand."""
        return self._focus

    @focus.setter
    def focus(self, key: str) -> None:
        if key != self._focus:
            self.leave()
        self._focus = key

    def leave(self) -> None:
        """End the typing in the field in hand: whoever comes back to it types over it."""
        self.begun = ""
        self._typing = None

    def keys(self) -> list[str]:
        """The fields, in their order."""
        return [*self.typed]

    def slot(self, key: str) -> str:
        """Under which key the text of a field is kept."""
        return key

    def line(self, key: str) -> TextLine:
        """What was typed into a field."""
        return self.typed.get(self.slot(key), TextLine())

    @property
    def in_hand(self) -> TextLine:
        """What was typed into the field in hand."""
        return self.line(self.focus)

    @property
    def room(self) -> int:
        """Characters that the field in hand still takes."""
        return self.LONGEST - len("" if self.gives_way(self.focus) else self.in_hand.text)

    def keep(self, line: TextLine) -> None:
        """Keep what was typed into the field in hand."""
        self.typed[self.slot(self.focus)] = line

    def choices(self) -> tuple[str, ...]:
        """The words that the field in hand takes, where it takes only these."""
        return ()

    def chosen(self) -> str:
        """What the field in hand holds, out of its choices or of what an arrow brings."""
        return self.in_hand.text

    def words(self, choice: str) -> str:
        """How a choice of the field in hand is shown."""
        return choice

    def gives_way(self, key: str) -> bool:
        """Whether what stands in a field gives way to the first character typed."""
        text = self.line(key).text
        return text != "" and self.is_value(key) and self._typing != (key, text)

    def is_value(self, key: str) -> bool:
        """Whether a number, a size or such belongs into a field, and no free text."""
        return True

    @property
    def drawn(self) -> TextLine:
        """What stands in the field in hand, with the cursor where typing begins."""
        return TextLine(self.in_hand.text) if self.gives_way(self.focus) else self.in_hand

    def brings(self, step: int) -> bool:
        """Let an arrow bring something into the field in hand, rather than move in it; say whether it did."""
        return False

    def type(self, text: str) -> None:
        """Type into the field in hand; a field of choices takes the one that begins with what is typed, else has it."""
        choices = self.choices()
        if not choices:
            old = self.in_hand
            if self.gives_way(self.focus):
                self.gave_way(old.text)
                goes_on = text.startswith(GOES_ON) or _A_UNIT_BEHIND.fullmatch(text)
                old = TextLine.ending(old.text) if goes_on else TextLine()
            self._put(old.insert(text, self.LONGEST))
            self._typing = (self.focus, self.in_hand.text)
            return
        self._seek((self.begun + text.casefold()).lstrip())

    def gave_way(self, text: str) -> None:
        """Know what gave way to typing in the field in hand; most forms have no use for it."""

    @property
    def strange(self) -> str:
        """What was typed into a field of choices, where none of them is meant by it; else nothing."""
        return "" if not self.choices() or self._meant(self.begun) else self.begun

    @property
    def told_of_choices(self) -> str:
        """What is said of what was typed into a field of choices, where it does not say which one; else nothing."""
        return choice_words.told([self.words(one) for one in self.choices() if one], self.begun)

    def _meant(self, text: str) -> list[str]:
        """The choices that begin with what was typed, or else those that have it in them."""
        shown = {one: self.words(one) for one in self.choices() if one}
        spoken = [*shown.values()]
        found = choice_words.beginning(spoken, text) or choice_words.having(spoken, text)
        return [one for one, words in shown.items() if words in found]

    def _seek(self, begun: str) -> None:
        """Take the choice that begins so; a letter typed again takes the next one that begins with it."""
        if begun.strip(begun[:1]) == "" and not self._meant(begun):
            begun = begun[:1]
        is_more = len(begun) > 1
        found = self._meant(begun) if begun else []
        if found and not (is_more and self.chosen() in found):
            self.turn(found[:1] if is_more else found, 1)
        self.begun = begun

    def edit(self, key: str) -> None:
        """Apply an editing key to the field in hand; no other key does anything."""
        step = _STEPS.get(key, 0)
        if choices := self.choices():
            if key == "backspace" and len(self.begun) > 1:
                self._seek(self.begun[:-1])
                return
            self.begun = ""
            if step:
                self.turn(choices, step)
            elif key in {"backspace", "delete"}:
                self.clear()
        elif key in EDITING and not (step and self.brings(step)):
            self._put(self._taken_in_hand(key))
            self._typing = (self.focus, self.in_hand.text)

    def _taken_in_hand(self, key: str) -> TextLine:
        """The field in hand after an editing key; an arrow first goes behind what would give way."""
        if not self.gives_way(self.focus):
            return self.in_hand.edited(key)
        text = self.in_hand.text
        if key in _STEPS:
            return TextLine.ending(text)
        return (TextLine(text) if key == "delete" else TextLine.ending(text)).edited(key)

    def turn(self, texts: Sequence[str], step: int) -> None:
        """Bring the next of some texts into the field in hand, round the ends."""
        now = self.chosen()
        at = texts.index(now) if now in texts else -max(step, 0)
        self.put(texts[(at + step) % len(texts)])

    def put(self, text: str) -> None:
        """Let a whole text stand in the field in hand, the cursor behind it."""
        self._put(TextLine.ending(text))

    def take_in_hand(self, text: str) -> None:
        """Put a whole text into the field in hand, so that a part of it can be changed."""
        self.put(text)
        self._typing = (self.focus, self.in_hand.text)

    def clear(self) -> None:
        """Empty the field in hand."""
        self._put(TextLine())

    def move(self, by: int) -> None:
        """Go to another field, stopping at the ends as in every list."""
        keys = self.keys()
        self.leave()
        self.focus = keys[max(0, min(keys.index(self.focus) + by, len(keys) - 1))]

    def go_round(self) -> None:
        """Go to the next field, and from the last one to the first."""
        keys = self.keys()
        self.leave()
        self.focus = keys[(keys.index(self.focus) + 1) % len(keys)]

    def _put(self, line: TextLine) -> None:
        self.keep(line)
