"""Pictures of the bevel lead of a reamer from the side, its front at the left, and of its worn corner."""

from __future__ import annotations

from tui.figure.sketch.model import Measure, Name, Part, Place, Sketch, dots, line, part

_START: Place = (0.0, 4.0)
_CORNER: Place = (18.0, 14.0)
_AXIS = dots((-4, 0), (40, 0))


def _lead(back: float = 0.0) -> tuple[Part, ...]:
    """One side of a reamer with a lead, ground back so far; its end is where it was."""
    x, y = _CORNER
    slope = (y - _START[1]) / x
    return _AXIS, line((0, 0), (0, _START[1] - back * slope), (x + back, y), (38, y))


def _worn() -> tuple[Part, ...]:
    """The same with its corner worn away, and where it was."""
    return (
        _AXIS,
        line((0, 0), _START, (9, 9), (29, 14), (38, 14)),
        dots((9, 9), _CORNER, (29, 14)),
    )


def sketches() -> dict[str, Sketch]:
    """Quantities of a bevel lead."""
    lead, worn, ground = _lead(), _worn(), _lead(5.0)
    was = (dots(_START, _CORNER, (23, 14)), Name((18, 14), "was", -1))
    whole = (*lead, line((0, 0), (0, -4), (18, -14), (38, -14)))
    return {
        "bevel_length": Sketch(
            lead, (dots(_START, (0, 19)), dots(_CORNER, (18, 19)), Measure((0, 18), (18, 18), "length"))
        ),
        "bevel_start_diameter": Sketch(whole, (Measure((0, -4), (0, 4), "start", -1),)),
        "least_bevel_length": Sketch(
            (*lead, line((-6, 9), (9, 9), (9, 17)), Name((-6, 11), "hole", 0)),
            (part((9, 9), _CORNER), dots((18, 14), (18, 6)), Measure((9, 6), (18, 6), "least", 1)),
        ),
        "corner_wear": Sketch(worn, (Measure((18, 11.2), (18, 14), "wear"),)),
        "corner_wear_length": Sketch(
            worn, (dots(_CORNER, (18, 18)), dots((29, 14), (29, 18)), Measure((18, 17), (29, 17), "wear"))
        ),
        "axial_stock": Sketch(
            (*ground, *was),
            (dots(_CORNER, (18, 19)), dots((23, 14), (23, 19)), Measure((18, 18), (23, 18), "stock")),
        ),
        "square_stock": Sketch((*ground, *was), (Measure((9, 9), (11.0, 5.4), "stock"),)),
        "bevel_length_after": Sketch(
            (*ground, *was),
            (dots((0, 1.2), (0, 19)), dots((23, 14), (23, 19)), Measure((0, 18), (23, 18), "length after")),
        ),
        "bevel_start_after": Sketch(
            (*ground, *was, line((0, 0), (0, -1.2), (23, -14), (38, -14))),
            (part((0, -1.2), (0, 1.2)), Name((0, 0), "start after", -1, strong=True)),
        ),
    }
