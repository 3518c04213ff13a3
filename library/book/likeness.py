"""Inheritance of families: one that says ``like`` takes from another all that it does not say itself.

A flat drill that is like a twist drill has its kind, its surfaces, its cautions and its order of work. What tells the one
from the other is never taken: title, synonyms, what it is, how to recognise it. Who looks for a jobber drill does not want
flat drills, and a flat drill has no flutes that wind round it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

from library.book.model import Family
from library.book.shapes import FAMILY_TEXTS

OWN_TEXTS = frozenset({"recognise"})
"""Texts by which a family is told from those that it is like."""

Find = Callable[[str], Family | None]


def ancestors(name: str, like: Callable[[str], str]) -> Iterator[str]:
    """The families that one follows, the nearest first; it ends before one that was met already.

    Args:
        name: of the family that follows.
        like: says which family one is like; empty where none or unknown.

    Example:
        >>> list(ancestors("a", {"a": "b", "b": "c", "c": "a"}.get))
        ['b', 'c']
    """
    met = {name}
    while (name := like(name)) and name not in met:
        met.add(name)
        yield name


def goes_round(name: str, like: Callable[[str], str]) -> bool:
    """Whether a family is in the end like itself.

    Example:
        >>> goes_round("a", {"a": "b", "b": "a"}.get), goes_round("c", {"a": "b", "b": "a", "c": "a"}.get)
        (True, False)
    """
    chain = [name, *ancestors(name, like)]
    return like(chain[-1]) == name


def followed(family: Family, find: Find) -> Family:
    """A family with what it does not say itself taken from those that it is like.

    Args:
        family: as it was read.
        find: gives another family as it was read, or nothing.
    """
    known = {family.id: family}

    def like(name: str) -> str:
        wanted = known[name].like if name in known else ""
        found = find(wanted) if wanted and wanted not in known else None
        if found is not None:
            known[wanted] = found
        return wanted if wanted in known else ""

    for name in ancestors(family.id, like):
        family = _with(family, known[name])
    return family


def _with(family: Family, other: Family) -> Family:
    texts = {key: text for key, text in other.texts.items() if key not in OWN_TEXTS} | dict(family.texts)
    return replace(
        family,
        kind=family.kind or other.kind,
        surfaces=family.surfaces or other.surfaces,
        tool_material=family.tool_material or other.tool_material,
        cautions=family.cautions or other.cautions,
        texts={key: texts[key] for key in FAMILY_TEXTS if key in texts},
    )
