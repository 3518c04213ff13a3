"""Pictures of the grinding wheel against the tool: heights, tilts, widths, and how it turns."""

from __future__ import annotations

from tui.figure.sketch.model import Arrow, Bow, Measure, Name, Part, Sketch, dots, line, part, polar, ring

_TOOL = (14.0, 0.0)
_WHEEL = (-13.2, 5.0)


def _head() -> tuple[Part, ...]:
    """A straight wheel at the left of the tool, its axis above; behind the edge the land rises."""
    return (
        line(*ring(_WHEEL, 14.0)),
        line(*ring(_TOOL, 14.0, 95, 265)),
        Name(_WHEEL, "+", 0),
        Name(_TOOL, "+", 0),
        Name((14.0, -3.0), "axis of tool", 1),
        Name((_WHEEL[0], _WHEEL[1] - 9), "wheel", 0),
        Name((1.0, -1.0), "edge", 1),
    )


def _rest() -> tuple[Part, ...]:
    """A cup wheel, whose rim is an upright line, and a tool whose edge lies below its axis."""
    edge = polar(_TOOL, 14.0, 205)
    return (
        line((edge[0] - 7, 16), (edge[0] - 7, -14)),
        line((edge[0] - 0.4, 16), (edge[0] - 0.4, -14)),
        Name((edge[0] - 8, 6), "cup wheel", -1),
        line(*ring(_TOOL, 14.0, 95, 265)),
        Name(_TOOL, "+", 0),
        Name((14.0, 3.0), "axis of tool", 1),
        Name(edge, "edge on the rest", 1),
    )


def _turning(marks: tuple[Part, ...]) -> Sketch:
    """A wheel from the front."""
    return Sketch((line(*ring((0, 0), 10.0)), line(*ring((0, 0), 2.0))), marks)


def _land_and_wheel() -> tuple[Part, ...]:
    """A land seen from above with the face of the wheel across it."""
    return (
        dots((-16, 0), (26, 0)),
        line((-12, -4), (20, 10)),
        line((-12, -12), (20, 2)),
        Name((20, 11), "edge", 1),
        Name((20, 2), "heel", 1),
    )


def _shapes() -> Sketch:
    """Straight wheel, straight cup, flaring cup and dish, each cut through its axis."""
    straight = line((0, 0), (0, 14), (4, 14), (4, 0), (0, 0))
    cup = line((10, 0), (10, 14), (18, 14), (18, 11), (12, 11), (12, 3), (18, 3), (18, 0), (10, 0))
    flaring = line((24, 2), (24, 12), (32, 16), (32, 13), (26, 10), (26, 4), (32, 1), (32, -2), (24, 2))
    dish = line((38, 3), (38, 11), (42, 15), (42, 13.5), (39.6, 10), (39.6, 4), (42, 0.5), (42, -1), (38, 3))
    names = ((2, "1"), (14, "6"), (28, "11"), (40, "12"))
    return Sketch(
        (dots((-3, 7), (45, 7)), straight, cup, flaring, dish),
        tuple(Name((x, -5), text, 0, strong=True) for x, text in names),
    )


def _fluted(way: int, dx: float = 0.0) -> tuple[Part, ...]:
    """An upright drill whose flutes rise to the right, or with ``way`` below zero to the left."""
    sides = (line((dx, 0), (dx, 18)), line((dx + 12, 0), (dx + 12, 18)))
    rise = 9.0
    low, high = (0.0, rise) if way > 0 else (rise, 0.0)
    flutes = tuple(line((dx, y + low), (dx + 12, y + high)) for y in (0, 4.5, 9))
    return (*sides, *flutes)


def sketches() -> dict[str, Sketch]:
    """Quantities of the wheel and of how it is set."""
    rim = polar((0, 0), 10.0, 90)
    edge = polar(_TOOL, 14.0, 205)
    level = (dots((_WHEEL[0], _WHEEL[1]), (28, _WHEEL[1])), dots(_TOOL, (40, 0)))
    cylinder = (line((0, 8), (40, 8)), line((0, -8), (40, -8)), dots((-3, 0), (44, 0)))
    flutes = tuple(line((x, -8), (x + 16, 8)) for x in (2, 12, 22))
    contact = (
        line((-14, 0), (14, 0)),
        line((-14, 0), (-14, 8)),
        line((14, 0), (14, 8)),
        Name((0, 5), "wheel", 0),
    )
    return {
        "wheel_head_height": Sketch(_head(), (*level, Measure((24, 0), (24, 5), "height"))),
        "tooth_rest_height": Sketch(
            _rest(),
            (dots(_TOOL, (40, 0)), dots(edge, (40, edge[1])), Measure((38, edge[1]), (38, 0), "height")),
        ),
        "wheel_shape": _shapes(),
        "wheel_diameter": _turning((Measure((-10, 0), (10, 0), "diameter"),)),
        "wheel_new_diameter": _turning((dots(*ring((0, 0), 13.0)), Measure((-13, 0), (13, 0), "when new"))),
        "rotational_speed": _turning((Bow((0, 0), 6.0, 200, -120, "turns", turns=True),)),
        "surface_speed": _turning(
            (
                Arrow(rim, (14, 10), "", 1),
                Name((14, 10), "speed", 1, strong=True),
                part(*ring((0, 0), 10.0, 130, 90)),
            )
        ),
        "helix_angle": Sketch(
            (*cylinder, *flutes), (part((12, -8), (28, 8)), Bow((20, 0), 12.0, 0, 45, "helix"))
        ),
        "helix_hand": Sketch(
            (*_fluted(1), *_fluted(-1, 24.0)),
            (Name((6, -2), "right", 0, strong=True), Name((30, -2), "left", 0, strong=True)),
        ),
        "wheel_tilt": Sketch(
            _land_and_wheel(),
            (
                part((-6, -1), (6, -5.5)),
                dots((-6, -1), (16, -1)),
                dots((6, -5.5), (16, -9.2)),
                Bow((-6, -1), 18.0, 0, -20.5, "tilt"),
            ),
        ),
        "contact_length": Sketch(
            _land_and_wheel(),
            (
                part((-6, -1.4), (8, -3.2)),
                dots((-6, -1.4), (-6, -16)),
                dots((8, -3.2), (8, -16)),
                Measure((-6, -15), (8, -15), "contact"),
            ),
        ),
        "wheel_width": Sketch(contact, (Measure((-14, -3), (14, -3), "width"), part((-14, 0), (14, 0)))),
        "tilt_fall": Sketch(
            (
                line((-14, 4), (14, -2)),
                line((-14, 4), (-12, 12)),
                line((14, -2), (16, 6)),
                Name((0, 7), "wheel", 0),
            ),
            (
                dots((-14, 4), (22, 4)),
                dots((14, -2), (22, -2)),
                Measure((19, -2), (19, 4), "fall"),
                part((-14, 4), (14, -2)),
            ),
        ),
        "round_wheel_relief": Sketch(
            (
                line(*ring((8, 16), 18.0, 205, 300)),
                Name((8, 10), "round wheel", 0),
                Name((0, 0), "edge", -1),
                line((0, 0), (1, -10)),
            ),
            (dots((0, 0), (26, 0)), dots((0, 0), (24, -12.5)), Bow((0, 0), 18.0, 0, -27.5, "relief")),
        ),
    }
