"""A heel that rubs leaves no feed that clears: what the feed says of the same surface gives way to that."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import TYPE_CHECKING

from geometry.calculation import Check, stop
from geometry.surfaces import SURFACES
from library.cards.chosen import Chosen
from library.cards.step import Step

if TYPE_CHECKING:
    from library.cards.job import Job

OF_THE_FEED = "feed"
"""What the calculation is about that tells in which feeds an edge clears."""

RUBS, CLEARS_UNDER, LARGEST = frozenset({"proud", "hardly"}), "limit", "largest_feed"
"""The parts of a sentence on a heel that rubs, and of one on a feed that clears; and what is answered then."""


def no_feed_while_it_rubs(steps: Iterable[Step], choice: Chosen) -> list[Step]:
    """The steps, of which that of the feed is stopped where another finds that the heel of the same surface rubs.

    Args:
        steps: of the job.
        choice: what was chosen once for it.
    """
    found = list(steps)
    rubbing = _rubbing(found, choice)
    return [_stopped(one, rubbing, choice) for one in found]


def makes_a_rubbing_heel(job: Job, step: Step) -> bool:
    """Whether a calculation sets what makes a relief whose heel another one finds to rub, such as a height.

    What it sets is right for the angle, and no setting of the job before the heel is put right.

    Args:
        job: the card worked out.
        step: of it.
    """
    surface = step.surface_on(job.choice.surface)
    return bool(step.sheet.methods) and not step.stopped and surface in _rubbing(job.steps, job.choice)


def heel_rubs(job: Job) -> bool:
    """Whether the heel of the surface that is ground rubs by any calculation of a job."""
    return job.choice.surface in _rubbing(job.steps, job.choice)


def _rubbing(steps: Iterable[Step], choice: Chosen) -> set[str]:
    """The surfaces whose heel rubs by any calculation in use."""
    return {
        one.surface_on(choice.surface)
        for one in steps
        if one.in_use
        and any(check.state == "stop" and not RUBS.isdisjoint(check.sentence.parts) for check in one.checks)
    }


def _stopped(step: Step, rubbing: set[str], choice: Chosen) -> Step:
    surface = step.surface_on(choice.surface)
    if not step.works or step.stopped or step.sheet.role.about != OF_THE_FEED or surface not in rubbing:
        return step
    others = (one for one in step.checks if not _praises(one))
    told = stop(
        "The heel of the {surface} rubs, so that it clears in no feed. Put the heel right first; then this is counted anew.",
        surface=SURFACES[surface].title if surface in SURFACES else "edge",
    )
    assert step.answer.result is not None
    outputs = {key: number for key, number in step.answer.result.outputs.items() if key != LARGEST}
    answer = replace(step.answer, result=replace(step.answer.result, outputs=outputs))
    return replace(step, answer=answer, checks=(told, *others))


def _praises(check: Check) -> bool:
    return check.state in {"pass", "note"} and CLEARS_UNDER in check.sentence.parts
