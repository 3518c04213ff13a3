"""The cautions in two lines that are read at arm's length."""

from __future__ import annotations

from collections.abc import Sequence

from library.pages.page import SEPARATOR, CautionWords
from library.pages.reader import Line, Reader, Run
from library.pages.texts import wrapped

HEAD = "CAUTION  "
LINES = 2
GAP = 2
"""Blanks at least before what stands at the right end."""


def caution_lines(block: CautionWords, reader: Reader) -> list[Line]:
    """The words behind their head; where they stand in full at the right end, with a count of those without room.

    Nothing where there are none.

    Example:
        >>> words = ("goggles on", "no gloves", "guard on", "ring the wheel")
        >>> for line in caution_lines(CautionWords(words, "F4 in full"), Reader(36)):
        ...     print("".join(run.text for run in line))
        CAUTION  goggles on | no gloves
                 guard on     +1  F4 in full
    """
    words = [reader.clean(one) for one in block.words]
    if not words:
        return []
    head = HEAD if reader.width > 2 * len(HEAD) else HEAD[:8]
    room = max(reader.width - len(head), 1)
    if not block.more:
        lines = _filled(words, [room] * len(words), reader)
        return [_line(head, text, place) for place, text in enumerate(lines or words)]
    if block.where_cut and (all_of_them := _filled(words, [room] * LINES, reader)) is not None:
        return [_line(head, text, place) for place, text in enumerate(all_of_them)]
    for count in range(len(words), -1, -1):
        left = len(words) - count
        tail = (f"+{left}  " if left else "") + reader.clean(block.more)
        last = room - reader.measure(tail) - GAP
        for rooms in [[room, last]] if left else [[last], [room, last]]:
            found = _filled(words[:count], rooms, reader)
            if found is not None and last + GAP >= 0:
                return _with_tail(head, [*found, *[""] * (len(rooms) - len(found))], tail, reader)
    counted = wrapped(f"+{len(words)} {block.more}", room, clean=reader.clean)
    return [_line(head, text, place) for place, text in enumerate(counted[:LINES])]


def _with_tail(head: str, texts: Sequence[str], tail: str, reader: Reader) -> list[Line]:
    """The lines with something at the right end of the last one."""
    texts = [*texts[:-1], reader.padded(texts[-1], reader.width - len(head) - reader.measure(tail))]
    *above, last = (_line(head, text, place) for place, text in enumerate(texts))
    return [*above, (*last, Run(tail, "quiet"))]


def _line(head: str, text: str, place: int) -> Line:
    if place:
        return (Run(" " * len(head)), Run(text))
    word = head.rstrip()
    return (Run(word, "watch"), Run(f"{head[len(word) :]}{text}"))


def _filled(words: Sequence[str], rooms: Sequence[int], reader: Reader) -> list[str] | None:
    """The words one behind the other, none broken, on as many lines as there are rooms; nothing where they need more."""
    lines: list[str] = []
    for word in words:
        longer = f"{lines[-1]}{SEPARATOR}{word}" if lines else word
        if lines and reader.measure(longer) <= rooms[len(lines) - 1]:
            lines[-1] = longer
        elif len(lines) < len(rooms) and reader.measure(word) <= rooms[len(lines)]:
            lines.append(word)
        else:
            return None
    return lines
