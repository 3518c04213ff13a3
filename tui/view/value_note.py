"""What is told of the value in hand in the lines that there are for it: all of it, or the source whole and how to read the rest."""

from __future__ import annotations

from collections.abc import Sequence

from library.book.model import Book, Value
from library.pages.entry import in_hand_parts
from library.units.system import Display
from tui.view.lines import Line, fit, line, text_of, width_of, wrap

GAP = "  "


def note_lines(
    book: Book,
    value: Value,
    display: Display | None,
    width: int,
    most: int,
    whole: str,
    *,
    with_span: bool = False,
) -> tuple[list[Line], bool]:
    """What belongs to a value, and whether that is all of it.

    Where it has no room the source is told by its title and place alone, then what other sources have gives way, then
    the note; the last line says how to read it all.

    Args:
        book: has the documents.
        value: of an entry.
        display: the units that are worked in; without one everything stands as the book has it.
        width: in cells.
        most: lines that there are for it.
        whole: how it is read in full.
        with_span: tells its range too, which has no room on its line.
    """
    told = in_hand_parts(book, value, display, with_span=with_span)
    full = wrap(" ".join(filter(None, told)), width)
    if len(full) <= most:
        return full, True
    before, source, others = in_hand_parts(book, value, display, brief=True, with_span=with_span)
    kept = f"{before} {source}".strip()
    if _fits(kept, width, most, whole):
        return _longest(kept, others.split(), "", width, most, whole), False
    return _longest("", before.split(), source, width, most, whole), False


def _fits(text: str, width: int, most: int, whole: str) -> bool:
    """Whether a text and how it is read in full find room."""
    lines = wrap(text, width)
    return len(lines) < most or (len(lines) == most and width_of(lines[-1]) + len(GAP) + len(whole) <= width)


def _longest(kept: str, words: Sequence[str], behind: str, width: int, most: int, whole: str) -> list[Line]:
    """A text, as many of some words as find room, and what has to stand behind them; at the right end how it is read in full."""

    def with_words(count: int) -> str:
        cut = "…" if count < len(words) else ""
        # The mark of what is left out stands at the word before it.
        return f"{' '.join(filter(None, (kept, *words[:count])))}{cut} {behind}".strip()

    low, high = 0, len(words)
    while low < high:
        middle = (low + high + 1) // 2
        low, high = (middle, high) if _fits(with_words(middle), width, most, whole) else (low, middle - 1)
    lines = wrap(with_words(low), width)[:most]
    last = text_of(lines[-1])
    room = max(width - len(GAP) - len(whole), 0)
    if width_of(lines[-1]) > room or not _fits(with_words(low), width, most, whole):
        last = f"{fit(last, max(room - 1, 0)).rstrip().removesuffix('…')}…"
    return [*lines[:-1], line(f"{fit(last, room)}{GAP}{whole}")]
