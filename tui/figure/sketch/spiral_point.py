"""Pictures of the spiral point of a gun tap: a land from the flute's side, the front at the left, its face below."""

from __future__ import annotations

from tui.figure.sketch.model import Bow, Measure, Name, Part, Place, Sketch, dots, line, part

_END: Place = (24.0, 0.0)
"""Where the gash ends in the face of the flute."""

_DEPTH = 7.0
_LAND = 14.0


def _land(front: float = 0.0, deeper: float = 0.0) -> tuple[Part, ...]:
    """One land between its face below and its heel above, cut back at the front, its gash ground deeper."""
    end = (_END[0] + deeper * _END[0] / _DEPTH, 0.0)
    depth = _DEPTH + deeper - front * _DEPTH / _END[0]
    return (
        line((40, 0), end, (front, depth), (front, _LAND), (40, _LAND)),
        Name((38, _LAND), "heel", 0),
        Name((36, 0), "face", 0),
    )


def _threads() -> tuple[Part, ...]:
    """Where the chamfer ends, and the threads behind it."""
    return dots((14, -4), (14, 18)), Name((7, 16), "chamfer", 0)


def sketches() -> dict[str, Sketch]:
    """Quantities of a spiral point."""
    land, level = _land(), dots(_END, (-4, 0))
    was = dots(_END, (0, _DEPTH), (0, _LAND))
    deeper, back = _land(deeper=3.0), _land(front=6.0)
    return {
        "spiral_point_angle": Sketch(land, (level, Bow(_END, 15.0, 163.7, 180, "angle"))),
        "least_spiral_point_angle": Sketch(
            land, (level, dots(_END, (0, 4)), Bow(_END, 15.0, 170.5, 180, "at least"))
        ),
        "spiral_point_depth": Sketch(land, (level, Measure((-2, 0), (-2, _DEPTH), "depth", -1))),
        "spiral_point_length": Sketch(
            land, (dots((0, _DEPTH), (0, -6)), dots(_END, (24, -6)), Measure((0, -5), (24, -5), "length"))
        ),
        "threads_beyond": Sketch(
            (*land, *_threads()), (dots(_END, (24, -6)), Measure((14, -5), (24, -5), "threads past it"))
        ),
        "spiral_point_depth_after": Sketch(
            (*deeper, was), (dots((34, 0), (-4, 0)), Measure((-2, 0), (-2, 10), "after", -1))
        ),
        "spiral_point_length_after": Sketch(
            (*deeper, was),
            (
                dots((0, 10), (0, -6)),
                dots((34.3, 0), (34.3, -6)),
                Measure((0, -5), (34.3, -5), "length after"),
            ),
        ),
        "cut_back_wanted": Sketch(
            (*back, was), (Measure((0, 18), (6, 18), "cut back"), dots((6, 14), (6, 19)))
        ),
        "front_land": Sketch(
            land, (part((0, _DEPTH), (0, _LAND)), Measure((-3, _DEPTH), (-3, _LAND), "left", -1))
        ),
    }
