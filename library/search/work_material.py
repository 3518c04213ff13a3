"""Whose name a word for a work material is: its own, or that of another that only carries it in front.

Aluminium is aluminium; aluminium bronze is a bronze, and comes behind it. A tool for any material is one for that which
is named too, behind those that name it.
"""

from __future__ import annotations

from collections.abc import Sequence

from library.book.search_text import BETWEEN, Parts
from library.search.nearness import called

FOR_ANY = f" {BETWEEN} any {BETWEEN}"
"""By this id the work material of tools is known whose shape does not depend on it."""

OF_ANY = 3
"""How far away a word for a work material is in a tool for any."""

LEAST = 2
"""Letters of a word from which it may be told whose name it begins."""

ANY_ALLOY = " alloy"
"""A titanium alloy is titanium."""

BY_ITS_NOUN, IN_FRONT = 0.5, 1.0
"""How much farther away a material is that is one of a kind called so, and one that only carries the word in front."""


def behind_its_own(word: str, materials: Sequence[Parts]) -> list[float]:
    """How much farther away each material is, where a word is, or begins, the whole name of another.

    Args:
        word: as typed.
        materials: with their names; of one that is there several times each gets its number.

    Example:
        >>> wrought = Parts(" ; aluminium wrought ; ", " ; aluminium ; alu ; ")
        >>> cast = Parts(" ; aluminium cast ; ", " ; silicon aluminium ; ")
        >>> bronze = Parts(" ; aluminium bronze ; ")
        >>> behind_its_own("alum", [bronze, cast, wrought]), behind_its_own("bronze", [bronze, cast])
        ([1.0, 0.5, 0.0], [0.0, 0.0])
    """
    if len(word) < LEAST:
        return [0.0] * len(materials)
    far = {one: _far(word, one) for one in dict.fromkeys(materials) if f" {word}" in one.head + one.names}
    is_known = 0.0 in far.values()
    return [far.get(one, 0.0) if is_known else 0.0 for one in materials]


def names_one(word: str, materials: Sequence[Parts]) -> bool:
    """Whether a material is called by a word, or by one that it begins.

    Example:
        >>> steel = [Parts(" ; plain steel ; ", " ; machine steel ; bright bar ; ")]
        >>> names_one("stee", steel), names_one("machine", steel)
        (True, False)
    """
    return any(f" {word}" in one.head or called(word, one) == 0 for one in dict.fromkeys(materials))


def _far(word: str, material: Parts) -> float:
    """How far a word, which stands in the names of a material, is from being its whole name."""
    text, begun = material.head + material.names, f" {word}"
    nouns = [name.strip().removesuffix(ANY_ALLOY).split() for name in text.split(BETWEEN)]
    is_own = any(len(name) == 1 and name[0].startswith(word) for name in nouns)
    if called(word, material) == 0 or (is_own and begun in material.head):
        return 0.0
    return BY_ITS_NOUN if any(name and name[-1].startswith(word) for name in nouns) else IN_FRONT
