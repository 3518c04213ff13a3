"""The drawing model of a tool seen from the side: its outline over the axis, not a picture."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from geometry.cone.relief import half_angle_parts

BODY = 0.8
"""How much of the body is drawn behind the edges, in radii of the largest diameter."""

LONGEST = 20.0
"""The longest cone that is drawn, in radii of its largest diameter; a longer one looks like a cylinder."""

FURTHEST = 1e9
"""In mm: no tool is as large, and none is as small as one part of it."""


@dataclass(frozen=True)
class Mark:
    """A named place on the outline.

    Attributes:
        name: in a word or two.
        behind: how far behind the front of the drawing, in mm.
        radius: how far from the axis, in mm.
    """

    name: str
    behind: float
    radius: float


@dataclass(frozen=True)
class SideView:
    """One half of a tool seen from the side; the other half is its mirror image.

    Attributes:
        outline: pairs of the way behind the front and of the radius, both in mm, the front first.
        marks: places to name.
        supposed: what of it nobody measured, in words; empty where all of it is to scale.
        one_side: whether one side of the axis tells all that there is to see, and may be drawn larger.
    """

    outline: tuple[tuple[float, float], ...]
    marks: tuple[Mark, ...] = ()
    supposed: str = ""
    one_side: bool = False


def cone_view(included_angle: float, diameters: Sequence[float]) -> SideView | None:
    """A cone through several diameters with a body behind it; from its tip where only one is given.

    Args:
        included_angle: of the cone, in radians, from zero to half a turn.
        diameters: of places on it, in mm, above zero, in any order.

    Returns:
        The view; nothing for a cone too long to be drawn.

    Example:
        >>> cone_view(math.radians(90), (20.0, 6.0)).outline
        ((0.0, 3.0), (7.0, 10.0), (15.0, 10.0))
    """
    radii = sorted({diameter / 2 for diameter in diameters})
    along, across = half_angle_parts(included_angle)
    front = radii[0] if len(radii) > 1 or across == 0 else 0.0
    if (radii[-1] - front) * along > LONGEST * radii[-1] * across:
        return None
    places = [(round((radius - front) * along / across, 9) if across else 0.0, radius) for radius in radii]
    names = ["smallest", *[f"place {len(radii) - n}" for n in range(1, len(radii) - 1)], "largest"]
    marks = [Mark(name, *place) for name, place in zip(names[-len(radii) :], places, strict=True)]
    start = [] if len(radii) > 1 else [(0.0, front)]
    return SideView((*start, *places, _body(places[-1])), tuple(marks))


def point_view(point_angle: float, diameter: float) -> SideView | None:
    """The point of a drill with a body behind it.

    Args:
        point_angle: the whole angle, in radians, above zero to half a turn.
        diameter: of the drill, in mm, above zero.

    Returns:
        The view; nothing for a point too long to be drawn.

    Example:
        >>> [mark.name for mark in point_view(math.radians(118), 10.0).marks]
        ['lip', 'corner']
    """
    view = cone_view(point_angle, (diameter,))
    if view is None:
        return None
    corner = view.marks[-1]
    return SideView(
        view.outline,
        (Mark("lip", corner.behind / 2, corner.radius / 2), Mark("corner", corner.behind, corner.radius)),
    )


def lead_view(
    diameter: float, bevel_angle: float, lead_length: float | None, example: float
) -> SideView | None:
    """The bevel lead of a reamer with a body behind it.

    Args:
        diameter: of the lands, in mm, above zero.
        bevel_angle: of one side to the axis, in radians, between zero and a right angle.
        lead_length: along the axis, in mm; nothing where nobody measured it.
        example: the length to draw instead, in mm.

    Returns:
        The view; nothing for a lead too long to be drawn.

    Example:
        >>> lead_view(20.0, math.radians(45), 2.0, 1.0).outline
        ((0.0, 8.0), (2.0, 10.0), (10.0, 10.0))
    """
    radius, slope = diameter / 2, math.tan(bevel_angle)
    long = min(example, radius / 2 / slope) if lead_length is None else lead_length
    if long > LONGEST * radius:
        return None
    start, corner = (0.0, round(max(radius - long * slope, 0.0), 9)), (long, radius)
    return SideView(
        (start, corner, _body(corner)),
        (Mark("start", *start), Mark("corner", *corner)),
        "length of the lead as an example" if lead_length is None else "",
    )


def step_view(diameters: Sequence[float], included_angles: Sequence[float]) -> SideView | None:
    """A step drill: its steps from the point up, with a shoulder between each two.

    Args:
        diameters: of the steps in mm, rising.
        included_angles: of the shoulders in radians, one less than there are steps.

    Returns:
        The view, its steps as long as they are drawn and not as they are; nothing where a shoulder is too
        long to be drawn.

    Example:
        >>> [mark.name for mark in step_view((6.0, 8.0), (math.radians(90),)).marks]
        ['step 1', 'shoulder 1', 'step 2']
    """
    length = BODY * diameters[-1] / 2
    outline, marks = [(0.0, diameters[0] / 2)], []
    for number, diameter in enumerate(diameters, 1):
        behind, radius = outline[-1][0], diameter / 2
        outline.append((behind + length, radius))
        marks.append(Mark(f"step {number}", behind + length / 2, radius))
        if number < len(diameters):
            along, across = half_angle_parts(included_angles[number - 1])
            outer = diameters[number] / 2
            rise = outer - radius
            if rise * along > LONGEST * diameters[-1] / 2 * across:
                return None
            shoulder = behind + length + rise * along / across
            outline.append((shoulder, outer))
            marks.append(Mark(f"shoulder {number}", (behind + length + shoulder) / 2, radius + rise / 2))
    return SideView(tuple(outline), tuple(marks), "lengths of the steps as an example")


def chamfer_view(
    diameter: float, point_diameter: float, length: float, pitch: float, depth: float, taper: float = 0.0
) -> SideView:
    """The front of a tap: the chamfered threads and a few full ones.

    Args:
        diameter: over the crests of the first full thread, in mm, above zero.
        point_diameter: at the front, in mm.
        length: of the chamfer, in mm, above zero.
        pitch: from thread to thread, in mm, above zero.
        depth: of the thread, in mm.
        taper: how much the diameter grows for each unit of length, from zero.

    Example:
        >>> view = chamfer_view(12.0, 9.9, 7.0, 1.75, 1.07)
        >>> view.outline[0], [mark.name for mark in view.marks]
        ((0.0, 4.93), ['point', 'first full thread'])
    """
    point, crest = point_diameter / 2, diameter / 2
    outline = []
    for half in range(2 * math.ceil(length / pitch) + 7):
        behind = half * pitch / 2
        full = crest + taper / 2 * (behind - length)
        cone = point + (crest - point) * behind / length if behind < length else full
        outline.append((behind, max(0.0, min(cone, full if half % 2 else full - depth))))
    marks = (Mark("point", 0.0, outline[0][1]), Mark("first full thread", length, crest))
    return SideView(tuple(outline), marks, one_side=True)


def is_drawable(view: SideView) -> bool:
    """Whether the places of a view are of this world, none in front of the one before it, with width and length.

    Example:
        >>> is_drawable(SideView(((0.0, 1.0), (2.0, 1.0)))), is_drawable(SideView(((0.0, 1.0),)))
        (True, False)
    """
    places = [number for place in view.outline for number in place]
    if len(view.outline) < 2 or not all(0 <= number < FURTHEST for number in places):
        return False
    ordered = all(before[0] <= after[0] for before, after in pairwise(view.outline))
    return ordered and min(view.outline[-1][0], max(radius for _, radius in view.outline)) > 1 / FURTHEST


def _body(place: tuple[float, float]) -> tuple[float, float]:
    behind, radius = place
    return behind + BODY * radius, radius
