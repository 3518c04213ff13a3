"""The program on the screen: it wires book, session and screens together, and decides nothing else."""

from __future__ import annotations

import gc
from typing import TYPE_CHECKING

from textual.message import Message
from textual.screen import Screen

from library.book.rows import Rows
from library.units.system import Display
from tui.behind import Behind
from tui.book_desk import BookDesk
from tui.carding import Carding
from tui.changing import Changing
from tui.drafting import Drafting
from tui.editor import Editor
from tui.plain import plain
from tui.private_textual import SparingApp
from tui.screens.board import Board
from tui.screens.book import BookScreen
from tui.session import Session
from tui.sharing import Sharing
from tui.signals import on_ending
from tui.watching import Watching

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence
    from pathlib import Path

    from geometry.calculation import Calculation
    from library.book.model import Book, Entry
    from library.drafts.shelf import Kept


class Heelclear(SparingApp, inherit_bindings=False):
    """The Textual program.

    Args:
        session: what it starts with.
        open_book: reads the book; called in a thread.
        shop: the shop's folder, where changes are saved.
        state: the folder in which drafts are kept.
    """

    ENABLE_COMMAND_PALETTE = False

    class BookOpened(Message):
        """The book was read, and its rows are ready for a search."""

        def __init__(self, book: Book, rows: Rows) -> None:
            super().__init__()
            self.book = book
            self.rows = rows

    class UnitsLoaded(Message):
        """Units can be written now without a wait."""

    class LeftBehind(Message):
        """An earlier run ended with something typed and not saved."""

        def __init__(self, kept: Sequence[Kept]) -> None:
            super().__init__()
            self.kept = kept

    class Follow(Message):
        """A thread has ended, and something is to be done on the screen."""

        def __init__(self, do: Callable[[], None]) -> None:
            super().__init__()
            self.do = do

    class FilesChanged(Message):
        """Somebody else changed files of the book."""

        def __init__(self, paths: Sequence[Path]) -> None:
            super().__init__()
            self.paths = paths

    def __init__(self, session: Session, open_book: Callable[[], Book], shop: Path, state: Path) -> None:
        super().__init__()
        self.session = session
        self._open_book = open_book
        self.animation_level = "none"
        desk = BookDesk(shop)
        self.behind = Behind(self)
        self.changing = Changing(self, desk)
        self.sharing = Sharing(self, desk)
        self.carding = Carding(self, shop)
        self.editor = Editor(self, state / "notes")
        self.drafting = Drafting(self, state / "drafts")
        self.watching = Watching(self, shop)

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
        self.run_worker(self._read_book, thread=True)
        self.run_worker(self._look_for_drafts, thread=True)
        self.watching.begin()

    def _look_for_drafts(self) -> None:
        kept = self.drafting.left_behind()
        if kept:
            self.post_message(self.LeftBehind(kept))

    def on_heelclear_left_behind(self, message: LeftBehind) -> None:
        """Offer what was left unsaved, without coming between a person and what is being typed."""
        self.session.left_behind = list(message.kept)
        self.draw_front()

    def on_heelclear_follow(self, message: Follow) -> None:
        """Do what was to be done."""
        message.do()

    def on_heelclear_files_changed(self, message: FilesChanged) -> None:
        """Read the book again, and say whose file it was."""
        names = ", ".join(path.name for path in message.paths[:3])
        more = f" and {len(message.paths) - 3} more" if len(message.paths) > 3 else ""
        self.read_again(f"Changed by somebody else: {names}{more}. The book was read again.")

    def read_again(self, sentence: str) -> None:
        """Read the book again behind the screen, and say why."""
        self.say(sentence)
        self.watching.forget()
        self.run_worker(self._read_book, thread=True)

    def back_from(self, *places: str) -> None:
        """Go back past every screen that is one of these places."""
        while isinstance(self.screen, Board) and self.screen.WHERE in places:
            self.pop_screen()

    def _read_book(self) -> None:
        self.watching.take_as_known()
        book = self._open_book()
        rows = book.rows if isinstance(book.rows, Rows) else Rows.of(book.rows)
        rows.matching("")  # unpacks what a search looks at, so that the first letter does not wait for it
        self.post_message(self.BookOpened(book, rows))

    def on_heelclear_book_opened(self, message: BookOpened) -> None:
        """Show the book."""
        self.session.book = message.book
        self.session.page.fill(message.rows)
        self.session.show_wanted()
        for screen in self.screen_stack:
            if isinstance(screen, Board):
                screen.book_changed()
        if isinstance(self.screen, Board):
            self.screen.leave_if_gone()
        self.draw_front()

    def load_units(self) -> None:
        """Load units in a thread, once."""
        if not self.session.units_ready:
            self.run_worker(self._load_units, thread=True, group="units", exclusive=True)

    def _load_units(self) -> None:
        from geometry.sentences import Kind
        from library.units.show import show

        show(1.0, Kind.LENGTH, Display("in"))
        self.post_message(self.UnitsLoaded())

    def on_heelclear_units_loaded(self) -> None:
        """Lengths can be written in the other unit too."""
        self.session.units_ready = True
        self.session.page.by_condition = self.session.find
        self.session.page.find_anew()
        self.draw_front()

    def draw_front(self) -> None:
        """Show the screen in front as it now is."""
        if isinstance(self.screen, Board):
            self.screen.draw()

    def calculate(self, entry: Entry | None) -> None:
        """Open the calculator for an entry."""
        sheet = self.session.sheet_for(entry) if entry is not None else None
        if entry is None:
            self.say("There is nothing to calculate here; choose an entry of the book first.")
            return
        if sheet is None:
            name = entry.family.replace("-", " ")
            self.say(f"No calculation serves a {name}; 'heelclear calc' lists all that there are.")
            return
        from tui.screens.calculator import CalculatorScreen

        self.push_screen(CalculatorScreen(self.session, entry, sheet))

    def show_cautions(self, sheet: Calculation | None, entry: Entry | None) -> None:
        """Show cautions in full."""
        from tui.screens.cautions import CautionsScreen

        self.push_screen(CautionsScreen(self.session, sheet, entry))

    def say(self, sentence: str) -> None:
        """Show a sentence on the screen in front, until the next key."""
        if isinstance(self.screen, Board):
            self.screen.say(sentence)
            self.screen.draw()

    def repaint(self) -> None:
        """Paint every cell again."""
        self.forget_cells()
        self.screen.refresh(layout=True)

    def leave(self, code: int = 0) -> None:
        """Leave with an exit code; everything typed is kept by then."""
        self.drafting.end(orderly=code == 0)
        self.behind.end()
        self.exit(return_code=code)

    def last_words(self, error: BaseException) -> str:
        """Keep the details of a fault in the log, and say so."""
        from library.book.folders import state_folder
        from tui import faults

        return plain(faults.farewell(error, faults.keep(error, state_folder())))
