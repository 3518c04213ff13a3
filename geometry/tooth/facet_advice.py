"""Checks on the facets behind an edge: the gap kept, or what is wrong and what puts it right."""

from __future__ import annotations

from geometry.calculation import Check, Inputs, note, passed, stop
from geometry.cures import advise
from geometry.sentences import Amount, Rounding, angle, count, length
from geometry.tooth.facet_cures import ways_out
from geometry.tooth.facet_job import Job, complaints
from geometry.tooth.facet_plan import MOST_FACETS, depth_with


def checks(given: Inputs, job: Job) -> tuple[Check, ...]:
    """Say whether the facets keep the gap, and what to change where they do not.

    Args:
        given: the inputs of the calculation.
        job: the facets laid for them.

    Returns:
        The checks, the worst first.

    Example:
        >>> from geometry.tooth.facet_job import facet_job
        >>> tool = {"diameter": 12.0, "body_diameter": 12.7, "land_width": 1.2, "land_measured_as": "arc"}
        >>> given = Inputs({**tool, "relief_angle": 0.25, "primary_land": 0.8, "least_gap": 0.05})
        >>> print(checks(given, facet_job(given))[0].sentence)
        The first facet, carried on to the heel, keeps 0.1793 mm inside the circle: no second facet is needed.
    """
    wrong = complaints(given, job)
    if wrong:
        return tuple(_stop(given, job, one) for one in wrong)
    return (_kept(job), _grind(job), *_in_the_hole(given, job), *_one_more(job))


def _stop(given: Inputs, job: Job, wrong: str) -> Check:
    says, parts = {"back": _back, "primary": _primary, "deep": _deep}[wrong](given, job)
    ways = ways_out(given, job, wrong)
    if not ways:
        return stop(f"{says} {_NO_WAY[wrong]}", **parts)
    found = advise(ways)
    return stop(f"{says} {found.text}", cure=found.cure, **parts, **found.parts)


_NO_WAY = {
    "primary": "Neither its width nor its relief, nor both, put that right while the gap, the land and the second facet "
    "stay as they are: begin with a smaller least gap, and plan the facets anew.",
    "back": "No second facet, and no plan of more of them, puts that right within the gaps that are asked for: "
    "ask for a smaller least gap, or allow a deeper one.",
    "deep": "No other angle puts that right within the gaps that are asked for: ask for a smaller least gap, or allow a "
    "deeper one.",
}


def _back(given: Inputs, job: Job) -> tuple[str, dict[str, Amount | str]]:
    """The second facet, as it was given, does not keep the gap out to the heel."""
    found = job.numbers["least_gap_found"]
    parts: dict[str, Amount | str] = {"gap": length(abs(found)), "least": length(given.number("least_gap"))}
    if found < 0:
        return (
            "The heel stands {gap} proud of the circle, where {least} inside it is wanted: it will rub.",
            parts,
        )
    return "The heel lies only {gap} inside the circle, where {least} is wanted.", parts


def _primary(given: Inputs, job: Job) -> tuple[str, dict[str, Amount | str]]:
    """The primary land ends with less than the gap wanted behind it."""
    ends = job.facets[0].end_drop
    parts: dict[str, Amount | str] = {"gap": length(abs(ends)), "least": length(given.number("least_gap"))}
    if ends < 0:
        return (
            "The primary land comes back to the circle and ends {gap} proud of it, where {least} inside is wanted."
        ), parts
    if job.rest is not None:
        return (
            "The primary land ends only {gap} inside the circle, where {least} is wanted behind it; "
            "the facets planned keep {gap}, the most that it allows."
        ), parts
    return "The primary land ends only {gap} inside the circle, where {least} is wanted behind it.", parts


def _deep(given: Inputs, job: Job) -> tuple[str, dict[str, Amount | str]]:
    """A facet, as it was given, goes deeper than was allowed."""
    found, allowed = job.numbers["deepest_gap_found"], given.number("deepest_gap")
    says = "A facet goes {found} inside the circle, deeper than the {allowed} that you allow."
    return says, {"found": length(found), "allowed": length(allowed)}


def _kept(job: Job) -> Check:
    if len(job.facets) == 1:
        return passed(
            "The first facet, carried on to the heel, keeps {gap} inside the circle: no second facet is needed.",
            gap=length(job.heel_drop, Rounding.DOWN),
        )
    return passed(
        "With {facets} facets everything behind the primary land keeps {gap} or more inside the circle; "
        "the last facet is laid at {steepest}.",
        facets=count(len(job.facets)),
        gap=length(job.numbers["least_gap_found"], Rounding.DOWN),
        steepest=angle(job.facets[-1].angle),
    )


def _grind(job: Job) -> Check:
    return note(
        "The deepest place lies {deepest} inside the circle, where {cut} of the old body is ground away.",
        deepest=length(job.numbers["deepest_gap_found"]),
        cut=length(job.numbers["deepest_cut"]),
    )


def _in_the_hole(given: Inputs, job: Job) -> tuple[Check, ...]:
    if "hole_gap" not in job.numbers:
        return ()
    return (
        note(
            "In a hole of {hole} the back keeps {gap} or more from the wall.",
            hole=length(given.number("hole_diameter")),
            gap=length(job.numbers["hole_gap"], Rounding.DOWN),
        ),
    )


def _one_more(job: Job) -> tuple[Check, ...]:
    """Say how much shallower the back would be with one facet more, where that is so."""
    behind = len(job.facets) - 1
    if job.rest is None or behind >= MOST_FACETS:
        return ()
    depth = depth_with(job.rest, behind + 1)
    if depth is None:
        return ()
    return (
        note(
            "One facet more would leave more metal, going only {depth} deep: to have it planned so, allow a deepest "
            "gap of {depth}.",
            depth=length(depth, Rounding.UP),
        ),
    )
