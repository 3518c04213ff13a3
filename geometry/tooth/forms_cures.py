"""What puts right a form of relief that rubs or is too steep: every value tried with the other inputs as they are."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator

from geometry.calculation import Inputs
from geometry.cures import Way, that_help, way
from geometry.preconditions import GeometryError
from geometry.sentences import Rounding, angle, length
from geometry.tooth.facets import facet_between
from geometry.tooth.forms_job import FormsJob, complaints, forms_job
from geometry.tooth.heel_advice import HAIR, READABLE

NARROWER = 24
"""Into how many widths a land is cut to look for one that clears; the best is then closed in on."""


def ways_out(given: Inputs, job: FormsJob, wrong: str) -> tuple[Way, ...]:
    """The single changes that end a complaint and bring no new one.

    Args:
        given: the inputs as they are.
        job: the forms laid for them.
        wrong: a word of ``complaints``.

    Example:
        >>> tool = {"diameter": 12.0, "land_width": 2.0, "land_measured_as": "arc", "primary_land": 0.8}
        >>> angles = {"relief_angle": 0.1396, "secondary_relief_angle": 0.3, "compare_by": "edge-angle"}
        >>> given = Inputs({**tool, **angles})
        >>> [one.says for one in ways_out(given, forms_job(given), "flat-rubs")]
        ['narrow the land to {widest}', 'raise its relief above {enough}']
    """
    allowed = set(complaints(job)) - {wrong}

    def cures(other: Inputs) -> bool:
        return allowed.issuperset(complaints(forms_job(other)))

    return that_help(_ways(given, job, wrong, cures), given, cures)


def _ways(given: Inputs, job: FormsJob, wrong: str, cures: Callable[[Inputs], bool]) -> Iterator[Way]:
    diameter, (first, _) = given.number("diameter"), job.two
    if wrong == "primary-back":
        width = diameter * math.sin(first.angle) * (1 - HAIR)
        yield way("narrow it to {width}", "primary_land", "width", length(width, Rounding.DOWN))
        return
    widest = _widest(given, cures)
    if widest is not None:
        yield way("narrow the land to {widest}", "land_width", "widest", length(widest, Rounding.DOWN))
    if wrong == "flat-rubs":
        # A hair over half the land's angle, so that what is shown is enough by itself.
        enough = job.turned / 2 * (1 + HAIR)
        yield way("raise its relief above {enough}", "relief_angle", "enough", angle(enough, Rounding.UP))
    if wrong == "second-rubs" and job.turned - first.end < math.pi:
        steeper = facet_between(first.end, first.end_drop, job.turned, READABLE, diameter).angle
        says = "raise the second facet to {enough}"
        yield way(says, "secondary_relief_angle", "enough", angle(steeper, Rounding.UP))


def _widest(given: Inputs, cures: Callable[[Inputs], bool]) -> float | None:
    """The widest land, narrower than this one, that is free of the complaint."""

    def free(width: float) -> bool:
        try:
            return cures(given.but({"land_width": width}))
        except GeometryError:
            return False

    land = given.number("land_width")
    widths = [land * (NARROWER - part) / NARROWER for part in range(1, NARROWER)]
    low = next((width for width in widths if free(width)), None)
    if low is None:
        return None
    high = low + land / NARROWER
    for _ in range(30):
        middle = (low + high) / 2
        low, high = (middle, high) if free(middle) else (low, middle)
    return low * (1 - HAIR)
