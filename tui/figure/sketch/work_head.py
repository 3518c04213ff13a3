"""Pictures of a drill on a work head: rolled, seen from the front, and swivelled to the wheel, seen from above."""

from __future__ import annotations

from tui.figure.sketch.model import (
    Bow,
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

_R = 12.0


def _front(turned: float) -> tuple[Part, ...]:
    """A drill from the front, turned so far (in degrees) from where its lip lies level."""

    def at(x: float, y: float) -> Place:
        away = (x * x + y * y) ** 0.5
        (across, up) = (x / away, y / away)
        ahead = polar((0.0, 0.0), away, turned)
        side = polar((0.0, 0.0), away, turned + 90)
        return across * ahead[0] + up * side[0], across * ahead[1] + up * side[1]

    return (
        line(*ring((0, 0), _R, 12 + turned, 140 + turned)),
        line(*ring((0, 0), _R, 192 + turned, 320 + turned)),
        line(at(11.7, 2.2), at(1.8, 2.2), at(-1.8, -2.2), at(-11.7, -2.2)),
    )


def _above(axis: float, half: float) -> tuple[Part, ...]:
    """The face of the wheel, and a drill whose axis stands so far (in degrees) to it, one flank against it."""
    tip, along = (0.0, 8.0), axis - 90
    near, far = polar(tip, 14.0, along - half), polar(tip, 14.0, along + half)
    return (
        line((0, -16), (0, 16)),
        line((-5, 16), (-5, -16)),
        Name((-5, 12), "wheel", -1),
        line(polar(near, 22.0, along), near, tip, far, polar(far, 22.0, along)),
        dots(tip, polar(tip, 34.0, along)),
    )


def sketches() -> dict[str, Sketch]:
    """Quantities of facets ground on a work head."""
    level = dots((-18, 0), (20, 0))
    tip = (0.0, 8.0)
    corner = polar((0.0, 0.0), _R, 10.6)
    return {
        "roll_angle": Sketch((*_front(20.0), level), (Bow((0, 0), 17.0, 0, 20, "roll", turns=True),)),
        "second_roll_angle": Sketch(
            (*_front(42.0), level),
            (
                Bow((0, 0), 17.0, 0, 42, "roll", turns=True),
                area((0, 0), polar((0, 0), _R, 10), polar((0, 0), _R, -30)),
            ),
        ),
        "axis_to_wheel_angle": Sketch(_above(57.5, 57.5), (Bow(tip, 19.0, -90, -32.5, "axis to wheel"),)),
        "second_axis_to_wheel_angle": Sketch(
            _above(46.0, 59.0),
            (part(tip, (0, -6)), Bow(tip, 19.0, -90, -44, "second facet")),
        ),
        "corner_relief_angle": Sketch(
            (*_front(0.0), level),
            (
                part(*ring((0, 0), _R, 10.6, -30)),
                Name(corner, "corner", 1, strong=True),
                dots((0, 0), corner),
            ),
        ),
    }
