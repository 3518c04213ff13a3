"""Pictures of one tooth seen along the axis: edge, face, land, heel, circle, and what is measured on them."""

from __future__ import annotations

import math
from collections.abc import Callable
from itertools import pairwise

from tui.figure.sketch.model import (
    Arrow,
    Bow,
    Measure,
    Name,
    Part,
    Place,
    Sketch,
    area,
    dots,
    line,
    part,
    polar,
    ring,
)

AXIS: Place = (0.0, 0.0)
RADIUS = 30.0
LAND = 56.0
"""From edge to heel, in degrees."""

RELIEF = 15.0
"""Of the drawn land, in degrees; large enough to be seen, as everything here is to scale."""

_FIRST = 90 + LAND / 2


def behind(turned: float, drop: float = 0.0) -> Place:
    """A place so many degrees behind the edge and so far inside the circle."""
    return polar(AXIS, RADIUS - drop, _FIRST - turned)


def eccentric(turned: float) -> float:
    """The drop of an even cam."""
    return RADIUS * math.tan(math.radians(RELIEF)) * math.radians(turned)


def flat(turned: float) -> float:
    """The drop of one facet; below zero where it stands proud."""
    leans = math.radians(RELIEF)
    return RADIUS * (1 - math.cos(leans) / math.cos(math.radians(turned) - leans))


_CORNERS = ((0.0, 0.0), (18.0, 2.2), (38.0, 5.4), (LAND, 7.0))


def facets(turned: float) -> float:
    """The drop of three facets, by straight lines between their corners."""
    for (start, high), (end, low) in pairwise(_CORNERS):
        if turned <= end:
            first, last = behind(start, high), behind(end, low)
            return RADIUS - _cut(first, last, _FIRST - turned)
    return _CORNERS[-1][1]


def _cut(first: Place, last: Place, degrees: float) -> float:
    """How far from the axis a straight line is met in a direction."""
    turned = math.radians(degrees)
    dx, dy = last[0] - first[0], last[1] - first[1]
    return (first[0] * dy - first[1] * dx) / (math.cos(turned) * dy - math.sin(turned) * dx)


def ground(profile: Callable[[float], float], start: float = 0.0, end: float = LAND) -> tuple[Place, ...]:
    """Places along a profile."""
    return tuple(
        behind(start + (end - start) * n / 12, profile(start + (end - start) * n / 12)) for n in range(13)
    )


def circle(before: float = 8.0, after: float = 8.0, out: float = 0.0) -> Part:
    """The circle of the edges, dotted, from a little before the edge to a little behind the heel."""
    return dots(*(behind(-before + (LAND + before + after) * n / 16, -out) for n in range(17)))


def tooth(profile: Callable[[float], float] = eccentric, *, axis: bool = False) -> tuple[Part, ...]:
    """Edge, face, land and heel; with the axis where something is measured from it."""
    foot, heel = polar(AXIS, RADIUS - 11, _FIRST - 10), behind(LAND, profile(LAND))
    root = polar(AXIS, RADIUS - 15, _FIRST - LAND)
    sides = (dots(AXIS, behind(0.0)), Name(AXIS, "axis", 1)) if axis else ()
    return (
        circle(),
        *sides,
        line(foot, *ground(profile), root),
        Name(behind(0.0), "edge", -1),
        Name(heel, "heel", 1),
    )


def drop_at(turned: float, profile: Callable[[float], float], text: str = "drop", side: int = 1) -> Part:
    """A drop, along the radius."""
    return Measure(behind(turned), behind(turned, profile(turned)), text, side)


def over(first: float, last: float, text: str, top: float = 4.0) -> tuple[Part, ...]:
    """A width over the land, with lines up from both of its ends."""
    left, right = behind(first), behind(last)
    level = max(RADIUS, left[1], right[1]) + top
    return (
        dots(left, (left[0], level + 1)),
        dots(right, (right[0], level + 1)),
        Measure((left[0], level), (right[0], level), text),
    )


def angle(first: float, last: float, text: str) -> tuple[Part, ...]:
    """An angle round the axis."""
    return (
        dots(AXIS, behind(last)),
        Bow(AXIS, 14.0, _FIRST - first, _FIRST - last, text, turns=True),
    )


def _tangent(degrees: float, text: str, profile: Callable[[float], float]) -> Sketch:
    """The angle between the tangent at the edge and the surface."""
    start, rising = behind(0.0), _FIRST - 90
    marks = (dots(start, polar(start, 30.0, rising)), Bow(start, 20.0, rising, rising - degrees, text))
    return Sketch(tooth(profile), marks)


def _worn(marks: tuple[Part, ...], back: float = 12.0) -> Sketch:
    """A tooth whose face is ground back."""
    foot = polar(AXIS, RADIUS - 11, _FIRST - 10 - back)
    edge = behind(back, eccentric(back))
    old = (circle(), dots(polar(AXIS, RADIUS - 11, _FIRST - 10), *ground(eccentric, 0.0, back)))
    new = line(foot, *ground(eccentric, back), polar(AXIS, RADIUS - 15, _FIRST - LAND))
    heel = Name(behind(LAND, eccentric(LAND)), "heel", 1)
    return Sketch((*old, new, heel, Name(edge, "edge", -1)), marks)


def _stock() -> Sketch:
    """How far a face is ground back, square to it."""
    foot = polar(AXIS, RADIUS - 11, _FIRST - 10)
    edge = behind(0.0)
    old = ((foot[0] + edge[0]) / 2, (foot[1] + edge[1]) / 2)
    back = polar(AXIS, RADIUS - 11, _FIRST - 22)
    new = behind(12.0, eccentric(12.0))
    return _worn(
        (
            Measure(old, ((back[0] + new[0]) / 2, (back[1] + new[1]) / 2), "", 1),
            Name(old, "stock", -1, strong=True),
        )
    )


def _forms() -> Sketch:
    """An eccentric relief and one flat side by side."""
    base: list[Part] = []
    for dx, name, profile in ((-20.0, "eccentric", eccentric), (20.0, "flat", flat)):
        way = [(x + dx, y) for x, y in ground(profile)]
        round_ = [(x + dx, y) for x, y in (behind(LAND * n / 12) for n in range(13))]
        base += [
            dots(*round_),
            line((way[0][0] + 1, 14.0), *way, (way[-1][0], 14.0)),
            Name((dx, 16.0), name, 0),
        ]
    cam, facet = [tuple((x + dx, y) for x, y in ground(f)) for dx, f in ((-20.0, eccentric), (20.0, flat))]
    return Sketch(tuple(base), (part(*cam), part(*facet)))


def sketches() -> dict[str, Sketch]:
    """Quantities of one tooth."""
    top = ground(eccentric)
    worn_edge = behind(12.0, eccentric(12.0))
    rising = _FIRST - 12 - 90
    return {
        "land_width": Sketch(tooth(), (part(*top), *over(0.0, LAND, "land width"))),
        "land_measured_as": Sketch(
            tooth(),
            (
                Name(behind(LAND / 2, -3.0), "arc", 0, strong=True),
                part(*(behind(LAND * n / 12) for n in range(13))),
                Measure(behind(0.0), behind(LAND), "chord"),
            ),
        ),
        "land_angle": Sketch(tooth(axis=True), angle(0.0, LAND, "land angle")),
        "heel_drop": Sketch(tooth(), (drop_at(LAND, eccentric, "heel drop"),)),
        "drop": Sketch(tooth(), (drop_at(LAND * 0.6, eccentric, "drop"),)),
        "clear_land_width": Sketch(tooth(flat), over(0.0, 2 * RELIEF, "widest that clears", 7.0)),
        "rub_angle": Sketch(tooth(flat, axis=True), angle(0.0, 2 * RELIEF, "clears this far")),
        "eccentric_relief_angle": _tangent(RELIEF, "relief", eccentric),
        "flat_relief_angle": _tangent(RELIEF, "relief", flat),
        "second_drop": Sketch(
            tooth(), (drop_at(LAND, eccentric, "first"), drop_at(LAND / 2, eccentric, "second drop"))
        ),
        "second_land_width": Sketch(
            tooth(), (*over(0.0, LAND / 2, "way"), drop_at(LAND / 2, eccentric, "second drop"))
        ),
        "eccentric_drop": Sketch(tooth(), (part(*top), drop_at(LAND * 0.75, eccentric, "drop"))),
        "flat_drop": Sketch(tooth(flat), (part(*ground(flat)), drop_at(RELIEF, flat, "drop"))),
        "eccentric_misfit": Sketch(tooth(), _misfit(eccentric)),
        "flat_misfit": Sketch(tooth(flat), _misfit(flat)),
        "metal_removed": Sketch(
            tooth(), (area(*top, *reversed(_round())), Name(behind(30, -3.0), "taken away", 0, strong=True))
        ),
        "metal_left": Sketch(
            tooth(axis=True), (area(AXIS, *top), Name((-10.0, 12.0), "metal left", -1, strong=True))
        ),
        "margin_width": _margin(),
        "relief_form": _forms(),
        "land_after": _worn((part(*ground(eccentric, 12.0)), *over(12.0, LAND, "land after"))),
        "least_land": _worn(
            (
                *over(40.0, LAND, "min. land"),
                dots(behind(40.0, eccentric(40.0)), polar(AXIS, RADIUS - 15, _FIRST - 48)),
            )
        ),
        "relief_after": _worn(
            (
                dots(worn_edge, polar(worn_edge, 26.0, rising)),
                Bow(worn_edge, 18.0, rising, rising - RELIEF, "relief after"),
            )
        ),
        "stock_per_sharpening": _stock(),
        "size_lost": _worn(
            (Measure(behind(12.0), worn_edge, "half of it", 1), part(behind(0.0), *_round(12.0)))
        ),
        "ground_on": _face_or_end(),
        **_cams(),
    }


def _round(end: float = LAND) -> tuple[Place, ...]:
    return tuple(behind(end * n / 12) for n in range(13))


def _misfit(profile: Callable[[float], float]) -> tuple[Part, ...]:
    """A second reading that lies off the form through the first."""
    at = LAND * 0.5
    return (
        Name(behind(at, profile(at) + 6.0), "read", -1, strong=True),
        Measure(behind(at, profile(at)), behind(at, profile(at) + 6.0), "misfit"),
    )


def _margin() -> Sketch:
    """A narrow strip on the circle, and the cleared land behind it."""
    strip = tuple(behind(14.0 * n / 6) for n in range(7))
    body = tuple(behind(17.0 + (LAND - 17.0) * n / 8, 4.0) for n in range(9))
    foot, root = polar(AXIS, RADIUS - 11, _FIRST - 10), polar(AXIS, RADIUS - 15, _FIRST - LAND)
    base = (
        circle(),
        line(foot, *strip, *body, root),
        Name(behind(0.0), "edge", -1),
        Name(body[-1], "heel", 1),
    )
    return Sketch(base, (part(*strip), *over(0.0, 14.0, "margin")))


def _face_or_end() -> Sketch:
    """Where the wheel comes to the tool: along its flute or at its point."""
    tool = (
        line((0, 0), (0, 8), (34, 8)),
        line((0, 0), (34, 0)),
        line((0, 4), (20, 4), (24, 8)),
        dots((-4, 4), (38, 4)),
    )
    marks = (Arrow((12, 14), (12, 5), "face"), Arrow((-12, 6), (-1, 6), "end", 0))
    return Sketch(tool, marks)


def _drawer() -> Sketch:
    """Cams of three throws in a drawer."""
    box = line((-20.0, 9.0), (-20.0, -9.0), (20.0, -9.0), (20.0, 9.0))
    cams: list[Part] = []
    for number, dx in enumerate((-13.0, 0.0, 13.0), 1):
        cam = tuple(polar((dx, 0.0), 6.0 - 0.9 * number * n / 36, 90 - 10 * n) for n in range(37))
        cams += [part(*cam, cam[0]), Name((dx, -0.5), str(number), 0, strong=True)]
    return Sketch((box,), tuple(cams))


def _cams() -> dict[str, Sketch]:
    """Even cams with one lobe, and with a lobe for each tooth."""
    one = tuple(polar(AXIS, 10.0 - 3.0 * n / 36, 90 - 10 * n) for n in range(37))
    lobes = [
        tuple(polar(AXIS, 10.0 - 2.4 * n / 12, 90 - 120 * lobe - 10 * n) for n in range(13))
        for lobe in range(3)
    ]
    many = tuple(
        place for lobe in lobes for place in (*lobe, polar(AXIS, 10.0, 90 - 120 * lobes.index(lobe) - 120))
    )
    hub = (line(*ring(AXIS, 2.0)),)
    step = Measure((1.0, 7.0), (1.0, 10.0), "throw", 1)
    turn = Bow(AXIS, 13.0, 85.0, -260.0, "", turns=True)
    aside = [tuple((x + dx, y) for x, y in places) for dx, places in ((-14.0, one), (14.0, many))]
    hubs = (line(*ring((-14.0, 0.0), 2.0)), line(*ring((14.0, 0.0), 2.0)))
    names = (Name((-14.0, -13.0), "turn", 0, strong=True), Name((14.0, -13.0), "tooth", 0, strong=True))
    return {
        "throw_per_turn": Sketch((*hub, line(*one, one[0])), (step, turn)),
        "throw_per_tooth": Sketch(
            (*hub, line(*many)),
            (
                Measure((1.0, 7.6), (1.0, 10.0), "throw", 1),
                Bow(AXIS, 13.0, 85.0, -30.0, "one tooth", turns=True),
            ),
        ),
        "chosen_throw": Sketch((*hub,), (part(*one, one[0]), step)),
        "cam_throws": _drawer(),
        "throw_per": Sketch((*hubs, line(*aside[0], aside[0][0]), line(*aside[1])), names),
    }
