"""Pictures of a helical tooth on its rest, seen from the rest: the axis lies level, the edge climbs over it."""

from __future__ import annotations

from tui.figure.sketch.model import Bow, Measure, Name, Part, Sketch, dots, line, part, polar, ring

_RISE = 0.5
"""How far the drawn edge climbs for each step along the axis."""

_AXIS = (0.0, 0.0)


def _edge(first: float = -16.0, last: float = 16.0) -> Part:
    return line((first, _RISE * first), (last, _RISE * last))


def _rest(middle: float = 0.0, half: float = 5.0) -> tuple[Part, ...]:
    """A rest with a top sloped along the edge."""
    left, right = middle - half, middle + half
    return (line((left, -12), (left, _RISE * left), (right, _RISE * right), (right, -12)),)


def _level(half: float = 5.0) -> tuple[Part, ...]:
    top = -_RISE * half
    return (line((-half, -12), (-half, top), (half, top), (half, -12)),)


def _wheel(at: float = 0.0) -> tuple[Part, ...]:
    return (dots((at, 12), (at, -14)), Name((at, 12), "wheel", 0))


def _winding() -> tuple[Part, ...]:
    """A cylinder with an edge that winds once round it."""
    front = tuple((40 * n / 16, -8 * (1 - n / 8)) for n in range(17))
    return (line((-2, 8), (44, 8)), line((-2, -8), (44, -8)), dots((-4, 0), (47, 0)), line(*front))


def _teeth() -> tuple[Part, ...]:
    """The cylinder unrolled: its teeth side by side."""
    lines = tuple(line((x, 0), (x + 8, 14)) for x in (0, 8, 16))
    return (*lines, line((0, 0), (26, 0)), line((6, 14), (28, 14)))


def _ends() -> tuple[Part, ...]:
    """The circle seen along the axis with an edge where it stands under the wheel."""
    edge = polar(_AXIS, 10.0, 200)
    return (
        line(*ring(_AXIS, 10.0)),
        line(_AXIS, polar(_AXIS, 12.0, 200)),
        Name(edge, "wheel", -1),
        Name(_AXIS, "+", 0),
    )


def sketches() -> dict[str, Sketch]:
    """Quantities of a tooth rest."""
    there = polar(_AXIS, 10.0, 235)
    away = (dots(_AXIS, polar(_AXIS, 12.0, 235)), Name(there, "rest", -1, strong=True))
    other = polar(_AXIS, 10.0, 200 + 130)
    return {
        "helix_lead": Sketch(
            _winding(),
            (Measure((0, -11), (40, -11), "lead"), dots((0, -8), (0, -12)), dots((40, 8), (40, -12))),
        ),
        "rest_width": Sketch(
            (_edge(), *_rest()), (Measure((-5, -10), (5, -10), "width"), part((-5, -2.5), (5, 2.5)))
        ),
        "rest_top": Sketch(
            (_edge(), *_level()), (part((-5, -2.5), (5, -2.5)), Name((5, -2.5), "level", 1, strong=True))
        ),
        "rest_offset": Sketch(
            (_edge(), *_rest(-8.0, 3.0), *_wheel(4.0)),
            (Measure((-8, -13), (4, -13), "beside"), dots((-8, -4), (-8, -14))),
        ),
        "rest_rise": Sketch(
            (_edge(), *_rest()),
            (dots((-5, -2.5), (9, -2.5)), dots((5, 2.5), (9, 2.5)), Measure((8, -2.5), (8, 2.5), "rise")),
        ),
        "rest_turn": Sketch(_ends(), (*away, Bow(_AXIS, 6.0, 200, 235, "turn", turns=True))),
        "tooth_turn": Sketch(
            _ends(),
            (
                dots(_AXIS, polar(_AXIS, 12.0, 330)),
                Bow(_AXIS, 6.0, 200, 330, "turn", turns=True),
                Name(other, "end", 1, strong=True),
            ),
        ),
        "tooth_length": Sketch(
            (*_winding()[:3], line((4, -8), (20, 8)), line((36, -8), (36, 8)), line((0, -8), (0, 8))),
            (Measure((0, 11), (36, 11), "length"), part((0, 8), (36, 8))),
        ),
        "tooth_rise": Sketch(
            _teeth(),
            (
                part((0, 0), (8, 14)),
                dots((0, 0), (0, 18)),
                dots((8, 14), (8, 18)),
                Measure((0, 17), (8, 17), "rise"),
            ),
        ),
    }
