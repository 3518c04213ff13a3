"""What stands over the readings on the way: on which diameter, on which surface, and where the indicator points."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from geometry.sentences import Kind
from geometry.surfaces import SURFACES
from library.calc.taper_reamers import grows
from library.cards.heels import land_read
from library.cards.job import Job
from library.cards.read_order import step_read, steps_read, title_read
from library.cards.shall_be import indicator_said
from library.cards.step import Step
from library.units.show import show
from library.units.system import Display


def heading(job: Job, display: Display) -> str:
    """What stands over the readings: on which step and land, from where they count, where the indicator of the drop points."""
    steps = {step_read(job, step, display) for step in steps_read(job)}
    if steps == {""}:
        steps = {_of_several(job, display)}
    # Where several steps are read, each stands over its own table.
    at = f" at {one} diameter" if len(steps) == 1 and (one := next(iter(steps))) else ""
    if land := land_read(job):
        return f"Read{at}, {land}, zero at the edge; drop: indicator {indicator_said(job)}"
    return f"Read{at or ' on the way'}, zero at the edge; drop: indicator {indicator_said(job)}"


def _of_several(job: Job, display: Display) -> str:
    """The diameter that the readings are for, on a cone or a tool that cuts a taper; empty where all along the edge has one."""
    surface, step = SURFACES.get(job.choice.surface), next(iter(steps_read(job)), None)
    known = step.answer.inputs.get("diameter") if step is not None else None
    is_cone = surface is not None and surface.edge_key == "included_angle"
    if known is None or not isinstance(known.value, float) or not (is_cone or _cuts_a_taper(job)):
        return ""
    return show(known.value, Kind.LENGTH, display)


def _cuts_a_taper(job: Job) -> bool:
    """Whether a calculation of the job counts with a tool that is larger toward its back."""
    return any(grows(step.answer.inputs) for step in job.steps if step.in_use)


def surfaces_read(job: Job, steps: Sequence[Step], told: Iterable[str], display: Display) -> str:
    """What is read in a table, and on which step of a tool with steps; each for itself where these are not alike.

    Args:
        job: the card worked out.
        steps: the calculations that are laid side by side in the table.
        told: the readings that have a column; a surface with none of them, as that of a lead beside a drop, is not named.
        display: the units of lengths.
    """
    columns = set(told)
    read = [step for step in steps if not columns.isdisjoint(_readings(step))]
    names = [title_read(job, step) for step in read]
    places = [step_read(job, step, display) for step in read]
    if len(set(places)) > 1:
        return ", ".join(f"{name} at {at}" for name, at in zip(names, places, strict=True))
    name = ", ".join(dict.fromkeys(names))
    return f"{name} at {places[0]}" if places[0] else name


def _readings(step: Step) -> Iterable[str]:
    """The readings that a calculation has at each place."""
    result = step.answer.result
    return result.stations[0].readings if result is not None and result.stations else ()
