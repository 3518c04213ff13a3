"""One judgement of one heel: where a calculation knows the tooth better, the one that it replaces rests."""

from __future__ import annotations

from dataclasses import replace

from library.cards.chosen import CAM, Chosen
from library.cards.model import Card, Setting
from library.cards.step import Step


def each_heel_once(steps: list[Step], card: Card, choice: Chosen) -> list[Step]:
    """The steps, those at rest that another one which works replaces on the same surface of a job of flats.

    One that somebody typed into stays.
    """
    if choice.method == CAM:
        return steps
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
