"""A calculation of a job at the machine: its settings on the graduations, and what machine and wheel cannot do."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from geometry.calculation import Check
from geometry.edge.surface_input import HALF
from library.calc.answer import Answer
from library.cards.answers import Answers
from library.cards.shoulders import several_angles
from library.cards.step import Step
from library.equipment.cam_limits import cam_checks
from library.equipment.drawer_advice import kept_to_the_drawer
from library.equipment.driving import Worked
from library.equipment.machine_limits import reach_checks, speed_checks
from library.equipment.model import Machine, Wheel
from library.equipment.settings import graduation_lines


def at_machine(
    step: Step,
    machine: Machine | None,
    wheel: Wheel | None,
    flutes: int | None,
    before: list[Step],
    answers: Answers,
    *,
    is_record: bool = False,
) -> Step:
    """The step with its settings on the machine, and with what the machine and the wheel cannot do.

    What an earlier step has set is not set again, and one cam serves the whole tool. A record is told nothing of the
    drawer of today.
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
    own = step.answer.result.checks
    kept = (
        own
        if is_record
        else answers.remembered_of(
            step.answer,
            ("advice", step.sheet.name, machine.id, flutes, _taken(step)),
            lambda: tuple(kept_to_the_drawer(one, machine, worked, flutes, _taken(step)) for one in own),
        )
    )
    # What is advised has to be there, on the card as on its sheet.
    checks = [*kept, *checks[len(own) :], *reach, *_swivels_beyond(step, machine)]
    if step.sheet.role.cam is not None and not any(
        one.works and one.sheet.role.cam is not None for one in before
    ):
        checks += cam_checks(machine, worked, flutes)
    done = {line.key for one in before for line in one.lines}
    lines = tuple(line for line in settings if line.key not in done)
    return replace(step, lines=lines, checks=tuple(checks))


def _swivels_beyond(step: Step, machine: Machine) -> Iterator[Check]:
    """A stop for each of several shoulders to which the machine cannot be swivelled."""
    for one in several_angles((step,)) if HALF in step.sheet.role.sets else ():
        yield from reach_checks(machine, Worked(step.sheet, {}, {HALF: one.included_angle / 2}))


def _taken(step: Step) -> str:
    """The throw that was taken out of the drawer, and that goes where another is typed; empty where there is none."""
    role = step.sheet.role.cam
    field = step.sheet.field(role.throw) if role is not None else None
    is_taken = field is not None and field.optional and step.provenance.get(field.key) == "machine"
    return field.key if field is not None and is_taken else ""


def worked_of(found: Answer) -> Worked:
    """An answer with a result, as the equipment looks at it."""
    assert found.result is not None
    asked = {field.key for field in found.fields}
    values = {key: filled.value for key, filled in found.inputs.items() if key in asked}
    return Worked(found.sheet, values, dict(found.result.outputs))
