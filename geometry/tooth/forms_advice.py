"""Checks on a comparison of relief forms."""

from __future__ import annotations

import math

from geometry.calculation import Check, Inputs, Row, note, passed, stop, watch
from geometry.cures import advise, either
from geometry.quantities import quantity
from geometry.sentences import Amount, Kind, Rounding, angle, length
from geometry.tooth.forms_cures import ways_out
from geometry.tooth.forms_job import FormsJob, complaints
from geometry.tooth.land import land_width

Said = tuple[str, dict[str, Amount | str], str]


def checks(given: Inputs, job: FormsJob) -> tuple[Check, ...]:
    """Say which form rubs, what the others need, and how much metal each leaves.

    Args:
        given: the inputs of the calculation.
        job: the three forms laid for them.

    Returns:
        The checks: on the flat, on the two facets, on the metal, and on where the profiles cross.

    Example:
        >>> from geometry.tooth.forms_job import forms_job
        >>> tool = {"diameter": 12.0, "relief_angle": 0.14, "land_width": 2.0, "land_measured_as": "arc"}
        >>> given = Inputs({**tool, "primary_land": 0.8, "compare_by": "heel-drop"})
        >>> [check.state for check in checks(given, forms_job(given))]
        ['pass', 'pass', 'note', 'note']
    """
    wrong = complaints(job)
    flat = next((_told(given, job, one) for one in wrong if one.startswith("flat")), _flat_clears(job))
    both = next((_told(given, job, one) for one in wrong if not one.startswith("flat")), _both_clear(job))
    return (flat, both, *_metal(*job.rows[1:]), _crossing(given, job))


def _flat_clears(job: FormsJob) -> Check:
    return passed(
        "One flat of {relief} clears: its heel lies {drop} inside the circle.",
        relief=angle(job.one.angle),
        drop=length(job.one.end_drop),
    )


def _both_clear(job: FormsJob) -> Check:
    second = job.two[1]
    return passed(
        "Two facets, the second at {second}, clear: their heel lies {drop} inside the circle.",
        second=angle(second.angle),
        drop=length(second.end_drop),
    )


def _told(given: Inputs, job: FormsJob, wrong: str) -> Check:
    says, parts, other = _SAYS[wrong](given, job)
    found = advise(ways_out(given, job, wrong))
    kind = stop if wrong == "second-square" else watch
    text = either([*found.words, other])
    return kind(f"{says} {text}", cure=found.cure, **parts, **found.parts)


def _another(job: FormsJob) -> str:
    """The forms that are left: an eccentric relief always clears, the others only where nothing is wrong with them."""
    return "take an eccentric relief" if len(complaints(job)) > 1 else "take one of the other forms"


def _flat_rubs(given: Inputs, job: FormsJob) -> Said:
    at = _behind(given, job.rows[1])
    return "One flat rubs from {at} behind the edge on.", {"at": at}, _another(job)


def _flat_steep(given: Inputs, job: FormsJob) -> Said:
    says = "For the same drop at the heel one flat needs {needs} at the edge, more than the {highest} that an edge bears."
    parts: dict[str, Amount | str] = {
        "needs": angle(job.one.angle),
        "highest": angle(quantity("relief_angle").high),
    }
    return says, parts, _another(job)


def _primary_back(given: Inputs, job: FormsJob) -> Said:
    says = "The primary land of the two facets is back on the circle before the second begins."
    return says, {}, _another(job)


def _second_square(given: Inputs, job: FormsJob) -> Said:
    says = (
        "For the same drop at the heel the second facet needs {needs}: at {square} or more it would undercut the land, "
        "which cannot be ground."
    )
    square = angle(math.pi / 2)
    return says, {"needs": angle(job.two[1].angle), "square": square}, "plan more than two facets"


def _second_steep(given: Inputs, job: FormsJob) -> Said:
    says = "For the same drop at the heel the second facet needs {needs}, more than the {highest} of a second facet in use."
    highest = angle(quantity("secondary_relief_angle").high)
    return says, {"needs": angle(job.two[1].angle), "highest": highest}, "plan more than two facets"


def _second_rubs(given: Inputs, job: FormsJob) -> Said:
    at = _behind(given, job.rows[2])
    return "Two facets rub from {at} behind the edge on.", {"at": at}, "plan more than two facets"


_SAYS = {
    "flat-rubs": _flat_rubs,
    "flat-steep": _flat_steep,
    "primary-back": _primary_back,
    "second-square": _second_square,
    "second-steep": _second_steep,
    "second-rubs": _second_rubs,
}


def _behind(given: Inputs, row: Row) -> Amount:
    """Where a form begins to rub, in the measure of the land; a limit, as the widest land that clears is."""
    at = land_width(row.values["rub_angle"], given.number("diameter"), given.choice("land_measured_as"))
    return length(at, Rounding.DOWN)


def _metal(one: Row, both: Row) -> tuple[Check, ...]:
    parts: dict[str, Amount | str] = {}
    says = []
    for name, row in (("one flat", one), ("two facets", both)):
        if "metal_more" in row.values:
            key = name.split()[1]
            more = row.values["metal_more"]
            parts[key] = Amount(abs(more), Kind.AREA)
            verb = "leaves" if name == "one flat" else "leave"
            says.append(f"{name} {verb} {{{key}}} {'more' if more >= 0 else 'less'}")
    if not says:
        return ()
    text = " and ".join(says)
    return (note(f"{text[0].upper()}{text[1:]} metal behind the edge than an eccentric relief.", **parts),)


def _crossing(given: Inputs, job: FormsJob) -> Check:
    if "crossing_angle" not in job.outputs:
        return note("Over this land the two facets lie nowhere deeper than the eccentric relief.")
    at = land_width(job.outputs["crossing_angle"], given.number("diameter"), given.choice("land_measured_as"))
    return note(
        "From {at} behind the edge on the two facets lie deeper than the eccentric relief.", at=length(at)
    )
