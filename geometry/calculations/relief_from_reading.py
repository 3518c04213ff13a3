"""Back from an indicator reading behind the edge to the relief that is ground there now."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.calculation import Calculation, Check, Field, Inputs, Result, note, stations
from geometry.complaints import settled
from geometry.edge.readings import POINTS
from geometry.edge.surface_input import Edge, edge_of, pointed, surface_fields
from geometry.edge.views import PLANES, View
from geometry.figure import Curve, Figure, curve
from geometry.kinds import EVERY_KIND
from geometry.preconditions import NotGiven, refuse
from geometry.role import FOUND, Role
from geometry.sentences import Sentence, angle, length
from geometry.surfaces import SURFACES
from geometry.tooth import reading_advice as advice
from geometry.tooth.land import land_angle, land_width
from geometry.tooth.reading import Explanation, explanations, misfit


def _turned(given: Inputs, key: str) -> float:
    """How far behind the edge a reading was taken, in radians; raises at the edge itself."""
    turned = land_angle(given.number(key), given.number("diameter"), given.choice("land_measured_as"))
    if turned <= 0:
        raise refuse(
            key,
            "At the edge itself the indicator shows nothing. Turn the tool on to the heel and read it there.",
        )
    return turned


def _second(given: Inputs, turned: float) -> tuple[float, float] | None:
    """The second reading as drop and angle, where one was given; raises when half of it is missing."""
    if not given.has("second_drop") and not given.has("second_land_width"):
        return None
    for key, other in (("second_drop", "second_land_width"), ("second_land_width", "second_drop")):
        if not given.has(key):
            raise NotGiven(
                Sentence(
                    "A second reading is a drop and where it was read: give {key} too, or leave out {other}.",
                    {"key": key, "other": other},
                ),
                key,
            )
    there = _turned(given, "second_land_width")
    if there == turned:
        half = land_width(turned / 2, given.number("diameter"), given.choice("land_measured_as"))
        raise refuse(
            "second_land_width",
            "Both readings were taken at one place. Take the second nearer the edge, at about {half}.",
            {"half": length(half)},
        )
    if there > turned:
        raise refuse(
            "second_land_width",
            "The second reading was taken {there} behind the edge, the first only {here}. Give the one at the heel first, and "
            "the one nearer the edge second.",
            {"there": length(given.number("second_land_width")), "here": length(given.number("land_width"))},
        )
    return given.number("second_drop"), there


def _outputs(
    found: dict[str, Explanation], misfits: dict[str, float], told: str | None, turned: float
) -> dict[str, float]:
    """The relief of the form that was told first, then what it would be in the other."""
    outputs = {} if told is None else {"relief_angle": found[told].relief_angle}
    outputs |= {f"{form}_relief_angle": one.relief_angle for form, one in found.items()}
    outputs |= {f"{form}_misfit": amount for form, amount in misfits.items()}
    return {**outputs, "land_angle": turned}


def _figure(
    found: dict[str, Explanation], radius: float, readings: tuple[tuple[float, float], ...]
) -> Figure:
    """What each form makes of the first reading, and the readings themselves joined by straight lines."""
    reach = max(turned for turned, _ in readings)
    curves = [curve(form, reach, one.profile) for form, one in found.items() if one.reaches(reach)]
    return Figure(radius, reach, (*curves, Curve("as read", tuple(sorted(((0.0, 0.0), *readings))))))


def _read(edge: Edge, view: View) -> tuple[Check, ...]:
    """Where the indicator was taken to point, on a surface that can be read in more than one way."""
    if edge.is_cylinder:
        return ()
    return (
        note(
            "Read with the indicator pointed {points}, on the {surface}, whose edge lies at {kappa} to the axis; "
            f"the relief is the one {PLANES[edge.surface.view]}.",
            points=POINTS[view],
            surface=edge.surface.title,
            kappa=angle(edge.kappa),
        ),
    )


@dataclass(frozen=True)
class _Told:
    """What the readings tell: where they were taken, what explains them, and what is said of that."""

    place: advice.Place
    view: View
    second: tuple[float, float] | None
    found: dict[str, Explanation]
    misfits: dict[str, float]
    form: str | None
    checks: tuple[Check, ...]


def _told(given: Inputs) -> _Told:
    diameter, drop = given.number("diameter"), given.number("drop")
    edge = edge_of(given)
    view = pointed(given, edge)
    turned = _turned(given, "land_width")
    second = _second(given, turned)
    found = explanations(drop, turned, diameter, edge, view)
    misfits = {
        form: amount
        for form, one in found.items()
        if second is not None and (amount := misfit(one, *second)) is not None
    }
    place = advice.Place(drop, turned, diameter, given.choice("land_measured_as"), edge)
    named = given.choice("relief_form") if given.has("relief_form") else None
    form, checks = advice.form_told(found, misfits, place, second, named)
    said = (*advice.heel(place, found, form), *checks, *_read(edge, view))
    return _Told(place, view, second, found, misfits, form, said)


def _compute(given: Inputs) -> Result:
    told = _told(given)
    place, found, second = told.place, told.found, told.second
    relief = found[told.form].relief_angle if told.form is not None else None
    reliefs = {} if relief is None else place.edge.reliefs(relief)
    readings = ((place.turned, place.drop), *((second[::-1],) if second else ()))
    result = Result(
        outputs=_outputs(found, told.misfits, told.form, place.turned) | reliefs,
        stations=stations(place.turned, {f"{name}_drop": one.profile for name, one in found.items()}),
        checks=told.checks,
        figure=_figure(found, place.diameter / 2, readings) if told.view == "radial" else None,
    )
    return settled(result, given, lambda other, _: _told(other).checks)


CALCULATION = Calculation(
    name="relief-from-reading",
    title="Relief from an indicator reading",
    question="What relief is on the tool now, and is it a flat or an eccentric relief?",
    wants="The diameter is that of the circle the edges run on; the land width is how far behind the edge the indicator was read, "
    "by caliper (chord) or round the circle (arc), the indicator set to zero at the edge and plus inside the circle. A second reading lies nearer the edge than the first.",
    neglects="It takes the edge as sharp, the tool as running true, and the edge as lying in one plane with the axis, and knows only two "
    "forms: an even cam and one flat facet. A flat can be told only from readings less than half a turn behind the edge.",
    kinds=EVERY_KIND,
    inputs=(
        *surface_fields(*SURFACES, default="land"),
        Field("indicator_points", optional=True),
        Field("diameter"),
        Field("drop"),
        Field("land_width", measured=True),
        Field("land_measured_as", default="arc"),
        Field("second_drop", optional=True),
        Field("second_land_width", optional=True),
        Field("relief_form", optional=True, measured=True),
    ),
    outputs=(
        "relief_angle",
        "eccentric_relief_angle",
        "flat_relief_angle",
        "eccentric_misfit",
        "flat_misfit",
        "land_angle",
        "normal_relief_angle",
        "radial_relief_angle",
        "axial_relief_angle",
    ),
    cautions=("hands", "sharp-edges", "eyes"),
    compute=_compute,
    role=Role(does=FOUND),
    sample={
        "diameter": 12.0,
        "drop": 0.281,
        "land_width": 2.0,
        "land_measured_as": "chord",
        "second_drop": 0.142,
        "second_land_width": 1.0,
    },
)
