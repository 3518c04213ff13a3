"""A heel that was read higher than its edge: it rubs whatever is wanted, so that it is told before anything is judged."""

from __future__ import annotations

from collections.abc import Container, Iterator

from geometry.sentences import Kind
from library.cards.job import Job
from library.cards.model import Readings
from library.cards.reading_issues import card_issue, title_of
from library.cards.shall_be import DROPS, number_of
from library.issue import Issue, Severity
from library.units.show import show

CURE = "Grind it down below the edge; one that falls is typed without a minus sign."
"""What is to be done about it."""


def standing_proud(
    job: Job, way: str, key: str, readings: Readings, severity: Severity, told: Container[int] = ()
) -> Iterator[Issue]:
    """Each reading of the drop that lies below zero.

    Args:
        job: the card worked out.
        way: to the readings on the card.
        key: of the quantity; of another than a drop nothing is said.
        readings: as written, one for all flutes or one for each.
        severity: how heavy it weighs.
        told: flutes, counted from 1, of which it is said already how far they are off.
    """
    for flute, text in enumerate(readings if key in DROPS else (), 1):
        number = number_of(text, key, job)
        if number is not None and number < 0.0 and flute not in told:
            place = f", flute {flute}" if len(readings) > 1 else ""
            above = show(-number, Kind.LENGTH, job.display)
            said = f"{title_of(key)}{place}: the heel stands {above} higher than the edge, so that it rubs. {CURE}"
            yield card_issue(way, said, severity, flute if place else 0)
