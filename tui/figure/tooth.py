"""One tooth in section, drawn in characters: the circle, the edge, the land, the heel and the metal under it.

The edge is at the left, for the tool turns to the left. The chosen profile, the face and the heel are whole lines,
other profiles are lines of letters, the circle is dotted, and only metal outside it is filled.
"""

from __future__ import annotations

import math
from functools import lru_cache
from itertools import pairwise

from geometry.figure import Figure
from geometry.sentences import Kind
from library.figures.proud import proud_parts
from library.units.show import show
from tui.figure.alphabet import ALPHABETS, Alphabet, AlphabetName
from tui.figure.canvas import Canvas, Point
from tui.figure.captions import LETTERS, exaggeration, sample, wrapped
from tui.figure.frame import Frame, foot_of_face, foot_of_heel, foot_of_radius, frame_for
from tui.figure.names import cell_of, name_land, name_parts
from tui.figure.shape import Outline, Shape, shape_of
from tui.view.lines import Line, filled, line

LEAST_COLUMNS, LEAST_ROWS = 20, 5
_STEPS = 64
"""Pieces of a drawn arc."""

_FINE = math.radians(4)
"""How far round a profile is drawn with one straight line."""


_KEPT = 4
"""Drawings that are kept, as many as a screen may show: keys that change no number draw nothing anew."""


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
    return list(_tooth_lines(figure, columns, rows, alphabet.name))


@lru_cache(_KEPT)
def _tooth_lines(figure: Figure, columns: int, rows: int, name: AlphabetName) -> list[Line]:
    shape, alphabet = shape_of(figure), ALPHABETS[name]
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
    items = [line(said), sample(alphabet.line * 2, chosen.name or "tooth")]
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
    canvas.specks(_arc(frame, shape.land_angle), canvas.alphabet.across + 1)
    if shape.rake_angle:
        canvas.specks([frame.place(0.0), foot_of_radius(frame)], canvas.alphabet.down)
    canvas.stroke([foot_of_face(frame, shape), frame.place(0.0), *ground, foot_of_heel(frame, shape)])
    for outline in proud_parts(chosen.points):
        canvas.fill([frame.place(*point) for point in outline])
    for corner in chosen.corners:
        column, row = cell_of(frame.place(corner, chosen.drop(corner)))
        canvas.write(column, row, "+", "strong")
    pairs = zip(LETTERS, others, strict=False)
    return "".join(letter for letter, one in pairs if canvas.letters(_points(frame, one), letter, 2))


def _points(frame: Frame, outline: Outline) -> list[Point]:
    """The places of a profile; a piece that goes a long way round is cut finer, for it may follow the circle."""
    found = [outline.points[0]]
    for (angle, drop), (next_angle, next_drop) in pairwise(outline.points):
        pieces = max(1, math.ceil(abs(next_angle - angle) / _FINE))
        found += [
            (angle + (next_angle - angle) * n / pieces, drop + (next_drop - drop) * n / pieces)
            for n in range(1, pieces + 1)
        ]
    return [frame.place(*point) for point in found]


def _arc(frame: Frame, land_angle: float) -> list[Point]:
    """The circle, from a little before the edge to a little behind the heel."""
    beyond = min(0.2 * land_angle, max(0.0, (2 * math.pi - land_angle) / 2))
    step = (land_angle + 2 * beyond) / _STEPS
    return [frame.place(step * number - beyond) for number in range(_STEPS + 1)]
