"""Wear that was measured on a job that grinds another surface than the one that it comes off."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.quantities import quantity
from geometry.surfaces import SURFACES, Surface
from library.cards.job import Job
from library.cards.provenance import joined
from library.cards.reading_issues import card_issue
from library.cards.setup_order import calculations_of
from library.issue import Issue

WEAR = ("corner_wear", "corner_wear_length")
"""What grinding shall take off."""


def worn_elsewhere(job: Job) -> Iterator[Issue]:
    """A watch at each wear from which nothing follows, with the surface on which it is ground off.

    Args:
        job: the card worked out.
    """
    for key in WEAR:
        if job.card.done or not joined(job.card.received.get(key, ())).strip():
            continue
        for ground in comes_off_on(job, key):
            here = SURFACES[job.choice.surface].title
            yield card_issue(
                f"received.{key}",
                f"{quantity(key).title}: it is ground off on the {ground.title}, and this job grinds the {here}. Choose "
                f"{ground.key} in the line Surface of the page Wanted, and Set says what comes off.",
                "warning",
            )


def comes_off_on(job: Job, key: str) -> Iterator[Surface]:
    """The surfaces on which a wear is ground off, where the job grinds another; none of any other quantity.

    Args:
        job: the card worked out.
        key: of the quantity.
    """
    if key not in WEAR or job.choice.surface == "":
        return
    for sheet in calculations_of(job.family):
        ground = next((SURFACES[one] for one in sheet.role.ground), None)
        if (
            sheet.field(key) is not None
            and ground is not None
            and job.choice.surface not in sheet.role.ground
        ):
            yield ground
