"""The list of job cards: a find line that is always live, light rows, and marks for a batch."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from library.cards.rows import UNREADABLE
from library.cards.searching import search
from tui.keys import Keys, no_keys
from tui.view.lines import EMPTY, Line, Piece, filled, fit, line, rule, wrap
from tui.view.text_line import TextLine
from tui.view.viewport import Viewport

if TYPE_CHECKING:
    from library.cards.rows import CardRow

FIND = "Find: "

HOW = ("Words, or fields: tool:T-12 size:M12 material:bronze date:2026-11 from:2026-01 result:good status:draft; with = in "
       "place of : the whole field.")  # fmt: skip
"""What may be typed to find cards."""


class CardListPage:
    """What the list shows.

    Attributes:
        find: the find line.
        found: the rows that have what is sought, the newest first.
        view: the part of them in sight, and the chosen one.
        marked: ids of the cards marked for a batch, in the order in which they were marked.
        unsaved: that cards were left unsaved, in a sentence; empty where none were.
        never_saved: which of them were never saved, so that the list has no line of theirs; empty where none are.
    """

    def __init__(
        self, rows: Sequence[CardRow] | None, keys: Keys = no_keys, marked: dict[str, None] | None = None
    ) -> None:
        """Make a page.

        Args:
            rows: of all cards, the newest first; nothing while they are read.
            keys: gives the key of an action.
            marked: kept by whoever shows the list again later; none where nothing is kept.
        """
        self._keys = keys
        self._rows = rows
        self.not_read = self.unsaved = self.never_saved = ""
        self.find = TextLine()
        self.found: Sequence[CardRow] = rows or ()
        self.view = Viewport(len(self.found))
        self.marked = {} if marked is None else marked

    def fill(self, rows: Sequence[CardRow], not_read: str = "", *, to_new: bool = False) -> None:
        """Take new rows; what is typed and the chosen card stay.

        Args:
            rows: of all cards that could be read.
            not_read: what kept others from being read, a sentence each.
            to_new: choose the newest of those that were not there before, where there is one.
        """
        chosen, known = self.chosen, {row.id for row in self._rows} if self._rows else set()
        self.not_read = not_read
        self._rows = rows
        self._search()
        ids = [row.id for row in self.found]
        fresh = [one for one in ids if one not in known] if to_new and known else []
        if fresh:
            self.view.choose(ids.index(fresh[0]))
        elif chosen is not None and chosen.id in ids:
            self.view.choose(ids.index(chosen.id))

    @property
    def chosen(self) -> CardRow | None:
        """The chosen row; nothing where none was found."""
        return self.found[self.view.chosen] if self.found else None

    def edit(self, find: TextLine) -> None:
        """Take a new find line; the list follows at once."""
        old, self.find = self.find.text, find
        if find.text != old:
            self._search()
            self.view.choose(0)

    def mark(self) -> None:
        """Mark the chosen card for a batch, or take its mark away, and go on to the next."""
        row = self.chosen
        if row is None:
            return
        if row.id in self.marked:
            del self.marked[row.id]
        else:
            self.marked[row.id] = None
        self.view.move(1)

    def take_lost_marks(self) -> list[str]:
        """Take the marks of cards away that are gone, and return their ids; none while some cards could not be read."""
        if self._rows is None or self.not_read:
            return []
        there = {row.id for row in self._rows}
        lost = [name for name in self.marked if name not in there]
        for name in lost:
            del self.marked[name]
        return lost

    def _search(self) -> None:
        self.found = search(self._rows or (), self.find.text)
        self.view.resize(len(self.found), self.view.height)

    def draw(self, width: int, height: int) -> list[Line]:
        """The page, exactly ``height`` lines."""
        foot = 2 if height >= 14 else 1
        told = [line(Piece(fit(self.never_saved, width), "warn"))] if self.never_saved and self._rows else []
        room = height - foot - 4 - len(told)
        self.view.resize(len(self.found), room)
        head = [self._find_line(width), line(Piece(_cells(width, *_HEADING), "quiet")), rule(width), *told]
        top = self.view.top
        rows = [
            self._row(row, width, chosen=place == self.view.chosen)
            for place, row in enumerate(self.found[top : top + max(room, 0)], top)
        ]
        body = filled([*head, *(rows or self._nothing(width))], height - foot - 1)
        return [*body, rule(width), *filled(self._foot(width), foot)]

    def _find_line(self, width: int) -> Line:
        marked = f"  {len(self.marked)} marked" if self.marked else ""
        count = "" if self._rows is None else f"{marked}  {len(self.found)} of {len(self._rows)}"
        return line(
            Piece(FIND, "strong"),
            *self.find.pieces(max(width - len(FIND) - len(count), 1)),
            Piece(count, "quiet"),
        )

    def _row(self, row: CardRow, width: int, *, chosen: bool) -> Line:
        text = _cells(
            width, row.id, row.tool, row.size, row.family or row.entry, row.work_material, row.ended
        )
        mark = "*" if row.id in self.marked else " "
        return line(
            Piece(f"{'>' if chosen else ' '}{mark}", "strong"),
            Piece(text[2:], "chosen" if chosen else "plain"),
        )

    def _nothing(self, width: int) -> list[Line]:
        if self._rows is None:
            return [EMPTY, line("  Reading the cards.")]
        if self._rows:
            said = f"No card has {self.find.text.strip()!r}. {self._keys('empty')} shows all again."
        elif self.not_read:
            said = self.not_read
        else:
            left = f"{self.unsaved} {self._keys('go-on')} shows what is unsaved. " if self.unsaved else ""
            said = f"There is no card yet. {left}{self._keys('begin-card')} begins one, here or on an entry of the book."
        return [EMPTY, *wrap(said, width - 4, first="  ", rest="  ")]

    def _foot(self, width: int) -> list[Line]:
        row = self.chosen
        if row is None or self.find.text.endswith(":"):
            return wrap(HOW, width, "quiet")
        if row.status == UNREADABLE:
            said = f"The file of card {row.id} cannot be read; {self._keys('go-on')} tells where. It is never written over."
            return wrap(said, width, "warn")
        parts = (row.tool, row.size, row.work_material, row.entry, f"belongs to {row.belongs_to}" if row.belongs_to else "",
                 row.result)  # fmt: skip
        return wrap(", ".join(part for part in parts if part) or HOW, width, "quiet")


_HEADING = ("Card", "Tool", "Size", "Family", "Work material", "Result")


def _cells(width: int, card: str, tool: str, size: str, family: str, material: str, result: str) -> str:
    """One line of the list, its first two cells for the marks; a narrow screen leaves out the work material."""
    parts: tuple[tuple[str, int], ...]
    if width < 76:
        room = max(width - 2 - 14 - 10 - 12 - 10 - 4, 4)
        parts = ((card, 14), (tool, 10), (size, 12), (family, room), (result, 10))
    else:
        room = max(width - 2 - 14 - 11 - 13 - 12 - 5, 10)
        parts = (
            (card, 14),
            (tool, 11),
            (size, 13),
            (family, 12),
            (material, room // 2 + 2),
            (result, room - room // 2 - 2),
        )
    return "  " + " ".join(fit(text, cells) for text, cells in parts)
