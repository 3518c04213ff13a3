"""What is never ground on a family of tools, as far as it concerns the surface that somebody is about to grind."""

from __future__ import annotations

import re
from collections.abc import Mapping

from geometry.surfaces import SURFACES
from library.book.model import Family

NEVER = "never_ground"
"""The text of a family that says it."""

CALLED: Mapping[str, tuple[str, ...]] = {
    "thread-land": ("thread", "flank", "crest"),
    "end": ("end teeth",),
    "land": ("land", "margin", "outside", "side"),
}
"""Words by which a text means a surface, where its title does not say it, or is a part of other names."""


def never_ground(family: Family | None, surface: str) -> tuple[str, ...]:
    r"""The lines of a family on what is never ground that name a surface.

    Args:
        family: of the tool; nothing where none is known.
        surface: the word of the surface that is ground.

    Example:
        >>> tap = Family("tap", "Taps", texts={"never_ground": "The full thread: it is the size.\nA forming tap."})
        >>> never_ground(tap, "thread-land"), never_ground(tap, "chamfer")
        (('The full thread: it is the size.',), ())
    """
    row = SURFACES.get(surface)
    if family is None or row is None:
        return ()
    called = CALLED.get(surface, (row.title,))
    named = re.compile(rf"\b(?:{'|'.join(map(re.escape, called))})s?\b", re.IGNORECASE)
    return tuple(line.strip() for line in family.texts.get(NEVER, "").splitlines() if named.search(line))
