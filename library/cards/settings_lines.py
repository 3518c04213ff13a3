"""The settings of a job in words: what to set, on which graduation, and what the rounding costs."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from geometry.calculation import Row
from geometry.edge.surface_input import HALF
from geometry.evaluate import Refusal, run
from geometry.quantities import quantity
from geometry.role import FACETS, HEIGHTS, MOVES
from geometry.sentences import Kind
from geometry.surfaces import SURFACES
from library.cards.at_machine import worked_of
from library.cards.chosen import REST, WORK_HEAD
from library.cards.job import Job
from library.cards.move_said import assumed_head, crank_said, move_said, off_the_place
from library.cards.read_order import surface_read
from library.cards.set_otherwise import set_otherwise
from library.cards.setting_line import NO_GRADUATION, SettingLine, rounded_said
from library.cards.shoulder_settings import shoulder_lines
from library.cards.shoulders import several_angles
from library.cards.step import Step
from library.cards.throw_for_all import looks_at_all
from library.cards.throws_set import CAMS, THROWS, TITLES, cam_in_short, not_set, of_cam, title_set
from library.cards.turned import counted
from library.equipment.settings import (
    cost_said,
    graduation_lines,
    in_short,
    off_in_short,
    said,
)
from library.once import once
from library.units.show import show, show_answer
from library.units.system import Display

CURES = frozenset({"circle_ground_to"})
"""Settings that put right what their own calculation stops."""


@once
def setting_lines(job: Job, display: Display) -> tuple[SettingLine, ...]:
    """Everything that is set for a job, in the order of the set-up, each quantity once."""
    lines: dict[str, SettingLine] = {}
    for_all = any(one.in_use and not one.works and looks_at_all(one) for one in job.steps)
    for step in job.steps:
        for line in shoulder_lines(job, step, display):
            lines.setdefault(line.key, line)
        if step.works:
            for line in _of_step(job, step, display):
                if _is_wanted(line.key, lines, for_all=for_all):
                    lines.setdefault(
                        line.key or line.title,
                        replace(
                            line, stopped=step.stopped and line.key not in CURES, apart=step.sheet.role.apart
                        ),
                    )
    otherwise = set_otherwise(job)
    return tuple(_same_facet({key: line for key, line in lines.items() if key not in otherwise}))


def _is_wanted(key: str, lines: Mapping[str, SettingLine], *, for_all: bool) -> bool:
    """Whether a setting is wanted beside those before it: of the throws for the cylinder none where the cone has one.

    While the one for all steps is asked for, none is that only one diameter needs; a cam that was chosen is told.
    """
    if key not in THROWS - CAMS:
        return True
    return CAMS.isdisjoint(lines) and (key == "chosen_throw" or not for_all)


SAME_FACET = {"wheel_head_height": "Facet 1: head height", "tooth_rest_height": "Facet 1: rest height"}
"""Heights that make the first facet, which the planned facets tell by its height above the axis."""


def _same_facet(lines: Mapping[str, SettingLine]) -> Iterator[SettingLine]:
    """The settings; where facets are planned too, each has a height that makes it, and one by which it is measured.

    The one turns the tooth to the angle of the facet; the other is how high the facet stands when it lies level.
    """
    first = "facet 1"
    heights = set(SAME_FACET) & set(lines) if first in lines else set()
    for key, line in lines.items():
        if key in heights:
            yield replace(line, title=SAME_FACET[key])
        elif heights and line.sheet == lines[first].sheet:
            yield replace(
                line,
                title=f"{line.title.partition(',')[0]} lying level",
                graduation=line.graduation + " when it lies level, to check it",
                is_check=True,
            )
        else:
            yield line


def _of_step(job: Job, step: Step, display: Display) -> list[SettingLine]:
    if job.choice.method in step.sheet.role.otherwise_by:
        return []
    if step.sheet.role.rows == HEIGHTS:
        return []
    if step.sheet.role.rows:
        return _moves(job, step) if step.sheet.role.rows == MOVES else _facets(job, step, display)
    facets = _by_height(job, step, display)
    on_graduations = {line.key: line for line in step.lines}
    numbers = worked_of(step.answer).settings()
    sets = step.sheet.role.sets_with(numbers)
    others = (one for one in on_graduations if one not in step.sheet.role.sets)
    wanted = [one for one in (*others, *sets) if (not facets or one not in SAME_FACET) and _is_set(job, one)]
    found = facets
    for key in dict.fromkeys(wanted):
        if key not in numbers or key in not_set(step, numbers):
            continue
        line = on_graduations.get(key)
        value = show_answer(numbers[key], quantity(key), display)
        graduation, cost = (said(line), cost_said(line, display)) if line else of_cam(job, step, key)
        if line is None and job.machine is not None and WORK_HEAD in step.sheet.methods:
            cost = NO_GRADUATION
        found.append(
            SettingLine(step.sheet.name, key, title_set(step, key, graduation), value, graduation, cost,
                        divisions=in_short(line) if line else cam_in_short(job, graduation),
                        off=off_in_short(line, display) if line else cost.partition(",")[0].partition(" at ")[0],
                        counted=counted(job, step, key), rounded=rounded_said(line, display))
        )  # fmt: skip
    return found


def _is_set(job: Job, key: str) -> bool:
    """Whether a number is set on this job: to the angle of its shoulders a tool is swivelled for those alone."""
    if key != HALF:
        return True
    is_on_a_cone = SURFACES.get(job.choice.surface, SURFACES["cone"]).edge_key == "included_angle"
    return is_on_a_cone and not several_angles(job.steps)


def is_set_by_facets(job: Job, step: Step) -> bool:
    """Whether a calculation has a height for each planned facet, so that the one it names alone makes none of them."""
    return step.works and bool(_by_height(job, step, job.display))


def _by_height(job: Job, step: Step, display: Display) -> list[SettingLine]:
    """The height for each facet of the land, where one calculation knows the facets and this one a height for them.

    A facet behind a margin is counted from the tangent where the margin ends, and is set from that at the edge. Facets of
    another surface say nothing of this one.
    """
    surface = surface_read(job, step)
    planned = next(
        (one for one in job.steps if one.works and one.sheet.role.rows in {HEIGHTS, FACETS} and surface_read(job, one) == surface),
        None,
    )  # fmt: skip
    if planned is None or planned.answer.result is None or not SAME_FACET.keys() & set(step.sheet.role.sets):
        return []
    first = worked_of(step.answer)
    key = next((one for one in SAME_FACET if one in first.outputs), "")
    wanted = first.values.get("relief_angle")
    if not key or not isinstance(wanted, float):
        return []
    rows = planned.answer.result.rows
    found = []
    for number, row in _as_ground(job, rows):
        values = first.values | {"relief_angle": row.values["facet_angle"]}
        try:
            worked = replace(first, values=values, outputs=dict(run(step.sheet, values).outputs))
        except Refusal:
            continue  # So far round no height turns the tooth; its angle stands with the facet.
        lines = graduation_lines(job.machine, worked) if job.machine is not None else ()
        line = next((one for one in lines if one.key == key), None)
        title = TITLES.get(key) or quantity(key).title
        is_wanted = math.isclose(row.values["facet_angle"], wanted)
        angle = show(row.values["facet_angle"], Kind.ANGLE, display)
        at_edge = "" if is_wanted else f"for {angle} from the tangent at the edge"
        found.append(
            SettingLine(step.sheet.name, key if number == 1 else f"facet {number}: height",
                        title if len(rows) == 1 else f"Facet {number}: {SAME_FACET[key].partition(': ')[2]}",
                        show_answer(worked.outputs[key], quantity(key), display),
                        ", ".join(filter(None, (said(line) if line else "", at_edge))), cost_said(line, display) if line else "",
                        divisions=in_short(line) if line else "", off=off_in_short(line, display) if line else "",
                        counted=counted(job, step, key), rounded=rounded_said(line, display))
        )  # fmt: skip
    return found


OTHERWISE_HELD = "; only where no tooth rest holds the tooth"
"""Behind the moves of the index, where a tooth is set by its rest: the one or the other holds it, never both."""


def _moves(job: Job, step: Step) -> list[SettingLine]:
    assert step.answer.result is not None
    outputs = step.answer.result.outputs
    on_rest = job.choice.method == REST
    assumed = assumed_head(outputs) + (OTHERWISE_HELD if on_rest else "")

    def off(numbers: Mapping[str, float]) -> str:
        found = off_the_place(numbers)
        return (f"{found}, " if found else "") + "or tooth rest" if on_rest else found

    rows = [row for row in step.answer.result.rows if "index_turns" in row.values]
    if not rows or all(row.label == "or" for row in rows[1:]):
        return [SettingLine(step.sheet.name, "", "Index", "every move", move_said(outputs) + assumed,
                            divisions=crank_said(outputs, " + "), off=off(outputs))]  # fmt: skip
    return [SettingLine(step.sheet.name, "", f"Index, {row.label}", show(row.values["index_angle"], Kind.ANGLE),
                        move_said(row.values) + assumed, divisions=crank_said(row.values, " + "),
                        off=off(row.values)) for row in rows]  # fmt: skip


PRIMARY_FIRST = frozenset({"end-mill"})
"""Kinds of tools whose primary is ground before the facet behind it, as the book says of them."""


def _as_ground(job: Job, rows: Sequence[Row]) -> list[tuple[int, Row]]:
    """Facets with their numbers, counted from the edge, in the order in which they are ground: the rear one first, the edge last."""
    numbered = list(enumerate(rows, 1))
    return numbered if job.kind in PRIMARY_FIRST else numbered[::-1]


def _facets(job: Job, step: Step, display: Display) -> list[SettingLine]:
    """One line for each facet of a tool that is ground down: its angle, its width, its height over the axis."""
    assert step.answer.result is not None
    return [
        SettingLine(
            step.sheet.name,
            f"facet {number}",
            f"{row.label[:1].upper()}{row.label[1:]}",
            show(row.values["facet_angle"], Kind.ANGLE, display),
            f"{show(row.values['facet_width'], Kind.LENGTH, display)} wide, "
            f"{show(row.values['facet_height'], Kind.LENGTH, display)} above the axis",
            divisions=f"{show(row.values['facet_height'], Kind.LENGTH, display)} above axis",
            off=f"{show(row.values['facet_width'], Kind.LENGTH, display)} wide",
        )
        for number, row in _as_ground(job, step.answer.result.rows)
        if {"facet_angle", "facet_width", "facet_height"} <= set(row.values)
    ]
