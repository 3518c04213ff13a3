"""Close a card: today's answers are recorded on it, so that it says what was done when the program has changed."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date

from geometry.calculations import calculation
from geometry.quantities import QUANTITIES, quantity
from geometry.sentences import Kind
from library.cards.issues import keeps_open
from library.cards.job import Job
from library.cards.model import DONE, DRAFT, Card, Setting, Tool
from library.cards.of_that_day import chosen_then, filled_in, written
from library.cards.provenance import is_number
from library.cards.relief_after import range_then
from library.cards.shall_be import wanted_each, wanted_limits, wanted_number
from library.cards.step import Step
from library.equipment.cam_limits import TYPED
from library.issue import Issue
from library.units.show import show, show_answer


class NotFinished(ValueError):
    """The card stays a draft; ``issues`` says why, all of it."""

    def __init__(self, issues: tuple[Issue, ...]) -> None:
        self.issues = issues
        super().__init__(" ".join(one.text for one in issues))


def finished(job: Job, day: date) -> Card:
    """The card as a record of a job that is done.

    Args:
        job: the card worked out.
        day: it was done.

    Returns:
        The card, with the answers of every calculation as they are shown today.

    Raises:
        NotFinished: while something on it does not add up.
    """
    wrong = keeps_open(job)
    if wrong:
        raise NotFinished(wrong)
    settings = dict(job.card.settings)
    for step in job.steps:
        if step.in_use:
            outputs = step.answer.result.outputs if step.answer.result is not None else {}
            answers = {key: show_answer(value, quantity(key), job.display) for key, value in outputs.items()}
            was = settings.get(step.sheet.name, Setting())
            # One without an answer keeps what it was given too, so that it asks for no more than on its day.
            typed = _with_the_cams_meant(step, was.typed)
            found = replace(was, typed=typed, recorded=answers, filled=filled_in(step, typed, job.display))
            if found != Setting():
                settings[step.sheet.name] = found
    after = {key: replace(one, judged_by=_judged_by(job, key)) for key, one in job.card.after.items()}
    return replace(
        job.card,
        status=DONE,
        finished=day,
        tool=_with_its_size(job.card),
        settings=settings,
        after=after,
        chosen=chosen_then(job) | range_then(job),
    )


def _with_the_cams_meant(step: Step, typed: Mapping[str, str]) -> dict[str, str]:
    """What was typed into a calculation, a throw as that of the cam that it means: the drawer may be another tomorrow."""
    inputs = step.answer.inputs
    return {
        key: inputs[key].text if key in TYPED and key in inputs and text.strip() else text
        for key, text in typed.items()
    }


def _with_its_size(card: Card) -> Tool:
    """The tool with the size that the book has for it, where nobody wrote another: a record is found by it."""
    wanted = card.wanted.get("diameter")
    if card.tool.thread.strip() or card.tool.size.strip() or wanted is None:
        return card.tool
    return replace(card.tool, size=wanted.value) if is_number(wanted.value, Kind.LENGTH) else card.tool


def _judged_by(job: Job, key: str) -> str:
    """What the readings of a quantity are held against, where no person wrote it for the inspection; empty for nothing."""
    if key not in QUANTITIES or quantity(key).kind is Kind.CHOICE or job.card.after[key].wanted.strip():
        return ""
    each = wanted_each(job, key)
    if each:
        return ", ".join(written(one, None, quantity(key).kind) for one in each)
    limits = wanted_limits(job, key)
    # The limits of a reamer follow anew from what was filled in on the day, with what is left for wear.
    return (
        written(wanted_number(job, key), limits, quantity(key).kind)
        if limits is None or not limits.whose
        else ""
    )


def reopened(card: Card) -> Card:
    """The card as a draft again; what was recorded goes, because it will be recorded afresh."""
    settings = {name: replace(one, recorded={}, filled={}) for name, one in card.settings.items()}
    after = {key: replace(one, judged_by="") for key, one in card.after.items()}
    return replace(card, status=DRAFT, finished=None, after=after, chosen={},
                   settings={name: one for name, one in settings.items() if one != Setting()})  # fmt: skip


def differs(job: Job) -> tuple[tuple[str, str, str, str], ...]:
    """Where a record's answers are others than today's program, book and machine would give.

    Args:
        job: a record, worked out with what was filled in on its day.

    Returns:
        Calculation, quantity, what was recorded, and what comes out today.
    """
    found = []
    for step in job.today.steps:
        if not step.recorded or step.answer.result is None:
            continue
        for key, was in step.recorded.items():
            value = step.answer.result.outputs.get(key)
            if value is None:
                found.append((step.sheet.name, key, was, ""))
                continue
            row = quantity(key)
            now = show_answer(value, row, job.display)
            # Older records have limits rounded to the nearest, or those of a fit less finely; that is the same answer.
            coarse = show_answer(value, replace(row, fine=False), job.display)
            if was not in (now, coarse, show(value, row.kind, job.display)):
                found.append((step.sheet.name, key, was, now))
    return tuple(found)


def differs_said(found: Sequence[tuple[str, str, str, str]]) -> str:
    """In one sentence that a record's answers are others than today's; empty where they are not.

    Args:
        found: by ``differs``; the relief is named where it is among them, else the first.

    Example:
        >>> differs_said([("relief-drop", "heel_drop", "0.460 mm", "0.455 mm")])
        'Indicator drop of the heel for a relief: the record of that day has indicator drop at the heel 0.460 mm; today it comes out as 0.455 mm.'
    """
    if not found:
        return ""
    sheet, key, was, now = next((one for one in found if one[1] == "relief_angle"), found[0])
    others = len(found) - 1
    more = f", and {others} other answer{'s' if others > 1 else ''} otherwise too" if others else ""
    return (f"{calculation(sheet).title}: the record of that day has {quantity(key).title.lower()} {was}; "
            f"today it comes out as {now or 'nothing'}{more}.")  # fmt: skip
