"""The schema of the book: which tables it may hold, which keys each takes, and what is made of them.

A new kind of table is one new row in ``SHAPES``, here or in a module that ``_BESIDES`` names; reading, layers, findings and
the list of ids follow from it.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from importlib import import_module

from library.book.diagnostics import Location
from library.book.fields import (
    Reader,
    kind,
    name_of_a,
    names_of,
    one_line,
    paragraph,
    surfaces,
    word_of,
    word_out_of,
    words,
    words_of,
)
from library.book.grades import DOCUMENTS
from library.book.model import Caution, Entry, Family, Layer, Material, Source, Value
from library.book.rule_keys import EVERY_TOOL, some_of, some_out_of, some_words, want_values, words_left_out
from library.book.rules import Rule
from library.book.tool_materials import TOOL_MATERIALS
from library.equipment.abrasives import ABRASIVES
from library.issue import Place


@dataclass(frozen=True)
class Merged:
    """One table with its layers laid over each other.

    Attributes:
        fields: what was read of its known keys.
        values: recommended values by quantity.
        extra: the shop's own keys.
        layer: the highest one that has a part of it.
        place: where that part begins.
        unread: the keys of any part that could not be read, and ``*`` where none of a part could.
    """

    fields: Mapping[str, object]
    values: Mapping[str, Value]
    extra: Mapping[str, object]
    layer: Layer
    place: Place
    unread: frozenset[str] = frozenset()

    def whole(self) -> dict[str, object]:
        """Every part by the name that the model gives it, without the values."""
        return {**self.fields, "extra": self.extra, "layer": self.layer, "place": self.place}


@dataclass(frozen=True)
class Shape:
    """One kind of table.

    Attributes:
        array: its name in brackets.
        fields: how each of its keys is read.
        build: makes the object.
        required: keys without which it is of no use.
        has_values: whether any quantity of the vocabulary may be a key.
        is_cited: whether it has ``source`` and ``place``.
        tells_unread: whether its object is told that a part of its table could not be read.
        look_over: complains of what is wrong with the whole of it, where its table could be read.
    """

    array: str
    fields: Mapping[str, Reader]
    build: Callable[[Merged], object]
    required: tuple[str, ...] = ("title",)
    has_values: bool = False
    is_cited: bool = False
    tells_unread: bool = False
    look_over: Callable[[object, Location], None] | None = None

    def keys(self) -> list[str]:
        """Every key it takes, for the nearest name to one that it does not."""
        return ["id", *self.fields, *(("source", "place") if self.is_cited else ())]


FAMILY_TEXTS = ("recognise", "ground", "never_ground", "usual_relief", "fails", "order", "check_after")
"""What a newcomer is told of a family, in this order."""


RULES_GO_BY = frozenset({"*", "id", "family", "title", "work_material", "synonyms"})
"""Keys of an entry by which it is found which rules are for it."""

_RULE_IS_FOR = frozenset({"*", "family", "when", "except", "work_material", "iso_513"})


def _entry(merged: Merged) -> object:
    unruled = bool(merged.unread & RULES_GO_BY)
    return Entry(**merged.whole(), values=merged.values, unruled=unruled)  # type: ignore[arg-type]


def _rule(merged: Merged) -> object:
    """The rule; for no family where a part of what it is for could not be read, so that it is never taken too widely."""
    whole = merged.whole()
    whole["leaves_out"] = whole.pop("except", ())
    is_lost = merged.unread & _RULE_IS_FOR or whole["leaves_out"] == EVERY_TOOL
    if is_lost or not isinstance(whole["family"], tuple):
        whole["family"] = ()
    return Rule(**whole, values=merged.values)  # type: ignore[arg-type]


def _family(merged: Merged) -> object:
    whole = merged.whole()
    texts = {key: whole.pop(key) for key in FAMILY_TEXTS if key in whole}
    return Family(**whole, texts=texts)  # type: ignore[arg-type]


SHAPES: Mapping[str, Shape] = {
    shape.array: shape
    for shape in (
        Shape(
            "entry",
            {
                "family": name_of_a("family"),
                "title": one_line,
                "work_material": one_line,
                "tool_material": word_of(TOOL_MATERIALS, "tool material"),
                "synonyms": words,
                "cautions": names_of("caution"),
                "notes": paragraph,
            },
            _entry,
            required=("family", "title"),
            has_values=True,
            tells_unread=True,
        ),
        Shape(
            "family",
            {
                "title": one_line,
                "what": paragraph,
                "like": name_of_a("family"),
                "kind": kind,
                "surfaces": surfaces,
                "tool_material": word_of(TOOL_MATERIALS, "tool material"),
                "synonyms": words,
                "cautions": names_of("caution"),
                **dict.fromkeys(FAMILY_TEXTS, paragraph),
            },
            _family,
        ),
        Shape(
            "material",
            {
                "title": one_line,
                "iso_513": word_out_of("P M K N S H"),
                "note": paragraph,
                "synonyms": words,
                "cautions": names_of("caution"),
            },
            lambda merged: Material(**merged.whole()),  # type: ignore[arg-type]
        ),
        Shape(
            "caution",
            {
                "title": one_line,
                "words": one_line,
                "text": paragraph,
                "tool_materials": words_of(TOOL_MATERIALS, "tool material"),
                "abrasives": words_of(ABRASIVES, "abrasive"),
            },
            lambda merged: Caution(**merged.whole()),  # type: ignore[arg-type]
            required=("title", "text"),
            is_cited=True,
        ),
        Shape(
            "rule",
            {
                "title": one_line,
                "family": some_of("family"),
                "when": some_words,
                "except": words_left_out,
                "work_material": some_of("material"),
                "iso_513": some_out_of("P M K N S H"),
            },
            _rule,
            required=("family", "title"),
            has_values=True,
            look_over=want_values,
        ),
        Shape(
            "source",
            {
                "title": one_line,
                "by": one_line,
                "year": one_line,
                "caveat": paragraph,
                "grade": word_out_of(DOCUMENTS),
            },
            lambda merged: Source(**merged.whole()),  # type: ignore[arg-type]
        ),
    )
}
"""The tables that are told of here, by their names in brackets."""

_BESIDES = ("library.equipment.shapes", "library.guidance.shapes", "library.shop_threads.shapes")
"""Modules whose ``SHAPES`` are tables of a book too."""


@cache
def shapes() -> Mapping[str, Shape]:
    """Every kind of table that a book may hold, those that other parts of the library know with them."""
    besides = [shape for module in _BESIDES for shape in import_module(module).SHAPES]
    return {**SHAPES, **{shape.array: shape for shape in besides}}
