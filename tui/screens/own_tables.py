"""What the book tells of the work, and the threads, as lists: the chosen one is read, or changed in a form; a new one is made."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

from library.book.word_forms import SAYS_NOTHING
from library.guidance.model import STEPS, WHEEL_LINES, recommended_wheels, setups, symptoms, unsuited_wheels
from library.guidance.setups import whole as whole_setup
from library.guidance.wheels import whole as whole_wheel
from library.pages.own_tables import FAILS, fails_title
from library.pages.troubles import sentences
from library.pages.wheels import in_a_line
from tui.actions import on_screen
from tui.screens.chooser import Choice, Chooser
from tui.screens.table_ways import (
    FAMILY,
    can_change,
    change_table,
    choose_new,
    open_file_of,
    own_place,
    read_table,
)
from tui.screens.threads import described, in_order
from tui.screens.trouble_words import Sought, sought_by
from tui.view.table_blanks import NOUNS

if TYPE_CHECKING:
    from library.book.model import Book
    from library.guidance.told import Told
    from tui.screens.base_screen import Needs
    from tui.session import Session

OPENS = "Opens a form for it; nothing is written until you have seen it."


class OwnTablesScreen(Chooser):
    """Tables of the book of one kind or two, those of the shop first.

    Args:
        session: of the program.
        sought: stands on the find line to begin with.
    """

    WHERE = "own-tables"
    NAME_WIDTH = 34
    KEEPS_FIND = True
    TITLE = ""
    ARRAYS: tuple[str, ...] = ()

    def __init__(self, session: Session, sought: str = "") -> None:
        super().__init__(session)
        self.find = self.find.insert(sought)
        self._taken = ""
        self._known: frozenset[str] = frozenset()
        self._made: tuple[Book | None, list[Choice]] = (None, [])

    def title_text(self) -> str:
        """What these are."""
        return self.TITLE

    def told(self, book: Book) -> Iterator[Choice]:
        """Each table of the book; its id is the kind and the id of the table, with a colon between them."""
        raise NotImplementedError

    def choices(self) -> list[Choice]:
        """What the shop wrote, how to make a new one, then what came with the program."""
        book = self.session.book
        if book is None:
            return []
        if self._made[0] is not book:
            new = [Choice(f"{array}:", f"A new {NOUNS[array]}", OPENS) for array in self.ARRAYS]
            found = list(self.told(book))
            own = [one for one in found if self._is_own(book, one)]
            self._made = book, [*own, *new, *(one for one in found if one not in own)]
        return self._made[1]

    def _is_own(self, book: Book, choice: Choice) -> bool:
        array, _, name = choice.id.partition(":")
        one = book.families.get(name) if array == FAMILY else book.more.get(array, {}).get(name)
        return getattr(one, "layer", "") == "shop"

    def chosen(self) -> Choice | None:
        """The chosen one; nothing where nothing was found."""
        found = self.found()
        self.view.resize(len(found), self.view.height)
        return found[self.view.chosen] if found else None

    def book_changed(self) -> None:
        """Choose the one that is new, else keep the chosen one, which stands among those of the shop now where it was changed."""
        if choose_new(self, self._known):
            return
        ids = [one.id for one in self.found()]
        self.view.resize(len(ids), self.view.height)
        if self._taken in ids:
            self.view.choose(ids.index(self._taken))

    def _remember(self, choice: Choice) -> None:
        """Know what was there before something is changed or made."""
        self._taken, self._known = choice.id, frozenset(one.id for one in self.choices())

    def take(self, choice: Choice) -> None:
        """Show the chosen one, to be read; the form of a new one."""
        self._remember(choice)
        read_table(self, *choice.id.split(":", 1))

    def do_change(self) -> None:
        """Open the form of the chosen one, or an empty one."""
        if chosen := self.chosen():
            self._remember(chosen)
            change_table(self.heelclear, *chosen.id.split(":", 1))

    def needs(self) -> Needs:
        """A form for the chosen one, or a file of the shop; and what lists these tables is needed no more."""
        app = self.heelclear
        here = [
            one.id for one in on_screen(self.WHERE).values() if one.opens.endswith(f".{type(self).__name__}")
        ]
        return {
            **super().needs(),
            "change": lambda: (one := self.chosen()) and can_change(app, *one.id.split(":", 1)),
            "open-file": lambda: (one := self.chosen()) and own_place(app, *one.id.split(":", 1)),
            **{name: lambda: False for name in here},
        }

    def do_open_file(self) -> None:
        """Open the file of the chosen one in the editor, where that is the shop's."""
        if chosen := self.chosen():
            open_file_of(self.heelclear, *chosen.id.split(":", 1))


class SetupsScreen(OwnTablesScreen):
    """How each family and surface is ground."""

    TITLE = "How it is ground: set-ups"
    ARRAYS = ("setup",)

    def told(self, book: Book) -> Iterator[Choice]:
        """Each with the family, the surface, and its steps."""
        for name, one in setups(book).items():
            family = book.families.get(one.family)
            title = family.title if family is not None else one.family or "Only followed by others"
            of = ", ".join(part for part in (title, one.surface, *one.methods) if part)
            yield Choice(f"setup:{name}", one.title, f"{of}. {_steps(whole_setup(book, one).lines, STEPS)}")


class BookWheelsScreen(OwnTablesScreen):
    """The wheels that the book recommends, and those that it warns of."""

    TITLE = "Recommended and unsuited wheels"
    ARRAYS = ("recommended_wheel", "unsuited_wheel")

    def told(self, book: Book) -> Iterator[Choice]:
        """Each with what to look for on it, or with the reason against it."""
        for name, one in recommended_wheels(book).items():
            full = whole_wheel(book, one)
            yield Choice(
                f"recommended_wheel:{name}", one.title, in_a_line(full) or _steps(full.lines, WHEEL_LINES)
            )
        for name, rule in unsuited_wheels(book).items():
            why = rule.why.said() if rule.why is not None else ""
            yield Choice(f"unsuited_wheel:{name}", rule.title, f"{rule.state.upper()}. {why}")


class TroublesScreen(OwnTablesScreen):
    """What is seen, what to measure and to change; then how the tools of each family fail, in its own text."""

    TITLE = "Troubles: what is seen, and what to change"
    ARRAYS = ("symptom",)

    def __init__(self, session: Session, sought: str = "") -> None:
        super().__init__(session, sought)
        self._words_of: tuple[Book | None, dict[str, Sought]] = (None, {})

    def told(self, book: Book) -> Iterator[Choice]:
        """Each with the tools that it is seen on."""
        for name, one in symptoms(book).items():
            yield Choice(f"symptom:{name}", one.title, sentences(book, one, None, with_family=True))
        for family in book.families.values():
            if text := " ".join(family.texts.get(FAILS, "").split()):
                yield Choice(f"{FAMILY}:{family.id}", fails_title(family), text)

    def found(self) -> list[Choice]:
        """Those that have every word, in any of its forms, also where a tool that carries the trouble is called so."""
        typed = self.find.text.casefold().split()
        words = [one for one in typed if one not in SAYS_NOTHING] or typed
        book = self.session.book
        if book is None or not words:
            return self.choices()
        sought = self._sought(book)
        found = [one for one in self.choices() if all(map(sought[one.id].has, words))]
        return sorted(found, key=lambda one: sought[one.id].away(words))

    def _sought(self, book: Book) -> dict[str, Sought]:
        if self._words_of[0] is not book:
            self._words_of = book, {one.id: sought_by(book, one) for one in self.choices()}
        return self._words_of[1]


class OwnThreadsScreen(OwnTablesScreen):
    """The threads of the shop's own, and the standard ones, over which it may lay its own."""

    TITLE = "Threads of the shop, and standard ones"
    ARRAYS = ("thread",)
    NAME_WIDTH = 18

    def told(self, book: Book) -> Iterator[Choice]:
        """Each with its sizes."""
        for one in in_order(book):
            yield Choice(f"thread:{one.id}", one.title, described(one))


def _steps(lines: Mapping[str, Told], words: Mapping[str, str]) -> str:
    """The lines of a table, each in short behind its word."""
    return " ".join(f"{words[key]}: {told.in_short()}" for key, told in lines.items())
