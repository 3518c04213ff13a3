"""The answers of a card's calculations, kept from one key to the next: only what something changed for is answered anew."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Mapping
from dataclasses import replace
from functools import cache
from typing import TypeVar, cast

from geometry.calculation import Calculation
from geometry.complaints import is_tried
from geometry.figure import is_drawn
from geometry.surfaces import surface_of_relief
from library.book.model import Book, Entry
from library.calc.answer import Answer, answer
from library.calc.cautions import cautions_for, material_of
from library.calc.surfaces import has_surface
from library.equipment.model import Machine
from library.units.system import Display

_Asked = tuple[str, bool, bool, tuple[tuple[str, str], ...]]
"""A calculation by its name, whether its advice is tried and its drawing made, and the texts that it is given."""

_Kept = dict[_Asked, tuple[Entry, Answer]]
"""Answers, each with what it was given of the entry."""


_Found = TypeVar("_Found")

MOST_REMEMBERED = 400
"""Things that are remembered of one card before they are looked up anew."""


class Answers:
    """Answers the calculations of one card; what was asked in the same way for the card before it is not computed again.

    A calculation gets no more of the entry than it can look at, so that it cannot hang on anything else of it.

    Args:
        entry: what the tool shall have.
        book: with the families and the cautions.
        display: the units of numbers typed without one.
        before: of the same card as it was before.
        machine: in hand, with the cams that a typed throw may mean; nothing for a record, which has what was meant.
    """

    def __init__(
        self,
        entry: Entry,
        book: Book,
        display: Display,
        before: Answers | None = None,
        machine: Machine | None = None,
    ) -> None:
        self._book, self._display, self._machine = book, display, machine
        is_same = (
            before is not None
            and before._book is book
            and before._display == display
            and before._machine is machine
        )
        self._before: _Kept = before._now if before is not None and is_same else {}
        self._found: dict[Hashable, object] = before._found if before is not None and is_same else {}
        self._of: dict[Hashable, tuple[object, object]] = before._of if before is not None and is_same else {}
        if len(self._found) + len(self._of) > MOST_REMEMBERED:
            self._found, self._of = {}, {}
        # The word for a material that the book does not know says nothing to any calculation.
        known = self.remembered(
            ("material", entry.work_material), lambda: material_of(entry, book) is not None
        )
        self._entry = entry if known else replace(entry, work_material="")
        self._now: _Kept = {}
        self._parts: dict[str, Entry] = {}

    def ask(self, sheet: Calculation, texts: Mapping[str, str]) -> Answer:
        """The answer of a calculation to texts that stand for what is typed, by quantity."""
        if sheet.name not in self._parts:
            self._parts[sheet.name] = _part_for(sheet, self._entry)
        part, asked = self._parts[sheet.name], (sheet.name, is_tried(), is_drawn(), tuple(texts.items()))
        kept = self._now.get(asked) or self._before.get(asked)
        if kept is None or kept[0] != part:
            cautions = self.remembered(
                ("cautions", sheet.name, part.family, part.work_material, part.tool_material, part.cautions),
                lambda: cautions_for(sheet, part, self._book, in_job=True),
            )
            kept = (
                part,
                answer(sheet, texts, entry=part, book=self._book, display=self._display, holds_size=False,
                       cautions=cautions, machine=self._machine),
            )  # fmt: skip
        self._now[asked] = kept
        return kept[1]

    def remembered_of(self, thing: object, key: Hashable, find: Callable[[], _Found]) -> _Found:
        """Something that follows from one unchanging thing, the book, the units and a key; found anew for another thing.

        Args:
            thing: as it is; another that only looks the same is another.
            key: everything else that it follows from.
            find: finds it.
        """
        kept = self._of.get(key)
        if kept is None or kept[0] is not thing:
            kept = self._of[key] = (thing, find())
        return cast(_Found, kept[1])

    def remembered(self, key: Hashable, find: Callable[[], _Found]) -> _Found:
        """Something that follows from the book, the units and a key alone, found once while both stay.

        Args:
            key: everything else that it follows from.
            find: finds it.
        """
        if key not in self._found:
            self._found[key] = find()
        return cast(_Found, self._found[key])


def _part_for(sheet: Calculation, entry: Entry) -> Entry:
    """Of an entry what a calculation fills its inputs from and takes its cautions by."""
    looked_at = _looked_at(sheet)
    return Entry(
        id="",
        family=entry.family,
        title="",
        work_material=entry.work_material,
        tool_material=entry.tool_material,
        values={
            key: value
            for key, value in entry.values.items()
            if key in looked_at or (has_surface(sheet) and surface_of_relief(key) is not None)
        },
        cautions=entry.cautions,
    )


@cache
def _looked_at(sheet: Calculation) -> frozenset[str]:
    """The keys of an entry that a calculation may fill its inputs from."""
    return frozenset(
        key
        for field in sheet.inputs
        for key in (field.key, *field.fill_from, field.offered_from, field.end_of[0] if field.end_of else "")
    )
