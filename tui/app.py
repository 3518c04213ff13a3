"""The program on the screen: it wires book, session and screens together, and decides nothing else."""

from __future__ import annotations

import gc
from functools import cached_property
from typing import TYPE_CHECKING

from textual import events
from textual.message import Message
from textual.screen import Screen

from geometry.sentences import Kind
from library.book.folders import state_folder
from library.book.rows import Rows
from library.sanitize import sanitize
from library.units.system import Display
from tui import faults, later, screens
from tui.held_escape import HeldEscape
from tui.private_textual import SparingApp
from tui.screens.base_screen import BaseScreen
from tui.screens.book import BookScreen
from tui.screens.paned import TWO_FROM
from tui.services.autosave import Autosave
from tui.services.background import Background
from tui.services.file_watch import FileWatch
from tui.session import Session
from tui.signals import on_ending

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Sequence
    from pathlib import Path

    from geometry.calculation import Calculation
    from library.book.model import Book, Caution, Entry
    from library.drafts.draft_store import Kept
    from tui.services.book_service import BookService
    from tui.services.card_service import CardService
    from tui.services.editor import Editor
    from tui.services.git_service import GitService


class Follow(Message):
    """A thread has ended, and something is to be done on the screen."""

    def __init__(self, do: Callable[[], None]) -> None:
        super().__init__()
        self.do = do


class Heelclear(SparingApp, inherit_bindings=False):
    """The Textual program.

    Args:
        session: what it starts with.
        open_book: reads the book; called in a thread.
        shop: the shop's folder, where changes are saved.
        state: the folder in which drafts are kept.
    """

    ENABLE_COMMAND_PALETTE = False

    def __init__(self, session: Session, open_book: Callable[[], Book], shop: Path, state: Path) -> None:
        super().__init__()
        self.session = session
        self.shop = shop
        self._state = state
        self._open_book = open_book
        self.animation_level = "none"
        self.escape = HeldEscape(self.set_timer, self._escape_alone)
        self.background = Background(self)
        self.autosave = Autosave(self, state / "drafts", lambda: later.Drafts(state / "drafts", book=shop))
        self.file_watch = FileWatch(self, self.background, shop, self.files_changed)

    @cached_property
    def book_service(self) -> BookService:
        """Changes the shop's book."""
        return later.BookService(self.shop)

    @property
    def has_saved(self) -> bool:
        """Whether the book was changed here, so that there is something to take back; loads nothing."""
        return "book_service" in vars(self) and self.book_service.last is not None

    @cached_property
    def card_service(self) -> CardService:
        """Has the shop's job cards."""
        return later.CardService(self.shop)

    @cached_property
    def git_service(self) -> GitService:
        """Asks git about the shop's book."""
        return later.GitService(self.shop)

    @cached_property
    def editor(self) -> Editor:
        """The person's own editor."""
        return later.Editor(self._state / "notes")

    def get_default_screen(self) -> Screen[None]:
        """The book is the first screen; nothing lies below it."""
        return BookScreen(self.session)

    def on_mount(self) -> None:
        """Take signals from now on; everything else comes after the first frame."""
        on_ending(self.leave)
        self.app_resume_signal.subscribe(self, lambda _: self.repaint())
        self.call_after_refresh(self._begin)

    def _begin(self) -> None:
        """Read the book and look for drafts behind the first frame, which no thread may hold up.

        What was loaded until here stays, so garbage is looked for only in what comes after it.
        """
        gc.freeze()
        gc.enable()
        self.in_thread(self._read_book)
        self.in_thread(self._look_for_drafts)
        self.file_watch.begin()

    async def on_event(self, event: events.Event) -> None:
        """Take Esc and a digit, or Alt and a digit, as the key with that number, and all else as it comes."""
        if isinstance(event, events.Key) and not event.is_forwarded:
            for key in self.escape.keys(event):
                await super().on_event(key)
            return
        if isinstance(event, events.Paste) and not event.is_forwarded:
            for key in self.escape.release():
                await super().on_event(key)
        await super().on_event(event)

    def _escape_alone(self) -> None:
        """No digit came after Esc: it is itself."""
        self.screen.post_message(events.Key("escape", "\x1b"))

    @property
    def front(self) -> object:
        """The screen in front."""
        return self.screen

    def in_thread(self, work: Callable[[], None], group: str = "default", *, exclusive: bool = False) -> None:
        """Do something in a thread; where it is exclusive, what else of its group goes on counts no more."""
        self.run_worker(work, thread=True, group=group, exclusive=exclusive)

    def on_screen(self, do: Callable[[], None]) -> None:
        """Have something done where screens may be touched; called in a thread."""
        self.post_message(Follow(do))

    def on_follow(self, message: Follow) -> None:
        """Do what a thread asked for."""
        message.do()

    def _look_for_drafts(self) -> None:
        kept = self.autosave.left_behind()
        told = " ".join(self.autosave.troubles)
        if kept or told:
            self.on_screen(lambda: self._found_drafts(kept, told))

    def _found_drafts(self, kept: Sequence[Kept], told: str) -> None:
        """Offer what was left unsaved, without coming between a person and what is being typed."""
        self.session.left_behind = list(kept)
        if told:
            self.say(told)
        self.draw_front()

    def files_changed(self, paths: Sequence[Path]) -> None:
        """Read the book again, because somebody else changed files of it, and say which."""
        names = ", ".join(path.name for path in paths[:3])
        more = f" and {len(paths) - 3} more" if len(paths) > 3 else ""
        self.read_again(f"Changed by somebody else: {names}{more}. The book was read again.")

    def read_again(self, sentence: str) -> None:
        """Read the book again behind the screen, and say why."""
        self.say(sentence)
        self.file_watch.forget()
        self.in_thread(self._read_book)

    def back_from(self, *places: str) -> None:
        """Go back past every screen that is one of these places."""
        while isinstance(self.screen, BaseScreen) and self.screen.WHERE in places:
            self.pop_screen()

    def _read_book(self) -> None:
        self.file_watch.take_as_known()
        book = self._open_book()
        rows = book.rows if isinstance(book.rows, Rows) else Rows.of(book.rows)
        rows.matching("")  # unpacks what a search looks at, so that the first letter does not wait for it
        if self.size.width >= TWO_FROM:
            screens.calculation_beside  # noqa: B018 -- loaded here, so that the list does not wait for it
        has_shop = any(self.shop.glob("*.toml"))
        self.on_screen(lambda: self._show_book(book, rows, has_shop=has_shop))

    def _show_book(self, book: Book, rows: Rows, *, has_shop: bool) -> None:
        self.session.book, self.session.has_shop = book, has_shop
        self.session.page.threads_called = lambda name: later.threads_called(name, book)
        self.session.page.fill(rows)
        self.session.show_wanted()
        for screen in self.screen_stack:
            if isinstance(screen, BaseScreen):
                screen.book_changed()
        if isinstance(self.screen, BaseScreen):
            self.screen.leave_if_gone()
        self.draw_front()

    def load_units(self) -> None:
        """Load units in a thread, once."""
        if not self.session.units_ready:
            self.in_thread(self._load_units, "units", exclusive=True)

    def _load_units(self) -> None:
        later.show(1.0, Kind.LENGTH, Display("in"))
        self.on_screen(self._units_loaded)

    def _units_loaded(self) -> None:
        """Lengths can be written in the other unit too."""
        self.session.units_ready = True
        self.session.page.by_condition = lambda rows, text: later.by_condition(
            rows, text, self.session.display
        )
        self.session.page.find_anew()
        self.draw_front()

    def draw_front(self) -> None:
        """Show the screen in front as it now is."""
        if isinstance(self.screen, BaseScreen):
            self.screen.draw()

    def calculate(self, entry: Entry | None) -> None:
        """Open the calculator for an entry."""
        if entry is None:
            self.say("There is nothing to calculate here; choose an entry of the book first.")
            return
        kept = self.session.calculators.come_to(entry, self.session.page.finds)
        self.session.calculators.carry(entry, self.session.page.along_with(entry.id))
        sheet = self.session.calculators.first(entry)
        if sheet is None:
            name = entry.family.replace("-", " ")
            self.say(f"No calculation serves a {name}; 'heelclear calc' lists all that there are.")
            return
        screen = screens.CalculatorScreen(self.session, entry, sheet)
        self.push_screen(screen)
        screen.say_kept(kept)

    def measure(self, entry: Entry, key: str) -> None:
        """Open the calculation that measures a new tool, on the surface of a quantity where it is a relief."""
        kept = self.session.calculators.come_to(entry, self.session.page.finds)
        self.session.calculators.carry(entry, self.session.page.along_with(entry.id))
        screen = screens.CalculatorScreen(
            self.session, entry, self.session.calculators.for_measuring(entry, key)
        )
        self.push_screen(screen)
        screen.say_kept(kept)

    def show_cautions(
        self,
        sheet: Calculation | None,
        entry: Entry | None,
        found: Callable[[Book], Iterable[Caution]] | None = None,
    ) -> None:
        """Show cautions in full: of a calculation and a tool, or those that ``found`` gives."""
        self.push_screen(screens.CautionsScreen(self.session, sheet, entry, found))

    def say(self, sentence: str) -> None:
        """Show a sentence on the screen in front, until the next key."""
        if isinstance(self.screen, BaseScreen):
            self.screen.say(sentence)
            self.screen.draw()

    def repaint(self) -> None:
        """Paint every cell again."""
        self.forget_cells()
        self.screen.refresh(layout=True)

    def leave(self, code: int = 0) -> None:
        """Leave with an exit code; everything typed is kept by then."""
        self.autosave.end(orderly=code == 0)
        self.background.end()
        self.exit(return_code=code)

    def last_words(self, error: BaseException) -> str:
        """Keep the details of a fault in the log, and say so."""
        return sanitize(faults.farewell(error, faults.keep(error, state_folder())))
