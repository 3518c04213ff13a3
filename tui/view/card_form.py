"""The state of a job card being filled in: the line in hand, and the job worked out from everything typed so far."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
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
from tui.view.brought_back import BroughtBack
from tui.view.card_faults import Fault, faults_of
from tui.view.card_row import WANTS_INPUT, Opened, Row
from tui.view.card_steps import STEPS, step_of
from tui.view.card_wants import awaited, where_numbers_go
from tui.view.choice_words import is_number
from tui.view.text_line import TextLine

_ARROWS = {"left": -1, "right": 1}

SEVERAL_LINES = frozenset({"notes", "wrong"})


class CardForm(BroughtBack):
    """The lines of a card, step by step.

    Args:
        book: works the card out.
        card: as it is when the form is opened.

    Attributes:
        card: as it is now.
        job: the card worked out.
        rows: the lines of the step in hand.
        issues: everything that does not add up.
        faults: the same with what stands on watch, each at its line.
        opened: what a person opened beyond what is always shown.
        read_on: the word of the surface on which a quantity was read, by its key, where the card grinds, or ground
            meanwhile, another one.
    """

    LONGEST = 600

    def __init__(self, book: Book, card: Card) -> None:
        super().__init__("", {})
        self.book = book
        self.card = card
        self.opened = Opened()
        self._step = 0
        self._left_at: dict[int, str] = {}
        self.read_on: dict[str, str] = {}
        self.job = work_out(card, book)
        self._begun = (card, self.job.choice.surface)
        self.rows: list[Row]
        self.issues: tuple[Issue, ...]
        self.faults: tuple[Fault, ...]
        self._looked_at: set[tuple[str, str]] = set()
        self._stood_at: set[str] = set()
        self._added: set[str] = set()
        self._began_below = False
        self._led_to: set[tuple[str, str]] = set()
        self._lay_out()
        self._land(self._first_calling(self.rows) or self.rows[0])

    @property
    def step(self) -> int:
        """The number of the step in hand, from 0."""
        return self._step

    @property
    def row(self) -> Row:
        """The line in hand."""
        return next((one for one in self.rows if one.way == self.focus), self.rows[0])

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

    def move(self, by: int) -> None:
        """To another line; from the last one to the next step, and back."""
        place = [one.way for one in self.rows].index(self.row.way) + by
        if 0 <= place < len(self.rows):
            self._land(self.rows[place])
        elif 0 <= self._step + by < len(STEPS):
            self._enter(self._step + by)
            self._land(self.rows[0] if by > 0 else self.rows[-1])

    def go_on(self) -> bool:
        """To the next line that wants something or has a fault, and after the last one to the next step.

        What only is to be looked at stops nobody twice. Before it leaves a step it goes back to what is behind: a fault
        above that it has not led to yet, so that who leaves that as it is gets past it, and what was jumped over. What was
        read on another surface counts from then on as read on the one of now.

        Returns:
            Whether there was anywhere to go.
        """
        if self._read_anew():
            self._lay_out()
        place = [one.way for one in self.rows].index(self.row.way)
        following = self._first_calling(self.rows[place + 1 :]) or self._left_behind(self.rows[:place])
        if following is not None:
            self._lead(following)
        elif self._step + 1 < len(STEPS):
            self._enter(self._step + 1)
            self._begin(self._first(self._cannot_answer))
        else:
            return False
        return True

    def _left_behind(self, rows: Iterable[Row]) -> Row | None:
        """The first line above that is wrong and was not led to since, or that was jumped over.

        Jumped over is what wants something and was never in hand, where the line in hand was added by a person or the
        step was begun below.
        """
        may_jump = self._began_below or self.focus in self._added
        return self._first_calling(
            one
            for one in rows
            if not self._wrongs(one) <= self._led_to
            or (may_jump and one.is_missing and one.way not in self._stood_at)
        )

    def change_step(self, by: int) -> None:
        """To another step, and there to its first fault, else to the first line that wants something; back, else to where it was left.

        Who goes back from a calculation that waits for another page comes for what it waits for.
        """
        if not 0 <= self._step + by < len(STEPS):
            return
        step = self.job.step(self.row.key) if self.row.heading else None
        ways = awaited(self.job, step) if step is not None and by < 0 else []
        self._enter(self._step + by)
        waits = next((row for way in ways for row in self.rows if row.way == way), None)
        left = self._left_at.get(self._step) if by < 0 else None
        stood = next((row for row in self.rows if row.way == left), None)
        self._begin(waits or self._first(self._is_wrong) or stood)

    def _begin(self, row: Row | None) -> None:
        """Begin a step in a line; where none is given, in the first that wants something or has a fault."""
        self._lead(row or self._first_calling(self.rows) or self.rows[0])
        self._began_below = row is not None and self._is_wrong(row)

    def _lead(self, row: Row) -> None:
        self._land(row)
        self._led_to |= self._wrongs(row)

    def _first(self, holds: Callable[[Row], bool]) -> Row | None:
        """The first line of the step of which something holds; a record has no faults to go to."""
        return None if self.card.done else next(filter(holds, self.rows), None)

    def _cannot_answer(self, row: Row) -> bool:
        """Whether something is wrong in a calculation that therefore has no answer; one that only wants something is not wrong."""
        step = self.job.step(row.key) if row.section == "settings" else None
        return step is not None and step.answer.result is None and self._is_wrong(row)

    def go_on_with(self, way: str = "") -> None:
        """To the line in which the card was left, or to the first that still wants something or does not add up.

        Args:
            way: of the line in which it was left; empty where nobody knows. A record wants nothing and begins at its
                first step.
        """
        if way:
            self.go_to(way)
            return
        for step in () if self.card.done else range(len(STEPS)):
            self._enter(step)
            if (
                row := next((one for one in self.rows if one.wants or self._is_wrong(one)), None)
            ) is not None:
                self._land(row)
                return
        self._enter(0)
        self._land(self.rows[0])

    def _is_wrong(self, row: Row) -> bool:
        return bool(self._wrongs(row))

    def _wrongs(self, row: Row) -> set[tuple[str, str]]:
        """What is wrong in a line, each by its place and its words."""
        return {(one.way, one.text) for one in self.faults_at(row) if one.state == "stop"}

    def go_to(self, way: str) -> None:
        """To the line of a place of the card, or to the one nearest to it."""
        self._enter(step_of(way))
        ways = [one.way for one in self.rows]
        while way and way not in ways and f"{way}#0" not in ways:
            way = way.rpartition(".")[0]
        found = next((one for one in self.rows if one.way in {way, f"{way}#0"}), self.rows[0])
        self._land(found)

    def faults_at(self, row: Row) -> list[Fault]:
        """What is wrong or on watch in a line, or in a place under it that has no line of its own; the worst first."""
        return self._faults_by_row.get(row.way, [])

    def faults_under(self, row: Row) -> list[Fault]:
        """Those of the lines under a heading, which its own line tells too; none of any other line."""
        return [one for one in self.faults_here() if row.heading and one.way.startswith(f"{row.way}.")]

    def faults_here(self) -> list[Fault]:
        """Those of the step in hand, the worst first."""
        return [one for one in self.faults if step_of(one.way) == self._step]

    def fault_steps(self) -> Mapping[int, str]:
        """The worst that is in each step that has a fault."""
        found: dict[int, str] = {}
        for one in self.faults:
            found.setdefault(step_of(one.way), one.state)
        return found

    def _enter(self, step: int) -> None:
        self._left_at[self._step] = self.focus
        self._step = step
        self._began_below = False
        self._led_to.clear()
        self._arrange()

    def _land(self, row: Row) -> None:
        self.leave()
        self.focus = row.way
        self._stood_at.add(row.way)
        self._looked_at |= {(one.way, one.text) for one in self.faults_at(row)}
        self._show(row)

    def _show(self, row: Row) -> None:
        self.typed = {self.focus: TextLine.ending(row.text)}

    def _first_calling(self, rows: Iterable[Row]) -> Row | None:
        """The first line that wants something or has a fault; a record wants nothing."""
        return None if self.card.done else next((one for one in rows if one.wants or self._calls(one)), None)

    def _calls(self, row: Row) -> bool:
        """Whether something is wrong in a line, or is on watch and was not looked at yet.

        What is on watch in a calculation that still wants something waits until that is there.
        """
        return any(
            one.state == "stop" or (row.default != WANTS_INPUT and (one.way, one.text) not in self._looked_at)
            for one in self.faults_at(row)
        )

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

    def _arrange(self) -> None:
        """Lay out the lines; one that was there once stays, also when it is emptied."""
        self.rows = STEPS[self._step].rows(self.job, self.opened)
        self.opened.keep(self.rows)
        ways = {one.way for one in self.rows}
        self._faults_by_row: dict[str, list[Fault]] = {}
        for fault in self.faults_here():
            home = _home(fault.way, ways, self.rows[0].way)
            self._faults_by_row.setdefault(home, []).append(fault)


def _home(way: str, ways: set[str], first: str) -> str:
    """The line under which the fault of a place stands; the first one where none is above it."""
    while way and way not in ways and f"{way}#0" not in ways:
        way = way.rpartition(".")[0]
    return (way if way in ways else f"{way}#0") if way else first


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
