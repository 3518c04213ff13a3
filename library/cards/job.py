"""A card worked out: every calculation filled from what is known, in the machine's own graduations."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from geometry.calculation import Calculation, Check
from geometry.quantities import quantity
from geometry.sentences import Kind
from library.book.model import Book, Caution, Entry, Family
from library.calc.answer import LAST_WORD, Answer, answer, cautions_for
from library.cards.cams import THROWS as CAM_SHEETS
from library.cards.cams import Asked, ByCam, by_cam, carried_on, taken_from_drawer
from library.cards.chosen import CAM, Chosen, chosen
from library.cards.known import NOTHING_CHOSEN, Fact, Who, facts, texts_for, wanted_entry
from library.cards.model import Card, Setting
from library.cards.order import calculations_of, rests
from library.equipment.cam_limits import cam_checks
from library.equipment.driving import Worked
from library.equipment.limits import reach_checks, speed_checks
from library.equipment.model import Machine, Wheel, machines, wheels
from library.equipment.settings import GraduationLine, graduation_lines
from library.units.read import UnitError, read
from library.units.system import INCH, METRIC, Display


@dataclass(frozen=True)
class Step:
    """One calculation of a job.

    Attributes:
        sheet: the calculation.
        answer: what it found, or what it still wants.
        who: who gave each of its inputs.
        lines: its settings on the machine's graduations that no earlier step has set.
        checks: what it means at the machine: the calculation's own checks, then those of machine and wheel.
        skipped: true when the person left it out.
        rests: true while nothing calls for it on this tool.
        recorded: what it answered when the job was closed, by quantity.
    """

    sheet: Calculation
    answer: Answer
    who: Mapping[str, Who]
    lines: tuple[GraduationLine, ...] = ()
    checks: tuple[Check, ...] = ()
    skipped: bool = False
    rests: bool = False
    recorded: Mapping[str, str] | None = None

    @property
    def in_use(self) -> bool:
        """Whether it belongs to the job."""
        return not self.skipped and not self.rests

    @property
    def stopped(self) -> bool:
        """Whether it must not be ground as it stands."""
        return any(check.state == "stop" for check in self.checks)

    @property
    def works(self) -> bool:
        """Whether it belongs to the job and has an answer."""
        return self.in_use and self.answer.result is not None


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
        known: the facts that fill them, the strongest first.
        entry: what the tool shall have.
        cautions: of everything together, the deferring one last.
        choice: what was chosen once for the whole job.
    """

    card: Card
    book: Book
    display: Display
    machine: Machine | None
    wheel: Wheel | None
    steps: tuple[Step, ...]
    known: tuple[Fact, ...]
    entry: Entry
    cautions: tuple[Caution, ...]
    choice: Chosen = NOTHING_CHOSEN

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

    @property
    def by_cam(self) -> ByCam | None:
        """What the chosen cam gives beside what is wanted; nothing where the readings follow from no cam."""
        step = self.step("relief-drop")
        return by_cam(step.answer) if step is not None and step.works else None

    def edge_text(self, key: str) -> str:
        """The angle at which an edge lies, as it was measured, wanted, typed into a calculation, or worked out."""
        wanted = self.entry.values.get(key)
        text = self.fact(key) or (
            wanted.usual.text if wanted is not None and wanted.usual is not None else ""
        )
        found = _worked_out([one for one in self.steps if one.in_use], self.entry)
        return text or next((one.text for one in found if one.key == key), "")

    def fact(self, key: str) -> str:
        """The text known for a quantity; empty when none is."""
        return next((one.text for one in self.known if one.key == key), "")


def work_out(card: Card, book: Book) -> Job:
    """Work out a card with the book as it is today; nothing is raised for what does not make sense.

    Args:
        card: a draft or a record.
        book: with the machines, the wheels and the cautions.
    """
    machine, wheel = machines(book).get(card.machine), wheels(book).get(card.wheel)
    display = INCH if card.units == "in" else METRIC
    choice = chosen(card, book, machine, wheel)
    known = facts(card, machine, wheel, choice)
    entry = wanted_entry(card, book.entries.get(card.entry))
    steps: list[Step] = []
    kind = book.kind_of(card.family)
    for sheet in calculations_of(book.families.get(card.family)):
        if choice.takes(sheet):
            before = [one for one in steps if one.in_use]
            texts, who = texts_for(sheet, card, (*known, *_worked_out(before, entry)), display, choice, wheel)
            step = _step(sheet, texts, who, _Bench(card, entry, book, display, machine, choice, before, kind))
            steps.append(_at_machine(step, machine, wheel, _flutes(card), before))
    return Job(
        card, book, display, machine, wheel, tuple(steps), known, entry, _cautions(steps, entry, book), choice
    )


@dataclass(frozen=True)
class _Bench:
    """What a calculation is worked out with.

    Attributes:
        card: the card.
        entry: what the tool shall have.
        book: with the cautions and the families.
        display: the units of numbers typed without one.
        machine: it is ground on.
        choice: what was chosen once for the job.
        before: the calculations before it that are in use.
        kind: of the tool.
    """

    card: Card
    entry: Entry
    book: Book
    display: Display
    machine: Machine | None
    choice: Chosen
    before: list[Step]
    kind: str = ""


HANDED_ON = {"tap-chamfer": "chamfer_angle", "step-relief": "included_angle"}
"""How the edge of a surface lies, as an earlier calculation found it or was told it: a later one wants it too."""


def _worked_out(before: list[Step], entry: Entry) -> Iterator[Fact]:
    """How edges lie by earlier calculations, weaker than everything that a person or the book says."""
    for step in before:
        key = HANDED_ON.get(step.sheet.name, "")
        if not key or key in entry.values:
            continue
        given = step.answer.inputs.get(key)
        angles = set(given.value) if given is not None and isinstance(given.value, tuple) else set()
        if step.answer.result is not None and key in step.answer.result.outputs:
            angles = {step.answer.result.outputs[key]}
        # Shoulders that lie at several angles have no one angle to hand on.
        if len(angles) == 1 and isinstance(angle := angles.pop(), float):
            yield Fact(key, f"{math.degrees(angle):.6f}".rstrip("0").rstrip(".") + " deg", "default")


def _step(sheet: Calculation, texts: dict[str, str], who: dict[str, Who], bench: _Bench) -> Step:
    def ask(more: Mapping[str, str]) -> Answer:
        return answer(sheet, {**texts, **more}, entry=bench.entry, book=bench.book, display=bench.display)

    found = ask({})
    if bench.choice.method == CAM and sheet.name in CAM_SHEETS:
        cam = _cam(found, ask, bench)
        if cam:
            found, who = ask(cam), who | dict.fromkeys(cam, _giver(bench, cam))
    givers: dict[str, Who] = {
        key: who.get(
            key, "wanted" if filled.origin == "entry" else "typed" if filled.origin == "given" else "default"
        )
        for key, filled in found.inputs.items()
    }
    setting = bench.card.settings.get(sheet.name, Setting())
    checks = tuple(found.result.checks) if found.result else ()
    quiet = not setting.typed and rests(sheet.name, bench.kind, bench.card.received)
    return Step(sheet, found, givers, (), checks, setting.skipped, quiet, setting.recorded or None)


def _cam(found: Answer, ask: Asked, bench: _Bench) -> dict[str, str]:
    """The texts that say which cam is used: that of an earlier calculation, else one out of the drawer."""
    key = CAM_SHEETS[found.sheet.name]
    if key in found.inputs and found.inputs[key].origin == "given":
        return {}
    earlier = next((one for one in bench.before if one.works and one.sheet.name in CAM_SHEETS), None)
    if earlier is not None:
        return carried_on(earlier.answer, found)
    cam = taken_from_drawer(found, ask, bench.machine) if bench.machine is not None else None
    return {key: cam.text} if cam is not None else {}


def _giver(bench: _Bench, cam: Mapping[str, str]) -> Who:
    """Who gave a throw: the machine, where it is one of its drawer."""
    cams = bench.machine.cam_throws if bench.machine is not None else ()
    return "machine" if any(one.text in cam.values() for one in cams) else "typed"


def _at_machine(
    step: Step, machine: Machine | None, wheel: Wheel | None, flutes: int | None, before: list[Step]
) -> Step:
    """The step with its settings on the machine, and with what the machine and the wheel cannot do.

    What an earlier step has set is not set again, and one cam serves the whole tool.
    """
    checks = list(step.checks)
    if step.sheet.name == "wheel-speed" and machine is not None and wheel is not None:
        chosen = step.answer.inputs.get("rotational_speed")
        turns = chosen.value if chosen and isinstance(chosen.value, float) else None
        found = speed_checks(machine, wheel, turns)
        # That the chosen speed is within the rating the calculation has said already.
        checks += [check for check in found if turns is None or check.state != "pass"]
    if step.answer.result is None or machine is None:
        return replace(step, checks=tuple(checks))
    worked = worked_of(step.answer)
    checks += reach_checks(machine, worked)
    if step.sheet.name in CAM_SHEETS and not any(
        one.works and one.sheet.name in CAM_SHEETS for one in before
    ):
        checks += cam_checks(machine, worked, flutes)
    done = {line.key for one in before for line in one.lines}
    lines = tuple(line for line in graduation_lines(machine, worked) if line.key not in done)
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
        number = read(text, Kind.COUNT).number
    except UnitError:
        return None
    row = quantity("flutes")
    return int(number) if number == int(number) and row.low <= number <= row.high else None


def _cautions(steps: list[Step], entry: Entry, book: Book) -> tuple[Caution, ...]:
    found = {one.id: one for one in cautions_for(None, entry, book)}
    for step in steps:
        if step.in_use:
            found |= {one.id: one for one in step.answer.cautions if one.id not in found}
    last = found.pop(LAST_WORD, None)
    return (*found.values(), *((last,) if last else ()))
