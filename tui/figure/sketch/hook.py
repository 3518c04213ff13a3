"""Pictures of the concave face of a tap, seen along the axis: its chord, its tangent, and the wheel that grinds it."""

from __future__ import annotations

import math

from tui.figure.sketch.model import Bow, Measure, Name, Part, Place, Sketch, dots, line, part, polar, ring

_EDGE: Place = (0.0, 0.0)
_RADIUS = 13.0
"""Of the drawn face."""

_RAKE, _ARC = 38.0, 56.0
"""At the edge, and how far the face turns; large enough to be seen."""

_CENTRE: Place = (-_RADIUS * math.cos(math.radians(_RAKE)), -_RADIUS * math.sin(math.radians(_RAKE)))

_ROOT: Place = polar(_CENTRE, _RADIUS, _RAKE - _ARC)
_DOWN = 270.0


def _face() -> tuple[Place, ...]:
    return ring(_CENTRE, _RADIUS, _RAKE, _RAKE - _ARC)


def _tooth() -> tuple[Part, ...]:
    """The tooth behind its concave face, and the radius through its edge."""
    return (
        line((18, -2.0), _EDGE, *_face(), (_ROOT[0] + 1, _ROOT[1] - 3)),
        dots(_EDGE, (0, -20)),
        Name(_EDGE, "edge", -1),
        Name((0, -20), "to the axis", -1),
    )


def _along(degrees: float, reach: float) -> Place:
    """A place below the edge, leaning back by so many degrees."""
    return polar(_EDGE, reach, _DOWN + degrees)


def sketches() -> dict[str, Sketch]:
    """Quantities of a concave face."""
    tooth, hook = _tooth(), _RAKE - _ARC / 2
    middle = polar(_CENTRE, _RADIUS, _RAKE - _ARC / 2)
    chord = (_ROOT[0] / 2, _ROOT[1] / 2)
    wheel = line(*ring(_CENTRE, _RADIUS, 75, -75))
    level = math.degrees(math.atan2(_ROOT[1] + 20, _ROOT[0]))
    return {
        "hook_angle": Sketch(
            tooth,
            (
                part(_EDGE, _ROOT),
                dots(_EDGE, _along(hook, 18)),
                Bow(_EDGE, 15.0, _DOWN, _DOWN + hook, "hook"),
            ),
        ),
        "root_rake_angle": Sketch(
            (*tooth, dots(_ROOT, (0, -20))),
            (
                dots(_ROOT, polar(_ROOT, 11.0, 270 + _RAKE - _ARC)),
                Bow(_ROOT, 9.0, 180 + level, 270 + _RAKE - _ARC, "rake"),
            ),
        ),
        "face_radius": Sketch((*tooth, wheel), (Measure(_CENTRE, polar(_CENTRE, _RADIUS, 8), "radius", -1),)),
        "face_hollow": Sketch(
            tooth, (dots(_EDGE, _ROOT), Measure(chord, middle, ""), Name(middle, "hollow", 1, strong=True))
        ),
        "wheel_centre_ahead": Sketch(
            (*tooth, wheel, Name(_CENTRE, "+", 0)), (Measure(_CENTRE, (0, _CENTRE[1]), "ahead"),)
        ),
        "wheel_centre_below": Sketch(
            (*tooth, wheel, Name(_CENTRE, "+", 0)),
            (dots((_CENTRE[0] - 2, 0), _EDGE), Measure(_CENTRE, (_CENTRE[0], 0), "below", -1)),
        ),
    }
