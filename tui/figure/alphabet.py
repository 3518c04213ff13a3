"""The three sets of characters that a drawing can be made of, from the finest to the plainest.

A character cell is about twice as high as it is wide. Each alphabet divides it into dots: braille
into 2 by 4, half blocks into 1 by 2, and ASCII into 1 by 3, where a stroke can lie high, in the
middle or low.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

AlphabetName = Literal["braille", "blocks", "ascii"]

CELL_HEIGHT = 2.0
"""How high a cell is, in widths of a cell; true of nearly every terminal font."""


@dataclass(frozen=True)
class Alphabet:
    """Characters to draw with.

    Attributes:
        name: as a person may choose it.
        across: dots beside each other in a cell.
        down: dots above each other in a cell.
        strokes: the character for each set of dots; dot ``x, y`` of a cell is bit ``y * across + x``.
        specks: the same for a dotted line, which must not look like a stroke.
        hatch: the characters of a hatched part; cell ``column, row`` takes number ``(column + step * row) % len``.
        step: how far the hatching moves from one row to the next.
        proud: the character of metal outside the circle; empty where its dots are drawn solid.
        heavy: the character of a thick line; empty where it has more dots.
    """

    name: AlphabetName
    across: int
    down: int
    strokes: tuple[str, ...] = field(repr=False)
    specks: tuple[str, ...] = field(repr=False)
    hatch: str
    step: int = 1
    proud: str = ""
    heavy: str = ""

    @property
    def solid(self) -> str:
        """A cell full of dots."""
        return self.strokes[-1]

    @property
    def line(self) -> str:
        """A level line through the middle of a cell."""
        return self.strokes[((1 << self.across) - 1) << self.down // 2 * self.across]

    @property
    def low_speck(self) -> str:
        """One dot near the foot of a cell."""
        return self.specks[1 << (self.down - 1) * self.across]

    def metal(self, column: int, row: int) -> str:
        """The hatching of one cell."""
        return self.hatch[(column + self.step * row) % len(self.hatch)]


_BRAILLE_BITS = (0x01, 0x08, 0x02, 0x10, 0x04, 0x20, 0x40, 0x80)
"""What each of our dots, row by row, is in the numbering of the braille characters."""


def _braille(dots: int) -> str:
    if not dots:
        return " "  # a third of the bytes of a braille character without dots
    return chr(0x2800 + sum(bit for place, bit in enumerate(_BRAILLE_BITS) if dots >> place & 1))


def _braille_hatch() -> str:
    """Slanting lines three cells apart, one dot wide; every row begins one cell further on."""
    cells = [
        sum(1 << (y * 2 + x) for x in range(2) for y in range(4) if (2 * c + x + y) % 6 == 3)
        for c in range(3)
    ]
    return "".join(map(_braille, cells))  # fmt: skip


_BRAILLE_STROKES = tuple(_braille(dots) for dots in range(256))

BRAILLE = Alphabet("braille", 2, 4, _BRAILLE_STROKES, _BRAILLE_STROKES, _braille_hatch(), step=2)
BLOCKS = Alphabet("blocks", 1, 2, (" ", "▀", "▄", "█"), (" ", "'", ".", ":"), "░", proud="▒", heavy="█")
ASCII = Alphabet(
    "ascii", 1, 3, (" ", "'", "-", "'", "_", "|", ".", "|"), (" ", "'", "-", "'", ".", ":", ".", ":"), "/  ", proud="^", heavy="#"
)  # fmt: skip

ALPHABETS: Mapping[AlphabetName, Alphabet] = {one.name: one for one in (BRAILLE, BLOCKS, ASCII)}
