"""Pictures of the whole tool seen along the axis: its circle, its edges, and how far they stand from each other."""

from __future__ import annotations

import math

from tui.figure.sketch.model import Bow, Measure, Name, Part, Place, Sketch, dots, line, part, polar, ring

AXIS: Place = (0.0, 0.0)
R = 10.0


def _teeth(count: int = 4, first: float = 90.0) -> tuple[Part, ...]:
    """So many lands on the circle, the flutes between them."""
    places: list[Place] = []
    for number in range(count):
        edge = first - 360 * number / count
        places += [polar(AXIS, R, edge), *ring(AXIS, R, edge, edge - 40), polar(AXIS, 0.45 * R, edge - 62)]
    return (line(*places, places[0]), dots(*ring(AXIS, R)))


def _rays(*degrees: float) -> tuple[Part, ...]:
    return tuple(dots(AXIS, polar(AXIS, R + 2, one)) for one in degrees)


def _error(at: float, text: str, *, length: bool, others: tuple[Part, ...] = ()) -> Sketch:
    """An edge that stands beside where it should."""
    should, stands = at, at + 14
    marks: tuple[Part, ...] = (dots(AXIS, polar(AXIS, R + 3, should)), line(AXIS, polar(AXIS, R + 3, stands)))
    bow = part(*ring(AXIS, R, should, stands)) if length else Bow(AXIS, R + 2.5, should, stands, text)
    word = (Name(polar(AXIS, R + 2, at + 7), text, 1, strong=True),) if length else ()
    return Sketch((line(*ring(AXIS, R)), Name(AXIS, "+", 0)), (*others, *marks, bow, *word))


def _numbered() -> tuple[Part, ...]:
    return tuple(
        Name(polar(AXIS, R + 1.5, 90 - 90 * n), str(n + 1), (0, 1, 0, -1)[n], strong=True) for n in range(4)
    )


def _worst(*, length: bool) -> Sketch:
    other = tuple(
        part
        for at in (90, 330)
        for part in (dots(AXIS, polar(AXIS, R + 2, at)), line(AXIS, polar(AXIS, R + 2, at + 4)))
    )
    return _error(210.0, "worst", length=length, others=other)


def _across(radius: float, text: str) -> Part:
    return Measure((-radius, 0.0), (radius, 0.0), text)


_AWAY = 4.0
"""How far the plane of the drawn face passes from the axis, on the side of the tooth: its rake is above zero."""

_OUTER = math.degrees(math.acos(_AWAY / R))
_SMALL = 6.0
_INNER = math.degrees(math.acos(_AWAY / _SMALL))


def _face(*, other: bool = False) -> tuple[Part, ...]:
    """A tooth that turns to the left, with one flat face that passes beside the axis."""
    small = (dots(*ring(AXIS, _SMALL)),) if other else ()
    tooth = (*ring(AXIS, R, _OUTER, -10), (8.0, -5.0), (_AWAY, -6.0))
    return (
        dots(*ring(AXIS, R)),
        *small,
        line((_AWAY, -6.0), *tooth),
        Name(AXIS, "+", 0),
        Name((-1.0, 0.0), "axis", -1),
    )


def _rake(radius: float, degrees: float, text: str) -> tuple[Part, ...]:
    """The angle between the face and the radius to its edge."""
    edge = polar(AXIS, radius, degrees)
    reach = 0.75 * radius
    word = Name(polar(edge, reach, 175 + degrees), text, -1, strong=True)
    return dots(AXIS, edge), Bow(edge, reach, -90, degrees - 180, ""), word


def sketches() -> dict[str, Sketch]:
    """Quantities of the whole circle."""
    plate = (*(dots(*ring(AXIS, r)) for r in (5.0, 7.5, 10.0)), line(*ring(AXIS, 12.0)))
    crank = (line(*ring(AXIS, 12.0)), line(AXIS, polar(AXIS, 10.0, 90)), Name(polar(AXIS, 10.0, 90), "o", 0))
    holes = tuple(Name(polar(AXIS, 10.0, 90 - 20 * n), "o", 0) for n in range(18))
    return {
        "diameter": Sketch(_teeth(), (_across(R, "diameter"),)),
        "flutes": Sketch(_teeth(), _numbered()),
        "least_diameter": Sketch(_teeth(), (dots(*ring(AXIS, 7.5)), _across(7.5, "min."))),
        "diameter_after": Sketch(
            (dots(*ring(AXIS, R)), line(*ring(AXIS, 8.5))), (_across(8.5, "after"), part(*ring(AXIS, 8.5)))
        ),
        "index_angle": Sketch(
            (*_teeth(3), *_rays(90, -30)), (Bow(AXIS, R + 2, 90, -30, "angle", turns=True),)
        ),
        "spacing_angles": Sketch(
            (line(*ring(AXIS, R)), *_rays(90, 10, -80, 180)),
            (
                *(
                    Bow(AXIS, 7.0, start, end, "", turns=True)
                    for start, end in ((90, 10), (10, -80), (-80, -180), (180, 90))
                ),
                *_numbered(),
            ),
        ),
        "index_error": _error(60.0, "error", length=False),
        "index_error_length": _error(60.0, "error", length=True),
        "worst_index_error": _worst(length=False),
        "worst_index_error_length": _worst(length=True),
        "accumulated_error": _error(
            90.0, "once round", length=False, others=(Bow(AXIS, 6.0, 90, -240, "", turns=True),)
        ),
        "plate_holes": Sketch(
            plate,
            (
                Name((0.0, 10.0), "66", 0, strong=True),
                Name((0.0, 7.5), "49", 0, strong=True),
                Name((0.0, 5.0), "37", 0, strong=True),
            ),
        ),
        "index_circle": Sketch(plate, (part(*ring(AXIS, 7.5)),)),
        "index_turns": Sketch(crank, (Bow(AXIS, 6.0, 90, -250, "turns", turns=True),)),
        "index_holes": Sketch(
            (*crank, *holes), (part(*ring(AXIS, 10.0, 90, 30)), Bow(AXIS, 7.0, 90, 30, "spaces", turns=True))
        ),
        "rake_angle": Sketch(_face(), _rake(R, _OUTER, "rake")),
        "face_offset": Sketch(
            _face(),
            (
                dots((_AWAY, -R - 1), (_AWAY, R + 1)),
                dots((0.0, 0.0), (0.0, -R - 1)),
                Measure((0.0, -8.0), (_AWAY, -8.0), "offset", -1),
            ),
        ),
        "other_diameter": Sketch(
            _face(other=True), (part(*ring(AXIS, _SMALL)), Measure((-_SMALL, -2.5), (_SMALL, -2.5), "other"))
        ),
        "local_rake_angle": Sketch(_face(other=True), _rake(_SMALL, _INNER, "rake there")),
    }
