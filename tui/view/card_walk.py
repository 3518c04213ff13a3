"""The way through the lines of a job card: which one is in hand, and to which Enter, the arrows and the keys of the steps lead."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping

from library.cards.job import Job
from library.cards.model import Card
from tui.view.brought_back import BroughtBack
from tui.view.card_faults import Fault
from tui.view.card_row import WANTS_INPUT, Opened, Row
from tui.view.card_steps import STEPS, step_of
from tui.view.card_wants import awaited
from tui.view.text_line import TextLine


class CardWalk(BroughtBack):
    """The lines of the step in hand and the ways between them; what they are worked out from its form says.

    Args:
        card: as it is when the form is opened.
        job: the card worked out.

    Attributes:
        card: as it is now.
        job: the card worked out.
        rows: the lines of the step in hand.
        faults: what is wrong or on watch, each at its line.
        opened: what a person opened beyond what is always shown.
    """

    def __init__(self, card: Card, job: Job) -> None:
        super().__init__("", {})
        self.card = card
        self.job = job
        self.opened = Opened()
        self.rows: list[Row]
        self.faults: tuple[Fault, ...]
        self._step = 0
        self._left_at: dict[int, str] = {}
        self._looked_at: set[tuple[str, str]] = set()
        self._stood_at: set[str] = set()
        self._added: set[str] = set()
        self._began_below = False
        self._led_to: set[tuple[str, str]] = set()

    @property
    def step(self) -> int:
        """The number of the step in hand, from 0."""
        return self._step

    @property
    def row(self) -> Row:
        """The line in hand."""
        return next((one for one in self.rows if one.way == self.focus), self.rows[0])

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
        above that it has not led to yet, so that who leaves that as it is gets past it, and what was jumped over.

        Returns:
            Whether there was anywhere to go.
        """
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
            row = self._first(lambda one: one.wants or self._is_wrong(one))
            if row is not None:
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
