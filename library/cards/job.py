"""A card worked out: every calculation filled from what is known, in the machine's own graduations."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property

from geometry.calculation import Calculation, Check
from geometry.complaints import untried
from geometry.figure import undrawn
from geometry.quantities import quantity
from geometry.role import HEEL, MOVES
from geometry.sentences import Kind
from library.book.model import Book, Caution, Entry, Family, Measure
from library.book.tool_materials import stamped
from library.calc.answer import Answer
from library.calc.cautions import by_danger, cautions_for
from library.cards.answers import Answers
from library.cards.bare_numbers import completed, display_of
from library.cards.cams import Asked, ByCam, by_cam, carried_on, show_angle, taken_from_drawer
from library.cards.chosen import CAM, Chosen, chosen
from library.cards.found_relief import FoundRelief, by_found, found_relief, told
from library.cards.handing_on import of_edges, of_measuring, with_measured
from library.cards.heel_once import each_heel_once
from library.cards.model import DRAFT, Card, Setting
from library.cards.of_that_day import cam_that_gave, is_dated, laid_over
from library.cards.provenance import (
    KnownText,
    Provenance,
    known_texts,
    texts_for,
    wanted_entry,
)
from library.cards.setup_order import calculations_of, meant, rests
from library.cards.step import Step
from library.equipment.abrasives import called
from library.equipment.cam_limits import cam_checks
from library.equipment.driving import Worked
from library.equipment.machine_limits import reach_checks, speed_checks
from library.equipment.model import Machine, Wheel, machines, wheels
from library.equipment.settings import graduation_lines
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
    known = known_first = known_texts(card, machine, wheel, choice, book)
    entry = wanted_entry(card, book.entries.get(card.entry))
    answers = Answers(entry, book, display, last.answers if last is not None else None)
    steps: list[Step] = []
    kind = book.kind_of(card.family)
    for sheet in calculations_of(book.families.get(card.family)):
        if choice.takes(sheet):
            before = [one for one in steps if one.in_use]
            found = tuple(of_edges(before, entry))
            known = with_measured(known_first, of_measuring(before, card, display))
            first = tuple(one for one in found if any(one.key in step.sheet.role.sets for step in before))
            texts, provenance = texts_for(sheet, card, (*first, *known, *found), display, choice, wheel)
            texts, provenance = laid_over(sheet, card, texts, provenance)
            step = _step(sheet, texts, provenance, _Bench(card, answers, machine, choice, before, kind))
            if choice.method in sheet.role.otherwise_by:
                step = _unread(step)
            step, checks = _at_machine(step, machine, wheel, _flutes(card), before, answers), step.checks
            steps.append(_as_closed(step, checks) if is_dated(card) else step)
    steps = each_heel_once(steps, card, choice)
    abrasive = (wheel.abrasive or called(wheel.title)) if wheel is not None else ""
    cautions = _cautions(steps, entry, abrasive, book, answers)
    return Job(card, book, display, machine, wheel, tuple(steps), known, entry, cautions, choice, answers)


def _as_closed(step: Step, own: tuple[Check, ...]) -> Step:
    """The step of a record, without a stop of today's machine: there was none on the day, or it had not been closed."""
    return replace(step, checks=tuple(one for one in step.checks if one in own or one.state != "stop"))


def _unread(step: Step) -> Step:
    """The step without its indicator readings, which another calculation gives for the method of the job."""
    result = step.answer.result
    if result is None or not result.stations:
        return step
    return replace(step, answer=replace(step.answer, result=replace(result, stations=())))


def _as_calculated(card: Card) -> Card:
    """The card without the words in which no calculation, no setting and no caution looks for anything."""
    tool = replace(card.tool, name="", marks=stamped(card.tool.marks), belongs_to="")
    return replace(card, tool=tool, wrong="", after={}, notes="", minutes="", result="", remarks="", again="")


@dataclass(frozen=True)
class _Bench:
    """The context that a calculation of a job is worked out in.

    Attributes:
        card: the card.
        answers: answers a calculation.
        machine: it is ground on.
        choice: what was chosen once for the job.
        before: the calculations before it that are in use.
        kind: of the tool.
    """

    card: Card
    answers: Answers
    machine: Machine | None
    choice: Chosen
    before: list[Step]
    kind: str = ""


def _step(
    sheet: Calculation, texts: dict[str, str], provenance: dict[str, Provenance], bench: _Bench
) -> Step:
    def ask(more: Mapping[str, str]) -> Answer:
        return bench.answers.ask(sheet, {**texts, **more})

    cam: dict[str, str] = {}
    if bench.choice.method == CAM and sheet.role.cam is not None:
        # Until the cam is known, nobody reads what the calculation advises.
        with untried(), undrawn():
            cam = _cam(ask({}), ask, bench)
        provenance = provenance | dict.fromkeys(cam, _provenance_of_cam(bench, cam))
    found = ask(cam)
    relief = _found_relief(found, bench)
    if relief is not None:
        found, provenance = _counted_with(relief, ask), provenance | {"relief_angle": "cam"}
    provenances: dict[str, Provenance] = {
        key: provenance.get(
            key, "wanted" if filled.origin == "entry" else "typed" if filled.origin == "given" else "default"
        )
        for key, filled in found.inputs.items()
    }
    setting = bench.card.settings.get(sheet.name, Setting())
    checks = tuple(found.result.checks) if found.result else ()
    if relief is not None and found.result is not None:
        checks = (*checks, told(relief))
    quiet = not setting.typed and (
        rests(sheet, bench.kind, bench.card.received, bench.card.wanted) or not meant(sheet, found)
    )
    # The tool is indexed once: whatever plans the moves first, such as unequal spaces, plans them for the job.
    quiet = quiet or (
        sheet.role.rows == MOVES and any(one.works and one.sheet.role.rows == MOVES for one in bench.before)
    )
    return Step(
        sheet, found, provenances, (), checks, setting.skipped, quiet, setting.recorded or None, relief
    )


def _found_relief(found: Answer, bench: _Bench) -> FoundRelief | None:
    """The relief by chosen cams that a calculation counts with; nothing where no cam makes the relief of this job."""
    if bench.choice.method != CAM:
        return None
    return found_relief(found, [one.answer for one in bench.before if one.works])


def _counted_with(relief: FoundRelief, ask: Asked) -> Answer:
    """The calculation answered with a relief found before it, which stands there as an angle is shown."""
    key, number = "relief_angle", max(relief.relief, 0.0)
    found = ask({key: f"{math.degrees(number):.12f} deg"})
    return replace(found, inputs={**found.inputs, key: replace(found.inputs[key], text=show_angle(number))})


def _cam(found: Answer, ask: Asked, bench: _Bench) -> dict[str, str]:
    """The texts that say which cam is used: that of an earlier calculation, else one out of the drawer."""
    role = found.sheet.role.cam
    if role is None:
        return {}
    key = role.throw
    if key in found.inputs and found.inputs[key].origin == "given":
        return {}
    then = _recorded_cam(found, ask, bench)
    if then is not None:
        return {key: then.text}
    earlier = next((one for one in bench.before if one.works and one.sheet.role.cam is not None), None)
    if earlier is not None:
        return carried_on(earlier.answer, found)
    cam = taken_from_drawer(found, ask, bench.machine) if bench.machine is not None else None
    return {key: cam.text} if cam is not None else {}


def _recorded_cam(found: Answer, ask: Asked, bench: _Bench) -> Measure | None:
    """The cam by which a card was closed that has its answers and not what it counted with; nothing on any other."""
    role, card = found.sheet.role.cam, bench.card
    setting = card.settings.get(found.sheet.name, Setting())
    if role is None or bench.machine is None or not card.done or is_dated(card):
        return None
    cams, throw = bench.machine.cam_throws, role.throw
    display = display_of(card)
    return cam_that_gave(setting.recorded, cams, lambda text: ask({throw: text}), display)


def _provenance_of_cam(bench: _Bench, cam: Mapping[str, str]) -> Provenance:
    """Where a throw comes from: the machine, where it is one of its drawer."""
    cams = bench.machine.cam_throws if bench.machine is not None else ()
    return "machine" if any(one.text in cam.values() for one in cams) else "typed"


def _at_machine(
    step: Step,
    machine: Machine | None,
    wheel: Wheel | None,
    flutes: int | None,
    before: list[Step],
    answers: Answers,
) -> Step:
    """The step with its settings on the machine, and with what the machine and the wheel cannot do.

    What an earlier step has set is not set again, and one cam serves the whole tool.
    """
    checks = list(step.checks)
    if step.sheet.role.rated and machine is not None and wheel is not None:
        chosen = step.answer.inputs.get("rotational_speed")
        turns = chosen.value if chosen and isinstance(chosen.value, float) else None
        found = speed_checks(machine, wheel, turns)
        # That the chosen speed is within the rating the calculation has said already.
        checks += [check for check in found if turns is None or check.state != "pass"]
    if step.answer.result is None or machine is None:
        return replace(step, checks=tuple(checks))
    worked = worked_of(step.answer)
    reach, settings = answers.remembered_of(
        step.answer,
        ("machine", step.sheet.name, machine.id),
        lambda: (reach_checks(machine, worked), graduation_lines(machine, worked)),
    )
    checks += reach
    if step.sheet.role.cam is not None and not any(
        one.works and one.sheet.role.cam is not None for one in before
    ):
        checks += cam_checks(machine, worked, flutes)
    done = {line.key for one in before for line in one.lines}
    lines = tuple(line for line in settings if line.key not in done)
    return replace(step, lines=lines, checks=tuple(checks))


def worked_of(found: Answer) -> Worked:
    """An answer with a result, as the equipment looks at it."""
    assert found.result is not None
    asked = {field.key for field in found.fields}
    values = {key: filled.value for key, filled in found.inputs.items() if key in asked}
    return Worked(found.sheet, values, dict(found.result.outputs))


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
