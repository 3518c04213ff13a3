"""Rows by what the book says of a value: how many flutes, which point."""

from __future__ import annotations

import math

from library.book.rows import Rows

POINTS = frozenset(["118", "130", "135", "140"])
"""Degrees by which drills are asked for, and which nobody means as a diameter where a drill has such a point."""

LEAST_OF_AN_ANGLE = 0.01
"""Degrees by which two angles that are written alike may differ."""


def flutes_told(rows: Rows, row: int, count: int) -> tuple[bool, str]:
    """Whether the book has a number of flutes for a tool, and where it has only others, which.

    Args:
        rows: of the book.
        row: the number of the tool's row.
        count: of flutes that is asked for.

    Example:
        >>> from library.book.rows import Row
        >>> rows = Rows.of([Row("entry", "a", "A", ranges="flutes=2:3|6:6"), Row("entry", "b", "B")])
        >>> flutes_told(rows, 0, 4), flutes_told(rows, 0, 3), flutes_told(rows, 1, 4)
        ((False, '2 to 3 or 6'), (True, ''), (False, ''))
    """
    from library.book.value_ranges import ranges_of

    said = rows.values_of("flutes").get(row, "")
    ranges = [one for one in ranges_of(said) if not isinstance(one, str)]
    if any(low <= count <= high for low, high in ranges):
        return True, ""
    told = (f"{low:g}" if low == high else f"{low:g} to {high:g}" for low, high in ranges)
    return False, " or ".join(dict.fromkeys(told))


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
