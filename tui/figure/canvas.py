"""A sheet of cells that is drawn on dot by dot, and read off as lines of text."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise

from tui.figure.alphabet import CELL_HEIGHT, Alphabet
from tui.figure.clipping import clipped
from tui.pieces import Line, Piece, Role

Point = tuple[float, float]
"""A place on the sheet: across from the left and down from the top, both in widths of a cell."""

_BLANK = Piece(" ", "quiet")
_LIKE_BLANK: tuple[Role, ...] = ("quiet", "plain")
"""Roles in which a blank looks like any other, so that it needs no piece of its own."""


class Canvas:
    """The sheet; only what is drawn on it takes time.

    What is drawn lies in layers: words over filled parts, over letters, over strokes, over specks, over hatching.

    Args:
        alphabet: the characters to draw with.
        columns: cells across.
        rows: cells down.
    """

    def __init__(self, alphabet: Alphabet, columns: int, rows: int) -> None:
        self.alphabet = alphabet
        self.columns, self.rows = columns, rows
        self._strokes: dict[int, int] = {}
        self._specks: dict[int, int] = {}
        self._hatched: set[int] = set()
        self._filled: set[int] = set()
        self._letters: dict[int, Piece] = {}
        self._words: dict[int, Piece] = {}

    @property
    def dot(self) -> float:
        """The distance of dots, in widths of a cell: the finer of the two directions."""
        return min(1 / self.alphabet.across, CELL_HEIGHT / self.alphabet.down)

    def stroke(self, points: Iterable[Point]) -> None:
        """Draw a line through some points."""
        strokes = self._strokes
        for cell, dot in self._dots(points):
            strokes[cell] = strokes.get(cell, 0) | dot

    def specks(self, points: Iterable[Point], every: int) -> None:
        """Draw a dotted line: one dot of every so many."""
        specks = self._specks
        for cell, dot in self._dots(points, every):
            specks[cell] = specks.get(cell, 0) | dot

    def letters(self, points: Iterable[Point], letter: str, every: int) -> bool:
        """Draw a line of letters, one in every so many columns, and half as many where it covers a stroke.

        Returns:
            Whether any of it lies on the sheet.
        """
        drawn = False
        for cell, _ in self._dots(points):
            if cell % self.columns % (2 * every if cell in self._strokes else every) == 0:
                self._letters.setdefault(cell, Piece(letter, "quiet"))
                drawn = True
        return drawn

    def thick(self, points: Sequence[Point]) -> None:
        """Draw a line that stands out from every other one, without colour too."""
        if self.alphabet.heavy:
            self._letters.update(
                (cell, Piece(self.alphabet.heavy, "strong")) for cell, _ in self._dots(points)
            )
            return
        aside, down = 1 / self.alphabet.across, CELL_HEIGHT / self.alphabet.down
        for dx, dy in ((0.0, 0.0), (aside, 0.0), (0.0, down), (aside, down)):
            self.stroke((x + dx, y + dy) for x, y in points)

    def fill(self, outline: Sequence[Point]) -> None:
        """Fill every dot whose middle lies inside an outline, and the outline itself but for its last side."""
        self._fill_along(outline)
        across, down = self.alphabet.across, self.alphabet.down
        dots = [(x * across, y * down / CELL_HEIGHT) for x, y in outline]
        for line, first, last in _spans(dots, self.columns * across, self.rows * down):
            row, height = divmod(line, down)
            self._fill_row(row * self.columns * across, height * across, first, last)

    def _fill_row(self, start: int, shift: int, first: int, last: int) -> None:
        """Fill dots beside each other; ``start`` is the first of their row of cells, ``shift`` that of their bits."""
        across, strokes = self.alphabet.across, self._strokes
        whole = (1 << across) - 1
        begin, end = (start + first) // across, (start + last - 1) // across
        after_first, before_last = whole & -1 << first % across, whole >> (-last) % across
        for cell in range(begin + 1, end):
            strokes[cell] = strokes.get(cell, 0) | whole << shift
        for cell, bits in (
            [(begin, after_first), (end, before_last)]
            if begin < end
            else [(begin, after_first & before_last)]
        ):
            strokes[cell] = strokes.get(cell, 0) | bits << shift
        self._filled.update(range(begin, end + 1))

    def hatch(self, outline: Sequence[Point]) -> None:
        """Hatch every cell whose middle lies inside an outline."""
        cells = [(x, y / CELL_HEIGHT) for x, y in outline]
        for row, first, last in _spans(cells, self.columns, self.rows):
            self._hatched.update(range(row * self.columns + first, row * self.columns + last))

    def write(self, column: int, row: int, word: str, role: Role = "plain") -> None:
        """Write a word over everything; what does not fit on the sheet is left out."""
        for place, letter in enumerate(word, column):
            if self._has(place, row):
                self._words[row * self.columns + place] = Piece(letter, role)

    def label(self, word: str, places: Iterable[tuple[int, int]], role: Role = "plain") -> bool:
        """Write a word at the first of some places where it hides nothing but hatching; whether one was found."""
        for column, row in places:
            if self._is_free(column, row, len(word)):
                self.write(column, row, word, role)
                return True
        return False

    def lines(self) -> list[Line]:
        """The sheet as lines of text, each as wide as the sheet."""
        rows: list[list[tuple[int, Piece]]] = [[] for _ in range(self.rows)]
        cells = self._cells()
        for cell in sorted(cells):
            row, column = divmod(cell, self.columns)
            rows[row].append((column, cells[cell]))
        return [_line(found, self.columns) for found in rows]

    def _cells(self) -> dict[int, Piece]:
        """What is to be seen in each cell that is not blank."""
        alphabet, columns = self.alphabet, self.columns
        cells = {
            cell: Piece(alphabet.metal(cell % columns, cell // columns), "quiet") for cell in self._hatched
        }
        for cell, dots in self._specks.items():
            cells[cell] = Piece(alphabet.specks[dots], "quiet")
        for cell, dots in self._strokes.items():
            # Fine dots of both lines have room in one cell; coarse ones would make a sign that is neither.
            under = self._specks.get(cell, 0) if alphabet.across > 1 else 0
            cells[cell] = Piece(alphabet.strokes[dots | under])
        cells.update(self._letters)
        for cell in self._filled:
            cells[cell] = Piece(alphabet.proud or alphabet.strokes[self._strokes[cell]], "warn")
        cells.update(self._words)
        return cells

    def _fill_along(self, points: Iterable[Point]) -> None:
        for cell, dot in self._dots(points):
            self._strokes[cell] = self._strokes.get(cell, 0) | dot
            self._filled.add(cell)

    def _dots(self, points: Iterable[Point], every: int = 1) -> Iterator[tuple[int, int]]:
        """The dots along a line, or one of so many, each as its cell and its bit; those off the sheet are left out."""
        across, down, columns = self.alphabet.across, self.alphabet.down, self.columns
        width, height = columns * across, self.rows * down
        places = [(x * across, y * down / CELL_HEIGHT) for x, y in points]
        number, pieces = 0, 0
        for before, after in pairwise(places):
            part = clipped(before, after, width, height)
            if part is None:
                continue
            (x1, y1), (x2, y2) = part
            number = max(number - pieces, 0)  # the last dot of a piece is the first of the next
            pieces = max(1, math.ceil(max(abs(x2 - x1), abs(y2 - y1))))
            dx, dy = (x2 - x1) / pieces, (y2 - y1) / pieces
            while number <= pieces:
                column, row = int(x1 + dx * number), int(y1 + dy * number)
                if column < width and row < height:
                    bit = 1 << row % down * across + column % across
                    yield row // down * columns + column // across, bit
                number += every

    def _has(self, column: int, row: int) -> bool:
        return 0 <= column < self.columns and 0 <= row < self.rows

    def _is_free(self, column: int, row: int, width: int) -> bool:
        if not (self._has(column, row) and self._has(column + width - 1, row)):
            return False
        first, last = max(column - 1, 0), min(column + width, self.columns - 1)
        start = row * self.columns
        cells = range(start + first, start + last + 1)
        inner = cells[column - first : column - first + width]
        return not any(c in self._words for c in cells) and not any(
            c in self._strokes or c in self._specks or c in self._letters for c in inner
        )


def _line(found: Sequence[tuple[int, Piece]], columns: int) -> Line:
    """Cells of one row, from the left, as a line so wide."""
    pieces: list[Piece] = []
    text, role, end = "", _BLANK.role, 0
    for column, piece in found:
        if column > end:
            if role not in _LIKE_BLANK and text:
                pieces.append(Piece(text, role))
                text, role = "", _BLANK.role
            text += " " * (column - end)
        if piece.role != role:
            if text:
                pieces.append(Piece(text, role))
            text, role = "", piece.role
        text += piece.text
        end = column + 1
    if role not in _LIKE_BLANK and end < columns and text:
        pieces.append(Piece(text, role))
        text, role = "", _BLANK.role
    text += " " * (columns - end)
    return (*pieces, Piece(text, role)) if text else tuple(pieces)


def _spans(outline: Sequence[Point], width: int, height: int) -> Iterator[tuple[int, int, int]]:
    """The inside of an outline on a raster: each row with its first place and the one after its last."""
    crossings: dict[int, list[float]] = {}
    for (x1, y1), (x2, y2) in pairwise([*outline, outline[0]]):
        low, high = min(y1, y2) - 0.5, max(y1, y2) - 0.5
        for row in range(max(math.ceil(low), 0), min(math.ceil(high), height)):
            crossings.setdefault(row, []).append(x1 + (row + 0.5 - y1) / (y2 - y1) * (x2 - x1))
    for row, found in crossings.items():
        found.sort()
        for left, right in zip(found[::2], found[1::2], strict=False):
            first, last = max(math.ceil(left - 0.5), 0), min(math.ceil(right - 0.5), width)
            if first < last:
                yield row, first, last
