"""Numbers that are the angle of a tool and no size of it: ``countersink 60``, ``90 spot drill 10 mm``."""

from __future__ import annotations

import math
from collections.abc import Collection, Sequence
from functools import lru_cache

from library.book.rows import Rows
from library.book.search_text import Parts
from library.book.value_ranges import ranges_of
from library.search.by_value import LEAST_OF_AN_ANGLE, POINTS
from library.search.nearness import called
from library.search.size_in_names import is_a_name
from library.search.sizes import Size

CALLED_BY_ANGLE = (" countersink ", " centre drill ", " spotting drill ")
"""Families whose tools are called by their angle, as their titles have them."""

USUAL = frozenset(["60", "82", "90", "100", "110", "120"])
"""Degrees by which such tools are asked for, and which nobody means as their diameter. Common practice, no source."""

OF_A_DRILL = USUAL | POINTS | {"142"}
"""Degrees by which drills of any kind are asked for, be it the point or the seat that they leave."""

OF_SUCH_A_TOOL = USUAL | POINTS | {"75"}
"""Degrees by which tools that are called by their angle are asked for. Common practice, no source."""

LEAST_BESIDE_A_SIZE = 30
"""From how many degrees any number is their angle where the size stands beside it. Common practice, no source."""

LONGEST_NAME = 5
"""Words of the longest name that such a family is looked for by: combined drill and countersink."""

DRILL = " drill "
"""The word in the titles of families that are called by the angle of a point."""

KEYS = "included_angle", "point_angle"
"""The angles by which they are called; a spotting drill by that of its point."""


def called_by_angle(
    words: Sequence[str], families: Sequence[Parts], titles: Sequence[str] = CALLED_BY_ANGLE
) -> frozenset[int]:
    """Which of the families whose tools are called by their angle some words name, by their numbers.

    Args:
        words: that are sought.
        families: of the book.
        titles: words by which such families are known.

    Example:
        >>> families = [Parts(" ; countersinks ; countersink ; ", " ; csk ; ", ""), Parts(" ; drill ; ", "", "")]
        >>> called_by_angle(["csk", "brass"], families), called_by_angle(["drill"], families)
        (frozenset({0}), frozenset())
    """
    runs = [
        " ".join(words[at : at + count]) for at in range(len(words)) for count in range(1, LONGEST_NAME + 1)
    ]
    return frozenset(
        number
        for number, family in enumerate(families)
        if any(one in family.head for one in titles) and any(not called(run, family) for run in runs)
    )


def is_an_angle(number: str, size: Size | None, others: Sequence[str] = ()) -> bool:
    """Whether a number alone, beside the name of such a tool, is its angle.

    Args:
        number: as typed.
        size: what is surely the size, where that stands beside it.
        others: all numbers alone.

    Example:
        >>> is_an_angle("60", None), is_an_angle("12", None), is_an_angle("45", None), is_an_angle("45", Size("10 mm"))
        (True, False, False, True)
        >>> is_an_angle("70", None, ["70", "12"]), is_an_angle("40", None, ["90", "40"])
        (True, False)
    """
    has_size = size is not None or any(float(one) < LEAST_BESIDE_A_SIZE for one in others)
    return number in OF_SUCH_A_TOOL or (has_size and float(number) >= LEAST_BESIDE_A_SIZE)


def of_angle(rows: Rows, number: str, found: Sequence[int], families: Collection[int]) -> set[int]:
    """Those of which the book says that they may have so many degrees, and those that are called by the number.

    Args:
        rows: of the book.
        number: of degrees, as typed.
        found: the numbers of the rows that are asked about.
        families: whose tools are meant, by their numbers; where none of theirs was found, any that was.
    """
    wanted, near = math.radians(float(number)), math.radians(LEAST_OF_AN_ANGLE)
    whole = f" {number} "
    among = [row for row in found if rows.words.groups[row] in families] or found
    return {
        row
        for row in among
        if any(low - near <= wanted <= high + near for low, high in _angles_of(rows, row))
        or any(whole in name and is_a_name(number, name, ()) for name in rows.words.names_of(row))
    }


def has_an_angle(rows: Rows, row: int) -> bool:
    """Whether the book has an angle for a tool by which it may be called."""
    return bool(_angles_of(rows, row))


def told_of(rows: Rows, degrees: Sequence[str], found: Sequence[int]) -> str:
    """That nothing that was found has an angle, as a sentence, and which the first one has; empty where none was sought.

    Args:
        rows: of the book.
        degrees: angles that none of them has.
        found: the numbers of the rows, the likeliest first.
    """
    if not degrees or not found:
        return ""
    has = [f"{math.degrees(low):.5g}" for low, high in _angles_of(rows, found[0])[:1] if low == high]
    which = "this" if len(found) == 1 else "the first"
    nothing = (
        f"None of {' or '.join(degrees)} deg is among these"
        if len(found) > 1
        else f"There is none of {' or '.join(degrees)} deg"
    )
    return f"{nothing}{''.join(f'; {which} is of {one} deg' for one in has)}."


def _angles_of(rows: Rows, row: int) -> list[tuple[float, float]]:
    """The ranges of the angles that the book has for a tool, in radians."""
    return [one for key in KEYS for one in _ranges(rows.values_of(key).get(row, ""))]


@lru_cache(maxsize=1024)
def _ranges(said: str) -> tuple[tuple[float, float], ...]:
    """The ranges of numbers that stand in a value; many tools have the same."""
    return tuple(one for one in ranges_of(said) if not isinstance(one, str))
