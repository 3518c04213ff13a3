"""Which calculations of a job tell what the indicator reads, and on which surface each of them reads it."""

from __future__ import annotations

from geometry.role import FACETS, HEEL
from geometry.surfaces import SURFACES
from library.cards.job import Job
from library.cards.step import Step


def steps_read(job: Job) -> list[Step]:
    """The calculations with readings from edge to heel: first that of the heel, then others on the ground surface.

    Args:
        job: the card worked out; what stops or is left out reads nothing.
    """
    found = [one for one in job.steps if _is_read(one)]
    return sorted(
        found, key=lambda one: (one.sheet.role.does != HEEL, surface_read(job, one) != job.choice.surface)
    )


def surface_read(job: Job, step: Step) -> str:
    """The word of the surface that a calculation reads; that of the job where it asks for none."""
    return step.surface_on(job.choice.surface)


def title_read(job: Job, step: Step) -> str:
    """What a calculation reads in a word: its surface, or the facets that are laid on it."""
    surface = SURFACES.get(surface_read(job, step))
    said = surface.title if surface is not None else step.sheet.title.lower()
    return f"{said}, facets" if step.sheet.role.rows == FACETS else said


def reads_facets(job: Job) -> bool:
    """Whether the surface that is ground is read as facets, so that a reading stands for the relief of none of them.

    A lip that lies ahead of the axis is such a one already with a single facet.
    """
    return any(
        one.works and one.sheet.role.of_facets and surface_read(job, one) == job.choice.surface
        for one in job.steps
    )


def _is_read(step: Step) -> bool:
    return (
        step.works
        and not step.stopped
        and step.answer.result is not None
        and bool(step.answer.result.stations)
    )
