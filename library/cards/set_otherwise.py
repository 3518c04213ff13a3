"""What a job does not set as it is, because one of its calculations sets a number in its place that knows more."""

from __future__ import annotations

from library.cards.job import Job
from library.once import once


@once
def set_otherwise(job: Job) -> frozenset[str]:
    """What is not set as it is, because a calculation of the job sets a number in its place that knows more.

    Such is the angle of a cone whose tooth is turned down by its rest, for which the table is swivelled a little less.
    """
    return frozenset(
        key
        for step in job.steps
        if step.works
        for key, better in step.sheet.role.better
        if better in step.sheet.role.sets and step.answer.result and better in step.answer.result.outputs
    )
