"""How a tooth is laid on a sheet: how large, where, and how many times its relief is exaggerated."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tui.figure.alphabet import CELL_HEIGHT
from tui.figure.canvas import Point
from tui.figure.shape import Outline, Shape

TIMES = (
    1,
    2,
    3,
    4,
    5,
    6,
    8,
    10,
    12,
    15,
    20,
    25,
    30,
    40,
    50,
    60,
    80,
    100,
    150,
    200,
    300,
    400,
    500,
    600,
    800,
    1000,
)
"""Exaggerations that a person can take back in the head."""  # fmt: skip

_INWARD, _OUTWARD = 0.45, 0.35
"""How much of the height under the land the relief may take, and how much what stands proud."""

_BODY = 0.3
"""How much metal is seen under the land at least, as a share of its width."""


CORE = 0.3
"""How far from the axis the foot of a tooth is drawn, in radii."""


@dataclass(frozen=True)
class Frame:
    """From the angle behind the edge and the drop to a place on the sheet.

    Attributes:
        land_angle: from edge to heel, in radians; the middle of the land is on top.
        times: how many times the relief is drawn as large as it is.
        scale: cells for a length of one radius.
        centre: where the axis of the tool lies on the sheet.
    """

    land_angle: float
    times: int
    scale: float
    centre: Point

    def place(self, angle: float, drop: float = 0.0) -> Point:
        """Where a point lies, its drop exaggerated.

        Args:
            angle: behind the edge, in radians.
            drop: below the circle, in radii.
        """
        return self.inside(angle, max(1 - self.times * drop, 0.0))

    def inside(self, angle: float, radius: float) -> Point:
        """Where a point on a radius (in radii) lies."""
        turned = angle - self.land_angle / 2
        x, y = self.centre
        return x + self.scale * radius * math.sin(turned), y - self.scale * radius * math.cos(turned)


def frame_for(shape: Shape, columns: int, rows: int, side: int, above: int = 0) -> Frame:
    """Lay a tooth on a sheet as large as it goes, with the largest exaggeration that fits.

    The chosen profile decides; another one may run off the sheet.

    Args:
        shape: the tooth.
        columns: of the sheet.
        rows: of the sheet.
        side: columns to keep free at the left and at the right.
        above: rows to keep free at the top.
    """
    width, height = max(columns - 2 * side, 1), max(rows - above - 0.25, 1) * CELL_HEIGHT
    chosen = shape.outlines[0]
    half = min(shape.land_angle / 2, math.pi)
    across = 2 * math.sin(min(half, math.pi / 2))
    sagitta = 1 - math.cos(half)
    scale = min(width / across, height / (sagitta + _BODY * across))
    room = height / scale - sagitta
    times = _times(chosen, room)
    low = max(_BODY * across, 1.2 * times * chosen.deepest)
    most = max(chosen.proudest, _OUTWARD * room / times)
    out = times * min(most, max(one.proudest for one in shape.outlines if one.comes_within(most)))
    scale = min(width / (across * (1 + times * chosen.proudest)), height / (out + sagitta + low))
    top = above + 0.25
    return Frame(shape.land_angle, times, scale, (columns / 2, scale * (1 + out) + top * CELL_HEIGHT))


def _times(chosen: Outline, room: float) -> int:
    """The largest round exaggeration with which relief and proud metal fit into a height in radii."""
    if chosen.deepest == 0 and chosen.proudest == 0:
        return 1
    deep, out = min(_INWARD * room, 0.6), _OUTWARD * room
    fitting = [times for times in TIMES if times * chosen.deepest <= deep and times * chosen.proudest <= out]
    return fitting[-1] if fitting else 1


def foot_of_face(frame: Frame, shape: Shape) -> Point:
    """Where the face ends inside the tool: on the core, leaning back by the rake, but not past the heel."""
    edge_x, edge_y = frame.inside(0.0, 1.0)
    root_x, root_y = frame.inside(0.0, CORE)
    rake = max(-1.0, min(shape.rake_angle, shape.land_angle / 2))
    sine, cosine = math.sin(-rake), math.cos(-rake)
    dx, dy = root_x - edge_x, root_y - edge_y
    return edge_x + dx * cosine - dy * sine, edge_y + dx * sine + dy * cosine
