"""What the book tells of the work, and the threads, as lists: the chosen one is changed in a form, and a new one made in one."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING, cast

from library.guidance.model import STEPS, WHEEL_LINES, recommended_wheels, setups, symptoms, unsuited_wheels
from library.guidance.setups import whole as whole_setup
from library.guidance.wheels import whole as whole_wheel
from library.pages.troubles import sentences
from library.pages.wheels import in_a_line
from tui.actions import on_screen
from tui.screens.chooser import Choice, Chooser
from tui.screens.in_editor import open_file
from tui.screens.own_table_forms import open_form
from tui.screens.threads import described, in_order
from tui.view.table_blanks import NOUNS

if TYPE_CHECKING:
    from library.book.model import Book
    from library.guidance.told import Told
    from library.issue import Place
    from tui.screens.base_screen import Needs
    from tui.session import Session

_OPENS = "Opens a form for it; nothing is written until you have seen it."


class OwnTablesScreen(Chooser):
    """Tables of the book of one kind or two, those of the shop first.

    Args:
        session: of the program.
        sought: stands on the find line to begin with.
    """

    WHERE = "own-tables"
    NAME_WIDTH = 34
    TITLE = ""
    ARRAYS: tuple[str, ...] = ()

    def __init__(self, session: Session, sought: str = "") -> None:
        super().__init__(session)
        self.find = self.find.insert(sought)
        self._taken = ""
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
            new = [Choice(f"{array}:", f"A new {NOUNS[array]}", _OPENS) for array in self.ARRAYS]
            found = list(self.told(book))
            own = [one for one in found if self._is_own(book, one)]
            self._made = book, [*own, *new, *(one for one in found if one not in own)]
        return self._made[1]

    def _is_own(self, book: Book, choice: Choice) -> bool:
        array, _, name = choice.id.partition(":")
        return getattr(book.more.get(array, {}).get(name), "layer", "") == "shop"

    def book_changed(self) -> None:
        """Keep the chosen one, which stands among those of the shop now where it was changed."""
        ids = [one.id for one in self.found()]
        self.view.resize(len(ids), self.view.height)
        if self._taken in ids:
            self.view.choose(ids.index(self._taken))

    def take(self, choice: Choice) -> None:
        """Open the form of the chosen one, or an empty one."""
        self._taken = choice.id
        array, _, name = choice.id.partition(":")
        open_form(self.heelclear, array, name)

    def do_change(self) -> None:
        """The same as Enter."""
        self.do_go_on()

    def needs(self) -> Needs:
        """A file of the shop that has the chosen one; and what lists these tables is needed no more."""
        here = [
            one.id for one in on_screen(self.WHERE).values() if one.opens.endswith(f".{type(self).__name__}")
        ]
        return {
            **super().needs(),
            "open-file": self._of_the_shop,
            **{name: lambda: False for name in here},
        }

    def _of_the_shop(self) -> Place | None:
        """Where the shop's book has the chosen one; nothing where it has no line of it."""
        found, book = self.found(), self.session.book
        self.view.resize(len(found), self.view.height)
        array, _, name = found[self.view.chosen].id.partition(":") if found else ("", "", "")
        one = book.more.get(array, {}).get(name) if book is not None else None
        is_own = one is not None and getattr(one, "layer", "") == "shop"
        return cast("Place | None", getattr(one, "place", None)) if is_own else None

    def do_open_file(self) -> None:
        """Open the file of the chosen one in the editor, where that is the shop's."""
        place = self._of_the_shop()
        if place is not None:
            open_file(self.heelclear, place)
        else:
            self.say(
                "The shop's book has no line of this one yet. Enter changes it in a form; then there is something of yours to open."
            )


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
    """What is seen, what to measure then, and what to change."""

    TITLE = "Troubles: what is seen, and what to change"
    ARRAYS = ("symptom",)

    def told(self, book: Book) -> Iterator[Choice]:
        """Each with the tools that it is seen on."""
        for name, one in symptoms(book).items():
            yield Choice(f"symptom:{name}", one.title, sentences(book, one, None, with_family=True))


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
