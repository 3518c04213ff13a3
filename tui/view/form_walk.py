"""Which fields of a calculation matter for the values so far, which are still asked for, and to which Enter leads."""

from __future__ import annotations

from geometry.calculation import Calculation, Field
from library.book.model import Value
from library.calc.answer import Answer
from library.calc.inputs import Input
from library.calc.of_several import is_list
from library.calc.surfaces import FIELD, book_key
from tui.view.list_fields import ListFields
from tui.view.text_line import TextLine

ASKED_WITH = {"land_measured_as": "land_width"}
"""Choices that change the answer as soon as something else is typed, each with that; a default is not passed over then."""


class FormWalk(ListFields):
    """The fields of one calculation as its latest answer has them, and the way from one to the next.

    Attributes:
        answer: the latest answer, or nothing before the first one.
    """

    def __init__(self, sheet: Calculation, typed: dict[str, TextLine]) -> None:
        super().__init__(sheet, typed)
        self.answer: Answer | None = None
        self._looked_at: set[str] = set()

    @property
    def fields(self) -> tuple[Field, ...]:
        """The fields that matter for the values so far."""
        if self.answer is not None:
            return self.answer.fields
        return tuple(field for field in self.sheet.inputs if not field.when)

    @property
    def surface(self) -> str:
        """The word of the surface that is worked on, as far as it is known; empty where there is none."""
        typed = self.typed[FIELD].text if FIELD in self.typed and self.sheet.field(FIELD) else ""
        if typed and (typed in self.sheet.surfaces or not self.sheet.surfaces):
            return typed
        return self.answer.surface if self.answer is not None else ""

    def slot(self, key: str) -> str:
        """The key of an input; a relief belongs to its surface, and is not there for another one."""
        return book_key(key, self.surface) or key

    def keys(self) -> list[str]:
        """The quantities that matter for the values so far."""
        return [field.key for field in self.fields]

    def offer(self, key: str) -> Value | None:
        """The range that the book has for an open field."""
        return self.answer.offers.get(key) if self.answer is not None else None

    def take(self, answer: Answer) -> None:
        """Take the answer to what is typed now; the field in hand stays unless it is no longer asked for."""
        first = self.answer is None
        self.answer = answer
        keys = [field.key for field in answer.fields]
        if first:
            open_here = [key for key in keys if key in self.needed() or self._wants_more(key)]
            self.focus = next((key for key in open_here if self.leads(key)), self.focus)
        if self.focus not in keys and keys:
            self.focus = keys[0]

    def _wants_more(self, key: str) -> bool:
        """Whether a tool must have several of an input, and one alone was typed or carried there."""
        value = self.value(key)
        is_one = value is not None and value.origin == "given" and not is_list(value.text)
        return key == self.sheet.role.only_several and is_one

    def needed(self) -> tuple[str, ...]:
        """The quantities that are still to be given, alternatives included."""
        if self.answer is None:
            return ()
        missing = {issue.key for issue in self.answer.issues if issue.missing}
        groups = {field.one_of for field in self.fields if field.key in missing and field.one_of}
        return tuple(f.key for f in self.fields if f.key in missing or (f.one_of and f.one_of in groups))

    def leads(self, key: str) -> bool:
        """Whether a quantity is that of its alternatives that is asked for first: the one the book has a range for, else the first."""
        group = [one.key for one in self.fields if one.one_of and one.one_of == self.sheet_field(key).one_of]
        return key == next((one for one in group if self.offer(one)), next(iter(group), key))

    def _waits(self, key: str) -> bool:
        """Whether another of its alternatives is asked for first, and none of them is in hand."""
        of = self.sheet_field(key).one_of
        return not self.leads(key) and of != self.sheet_field(self.focus).one_of

    def value(self, key: str) -> Input | None:
        """What the field holds: typed, from the book, or a default."""
        return self.answer.inputs.get(key) if self.answer is not None else None

    def to_wanted(self) -> None:
        """Go to the next field that is still needed or has to be put right, round the end.

        Where none is, to a choice that nobody made and that matters, and then to the next open one below that may be
        given; never onto a filled one. What was typed in the field in hand is then typed over, also where it stays in hand.
        """
        self.leave()
        keys = self.keys()
        at = keys.index(self.focus) + 1
        wrong = {issue.key for issue in self.answer.issues} if self.answer is not None else set()
        wanted = wrong.union(self.needed()) or self._to_look_at()
        onward = [key for key in keys[at:] + keys[:at] if key in wanted]
        found = next((key for key in onward if not self._waits(key)), next(iter(onward), None))
        self._looked_at |= ASKED_WITH.keys() & {found}
        self.focus = found or next((key for key in keys[at:] if self._is_open(key)), self.focus)

    def _to_look_at(self) -> set[str]:
        """Choices that nobody made and that matter now; each is stopped at once, when all else is given, and what stands there may stay."""
        return {
            key
            for key, measured in ASKED_WITH.items()
            if key not in self._looked_at
            and (value := self.value(key)) is not None
            and value.origin == "default"
            and (given := self.value(measured)) is not None
            and given.origin == "given"
        }

    def _is_open(self, key: str) -> bool:
        """Whether a field may still be given: it is empty, and so are its alternatives."""
        group = {f.key for f in self.fields if f.one_of and f.one_of == self.sheet_field(key).one_of} or {key}
        return self.sheet_field(key).optional and all(self.value(one) is None for one in group)

    def sheet_field(self, key: str) -> Field:
        """The field of the calculation for a quantity that it asks for."""
        return next(field for field in self.fields if field.key == key)
