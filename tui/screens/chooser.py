"""The base of screens that are a list: a find line that filters it, a cursor, and a line about the chosen one."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from library.book.word_forms import SAYS_NOTHING
from library.search.leaving_out import leaving_out
from library.search.nearness import singular
from tui.screens.base_screen import BaseScreen
from tui.view.lines import Line, Piece, above_of, at_most, edge_of, filled, fit, line, wrap
from tui.view.text_line import TextLine
from tui.view.viewport import Viewport

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tui.screens.base_screen import Needs
    from tui.session import Session


FOOT = 3
"""Lines under the list that say more about the chosen one."""

WIDE = 100
"""Cells from which the longest name gets the room that it needs."""

TALL = 18
"""Lines of a screen below which one of them is given to the list."""


class Choice(NamedTuple):
    """One thing to choose.

    Attributes:
        id: what the screen knows it by.
        name: stands at the left.
        text: says more about it.
        also: other words by which it is found.
    """

    id: str
    name: str
    text: str
    also: str = ""

    def has(self, word: str) -> bool:
        """Whether a word, in small letters, stands in it, if only without a last s."""
        return singular(word) in f"{self.name} {self.text} {self.also}".casefold()


class Chooser(BaseScreen):
    """Choices of which typing leaves those that have what was typed; Enter takes the chosen one."""

    NAME_WIDTH = 16
    KEEPS_FIND = False
    """Whether what is sought stays when one is taken: where one after the other is read."""

    def __init__(self, session: Session) -> None:
        super().__init__(session)
        self.find = TextLine()
        self.view = Viewport()

    def choices(self) -> list[Choice]:
        """Everything to choose from."""
        raise NotImplementedError

    def take(self, choice: Choice) -> None:
        """Do what was chosen; the screen is still shown."""
        raise NotImplementedError

    def sought(self) -> list[str]:
        """The words typed, in small letters; those that say nothing are left out, unless there are no others."""
        words = self.find.text.casefold().split()
        return [word for word in words if word not in SAYS_NOTHING] or words

    def found(self) -> list[Choice]:
        """The choices that have every word typed, those first that have them in their names, then in their texts."""
        words = self.sought()
        found = [choice for choice in self.choices() if all(map(choice.has, words))]
        return sorted(found, key=lambda choice: [
            not all(word in text.casefold() for word in words)
            for text in (choice.name, f"{choice.name} {choice.text}")
        ])  # fmt: skip

    def body(self, width: int, height: int) -> list[Line]:
        """A find line, the list, and all that there is to say of the chosen one."""
        found = self.found()
        room = FOOT if height >= TALL else FOOT - 1
        self.view.resize(len(found), height - room - 3)
        rows = self.listed(found, width, self.view.height)
        head = [self.head(width), above_of(self.above(), width)]
        nothing = wrap(self.nothing(), width, first="  ", rest="  ")
        foot = wrap(found[self.view.chosen].text, width) if found else []
        return [
            *filled(head + (rows or nothing), height - room - 1),
            self.edge(width),
            *at_most(foot, width, room),
        ]

    def head(self, width: int) -> Line:
        """The line over the list: what is sought."""
        return line(Piece("Find: ", "strong"), *self.find.pieces(max(width - 6, 1)))

    def nothing(self) -> str:
        """Said where no choice has what is sought, and without which words one has it."""
        choices = self.choices()

        def find(words: Sequence[str]) -> list[int]:
            return [at for at, one in enumerate(choices) if all(map(one.has, words))]

        told = leaving_out(self.sought(), find).told
        said = f"Nothing here has all of that in it. {told[:-1]}" if told else "Nothing here has that in it"
        return f"{said}; {self.key_of('empty')} shows all again."

    def needs(self) -> Needs:
        """Nothing is taken where nothing is found, and nothing emptied where nothing is sought."""
        return {**super().needs(), "go-on": self.found, "change": self.found, "empty": lambda: self.find.text}

    def edge(self, width: int) -> Line:
        """The line under the list; it tells how many choices lie under it out of sight."""
        return edge_of(self.view.below(), width)

    def above(self) -> int:
        """How many lines lie over the part of the list that is in sight."""
        return self.view.top

    def listed(self, found: list[Choice], width: int, height: int) -> list[Line]:
        """The part of the list that is in sight, at most ``height`` lines."""
        return [
            self._row(choice, width, chosen=place == self.view.chosen)
            for place, choice in enumerate(found[self.view.top : self.view.top + height], self.view.top)
        ]

    def _row(self, choice: Choice, width: int, *, chosen: bool) -> Line:
        name = self._name_width(width)
        room = max(width - name - 3, 1)
        return line(
            Piece("> " if chosen else "  ", "strong"),
            Piece(fit(choice.name, name), "chosen" if chosen else "key"),
            " ",
            Piece(fit(choice.text, room)),
        )

    def _name_width(self, width: int) -> int:
        """The cells of the names: more than usual where the longest needs them and a wide screen has them."""
        if width < WIDE:
            return self.NAME_WIDTH
        return max(
            self.NAME_WIDTH, min(max((len(one.name) for one in self.choices()), default=0), width // 2)
        )

    def room(self) -> int | None:
        """Characters that the find line still takes."""
        return self.find.room

    def typed(self, text: str) -> None:
        """Find as it is typed."""
        self._seek(self.find.insert(text))

    def edited(self, key: str) -> None:
        """Edit what is sought."""
        self._seek(self.find.edited(key))

    def do_empty(self) -> None:
        """Show all choices again."""
        self._seek(TextLine())

    def _seek(self, find: TextLine) -> None:
        if find.text != self.find.text:
            self.view.choose(0)
        self.find = find

    def do_up(self) -> None:
        """One choice up."""
        self.view.move(-1)

    def do_down(self) -> None:
        """One choice down."""
        self.view.move(1)

    def do_page_up(self) -> None:
        """A screenful up."""
        self.view.page(-1)

    def do_page_down(self) -> None:
        """A screenful down."""
        self.view.page(1)

    def do_first(self) -> None:
        """To the first choice."""
        self.view.choose(0)

    def do_last(self) -> None:
        """To the last choice."""
        self.view.choose(self.view.count)

    def do_go_on(self) -> None:
        """Take the chosen one."""
        found = self.found()
        self.view.resize(len(found), self.view.height)
        if found:
            chosen = found[self.view.chosen]
            self.take(chosen)
            if not self.KEEPS_FIND:
                self._show_all(chosen)

    def _show_all(self, chosen: Choice) -> None:
        """Empty the find line for whoever comes back; the one that was taken stays chosen."""
        self.find = TextLine()
        ids = [choice.id for choice in self.found()]
        self.view.resize(len(ids), self.view.height)
        self.view.choose(ids.index(chosen.id) if chosen.id in ids else 0)
