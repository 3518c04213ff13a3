"""What puts right facets that do not keep the gap, or go too deep: every value tried with the other inputs as they are."""

from __future__ import annotations

import math
from collections.abc import Iterator

from geometry.calculation import Inputs
from geometry.cures import Step, Way, that_help, way
from geometry.quantities import quantity
from geometry.sentences import Rounding, angle, length
from geometry.tooth import flat
from geometry.tooth.facet_job import Job, complaints, facet_job
from geometry.tooth.facets import Facet, facet_between, facet_of_width
from geometry.tooth.heel_advice import READABLE
from geometry.tooth.land import land_width

LEAVE_OUT = way("leave the second angle out to have the facets planned", "secondary_relief_angle")


def ways_out(given: Inputs, job: Job, wrong: str) -> tuple[Way, ...]:
    """The ways that end a complaint and bring no new one: single changes, or else the first pair of changes that does.

    Args:
        given: the inputs as they are.
        job: the facets laid for them.
        wrong: ``back``, ``primary`` or ``deep``, of ``complaints``.

    Returns:
        The ways; none where nothing that is named here helps.

    Example:
        >>> tool = {"diameter": 12.0, "body_diameter": 12.7, "land_width": 8.0, "land_measured_as": "arc"}
        >>> given = Inputs({**tool, "relief_angle": 0.1745, "primary_land": 2.2, "least_gap": 0.05})
        >>> [one.says for one in ways_out(given, facet_job(given), "primary")][0]
        'narrow the primary land to {width}'
    """
    allowed = set(complaints(given, job)) - {wrong}

    def cures(other: Inputs) -> bool:
        return allowed.issuperset(complaints(other, facet_job(other)))

    single = {"back": _for_the_back, "primary": _for_the_primary, "deep": _for_the_depth}[wrong]
    found = that_help(single(given, job), given, cures)
    if found:
        return found
    return next((pair for one in _pairs(given, job) if (pair := that_help([one], given, cures))), ())


def _for_the_primary(given: Inputs, job: Job) -> Iterator[Way]:
    radius, least, first = given.number("diameter") / 2, given.number("least_gap"), job.facets[0]
    yield from _width(radius, least, first)
    # A primary land cut off by the heel or the old body is asked about as wide as it is wanted, not as far as it came.
    width = max(first.width, given.number("primary_land"))
    steeper = _relief_for(radius, least, width, job.turned)
    if steeper is not None:
        says = "raise the relief of the primary land to {relief}"
        yield way(says, "relief_angle", "relief", angle(steeper, Rounding.UP))
    yield from _accepted(job, first.end_drop)


def _width(radius: float, least: float, first: Facet) -> Iterator[Way]:
    """The width at which a facet of this angle lies deep enough.

    Derived: along the facet the gap is wanted where ``s^2 - 2 R s sin(a) + g (2 R - g) = 0``.
    """
    middle = radius * math.sin(first.angle)
    under = middle * middle - least * (2 * radius - least)
    if under <= 0:
        return
    wide = middle + math.sqrt(under)
    if first.width > middle:
        says = "narrow the primary land to {width}"
        yield way(says, "primary_land", "width", length(wide, Rounding.DOWN))
    else:
        narrow = least * (2 * radius - least) / wide
        yield way("widen the primary land to {width}", "primary_land", "width", length(narrow, Rounding.UP))


def _relief_for(radius: float, least: float, width: float, turned: float) -> float | None:
    """The relief at which a facet of this width ends deep enough; nothing when no sensible one does."""
    across = 2 * radius * width
    # A width of next to nothing, times the radius, may be nothing at all.
    if across <= 0:
        return None
    sine = (width * width + least * (2 * radius - least)) / across
    if sine > math.sin(quantity("relief_angle").high):
        return None
    relief = math.asin(sine)
    if facet_of_width(0.0, 0.0, relief, width, 2 * radius).end > turned:
        # Laid so steeply the facet comes to the heel before its width is up, so the heel has to lie deep enough.
        relief = flat.relief_angle_from_drop(least, turned, 2 * radius)
    return relief


def _accepted(job: Job, kept: float) -> Iterator[Way]:
    """A gap as it is found, taken for the least one, where an indicator can show it."""
    kept = min(kept, job.numbers["least_gap_found"])
    if kept >= READABLE:
        says = "ask for a least gap of {accepted}"
        yield way(says, "least_gap", "accepted", length(kept, Rounding.DOWN))


def _for_the_back(given: Inputs, job: Job) -> Iterator[Way]:
    diameter, least, last = given.number("diameter"), given.number("least_gap"), job.facets[-1]
    if job.turned - last.start < math.pi:
        enough = facet_between(last.start, last.start_drop, job.turned, least, diameter).angle
        says = "raise the second facet to {enough}"
        yield way(says, "secondary_relief_angle", "enough", angle(enough, Rounding.UP))
    reach = last.angle + math.acos(min(1.0, last.height / (diameter / 2 - least)))
    if last.start < reach < job.turned:
        widest = land_width(reach, diameter, given.choice("land_measured_as"))
        yield way("narrow the land to {widest}", "land_width", "widest", length(widest, Rounding.DOWN))
    yield LEAVE_OUT


def _for_the_depth(given: Inputs, job: Job) -> Iterator[Way]:
    radius, allowed, last = given.number("diameter") / 2, given.number("deepest_gap"), job.facets[-1]
    near = max(0.0, radius - allowed)
    if len(job.facets) == 1:
        flatter = math.acos(min(1.0, near / radius))
        says = "lay it no steeper than {steepest}"
        yield way(says, "relief_angle", "steepest", angle(flatter, Rounding.DOWN))
    else:
        steepest = last.start + math.acos(min(1.0, near / (radius - last.start_drop)))
        says = "lay the second facet no steeper than {steepest}"
        yield way(says, "secondary_relief_angle", "steepest", angle(steepest, Rounding.DOWN))
    yield way(
        "allow at least {enough}",
        "deepest_gap",
        "enough",
        length(job.numbers["deepest_gap_found"], Rounding.UP),
    )
    if given.has("secondary_relief_angle"):
        yield LEAVE_OUT


def _pairs(given: Inputs, job: Job) -> Iterator[Way]:
    """Changes that only help together: the primary land laid to its deepest place, alone, planned anew, or with less gap."""
    radius, least = given.number("diameter") / 2, given.number("least_gap")
    highest = quantity("relief_angle").high
    deepest = math.acos(max(-1.0, 1 - least / radius))
    for relief in sorted({deepest, min(deepest + math.radians(1), highest), highest}):
        for share in (1.0, 0.5):
            yield from _laid(radius * math.sin(relief) * share, relief)
    for steep in (given.number("relief_angle"), highest):
        for gap in (least / 2, least / 4, least / 10, least / 100):
            yield from _with_less_gap(steep, gap, radius, given)


def _laid(width: float, relief: float) -> Iterator[Way]:
    says = "make the primary land {width} wide and raise its relief to {relief}"
    steps = (
        Step("primary_land", "width", length(width)),
        Step("relief_angle", "relief", angle(relief, Rounding.UP)),
    )
    yield Way(says, steps)
    yield Way(f"{says}, and leave the second angle out", (*steps, Step("secondary_relief_angle")))


def _with_less_gap(relief: float, gap: float, radius: float, given: Inputs) -> Iterator[Way]:
    less = Step("least_gap", "accepted", length(gap, Rounding.DOWN))
    wide = Step("primary_land", "width", length(radius * math.sin(relief)))
    steep = Step("relief_angle", "relief", angle(relief, Rounding.DOWN))
    if relief == given.number("relief_angle"):
        yield Way("ask for a least gap of {accepted} and make the primary land {width} wide", (less, wide))
        return
    yield Way("ask for a least gap of {accepted} and raise the relief to {relief}", (less, steep))
    yield Way(
        "ask for a least gap of {accepted}, raise the relief to {relief} and make the primary land {width} wide",
        (less, steep, wide),
    )
    yield Way(
        "ask for a least gap of {accepted}, raise the relief to {relief}, make the primary land {width} wide "
        "and leave the second angle out",
        (less, steep, wide, Step("secondary_relief_angle")),
    )
