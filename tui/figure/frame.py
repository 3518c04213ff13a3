"""How a tooth is laid on a sheet: how large, where, and how many times its relief is exaggerated.

The middle of the land lies on top. Depth, which is measured square to the chord from edge to heel, may be drawn larger
than it is; the way across never is. So what is straight stays straight: a flat is a straight line at every exaggeration,
the circle is drawn as an arch that is as many times higher, and a place lies on its arch, inside or outside it, exactly
where it does on the tool. A drop is drawn as many times as deep in the middle of the land; toward edge and heel, where
the radius leans by half the land angle, its depth is the drop times the cosine of that, which is 0.92 at the widest land
that is exaggerated. Derived.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from tui.figure.alphabet import CELL_HEIGHT
from tui.figure.canvas import Point
from tui.figure.shape import Shape

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

_SHARE = 0.6
"""How much of the height the arch, the relief and what stands proud may take together."""

_BODY = 0.3
"""How much of the face is seen under the land at least, as a share of the width of the land."""

_ASIDE = 0.35
"""How far other profiles may stretch the drawing, as a share of what the chosen one takes."""

TRUE_FROM = math.pi / 4
"""From this land angle on everything is drawn to scale."""

CORE = 0.3
"""How far from the axis the foot of a tooth is drawn, in radii."""

_ARC = 32
"""Pieces of an arc that the size of a drawing is found from."""


@dataclass(frozen=True)
class Frame:
    """From the angle behind the edge and the drop to a place on the sheet.

    Attributes:
        land_angle: from edge to heel, in radians; the middle of the land is on top.
        times: how many times the depth is drawn as large as it is.
        scale: cells for a length of one radius.
        chord: where the middle of the straight way from the edge to the heel on the circle lies on the sheet.
    """

    land_angle: float
    times: int
    scale: float
    chord: Point

    def place(self, angle: float, drop: float = 0.0) -> Point:
        """Where a point lies, its depth exaggerated.

        Args:
            angle: behind the edge, in radians.
            drop: below the circle, in radii.
        """
        x, y = _above_chord(self.land_angle, angle, drop)
        return self.chord[0] + self.scale * x, self.chord[1] - self.scale * self.times * y

    def inward(self, start: Point, leaning: float, length: float) -> Point:
        """Where a straight way into the tool ends that is drawn true, nothing of it exaggerated.

        Args:
            start: on the sheet.
            leaning: from straight down, toward the heel, in radians.
            length: in radii.
        """
        return start[0] + self.scale * length * math.sin(leaning), start[1] + self.scale * length * math.cos(
            leaning
        )


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
    places = _places(shape)
    left, right = min(x for x, _ in places), max(x for x, _ in places)
    low, high = min(y for _, y in places), max(y for _, y in places)
    body = _BODY * (right - left) if shape.land_angle < math.pi else 0.1
    scale = width / (right - left)
    times = _times(shape, high - low, height / scale - body, _SHARE * height / scale)
    if times == 1:
        low, high = _with_others(shape, low, high)
    scale = min(scale, height / (times * (high - low) + body))
    down = (above + 0.25) * CELL_HEIGHT + scale * times * high
    return Frame(shape.land_angle, times, scale, ((columns - scale * (left + right)) / 2, down))


def _above_chord(land_angle: float, angle: float, drop: float) -> Point:
    """A place on the tool, in radii, from the middle of the chord: across toward the heel, and up."""
    turned, radius = angle - land_angle / 2, max(1 - drop, 0.0)
    return radius * math.sin(turned), radius * math.cos(turned) - math.cos(land_angle / 2)


def _places(shape: Shape) -> list[Point]:
    """Places that have to lie on the sheet: the circle over the land, and the chosen profile."""
    circle = [_above_chord(shape.land_angle, shape.land_angle * n / _ARC, 0.0) for n in range(_ARC + 1)]
    return circle + [_above_chord(shape.land_angle, *point) for point in shape.outlines[0].points]


def _with_others(shape: Shape, low: float, high: float) -> tuple[float, float]:
    """The lowest and the highest place of all profiles, of the others only what lies near the chosen one."""
    near = _ASIDE * (high - low)
    found = [_above_chord(shape.land_angle, *point)[1] for one in shape.outlines[1:] for point in one.points]
    seen = [y for y in found if low - near <= y <= high + near]
    return min([low, *seen]), max([high, *seen])


def _times(shape: Shape, span: float, room: float, share: float) -> int:
    """The largest round exaggeration with which arch, relief and proud metal fit, all in radii."""
    chosen = shape.outlines[0]
    if shape.land_angle >= TRUE_FROM or (chosen.deepest == 0 and chosen.proudest == 0):
        return 1
    fitting = [times for times in TIMES if times * span <= min(room, share)]
    return fitting[-1] if fitting else 1


def foot_of_face(frame: Frame, shape: Shape) -> Point:
    """Where the face ends inside the tool; it leans back from the radius by the rake, true to the angle."""
    return frame.inward(frame.place(0.0), frame.land_angle / 2 + shape.rake_angle, 1 - CORE)


def foot_of_radius(frame: Frame) -> Point:
    """Where the radius to the edge ends that a rake is seen against."""
    return frame.inward(frame.place(0.0), frame.land_angle / 2, 1 - CORE)


def foot_of_heel(frame: Frame, shape: Shape) -> Point:
    """Where the back of the tooth ends: toward the axis, but never across the face."""
    last, drop = shape.outlines[0].points[-1]
    heel, edge = frame.place(last, drop), frame.place(0.0)
    x, y = frame.inward(heel, frame.land_angle / 2 - last, 1 - CORE)
    least = foot_of_face(frame, shape)[0] + 0.4 * max(heel[0] - edge[0], 0.0)
    return (max(x, least) if frame.land_angle < math.pi else x), y
