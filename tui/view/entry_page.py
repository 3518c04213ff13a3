"""An entry as a page: a line for each value, what is told of the one in hand, and below that what to grind and how."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from library.book.model import Book, Entry
from library.calc.cautions import cautions_for
from library.guidance.setups import for_entry
from library.guidance.troubles import asked_for, symptoms_of
from library.pages.cautions import at_arms_length
from library.pages.entry import (
    UNREAD,
    about_entry,
    about_family,
    converting,
    guide,
    how_it_is_ground,
    in_detail,
    values_table,
)
from library.pages.entry_sources import in_short, legend
from library.pages.page import Block, Page, Said, Section, Table
from library.pages.setup import citations
from library.pages.troubles import troubles
from library.units.system import Display
from tui.view.lines import EMPTY, Line, Piece, above_of, edge_of, fit, line, rule, text_of, width_of, wrap
from tui.view.page_lines import block_lines, page_lines
from tui.view.value_note import note_lines
from tui.view.viewport import Viewport

GAP = "  "
LEAST_TITLE = 10
"""Cells of a name below which the ends of a range stand behind the usual value, or give way."""

LEAST_TEXT = 3
"""Lines of what to grind that are in sight below a long note, where the screen has them at all."""

LEAST_TOLD = 2
"""Lines at least for what is told of the value in hand."""

TALL = 30
"""Lines from which what the letters behind the values mean may take two."""

RANGED = "(..)"
"""Behind a usual value whose range has no room."""

LOW_AND_HIGH = (2, 3)
TAG = 4


NO_VALUES = "The book has no values for this tool yet; F6 puts them in."


class EntryPage:
    """What the screen shows of an entry, and which of its values is in hand.

    Args:
        entry: the entry.
        sought: what it was found by; a trouble of which that tells stands before everything else below the values.
    """

    def __init__(self, entry: Entry, sought: str = "") -> None:
        self.entry = entry
        self.sought = sought
        self.chosen = 0
        self.view = Viewport()
        self.whole = "? in full"

    def take(self, entry: Entry, *, anew: bool = False) -> None:
        """Show another entry, or the same as it is now."""
        keys, key = list(entry.values), self.key
        # A value that the shop changed may stand elsewhere now.
        same = keys.index(key) if key in keys else min(self.chosen, max(len(keys) - 1, 0))
        self.entry = entry
        self.chosen = 0 if anew else same
        self.view.top = 0 if anew else self.view.top

    @property
    def key(self) -> str:
        """The quantity of the value in hand; empty where the entry has none."""
        keys = list(self.entry.values)
        return keys[self.chosen] if keys else ""

    def move(self, by: int) -> None:
        """To another value; past the last one the text below moves, and back again."""
        last = len(self.entry.values) - 1
        if (by < 0 and self.view.top) or (by > 0 and self.chosen >= last):
            self.view.scroll(by)
        else:
            self.chosen = max(0, min(self.chosen + by, last))

    def body(
        self, book: Book, display: Display | None, width: int, height: int, *, live: bool = True
    ) -> list[Line]:
        """The page without its cautions, exactly ``height`` lines.

        Args:
            book: has the family, the sources and the cautions.
            display: the units that are worked in; without one everything stands as the book has it.
            width: in cells.
            height: in lines.
            live: whether the values can be gone through here, so that one of them is in hand.
        """
        room = max(height - 1, 0)
        table = values_table(book, self.entry, display)
        values = value_lines(table, width, self.chosen if live else None)
        noted = self.entry.values if live else {}
        most = max(room - len(values) - LEAST_TEXT - 2, LEAST_TOLD)
        is_ranged = live and any(RANGED in text_of(one) for one in values if text_of(one).startswith(">"))
        told = {
            key: note_lines(book, one, display, width, most, self.whole, with_span=is_ranged)
            for key, one in noted.items()
        }
        shown, _ = told.get(self.key, ([], True))
        head = [
            *values,
            *_letters(in_short(book, self.entry), width, 2 if height >= TALL else 1),
            *shown,
            rule(width),
        ]
        if not told:
            head = head[:-1] if self.entry.values else [*wrap(NO_VALUES, width), rule(width)]
        text = self._text(book, width, {key for key, (_, is_whole) in told.items() if not is_whole}, display)
        if len(head) + LEAST_TOLD > room:
            head, text = [], [*head, *text]
        # The text has all the room that the value in hand leaves, and stays where it was scrolled to.
        self.view.count, self.view.height = len(text), max(room - len(head), 1)
        self.view.scroll(0)
        above = self.view.top
        if head and (told or not self.entry.values):
            head[-1], above = above_of(above, width, "Up" if live else ""), 0
        seen = text[self.view.top : self.view.top + self.view.height]
        shown = [*head, *seen, *[EMPTY] * (room - len(head) - len(seen))][:room]
        return [*shown, below(self.view.below(), width, by="PgDn" if live else "", above=above)][:height]

    def cautions(self, book: Book, width: int, more: str) -> list[Line]:
        """Its cautions in two lines.

        Args:
            book: has them.
            width: in cells.
            more: where they stand in full.
        """
        return block_lines([at_arms_length(cautions_for(None, self.entry, book), more)], width)

    def _text(self, book: Book, width: int, cut: set[str], display: Display | None) -> list[Line]:
        """What to grind and how; the family; in full what had no room beside its value; and the sources once, at the foot."""
        entry = self.entry
        unread: list[Block] = [Said((UNREAD,), "warn")] if entry.unread else []
        called = " ".join((entry.title, *entry.synonyms))
        asked = asked_for(self.sought, symptoms_of(book, entry.family, entry), called) if self.sought else ()
        sections = [
            *troubles(book, asked, converting(display)),
            Section("", (*unread, guide(book, entry, display, by_lines=True))),
            *about_family(book, entry),
        ]
        if cut:
            sections.append(
                in_detail(book, (entry.values[key] for key in entry.values if key in cut), display)
            )
        sections += how_it_is_ground(book, entry, display)
        about = Said((about_entry(book, entry),), "quiet")
        besides = citations(for_entry(book, entry), whole=True)
        sections.append(Section("", (legend(book, entry, full=True, besides=besides), about)))
        return page_lines(Page("", tuple(sections)), width)


def value_lines(table: Table, width: int, chosen: int | None = None) -> list[Line]:
    """The heading and one line for each value; what has no room gives way, the name last of all.

    Args:
        table: name, usual value, low and high end, tag of the source.
        width: in cells.
        chosen: the line in hand, which is marked.
    """
    columns = list(range(len(table.heading)))
    widths = [max(len(name), *(width_of(line(row[at])) for row in table.rows), 0) if table.rows else len(name)
              for at, name in enumerate(table.heading)]  # fmt: skip
    room = _room(columns, widths, width)
    if room < LEAST_TITLE and columns[-1] != TAG:
        columns.pop()
        room = _room(columns, widths, width)
    rows: Sequence[Sequence[str]] = table.rows
    if room < LEAST_TITLE:
        columns = [0, 1, TAG]
        widths[1] = LEAST_TITLE  # So much goes to the name, and the rest is for values with their ranges.
        most = _room(columns, widths, width)
        rows = [(row[0], _span(row, most), "", "", row[TAG]) for row in table.rows]
        widths[1] = max((len(row[1]) for row in rows), default=0)
        room = _room(columns, widths, width)
    widths[0] = max(min(widths[0], room), 1)
    head = line(Piece("  " + GAP.join(_cells(table.heading, columns, widths)), "quiet"))
    return [
        head,
        *(one for at, row in enumerate(rows) for one in _row(row, columns, widths, in_hand=at == chosen)),
    ]


def _room(columns: Sequence[int], widths: Sequence[int], width: int) -> int:
    """What is left for the name."""
    return width - 2 - sum(widths[at] + len(GAP) for at in columns[1:])


def _span(row: Sequence[str], most: int) -> str:
    """The usual value with its range behind it, or a sign for that where it is longer; a unit that all have stands once."""
    usual, low, high = row[1], *(row[at] for at in LOW_AND_HIGH)
    ends = f"{low} or more" if low else f"{high} or less" if high else ""
    if low and high:
        alike = _unit(low) and _unit(low) == _unit(high) and (not usual or _unit(low) == _unit(usual))
        first = low.split()[0] if alike else low
        ends = f"{first} to {high.split()[0] if alike and usual else high}"
    if not usual or not ends:
        return usual or ends
    whole = f"{usual} ({ends})"
    return whole if len(whole) <= most else f"{usual} {RANGED}"


def _unit(text: str) -> str:
    """The unit of a number with one; nothing of a word, of a number without a unit and of one with two, such as degrees and minutes."""
    parts = text.split()
    return parts[1] if len(parts) == 2 and parts[0][0].isdigit() else ""


def _cells(cells: Sequence[str], columns: Sequence[int], widths: Sequence[int]) -> Iterable[str]:
    return (fit(cells[at], widths[at], right=at > 0) for at in columns)


def _row(row: Sequence[str], columns: Sequence[int], widths: Sequence[int], *, in_hand: bool) -> list[Line]:
    """A value; the usual one is strong, where it comes from is quiet. A long name goes on in the next line."""
    name, *more = wrap(row[0], widths[0])
    row = [text_of(name), *row[1:]]
    pieces = [Piece("> " if in_hand else "  ", "strong")]
    for at, cell in zip(columns, _cells(row, columns, widths), strict=True):
        strong, quiet = at == 1 or (at == 0 and in_hand), at >= TAG
        gap = GAP if at else ""
        pieces.append(Piece(f"{gap}{cell}", "strong" if strong else "quiet" if quiet else "plain"))
    return [tuple(pieces), *(line("    ", *one) for one in more)]


def _letters(meanings: Sequence[str], width: int, most: int) -> list[Line]:
    """The line under the values, which says what the letters behind them mean: as many as it has room for, or two lines."""
    rows: list[str] = []
    for one in meanings:
        if rows and len(f"{rows[-1]}, {one}") <= width:
            rows[-1] += f", {one}"
        elif len(rows) < most and len(one) <= width:
            rows.append(one)
        else:
            break
    if not rows:
        return [rule(width)]
    *whole, last = rows
    across = Piece(f" {'─' * width}"[: width - len(last)], "rule")
    return [*(line(Piece(one, "quiet")) for one in whole), line(Piece(last, "quiet"), across)]


def below(count: int, width: int, by: str = "PgDn", above: int = 0) -> Line:
    """The line under a part in sight, which says how much is below it, and by which key it comes; above where nothing tells it."""
    if by or not count:
        return edge_of(count, width, by, above)
    return line(Piece(fit(f"── {count} more line{'s' if count > 1 else ''} ──", width), "rule"))
