"""One tooth in section, drawn in characters: the circle, the edge, the land, the heel and the metal under it.

The edge is at the left, for the tool turns to the left. The chosen profile bounds the hatched metal,
other profiles are lines of letters, the circle is dotted, and metal outside it is solid.
"""

from __future__ import annotations

import math

from geometry.figure import Figure
from geometry.sentences import Kind
from library.units.show import show
from tui.figure.alphabet import Alphabet
from tui.figure.canvas import Canvas, Point
from tui.figure.captions import LETTERS, exaggeration, sample, wrapped
from tui.figure.frame import CORE, Frame, foot_of_face, frame_for
from tui.figure.names import cell_of, name_land, name_parts
from tui.figure.shape import Outline, Shape, shape_of
from tui.view.lines import Line, filled, line

LEAST_COLUMNS, LEAST_ROWS = 20, 5
_STEPS = 64
"""Pieces of a drawn arc."""


def tooth_lines(figure: Figure, columns: int, rows: int, alphabet: Alphabet) -> list[Line]:
    """Draw a tooth.

    Args:
        figure: what a calculation wants drawn.
        columns: of the drawing.
        rows: of the drawing, its caption included.
        alphabet: the characters to draw with.

    Returns:
        Exactly ``rows`` lines; none where there is no tooth to draw, or no room for one.
    """
    shape = shape_of(figure)
    if shape is None or columns < LEAST_COLUMNS or rows < LEAST_ROWS:
        return []
    chosen, *others = shape.outlines
    most = 1 if rows < 9 else 2 if rows < 13 else 3
    room = rows - len(_caption(shape, 1000, LETTERS[: len(others)], columns, alphabet)[:most])
    has_land = room >= 10
    frame = frame_for(shape, columns, room, _side(columns), 1 + (has_land and chosen.proudest > 0))
    canvas = Canvas(alphabet, columns, room)
    letters = _draw(canvas, frame, shape)
    name_parts(canvas, frame, shape)
    if has_land:
        name_land(canvas, frame, shape)
    return filled([*canvas.lines(), *_caption(shape, frame.times, letters, columns, alphabet)[:most]], rows)


def _side(columns: int) -> int:
    """Columns kept free at each side, for the words there."""
    return 6 if columns >= 34 else 5


def _caption(shape: Shape, times: int, letters: str, columns: int, alphabet: Alphabet) -> list[Line]:
    """The exaggeration, and the names of the profiles; of the others only those whose letter was drawn."""
    chosen, *others = shape.outlines
    nothing = chosen.deepest == 0 and chosen.proudest == 0
    said = exaggeration(times, columns, nothing=nothing) if chosen.name else "land as an example"
    items = [line(said), sample(alphabet.metal(0, 0) * 2, chosen.name or "metal")]
    if chosen.proudest > 0:
        items.append(sample((alphabet.proud or alphabet.solid) * 2, "proud of the circle"))
    items += [sample(mark, one.name) for mark, one in zip(LETTERS, others, strict=False) if mark in letters]
    items.append(sample(alphabet.low_speck * 2, "circle"))
    if shape.rake_angle:
        items.append(line(f"rake {show(shape.rake_angle, Kind.ANGLE)}"))
    return wrapped([*items, sample("<-", "it turns")], columns)


def _draw(canvas: Canvas, frame: Frame, shape: Shape) -> str:
    """Draw everything but the words; returns the letters of the other profiles that lie on the sheet."""
    chosen, *others = shape.outlines
    ground = _points(frame, chosen)
    foot = foot_of_face(frame, shape)
    heel = frame.inside(chosen.points[-1][0], CORE)
    canvas.specks(_arc(frame, shape.land_angle), 2 * canvas.alphabet.across)
    if shape.rake_angle:
        canvas.specks([frame.inside(0.0, 1.0), frame.inside(0.0, CORE)], canvas.alphabet.down)
    canvas.metal([*ground, heel, foot])
    canvas.stroke([foot, *ground, heel])
    _fill_proud(canvas, frame, chosen)
    for corner in chosen.corners:
        column, row = cell_of(frame.place(corner, chosen.drop(corner)))
        canvas.write(column, row, "+", "strong")
    pairs = zip(LETTERS, others, strict=False)
    return "".join(letter for letter, one in pairs if canvas.letters(_points(frame, one), letter, 2))


def _points(frame: Frame, outline: Outline) -> list[Point]:
    return [frame.place(angle, drop) for angle, drop in outline.points]


def _arc(frame: Frame, land_angle: float) -> list[Point]:
    """The circle, from a little before the edge to a little behind the heel."""
    beyond = min(0.2 * land_angle, max(0.0, (2 * math.pi - land_angle) / 2))
    step = (land_angle + 2 * beyond) / _STEPS
    return [frame.inside(step * number - beyond, 1.0) for number in range(_STEPS + 1)]


def _fill_proud(canvas: Canvas, frame: Frame, outline: Outline) -> None:
    """Fill what stands outside the circle, ray by ray."""
    if all(drop >= 0 for _, drop in outline.points):
        return
    reach = outline.points[-1][0]
    rays = min(400, max(8, math.ceil(1.5 * frame.scale * reach / canvas.dot)))
    for number in range(rays + 1):
        angle = reach * number / rays
        drop = outline.drop(angle)
        if drop < 0:
            canvas.proud([frame.inside(angle, 1.0), frame.place(angle, drop)])
