"""Pictures of the flanks of a thread, seen from the side: how they lean, and how they fall away behind the edge."""

from __future__ import annotations

from tui.figure.sketch.model import Bow, Measure, Name, Part, Sketch, dots, line, part

_FALL = 3.0
"""How far the drawn profile has fallen toward the axis; large enough to be seen."""


def _profile() -> tuple[Part, ...]:
    """Two threads as their edge cuts them."""
    return (line((-4, 0), (0, 0), (6, 10.4), (9, 10.4), (15, 0), (18, 0), (24, 10.4), (27, 10.4)),)


def _fallen() -> tuple[Part, ...]:
    """The same threads at the heel, closer to the axis."""
    down = -_FALL
    places = (
        (-4.0, 0.0),
        (0.0, 0.0),
        (6.0, 10.4),
        (9.0, 10.4),
        (15.0, 0.0),
        (18.0, 0.0),
        (24.0, 10.4),
        (27.0, 10.4),
    )
    return (
        dots(*((x, y + down) for x, y in places)),
        Name((27.0, 10.4 + down), "heel", 1),
        Name((27.0, 10.4), "edge", 1),
    )


def sketches() -> dict[str, Sketch]:
    """Quantities of a flank."""
    # Square to the flank from (3, 5.2): one step is (sin 60, -cos 60); the fall goes half that way.
    square = (3 + _FALL * 0.5 * 0.866, 5.2 - _FALL * 0.5 * 0.5)
    return {
        "flank_angle": Sketch(
            _profile(),
            (part((15, 0), (9, 10.4)), dots((15, 0), (15, 13)), Bow((15, 0), 9.0, 90, 120, "flank")),
        ),
        "crest_drop": Sketch(
            (*_profile(), *_fallen()),
            (Measure((7.5, 10.4), (7.5, 10.4 - _FALL), "drop"), part((6, 10.4), (9, 10.4))),
        ),
        "flank_gap": Sketch(
            (*_profile(), *_fallen()), (Measure((3, 5.2), square, "gap", -1), part((0, 0), (6, 10.4)))
        ),
        "flank_side_angle": Sketch(
            (
                line((0, 0), (26, 0)),
                line((26, 0), (26, -8)),
                Name((0, 0), "edge", -1),
                Name((26, -8), "heel", 1),
            ),
            (
                part((0, 0), (26, -8)),
                Bow((0, 0), 18.0, 0, -17.1, "sideways"),
                dots((26, 0), (26, 6)),
                Name((26, 6), "lead off", 0),
            ),
        ),
        "flank_relief_angle": Sketch(
            (*_profile(), line((34, 0), (52, 0)), Name((34, 0), "edge", -1)),
            (
                part((15, 0), (9, 10.4)),
                part((34, 0), (52, -6)),
                Bow((34, 0), 13.0, 0, -18.4, "relief"),
                dots((12, 5.2), (20, 9.8)),
            ),
        ),
    }
