"""The faults of a job card: what is wrong on it or stands on watch, each at the line where it is to be put right."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Literal

from library.cards.job import Job
from library.cards.typed_above import line_of
from library.equipment.drawer_advice import keys_named
from library.issue import Issue
from library.units.show import say

State = Literal["stop", "watch"]


@dataclass(frozen=True)
class Fault:
    """One thing that is wrong, or to be looked at.

    Attributes:
        way: of the line.
        state: how bad it is.
        text: a sentence or more.
    """

    way: str
    state: State
    text: str


def faults_of(job: Job, issues: Iterable[Issue]) -> tuple[Fault, ...]:
    """What does not add up, then what the calculations put on watch, for each line the worst first.

    Args:
        job: the card worked out.
        issues: of that card.
    """
    found = [Fault(one.way, "stop" if one.state == "stop" else "watch", one.text) for one in issues]
    told = " ".join(one.text for one in found)
    for step in job.steps:
        if not step.in_use:
            continue
        for check in step.checks:
            if check.state == "watch" and (text := say(check.sentence, job.display)) not in told:
                found.append(Fault(line_of(job, step, next(iter(keys_named(check)), "")), "watch", text))
    return tuple(sorted(found, key=lambda one: one.state != "stop"))


def worst(faults: Sequence[Fault]) -> Fault | None:
    """The worst of some; nothing where there are none."""
    return min(faults, key=lambda one: one.state != "stop", default=None)
