"""A sheet of cells that is drawn on dot by dot, and read off as lines of text."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby, islice, pairwise
from operator import itemgetter

from tui.figure.alphabet import CELL_HEIGHT, Alphabet
from tui.view.lines import Line, Piece, Role

Point = tuple[float, float]
"""A place on the sheet: across from the left and down from the top, both in widths of a cell."""

_BLANK = Piece(" ", "quiet")
_LONGEST = 500
"""Dots of one straight piece of a line: more than any screen has."""


class Canvas:
    """The sheet.

    What is drawn lies in layers: words over proud metal, over letters, over strokes, over specks, over metal.

    Args:
        alphabet: the characters to draw with.
        columns: cells across.
        rows: cells down.
    """

    def __init__(self, alphabet: Alphabet, columns: int, rows: int) -> None:
        self.alphabet = alphabet
        self.columns, self.rows = columns, rows
        self._strokes = [0] * (columns * rows)
        self._specks = [0] * (columns * rows)
        self._metal = bytearray(columns * rows)
        self._proud = bytearray(columns * rows)
        self._letters: dict[int, Piece] = {}
        self._words: dict[int, Piece] = {}

    @property
    def dot(self) -> float:
        """The distance of dots, in widths of a cell: the finer of the two directions."""
        return min(1 / self.alphabet.across, CELL_HEIGHT / self.alphabet.down)

    def stroke(self, points: Iterable[Point]) -> None:
        """Draw a line through some points."""
        for cell, dot in self._dots(points):
            self._strokes[cell] |= dot

    def specks(self, points: Iterable[Point], every: int) -> None:
        """Draw a dotted line: one dot of every so many."""
        for cell, dot in islice(self._dots(points), 0, None, every):
            self._specks[cell] |= dot

    def letters(self, points: Iterable[Point], letter: str, every: int) -> bool:
        """Draw a line of letters, one in every so many columns, and half as many where it covers a stroke.

        Returns:
            Whether any of it lies on the sheet.
        """
        drawn = False
        for cell, _ in self._dots(points):
            if cell % self.columns % (2 * every if self._strokes[cell] else every) == 0:
                self._letters.setdefault(cell, Piece(letter, "quiet"))
                drawn = True
        return drawn

    def metal(self, outline: Sequence[Point]) -> None:
        """Hatch every cell whose middle lies inside an outline."""
        crossings: list[list[float]] = [[] for _ in range(self.rows)]
        for (x1, y1), (x2, y2) in pairwise([*outline, outline[0]]):
            low, high = min(y1, y2) / CELL_HEIGHT - 0.5, max(y1, y2) / CELL_HEIGHT - 0.5
            for row in range(max(math.ceil(low), 0), min(math.ceil(high), self.rows)):
                along = ((row + 0.5) * CELL_HEIGHT - y1) / (y2 - y1)
                crossings[row].append(x1 + along * (x2 - x1))
        for row, found in enumerate(crossings):
            found.sort()
            for left, right in zip(found[::2], found[1::2], strict=False):
                first, last = max(math.ceil(left - 0.5), 0), min(math.ceil(right - 0.5), self.columns)
                start = row * self.columns
                self._metal[start + first : start + max(last, first)] = b"\1" * max(last - first, 0)

    def proud(self, points: Iterable[Point]) -> None:
        """Mark metal outside the circle along a line."""
        for cell, dot in self._dots(points):
            self._strokes[cell] |= dot
            self._proud[cell] = 1

    def write(self, column: int, row: int, word: str, role: Role = "plain") -> None:
        """Write a word over everything; what does not fit on the sheet is left out."""
        for place, letter in enumerate(word, column):
            if self._has(place, row):
                self._words[row * self.columns + place] = Piece(letter, role)

    def label(self, word: str, places: Iterable[tuple[int, int]], role: Role = "plain") -> bool:
        """Write a word at the first of some places where it hides nothing but metal; whether one was found."""
        for column, row in places:
            if self._is_free(column, row, len(word)):
                self.write(column, row, word, role)
                return True
        return False

    def is_metal(self, column: int, row: int) -> bool:
        """Whether a cell lies inside the metal."""
        return self._has(column, row) and bool(self._metal[row * self.columns + column])

    def lines(self) -> list[Line]:
        """The sheet as lines of text, each as wide as the sheet."""
        return [self._line(row) for row in range(self.rows)]

    def _line(self, row: int) -> Line:
        start = row * self.columns
        cells = [self._cell(start + column, column, row) for column in range(self.columns)]
        return tuple(
            Piece("".join(text for text, _ in run), role) for role, run in groupby(cells, key=itemgetter(1))
        )

    def _cell(self, cell: int, column: int, row: int) -> Piece:
        strokes, alphabet = self._strokes[cell], self.alphabet
        word = self._words.get(cell)
        if word is not None:
            return word
        if self._proud[cell]:
            return Piece(alphabet.proud or alphabet.strokes[strokes], "warn")
        if cell in self._letters:
            return self._letters[cell]
        if strokes:
            return Piece(alphabet.strokes[strokes])
        if self._specks[cell]:
            return Piece(alphabet.specks[self._specks[cell]], "quiet")
        return Piece(alphabet.metal(column, row), "quiet") if self._metal[cell] else _BLANK

    def _dots(self, points: Iterable[Point]) -> Iterator[tuple[int, int]]:
        """The dots along a line, each as its cell and its bit there; those off the sheet are left out."""
        across, down = self.alphabet.across, self.alphabet.down
        width, height = self.columns * across, self.rows * down
        places = [(x * across, y * down / CELL_HEIGHT) for x, y in points]
        for (x1, y1), (x2, y2) in pairwise(places):
            pieces = max(1, min(math.ceil(max(abs(x2 - x1), abs(y2 - y1))), _LONGEST))
            dx, dy = (x2 - x1) / pieces, (y2 - y1) / pieces
            for number in range(pieces + 1):
                x, y = x1 + dx * number, y1 + dy * number
                if 0 <= x < width and 0 <= y < height:
                    column, bit = divmod(int(x), across)
                    row, line = divmod(int(y), down)
                    yield row * self.columns + column, 1 << line * across + bit

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
            self._strokes[c] or self._specks[c] or c in self._letters for c in inner
        )
