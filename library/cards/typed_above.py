"""A number of the whole job has one line: in the first calculation that asks for it, or in which it was typed."""

from __future__ import annotations

import itertools

from library.cards.editing import readings_of
from library.cards.job import Job
from library.cards.model import Setting
from library.cards.provenance import TYPED_ONCE
from library.cards.step import Step


def typed_above(job: Job, step: Step, key: str) -> Step | None:
    """The earlier calculation in which a number was typed that this one counts with, as it is one for the whole job.

    Args:
        job: the card worked out.
        step: the calculation that counts with it.
        key: of the input.

    Returns:
        Nothing where it is typed into this one itself, or nowhere before it.
    """
    if key not in TYPED_ONCE or _typed(job, step, key) or step.provenance.get(key, "typed") != "typed":
        return None
    before = itertools.takewhile(lambda one: one is not step, job.steps)
    return next((one for one in before if one.in_use and len(readings_of(_typed(job, one, key))) == 1), None)


def line_of(job: Job, step: Step, key: str) -> str:
    """The way to the line of an input of a calculation, which is that of the calculation in which it was typed.

    Args:
        job: the card worked out.
        step: the calculation.
        key: of the input; empty for the line of the calculation itself.
    """
    above = typed_above(job, step, key) if key else None
    return ".".join(part for part in ("settings", (above or step).sheet.name, key) if part)


def _typed(job: Job, step: Step, key: str) -> str:
    return job.card.settings.get(step.sheet.name, Setting()).typed.get(key, "").strip()
