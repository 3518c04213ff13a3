"""A heel that rubs leaves no feed that clears: what the feed says of the same surface gives way to that."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from geometry.calculation import Check, stop
from geometry.surfaces import SURFACES
from library.cards.chosen import Chosen
from library.cards.step import Step

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
    rubbing = {
        one.surface_on(choice.surface)
        for one in found
        if one.in_use
        and any(check.state == "stop" and not RUBS.isdisjoint(check.sentence.parts) for check in one.checks)
    }
    return [_stopped(one, rubbing, choice) for one in found]


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
