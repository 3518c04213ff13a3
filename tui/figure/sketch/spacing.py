"""Pictures of edges that stand unevenly round a tool."""

from __future__ import annotations

from tui.figure.sketch.model import Bow, Measure, Name, Part, Place, Sketch, dots, line, part, polar, ring

_AXIS: Place = (0.0, 0.0)
_R = 10.0
_EDGES = (90.0, 40.0, -20.0, -90.0, -140.0, -200.0)
"""Where the drawn edges stand, in degrees: spaces of 50, 60 and 70, and again."""

_FREE = (90.0, 50.0, -10.0, -100.0, -180.0)


def _tool(edges: tuple[float, ...] = _EDGES) -> tuple[Part, ...]:
    rays = tuple(line(polar(_AXIS, 0.5 * _R, one), polar(_AXIS, _R, one)) for one in edges)
    return (line(*ring(_AXIS, _R)), *rays, Name(_AXIS, "+", 0))


def _space(at: int, text: str) -> Bow:
    return Bow(_AXIS, _R + 2.0, _EDGES[at], _EDGES[at + 1], text)


def sketches() -> dict[str, Sketch]:
    """Quantities of unequal spaces."""
    opposite = tuple(dots(polar(_AXIS, _R, one), polar(_AXIS, _R, one - 180)) for one in _EDGES[:3])
    middle = (2.5, -1.5)
    return {
        "spacing_step": Sketch(_tool(), (_space(0, "space"), _space(1, "+ step"), _space(2, "+ 2 steps"))),
        "spacing_pairs": Sketch(
            _tool(), (*opposite, Name(polar(_AXIS, _R + 1, 90), "opposite", 0, strong=True))
        ),
        "least_spacing": Sketch(_tool(), (_space(0, "narrowest"), part(*ring(_AXIS, _R, 90, 40)))),
        "greatest_spacing": Sketch(_tool(), (_space(2, "widest"), part(*ring(_AXIS, _R, -20, -90)))),
        "spacing_spread": Sketch(
            _tool(),
            (
                _space(0, "narrow"),
                _space(2, "wide"),
                part(*ring(_AXIS, _R, 90, 40)),
                part(*ring(_AXIS, _R, -20, -90)),
            ),
        ),
        "off_balance": Sketch(
            _tool(_FREE),
            (Measure(_AXIS, middle, "", 1), Name((middle[0] + 1, middle[1]), "middle", 1, strong=True)),
        ),
    }
