"""The state of a job card being filled in: the line in hand, and the job worked out from everything typed so far."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from geometry.quantities import quantity
from library.book.model import Book
from library.cards.bare_numbers import in_other_units
from library.cards.editing import edited
from library.cards.issues import issues_of
from library.cards.job import work_out
from library.cards.model import Card
from library.cards.read_elsewhere import read_here
from library.cards.reading_units import with_the_last_unit
from library.cards.starting import OF_A_HOLE, class_taken_out, for_its_size, for_its_surface
from library.issue import Issue
from library.units.beside import beside
from tui.view.card_faults import faults_of
from tui.view.card_row import Row
from tui.view.card_walk import CardWalk
from tui.view.card_wants import where_numbers_go
from tui.view.choice_words import is_number
from tui.view.text_line import TextLine

_ARROWS = {"left": -1, "right": 1}

SEVERAL_LINES = frozenset({"notes", "wrong"})


class CardForm(CardWalk):
    """The lines of a card, step by step, and what becomes of the text that is typed into them.

    Args:
        book: works the card out.
        card: as it is when the form is opened.

    Attributes:
        book: by which the card is worked out now.
        issues: everything that does not add up; ``faults`` has it with what stands on watch, each at its line.
        read_on: the word of the surface on which a quantity was read, by its key, where the card grinds, or ground
            meanwhile, another one.
    """

    LONGEST = 600

    def __init__(self, book: Book, card: Card) -> None:
        super().__init__(card, work_out(card, book))
        self.book = book
        self.read_on: dict[str, str] = {}
        self._begun = (card, self.job.choice.surface)
        self.issues: tuple[Issue, ...]
        self._lay_out()
        self._land(self._first_calling(self.rows) or self.rows[0])

    def take(self, book: Book, card: Card) -> None:
        """Take another book, or the card as it was saved; the line in hand stays."""
        self.book, self.card = book, card
        self._work_out()

    def know_results(self, results: tuple[str, ...]) -> None:
        """Take how jobs have ended in this shop, to be chosen from."""
        self.opened.results = results
        self._arrange()

    def know_readings(self, read_on: Mapping[str, str]) -> None:
        """Take on which surfaces the tool was read when the card was open before."""
        self.read_on = dict(read_on)
        self._lay_out()

    def open(self, section: str, key: str) -> None:
        """Open a line for one more quantity, and go there."""
        self.opened.open(section, key)
        self._added.add(f"{section}.{key}")
        self._work_out()
        self.go_to(f"{section}.{key}")

    def open_calculation(self, name: str) -> None:
        """Show every line of a calculation, or again only those that matter."""
        self.opened.turn(name)
        self._work_out()
        self.go_to(f"settings.{name}")

    def choices(self) -> tuple[str, ...]:
        """The words that the line in hand takes, where it takes only these."""
        return self.row.choices

    def words(self, choice: str) -> str:
        """How a choice of the line in hand is shown."""
        return self.row.words(choice)

    def chosen(self) -> str:
        """The word that counts in the line in hand: chosen, else what follows from what is known; any other text as it is."""
        row, text = self.row, self.in_hand.text
        return row.default if not text and row.default in row.choices else text

    def is_value(self, key: str) -> bool:
        """Whether what stands in the line gives way to typing."""
        return self.row.overtype

    def brings(self, step: int) -> bool:
        """Bring the next text on offer into an empty line or in place of another on offer; else the default.

        Of what the machine has it is the next one up or down from what stands there, typed or worked out.
        """
        row, text = self.row, self.in_hand.text
        if row.offers and row.section == "settings":
            if text and not self.gives_way(row.way):
                return False
            kind, now = quantity(row.quantity).kind, text or row.default
            self.put(beside(row.offers, now, kind, step, self.job.display))
        elif row.offers and text in ("", *row.offers):
            self.turn(row.offers, step)
        elif not text and row.default and row.giver:
            self.take_in_hand(row.default)
        else:
            return False
        return True

    def edit(self, key: str) -> None:
        """Apply an editing key; an arrow on a choice that follows from what is known takes the one beside it."""
        words = [one for one in self.row.choices if one]
        if key in _ARROWS and not self.in_hand.text and self.chosen() in words:
            self.begun = ""
            self.turn(words, _ARROWS[key])
            return
        super().edit(key)

    def clear(self) -> None:
        """Bring back what was typed over in the line in hand; where that is there, or nothing was, empty it."""
        before = self.stood_here
        super().clear()
        # Emptied, a line may have it again already, such as what the book has, and then nobody is asked why.
        if before and before not in (self.row.text, self.row.default):
            self.put(before)
        elif before:
            self._show(self.row)
        self.typed_over.pop(self.focus, None)

    @property
    def only_choice(self) -> str:
        """The one thing that the line in hand can hold, in words; empty where there are several, or any text."""
        words = [one for one in self.row.choices if one]
        return self.words(words[0]) if len(words) == 1 and not self.row.heading else ""

    def keep(self, line: TextLine) -> None:
        """Put a text onto the card, and work it out.

        Raises:
            CardEditRefused: with a sentence, when the text is too long; nothing is changed then.
        """
        if self.row.way == "units":
            if line.text not in ("", self.card.units):
                self.switch_units()
            return
        if line.text != self.in_hand.text:
            before = self.card
            self.card = _with_text(before, self.row, line.text)
            self._read_anew()
            if self.row.way in {"tool.size", "tool.thread"}:
                if self.job.step(OF_A_HOLE) is not None:
                    self.card = class_taken_out(self.card)
                self.card = for_its_size(self.card, before, self.book)
            self._work_out()
            if self.card.again:
                self._carried_to_its_surface()
        super().keep(line)

    def _read_anew(self) -> bool:
        """Take what stands in the line in hand as read on the surface of now; whether it was read on another one."""
        is_received = self.row.way.startswith("received.")
        return (
            is_received and self.read_on.pop(self.row.key, self.job.choice.surface) != self.job.choice.surface
        )

    def _carried_to_its_surface(self) -> None:
        """Take away, or bring back, what came with the same job again for the surface that it was about."""
        carried = for_its_surface(self.card, *self._begun, self.job.choice.surface)
        if carried != self.card:
            self.card = carried
            self._work_out()

    def go_on(self) -> bool:
        """To the next line that wants something or has a fault, and after the last one to the next step.

        What was read on another surface counts from then on as read on the one of now.

        Returns:
            Whether there was anywhere to go.
        """
        if self._read_anew():
            self._lay_out()
        return super().go_on()

    def switch_units(self) -> None:
        """Change the unit of lengths; what was typed into a setting without one keeps its meaning."""
        self.card = in_other_units(self.card)
        # A number without a unit would come back as another length.
        self.typed_over.clear()
        self._work_out()
        self._show(self.row)

    @property
    def told_of_choices(self) -> str:
        """What is said of what was typed where it is no choice; of a number on the line of a calculation where it belongs."""
        step = self.job.step(self.row.key) if self.row.heading and is_number(self.begun) else None
        if step is None:
            return super().told_of_choices
        under = any(one.way.startswith(f"{self.row.way}.") for one in self.rows)
        return where_numbers_go(self.job, step, under=under)

    def _work_out(self) -> None:
        before, self.job = self.job, work_out(self.card, self.book, self.job)
        then = before.choice.surface
        if then not in ("", self.job.choice.surface):
            # As long as nobody reads anew, it stays the surface of the first of several changes.
            self.read_on = dict.fromkeys(read_here(before), then) | self.read_on
        self._lay_out()

    def _lay_out(self) -> None:
        if self.job.read_on != self.read_on:
            self.job = replace(self.job, read_on=dict(self.read_on))
        self.issues = issues_of(self.job)
        self.faults = faults_of(self.job, self.issues)
        self._arrange()


def _with_text(card: Card, row: Row, text: str) -> Card:
    """The card with one line changed."""
    way, _, number = row.way.partition("#")
    if number:
        return _with_line(card, way, int(number), text)
    if row.key and row.section in {"received", "after"} and row.way.count(".") == 1:
        text = with_the_last_unit(row.key, text)
    if not row.heading or row.way.startswith("settings."):
        return edited(card, way, text)
    return card


def _with_line(card: Card, way: str, number: int, text: str) -> Card:
    lines = str(getattr(card, way)).split("\n")
    lines += [""] * (number + 1 - len(lines))
    lines[number] = text
    return edited(card, way, "\n".join(lines).rstrip("\n"))
