"""The book as a page: a find line that is always live, and the list of what was found."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from library.search.along import Along, angle_for, left_behind, size_for
from library.search.by_value import flutes_told
from library.search.leaving_out import LeftOut, found_without, without
from library.search.ranked import Ranked
from library.search.ranking import ranked
from library.search.sizes import Size, flutes_in, with_its_unit
from library.search.step_sizes import IS_STEPPED, diameters_in, with_unit_behind
from tui.view.lines import EMPTY, Line, Piece, Role, filled, fit, fit_ends, line, padded, rule, wrap
from tui.view.named_threads import ThreadsCalled, is_no_thread, shared_by
from tui.view.text_line import TextLine
from tui.view.viewport import Viewport

if TYPE_CHECKING:
    from library.book.rows import Row, Rows

FIND = "Find: "
SIGNS = frozenset("<>=")
"""Signs of which one stands in a condition such as ``rake>8``."""

MARK_WIDTH = 4


class BookPage:
    """What the book screen shows, and how keys change it.

    Attributes:
        find: the find line.
        hits: numbers of the rows found.
        view: the part of them in sight, and the chosen one.
        by_condition: finds rows by a text with conditions; nothing before units are loaded.
        threads_called: gives the titles of all threads that go by a name; nothing before the book is read.
        found: what the find line finds, and what has to be said of its words.
        finds: how often somebody changed the find line.
        marked: the ids of the entries to be set side by side, in the order of marking.
        lengths: the unit of a size that has none, as of the last drawing.
    """

    def __init__(self, rows: Rows | None = None) -> None:
        self._rows = rows
        self.find = TextLine()
        self.hits: Sequence[int] = range(len(rows) if rows is not None else 0)
        self.view = Viewport(len(self.hits))
        self.by_condition: Callable[[Rows, str], Ranked] | None = None
        self.threads_called: ThreadsCalled | None = None
        self.found = Ranked(self.hits)
        self.finds = 0
        self.marked: list[str] = []
        self.lengths = "mm"

    @property
    def waits_for_units(self) -> bool:
        """Whether the find line has a condition that cannot be read yet."""
        return self.by_condition is None and not SIGNS.isdisjoint(self.find.text)

    def keep_meaning(self, unit: str) -> None:
        """Write the unit of lengths that was worked in behind a size without one, which would mean another size now."""
        if self._steps():
            self.edit(TextLine.ending(with_unit_behind(self.find.text, unit)))
        else:
            # A unit behind another number would put that first.
            size = self.along_with(self.chosen.id).size if self.chosen is not None else self.found.size
            if size is not None:
                self.edit(TextLine.ending(with_its_unit(self.find.text, size, unit)))

    def find_anew(self) -> None:
        """Find again what is in the find line: what it means may have changed."""
        if not SIGNS.isdisjoint(self.find.text):
            self._search(None)

    def fill(self, rows: Rows) -> None:
        """Take new rows; what is typed and the chosen entry stay."""
        kept = self.chosen
        self._rows = rows
        self._search(None)
        if kept is not None:
            self.choose(kept.id)

    @property
    def chosen(self) -> Row | None:
        """The chosen row, or nothing where none was found."""
        if self._rows is None or not self.hits:
            return None
        return self._rows[self.hits[self.view.chosen]]

    def along_with(self, entry_id: str) -> Along:
        """What of the find line goes along with an entry: the number of flutes, a size that it is not called by, an angle.

        Args:
            entry_id: the entry that is worked with.
        """
        chosen = self.chosen
        if self._rows is None or chosen is None or chosen.id != entry_id:
            return Along()
        number, flutes = self.hits[self.view.chosen], flutes_in(self.find.text)
        instead = flutes_told(self._rows, number, flutes)[1] if flutes is not None else ""
        if steps := self._steps():
            return Along(Size(steps), flutes, instead)
        size, angle = size_for(self._rows, number, self.found), angle_for(self._rows, number, self.found)
        threads, unknown = shared_by(size, self.threads_called), is_no_thread(size, self.threads_called)
        return Along(size, flutes, instead, *angle, may_be=threads, is_unknown=unknown)

    def _steps(self) -> str:
        """The diameters of all steps, where the find line has them and the chosen tool has steps; else empty."""
        if self._rows is None or not self.hits or not (steps := diameters_in(self.find.text)):
            return ""
        is_stepped = self.hits[self.view.chosen] in self._rows.values_of(IS_STEPPED)
        return steps if is_stepped else ""

    def choose(self, entry_id: str) -> None:
        """Choose an entry by its id, where the list has it."""
        for place, index in enumerate(self.hits):
            if self._rows is not None and self._rows[index].id == entry_id:
                self.view.choose(place)
                return

    def mark(self) -> None:
        """Mark the chosen entry or take its mark away, and choose the next one."""
        if self.chosen is None:
            return
        if self.chosen.id in self.marked:
            self.marked.remove(self.chosen.id)
        else:
            self.marked.append(self.chosen.id)
        self.view.move(1)

    def reveal(self, entry_id: str) -> None:
        """Choose an entry by its id; where the find line hides it, that is emptied."""
        self.choose(entry_id)
        if self.chosen is None or self.chosen.id != entry_id:
            self.edit(TextLine())
            self.choose(entry_id)

    def edit(self, find: TextLine) -> None:
        """Take a new find line; when its text changed, the list follows at once."""
        old, self.find = self.find.text, find
        if find.text == old or self._rows is None:
            return
        # Without a word more is found than will be with the next sign of it.
        goes_on = find.text.startswith(old) and not self.found.left_out
        self._search(self.hits if goes_on else None)
        self.view.choose(0)

    def _search(self, among: Sequence[int] | None) -> None:
        if self._rows is None:
            return
        sought = self.find.text.strip()
        if self.waits_for_units:
            sought, among = " ".join(word for word in sought.split() if SIGNS.isdisjoint(word)), None
        if SIGNS.isdisjoint(sought) or self.by_condition is None:
            found = ranked(self._rows, sought, among) if sought else Ranked(range(len(self._rows)))
            self.found = found_without(self._rows, sought, found)
        else:
            self.found = self.by_condition(self._rows, self.find.text)
        self.hits = self.found.numbers
        self.view.resize(len(self.hits), self.view.height)

    def draw(self, width: int, height: int, *, live: bool = True, lengths: str = "mm") -> list[Line]:
        """The page, exactly ``height`` lines.

        Args:
            width: in cells.
            height: in lines.
            live: whether the find line is typed into here.
            lengths: the unit of a size that has none.
        """
        self.lengths = lengths
        told = wrap(said, width, "warn", first="! ", rest="  ") if (said := self._said(width)) else []
        self.view.resize(len(self.hits), height - 3 - len(told))
        head = [self._find_line(width, live=live), _heading(width), rule(width)]
        page = filled(head + (self._list(width, live=live) or self._nothing(width)), height - len(told))
        return (page + told)[:height]

    def _find_line(self, width: int, *, live: bool) -> Line:
        along = self.along_with(self.chosen.id) if self.chosen is not None else Along()
        told = self._counts(along)
        least = len(FIND) + len(self.find.text) + 1
        count = next((one for one in told if least + len(one) <= width), told[-1])
        room = width - len(FIND) - len(count)
        room = max(room, 1)
        typed = self.find.pieces(room) if live else line(Piece(fit(self.find.text, room), "typed"))
        return line(Piece(FIND, "strong" if live else "quiet"), *typed, Piece(count, "quiet"))

    def _counts(self, along: Along) -> tuple[str, ...]:
        """What stands beside the find line, the longest first: what goes along and how much was found."""
        marks = f"  {len(self.marked)} marked" if self.marked else ""
        goes, instead = (
            f"  {one}" if one else "" for one in (along.told_in(self.lengths), along.instead_told)
        )
        count = "" if self._rows is None else f"{marks}  {len(self.hits)} of {len(self._rows)}"
        return f"{goes}{count}", goes or count, f"{instead}{count}", instead or count, count

    def _said(self, width: int) -> str:
        """What has to be said of the find line below the list, with what goes along where there is no room beside it."""
        said = self.found.told
        chosen = self.chosen
        if chosen is None or self._rows is None:
            return said
        along = self.along_with(chosen.id)
        has_room = len(FIND) + len(self.find.text) + 1 + len(self._counts(along)[1]) <= width
        goes = "" if has_room or not (told := along.told_in(self.lengths)) else f"{told}."
        behind = left_behind(self._rows, self.hits[self.view.chosen], self.found, along)
        return " ".join(one for one in (said, goes, behind) if one)

    def _list(self, width: int, *, live: bool) -> list[Line]:
        if self._rows is None:
            return []
        first, last = self.view.top, self.view.top + self.view.height
        return [
            _drawn(self._rows[index], width, self.marked, chosen=place == self.view.chosen, live=live)
            for place, index in enumerate(self.hits[first:last], first)
        ]

    def _nothing(self, width: int) -> list[Line]:
        if self._rows is None:
            return [EMPTY, line("  Opening the book.")]
        if self._rows:
            said = f"{self._failing(self._rows)} Type fewer letters of each word, or a wider condition, or press Ctrl+U to see the whole book again. A condition such as rake>8 finds by number."
        else:
            said = "The book is empty. Leave with F9 and start again without --library to see the book that comes with the program, or run 'heelclear check' to see why nothing was read."
        return [EMPTY, *wrap(said, width - 4, first="  ", rest="  ")]

    def _failing(self, rows: Rows) -> str:
        """That nothing was found, and without which words something would be."""
        sought = self.find.text.strip()
        helps = without(rows, sought) if SIGNS.isdisjoint(sought) else LeftOut()
        if not helps.words:
            return f"Nothing in the book has {sought!r}. {helps.told}".rstrip()
        return f"Nothing in the book has all of {sought!r}. {helps.told}"


def columns(width: int) -> tuple[int, int, int, int]:
    """Widths of family, title, work material and mark; a narrow screen keeps title and family.

    Example:
        >>> columns(80), columns(60), columns(40)
        ((12, 42, 17, 4), (11, 41, 0, 4), (0, 33, 0, 4))
    """
    if width < 50:
        family, material, gaps = 0, 0, 3
    elif width < 70:
        family, material, gaps = 11, 0, 4
    else:
        family, material, gaps = (12, 17, 5) if width < 100 else (14, width // 4, 5)
    return family, max(width - family - material - MARK_WIDTH - gaps, 1), material, MARK_WIDTH


def _heading(width: int) -> Line:
    family, title, material, _ = columns(width)
    cells = [
        *([fit("Family", family)] if family else []),
        fit("Tool", title),
        *([fit("Work material", material)] if material else []),
    ]
    return line(Piece("  " + " ".join(cells), "quiet"))


def _drawn(row: Row, width: int, marked: Sequence[str], *, chosen: bool, live: bool) -> Line:
    family, title, material, mark = columns(width)
    role: Role = ("chosen" if live else "strong") if chosen else "plain"
    at_the_edge = f" {fit(mark_of(row), mark)}"
    if not family and not mark_of(row):
        title, at_the_edge = title + len(at_the_edge), ""
    rest = f" {fit(in_words(row.work_material), material)}" if material else ""
    called = fit(row.title, title) if material else fit_ends(row.title, title)
    # The kind alone shows what is chosen, not the title: each cell of it is sent again with every step.
    words = fit(in_words(row.family), family) if family else called
    shown = words.rstrip()
    after = words[len(shown) :] + (f" {called}" if family else "")
    return padded(
        line(
            f"{'>' if chosen and live else ' '}{'*' if row.id in marked else ' '}",
            Piece(shown, role),
            f"{after}{rest}{at_the_edge}",
        ),
        width,
    )


def in_words(name: str) -> str:
    """An id of the book as a person reads it.

    Example:
        >>> in_words("step-drill")
        'Step drill'
    """
    return name.replace("-", " ").capitalize()


def mark_of(row: Row) -> str:
    """``fix`` where the file has something wrong with it, ``shop`` where the shop's own book has a part of it."""
    if row.state:
        return "fix"
    return "shop" if row.layer == "shop" else ""
