"""Rows by what the book says of a value: how many flutes, which point."""

from __future__ import annotations

import math
from collections.abc import Iterable

from library.book.rows import Rows

POINTS = frozenset(["118", "130", "135", "140"])
"""Degrees by which drills are asked for, and which nobody means as a diameter where a drill has such a point."""

LEAST_OF_AN_ANGLE = 0.01
"""Degrees by which two angles that are written alike may differ."""


def with_flutes(rows: Rows, found: Iterable[int], count: int) -> list[int]:
    """Those of which the book says that they may have so many flutes, or says nothing of them."""
    from library.book.value_ranges import ranges_of

    said = rows.values_of("flutes")
    return [
        row
        for row in found
        if row not in said
        or any(not isinstance(one, str) and one[0] <= count <= one[1] for one in ranges_of(said[row]))
    ]


def with_point(rows: Rows, degrees: str) -> set[int]:
    """Those of which the book says that their point may have so many degrees."""
    from library.book.value_ranges import ranges_of

    wanted = math.radians(float(degrees))
    near = math.radians(LEAST_OF_AN_ANGLE)
    return {
        row
        for row, said in rows.values_of("point_angle").items()
        if any(
            not isinstance(one, str) and one[0] - near <= wanted <= one[1] + near for one in ranges_of(said)
        )
    }
