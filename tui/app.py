"""The program on the screen: it wires book, session and screens together, and decides nothing else."""

from __future__ import annotations

import gc
from typing import TYPE_CHECKING

from textual.message import Message
from textual.screen import Screen

from library.book.rows import Rows
from library.units.system import Display
from tui.plain import plain
from tui.private_textual import SparingApp
from tui.screens.board import Board
from tui.screens.book import BookScreen
from tui.session import Session
from tui.signals import on_ending

if TYPE_CHECKING:
    from collections.abc import Callable

    from geometry.worksheet import Worksheet
    from library.book.model import Book, Entry


class Heelclear(SparingApp, inherit_bindings=False):
    """The Textual program.

    Args:
        session: what it starts with.
        open_book: reads the book; called in a thread.
    """

    ENABLE_COMMAND_PALETTE = False

    class BookOpened(Message):
        """The book was read."""

        def __init__(self, book: Book) -> None:
            super().__init__()
            self.book = book

    class UnitsLoaded(Message):
        """Units can be written now without a wait."""

    def __init__(self, session: Session, open_book: Callable[[], Book]) -> None:
        super().__init__()
        self.session = session
        self._open_book = open_book
        self.animation_level = "none"

    def get_default_screen(self) -> Screen[None]:
        """The book is the first screen; nothing lies below it."""
        return BookScreen(self.session)

    def on_mount(self) -> None:
        """Read the book behind the first frame, and take signals from now on."""
        self.call_after_refresh(self._collect_from_now_on)
        on_ending(self.leave)
        self.app_resume_signal.subscribe(self, lambda _: self.repaint())
        self.run_worker(self._read_book, thread=True)

    def _collect_from_now_on(self) -> None:
        """What was loaded for the first frame stays; only what comes after it is looked through."""
        gc.freeze()
        gc.enable()

    def _read_book(self) -> None:
        self.post_message(self.BookOpened(self._open_book()))

    def on_heelclear_book_opened(self, message: BookOpened) -> None:
        """Show the book."""
        self.session.book = message.book
        rows = message.book.rows
        self.session.page.fill(rows if isinstance(rows, Rows) else Rows.of(rows))
        self._draw()

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
        self._draw()

    def _draw(self) -> None:
        if isinstance(self.screen, Board):
            self.screen.draw()

    def calculate(self, entry: Entry | None) -> None:
        """Open the calculator for an entry."""
        sheet = self.session.sheet_for(entry) if entry is not None else None
        if entry is None or sheet is None:
            self._say("There is nothing to calculate here; choose an entry of the book first.")
            return
        from tui.screens.calculator import CalculatorScreen

        self.push_screen(CalculatorScreen(self.session, entry, sheet))

    def show_cautions(self, sheet: Worksheet | None, entry: Entry | None) -> None:
        """Show cautions in full."""
        from tui.screens.cautions import CautionsScreen

        self.push_screen(CautionsScreen(self.session, sheet, entry))

    def _say(self, sentence: str) -> None:
        if isinstance(self.screen, Board):
            self.screen.say(sentence)

    def repaint(self) -> None:
        """Paint every cell again."""
        self.forget_cells()
        self.screen.refresh(layout=True)

    def leave(self, code: int = 0) -> None:
        """Leave with an exit code; everything typed is kept by then."""
        self.exit(return_code=code)

    def last_words(self, error: BaseException) -> str:
        """Keep the details of a fault in the log, and say so."""
        from library.book.folders import state_folder
        from tui import faults

        return plain(faults.farewell(error, faults.keep(error, state_folder())))
