"""A tool seen from the side, drawn in characters true to size: its point at the left, its axis dotted."""

from __future__ import annotations

from geometry.side_view import SideView, is_drawable
from tui.figure.alphabet import CELL_HEIGHT, Alphabet
from tui.figure.canvas import Canvas, Point
from tui.figure.captions import wrapped
from tui.figure.names import cell_of
from tui.view.lines import Line, filled, line

LEAST_COLUMNS, LEAST_ROWS = 20, 5


def side_lines(view: SideView, columns: int, rows: int, alphabet: Alphabet) -> list[Line]:
    """Draw a tool from the side.

    Args:
        view: what a calculation wants drawn.
        columns: of the drawing.
        rows: of the drawing, its caption included.
        alphabet: the characters to draw with.

    Returns:
        Exactly ``rows`` lines; none where there is nothing to draw, or no room.
    """
    if not is_drawable(view) or columns < LEAST_COLUMNS or rows < LEAST_ROWS:
        return []
    seen = "side view, one side of the axis" if view.one_side else "side view, point at the left"
    said = [line(seen), *([line(view.supposed)] if view.supposed else [])]
    caption = wrapped(said, columns)[: 1 if rows < 10 else 2]
    canvas = Canvas(alphabet, columns, rows - len(caption))
    _draw(canvas, view)
    return filled([*canvas.lines(), *caption], rows)


def _draw(canvas: Canvas, view: SideView) -> None:
    """Draw the tool over its axis, which lies in the middle of the sheet or, for one side alone, at its foot."""
    length, radius = view.outline[-1][0], max(one for _, one in view.outline)
    width, height = canvas.columns - 2.0, (canvas.rows - 2) * CELL_HEIGHT
    scale = min(width / length, height / radius / (1 if view.one_side else 2))
    foot = canvas.rows - 0.25 if view.one_side else (canvas.rows + 1) / 2
    left, axis = (canvas.columns - scale * length) / 2, foot * CELL_HEIGHT

    def place(behind: float, out: float) -> Point:
        return left + scale * behind, axis - scale * out

    upper = [place(*one) for one in view.outline]
    far = [place(behind, 0.0 if view.one_side else -out) for behind, out in view.outline]
    canvas.stroke([far[0], *upper])
    if not view.one_side:
        canvas.stroke(far)
    for begin, end in ((0.0, left - 0.5), (canvas.columns - left + 0.5, float(canvas.columns))):
        canvas.specks([(begin, axis), (end, axis)], 2 * canvas.alphabet.across)
    for mark in view.marks:
        if 0 <= mark.behind <= length and 0 <= mark.radius <= radius:
            _name(canvas, place(mark.behind, mark.radius), place(mark.behind, -mark.radius), mark.name)


def _name(canvas: Canvas, upper: Point, lower: Point, name: str) -> None:
    """Write a name over its place on the outline, at its left, or under the mirror image of the place."""
    column, row = cell_of(upper)
    under = cell_of(lower)[1]
    starts = [
        (column - len(name) // 2, row - 1),
        (column - len(name) - 1, row),
        (column - len(name) - 1, row - 1),
    ]
    canvas.label(
        name, [*starts, *((start, under + down) for start in (starts[0][0], starts[1][0]) for down in (1, 2))]
    )
