"""The words in the drawing of a tooth, each where it hides nothing."""

from __future__ import annotations

import math

from tui.figure.alphabet import CELL_HEIGHT
from tui.figure.canvas import Canvas, Point
from tui.figure.frame import Frame, foot_of_face
from tui.figure.shape import Outline, Shape


def name_land(canvas: Canvas, frame: Frame, shape: Shape) -> None:
    """Write over the drawing how far the land goes."""
    left, right = cell_of(frame.place(0.0))[0], cell_of(frame.place(shape.land_angle))[0]
    width = right - left - 1
    if shape.land_angle < math.pi and width >= 8:
        canvas.write(left + 1, 0, "<" + " land ".center(width - 2, "-") + ">", "quiet")


def name_parts(canvas: Canvas, frame: Frame, shape: Shape) -> None:
    """Write the words: edge, heel, drop, proud, face, and the numbers of facets."""
    chosen = shape.outlines[0]
    edge_x, edge_y = cell_of(frame.place(0.0, chosen.points[0][1]))
    last, drop = chosen.points[-1]
    heel_x, heel_y = cell_of(frame.place(last, drop))
    circle_y = cell_of(frame.place(last))[1]
    canvas.label("edge", [(edge_x - 4, edge_y - 1), (edge_x - 3, edge_y - 1), (edge_x - 5, edge_y)], "strong")
    canvas.label("heel", [(heel_x + 1, heel_y), (heel_x + 1, heel_y + 1), (heel_x + 1, heel_y - 1)], "strong")
    if heel_y - circle_y >= 2:
        canvas.label("drop", [(heel_x + 1, (heel_y + circle_y) // 2), (heel_x + 1, circle_y + 1)])
    _name_face(canvas, frame, shape)
    _name_proud(canvas, frame, chosen)
    _number_facets(canvas, frame, chosen)


def _name_face(canvas: Canvas, frame: Frame, shape: Shape) -> None:
    """Write at the left of the face, half way down what is seen of it."""
    edge, foot = frame.place(0.0), foot_of_face(frame, shape)
    bottom = canvas.rows * CELL_HEIGHT
    along = 0.5 * min(1.0, (bottom - edge[1]) / (foot[1] - edge[1])) if foot[1] > edge[1] else 0.5
    column, row = cell_of((edge[0] + along * (foot[0] - edge[0]), edge[1] + along * (foot[1] - edge[1])))
    canvas.label("face", [(column - back, row + down) for back in (6, 5, -2) for down in (0, 1, 2)])


def _name_proud(canvas: Canvas, frame: Frame, outline: Outline) -> None:
    angle, drop = min(outline.points, key=lambda point: point[1])
    if drop < 0:
        column, row = cell_of(frame.place(angle, drop))
        places = [(column - back, row - up) for up in (1, 2, 0, 3) for back in (2, 5, 6, 0)]
        canvas.label("PROUD", places, "stop")


def _number_facets(canvas: Canvas, frame: Frame, outline: Outline) -> None:
    """Number the facets as the table of the answer does."""
    if not outline.corners:
        return
    bounds = [0.0, *outline.corners, outline.points[-1][0]]
    for number in range(1, len(bounds)):
        middle = (bounds[number - 1] + bounds[number]) / 2
        column, row = cell_of(frame.place(middle, outline.drop(middle)))
        places = [(column + aside, row + down) for down in (1, 2) for aside in (0, -1, 1)]
        canvas.label(str(number), places, "strong")


def cell_of(point: Point) -> tuple[int, int]:
    """The column and row of a place on the sheet."""
    return math.floor(point[0]), math.floor(point[1] / CELL_HEIGHT)
