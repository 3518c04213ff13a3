"""Why no relief stands behind what an indicator read on a tool as it came: one drop tells of one even fall alone."""

from __future__ import annotations

from geometry.surfaces import SURFACES
from library.cards.job import Job
from library.cards.provenance import joined
from library.cards.read_order import is_broken, reads_facets
from library.cards.shall_be import DROPS

NO_ONE_ANGLE = "where one drop stands for no one angle"


def barred(job: Job) -> str:
    """What keeps a relief from being told of the tool as it came, as part of a sentence; empty where nothing does.

    Args:
        job: the card worked out.
    """
    is_even = joined(job.card.received.get("relief_form", ())) == "eccentric"
    if reads_facets(job) and not is_even:
        return f"the {_title(job)} is counted as ground flat, in facets, {NO_ONE_ANGLE}"
    if is_broken(job, is_even):
        return f"behind the edge of the {_title(job)} lies a margin or a second facet, {NO_ONE_ANGLE}"
    return ""


def why_untold(job: Job) -> str:
    """Why no relief stands behind the drops that were read, and what is missing to have one, in sentences.

    Args:
        job: the card worked out.

    Returns:
        Empty where nothing bars it, or no drop was read.
    """
    why, received = barred(job), job.card.received
    if not why or not any(text.strip() for key in DROPS for text in received.get(key, ())):
        return ""
    said = f"No relief is told from the drop: {why}."
    if is_broken(job, is_even=True):
        return said
    return (
        f"{said} If it fell evenly, as a cam or a swing leaves it, give the line Relief form as eccentric on the page "
        "Received, and on Wanted how it is made now."
    )


def _title(job: Job) -> str:
    surface = SURFACES.get(job.choice.surface)
    return surface.title if surface is not None else "surface"
