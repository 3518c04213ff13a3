"""What the facets behind an edge mean at the machine, and which value fixes what is wrong with them."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from geometry.calculation import Check, Inputs, passed, stop
from geometry.checking import GeometryError, refuse
from geometry.quantities import quantity
from geometry.sentences import Amount, Rounding, angle, count, length
from geometry.tooth import flat
from geometry.tooth.back import Back
from geometry.tooth.facet_plan import MOST_FACETS, depth_with
from geometry.tooth.facets import Facet, facet_between, facet_of_width
from geometry.tooth.heel_advice import READABLE, either
from geometry.tooth.land import land_width

ROUNDING = 1e-9
"""The gap in mm that is forgiven, because it comes from the arithmetic and not from the tool."""


def checks(
    given: Inputs, facets: Sequence[Facet], turned: float, outputs: Mapping[str, float]
) -> tuple[Check, ...]:
    """Say whether the facets keep the gap, and what to change where they do not.

    Args:
        given: the inputs of the calculation.
        facets: one behind the other, the primary land first.
        turned: from the edge to the heel, in radians.
        outputs: the numbers found for these facets.

    Returns:
        The checks, the worst first.

    Example:
        >>> given = Inputs({"least_gap": 0.05})
        >>> facet = facet_of_width(0.0, 0.0, 0.25, 1.0, 12.0)
        >>> outputs = {"least_gap_found": 0.1, "deepest_gap_found": 0.2, "deepest_cut": 0.5, "heel_drop": 0.1}
        >>> print(checks(given, [facet], facet.end, outputs)[0].sentence)
        The first facet, carried on to the heel, keeps 0.1 mm inside the circle: no second facet is needed.
    """
    least = given.number("least_gap")
    if facets[0].end_drop < least - ROUNDING:
        return (*_worse_back(given, facets, turned, outputs), _short_primary(given, facets, turned))
    if outputs["least_gap_found"] < least - ROUNDING:
        return (_short_back(given, facets, turned, outputs["least_gap_found"]),)
    if outputs["deepest_gap_found"] > given.number_or("deepest_gap", math.inf) + ROUNDING:
        return (_too_deep(given, facets[-1], outputs["deepest_gap_found"]),)
    return (_kept(facets, outputs), _grind(outputs), *_in_the_hole(given, outputs))


def _worse_back(
    given: Inputs, facets: Sequence[Facet], turned: float, outputs: Mapping[str, float]
) -> tuple[Check, ...]:
    """The stop for a back that lies even further out than a primary land that is short of the gap already."""
    found = outputs["least_gap_found"]
    if len(facets) == 1 or found >= facets[0].end_drop - ROUNDING:
        return ()
    return (_short_back(given, facets, turned, found),)


def _too_deep(given: Inputs, last: Facet, found: float) -> Check:
    """The stop for a facet, as it was given, that goes deeper than was allowed."""
    radius, allowed = given.number("diameter") / 2, given.number("deepest_gap")
    steepest = last.start + math.acos(min(1.0, max(0.0, radius - allowed) / (radius - last.start_drop)))
    return stop(
        "A facet goes {found} inside the circle, deeper than the {allowed} that you allow. Lay it no steeper than "
        "{steepest}, or allow {enough}.",
        found=length(found),
        allowed=length(allowed),
        steepest=angle(steepest, Rounding.DOWN),
        enough=length(found, Rounding.UP),
    )


def _kept(facets: Sequence[Facet], outputs: Mapping[str, float]) -> Check:
    if len(facets) == 1:
        return passed(
            "The first facet, carried on to the heel, keeps {gap} inside the circle: no second facet is needed.",
            gap=length(outputs["heel_drop"], Rounding.DOWN),
        )
    return passed(
        "With {facets} facets everything behind the primary land keeps {gap} or more inside the circle; "
        "the last facet is laid at {steepest}.",
        facets=count(len(facets)),
        gap=length(outputs["least_gap_found"], Rounding.DOWN),
        steepest=angle(facets[-1].angle),
    )


def _grind(outputs: Mapping[str, float]) -> Check:
    return passed(
        "The deepest place lies {deepest} inside the circle, where {cut} of the old body is ground away.",
        deepest=length(outputs["deepest_gap_found"]),
        cut=length(outputs["deepest_cut"]),
    )


def _in_the_hole(given: Inputs, outputs: Mapping[str, float]) -> tuple[Check, ...]:
    if "hole_gap" not in outputs:
        return ()
    return (
        passed(
            "In a hole of {hole} the back keeps {gap} or more from the wall.",
            hole=length(given.number("hole_diameter")),
            gap=length(outputs["hole_gap"], Rounding.DOWN),
        ),
    )


def one_more(rest: Back, behind: int) -> tuple[Check, ...]:
    """Say how much shallower the back would be with one facet more, where that is so.

    Args:
        rest: what lies behind the primary land.
        behind: how many facets were planned there.

    Returns:
        One check, or none.

    Example:
        >>> one_more(Back(12.0, 0.167, 0.166, 2.0, 0.1, 0.25), 1)[0].state
        'pass'
    """
    depth = depth_with(rest, behind + 1) if behind < MOST_FACETS else None
    if depth is None:
        return ()
    return (
        passed(
            "One facet more would leave more metal, going only {depth} deep: to have it planned so, allow a deepest "
            "gap of {depth}.",
            depth=length(depth, Rounding.UP),
        ),
    )


def not_steeper(first: Facet) -> GeometryError:
    """The error for a second facet that is no steeper than the primary land; the caller raises it.

    Example:
        >>> not_steeper(facet_of_width(0.0, 0.0, 0.25, 1.0, 12.0)).key
        'secondary_relief_angle'
    """
    return refuse(
        "secondary_relief_angle",
        "The second facet must fall more steeply than the primary land. Give it more than {angle}, or leave it out "
        "to have the facets planned.",
        {"angle": angle(first.angle, Rounding.UP)},
    )


def _short_primary(given: Inputs, facets: Sequence[Facet], turned: float) -> Check:
    """The stop for a primary land that ends with less than the gap wanted behind it."""
    first = facets[0]
    parts: dict[str, Amount | str] = {
        "gap": length(abs(first.end_drop)),
        "least": length(given.number("least_gap")),
    }
    if first.end_drop < 0:
        says = "The primary land comes back to the circle and ends {gap} proud of it, where {least} inside is wanted."
    elif len(facets) > 1 and not given.has("secondary_relief_angle"):
        says = (
            "The primary land ends only {gap} inside the circle, where {least} is wanted behind it; "
            "the facets planned keep {gap}, the most that it allows."
        )
    else:
        says = "The primary land ends only {gap} inside the circle, where {least} is wanted behind it."
    cures = _primary_cures(given, first, turned, parts)
    return stop(f"{says} {either(cures)}", **parts)


def _primary_cures(given: Inputs, first: Facet, turned: float, parts: dict[str, Amount | str]) -> list[str]:
    radius, least = given.number("diameter") / 2, given.number("least_gap")
    cures = _width_cures(radius, least, first, turned, parts)
    # A primary land that ran out of the old body is asked about as wide as it is wanted, not as far as it came.
    ran_out = first.end_drop < 0 and first.end < turned
    width = max(first.width, given.number("primary_land")) if ran_out else first.width
    steeper = _relief_for(radius, least, width, turned)
    if steeper is not None:
        parts["relief"] = angle(steeper, Rounding.UP)
        cures.append("raise the relief of the primary land to {relief}")
    if first.end_drop >= READABLE:
        parts["accepted"] = length(first.end_drop, Rounding.DOWN)
        cures.append("ask for a least gap of {accepted}")
    return cures or [_last_cure(radius, least, first, parts)]


def _width_cures(
    radius: float, least: float, first: Facet, turned: float, parts: dict[str, Amount | str]
) -> list[str]:
    """The width at which a facet of this angle lies deep enough, where there is a fair choice of widths.

    Derived: along the facet the gap is wanted where ``s^2 - 2 R s sin(a) + g (2 R - g) = 0``.
    """
    middle = radius * math.sin(first.angle)
    under = middle * middle - least * (2 * radius - least)
    if least >= radius or under <= 0 or math.sqrt(under) < READABLE:
        return []
    wide = middle + math.sqrt(under)
    narrow = least * (2 * radius - least) / wide
    if first.width > middle:
        parts["width"] = length(wide, Rounding.DOWN)
        return ["narrow the primary land to {width}"]
    if facet_of_width(0.0, 0.0, first.angle, narrow, 2 * radius).end > turned:
        return []
    parts["width"] = length(narrow, Rounding.UP)
    return ["widen the primary land to {width}"]


def _relief_for(radius: float, least: float, width: float, turned: float) -> float | None:
    """The relief at which a facet of this width ends deep enough; nothing when no sensible one does."""
    if width <= 0 or least >= radius:
        return None
    sine = (width * width + least * (2 * radius - least)) / (2 * radius * width)
    highest = quantity("relief_angle").high
    if sine > math.sin(highest):
        return None
    relief = math.asin(sine)
    if facet_of_width(0.0, 0.0, relief, width, 2 * radius).end > turned:
        # Laid so steeply the facet comes to the heel before its width is up, so the heel has to lie deep enough.
        relief = flat.relief_angle_from_drop(least, turned, 2 * radius)
    return relief if relief <= highest else None


def _last_cure(radius: float, least: float, first: Facet, parts: dict[str, Amount | str]) -> str:
    """What is left when neither width nor relief alone can fix it: both together, or a smaller gap."""
    relief = math.acos(1 - least / radius) if least < radius else math.pi
    if relief < quantity("relief_angle").high:
        parts["relief"] = angle(relief, Rounding.UP)
        parts["width"] = length(radius * math.sin(relief))
        return "make the primary land {width} wide and raise its relief to {relief}"
    highest = quantity("relief_angle").high
    parts["accepted"] = length(radius * (1 - math.cos(highest)) / 2, Rounding.DOWN)
    parts["relief"] = angle(highest, Rounding.DOWN)
    return "ask for a least gap of {accepted} and raise the relief toward {relief}"


def _short_back(given: Inputs, facets: Sequence[Facet], turned: float, found: float) -> Check:
    """The stop for a second facet, as it was given, that does not keep the gap out to the heel."""
    diameter, least, last = given.number("diameter"), given.number("least_gap"), facets[-1]
    parts: dict[str, Amount | str] = {"gap": length(abs(found)), "least": length(least)}
    says = "The heel lies only {gap} inside the circle, where {least} is wanted."
    if found < 0:
        says = "The heel stands {gap} proud of the circle: it will rub."
    cures = ["leave the second angle out to have the facets planned"]
    reach = last.angle + math.acos(min(1.0, last.height / (diameter / 2 - least)))
    if last.start < reach < turned:
        parts["widest"] = length(land_width(reach, diameter, given.choice("land_measured_as")), Rounding.DOWN)
        cures.insert(0, "narrow the land to {widest}")
    enough = _second_for(last, turned, least, diameter)
    if enough is not None:
        parts["enough"] = angle(enough, Rounding.UP)
        cures.insert(0, "raise the second facet to {enough}")
    return stop(f"{says} {either(cures)}", **parts)


def _second_for(last: Facet, turned: float, least: float, diameter: float) -> float | None:
    """The angle at which the second facet brings the heel in far enough; nothing when it is too steep to name."""
    if turned - last.start >= math.pi:
        return None
    enough = facet_between(last.start, last.start_drop, turned, least, diameter).angle
    return enough if enough <= quantity("secondary_relief_angle").high else None
