"""The book: type to find, arrows to choose, Enter to open."""

from __future__ import annotations

from typing import TYPE_CHECKING

from textual import events

from tui import screens
from tui.screens.cards.card_navigation import begin_card
from tui.screens.marks import take_away
from tui.screens.paned import LIST, PanedScreen
from tui.view.lines import Line
from tui.view.text_line import TextLine
from tui.view.welcome import LEAST_ROWS, welcome

if TYPE_CHECKING:
    from library.book.model import Entry
    from tui.screens.base_screen import Needs
    from tui.services.export import Printed
    from tui.session import Session

WANT_THE_BOOK = frozenset(
    {"go-on", "calculate", "cautions", "change", "begin-card", "cards", "menu", "compare", "print"}
)
"""What shows more than the list does, and so cannot be done before the book is read."""

LEAVING = frozenset({"back", "quit", "suspend"})
"""What is never made to wait."""


class BookScreen(PanedScreen):
    """The list of the book with a find line that is always live."""

    WHERE = "book"
    PLACE = LIST

    def __init__(self, session: Session) -> None:
        super().__init__(session)
        self._ahead: list[events.Key | events.Paste] = []

    def on_key(self, event: events.Key) -> None:
        """Let a key that wants the whole book wait until it is read, and what is typed after it too."""
        wanted = self.session.keymap.action(self.WHERE, event.key)
        name = wanted.id if wanted is not None else ""
        if name in LEAVING:
            self._ahead.clear()
        elif self.session.book is None and (self._ahead or name in WANT_THE_BOOK):
            event.prevent_default()
            self._ahead.append(events.Key(event.key, event.character))

    def on_paste(self, event: events.Paste) -> None:
        """The same for a paste."""
        if self._ahead:
            event.prevent_default()
            self._ahead.append(events.Paste(event.text))

    def book_changed(self) -> None:
        """Take up what was typed ahead of the book."""
        ahead, self._ahead = self._ahead, []
        for event in ahead:
            self.post_message(event)

    def title_text(self) -> str:
        """The program's name, and what is wrong in the book, if anything."""
        return self.session.book_title

    def body(self, width: int, height: int) -> list[Line]:
        """Find line and list."""
        return self.session.page.draw(width, height, lengths=self.session.display.lengths)

    def foot(self, width: int, height: int) -> list[Line]:
        """The first steps that are left, and the cautions of the chosen tool, where that stands beside the list."""
        left = [
            step
            for step in (self.session.first_steps.left if height > LEAST_ROWS else ())
            if step != "demo" or not self.session.has_shop  # It is for whoever has no shop to try it on.
        ]
        steps = welcome(self.session.keymap, width, left)
        if self.abreast == 1:
            return steps  # Nothing of an entry is read for the list alone.
        entry, book = self.shown_tool, self.session.book
        if entry is None or book is None:
            return steps
        return [*steps, *screens.cautions_of(book, entry, width, self.in_full)]

    def tool(self) -> Entry | None:
        """The chosen entry."""
        return self.session.chosen_entry()

    def needs(self) -> Needs:
        """A chosen entry, marks, or steps that are left."""
        session, page = self.session, self.session.page
        return {
            **super().needs(),
            "go-on": session.chosen_entry,
            "print": session.chosen_entry,
            "calculate": lambda: session.is_served(session.chosen_entry()),
            "mark": lambda: page.chosen,
            "compare": lambda: len(self._to_compare()) > 1,
            "unmark": lambda: page.marked,
            "empty": lambda: page.find.text,
            "put-away": lambda: session.first_steps.left,
        }

    def room(self) -> int:
        """Characters that the find line still takes."""
        return self.session.page.find.room

    def typed(self, text: str) -> None:
        """Find as it is typed."""
        self._find(self.session.page.find.insert(text))

    def edited(self, key: str) -> None:
        """Edit the find line."""
        self._find(self.session.page.find.edited(key))

    def _find(self, find: TextLine) -> None:
        self.session.page.finds += find.text != self.session.page.find.text
        self.session.page.edit(find)
        if self.session.page.waits_for_units:
            self.heelclear.load_units()

    def do_up(self) -> None:
        """One entry up."""
        self.session.page.view.move(-1)

    def do_down(self) -> None:
        """One entry down."""
        self.session.page.view.move(1)

    def do_page_up(self) -> None:
        """A screenful up."""
        self.session.page.view.page(-1)

    def do_page_down(self) -> None:
        """A screenful down."""
        self.session.page.view.page(1)

    def do_first(self) -> None:
        """To the first entry."""
        self.session.page.view.choose(0)

    def do_last(self) -> None:
        """To the last entry."""
        self.session.page.view.choose(self.session.page.view.count)

    def do_empty(self) -> None:
        """Show the whole book again, the chosen entry still chosen."""
        page, chosen = self.session.page, self.session.page.chosen
        page.edit(TextLine())
        if chosen is not None:
            page.choose(chosen.id)

    def do_back(self) -> None:
        """Empty the find line; when it is empty, leave, but never by Escape, and asked where figures would be forgotten."""
        if self.session.page.find.text:
            self.do_empty()
        elif self.pressed != "escape":
            self._leave()

    def back_word(self) -> str:
        """The way back from the whole book ends the program; what is sought is emptied first."""
        return "" if self.session.page.find.text else "End"

    def _leave(self) -> None:
        """Leave; what was typed into calculations is forgotten then, so that is asked about by name."""
        tools = self.session.tools_typed_for()
        if not tools:
            self.do_quit()
            return
        entries = [entry.title for one in tools if (entry := self.session.entry(one)) is not None]
        screens.ask_to_leave(self, entries)

    def do_go_on(self) -> None:
        """Open the chosen entry."""
        entry = self.session.chosen_entry()
        if entry is None:
            self._say_why_none("open")
            return
        self.app.push_screen(screens.EntryScreen(self.session, entry))
        self.heelclear.load_units()

    def _is_gone(self) -> bool:
        """Whether the list still shows an entry that its file has no more; says then what happened to the file."""
        chosen = self.session.page.chosen
        gone = self.session.why_gone(chosen.id) if chosen is not None else ""
        if gone:
            self.say(gone)
        return bool(gone)

    def _say_why_none(self, to: str) -> None:
        """Say why nothing can be done: none is found, or the file of the chosen one has gone."""
        if not self._is_gone():
            self.say(f"There is no entry to {to}; {self.key_of('empty')} empties the find line.")

    def do_calculate(self) -> None:
        """Open the calculator for the chosen entry."""
        if not self._is_gone():
            self.heelclear.calculate(self.session.chosen_entry())

    def do_begin_card(self) -> None:
        """Begin a job card from the chosen entry."""
        if not self._is_gone():
            begin_card(self, self.session.chosen_entry())

    def do_mark(self) -> None:
        """Mark the chosen entry, or take its mark away, and say where that leads."""
        page = self.session.page
        before = page.chosen
        page.mark()
        if before is not None and page.chosen is not None and page.chosen.id != before.id:
            did = "Marked" if before.id in page.marked else "No mark any more"
            self.say(f"{did}: {before.title}. The next one is chosen now.")

    def do_compare(self) -> None:
        """Show the marked entries side by side."""
        entries = self._to_compare()
        if len(entries) < 2:
            mark, compare = self.key_of("mark"), self.key_of("compare")
            self.say(f"Mark two entries or more with {mark}; then {compare} shows them side by side.")
            return
        self.app.push_screen(screens.CompareScreen(self.session, entries))

    def _to_compare(self) -> list[Entry]:
        """The marked entries; with one mark, that one and the chosen one."""
        page = self.session.page
        chosen = [page.chosen.id] if page.chosen is not None and len(page.marked) == 1 else []
        names = dict.fromkeys((*page.marked, *chosen))
        return [entry for name in names if (entry := self.session.entry(name)) is not None]

    def do_put_away(self) -> None:
        """Take the first steps out of the book."""
        if self.session.first_steps.left:
            self.session.first_steps.put_away()
            self.say("The first steps are put away; the help of each screen tells the same and more.")
        else:
            self.say("No first steps are shown.")

    def printed(self) -> Printed | None:
        """The chosen entry with its sources and cautions in full."""
        entry = self.session.chosen_entry()
        if entry is None:
            self._say_why_none("print")
            return None
        return screens.printed_entry(self.session, entry)

    def do_drop_old_drafts(self) -> None:
        """Forget the drafts that nobody has touched for long, once that is confirmed."""
        screens.put_away_old(self)

    def do_unmark(self) -> None:
        """Take the marks of all entries away."""
        self.say(take_away(self.session.page.marked, "entry", "entries", self.key_of("mark")))

    def do_change(self) -> None:
        """List what can be changed of the book as a whole."""
        self.app.push_screen(screens.ChangeBookScreen(self.session))

    def do_cautions(self) -> None:
        """Show the cautions of the chosen entry."""
        self.heelclear.show_cautions(None, self.session.chosen_entry())
