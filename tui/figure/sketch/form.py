"""Pictures of a rounded corner from the side, and of the cross hole of a countersink without flutes."""

from __future__ import annotations

import math

from tui.figure.sketch.model import Bow, Measure, Name, Part, Place, Sketch, dots, line, part, polar, ring

_CENTRE: Place = (8.0, 6.0)
_ROUND = 8.0
_AT = polar(_CENTRE, _ROUND, 135.0)
"""A place in the middle of the drawn corner."""

_HOLE = 2.5
"""Half of the drawn cross hole; it crosses the axis at 12, tilted by 45 degrees."""


def _corner() -> tuple[Part, ...]:
    return (
        dots((-3, 0), (34, 0)),
        line((0, 0), *ring(_CENTRE, _ROUND, 180, 90), (30, 14)),
        Name((-1, 2), "end", -1),
        Name((28, 16), "land", 0),
    )


def _wall(side: int) -> tuple[Place, Place]:
    """One wall of the cross hole, from the lower side of the cone to the body."""
    dx, dy = side * _HOLE / math.sqrt(2), -side * _HOLE / math.sqrt(2)
    low = (-9 - 0.75 * dx - dy) / 1.75
    return (12 + dx + low, dy + low), (12 + dx + 12 - dy, 12.0)


def _pierced() -> tuple[Part, ...]:
    return (
        dots((-3, 0), (33, 0)),
        line((30, 12), (16, 12), (0, 0), (16, -12), (30, -12)),
        line(*_wall(1)),
        line(*_wall(-1)),
    )


def _across(place: Place, text: str) -> tuple[Part, ...]:
    x, y = place
    return (Measure((x, -abs(y)), (x, abs(y)), text),)


def _corners() -> dict[str, Sketch]:
    base, (x, y) = _corner(), _AT
    return {
        "corner_radius": Sketch(base, (Measure(_CENTRE, _AT, ""), Name((9, 5), "radius", 1, strong=True))),
        "profile_angle": Sketch(
            base,
            (dots(_AT, (x + 16, y)), part((x - 4, y - 4), (x + 8, y + 8)), Bow(_AT, 9.0, 0, 45, "profile")),
        ),
        "least_form_relief": Sketch(
            base,
            (
                dots((2.5, 0), *ring((10, 4), 7.5, 180, 90), (30, 11.5)),
                Measure(_AT, polar((10, 4), 7.5, 135.0), ""),
                Name((10, 4), "min. square to it", 1, strong=True),
            ),
        ),
    }


def _holes() -> dict[str, Sketch]:
    base, slant = _pierced(), _HOLE / math.sqrt(2)
    rim = (line(*ring((12, 9), 6.0)), Name((12, 9), "hole", 0))
    at = polar((12, 9), 6.0, 35.0)
    return {
        "cross_hole_diameter": Sketch(
            base,
            (
                Measure((16 + slant, 4 - slant), (16 - slant, 4 + slant), ""),
                Name((19, 2), "hole", 1, strong=True),
            ),
        ),
        "cross_hole_tilt": Sketch(base, (dots((7, -5), (26, 14)), Bow((12, 0), 11.0, 0, 45, "tilt"))),
        "cross_hole_height": Sketch(
            base,
            (dots((0, 0), (0, -16)), dots((12, 0), (12, -16)), Measure((0, -15), (12, -15), "height", -1)),
        ),
        "edge_from_diameter": Sketch(base, _across(_wall(-1)[0], "from")),
        "edge_to_diameter": Sketch(base, _across(_wall(1)[0], "to")),
        "edge_inclination": Sketch(
            rim,
            (
                dots((at[0], 2), (at[0], 19)),
                part(polar(at, 7.0, 125.0), polar(at, 7.0, 305.0)),
                Bow(at, 6.0, 90, 125, "leans"),
            ),
        ),
        "edge_rake_angle": Sketch(
            (
                line((0, 0), (16, 0)),
                line((16, 0), (12, -11)),
                Name((6, 2), "cone", 0),
                Name((20, -9), "hole", 1),
            ),
            (dots((16, 3), (16, -12)), Bow((16, 0), 9.0, 250, 270, "rake")),
        ),
    }


def sketches() -> dict[str, Sketch]:
    """Quantities of forms."""
    return {**_corners(), **_holes()}
