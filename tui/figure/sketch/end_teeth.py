"""Pictures of the end of a tool, its teeth at the left, and of the work head that holds it to a cup wheel."""

from __future__ import annotations

from tui.figure.sketch.model import Bow, Measure, Name, Part, Sketch, dots, line, part

_DISH = 4.0
"""How far the drawn middle lies behind the corners; large enough to be seen."""


def _end() -> tuple[Part, ...]:
    """Two end teeth, dished, from the side."""
    return (
        dots((-3, 0), (30, 0)),
        line((26, 10), (0, 10), (_DISH, 2), (12, 2)),
        line((26, -10), (0, -10), (_DISH, -2), (12, -2)),
    )


def _chamfered() -> tuple[Part, ...]:
    """One tooth with a chamfer on its corner."""
    return (dots((-3, 0), (30, 0)), line((26, 12), (5, 12), (0, 7), (2, 0)))


def _head(turn: float, text: str, *, level: bool) -> Sketch:
    """The work head before the wheel, from the side where it is tilted, from above where it is swivelled."""
    rise = turn / 20
    spindle = line((6, -3), (26, -3 + 20 * rise), (25, 3 + 20 * rise), (5, 3), (6, -3))
    wheel = (line((0, -12), (0, 14)), line((-5, -12), (-5, 14)), Name((-5, 12), "cup", -1))
    base: tuple[Part, ...] = (*wheel, spindle)
    if not level:
        base = (*base, line((18, -14), (30, -14), (30, -10), (18, -10), (18, -14)))
    way = (dots((6, 0), (32, 0)), dots((6, 0), (30, 24 * rise)))
    return Sketch(base, (*way, Bow((6, 0), 22.0, 0, turn * 2.7, text)))


def sketches() -> dict[str, Sketch]:
    """Quantities of end teeth."""
    return {
        "dish_angle": Sketch(
            _end(), (part((0, 10), (_DISH, 2)), dots((0, 10), (0, 0)), Bow((0, 10), 7.0, 270, 296.6, "dish"))
        ),
        "dish_depth": Sketch(
            _end(),
            (
                dots((0, 10), (0, 15)),
                dots((_DISH, 2), (_DISH, 15)),
                Measure((0, 14), (_DISH, 14), "depth"),
                part((_DISH, 2), (_DISH, -2)),
            ),
        ),
        "workhead_tilt": _head(8.0, "tilt", level=False),
        "workhead_swivel": _head(6.0, "swivel", level=True),
        "second_workhead_tilt": _head(16.0, "tilt 2", level=False),
        "second_workhead_swivel": _head(11.0, "swivel 2", level=True),
        "corner_angle": Sketch(
            _chamfered(), (part((0, 7), (5, 12)), dots((0, 7), (14, 7)), Bow((0, 7), 9.0, 0, 45, "corner"))
        ),
        "corner_chamfer_relief": Sketch(
            _chamfered(),
            (
                part((0, 7), (5, 12)),
                dots((1.5, 5.5), (6.5, 10.5)),
                Measure((2.5, 9.5), (4.0, 8.0), "", -1),
                Name((-1, 13), "square to it", 0, strong=True),
            ),
        ),
    }
