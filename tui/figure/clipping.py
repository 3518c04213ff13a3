"""The part of a straight line that lies on the sheet, so that what runs off it takes no time."""

from __future__ import annotations

Place = tuple[float, float]


def clipped(start: Place, end: Place, width: float, height: float) -> tuple[Place, Place] | None:
    """Cut a straight line to the sheet.

    Args:
        start: in the measure of the sheet, whatever that is.
        end: in the same.
        width: of the sheet, whose left edge is 0.
        height: of the sheet, whose upper edge is 0.

    Returns:
        Both ends of what lies on the sheet; nothing where none of it does.

    Example:
        >>> clipped((-5.0, 1.0), (5.0, 1.0), 4.0, 2.0), clipped((0.0, 3.0), (4.0, 3.0), 4.0, 2.0)
        (((0.0, 1.0), (4.0, 1.0)), None)
    """
    (x1, y1), (x2, y2) = start, end
    if 0 <= x1 <= width and 0 <= x2 <= width and 0 <= y1 <= height and 0 <= y2 <= height:
        return start, end
    dx, dy = x2 - x1, y2 - y1
    first, last = 0.0, 1.0
    for rise, room in ((-dx, x1), (dx, width - x1), (-dy, y1), (dy, height - y1)):
        if rise == 0:
            if room < 0:
                return None
        elif rise < 0:
            first = max(first, room / rise)
        else:
            last = min(last, room / rise)
    if first > last:
        return None
    return (_inside(x1 + first * dx, width), _inside(y1 + first * dy, height)), (
        _inside(x1 + last * dx, width),
        _inside(y1 + last * dy, height),
    )


def _inside(value: float, limit: float) -> float:
    """A place that rounding may have put a hair off the sheet."""
    return max(0.0, min(value, limit))
