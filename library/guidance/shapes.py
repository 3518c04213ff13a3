"""The schema of what the book tells of the work: set-ups, wheels, symptoms."""

from __future__ import annotations

from geometry.quantities import QUANTITIES, quantity
from geometry.surfaces import SURFACES
from library.book.fields import Reader, name_of_a, names_of, one_line, word_of, words, words_of
from library.book.shapes import Merged, Shape
from library.book.tool_materials import TOOL_MATERIALS
from library.equipment.abrasives import ABRASIVES
from library.guidance.model import (
    OPERATIONS,
    STEPS,
    WAYS,
    WHEEL_LINES,
    RecommendedWheel,
    Setup,
    Symptom,
    UnsuitedWheel,
)
from library.guidance.told import told

BESIDES = ("face", "spiral-point", "web", "hole")
"""What is ground beside the surfaces that are relieved: the face of a flute, the gash of a gun tap, the web of a drill, the cross
hole of a countersink."""


def _setup(merged: Merged) -> object:
    whole = merged.whole()
    lines = {key: whole.pop(key) for key in STEPS if key in whole}
    return Setup(**whole, lines=lines)  # type: ignore[arg-type]


SETUP = Shape(
    "setup",
    {
        "title": one_line,
        "family": name_of_a("family"),
        "surface": word_of((*SURFACES, *BESIDES), "surface"),
        "methods": words_of(quantity("relief_method").choices, "method"),
        "when": words,
        "like": name_of_a("setup"),
        "synonyms": words,
        **dict.fromkeys(STEPS, told),
    },
    _setup,
)


def _wheel(merged: Merged) -> object:
    whole = merged.whole()
    lines = {key: whole.pop(key) for key in WHEEL_LINES if key in whole}
    return RecommendedWheel(**whole, lines=lines)  # type: ignore[arg-type]


_OF_A_WHEEL: dict[str, Reader] = {
    "title": one_line,
    "tool_materials": words_of(TOOL_MATERIALS, "tool material"),
    "abrasives": words_of(ABRASIVES, "abrasive"),
    "shapes": words_of(quantity("wheel_shape").choices, "wheel shape"),
}

RECOMMENDED_WHEEL = Shape(
    "recommended_wheel",
    {
        **_OF_A_WHEEL,
        "operations": words_of(OPERATIONS, "operation"),
        "like": name_of_a("recommended_wheel"),
        "synonyms": words,
        **dict.fromkeys(WHEEL_LINES, told),
    },
    _wheel,
)

UNSUITED_WHEEL = Shape(
    "unsuited_wheel",
    {
        **_OF_A_WHEEL,
        "methods": words_of(quantity("relief_method").choices, "method"),
        "state": word_of(("stop", "watch"), "state"),
        "why": told,
        "take": told,
    },
    lambda merged: UnsuitedWheel(**merged.whole()),  # type: ignore[arg-type]
)

SYMPTOM = Shape(
    "symptom",
    {
        "title": one_line,
        "families": names_of("family"),
        "synonyms": words,
        "when": words,
        "measure": told,
        "value": word_of(QUANTITIES, "quantity"),
        "way": word_of(WAYS, "way"),
        "change": told,
    },
    lambda merged: Symptom(**merged.whole()),  # type: ignore[arg-type]
)

SHAPES = (SETUP, RECOMMENDED_WHEEL, UNSUITED_WHEEL, SYMPTOM)
"""All of them, to be laid beside the tables that the book itself knows."""
