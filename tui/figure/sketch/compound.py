"""Pictures of a tool in a universal vise, from the front, from its end and from above, and of the angles it is set to."""

from __future__ import annotations

from tui.figure.sketch.model import Arrow, Bow, Name, Part, Place, Sketch, dots, line, part, polar


def _turned(places: tuple[Place, ...], degrees: float) -> tuple[Place, ...]:
    """Places turned about the middle of the base."""
    found = []
    for x, y in places:
        ahead, up = polar((0, 0), x, degrees), polar((0, 0), y, degrees + 90)
        found.append((ahead[0] + up[0], ahead[1] + up[1]))
    return tuple(found)


def _front(degrees: float = 0.0, fall: float = 6.0) -> tuple[Part, ...]:
    """The long side of the vise, and a block whose top falls to the right."""
    return (
        line(*_turned(((-18, 0), (18, 0), (18, 6), (-18, 6), (-18, 0)), degrees)),
        line(*_turned(((-14, 6), (-14, 12 + fall / 2), (14, 12 - fall / 2), (14, 6)), degrees)),
    )


def _end(degrees: float = 0.0) -> tuple[Part, ...]:
    """The vise from its end: two jaws, and the block between them falling to the far side."""
    return (
        line(
            *_turned(
                ((-14, 8), (-14, 0), (14, 0), (14, 8), (5, 8), (5, 2), (-5, 2), (-5, 8), (-14, 8)), degrees
            )
        ),
        line(*_turned(((-5, 8), (-5, 15), (5, 11), (5, 8)), degrees)),
    )


def _above(degrees: float = 0.0) -> tuple[Part, ...]:
    """The vise from above: its two jaws."""
    return (
        line(*_turned(((-16, 5), (16, 5), (16, 9), (-16, 9), (-16, 5)), degrees)),
        line(*_turned(((-16, -5), (16, -5), (16, -9), (-16, -9), (-16, -5)), degrees)),
    )


def sketches() -> dict[str, Sketch]:
    """Quantities of compound angles."""
    front, end, above = _front(), _end(), _above()
    top, side = (-14.0, 15.0), (-5.0, 15.0)
    edge = (polar((0, 0), 12.0, 115), polar((0, 0), 12.0, 295))
    rise = dots((-24, 0), (26, 0))
    falls = (line((-16, 0), (-16, 8), (14, 1), (14, 0)), Name((-16, 8), "edge", -1))
    return {
        "along_slope_angle": Sketch(front, (dots(top, (18, 15)), Bow(top, 24.0, 0, -12, "along"))),
        "cross_slope_angle": Sketch(end, (dots(side, (16, 15)), Bow(side, 14.0, 0, -22, "across"))),
        "edge_turn_angle": Sketch(
            above, (dots((0, -14), (0, 14)), part(*edge), Bow((0, 0), 11.0, 90, 115, "turn"))
        ),
        "edge_slope_angle": Sketch(
            (*falls, dots((-20, 0), (20, 0))), (dots((-16, 8), (14, 8)), Bow((-16, 8), 24.0, 0, -13, "slope"))
        ),
        "edge_inclination_angle": Sketch(
            (line((-16, 0), (-16, 9), (16, 3), (16, 0)), dots((-20, 0), (20, 0))),
            (part((-16, 9), (16, 3)), dots((-16, 9), (16, 9)), Bow((-16, 9), 24.0, 0, -11, "inclination")),
        ),
        "normal_slope_angle": Sketch(
            (*above, part(*edge)),
            (
                dots(polar((0, 0), 15.0, 205), polar((0, 0), 15.0, 25)),
                Arrow((0, 0), polar((0, 0), 15.0, 25), "plane square to it", 1),
            ),
        ),
        "base_swivel_angle": Sketch(
            _above(24.0), (dots((-18, 0), (24, 0)), Bow((0, 0), 20.0, 0, 24, "swivel", turns=True))
        ),
        "compound_tilt_angle": Sketch(
            _front(20.0, 10.0), (rise, Bow((0, 0), 22.0, 0, 20, "tilt", turns=True))
        ),
        "first_tilt_angle": Sketch(_end(22.0), (rise, Bow((0, 0), 20.0, 0, 22, "first", turns=True))),
        "second_tilt_angle": Sketch(_front(12.0), (rise, Bow((0, 0), 22.0, 0, 12, "second", turns=True))),
    }
