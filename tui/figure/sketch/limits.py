"""Pictures of limits of size, as a drawing of fits shows them: zones of tolerance above the line of the nominal size."""

from __future__ import annotations

from tui.figure.sketch.model import Measure, Name, Part, Sketch, area, dots, line, part

_HOLE, _REAMER, _OVER = (0.0, 12.0), (5.0, 9.0), 14.0
"""The zones of hole and reamer above the line of the nominal size, and a reamer that is still too large."""


def _zone(left: float, limits: tuple[float, float]) -> tuple[tuple[float, float], ...]:
    low, high = limits
    return (left, low), (left, high), (left + 12, high), (left + 12, low), (left, low)


def _base(*, named: bool = True) -> tuple[Part, ...]:
    """Both zones on the line of the nominal size."""
    names = (Name((10, -3), "hole", 0), Name((28, -3), "reamer", 0)) if named else ()
    return dots((0, 0), (44, 0)), line(*_zone(4, _HOLE)), line(*_zone(22, _REAMER)), *names


def _limit(left: float, height: float, text: str) -> tuple[Part, ...]:
    return part((left, height), (left + 12, height)), Name((left + 13, height), text, 1, strong=True)


_BASIC = 3.0
"""How high the drawn pitch line of a thread lies."""


def _flank(*, named: bool = True) -> tuple[Part, ...]:
    """Two threads of a tap on the line of the basic pitch diameter."""
    threads = line((0, -3), (6, 9), (12, -3), (18, 9), (24, -3))
    words = (Name((40, _BASIC), "basic", 1),) if named else ()
    return threads, dots((-2, _BASIC), (40, _BASIC)), *words


def _tap() -> tuple[Part, ...]:
    """The zone of a tap above the line of the basic pitch diameter."""
    return *_flank(), line((26, 6), (38, 6), (38, 11), (26, 11), (26, 6))


def _of_taps() -> dict[str, Sketch]:
    tap = _tap()
    worn = (
        *_flank(named=False),
        line((26, 9), (38, 9)),
        line((26, 5), (38, 5)),
        Name((39, 9), "min.", 1),
        Name((39, 5), "now", 1),
    )
    return {
        "tap_limit": Sketch(
            tap, (area((26, 6), (38, 6), (38, 11), (26, 11)), Name((39, 8.5), "H3", 1, strong=True))
        ),
        "tap_lower_limit": Sketch(tap, (part((26, 6), (38, 6)), Name((39, 6), "min.", 1, strong=True))),
        "tap_upper_limit": Sketch(tap, (part((26, 11), (38, 11)), Name((39, 11), "max.", 1, strong=True))),
        "tap_pitch_diameter": Sketch(
            (
                dots((-3, 0), (30, 0)),
                line((0, 6), (4, 12), (8, 6), (12, 12), (16, 6), (20, 12), (24, 6)),
                line((0, -6), (4, -12), (8, -6), (12, -12), (16, -6), (20, -12), (24, -6)),
                *(Name(at, "o", 0) for at in ((8, 8.5), (16, 8.5), (12, -8.5))),
            ),
            (dots((-2, 9), (30, 9)), dots((-2, -9), (30, -9)), Measure((27, -9), (27, 9), "over wires")),
        ),
        "above_least": Sketch(
            worn, (Measure((32, 5), (32, 9), ""), Name((24, 12), "worn by", 1, strong=True))
        ),
    }


def _of_nuts() -> dict[str, Sketch]:
    """The zone of a nut's pitch diameter, and how long it holds its screw."""
    nut = (*_flank(), line((26, _BASIC), (38, _BASIC), (38, 13), (26, 13), (26, _BASIC)))
    zone = area((26, _BASIC), (38, _BASIC), (38, 13), (26, 13))
    screw = (
        line((4, 8), (24, 8), (24, 2), (4, 2), (4, 8)),
        line((4, -8), (24, -8), (24, -2), (4, -2), (4, -8)),
        dots((-4, 0), (34, 0)),
        Name((14, 5), "nut", 0),
    )
    return {
        "thread_class": Sketch(nut, (zone, Name((39, 8), "2B", 1, strong=True))),
        "thread_lower_limit": Sketch(
            nut, (part((26, _BASIC), (38, _BASIC)), Name((30, 0), "min.", 0, strong=True))
        ),
        "thread_upper_limit": Sketch(nut, (part((26, 13), (38, 13)), Name((39, 13), "max.", 1, strong=True))),
        "engagement_length": Sketch(screw, (Measure((4, -11), (24, -11), "engaged"),)),
    }


def sketches() -> dict[str, Sketch]:
    """Quantities of limits."""
    return {**_of_holes(), **_of_taps(), **_of_nuts()}


def _of_holes() -> dict[str, Sketch]:
    base = _base()
    worn = (*_base(named=False), part((22, 3), (34, 3)), Name((28, -3), "worn", 0))
    return {
        "nominal_diameter": Sketch(base, (part((0, 0), (44, 0)), Name((36, 2), "nominal", 0, strong=True))),
        "measured_diameter": Sketch(
            (
                dots((-10, 0), (16, 0)),
                line((-8, 6), (14, 6)),
                line((-8, -6), (14, -6)),
                line((14, 6), (14, -6)),
            ),
            (Measure((4, -6), (4, 6), "measured"), part((1, 9), (1, 6)), part((1, -9), (1, -6))),
        ),
        "hole_tolerance": Sketch(base, (area(*_zone(4, _HOLE)[:-1]), Measure((2, 0), (2, 12), "H7", -1))),
        "hole_lower_limit": Sketch(base, _limit(4, 0.0, "min.")),
        "hole_upper_limit": Sketch(base, _limit(4, 12.0, "max.")),
        "reamer_lower_limit": Sketch(base, _limit(22, 5.0, "min.")),
        "reamer_upper_limit": Sketch(base, _limit(22, 9.0, "max.")),
        "left_to_grind": Sketch(
            (*base, line((22, _OVER), (34, _OVER))), (Measure((28, 7), (28, _OVER), "grind"),)
        ),
        "circle_ground_to": Sketch((*base, line((22, _OVER), (34, _OVER))), _limit(22, 7.0, "ground")),
        "left_to_wear": Sketch(worn, (Measure((31, 0), (31, 3), "wear"),)),
    }
