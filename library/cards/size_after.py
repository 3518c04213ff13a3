"""The diameter after grinding, beside that before it and the hole of a reamer: what is hardly so, and what is not judged."""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import zip_longest

from geometry.fit.reamer import READ
from geometry.sentences import Kind
from library.cards.each_step import READING, place_of
from library.cards.job import Job
from library.cards.model import Inspection, Readings
from library.cards.reading_issues import card_issue
from library.cards.reading_units import shown_in, unit_read_in
from library.cards.shall_be import number_of, presumed_limits
from library.issue import Issue

DIAMETER = "diameter"

REPEATS = 0.002
"""In mm, by how much a micrometer differs from itself over the same edges; no source."""

SET_OUT = frozenset({"reamer"})
"""Kinds of tools of which some have blades that are set out before they are ground."""


def size_after(job: Job) -> Iterator[Issue]:
    """A watch on a tool that is larger than it came, and on a reamer that nothing judges.

    Args:
        job: the card worked out.
    """
    readings = job.card.after.get(DIAMETER, Inspection()).readings
    if any(one.strip() for one in readings):
        yield from _grown(job, readings)
        yield from _not_judged(job)


def out_by_presumed(job: Job, readings: Readings) -> str:
    """That a diameter would be out by the hole that is presumed, a sentence; empty where it would not, or one was named.

    Args:
        job: the card worked out.
        readings: of the diameter, before grinding or after it.
    """
    presumed = presumed_limits(job)
    read = [one for one in _numbers(job, readings) if one is not None]
    if presumed is None or not read:
        return ""
    serves = presumed.served
    low, high = serves.low or 0.0, serves.high if serves.high is not None else math.inf
    if min(read) >= low - READ and max(read) <= high + READ:
        return ""
    by = serves.said(Kind.LENGTH, job.display)
    return f"Under {presumed.whose}, presumed, it would be out: {by} would serve."


def _grown(job: Job, after: Readings) -> Iterator[Issue]:
    """Of as many readings as before each beside its own, as on the steps of a tool; else the largest of both."""
    came, now = _numbers(job, job.card.received.get(DIAMETER, ())), _numbers(job, after)
    if len(came) != len(now) or place_of(job, DIAMETER, after) == READING:
        came, now = _largest(came), _largest(now)
    unit = unit_read_in(after, Kind.LENGTH, job.display)
    for place, (one, other) in enumerate(zip_longest(came, now), 1):
        if one is None or other is None or other - one <= REPEATS:
            continue
        more, was, is_now = (shown_in(number, Kind.LENGTH, unit) for number in (other - one, one, other))
        blades = " (only blades that were set out do)" if job.kind in SET_OUT else ""
        yield card_issue(
            f"after.{DIAMETER}",
            f"Diameter: {is_now} is {more} more than the {was} it came with; grinding makes no tool larger{blades}. Measure "
            "both with one micrometer, free of burrs and built-up edge, or correct the slip.",
            "warning",
            place if len(now) > 1 else 0,
        )


def _not_judged(job: Job) -> Iterator[Issue]:
    """A reamer for a hole that nobody named: by which limits it would be judged, and where to name it."""
    presumed = presumed_limits(job)
    if presumed is None:
        return
    by = presumed.said(Kind.LENGTH, job.display)
    yield card_issue(
        f"after.{DIAMETER}",
        f"Diameter: not judged, as nobody named the hole. For {presumed.whose}, which is presumed, a new reamer has {by}. "
        "Name the tolerance of the hole on the page Set, or here what the reamer shall measure.",
        "warning",
    )


def _numbers(job: Job, readings: Readings) -> list[float | None]:
    return [number_of(one, DIAMETER, job) for one in readings]


def _largest(numbers: list[float | None]) -> list[float | None]:
    return [max((one for one in numbers if one is not None), default=None)]
