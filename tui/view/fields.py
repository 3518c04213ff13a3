"""What calculator, forms of the book and job card have in common: fields of which one is in hand and is typed into."""

from __future__ import annotations

from collections.abc import Sequence

from tui.view import choice_words
from tui.view.text_line import EDITING, LONGEST, TextLine

_STEPS = {"left": -1, "right": 1}


class Fields:
    """Fields that are filled in; a form says which there are, what may stand in them and where their texts go.

    Attributes:
        typed: the texts of the fields.
        untouched: the keys of fields whose text gives way to the first character typed.
        begun: what was typed of a choice of the field in hand, in small letters.
    """

    LONGEST = LONGEST
    """Characters that a field takes."""

    def __init__(self, focus: str, typed: dict[str, TextLine]) -> None:
        self._focus = focus
        self.begun = ""
        self.typed = typed
        self.untouched: set[str] = set()

    @property
    def focus(self) -> str:
        """The key of the field in hand."""
        return self._focus

    @focus.setter
    def focus(self, key: str) -> None:
        if key != self._focus:
            self.begun = ""
        self._focus = key

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
        return self.LONGEST - (0 if self.gives_way(self.focus) else len(self.in_hand.text))

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
        return key in self.untouched and self.line(key).text != ""

    def brings(self, step: int) -> bool:
        """Let an arrow bring something into the field in hand, rather than move in it; say whether it did."""
        return False

    def type(self, text: str) -> None:
        """Type into the field in hand; a field of choices takes the one that begins with what is typed, else has it."""
        choices = self.choices()
        if not choices:
            old = TextLine() if self.gives_way(self.focus) else self.in_hand
            self._put(old.insert(text, self.LONGEST))
            return
        self._seek((self.begun + text.casefold()).lstrip())

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
            self._put(self.in_hand.edited(key))

    def turn(self, texts: Sequence[str], step: int) -> None:
        """Bring the next of some texts into the field in hand, round the ends."""
        now = self.chosen()
        at = texts.index(now) if now in texts else -max(step, 0)
        self.put(texts[(at + step) % len(texts)])

    def put(self, text: str) -> None:
        """Let a whole text stand in the field in hand, the cursor behind it."""
        self._put(TextLine.ending(text))

    def clear(self) -> None:
        """Empty the field in hand."""
        self._put(TextLine())

    def move(self, by: int) -> None:
        """Go to another field, round the ends."""
        keys = self.keys()
        self.focus = keys[(keys.index(self.focus) + by) % len(keys)]

    def _put(self, line: TextLine) -> None:
        self.keep(line)
        self.untouched.discard(self.focus)
