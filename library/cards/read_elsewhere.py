"""Readings of a tool as it came that were typed while the card ground another surface than it grinds now."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.surfaces import SURFACES, Surface
from library.calc.surfaces import LAND
from library.cards.chosen import SURFACE
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


def read_elsewhere(job: Job) -> Iterator[Issue]:
    """A watch at each reading that was typed for another surface, where it is typed again or said to be right so.

    Args:
        job: the card worked out, with the surfaces that were read.
    """
    for then, keys in _by_surface(job).items():
        now = SURFACES[job.choice.surface]
        for key in keys:
            yield card_issue(
                f"received.{key}",
                f"{title_of(key)}: typed while the card ground the {then.title}; it counts as that of the {now.title} now. "
                "Measure it there and type it again; or, where it is right so, go on from this line with Enter.",
                "warning",
            )


def all_read_elsewhere(job: Job) -> Iterator[Issue]:
    """A watch at the end of the card, and on its sheet, that tells all such readings of each surface at once.

    Args:
        job: the card worked out, with the surfaces that were read.
    """
    for then, keys in _by_surface(job).items():
        now = SURFACES[job.choice.surface]
        names = " and ".join(f"the {title_of(key).lower()}" for key in keys)
        was, counts, it = (
            ("was", "counts as that", "it") if len(keys) == 1 else ("were", "count as those", "them")
        )
        yield card_issue(
            "result",
            f"On Received {names} {was} typed while the card ground the {then.title}, and {counts} of the {now.title} "
            f"now: measure {it} there and type {it} again, or say on Received by Enter that it is right so.",
            "warning",
        )


def counted_as(job: Job) -> str:
    """As of which surface the readings count, where a person chose that: a card does not keep where they were read.

    Args:
        job: the card worked out.

    Returns:
        A sentence for the sheet; empty where the surface follows from the tool, nothing of the kind was read, or a watch
        says on which surface it was.
    """
    surface, keys = SURFACES.get(job.choice.surface), list(read_here(job))
    if surface is None or not keys or SURFACE not in job.choice.by_person or _by_surface(job):
        return ""
    names = " and ".join(title_of(key).lower() for key in keys)
    counts, it = ("counts as that", "it was") if len(keys) == 1 else ("count as those", "they were")
    return f"{names[:1].upper()}{names[1:]} {counts} of the {surface.title}, chosen on this card, which does not keep where {it} read."


def _by_surface(job: Job) -> dict[Surface, list[str]]:
    """The quantities that were read on another surface than the one of now, by that; none of a record."""
    found: dict[Surface, list[str]] = {}
    is_told = job.choice.surface in SURFACES and not job.card.done
    for key in read_here(job) if is_told else ():
        then = SURFACES.get(job.read_on.get(key, ""))
        if then is not None and then.key != job.choice.surface:
            found.setdefault(then, []).append(key)
    return found
