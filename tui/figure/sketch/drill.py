"""Pictures of the point of a drill: from the side, from the front, and of the way its lip goes into the work."""

from __future__ import annotations

import math

from tui.figure.sketch.model import Bow, Measure, Name, Part, Place, Sketch, dots, line, part, ring

_SLOPE = 0.6
"""How far the side of the point lies back for each step out from the axis."""

_R = 12.0


def _point() -> tuple[Part, ...]:
    """A drill from the side, its point up."""
    back = _SLOPE * _R
    return (dots((0, 3), (0, -22)), line((-_R, -20), (-_R, -back), (0, 0), (_R, -back), (_R, -20)))


def _side(x: float) -> Place:
    return x, -_SLOPE * abs(x)


def _front() -> tuple[Part, ...]:
    """A drill from the front: the two lips and the chisel edge between them."""
    return (
        line(*ring((0, 0), 12.0, 12, 140)),
        line(*ring((0, 0), 12.0, 192, 320)),
        line(*_lip(1)),
        line(*_lip(-1)),
        line(*_chisel()),
    )


def _lip(way: int) -> tuple[Place, ...]:
    return (way * 11.7, way * 2.2), (way * 1.8, way * 2.2)


def _chisel() -> tuple[Place, ...]:
    return (-1.8, -2.2), (1.8, 2.2)


def _unequal(across: float, up: float) -> tuple[Part, ...]:
    """A point that lies beside the axis, or whose lips reach to different heights."""
    return (
        dots((0, 5), (0, -22)),
        line((-_R, -20), (-_R, -8 - up), (across, 0), (_R, -8 + up), (_R, -20)),
    )


def _way(feed: float = 8.0, relief: float = 30.0) -> tuple[Part, ...]:
    """The flank behind a lip, unrolled, under the sloping way of the lip; the point is up."""
    return (
        dots((0, 0), (34, 0)),
        line((1, -18), (0, 0), (30, -30 * math.tan(math.radians(relief)))),
        dots((0, 0), (34, -feed * 34 / 30)),
        Name((0, 0), "lip", -1),
    )


def _slope(feed: float) -> float:
    return -math.degrees(math.atan(feed / 30))


def _points() -> dict[str, Sketch]:
    point = _point()
    below = 180 + math.degrees(math.atan(_SLOPE))
    lip = math.degrees(math.atan(_SLOPE))
    corner = _side(_R)
    level = dots((_R + 6, corner[1]), (-_R, corner[1]))
    inner = (line(_side(-2.0), _side(2.0)),)
    return {
        "point_angle": Sketch(point, (Bow((0, 0), 9.0, below, 360 - lip, "point"),)),
        "half_point_angle": Sketch(point, (Bow((0, 0), 9.0, 270, 360 - lip, "half"),)),
        "point_length": Sketch(
            point, (level, dots((0, 0), (_R + 6, 0)), Measure((_R + 4, corner[1]), (_R + 4, 0), "length"))
        ),
        "chisel_height": Sketch(
            (
                dots((0, 3), (0, -22)),
                line((-_R, -20), (-_R, -7.2), (-3.5, -2.1), (3.5, -2.1), (_R, -7.2), (_R, -20)),
            ),
            (
                level,
                part((-3.5, -2.1), (3.5, -2.1)),
                dots((3.5, -2.1), (_R + 6, -2.1)),
                Measure((_R + 4, -7.2), (_R + 4, -2.1), "height"),
            ),
        ),
        "point_height": Sketch(
            (
                dots((0, 3), (0, -22)),
                line((-_R, -20), (-_R, -7.2), (-3.5, -2.1), (0, -0.8), (3.5, -2.1), (_R, -7.2), (_R, -20)),
            ),
            (
                level,
                part((-3.5, -2.1), (0, -0.8), (3.5, -2.1)),
                dots((0, -0.8), (_R + 6, -0.8)),
                Measure((_R + 4, -7.2), (_R + 4, -0.8), "length"),
            ),
        ),
        "lip_length": Sketch(point, (part(_side(2.0), corner), Measure((3.5, 1.5), (_R + 1.5, -5.5), "lip"))),
        "weakest_diameter": Sketch(
            point,
            (
                dots((-5, -3), (5, -3)),
                Measure((-5, -12), (5, -12), "weakest"),
                dots((-5, -3), (-5, -13)),
                dots((5, -3), (5, -13)),
            ),
        ),
        "inner_diameter": Sketch(
            (*point, *inner),
            (Measure((-2, -12), (2, -12), "inner"), dots((-2, -1.2), (-2, -13)), dots((2, -1.2), (2, -13))),
        ),
        "lip_relief_runs": Sketch(
            point,
            (
                Name(_side(-_R), "outside", -1, strong=True),
                Name((0.0, 0.0), "inside", 1, strong=True),
                part(_side(2.0), corner),
            ),
        ),
        "inner_relief_angle": Sketch(
            (*_way(relief=40.0)[:2], Name((0, 0), "lip", -1), *_small(4.0)),
            (Bow((0, 0), 16.0, 0, -40, "relief inside"),),
        ),
        "lip_height_difference": Sketch(
            _unequal(0.0, 2.5),
            (
                dots((-_R, -10.5), (_R + 8, -10.5)),
                dots((_R, -5.5), (_R + 8, -5.5)),
                Measure((_R + 5, -10.5), (_R + 5, -5.5), "difference"),
            ),
        ),
        "point_offset": Sketch(_unequal(4.0, 0.0), (dots((4, 0), (4, 6)), Measure((0, 4), (4, 4), "offset"))),
        "hole_oversize": Sketch(
            (*_unequal(0.0, 2.5), *_hole()), (Measure((_R, -16), (_R + 5, -16), "half of it"),)
        ),
        "hole_oversize_about_point": Sketch(
            (*_unequal(4.0, 0.0), *_hole()),
            (
                dots((4, 5), (4, -22)),
                Measure((_R, -16), (_R + 5, -16), "half of it"),
                Bow((4, 3), 4.0, 200, 330, "", turns=True),
            ),
        ),
    }


def _small(at: float) -> tuple[Part, ...]:
    """A point from the side with the inner end of its lip."""
    base = (line((-24, -20), (-24, -14), (-16, -9), (-8, -14), (-8, -20)),)
    return (*base, part((-16 + at / 4, -9.6), (-16 + at, -11.5)))


def _hole() -> tuple[Part, ...]:
    return line((_R + 5, -8), (_R + 5, -22)), line((-_R - 5, -8), (-_R - 5, -22))


def _fronts() -> dict[str, Sketch]:
    front = _front()
    chisel = math.degrees(math.atan2(2.2, 1.8))
    along = dots((-9, -11), (9, 11))
    return {
        "web_thickness": Sketch(
            front,
            (
                dots((-8, 2.2), (2, 2.2)),
                dots((-2, -2.2), (8, -2.2)),
                Measure((-6, -2.2), (-6, 2.2), "web", -1),
            ),
        ),
        "chisel_edge_angle": Sketch(front, (along, Bow((1.8, 2.2), 5.0, 0, 180 - 180 + chisel, "angle"))),
        "chisel_edge_supplement": Sketch(
            front, (along, dots((1.8, 2.2), (-9, 2.2)), Bow((1.8, 2.2), 5.0, chisel, 180, "other way"))
        ),
        "chisel_edge_length": Sketch(
            front, (part(*_chisel()), Measure((-4.4, -0.2), (-0.8, 4.2), "length", -1))
        ),
    }


def _feeds() -> dict[str, Sketch]:
    way = _way()
    turned = dots((30, 4), (30, -22))
    end = (30, -8.0)
    steep = -30 * math.tan(math.radians(30))
    return {
        "feed": Sketch(way, (turned, Measure((30, 0), end, "feed"))),
        "feed_slope": Sketch(way, (Bow((0, 0), 22.0, 0, _slope(8.0), "slope"),)),
        "relief_left": Sketch(way, (Bow((0, 0), 22.0, _slope(8.0), -30, "left over"),)),
        "largest_feed": Sketch(
            way, (turned, part((0, 0), (30, steep)), Measure((30, 0), (30, steep), "largest feed"))
        ),
    }


def sketches() -> dict[str, Sketch]:
    """Quantities of a drill."""
    return {**_points(), **_fronts(), **_feeds()}
