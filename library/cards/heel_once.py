"""One judgement of one heel: where a calculation knows the tooth better, the one that it replaces rests."""

from __future__ import annotations

from dataclasses import replace

from geometry.role import HEEL
from library.cards.chosen import CAM, Chosen
from library.cards.model import Card, Setting
from library.cards.step import Step


def each_heel_once(steps: list[Step], card: Card, choice: Chosen) -> list[Step]:
    """The steps, those at rest that another one which works replaces on the same surface of a job of flats.

    One that somebody typed into stays. What a cam makes is read by the cam.
    """
    if choice.method == CAM:
        return _read_by_the_cam(steps, choice)
    better = [one for one in steps if one.works and one.sheet.role.replaces]

    def replaced(step: Step) -> bool:
        if card.settings.get(step.sheet.name, Setting()).typed:
            return False
        served = step.answer.surface or choice.surface
        form = step.answer.inputs.get("relief_form")
        return (form is None or form.value == "flat") and any(
            step.sheet.name in one.sheet.role.replaces and served in one.sheet.belongs_on for one in better
        )

    return [replace(one, rests=True) if one.in_use and replaced(one) else one for one in steps]


DROPS = frozenset({"drop", "radial_drop", "square_drop", "axial_drop"})
"""What the indicator reads behind an edge, by where it points."""


def _read_by_the_cam(steps: list[Step], choice: Chosen) -> list[Step]:
    """The steps, of which what the cam makes is read by the cam alone: another would read the relief that was wanted."""
    judge = next((one for one in steps if one.works and one.sheet.role.does == HEEL), None)
    if judge is None or (judge.relief is None and "chosen_throw" not in judge.answer.inputs):
        return steps
    surface = judge.surface_on(choice.surface)

    def repeats(step: Step) -> bool:
        result, role = step.answer.result, step.sheet.role
        if (
            result is None
            or role.cam is not None
            or role.counts
            or step.surface_on(choice.surface) != surface
        ):
            return False
        return bool(result.stations) and result.stations[0].readings.keys() <= DROPS

    return [unread(one) if repeats(one) else one for one in steps]


def unread(step: Step) -> Step:
    """The step without its indicator readings, which another calculation gives for the method of the job."""
    result = step.answer.result
    if result is None or not result.stations:
        return step
    return replace(step, answer=replace(step.answer, result=replace(result, stations=())))
