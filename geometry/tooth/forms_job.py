"""One edge with an eccentric relief, one flat and two facets behind it: what each comes to, and what is wrong with it."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from geometry.calculation import Inputs, Row
from geometry.preconditions import GeometryError, refuse
from geometry.quantities import quantity
from geometry.sentences import Rounding, angle, length
from geometry.tooth import eccentric, flat
from geometry.tooth.area import eccentric_removed, facets_removed, sector
from geometry.tooth.crossing import crossing_angle
from geometry.tooth.facets import Facet, clear_angle, facet_between, facet_of_width, within_body
from geometry.tooth.heel_advice import require_short_of_centre
from geometry.tooth.land import land_angle, land_width

FAR_OUT = 4.0
"""A facet that never comes round to the heel is followed out to this many diameters and no further."""


@dataclass(frozen=True)
class FormsJob:
    """The three forms behind one edge.

    Attributes:
        turned: from edge to heel, in radians.
        one: the flat.
        two: the primary land and the facet behind it.
        rows: eccentric, flat and two facets, each with its numbers.
        outputs: what is answered, by quantity key.
    """

    turned: float
    one: Facet
    two: tuple[Facet, Facet]
    rows: tuple[Row, Row, Row]
    outputs: Mapping[str, float]


def forms_job(given: Inputs) -> FormsJob:
    """Lay the three forms of the inputs.

    Args:
        given: the inputs of the calculation ``relief-forms``.

    Raises:
        GeometryError: for values that do not fit one another.

    Example:
        >>> tool = {"diameter": 12.0, "land_width": 2.0, "land_measured_as": "arc", "primary_land": 0.8}
        >>> job = forms_job(Inputs({**tool, "relief_angle": 0.14, "compare_by": "heel-drop"}))
        >>> [row.label for row in job.rows]
        ['eccentric', 'flat', 'two facets']
    """
    diameter, relief = given.number("diameter"), given.number("relief_angle")
    measured_as = given.choice("land_measured_as")
    turned = land_angle(given.number("land_width"), diameter, measured_as)
    require_something_to_compare(turned, relief)
    require_short_of_centre(turned, relief)
    even = eccentric.profile(relief, diameter)(turned)
    one, two = _flat(given, turned, even), _two_facets(given, turned, even)
    rows = _rows(given, turned, one, two, even)
    outputs = {
        "flat_relief_angle": one.angle,
        "secondary_relief_angle": two[1].angle,
        "rub_angle": rows[1].values["rub_angle"],
        "land_angle": turned,
    }
    if outputs["rub_angle"] <= math.pi or measured_as == "arc":
        outputs["clear_land_width"] = land_width(outputs["rub_angle"], diameter, measured_as)
    crossing = crossing_angle(two[1], eccentric.throw_per_radian(relief, diameter), diameter)
    if crossing is not None:
        outputs["crossing_angle"] = crossing
    return FormsJob(turned, one, two, rows, outputs)


def complaints(job: FormsJob) -> tuple[str, ...]:
    """What is wrong with the flat and with the two facets, at most one word for each.

    The flat: ``flat-rubs`` or ``flat-steep``. The two facets: ``primary-back``, ``second-square`` (a right angle
    or more), ``second-steep`` or ``second-rubs``.
    """
    flat_row, both = job.rows[1].values, job.rows[2].values
    second = job.two[1].angle
    wrong = []
    if flat_row["rub_angle"] <= job.turned:
        wrong.append("flat-rubs")
    elif job.one.angle > quantity("relief_angle").high:
        wrong.append("flat-steep")
    if job.two[0].end_drop <= 0:
        wrong.append("primary-back")
    elif second >= math.pi / 2:
        wrong.append("second-square")
    elif both["rub_angle"] <= job.turned:
        wrong.append("second-rubs")
    elif second > quantity("secondary_relief_angle").high:
        wrong.append("second-steep")
    return tuple(wrong)


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


def _flat(given: Inputs, turned: float, heel_drop: float) -> Facet:
    """The one flat: of the same angle at the edge, or with the same drop at the heel."""
    diameter, relief = given.number("diameter"), given.number("relief_angle")
    if given.choice("compare_by") == "heel-drop":
        if turned >= math.pi:
            raise refuse(
                "land_width",
                "No flat has a drop half way round the tool. Narrow the land to less than {widest}, or compare by edge-angle.",
                {
                    "widest": length(
                        land_width(math.pi, diameter, given.choice("land_measured_as")), Rounding.DOWN
                    )
                },
            )
        relief = flat.relief_angle_from_drop(heel_drop, turned, diameter)
    return within_body(0.0, 0.0, relief, turned, FAR_OUT * diameter, diameter)


def _two_facets(given: Inputs, turned: float, heel_drop: float) -> tuple[Facet, Facet]:
    """The primary land and the one facet behind it."""
    diameter, relief = given.number("diameter"), given.number("relief_angle")
    first = facet_of_width(0.0, 0.0, relief, given.number("primary_land"), diameter)
    if first.end >= turned:
        raise refuse(
            "primary_land",
            "The primary land takes the whole land, so there is no second facet. Make it narrower than {whole}.",
            {
                "whole": length(
                    within_body(0.0, 0.0, relief, turned, FAR_OUT * diameter, diameter).width, Rounding.DOWN
                )
            },
        )
    if given.choice("compare_by") == "heel-drop":
        return first, facet_between(first.end, first.end_drop, turned, heel_drop, diameter)
    steeper = given.number("secondary_relief_angle")
    if steeper <= relief:
        raise not_steeper(relief)
    return first, within_body(first.end, first.end_drop, steeper, turned, FAR_OUT * diameter, diameter)


def _facets_row(label: str, facets: tuple[Facet, ...], turned: float, diameter: float, even: float) -> Row:
    """What a form of straight facets comes to; no heel and no areas where it never comes round to the heel."""
    rubs = next((facet for facet in facets if facet.end_drop <= 0), facets[-1])
    values = {"relief_angle": facets[0].angle, "rub_angle": clear_angle(rubs, diameter)}
    if len(facets) > 1:
        values["secondary_relief_angle"] = facets[1].angle
    if facets[-1].end >= turned:
        removed = facets_removed(facets, diameter)
        values |= {
            "heel_drop": facets[-1].end_drop,
            "metal_removed": removed,
            "metal_left": sector(turned, diameter) - removed,
            "metal_more": even - removed,
        }
    return Row(label, values)


def _rows(
    given: Inputs, turned: float, one: Facet, two: tuple[Facet, Facet], heel_drop: float
) -> tuple[Row, Row, Row]:
    diameter, relief = given.number("diameter"), given.number("relief_angle")
    even = eccentric_removed(turned, eccentric.throw_per_radian(relief, diameter), diameter)
    return (
        Row(
            "eccentric",
            {
                "relief_angle": relief,
                "heel_drop": heel_drop,
                "metal_removed": even,
                "metal_left": sector(turned, diameter) - even,
                "metal_more": 0.0,
            },
        ),
        _facets_row("flat", (one,), turned, diameter, even),
        _facets_row("two facets", two, turned, diameter, even),
    )
