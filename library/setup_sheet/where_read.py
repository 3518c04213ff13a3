"""On which step of a tool, and on which land, the indicator is read on the way from the edge to the heel."""

from __future__ import annotations

from library.cards.heels import land_read
from library.cards.job import Job
from library.cards.read_order import step_read, steps_read
from library.cards.shall_be import indicator_said
from library.units.system import Display


def heading(job: Job, display: Display) -> str:
    """What stands over the readings: on which step and land, from where they count, where the indicator of the drop points."""
    steps = {step_read(job, step, display) for step in steps_read(job)}
    # Where several steps are read, each stands over its own table.
    at = f" at {one} diameter" if len(steps) == 1 and (one := next(iter(steps))) else ""
    if land := land_read(job):
        return f"Read{at}, {land}, zero at the edge; drop: indicator {indicator_said(job)}"
    return f"Read{at or ' on the way'}, zero at the edge; drop: indicator {indicator_said(job)}"
