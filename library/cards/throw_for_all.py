"""One throw serves all steps of a tool: none is advised for one surface that gives a shoulder more or less than will do.

What the calculation of all steps says of it stands alone then.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from geometry.calculation import Check
from geometry.complaints import Complaint, untried
from geometry.evaluate import Refusal, run
from geometry.figure import undrawn
from geometry.sentences import Sentence
from library.cards.at_machine import worked_of
from library.cards.step import Step
from library.equipment.cam_limits import TYPED

RANGE = frozenset({"low", "high"})
"""The parts of the watch on shoulders that have more or less relief than will do."""


def no_throw_for_one_alone(steps: Iterable[Step]) -> list[Step]:
    """The steps, none of which advises a throw under which some shoulder of the same tool is out of its limits.

    Args:
        steps: of the job.
    """
    found = list(steps)
    judge = next((one for one in found if one.works and looks_at_all(one)), None)
    if judge is None:
        return found
    return [one if one is judge or not one.works else _kept(one, judge) for one in found]


def looks_at_all(step: Step) -> bool:
    """Whether a calculation looks at all steps of a tool under one cam."""
    return bool(step.sheet.role.only_several) and step.sheet.role.cam is not None


def _kept(step: Step, judge: Step) -> Step:
    checks = tuple(_without_the_throw(one, judge) for one in step.checks)
    return step if checks == step.checks else replace(step, checks=checks)


def _without_the_throw(check: Check, judge: Step) -> Check:
    """The check, what it advises left out where that is a throw which does not serve all; where the others stand is told."""
    if not isinstance(check, Complaint) or all(_serves(throw, judge) for throw in _throws(check)):
        return check
    says = f"{check.sentence.template.partition('. ')[0].removesuffix('.')}."
    told = f"{says} Which throw serves the shoulders is told by '{judge.sheet.title}'."
    parts = {key: part for key, part in check.sentence.parts.items() if f"{{{key}}}" in says}
    return replace(check, sentence=Sentence(told, parts), cure=())


def _throws(check: Complaint) -> Iterable[float]:
    """The throws (mm) that a check advises."""
    steps = (step for way in check.ways for step in way.steps if step.key in TYPED)
    return [step.amount.value for step in steps if step.amount is not None]


def _serves(throw: float, judge: Step) -> bool:
    """Whether all shoulders keep their limits under a throw."""
    cam = judge.sheet.role.cam
    values = worked_of(judge.answer).values | ({cam.throw: throw} if cam is not None else {})
    try:
        with untried(), undrawn():
            checks = run(judge.sheet, values).checks
    except Refusal:
        return False
    return not any(one.state == "watch" and RANGE & one.sentence.parts.keys() for one in checks)
