"""What a comparison of relief form means at the machine."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from geometry.calculation import Check, Inputs, Row, passed, watch
from geometry.checking import GeometryError, refuse
from geometry.cures import either
from geometry.quantities import quantity
from geometry.sentences import Amount, Kind, Rounding, angle, length
from geometry.tooth import eccentric, flat
from geometry.tooth.facets import Facet, facet_between
from geometry.tooth.heel_advice import HAIR, READABLE
from geometry.tooth.land import land_width


def require_something_to_compare(turned: float, relief_angle: float) -> None:
    """Raise for a land of no width or no relief, where all forms are one.

    Args:
        turned: from edge to heel, in radians.
        relief_angle: at the edge, in radians.

    Raises:
        GeometryError: with what to give instead.

    Example:
        >>> require_something_to_compare(0.3, 0.1)
    """
    if turned <= 0:
        raise refuse("land_width", "The land has no width, so there is nothing to compare. Measure the land.")
    if relief_angle <= 0:
        raise refuse(
            "relief_angle",
            "Without relief every form rubs over the whole land. Choose a relief angle above {zero}.",
            {"zero": angle(0.0)},
        )


def not_steeper(relief_angle: float) -> GeometryError:
    """The error for a second facet no steeper than the primary land; the caller raises it.

    Example:
        >>> str(not_steeper(0.0))
        'The second facet must fall more steeply than the primary land. Give it more than 0 deg.'
    """
    return refuse(
        "secondary_relief_angle",
        "The second facet must fall more steeply than the primary land. Give it more than {angle}.",
        {"angle": angle(relief_angle, Rounding.UP)},
    )


def checks(
    given: Inputs, rows: Sequence[Row], two: tuple[Facet, Facet], outputs: Mapping[str, float]
) -> tuple[Check, ...]:
    """Say which form rubs, what the others need, and how much metal each leaves.

    Args:
        given: the inputs of the calculation.
        rows: eccentric, flat and two facets.
        two: the two facets.
        outputs: the numbers found.

    Returns:
        The checks: on the flat, on the two facets, on the metal, and on where the profiles cross.

    Example:
        >>> from geometry.running import run
        >>> from geometry.calculations import calculation
        >>> tool = {"diameter": 12.0, "relief_angle": 0.14, "land_width": 2.0, "primary_land": 0.8}
        >>> [check.state for check in run(calculation("relief-forms"), {**tool, "compare_by": "heel-drop"}).checks]
        ['pass', 'pass', 'pass', 'pass']
    """
    _, one, both = rows
    return (
        _flat(given, one, outputs),
        _second(given, both, two, outputs["land_angle"]),
        *_metal(one, both),
        _crossing(given, outputs),
    )


def _flat(given: Inputs, one: Row, outputs: Mapping[str, float]) -> Check:
    turned, relief = outputs["land_angle"], one.values["relief_angle"]
    if one.values["rub_angle"] <= turned:
        cures = ["narrow the land to {widest}"]
        parts: dict[str, Amount | str] = {
            "widest": length(outputs["clear_land_width"] * (1 - HAIR), Rounding.DOWN)
        }
        if turned / 2 < quantity("relief_angle").high:
            parts["enough"] = angle(turned / 2, Rounding.UP)
            cures.append("raise its relief above {enough}")
        cures.append("take one of the other forms")
        return watch(f"One flat rubs from {{widest}} behind the edge on. {either(cures)}", **parts)
    highest = quantity("relief_angle").high
    if relief > highest:
        return watch(
            "For the same drop at the heel one flat needs {relief} at the edge, more than the {highest} that an edge "
            "bears. Narrow the land to {widest}, or take one of the other forms.",
            relief=angle(relief),
            highest=angle(highest),
            widest=length(_widest_for_a_flat(given, turned, highest), Rounding.DOWN),
        )
    return passed(
        "One flat of {relief} clears: its heel lies {drop} inside the circle.",
        relief=angle(relief),
        drop=length(one.values["heel_drop"]),
    )


def _widest_for_a_flat(given: Inputs, turned: float, highest: float) -> float:
    """The widest land on which a flat of ``highest`` has the eccentric heel drop, in the measure given."""
    diameter = given.number("diameter")
    even, steep = eccentric.profile(given.number("relief_angle"), diameter), flat.profile(highest, diameter)
    low, high = 0.0, min(turned, 2 * highest)
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if steep(middle) > even(middle) else (low, middle)
    return land_width(low, diameter, given.choice("land_measured_as"))


def _second(given: Inputs, both: Row, two: tuple[Facet, Facet], turned: float) -> Check:
    """Whether the second facet clears out to the heel, and what fixes it where it does not."""
    diameter, (first, second) = given.number("diameter"), two
    if first.end_drop <= 0:
        return watch(
            "The primary land of the two facets is back on the circle before the second begins. Narrow it to {widest}.",
            widest=length(diameter * math.sin(first.angle) * (1 - HAIR), Rounding.DOWN),
        )
    if both.values["rub_angle"] > turned and second.angle > quantity("secondary_relief_angle").high:
        return watch(
            "For the same drop at the heel the second facet needs {second}, more than the {highest} of a second facet in "
            "use. Plan more than two facets behind the edge.",
            second=angle(second.angle),
            highest=angle(quantity("secondary_relief_angle").high),
        )
    if both.values["rub_angle"] > turned:
        return passed(
            "Two facets, the second at {second}, clear: their heel lies {drop} inside the circle.",
            second=angle(second.angle),
            drop=length(both.values["heel_drop"]),
        )
    widest = land_width(both.values["rub_angle"], diameter, given.choice("land_measured_as"))
    parts: dict[str, Amount | str] = {"widest": length(widest * (1 - HAIR), Rounding.DOWN)}
    cures = ["narrow the land to {widest}"]
    enough = _second_for(first, turned, diameter)
    if enough is not None:
        parts["enough"] = angle(enough, Rounding.UP)
        cures.append("raise the second facet to {enough}")
    else:
        cures.append("plan more than two facets")
    return watch(f"Two facets rub from {{widest}} behind the edge on. {either(cures)}", **parts)


def _second_for(first: Facet, turned: float, diameter: float) -> float | None:
    """The second angle that leaves a drop at the heel that an indicator can show, where one in use does."""
    if turned - first.end >= math.pi:
        return None
    enough = facet_between(first.end, first.end_drop, turned, READABLE, diameter).angle
    return enough if enough <= quantity("secondary_relief_angle").high else None


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
    return (passed(f"{text[0].upper()}{text[1:]} metal behind the edge than an eccentric relief.", **parts),)


def _crossing(given: Inputs, outputs: Mapping[str, float]) -> Check:
    if "crossing_angle" not in outputs:
        return passed("Over this land the two facets lie nowhere deeper than the eccentric relief.")
    at = land_width(outputs["crossing_angle"], given.number("diameter"), given.choice("land_measured_as"))
    return passed(
        "From {at} behind the edge on the two facets lie deeper than the eccentric relief.", at=length(at)
    )
