"""Why no relief stands behind what an indicator read on a tool as it came: one drop tells of one even fall alone."""

from __future__ import annotations

from geometry.surfaces import SURFACES
from library.cards.job import Job
from library.cards.provenance import joined
from library.cards.read_order import is_broken, reads_facets
from library.cards.shall_be import DROPS

FACETS, MARGIN = "flat facets", "a margin or a second facet"


def barred(job: Job) -> str:
    """What keeps a relief from being told of the tool as it came, in two words; empty where nothing does.

    Args:
        job: the card worked out.
    """
    is_even = joined(job.card.received.get("relief_form", ())) == "eccentric"
    if reads_facets(job) and not is_even:
        return FACETS
    return MARGIN if is_broken(job, is_even) else ""


def is_untold(job: Job) -> bool:
    """Whether drops were read and no relief stands behind them, because of how the surface is ground."""
    received = job.card.received
    return bool(barred(job)) and any(text.strip() for key in DROPS for text in received.get(key, ()))


def why_untold(job: Job) -> str:
    """Why no relief stands behind the drops that were read, and what is missing to have one, in sentences.

    Args:
        job: the card worked out.

    Returns:
        Empty where nothing bars it, or no drop was read.
    """
    if not is_untold(job):
        return ""
    is_of = (
        f"the {_title(job)} is counted as"
        if barred(job) == FACETS
        else f"behind the edge of the {_title(job)} lies"
    )
    said = f"No relief is told from the drop: {is_of} {barred(job)}, where one drop stands for no one angle."
    if is_broken(job, is_even=True):
        return said
    return (
        f"{said} If it fell evenly, as a cam or a swing leaves it, give the line Relief form as eccentric on the page "
        "Received, and on Wanted how it is made now."
    )


def _title(job: Job) -> str:
    surface = SURFACES.get(job.choice.surface)
    return surface.title if surface is not None else "surface"
