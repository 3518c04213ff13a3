"""The cells that the terminal shows, and the shortest way to say how they change."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Sequence
from functools import cache
from itertools import takewhile

from rich.cells import cell_len

Cell = tuple[str, str]
"""The text of one cell and the codes of its style; the right half of a wide character is empty."""

BLANK: Cell = (" ", "")

NEAR = 4
"""Bytes of unchanged cells between two changes that are cheaper to send again than to step over."""

WORTH_SCROLLING = 4
"""Lines that must have moved together before the terminal is asked to move them itself."""

_SHOWS_ON_A_BLANK = re.compile("[4-9]|4[0-8]|10[0-7]|21|5[1-5]")
"""Underlined, blinking, reversed, struck out, or with a ground of its own."""

CLEAR = "\x1b[m\x1b[2J"


class ChangedCells:
    r"""What a terminal of a size shows, and what to send so that it shows something else.

    Args:
        width: in cells.
        height: in cells.

    Example:
        >>> screen = ChangedCells(20, 2)
        >>> screen.put(0, 0, [("drop 0.281", "")])
        >>> screen.changes()
        '\x1b[m\x1b[2J\x1b[1Hdrop 0.281'
        >>> screen.put(0, 0, [("drop 0.282", "1")])
        >>> screen.put(0, 0, [("drop 0.282", "")])
        >>> screen.changes()
        '\x1b[1;10H2'
    """

    def __init__(self, width: int, height: int) -> None:
        self.width, self.height = width, height
        self._shown = _blank(width, height)
        self._wanted = _blank(width, height)
        self._touched: set[int] = set()
        self._unknown = True

    def forget(self) -> None:
        """Take what the terminal shows as unknown, so that all of it is sent again."""
        self._unknown = True

    def put(self, x: int, y: int, pieces: Iterable[tuple[str, str]]) -> None:
        """Want text, each piece with its style codes, from a cell on; what is outside is left out."""
        if not 0 <= y < self.height:
            return
        row = self._wanted[y]
        self._touched.add(y)
        for text, codes in pieces:
            if text.isascii():
                end = min(x + len(text), self.width)
                blank = (" ", _of_a_blank(codes))
                row[x:end] = [
                    blank if character == " " else (character, codes) for character in text[: max(end - x, 0)]
                ]
                x += len(text)
            else:
                x = self._put_wide(row, x, text, codes)

    def _put_wide(self, row: list[Cell], x: int, text: str, codes: str) -> int:
        """Text with characters that may take two cells or none; returns the cell after it."""
        for character in text:
            width = cell_len(character)
            if not width:
                if 0 < x <= self.width:
                    row[x - 1] = (row[x - 1][0] + character, codes)
                continue
            own = _of_a_blank(codes) if character == " " else codes
            for cell in ((character, own), ("", own))[:width]:
                if x < self.width:
                    row[x] = cell
                x += 1
        return x

    def changes(self) -> str:
        """What to send so that the terminal shows what is wanted; empty where it does already."""
        parts = [CLEAR] if self._unknown else []
        if self._unknown:
            self._shown = _blank(self.width, self.height)
            self._touched = set(range(self.height))
            self._unknown = False
        elif scrolled := _scroll(self._shown, self._wanted, self._touched):
            parts.append(self._follow(*scrolled))
        codes = ""
        for y in sorted(self._touched):
            shown, wanted = self._shown[y], self._wanted[y]
            if shown != wanted:
                codes = _row(parts, y, shown, wanted, codes)
                shown[:] = wanted
        self._touched.clear()
        if codes:
            parts.append("\x1b[m")
        return "".join(parts)

    def _follow(self, top: int, bottom: int, by: int) -> str:
        """Have the terminal move lines itself; ``by`` is 1 where they go up, -1 where they go down."""
        gone, new = (top, bottom) if by > 0 else (bottom, top)
        del self._shown[gone]
        self._shown.insert(new, [BLANK] * self.width)
        self._touched |= set(range(top, bottom + 1))
        return f"\x1b[{top + 1};{bottom + 1}r\x1b[{top + 1}H\x1b[{'M' if by > 0 else 'L'}\x1b[r"


@cache
def _of_a_blank(codes: str) -> str:
    """The codes that can be seen on a blank: nothing of how bright or of which colour a sign would be."""
    return codes if any(_SHOWS_ON_A_BLANK.fullmatch(code) for code in codes.split(";")) else ""


def _scroll(
    shown: Sequence[Sequence[Cell]], wanted: Sequence[Sequence[Cell]], touched: Collection[int]
) -> tuple[int, int, int] | None:
    """The lines that went up or down by one, first and last, and which way; nothing where it is not worth it."""
    if len(touched) < WORTH_SCROLLING:
        return None
    for by in (1, -1):
        moved = [
            y
            for y in sorted(touched)
            if 0 <= y + by < len(shown) and wanted[y] == shown[y + by] and wanted[y] != shown[y]
        ]
        if len(moved) >= WORTH_SCROLLING and moved[-1] - moved[0] < len(moved) + 2:
            ends = (moved[0], moved[-1] + 1) if by > 0 else (moved[0] - 1, moved[-1])
            return *_stretched(*ends, by, touched), by
    return None


def _stretched(top: int, bottom: int, by: int, touched: Collection[int]) -> tuple[int, int]:
    """One more line where a list moves on: the one that was chosen until now goes along."""
    if by > 0 and bottom + 1 in touched:
        return top, bottom + 1
    if by < 0 and top - 1 in touched:
        return top - 1, bottom
    return top, bottom


def _blank(width: int, height: int) -> list[list[Cell]]:
    return [[BLANK] * width for _ in range(height)]


def _row(parts: list[str], y: int, shown: Sequence[Cell], wanted: Sequence[Cell], codes: str) -> str:
    """Send the changes of one row; returns the style codes in force after it."""
    end = len(wanted) - sum(1 for _ in takewhile(lambda cell: cell == BLANK, reversed(wanted)))
    cursor = -1
    for start, stop in _runs(shown, wanted):
        if start >= end and stop - start > NEAR:
            parts += ["\x1b[m" if codes else "", _move(y, start, cursor), "\x1b[K"]
            return ""
        parts.append(_move(y, start, cursor))
        for text, own in wanted[start:stop]:
            if own != codes and not (text == " " and not own and not _of_a_blank(codes)):
                parts.append(f"\x1b[{';' if codes and own else ''}{own}m")
                codes = own
            parts.append(text)
        cursor = stop if stop < len(wanted) else -1
    return codes


def _runs(shown: Sequence[Cell], wanted: Sequence[Cell]) -> list[tuple[int, int]]:
    """Runs of cells to send, from and to; near ones are joined, and a run begins with a whole character."""
    runs: list[tuple[int, int]] = []
    for x, (old, new) in enumerate(zip(shown, wanted, strict=True)):
        if old == new:
            continue
        start = x - 1 if new[0] == "" and x else x
        if runs and _is_near(wanted, runs[-1][1], start):
            runs[-1] = (runs[-1][0], x + 1)
        else:
            runs.append((start, x + 1))
    return runs


def _is_near(wanted: Sequence[Cell], end: int, start: int) -> bool:
    """Whether the cells between two runs are sent again; a sign of a drawing takes three bytes."""
    between = wanted[end:start]
    return len(between) <= NEAR and sum(len(text.encode()) for text, _ in between) <= NEAR


def _move(y: int, x: int, cursor: int) -> str:
    """The cursor to a cell, from a column of the same row where one is known."""
    if cursor >= 0:
        return f"\x1b[{x - cursor}C" if x > cursor else ""
    return f"\x1b[{y + 1};{x + 1}H" if x else f"\x1b[{y + 1}H"
