"""The job cards of the shop: type to find, Enter opens."""

from __future__ import annotations

from typing import TYPE_CHECKING

from library.cards.history import history
from library.cards.job import work_out
from library.cards.model import DRAFT
from library.cards.store import NoCard
from tui import screens
from tui.screens.base_screen import BaseScreen
from tui.screens.cards.card_navigation import begin_again, begin_card, open_card
from tui.screens.cards.discarding import discard_saved
from tui.screens.draft_names import is_new_card, name_of
from tui.screens.left_behind import JOB_CARD
from tui.screens.marks import take_away
from tui.view.card_list_page import CardListPage
from tui.view.lines import Line
from tui.view.text_line import TextLine

if TYPE_CHECKING:
    from library.cards.model import Card
    from library.cards.rows import CardRow
    from tui.screens.base_screen import Needs
    from tui.services.card_service import CardService
    from tui.services.export import Printed
    from tui.session import Session


class CardsScreen(BaseScreen):
    """A light row for every card.

    Args:
        session: what the program knows.
        cards: the cards of the shop.
    """

    WHERE = "cards"

    def __init__(self, session: Session, cards: CardService) -> None:
        super().__init__(session)
        self.cards = cards
        self.page = CardListPage(cards.rows, self.key_of, session.marked_cards)
        self._opens_when_read = False

    def on_mount(self) -> None:
        """Read the cards behind the screen; what was read before is shown meanwhile."""
        self.run_worker(self._read, thread=True)

    def _read(self) -> None:
        rows = self.cards.read_rows()
        self.app.call_from_thread(self._take, rows)

    def _take(self, rows: tuple[CardRow, ...]) -> None:
        self.cards.rows = rows
        self.page.fill(rows, self.cards.not_read)
        told = [self.cards.not_read, _of_lost_marks(self.page.take_lost_marks())]
        if any(told):
            self.say(" ".join(filter(None, told)))
        if self._opens_when_read and self.is_current:
            self.said = self.said if any(told) else ""
            self.do_go_on()
        self.draw()

    def came_back(self) -> None:
        """Show what was saved on another screen, the card that was begun there chosen."""
        if self.cards.rows is not None:
            self.page.fill(self.cards.rows, self.cards.not_read, to_new=True)
        super().came_back()

    def title_text(self) -> str:
        """What these are."""
        return "Job cards"

    def state_text(self) -> str:
        """How many cards were left unsaved and where they are, and the unit of lengths."""
        count = len(self._unsaved())
        told = f"{count} unsaved: {self.key_of('menu')}, unsaved  " if count else ""
        return f"{told}{super().state_text()}"

    def _unsaved(self) -> list[str]:
        """The names of the cards that an earlier run left unsaved."""
        return [
            name_of(self.session, one.draft) for one in self.session.left_behind if one.draft.kind == JOB_CARD
        ]

    def _never_saved(self) -> str:
        """Which new cards an earlier run left before they were saved, so that no line of the list is theirs."""
        elsewhere = self.heelclear.autosave.of_another_book
        left = [one.draft for one in self.session.left_behind if is_new_card(one.draft)]
        new = [one for one in left if not elsewhere(one)]
        if not new:
            return ""
        tool = " ".join(new[0].fields.get(f"tool.{key}", "") for key in ("name", "size")).strip()
        one = f"{tool or 'a card without a tool'}, left {new[0].kept:%Y-%m-%d %H:%M}"
        which = one if len(new) == 1 else f"{one}, and {len(new) - 1} more"
        return (
            f"Never saved: {which}; {self.key_of('menu')}, unsaved, has {'it' if len(new) == 1 else 'them'}."
        )

    def body(self, width: int, height: int) -> list[Line]:
        """The find line and the list."""
        names = self._unsaved()
        are = "was" if len(names) == 1 else "were"
        self.page.unsaved = f"Left unsaved {are}: {', '.join(names[:3])}." if names else ""
        self.page.never_saved = self._never_saved()
        return self.page.draw(width, height)

    def needs(self) -> Needs:
        """A chosen card, its entry or its tool, or cards that are marked."""
        return {
            **super().needs(),
            **{name: lambda: self.page.chosen for name in ("change", "print", "again", "mark")},
            "go-on": lambda: self.page.chosen or self._is_only_unsaved(),
            "calculate": lambda: (
                (row := self.page.chosen) and self.session.is_served(self.session.entry(row.entry))
            ),
            "drop-card": lambda: (row := self.page.chosen) and row.status == DRAFT,
            "life": lambda: (row := self.page.chosen) and row.tool.strip(),
            "plan": lambda: len(self.page.marked) > 1,
            "unmark": lambda: self.page.marked,
            "empty": lambda: self.page.find.text,
        }

    def room(self) -> int:
        """Characters that the find line still takes."""
        return self.page.find.room

    def typed(self, text: str) -> None:
        """Find as it is typed."""
        self._opens_when_read = False
        self.page.edit(self.page.find.insert(text))

    def edited(self, key: str) -> None:
        """Edit the find line."""
        self._opens_when_read = False
        self.page.edit(self.page.find.edited(key))

    def do_empty(self) -> None:
        """Show every card again."""
        self.page.edit(TextLine())

    def do_up(self) -> None:
        """One card up."""
        self.page.view.move(-1)

    def do_down(self) -> None:
        """One card down."""
        self.page.view.move(1)

    def do_page_up(self) -> None:
        """A screenful up."""
        self.page.view.page(-1)

    def do_page_down(self) -> None:
        """A screenful down."""
        self.page.view.page(1)

    def do_first(self) -> None:
        """To the newest card."""
        self.page.view.choose(0)

    def do_last(self) -> None:
        """To the oldest card."""
        self.page.view.choose(self.page.view.count)

    def _is_only_unsaved(self) -> bool:
        """Whether there is no saved card, and one that was left unsaved."""
        return self.cards.rows == () and bool(self._unsaved())

    def do_go_on(self) -> None:
        """Open the chosen card, once the cards are read; where none is saved and one was left unsaved, show that."""
        self._opens_when_read = self.cards.rows is None
        if self._opens_when_read:
            self.say("The cards are still being read; then the chosen one is opened.")
            return
        if self._is_only_unsaved():
            self.do_drafts()
            return
        row = self._chosen()
        if row is not None:
            open_card(self, row.id)

    def do_change(self) -> None:
        """Open the chosen card, to be changed."""
        self.do_go_on()

    def do_calculate(self) -> None:
        """Open the calculator of the entry that the chosen card was begun from."""
        row = self._chosen()
        cards = self._loaded([row.id]) if row is not None else []
        if not cards:
            return
        entry = self.session.entry(cards[0].entry)
        if entry is None:
            self.say("This card has no entry in the book, so that there is no calculator for it.")
        else:
            self.heelclear.calculate(entry)

    def do_unmark(self) -> None:
        """Take the marks of all cards away."""
        self.say(take_away(self.page.marked, "card", "cards", self.key_of("mark")))

    def do_begin_card(self) -> None:
        """Begin an empty card."""
        begin_card(self, None)

    def do_again(self) -> None:
        """Begin a new card for the same job."""
        row = self._chosen()
        if row is not None:
            begin_again(self, row.id)

    def do_drop_card(self) -> None:
        """Discard the chosen card, once that is confirmed; a record is not discarded."""
        row = self._chosen()
        if row is None:
            return
        try:
            opened = self.cards.load(row.id)
        except NoCard as error:
            self.say(str(error))
        else:
            discard_saved(self, self.cards, opened, self.came_back)

    def printed(self) -> Printed | None:
        """The setup sheet of the chosen card."""
        row, book = self._chosen(), self.session.book
        cards = self._loaded([row.id]) if row is not None else []
        if not cards or book is None:
            return None
        job = work_out(cards[0], book)
        return screens.printed_sheet(
            job, lambda: self.app.push_screen(screens.SheetScreen(self.session, job))
        )

    def do_life(self) -> None:
        """Show every card of the chosen card's tool, with its size and what is left of it."""
        row, book = self._chosen(), self.session.book
        if row is None or book is None:
            return
        if not row.tool.strip():
            self.say(
                "This card does not say which tool it is; a tool's history is found by its own name or number."
            )
            return
        cards = self._loaded([one.id for one in self.cards.earlier(row.tool)])
        self.app.push_screen(screens.LifeScreen(self.session, history(row.tool, cards, book)))

    def do_mark(self) -> None:
        """Mark the chosen card for a batch, or take its mark away."""
        self.page.mark()

    def do_plan(self) -> None:
        """Plan the marked cards as one batch."""
        if len(self.page.marked) < 2:
            self.say(f"Mark the cards of the batch first, two or more, with {self.key_of('mark')}.")
            return
        cards = self._loaded(list(self.page.marked))
        if cards:
            self.app.push_screen(screens.BatchScreen(self.session, cards))

    def _chosen(self) -> CardRow | None:
        if self.cards.rows is None:
            self.say("The cards are still being read; try again in a moment.")
        elif self.page.chosen is None:
            begins = f"{self.key_of('begin-card')} begins a new one."
            shows = f"{self.key_of('empty')} shows all, " if self.page.find.text else ""
            self.say(f"There is no card here; {shows}{begins}")
        return self.page.chosen

    def _loaded(self, ids: list[str]) -> list[Card]:
        """The cards of these ids; where one cannot be read, that is said and there are none."""
        try:
            return [self.cards.load(one).card for one in ids]
        except NoCard as error:
            self.say(str(error))
            return []


def _of_lost_marks(lost: list[str]) -> str:
    """What is said of marked cards that are gone."""
    if not lost:
        return ""
    one = len(lost) == 1
    what = f"Card {lost[0]} was" if one else f"Cards {', '.join(lost)} were"
    return f"{what} marked and {'is' if one else 'are'} gone from the shop's folder; {'its mark is' if one else 'their marks are'} gone too."
