"""Close a card: today's answers are recorded on it, so that it says what was done when the program has changed."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from geometry.quantities import quantity
from library.cards.issues import keeps_open
from library.cards.job import Job
from library.cards.model import DONE, DRAFT, Card, Setting
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
        if step.works and step.answer.result is not None:
            answers = {key: show_answer(value, quantity(key), job.display)
                       for key, value in step.answer.result.outputs.items()}  # fmt: skip
            settings[step.sheet.name] = replace(settings.get(step.sheet.name, Setting()), recorded=answers)
    return replace(job.card, status=DONE, finished=day, settings=settings)


def reopened(card: Card) -> Card:
    """The card as a draft again; what was recorded goes, because it will be recorded afresh."""
    settings = {name: replace(one, recorded={}) for name, one in card.settings.items()}
    return replace(card, status=DRAFT, finished=None,
                   settings={name: one for name, one in settings.items() if one != Setting()})  # fmt: skip


def differs(job: Job) -> tuple[tuple[str, str, str, str], ...]:
    """Where a record's answers are others than today's program would give.

    Args:
        job: a record worked out afresh.

    Returns:
        Calculation, quantity, what was recorded, and what comes out today.
    """
    found = []
    for step in job.steps:
        if not step.recorded or step.answer.result is None:
            continue
        for key, was in step.recorded.items():
            value = step.answer.result.outputs.get(key)
            if value is None:
                found.append((step.sheet.name, key, was, ""))
                continue
            row = quantity(key)
            now = show_answer(value, row, job.display)
            # Older records have limits rounded to the nearest; that is the same answer.
            if was not in (now, show(value, row.kind, job.display)):
                found.append((step.sheet.name, key, was, now))
    return tuple(found)
