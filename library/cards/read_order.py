"""Which calculations of a job tell what the indicator reads, on which surface and on which step each of them reads it."""

from __future__ import annotations

from geometry.role import FACETS, HEEL
from geometry.sentences import Kind
from geometry.surfaces import SURFACES
from library.cards.chosen import wants_relief
from library.cards.job import Job
from library.cards.model import Setting
from library.cards.shoulders import shoulder_counted
from library.cards.sizes import sizes_of
from library.cards.step import Step
from library.units.show import show
from library.units.system import Display


def steps_read(job: Job) -> list[Step]:
    """The calculations with readings from edge to heel: first that of the heel, then others on the ground surface.

    Args:
        job: the card worked out; what stops or is left out reads nothing.
    """
    found = [one for one in job.steps if _is_read(one) and _is_ground(job, one)]
    return sorted(
        found, key=lambda one: (one.sheet.role.does != HEEL, surface_read(job, one) != job.choice.surface)
    )


def surface_read(job: Job, step: Step) -> str:
    """The word of the surface that a calculation reads; that of the job where it asks for none."""
    return step.surface_on(job.choice.surface)


def title_read(job: Job, step: Step) -> str:
    """What a calculation reads in a word: its surface, which of several shoulders, or the facets that are laid on it."""
    surface = SURFACES.get(surface_read(job, step))
    said = surface.title if surface is not None else step.sheet.title.lower()
    said = shoulder_counted(job.steps, step.answer) or said
    return f"{said}, facets" if step.sheet.role.rows == FACETS else said


def step_read(job: Job, step: Step, display: Display) -> str:
    """The diameter of the step that a calculation reads on; empty where the tool has no steps, or nobody can tell."""
    found = step.answer.inputs.get("diameter")
    number = found.value if found is not None and len(sizes_of(job.card.tool.size)) > 1 else None
    return show(number, Kind.LENGTH, display) if isinstance(number, float) else ""


def reads_facets(job: Job) -> bool:
    """Whether the surface that is ground is read as facets, so that a reading stands for the relief of none of them.

    A lip that lies ahead of the axis is such a one already with a single facet.
    """
    return any(
        one.works and _lays_facets(one) and surface_read(job, one) == job.choice.surface for one in job.steps
    )


def is_broken(job: Job, is_even: bool) -> bool:
    """Whether the land that was read begins with a margin, or goes on in a second facet, so that no one relief is on it.

    Args:
        job: the card worked out.
        is_even: whether the land is known to have fallen evenly, which no facets do.
    """
    judged = job.doing(HEEL)
    if judged is None:
        return False
    margin, form = judged.answer.inputs.get("margin_width"), judged.answer.inputs.get("relief_form")
    has_margin = margin is not None and margin.value != 0 and (form is None or form.value == "eccentric")
    is_in_facets = bool(judged.sheet.role.replaces) and "secondary_relief_angle" in judged.answer.inputs
    return has_margin or (not is_even and is_in_facets)


def _lays_facets(step: Step) -> bool:
    role = step.sheet.role
    return role.of_facets or role.facets_by in step.answer.inputs


def _is_ground(job: Job, step: Step) -> bool:
    """Whether what a calculation reads is ground in this job, or is no relief at all, as the lead of a thread.

    Beside the chosen surface those are ground whose relief a person wants, or for which he typed something.
    """
    surface = surface_read(job, step)
    row = SURFACES.get(surface)
    if row is None or surface == job.choice.surface or not job.choice.surface or _is_lead(step):
        return True
    return wants_relief(job.card, row) or bool(job.card.settings.get(step.sheet.name, Setting()).typed)


def _is_lead(step: Step) -> bool:
    """Whether a calculation reads the lead of a thread and no drop."""
    result = step.answer.result
    return (
        result is not None
        and bool(result.stations)
        and not any("drop" in key for key in result.stations[0].readings)
    )


def _is_read(step: Step) -> bool:
    return (
        step.works
        and not step.stopped
        and step.answer.result is not None
        and bool(step.answer.result.stations)
    )
