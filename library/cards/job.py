"""A card worked out: every calculation filled from what is known, in the machine's own graduations."""

from __future__ import annotations

from collections.abc import Hashable, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property

from geometry.calculation import Check
from geometry.quantities import quantity
from geometry.role import HEEL
from geometry.sentences import Kind
from library.book.model import Book, Caution, Entry, Family
from library.book.tool_materials import stamped
from library.calc.cautions import by_danger, cautions_for
from library.calc.taper_reamers import with_taper_told
from library.cards.answers import Answers
from library.cards.at_machine import at_machine
from library.cards.bare_numbers import completed, display_of
from library.cards.bench import Bench, step_of
from library.cards.cams import ByCam, by_cam
from library.cards.chosen import Chosen, chosen
from library.cards.first_step import at_its_place
from library.cards.found_relief import by_found
from library.cards.ground_down import ToBe, laid_before, to_be, with_what_decides
from library.cards.handing_on import as_ground, of_edges, of_measuring, with_measured
from library.cards.heel_once import each_heel_once, unread
from library.cards.measured_again import with_measured_again
from library.cards.model import DRAFT, Card
from library.cards.of_that_day import is_dated, laid_over
from library.cards.provenance import (
    KnownText,
    known_texts,
    texts_for,
)
from library.cards.rubbing_heel import no_feed_while_it_rubs
from library.cards.setup_order import calculations_of
from library.cards.shoulders import at_its_shoulder
from library.cards.step import Step
from library.cards.throw_for_all import no_throw_for_one_alone
from library.cards.wanted_entry import wanted_entry
from library.equipment.abrasives import called
from library.equipment.model import Machine, Wheel, machines, wheels
from library.units.read import UnitError, read
from library.units.system import Display


@dataclass(frozen=True)
class Job:
    """A card with everything that follows from it.

    Attributes:
        card: the card.
        book: the book that it was worked out with.
        display: the units of numbers that were typed without one.
        machine: it is ground on, where the book has it.
        wheel: it is ground with, where the book has it.
        steps: the calculations in the order of the set-up.
        known: the texts that fill them, the strongest first.
        entry: what the tool shall have.
        cautions: of everything together, the deferring one last.
        choice: what was chosen once for the whole job.
        answers: answers what else is asked about it.
        to_be: the diameter that the tool is ground down to; nothing where it keeps its size.
        read_on: the word of the surface that the card ground when a quantity was read on the tool as it came, by the key
            of the quantity; only while the card is in hand, and only where it was changed since.
    """

    card: Card
    book: Book
    display: Display
    machine: Machine | None
    wheel: Wheel | None
    steps: tuple[Step, ...]
    known: tuple[KnownText, ...]
    entry: Entry
    cautions: tuple[Caution, ...]
    choice: Chosen
    answers: Answers = field(compare=False, repr=False)
    to_be: ToBe | None = None
    read_on: Mapping[str, str] = field(default_factory=dict)

    @property
    def family(self) -> Family | None:
        """The family of the tool; nothing where none was chosen or the book has it no more."""
        return self.book.families.get(self.card.family)

    @property
    def kind(self) -> str:
        """The kind of tool that calculations know it as; empty where none is known."""
        return self.book.kind_of(self.card.family)

    def step(self, name: str) -> Step | None:
        """The step of a calculation by its name."""
        return next((one for one in self.steps if one.sheet.name == name), None)

    def doing(self, what: str) -> Step | None:
        """The step that answers one of the questions of every job: HEEL or LASTING of ``geometry.role``.

        Where another calculation knows the tooth better and takes its place, it is the step of that one.
        """
        step = next((one for one in self.steps if one.sheet.role.does == what), None)
        return step if step is None or step.in_use else self.in_place_of(step) or step

    def in_place_of(self, step: Step) -> Step | None:
        """The step that takes the place of one that rests, as it knows the tooth better; nothing where none does."""
        if step.in_use:
            return None
        return next(
            (one for one in self.steps if one.works and step.sheet.name in one.sheet.role.replaces), None
        )

    def answering(self, key: str) -> Step | None:
        """The first step whose calculation answers a quantity."""
        return next((one for one in self.steps if key in one.sheet.outputs), None)

    @cached_property
    def found_once(self) -> dict[Hashable, object]:
        """What was found for it already, by what was asked (``library.once``)."""
        return {}

    @cached_property
    def by_cam(self) -> ByCam | None:
        """What the chosen cam gives beside what is wanted; nothing where the readings follow from no cam."""
        step = self.doing(HEEL)
        if step is None or not step.works:
            return None
        answer, relief = step.answer, step.relief
        if relief is not None:
            return by_found(answer, relief)
        return self.answers.remembered_of(answer, "by cam", lambda: by_cam(answer))

    @cached_property
    def today(self) -> Job:
        """The same with what today's book, machine and wheel would fill in; of a draft it is the job itself."""
        return work_out(replace(self.card, status=DRAFT), self.book) if self.card.done else self

    def edge_text(self, key: str) -> str:
        """The angle at which an edge lies, as it was measured, worked out, typed into a calculation, or wanted."""
        found = of_edges([one for one in self.steps if one.in_use], self.entry)
        wanted = self.entry.values.get(key)
        usual = wanted.usual.text if wanted is not None and wanted.usual is not None else ""
        return self.known_text(key) or next((one.text for one in found if one.key == key), usual)

    def known_text(self, key: str) -> str:
        """The text known for a quantity; empty when none is."""
        return next((one.text for one in self.known if one.key == key), "")


def work_out(card: Card, book: Book, last: Job | None = None) -> Job:
    """Work out a card with the book as it is today; nothing is raised for what does not make sense.

    Args:
        card: a draft or a record.
        book: with the machines, the wheels and the cautions.
        last: the card worked out before something on it changed; what that does not touch is not computed again.
    """
    card = completed(card)
    if last is not None and last.book is book and _as_calculated(last.card) == _as_calculated(card):
        return replace(last, card=card, entry=wanted_entry(card, book.entries.get(card.entry)))
    machine, wheel = machines(book).get(card.machine), wheels(book).get(card.wheel)
    display = display_of(card)
    choice = chosen(card, book, machine, wheel)
    kind = book.kind_of(card.family)
    down = to_be(card, kind, display)
    known = known_first = laid_before(known_texts(card, machine, wheel, choice, book), down, card)
    entry = wanted_entry(card, book.entries.get(card.entry))
    family = book.families.get(card.family)
    # What a person calls his own tool decides nothing that is computed.
    by_name = book.entries.get(card.entry) or Entry(card.entry, card.family, "")
    told = with_taper_told(entry, family, by_name)
    answers = Answers(
        told, book, display, last.answers if last is not None else None, None if card.done else machine
    )
    steps: list[Step] = []
    sizes: tuple[KnownText, ...] = ()
    for sheet in calculations_of(family):
        if choice.takes(sheet):
            before = [one for one in steps if one.in_use]
            found = tuple(of_edges(before, entry))
            if (told_now := tuple(of_measuring(before, card, display))) != sizes:
                sizes = told_now
                down = down or to_be(card, kind, display, sizes)
            known = laid_before(with_measured(known_first, sizes), down, card)
            first = tuple(one for one in found if any(one.key in step.sheet.role.sets for step in before))
            ground = as_ground(before, card, display) if sheet.role.as_ground else ()
            texts, provenance = texts_for(
                sheet, card, (*ground, *first, *known, *found), display, choice, wheel
            )
            texts, provenance = at_its_place(
                sheet, texts, provenance, card, entry, book, display, choice.surface
            )
            texts, provenance = at_its_shoulder(sheet, texts, provenance, card, before, display)
            texts, provenance = laid_over(sheet, card, texts, provenance)
            step = step_of(sheet, texts, provenance, Bench(card, answers, machine, choice, before, kind))
            if choice.method in sheet.role.otherwise_by:
                step = unread(step)
            own = step.checks
            step = at_machine(step, machine, wheel, _flutes(card), before, answers, is_record=card.done)
            steps.append(_as_closed(step, own) if is_dated(card) else step)
    steps = no_feed_while_it_rubs(each_heel_once(steps, card, choice), choice)
    steps = steps if card.done else no_throw_for_one_alone(steps)
    abrasive = (wheel.abrasive or called(wheel.title)) if wheel is not None else ""
    cautions = _cautions(steps, entry, abrasive, book, answers)
    return Job(
        card, book, display, machine, wheel, tuple(steps), known, entry, cautions, choice, answers, down
    )


def _as_closed(step: Step, own: tuple[Check, ...]) -> Step:
    """The step of a record, without a stop of today's machine: there was none on the day, or it had not been closed."""
    return replace(step, checks=tuple(one for one in step.checks if one in own or one.state != "stop"))


def _as_calculated(card: Card) -> Card:
    """The card without the words in which no calculation, no setting and no caution looks for anything."""
    tool = replace(card.tool, name="", marks=stamped(card.tool.marks), belongs_to="")
    return replace(
        card,
        tool=tool,
        wrong="",
        after=with_measured_again(card, with_what_decides(card)),
        notes="",
        minutes="",
        result="",
        remarks="",
        again="",
    )


def _flutes(card: Card) -> int | None:
    return flutes_of(card.tool.flutes)


def flutes_of(text: str) -> int | None:
    """How many flutes a text means; nothing where it means none.

    Example:
        >>> flutes_of("4"), flutes_of("four"), flutes_of("2.5")
        (4, None, None)
    """
    try:
        number = read(text, Kind.COUNT, whole=True).number
    except UnitError:
        return None
    row = quantity("flutes")
    return int(number) if number == int(number) and row.low <= number <= row.high else None


def _cautions(
    steps: list[Step], entry: Entry, abrasive: str, book: Book, answers: Answers
) -> tuple[Caution, ...]:
    found = {one.id for step in steps if step.in_use for one in step.answer.cautions}

    def of_all() -> tuple[Caution, ...]:
        of_tool = cautions_for(None, entry, book, abrasive=abrasive)
        return tuple(by_danger(found | {one.id for one in of_tool}, book))

    about = (entry.family, entry.work_material, entry.tool_material, entry.cautions, abrasive)
    return answers.remembered(("cautions of all", about, frozenset(found)), of_all)
