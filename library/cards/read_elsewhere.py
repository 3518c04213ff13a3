"""Readings of a tool as it came that were typed while the card ground another surface than it grinds now."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from geometry.surfaces import SURFACES
from library.calc.surfaces import LAND
from library.cards.job import Job
from library.cards.provenance import joined
from library.cards.reading_issues import card_issue, title_of
from library.cards.shall_be import DROPS
from library.issue import Issue

OF_THE_SURFACE = (LAND, *sorted(DROPS))
"""What is read on the surface that is ground, and counts as that of whichever the card grinds."""


def read_here(job: Job) -> Iterator[str]:
    """The quantities of the surface that is ground of which the card has a reading as the tool came.

    Args:
        job: the card worked out.
    """
    return (key for key in OF_THE_SURFACE if joined(job.card.received.get(key, ())).strip())


def read_elsewhere(job: Job, read_on: Mapping[str, str]) -> Iterator[Issue]:
    """A watch at each reading that was typed for another surface, and at the end of the card one of them all.

    Args:
        job: the card worked out.
        read_on: the word of the surface that the card ground when a quantity was read, by the key of the quantity.

    Returns:
        Nothing for a record, and where nobody can tell on which surface something was read.
    """
    now = SURFACES.get(job.choice.surface)
    if job.card.done or now is None:
        return
    found: dict[str, list[str]] = {}
    for key in read_here(job):
        then = SURFACES.get(read_on.get(key, ""))
        if then is None or then is now:
            continue
        found.setdefault(then.title, []).append(f"the {title_of(key).lower()}")
        yield card_issue(
            f"received.{key}",
            f"{title_of(key)}: typed while the card ground the {then.title}; it counts as that of the {now.title} now. "
            "Measure it there and type it again; or, where it is right so, go on from this line with Enter.",
            "warning",
        )
    for title, names in found.items():
        was, counts, it = (
            ("was", "counts as that", "it") if len(names) == 1 else ("were", "count as those", "them")
        )
        yield card_issue(
            "result",
            f"On Received {' and '.join(names)} {was} typed while the card ground the {title}, and {counts} of the "
            f"{now.title} now: measure {it} there and type {it} again, or say on Received by Enter that it is right so.",
            "warning",
        )
