"""Pictures of a circular land and of the relief behind it: where it ends, and where an indicator shows its end."""

from __future__ import annotations

from tui.figure.sketch.model import Measure, Name, Part, Place, Sketch, area, dots, line, part, polar
from tui.figure.sketch.tooth import AXIS, LAND, RADIUS, angle, behind, circle, over

_FIRST = 90 + LAND / 2
_STRIP, _READ, _WIDE = 16.0, 26.0, 34.0
"""The drawn circular land, where the indicator shows its end, and the land before it is ground, in degrees."""

_SLOPE = 0.16
"""How far the drawn relief falls for each degree; large enough to be seen."""


def _strip(end: float = _STRIP) -> tuple[Place, ...]:
    return tuple(behind(end * n / 6) for n in range(7))


def _relief(start: float = _STRIP, end: float = LAND, *, begun: float = _STRIP) -> tuple[Place, ...]:
    """Places along the relief that begins somewhere behind the edge."""
    turns = [start + (end - start) * n / 8 for n in range(9)]
    return tuple(behind(turned, _SLOPE * (turned - begun)) for turned in turns)


def _tooth(*, axis: bool = False) -> tuple[Part, ...]:
    foot, root = polar(AXIS, RADIUS - 11, _FIRST - 10), polar(AXIS, RADIUS - 15, _FIRST - LAND)
    sides = (dots(AXIS, behind(0.0)), Name(AXIS, "axis", 1)) if axis else ()
    return (circle(), *sides, line(foot, *_strip(), *_relief(), root), Name(behind(0.0), "edge", -1))


def sketches() -> dict[str, Sketch]:
    """Quantities of a circular land."""
    shows = behind(_READ, _SLOPE * (_READ - _STRIP))
    place = behind(44.0, _SLOPE * (44.0 - _STRIP))
    taken = area(*_relief(), *reversed(_relief(_WIDE, LAND, begun=_WIDE)), *reversed(_strip(_WIDE)[3:]))
    return {
        "indicator_division": Sketch(
            _tooth(),
            (part(*_strip()), Measure(behind(_READ), shows, "one division"), dots(shows, behind(_READ, -6))),
        ),
        "first_division_angle": Sketch(
            _tooth(axis=True), (*angle(0.0, _READ, "turn"), Name(shows, "first division", 1, strong=True))
        ),
        "turn_from_edge": Sketch(_tooth(axis=True), (*angle(0.0, 44.0, "turn"), dots(AXIS, place))),
        "land_as_read": Sketch(
            _tooth(), (part(*_strip(), *_relief(_STRIP, _READ)), *over(0.0, _READ, "as it reads"))
        ),
        "margin_now": Sketch(
            (*_tooth(), dots(*_relief(_WIDE, LAND, begun=_WIDE))),
            (part(*_strip(_WIDE)), *over(0.0, _WIDE, "before")),
        ),
        "land_stock": Sketch(_tooth(), (taken, Name(behind(40.0, -3.0), "stock", 1, strong=True))),
    }
