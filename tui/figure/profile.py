"""The drop behind the edge against the angle turned, with the stations of the indicator and what it reads there."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from geometry.calculation import QUARTERS, Station
from geometry.figure import Figure
from geometry.sentences import Kind
from library.figures.proud import proud_parts
from library.units.show import show
from library.units.system import Display
from tui.figure.alphabet import CELL_HEIGHT, Alphabet
from tui.figure.canvas import Canvas, Point
from tui.figure.captions import LETTERS, sample, wrapped
from tui.figure.names import cell_of
from tui.figure.shape import Outline, Shape, shape_of
from tui.view.lines import EMPTY, Line, Piece, filled, line, width_of

STATION_NAMES = ("edge", "1/4", "1/2", "3/4", "heel")
STATION = "#"
"""Marks a place where the indicator is read."""

LEAST_COLUMNS, LEAST_ROWS = 20, 6

_SIDE = 3
"""Columns kept free at each side, for half of the words under the first and the last station."""

_OTHERS = 0.5
"""How far other profiles may stretch the height, as a share of what the chosen one takes."""


def profile_lines(
    figure: Figure,
    stations: Sequence[Station],
    display: Display,
    columns: int,
    rows: int,
    alphabet: Alphabet,
) -> list[Line]:
    """Plot the profiles of a figure.

    Args:
        figure: what a calculation wants drawn.
        stations: the indicator readings of the calculation; those of the drop stand under the plot.
        display: the units of the readings.
        columns: of the plot.
        rows: of the plot, all its words included.
        alphabet: the characters to draw with.

    Returns:
        Exactly ``rows`` lines; none where there is nothing to plot, or no room.
    """
    shape = shape_of(figure)
    if shape is None or not figure.curves or columns < LEAST_COLUMNS or rows < LEAST_ROWS:
        return []
    drops = _drops(figure, shape, stations)
    unit = display.unit(Kind.LENGTH)
    under = [_under(STATION_NAMES, columns), _readings(drops, columns, display)]
    if rows >= 11:
        under.append(
            _under([show(share * shape.land_angle, Kind.ANGLE, display) for share in QUARTERS], columns)
        )
    head = line(Piece(f"drop below the circle, {unit}"[:columns], "quiet"))
    room = rows - 1 - len(under)
    legend = 1 if room < 8 else 2
    canvas = Canvas(alphabet, columns, max(room - legend, 1))
    letters = _plot(canvas, shape, [drop / figure.radius for drop in drops])
    said = _legend(shape, letters, columns, alphabet)[:legend]
    lines = filled([head, *canvas.lines(), *under, *said], rows)
    # A number too large for any tool may be wider than the plot; then there is nothing to plot.
    return lines if all(width_of(one) <= columns for one in lines) else []


def _drops(figure: Figure, shape: Shape, stations: Sequence[Station]) -> list[float]:
    """The drop at each station in mm: as the calculation has it, else from the curve that is drawn."""
    chosen = shape.outlines[0]
    for key in ("drop", f"{chosen.name}_drop"):
        if [one.fraction for one in stations] == list(QUARTERS) and key in stations[0].readings:
            return [one.readings[key] for one in stations]
    return [chosen.drop(share * shape.land_angle) * figure.radius for share in QUARTERS]


@dataclass(frozen=True)
class _Axes:
    """Where an angle behind the edge and a drop lie on the sheet.

    Attributes:
        land_angle: from edge to heel, in radians.
        columns: of the sheet.
        circle: how far down the circle lies, in widths of a cell.
        scale: cells for a drop of one radius.
    """

    land_angle: float
    columns: int
    circle: float
    scale: float

    def place(self, angle: float, drop: float) -> Point:
        return self.across(angle / self.land_angle), self.circle + self.scale * drop

    def across(self, share: float) -> float:
        return _SIDE + 0.5 + share * (self.columns - 1 - 2 * _SIDE)


def _axes(shape: Shape, columns: int, rows: int) -> _Axes:
    chosen = shape.outlines[0]
    most = _OTHERS * (chosen.proudest + chosen.deepest)
    seen = [one for one in shape.outlines if one.comes_within(chosen.proudest + most)]
    high = min(chosen.proudest + most, max(one.proudest for one in seen))
    low = min(chosen.deepest + most, max(one.deepest for one in seen))
    height, edge = rows * CELL_HEIGHT, 0.25 * CELL_HEIGHT
    span = high + low
    scale = (height - 2 * edge) / span if span > 0 else 0.0
    return _Axes(shape.land_angle, columns, edge + scale * high if span > 0 else height / 2, scale)


def _plot(canvas: Canvas, shape: Shape, drops: Sequence[float]) -> str:
    """Draw the plot; returns the letters of the other profiles that lie on the sheet."""
    chosen, *others = shape.outlines
    axes = _axes(shape, canvas.columns, canvas.rows)
    bottom = canvas.rows * CELL_HEIGHT
    canvas.specks([(0.0, axes.circle), (float(canvas.columns), axes.circle)], 2 * canvas.alphabet.across)
    for share in QUARTERS:
        x = axes.across(share)
        canvas.specks([(x, axes.circle), (x, bottom)], canvas.alphabet.down)
    canvas.stroke([axes.place(angle, drop) for angle, drop in chosen.points])
    _fill_proud(canvas, axes, chosen)
    pairs = zip(LETTERS, others, strict=False)
    letters = [
        letter
        for letter, one in pairs
        if canvas.letters([axes.place(angle, drop) for angle, drop in one.points], letter, 2)
    ]
    for share, drop in zip(QUARTERS, drops, strict=True):
        column, row = cell_of(axes.place(share * shape.land_angle, drop))
        canvas.write(column, row, STATION, "strong")
    return "".join(letters)


def _fill_proud(canvas: Canvas, axes: _Axes, chosen: Outline) -> None:
    """Fill what stands outside the circle, and name it."""
    if chosen.proudest == 0:
        return
    for outline in proud_parts(chosen.points):
        canvas.fill([axes.place(*point) for point in outline])
    angle, drop = min(chosen.points, key=lambda point: point[1])
    column, row = cell_of(axes.place(angle, drop))
    canvas.label(
        "PROUD", [(column - back, row + down) for down in (0, 1, -1) for back in (7, 8, 9, 6)], "stop"
    )


def _under(cells: Sequence[str], columns: int) -> Line:
    """Words under the stations; where not all have room, those of edge, middle and heel, or fewer."""
    for chosen in ((0, 1, 2, 3, 4), (0, 2, 4), (0, 4), (4,)):
        text = _spaced([(_start(cells[number], number, columns), cells[number]) for number in chosen])
        if text is not None:
            return line(text)
    return EMPTY


def _spaced(words: Sequence[tuple[int, str]]) -> str | None:
    """Words at their columns, or nothing where two of them would touch."""
    text = ""
    for start, word in words:
        if text and start <= len(text):
            return None
        text = text.ljust(start) + word
    return text


def _start(cell: str, station: int, columns: int) -> int:
    """The column at which a word begins so that its middle is under the station."""
    middle = _SIDE + QUARTERS[station] * (columns - 1 - 2 * _SIDE)
    return max(0, min(round(middle - (len(cell) - 1) / 2), columns - len(cell)))


def _readings(drops: Sequence[float], columns: int, display: Display) -> Line:
    """What the indicator reads at each station; where the units have no room, the one over the plot holds."""
    full = [show(drop, Kind.LENGTH, display) for drop in drops]
    starts = [(_start(cell, number, columns), cell) for number, cell in enumerate(full)]
    return _under(full if _spaced(starts) else [cell.split(" ")[0] for cell in full], columns)


def _legend(shape: Shape, letters: str, columns: int, alphabet: Alphabet) -> list[Line]:
    chosen, *others = shape.outlines
    items = [sample(STATION, f"indicator, {chosen.name}")]
    items += [sample(mark, one.name) for mark, one in zip(LETTERS, others, strict=False) if mark in letters]
    return wrapped([*items, sample(alphabet.low_speck * 2, "circle")], columns)
