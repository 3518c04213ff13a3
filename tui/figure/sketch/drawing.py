"""A sketch as lines of text, as large as the room allows, in any alphabet."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import cos, radians, sin

from tui.figure.alphabet import CELL_HEIGHT, Alphabet
from tui.figure.canvas import Canvas, Point
from tui.figure.sketch.model import Arrow, Bow, Measure, Name, Part, Path, Place, Sketch, ring
from tui.pieces import Line, Role

LEAST_COLUMNS, LEAST_ROWS = 24, 6


@dataclass(frozen=True)
class _Fit:
    """From the places of a sketch to the sheet."""

    scale: float
    left: float
    top: float

    def at(self, place: Place) -> Point:
        return self.left + self.scale * place[0], self.top - self.scale * place[1]


@dataclass(frozen=True)
class _Word:
    """A word on the sheet."""

    column: int
    row: int
    text: str
    role: Role = "plain"


def sketch_lines(sketch: Sketch, columns: int, rows: int, alphabet: Alphabet) -> list[Line]:
    """Draw a sketch.

    Args:
        sketch: what to draw.
        columns: of the drawing.
        rows: of the drawing.
        alphabet: the characters to draw with.

    Returns:
        Exactly ``rows`` lines; none where there is no room.
    """
    if columns < LEAST_COLUMNS or rows < LEAST_ROWS:
        return []
    parts = (*sketch.base, *sketch.marks)
    fit = _fitted(parts, columns, rows)
    canvas = Canvas(alphabet, columns, rows)
    for one in parts:
        _draw(canvas, fit, one)
    for word in _words(parts, fit):
        canvas.write(word.column, word.row, word.text, word.role)
    return canvas.lines()


def _fitted(parts: tuple[Part, ...], columns: int, rows: int) -> _Fit:
    """The largest size at which lines and words lie on the sheet."""
    places = [place for one in parts for place in _places(one)]
    left, right = min(x for x, _ in places), max(x for x, _ in places)
    low, high = min(y for _, y in places), max(y for _, y in places)
    before = after = above = below = 0.0
    fit = _Fit(1.0, 0.0, 0.0)
    for _ in range(16):
        width, height = columns - 1 - before - after, rows * CELL_HEIGHT - 0.5 - above - below
        scale = max(min(width / (right - left), height / (high - low)), 0.01)
        spare_x, spare_y = width - scale * (right - left), height - scale * (high - low)
        fit = _Fit(
            scale,
            0.5 + before + spare_x / 2 - scale * left,
            0.25 + above + spare_y / 2 + scale * high,
        )
        words = list(_words(parts, fit))
        over = (
            -min((word.column for word in words), default=0),
            max((word.column + len(word.text) for word in words), default=0) - columns,
            -min((word.row for word in words), default=0) * CELL_HEIGHT,
            (max((word.row for word in words), default=0) + 1 - rows) * CELL_HEIGHT,
        )
        if max(over) <= 0:
            break
        before, after, above, below = (
            kept + max(0.0, more - spare / 2) if more > 0 else kept
            for kept, more, spare in zip(
                (before, after, above, below), over, (spare_x, spare_x, spare_y, spare_y), strict=True
            )
        )
        before, after = before + (over[0] > 0), after + (over[1] > 0)
    return fit


def _places(one: Part) -> tuple[Place, ...]:
    if isinstance(one, Path):
        return one.points
    if isinstance(one, Name):
        return (one.at,)
    if isinstance(one, Bow):
        return ring(one.centre, one.radius, one.start, one.end)
    return one.start, one.end


def _draw(canvas: Canvas, fit: _Fit, one: Part) -> None:
    """Draw the lines of one part; its words come last."""
    if isinstance(one, Name):
        return
    points = [fit.at(place) for place in _places(one)]
    if isinstance(one, Measure):
        points = _snapped(*points)
    if not isinstance(one, Path) or one.kind == "whole":
        canvas.stroke(points)
    elif one.kind == "dotted":
        canvas.specks(points, canvas.alphabet.across + 1)
    elif one.kind == "part":
        canvas.thick(points)
    else:
        canvas.hatch(points)


def _snapped(start: Point, end: Point) -> list[Point]:
    """A level line in the middle of its row, an upright one in the middle of its column."""
    if _is_level(start, end):
        y = (start[1] + end[1]) / 2 // CELL_HEIGHT * CELL_HEIGHT + CELL_HEIGHT / 2
        return [(start[0], y), (end[0], y)]
    if _is_upright(start, end):
        x = int((start[0] + end[0]) / 2) + 0.5
        return [(x, start[1]), (x, end[1])]
    return [start, end]


def _is_level(start: Point, end: Point) -> bool:
    return abs(start[1] - end[1]) < 0.05 * abs(start[0] - end[0])


def _is_upright(start: Point, end: Point) -> bool:
    return abs(start[0] - end[0]) < 0.05 * abs(start[1] - end[1])


def _words(parts: tuple[Part, ...], fit: _Fit) -> Iterator[_Word]:
    """Every word and every head of an arrow, in cells."""
    for one in parts:
        if isinstance(one, Name):
            yield _beside(_cell(fit.at(one.at)), one.text, one.side, "strong" if one.strong else "quiet")
        elif isinstance(one, Measure):
            yield from _measured(one, fit)
        elif isinstance(one, Bow):
            yield from _bowed(one, fit)
        elif isinstance(one, Arrow):
            start, end = fit.at(one.start), fit.at(one.end)
            column, row = _cell(end)
            yield _Word(column, row, _head(start, end), "strong")
            yield _beside(_cell(start), one.text, one.side, "strong")


def _measured(one: Measure, fit: _Fit) -> Iterator[_Word]:
    start, end = fit.at(one.start), fit.at(one.end)
    if start[0] > end[0] or (_is_upright(start, end) and start[1] > end[1]):
        start, end = end, start
    (x1, y1), (x2, y2) = map(_cell, _snapped(start, end))
    if _is_level(start, end):
        yield from _level(one, x1, x2, y1)
    elif _is_upright(start, end):
        apart = 0 if y2 - y1 >= 2 else 1
        yield _Word(x1, y1 - apart, "v" if apart else "^", "strong")
        yield _Word(x1, y2 + apart, "^" if apart else "v", "strong")
        yield _beside((x1, (y1 + y2) // 2), one.text, one.side, "strong")
    else:
        yield _Word(x1, y1, _head(end, start), "strong")
        yield _Word(x2, y2, _head(start, end), "strong")
        yield _beside(((x1 + x2) // 2, (y1 + y2) // 2), one.text, one.side, "strong")


def _level(one: Measure, first: int, last: int, row: int) -> Iterator[_Word]:
    apart = 0 if last - first >= 3 else 1
    yield _Word(first - apart, row, ">" if apart else "<", "strong")
    yield _Word(last + apart, row, "<" if apart else ">", "strong")
    if last - first >= len(one.text) + 4:
        yield _Word((first + last + 1 - len(one.text) - 2) // 2, row, f" {one.text} ", "strong")
    elif one.side > 0:
        yield _Word(last + apart + 2, row, one.text, "strong")
    elif one.side < 0:
        yield _Word(first - apart - 1 - len(one.text), row, one.text, "strong")
    else:
        yield _Word((first + last + 1 - len(one.text)) // 2, row - 1, one.text, "strong")


def _bowed(one: Bow, fit: _Fit) -> Iterator[_Word]:
    points = [fit.at(place) for place in ring(one.centre, one.radius, one.start, one.end)]
    if one.turns:
        column, row = _cell(points[-1])
        yield _Word(column, row, _head(points[-2], points[-1]), "strong")
    middle = radians((one.start + one.end) / 2)
    reach = one.radius * fit.scale
    x, y = fit.at(one.centre)
    across, up = cos(middle), sin(middle)
    side = 0 if abs(across) < 0.4 else 1 if across > 0 else -1
    lift = 0.0 if side else 1.6 if up > 0 else -1.6
    yield _beside(_cell((x + reach * across, y - reach * up - lift)), one.text, side, "strong")


def _beside(cell: tuple[int, int], text: str, side: int, role: Role) -> _Word:
    column, row = cell
    if side > 0:
        return _Word(column + 2, row, text, role)
    if side < 0:
        return _Word(column - 1 - len(text), row, text, role)
    return _Word(column - len(text) // 2, row, text, role)


def _cell(point: Point) -> tuple[int, int]:
    return int(point[0] // 1), int(point[1] // CELL_HEIGHT)


def _head(start: Point, end: Point) -> str:
    """The head of an arrow that points from one place to another."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    if abs(dx) >= 0.8 * abs(dy):
        return ">" if dx > 0 else "<"
    return "v" if dy > 0 else "^"
