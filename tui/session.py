"""The state that all screens share in one run: the book, the units, the keys, the theme."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING

from library.units.system import METRIC, Display, Lengths
from tui import later
from tui.first_steps import FirstSteps
from tui.keys import Keymap
from tui.theme import Theme, theme
from tui.view.bars import book_title
from tui.view.book_page import BookPage

if TYPE_CHECKING:
    from collections.abc import Callable

    from library.book.model import Book, Entry
    from library.drafts.draft_store import Kept
    from library.issue import Issue
    from tui.calculators import Calculators


@dataclass
class Session:
    """One run of the program.

    Attributes:
        theme: how roles are shown on this terminal.
        display: the units that lengths are shown in, and typed in where no unit is given.
        keymap: the keys in force.
        book: the book, once it is read.
        page: the list of the book with its find line.
        units_ready: whether units are loaded, so that writing one costs nothing.
        large_figures: whether the calculator shows its drawings large, in place of the numbers.
        first_steps: what a new hand has not done yet.
        left_behind: what an earlier run left unsaved.
        marked_cards: ids of the cards marked for a batch, in the order in which they were marked.
        left_at: the line in which each job card was left, by the card's id.
        read_on: of each such card, on which surfaces the tool was read that the card does not grind any more, by quantity.
        machine: the id of the machine in hand, where one was chosen.
        has_shop: whether the shop has a book of its own; the demo's is one.
        wanted: the id of an entry that is to be chosen as soon as the book has it.
        own_problems: what keeps the person's settings, other than the keys, from being read.
        keep_units: leaves the unit of lengths for the next start.
    """

    theme: Theme = field(default_factory=theme)
    display: Display = METRIC
    keymap: Keymap = field(default_factory=Keymap)
    book: Book | None = None
    page: BookPage = field(default_factory=BookPage)
    units_ready: bool = False
    large_figures: bool = False
    first_steps: FirstSteps = field(default_factory=FirstSteps)
    left_behind: list[Kept] = field(default_factory=list)
    left_at: dict[str, str] = field(default_factory=dict)
    read_on: dict[str, dict[str, str]] = field(default_factory=dict)
    marked_cards: dict[str, None] = field(default_factory=dict)
    machine: str = ""
    has_shop: bool = False
    wanted: str = ""
    own_problems: tuple[Issue, ...] = ()
    keep_units: Callable[[Lengths], None] = lambda lengths: None

    def chosen_entry(self) -> Entry | None:
        """The entry that the list points at."""
        row = self.page.chosen
        return self.entry(row.id) if row is not None else None

    def entry(self, name: str) -> Entry | None:
        """An entry by its id; nothing where it is not in the book, or not any more."""
        try:
            return self.book.entries[name] if self.book is not None else None
        except KeyError:
            return None

    def why_gone(self, name: str) -> str:
        """What happened to the file of an entry that the list still shows; empty where it can be had."""
        try:
            if self.book is not None:
                self.book.entries[name]
        except KeyError as gone:
            return str(getattr(gone, "sentence", "")) or "This entry is not in the book any more."
        return ""

    def show_wanted(self) -> None:
        """Choose the entry that was just added, where the book has it by now."""
        if self.wanted and self.entry(self.wanted) is not None:
            self.page.reveal(self.wanted)
            self.wanted = ""

    def problem_count(self) -> int:
        """How many problems the book, the user's keys and his other settings have."""
        return (
            len(self.keymap.problems)
            + len(self.own_problems)
            + (self.book.problem_count if self.book is not None else 0)
        )

    @property
    def book_title(self) -> str:
        """The program's name, and what wants to be looked at, if anything."""
        return book_title(self.keymap, self.problem_count(), len(self.left_behind))

    @cached_property
    def calculators(self) -> Calculators:
        """Everything that was typed into calculators."""
        return later.Calculators(self)

    def is_served(self, entry: Entry | None) -> bool:
        """Whether any calculation serves a tool."""
        return entry is not None and bool(self.calculators.serving.all_of(entry))

    def tools_typed_for(self) -> list[str]:
        """The ids of the tools for which something was typed into calculations."""
        return self.calculators.tools_typed_for() if "calculators" in vars(self) else []

    def switch_units(self) -> None:
        """Change between millimetres and inches; what was typed keeps its meaning."""
        new = self.display.other()
        self.page.keep_meaning(self.display.lengths)
        if "calculators" in vars(self):
            self.calculators.switch(self.display, new)
        self.display = new
        self.keep_units(new.lengths)
        self.page.find_anew()
