"""Where a card takes the angle at which an edge lies, said where that is wanted for the relief behind a reading."""

from __future__ import annotations

from collections.abc import Sequence

from geometry.calculation import Calculation, Field
from geometry.quantities import quantity
from geometry.surfaces import SURFACES, Surface
from library.calc.surfaces import LAND, title_of
from library.cards.edge_set import sets_edge
from library.cards.job import Job
from library.cards.step import Step
from library.issue import Issue


def edge_wanted(job: Job, issues: Sequence[Issue]) -> str:
    """What stands in place of a relief for want of the angle of its edge: in which line that is given, and how often.

    Args:
        job: the card worked out.
        issues: of the calculation that finds the relief.

    Returns:
        A sentence; empty where that angle is not what is missing.
    """
    surface = SURFACES.get(job.choice.surface)
    if surface is None or not any(one.key == surface.edge_key and one.missing for one in issues):
        return ""
    key, title = surface.edge_key, quantity(surface.edge_key).title
    following = sets_edge(job.steps, key)
    if following is not None and (first := _first_missing(following, key)):
        given = title_of(first, surface.key)
        return (
            f"The relief found stands here once the {surface.title} has its angle, which follows from the {given.lower()}: "
            f"on the page {_page_of(job, first)}, in the line {given}."
        )
    asking = [one for one in job.steps if one.in_use and one.sheet.field(key) is not None]
    step = next((one for one in asking if edges_of(one, key) is not None), next(iter(asking), None))
    if step is None:
        return (
            f"The relief found stands here once the {title.lower()} of the {surface.title} is given, in a line of "
            "its own on the page Received."
        )
    if key in step.answer.inputs:
        return f"Not every {surface.title} lies at the same angle, so no one relief stands behind a reading."
    several = edges_of(step, key)
    if several is None:
        return f"The relief found stands here once the {surface.title} has its angle: on the page Set, in the line {title}."
    return (
        f"The relief found stands here once each {surface.title} has its angle: on the page Set, in the line "
        f"{titled(several)}, {wanted_of(several, _count(step))}."
    )


def _first_missing(step: Step, key: str) -> str:
    """What the calculation that finds the angle of an edge still wants first; empty where that is the angle itself."""
    return next((one.key for one in step.answer.issues if one.missing and one.key not in {"", key}), "")


def _page_of(job: Job, key: str) -> str:
    """On which page of a card an input is given."""
    if key in job.card.wanted:
        return "Wanted"
    return "Received" if key in {"diameter", LAND} else "Set"


def edges_of(step: Step, key: str) -> Surface | None:
    """The surface of which a calculation takes an angle for each; nothing where an input is not such angles."""
    field = step.sheet.field(key)
    surface = _surface_of(step.sheet)
    return surface if surface is not None and _is_many(field) and surface.edge_key == key else None


def _surface_of(sheet: Calculation) -> Surface | None:
    served = sheet.surfaces or sheet.belongs_on
    return SURFACES.get(served[0]) if len(served) == 1 else None


def _is_many(field: Field | None) -> bool:
    return field is not None and field.many


def titled(surface: Surface) -> str:
    """What a line for the angles of several edges is called."""
    return f"{surface.title[:1].upper()}{surface.title[1:]} angles"


def hint_of(step: Step, surface: Surface) -> str:
    """How many angles belong into such a line, with an example."""
    count = _count(step)
    such = ", ".join(["90"] * min(max(count, 2), 4))
    said = wanted_of(surface, count)
    return f"{said[:1].upper()}{said[1:]}, such as {such} deg; or one for all."


def wanted_of(surface: Surface, count: int) -> str:
    """How many angles are wanted, in words.

    Example:
        >>> wanted_of(SURFACES["shoulder"], 2), wanted_of(SURFACES["shoulder"], 0)
        ('one for each of the 2 shoulders from the point up', 'one for each shoulder from the point up')
    """
    each = f"of the {count} {surface.title}s" if count > 1 else surface.title
    return f"one for each {each} from the point up"


def _count(step: Step) -> int:
    """How many edges there are between the diameters of a tool; 0 where nobody can tell."""
    steps = step.answer.inputs.get("diameter")
    return len(steps.value) - 1 if steps is not None and isinstance(steps.value, tuple) else 0
