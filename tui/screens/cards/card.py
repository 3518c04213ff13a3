"""One job card: filled in step by step, worked out at every key, kept as a draft and saved at any time."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from library.cards.editing import CardEditRefused
from library.cards.forms import as_fields
from library.cards.learn import not_in_book
from library.cards.results import known_results
from library.cards.rows import UNREADABLE
from tui import screens
from tui.figure.alphabet import ALPHABETS
from tui.screens.cards.card_navigation import begin_again, to_the_unsaved
from tui.screens.cards.closing import close_or_open, learn
from tui.screens.cards.discarding import discard_card, is_discardable
from tui.screens.cards.kept_card import KeptCard
from tui.screens.cards.listing import calculation_of, has_calculation, has_list, more_for
from tui.view.card_form import CardForm
from tui.view.card_page import CardPage
from tui.view.card_steps import STEPS, last_typed
from tui.view.lines import Line, wrap

if TYPE_CHECKING:
    from library.book.model import Book
    from library.cards.rows import CardRow
    from tui.screens.base_screen import Needs
    from tui.services.card_service import CardInHand, CardService
    from tui.services.export import Printed
    from tui.session import Session
    from tui.view.card_row import Row


class CardScreen(KeptCard):
    """A card.

    Args:
        session: what the program knows.
        book: works the card out.
        cards: where cards are saved.
        in_hand: the card.
    """

    WHERE = "card"

    def __init__(self, session: Session, book: Book, cards: CardService, in_hand: CardInHand) -> None:
        super().__init__(session, CardForm(book, in_hand.card), cards, in_hand)
        card, opened, started = in_hand.card, in_hand.opened, in_hand.started
        if read_on := session.read_on.get(card.id, {}):
            self.form.know_readings(read_on)
        if opened is not None or started is not None:
            self.form.go_on_with(last_typed(as_fields(card), started) or session.left_at.get(card.id, ""))
        alphabet = ALPHABETS[session.theme.drawing]
        self.page = CardPage(self.form, cards.earlier, self.key_of, cards.visits, alphabet)
        self._know_results()
        self._awaited: tuple[str, str] | None = None
        self.guide = ""

    def on_mount(self) -> None:
        """Read what the shop's other cards say behind the screen, where nobody did yet."""
        if self.cards.rows is None:
            self.run_worker(self._read_rows, thread=True)

    def _read_rows(self) -> None:
        rows = self.cards.read_rows()
        self.app.call_from_thread(self._take_rows, rows)

    def _take_rows(self, rows: tuple[CardRow, ...]) -> None:
        if self.cards.rows is None:
            self.cards.rows = rows
        self._know_results()
        self.draw()

    def _know_results(self) -> None:
        self.form.know_results(known_results(self.cards.rows or ()))

    def title_text(self) -> str:
        """The card's id and its tool."""
        card = self.form.card
        if self.opened is not None and self.opened.broken:
            return f"Job card {card.id}: its file cannot be read"
        return f"Job card {card.id}: {card.title}" if card.id else f"New job card: {card.title}"

    def state_text(self) -> str:
        """Whether it is a draft, changed or saved, and the unit of lengths."""
        card = self.form.card
        state = "done" if card.done else "draft" if card.id else "not saved yet"
        state = UNREADABLE if self.opened is not None and self.opened.broken else state
        return f"{state}{' *' if self.is_changed and card.id else ''}  {card.units or 'mm'}"

    def body(self, width: int, height: int) -> list[Line]:
        """The steps, the lines of the one in hand, and what follows from them; under it what a first job tells."""
        guide = wrap(self.guide, width, "strong") if self.guide else []
        return [*self.page.draw(width, height - len(guide)), *guide]

    def words(self) -> Sequence[str]:
        """The quantity in hand."""
        return (self.form.row.quantity,) if self.form.row.quantity else ()

    def is_text(self, key: str) -> bool:
        """A question mark is a character where text belongs, and asks for help elsewhere."""
        return key == "?" and self.form.row.is_text

    def needs(self) -> Needs:
        """An open card; a line with a list or a calculation; a step after this one or before it; something to save or to learn."""
        form = self.form
        takes = not self._why_closed()
        return {
            **super().needs(),
            "calculate": lambda: takes and has_calculation(self),
            "change": lambda: takes and has_list(self),
            "empty": lambda: takes and (form.in_hand.text or form.stood_here),
            "units": lambda: takes,
            "save": lambda: self.is_changed or self.opened is None,
            "next": lambda: form.step + 1 < len(STEPS),
            "previous": lambda: form.step > 0,
            "go-on": lambda: form.step + 1 < len(STEPS) or self._may_close(),
            "finish-card": lambda: self.opened is None or not self.opened.read_only,
            "drop-card": lambda: self.opened is None or is_discardable(self.opened),
            "learn": lambda: form.card.entry and not_in_book(form.card, form.book),
        }

    def room(self) -> int:
        """Characters that the line in hand still takes."""
        return self.form.room

    def typed(self, text: str) -> None:
        """Type into the line in hand; everything that follows is worked out at once."""
        self._try(lambda: self.form.type(text))
        if told := self.form.told_of_choices:
            self.say(told.replace("{calculate}", self.key_of("calculate")))

    def edited(self, key: str) -> None:
        """Edit the line in hand."""
        shown = self.form.row
        self._try(lambda: self.form.edit(key))
        if key in {"left", "right"} and not self._why_closed():
            self._say_left_out(shown)
            self._say_nothing_brought(shown)

    def _say_left_out(self, before: Row) -> None:
        """That an arrow took a calculation out of the job, or into it again."""
        row = self.form.row
        if before.heading and row.way == before.way and row.text != before.text:
            left = f"{row.label.strip()}: left out of the job; Right takes it in again."
            self.say(left if row.text else f"{row.label.strip()}: in the job again.")

    def _say_nothing_brought(self, before: Row) -> None:
        """Where an arrow could bring nothing, say so."""
        form = self.form
        if form.only_choice:
            self.say(f"{form.row.label.strip()}: there is only {form.only_choice}.")
        elif not before.text and not form.in_hand.text and not (before.choices or before.offers):
            self.say("Neither the book nor the machine has anything for this line; type it.")

    def do_empty(self) -> None:
        """Empty the line in hand."""
        self._try(self.form.clear)

    def do_units(self) -> None:
        """Change the unit of lengths; what was typed keeps its meaning."""
        self._try(self.form.switch_units)

    def put(self, text: str) -> None:
        """Put what was chosen from a list into the line in hand."""
        self._try(lambda: self.form.put(text))

    def wait_for(self, way: str, name: str) -> None:
        """Take a machine or a wheel that was written down from its line, as soon as the book has it."""
        self._awaited = way, name

    def _take_awaited(self) -> None:
        if self._awaited is None or self._why_closed():
            return
        way, name = self._awaited
        if self.session.book is None or name not in self.session.book.more.get(way, {}):
            return
        self._awaited = None
        if not as_fields(self.form.card).get(way):
            self.form.go_to(way)
            self.put(name)

    def _try(self, change: Callable[[], None]) -> None:
        if self._is_closed():
            return
        try:
            change()
        except CardEditRefused as refused:
            self.say(str(refused))
        else:
            self._refused = False
            self.heelclear.autosave.keep_soon(self.draft())

    def _is_closed(self) -> bool:
        """Whether nothing may be typed; then it is said why."""
        if why := self._why_closed():
            self.say(why)
        return bool(why)

    def _why_closed(self) -> str:
        """Why nothing may be typed; empty where it may."""
        if self.opened is not None and self.opened.read_only:
            return self.opened.read_only
        if self.form.card.done:
            return (
                f"This card is closed. {self.key_of('finish-card')} opens it again; "
                f"{self.key_of('again')} begins a new one for the same job."
            )
        return ""

    def do_go_on(self) -> None:
        """To the next line that wants something."""
        if self.form.go_on():
            return
        if self._may_close():
            close_or_open(self)
        else:
            self.say(f"That was the last line; {self.key_of('back')} leaves the card.")

    def _may_close(self) -> bool:
        return not self.form.card.done and (self.opened is None or not self.opened.read_only)

    def do_down(self) -> None:
        """To the next line."""
        self.form.move(1)

    def do_up(self) -> None:
        """To the line before."""
        self.form.move(-1)

    def do_next(self) -> None:
        """To the next step."""
        self.form.change_step(1)

    def do_previous(self) -> None:
        """To the step before."""
        self.form.change_step(-1)

    def do_page_up(self) -> None:
        """See the part of what follows above."""
        self.page.page(-1)

    def do_page_down(self) -> None:
        """See the part of what follows below."""
        self.page.page(1)

    def do_calculate(self) -> None:
        """Show all lines of the calculation that the line in hand belongs to, or fold them again."""
        if not self._is_closed():
            calculation_of(self)

    def do_change(self) -> None:
        """Open the list for the line in hand."""
        if not self._is_closed():
            more_for(self)

    def do_finish_card(self) -> None:
        """Close the card; or open a closed one again."""
        if self.opened is not None and self.opened.read_only:
            self.say(self.opened.read_only)
        else:
            close_or_open(self)

    def do_drop_card(self) -> None:
        """Discard it, once that is confirmed; a record is not discarded."""
        discard_card(self)

    def printed(self) -> Printed:
        """The setup sheet."""
        job = self.form.job
        return screens.printed_sheet(
            job, lambda: self.app.push_screen(screens.SheetScreen(self.session, job))
        )

    def do_learn(self) -> None:
        """Bring what was learned back to the book."""
        if self.save():
            learn(self, self.form.card)

    def do_again(self) -> None:
        """Begin a new card for the same job."""
        if self.save():
            begin_again(self, self.form.card.id)

    def do_drafts(self) -> None:
        """Leave the card for the list, so that no draft is opened over it, and show there what was left unsaved."""
        to_the_unsaved(self)

    def do_cautions(self) -> None:
        """Show the cautions of the whole job in full."""
        self.heelclear.show_cautions(None, self.form.job.entry, lambda _: self.form.job.cautions)

    def book_changed(self) -> None:
        """Work it out with the book as it is now."""
        if self.session.book is not None:
            self.form.take(self.session.book, self.form.card)
            self._take_awaited()
