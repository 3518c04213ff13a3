"""Pictures of the small end of a taper pipe tap: in its ring gauge, cut back, and in the hole; the point is at the left."""

from __future__ import annotations

from tui.figure.sketch.model import Measure, Name, Part, Place, Sketch, dots, line, part

_RISE = 0.22
"""How much the drawn thread grows; large enough to be seen."""

_FACE, _PLANE, _END = 16.0, 28.0, 40.0
"""Small and large face of the gauge, and where the drawing ends."""


def _high(x: float) -> float:
    return 5.0 + _RISE * x


def _side(way: int, start: float = 0.0) -> tuple[Place, ...]:
    """One side of the thread, from groove to groove."""
    places: list[Place] = []
    x = start
    while x < _END:
        places += [(x, way * (_high(x) - 1.2)), (x + 2.0, way * (_high(x + 2.0) + 1.2))]
        x += 4.0
    return tuple(places)


def _tap(start: float = 0.0) -> tuple[Part, ...]:
    """The tap, cut off where it starts."""
    end = line((start, _high(start) - 1.2), (start, -_high(start) + 1.2))
    return dots((-6, 0), (44, 0)), end, line(*_side(1, start)), line(*_side(-1, start))


def _ring() -> tuple[Part, ...]:
    """A ring gauge on the tap."""
    return tuple(
        line(
            (_FACE, way * (_high(_FACE) + 1.6)),
            (_FACE, way * 19.0),
            (_PLANE, way * 19.0),
            (_PLANE, way * (_high(_PLANE) + 1.6)),
        )
        for way in (1, -1)
    )


def _along(start: float, end: float, text: str, level: float = 22.5) -> tuple[Part, ...]:
    return (
        dots((start, 0.0), (start, level + 1)),
        dots((end, 0.0), (end, level + 1)),
        Measure((start, level), (end, level), text),
    )


def sketches() -> dict[str, Sketch]:
    """Quantities of a taper pipe tap."""
    held = (*_tap(), *_ring())
    cut = (*_tap(8.0), *_ring(), dots((0, _high(0)), (8, _high(8))), dots((0, -_high(0)), (8, -_high(8))))
    hole = (
        *_tap(),
        line((_PLANE, 20), (_PLANE, _high(_PLANE) + 1.6), (-4, 6.5)),
        line((_PLANE, -20), (_PLANE, -_high(_PLANE) - 1.6), (-4, -6.5)),
    )
    full = tuple(Name((6.0 + 4 * n, _high(6.0 + 4 * n) + 3.6), str(n + 1), 0, strong=True) for n in range(3))
    lost = tuple(Name((2.0 + 4 * n, _high(2.0 + 4 * n) + 3.6), str(n + 1), 0, strong=True) for n in range(2))
    return {
        "gauge_projection": Sketch(held, _along(0.0, _FACE, "projection")),
        "projection_after": Sketch(cut, _along(8.0, _FACE, "after")),
        "gauge_length": Sketch(held, _along(_FACE, _PLANE, "gauge")),
        "end_pitch_diameter": Sketch(
            _tap(), (dots((0, 5.0), (30, _high(30))), dots((0, -5.0), (30, -_high(30))), Measure((0, -5), (0, 5), "at the end", -1))
        ),
        "tap_depth": Sketch(hole, _along(0.0, _PLANE, "goes in")),
        "full_threads_beyond": Sketch(held, (*full, part((4.0, _high(4.0)), (_FACE, _high(_FACE))))),
        "turns_lost": Sketch(cut, lost),
    }  # fmt: skip
