"""A calculation being filled in: which field is in hand, what was typed, and the answer so far."""

from __future__ import annotations

import re
from collections.abc import Callable

from geometry.calculation import Calculation, Field
from geometry.quantities import quantity
from geometry.sentences import Kind
from library.book.model import Entry
from library.calc.answer import Answer
from library.calc.fill import Filled
from library.units.system import Display
from tui.view.text_line import TextLine

Typed = dict[str, TextLine]
"""What was typed for one tool, by quantity; every calculation opened for that tool shares it."""

OF_A_THREAD = ("diameter", "pitch", "threads_per_inch", "starts", "thread_form", "thread_taper")
"""What the name of a thread says; it stands in the place of the first."""

_UNITS_OF_THE_DISPLAY = {Kind.LENGTH, Kind.AREA, Kind.SPEED}
_PLUS_MINUS = re.compile(r"\s*(\+/-|±|\+-)")


class Form:
    """The fields of one calculation for one entry.

    Attributes:
        sheet: the calculation.
        entry: what fills the fields that nobody typed in.
        typed: what was typed, by quantity.
        focus: the quantity of the field in hand.
        answer: the latest answer, or nothing before the first one.
    """

    def __init__(self, sheet: Calculation, entry: Entry | None, typed: Typed) -> None:
        self.sheet = sheet
        self.entry = entry
        self.typed = typed
        self.focus = sheet.inputs[0].key
        self.answer: Answer | None = None

    @property
    def fields(self) -> tuple[Field, ...]:
        """The fields that matter for the values so far."""
        if self.answer is not None:
            return self.answer.fields
        return tuple(field for field in self.sheet.inputs if not field.when)

    def texts(self) -> dict[str, str]:
        """What was typed and this calculation asks for, blank fields left out."""
        return {
            key: typed.text
            for key, typed in self.typed.items()
            if typed.text.strip() and self.sheet.field(key) is not None
        }

    def take(self, answer: Answer) -> None:
        """Take the answer to what is typed now; the field in hand stays unless it is no longer asked for."""
        first = self.answer is None
        self.answer = answer
        keys = [field.key for field in answer.fields]
        if first:
            self.focus = next((key for key in keys if key in self.needed()), self.focus)
        if self.focus not in keys and keys:
            self.focus = keys[0]

    def needed(self) -> tuple[str, ...]:
        """The quantities that are still to be given, alternatives included."""
        if self.answer is None:
            return ()
        missing = {trouble.key for trouble in self.answer.troubles if trouble.missing}
        groups = {field.one_of for field in self.fields if field.key in missing and field.one_of}
        return tuple(f.key for f in self.fields if f.key in missing or (f.one_of and f.one_of in groups))

    def value(self, key: str) -> Filled | None:
        """What the field holds: typed, from the book, or a default."""
        return self.answer.inputs.get(key) if self.answer is not None else None

    def is_choice(self, key: str) -> bool:
        """Whether the field takes one word of a few."""
        return quantity(key).kind is Kind.CHOICE

    def move(self, by: int) -> None:
        """Go to another field, round the ends."""
        keys = [field.key for field in self.fields]
        self.focus = keys[(keys.index(self.focus) + by) % len(keys)]

    def type(self, text: str) -> None:
        """Type into the field in hand; what came from the book gives way to it."""
        if self.is_choice(self.focus):
            self._choose_by_letter(text)
        else:
            self.typed[self.focus] = self._line(self.focus).insert(text)

    def edit(self, key: str) -> None:
        """Apply an editing key to the field in hand."""
        if self.is_choice(self.focus):
            self._edit_choice(key)
            return
        if key in {"left", "right"} and not self._line(self.focus).text:
            self._take_over()
            return
        self.typed[self.focus] = self._line(self.focus).edited(key)

    def clear(self) -> None:
        """Empty the field in hand; the book's value or the default returns."""
        self.typed.pop(self.focus, None)

    def take_thread(self, name: str) -> None:
        """Type the name of a thread where the diameter stands; what was typed before of a thread gives way to it."""
        for key in OF_A_THREAD:
            self.typed.pop(key, None)
        self.typed[OF_A_THREAD[0]] = TextLine.ending(name)

    def switch(self, old: Display, new: Display, read: Callable[[str, str, Display], float | None]) -> None:
        """Keep the meaning of what was typed without a unit when the unit of lengths changes.

        Args:
            old: the units worked in until now.
            new: the units from now on.
            read: gives the number that a text means for a quantity, or nothing where it has none.
        """
        for key, typed in self.typed.items():
            kind = quantity(key).kind
            if kind not in _UNITS_OF_THE_DISPLAY or read(typed.text, key, old) == read(typed.text, key, new):
                continue
            named = with_unit(typed.text, old.unit(kind))
            if read(named, key, new) == read(typed.text, key, old):
                self.typed[key] = TextLine.ending(named)

    def _line(self, key: str) -> TextLine:
        return self.typed.get(key, TextLine())

    def _take_over(self) -> None:
        """Make the book's value or the default one's own, to change a part of it."""
        value = self.value(self.focus)
        if value is not None and not value.share_of_diameter:
            self.typed[self.focus] = TextLine.ending(value.text)

    def _choose_by_letter(self, text: str) -> None:
        letter = text[:1].casefold()
        begun = [choice for choice in quantity(self.focus).choices if choice.casefold().startswith(letter)]
        if not letter.strip() or not begun:
            return
        current = self._choice()
        at = begun.index(current) + 1 if current in begun else 0
        self.typed[self.focus] = TextLine.ending(begun[at % len(begun)])

    def _edit_choice(self, key: str) -> None:
        choices = quantity(self.focus).choices
        step = {"left": -1, "right": 1}.get(key)
        if step is not None:
            current = self._choice()
            at = choices.index(current) if current in choices else -max(step, 0)
            self.typed[self.focus] = TextLine.ending(choices[(at + step) % len(choices)])
        elif key in {"backspace", "delete"}:
            self.clear()

    def _choice(self) -> str:
        value = self.value(self.focus)
        return value.value if value is not None and isinstance(value.value, str) else ""


def with_unit(text: str, unit: str) -> str:
    """A number typed without a unit, with it; before ``+/-`` where that was typed.

    Example:
        >>> with_unit("3.2", "mm"), with_unit("3.2 +/- 0.05", "mm")
        ('3.2 mm', '3.2 mm +/- 0.05')
    """
    main, *spread = _PLUS_MINUS.split(text.rstrip(), maxsplit=1)
    return f"{main} {unit}" + (f" {spread[0]}{spread[1]}" if spread else "")
