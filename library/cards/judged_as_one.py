"""A land that is to have a second facet, and is judged as one flat as long as nobody says where that begins."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.role import HEEL
from geometry.sentences import Kind
from geometry.surfaces import SURFACES
from library.calc.surfaces import title_of
from library.cards.chosen import INCLINED
from library.cards.job import Job
from library.cards.reading_issues import card_issue
from library.cards.step import Step
from library.issue import Issue
from library.units.show import show

PRIMARY, SECOND = "primary_land", "secondary_relief_angle"
"""How wide the first facet is, and how the one behind it falls."""


def judged_as_one(job: Job) -> Iterator[Issue]:
    """A watch at the calculation that knows both facets, while it wants the width of the first.

    Until then the heel is judged as if the first facet went on to it, which says nothing of the second.

    Args:
        job: the card worked out.
    """
    heel = job.doing(HEEL)
    if job.card.done or heel is None or not heel.works or heel.sheet.role.replaces:
        return
    if job.choice.method == INCLINED:
        yield from _beside_an_inclined_wheel(job, heel)
    elif _is_flat(job):
        yield from _for_want_of_a_width(job, heel)


def _for_want_of_a_width(job: Job, heel: Step) -> Iterator[Issue]:
    for step in job.steps:
        wants = {one.key for one in step.answer.issues if one.missing}
        second, first = step.answer.inputs.get(SECOND), heel.answer.inputs.get("relief_angle")
        if not step.in_use or heel.sheet.name not in step.sheet.role.replaces or PRIMARY not in wants:
            continue
        if second is not None and first is not None and isinstance(first.value, float):
            surface = step.answer.surface or job.choice.surface
            yield card_issue(
                f"settings.{step.sheet.name}",
                f"{title_of(SECOND, surface)}: {second.text} is wanted and not judged: the heel is judged as one flat of "
                f"{show(first.value, Kind.ANGLE, job.display)} as long as the primary land has no width. Give it on the page Set.",
                "warning",
            )


def _beside_an_inclined_wheel(job: Job, heel: Step) -> Iterator[Issue]:
    """What no calculation judges: a second relief behind the one that an inclined wheel makes."""
    surface = SURFACES.get(job.choice.surface)
    second = job.card.wanted.get(surface.second_key) if surface is not None else None
    if second is not None and second.value.strip():
        yield card_issue(
            f"settings.{heel.sheet.name}",
            f"{title_of(SECOND, job.choice.surface)}: {second.value} is wanted and not judged: with an inclined wheel the "
            "heel is judged by the first relief alone.",
            "warning",
        )


def _is_flat(job: Job) -> bool:
    """Whether the job grinds a surface in flats."""
    heel = job.doing(HEEL)
    form = heel.answer.inputs.get("relief_form") if heel is not None else None
    return job.choice.surface in SURFACES and form is not None and form.value == "flat"
