"""The schema of what the book tells of the work: the keys of ``[[setup]]``, and what is made of them."""

from __future__ import annotations

from geometry.quantities import quantity
from geometry.surfaces import SURFACES
from library.book.fields import name_of_a, one_line, words
from library.book.shapes import Merged, Shape
from library.guidance.fields import word_of, words_of
from library.guidance.model import STEPS, Setup
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

SHAPES = (SETUP,)
"""All of them, to be laid beside the tables that the book itself knows."""
