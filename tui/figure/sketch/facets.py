"""Pictures of several facets behind one edge, inside the circle and under the old body."""

from __future__ import annotations

from tui.figure.sketch.model import Bow, Measure, Name, Part, Sketch, area, dots, line, part, polar, ring
from tui.figure.sketch.tooth import (
    AXIS,
    LAND,
    RADIUS,
    angle,
    behind,
    circle,
    drop_at,
    eccentric,
    facets,
    ground,
    over,
    tooth,
)

_FIRST, _SECOND = 18.0, 38.0
_BODY = 6.0


def _body() -> tuple[Part, ...]:
    return (circle(out=_BODY), Name(behind(LAND + 8, -_BODY), "old body", 1))


def _wanted(deep: float) -> Part:
    return dots(*(behind(_FIRST + (LAND - _FIRST) * n / 10, deep) for n in range(11)))


def _facet(start: float, end: float) -> Part:
    return part(behind(start, facets(start)), behind(end, facets(end)))


def _numbers() -> tuple[Part, ...]:
    middles = ((_FIRST / 2, "1"), ((_FIRST + _SECOND) / 2, "2"), ((_SECOND + LAND) / 2, "3"))
    return tuple(Name(behind(at, facets(at) + 3.0), text, 0, strong=True) for at, text in middles)


def _tangent(start: float, degrees: float, text: str) -> tuple[Part, ...]:
    """The angle of a facet from the tangent at the edge, drawn where the facet begins."""
    at, rising = behind(start, facets(start)), LAND / 2
    return dots(at, polar(at, 22.0, rising)), Bow(at, 17.0, rising, degrees, text)


def _hole(marks: tuple[Part, ...]) -> Sketch:
    """A tool in the middle of a hole."""
    tool = line(
        *ring(AXIS, 9.0, 35, 155), (-3.0, 2.0), *ring(AXIS, 9.0, 215, 335), (3.0, -2.0), polar(AXIS, 9.0, 35)
    )
    return Sketch((line(*ring(AXIS, 12.0)), tool), marks)


def _crossing() -> Sketch:
    """Two facets that dip under an eccentric relief."""
    first, corner, heel = behind(0.0), behind(20.0, 3.0), behind(LAND, 13.0)
    base = (*tooth(eccentric, axis=True), line(first, corner, heel))
    return Sketch(base, angle(0.0, 31.0, "they cross"))


def _more() -> Sketch:
    """What stands more behind the edge than with an eccentric relief."""
    two = tuple(behind(LAND * n / 12, 0.5 * eccentric(LAND * n / 12)) for n in range(13))
    base = (*tooth(eccentric), line(*two))
    return Sketch(base, (area(*two, *reversed(ground(eccentric))), Name(two[7], "more", 1, strong=True)))


def _two_facets() -> tuple[Part, ...]:
    foot, root = polar(AXIS, RADIUS - 11, 108.0), polar(AXIS, RADIUS - 15, 90 - LAND / 2)
    heel = behind(LAND, 9.0)
    return (
        circle(),
        line(foot, behind(0.0), behind(20.0, 2.0), heel, root),
        Name(behind(0.0), "edge", -1),
        Name(heel, "heel", 1),
    )


def sketches() -> dict[str, Sketch]:
    """Quantities of facets, gaps and of what is compared."""
    base = tooth(facets)
    with_axis = tooth(facets, axis=True)
    start = behind(_FIRST, facets(_FIRST))
    middle = (_FIRST + _SECOND) / 2
    deep = behind(_SECOND, facets(_SECOND))
    height = polar(AXIS, 24.3, 80.5)
    return {
        "facets": Sketch(base, _numbers()),
        "facet_angle": Sketch(base, (_facet(_FIRST, _SECOND), *_tangent(_FIRST, -10.0, "angle"))),
        "facet_width": Sketch(
            base,
            (
                _facet(_FIRST, _SECOND),
                Measure((start[0] + 0.6, start[1] - 4), (deep[0] - 0.6, deep[1] - 4), "width", 0),
            ),
        ),
        "facet_start": Sketch(with_axis, (_facet(_FIRST, _SECOND), *angle(0.0, _FIRST, "begins"))),
        "facet_start_drop": Sketch(base, (_facet(_SECOND, LAND), drop_at(_SECOND, facets, "indicator"))),
        "facet_height": Sketch(with_axis, (_facet(_FIRST, _SECOND), Measure(AXIS, height, "height"))),
        "least_gap": Sketch(base, (_wanted(2.6), Name(behind(LAND, 2.6), "gap wanted", 1, strong=True))),
        "least_gap_found": Sketch(base, (drop_at(_FIRST, facets, "min. gap"),)),
        "deepest_gap": Sketch(base, (_wanted(8.0), Name(behind(middle, 10.5), "no deeper", 0, strong=True))),
        "deepest_gap_found": Sketch(base, (drop_at(LAND, facets, "max. gap"),)),
        "deepest_cut": Sketch(
            (*base, *_body()), (Measure(behind(LAND, -_BODY), behind(LAND, facets(LAND)), "ground off"),)
        ),
        "body_diameter": Sketch(
            (dots(*ring(AXIS, 11.0)), line(*ring(AXIS, 8.0))), (Measure((-11.0, 0.0), (11.0, 0.0), "body"),)
        ),
        "hole_diameter": _hole((Measure((-12.0, 0.0), (12.0, 0.0), "hole"),)),
        "hole_gap": _hole((Measure(polar(AXIS, 9.0, 0), polar(AXIS, 12.0, 0), "gap"),)),
        "two_facet_drop": Sketch(_two_facets(), (Measure(behind(40.0), behind(40.0, 5.6), "drop"),)),
        "primary_drop": Sketch(
            _two_facets(),
            (
                part(behind(0.0), behind(20.0, 2.0)),
                Measure(behind(20.0), behind(20.0, 2.0), "drop"),
                *over(0.0, 20.0, "primary", 6.0),
            ),
        ),
        "crossing_angle": _crossing(),
        "metal_more": _more(),
    }
