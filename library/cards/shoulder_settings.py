"""What the head is swivelled to for each shoulder of a tool whose cones are not alike."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from geometry.edge.surface_input import HALF
from geometry.quantities import quantity
from geometry.setting.graduation import on_graduation
from library.cards.first_step import SHOULDER
from library.cards.job import Job
from library.cards.setting_line import NO_GRADUATION, SettingLine, rounded_said
from library.cards.shoulders import several_angles
from library.cards.step import Step
from library.equipment.settings import GraduationLine, cost_said, in_short, off_in_short, said
from library.units.show import show_answer
from library.units.system import Display


def shoulder_lines(job: Job, step: Step, display: Display) -> Iterator[SettingLine]:
    """The swivel for each of several shoulders, from the point up, which is known before any cam is.

    Args:
        job: the card worked out.
        step: one of its calculations; lines come of that alone which was given the angles of all shoulders.
        display: the units.
    """
    role = step.sheet.role
    if not step.in_use or HALF not in role.sets or job.choice.method in role.otherwise_by:
        return
    graduation = job.machine.setting_graduation(HALF) if job.machine is not None else None
    for one in several_angles((step,)):
        half, line, cost = one.included_angle / 2, None, NO_GRADUATION if job.machine is not None else ""
        if graduation is not None:
            line = GraduationLine(HALF, half, graduation, on_graduation(half, graduation.division.number))
            cost = cost_said(line, display)
        yield SettingLine(
            step.sheet.name,
            f"{SHOULDER} {one.number}",
            f"Half angle, {SHOULDER} {one.number}",
            show_answer(half, quantity(HALF), display),
            said(line) if line is not None else "",
            cost,
            stopped=step.stopped,
            divisions=in_short(line) if line is not None else "",
            off=off_in_short(line, display) if line is not None else cost.partition(",")[0],
            rounded=rounded_said(line, display),
        )


def swivels(lines: Iterable[SettingLine]) -> list[SettingLine]:
    """Those among the settings of a job that are the swivel for one of several shoulders."""
    return [one for one in lines if one.key.partition(" ")[0] == SHOULDER]
