"""How far the heel of a surface falls behind its edge for a relief, what an indicator reads, and whether it clears."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from geometry.calculation import (
    AT_THE_WHEEL,
    Calculation,
    Check,
    Field,
    Inputs,
    Result,
    note,
    passed,
    stations,
    watch,
)
from geometry.complaints import complaint, settled
from geometry.cures import way
from geometry.edge.cam import NEAR_ENOUGH, relief_by_cam, throws_for, turn_of_throw
from geometry.edge.readings import POINTS
from geometry.edge.surface_input import READING_KEYS, Edge, edge_of, pointed, surface_fields
from geometry.edge.views import View
from geometry.figure import Curve, Figure, curve
from geometry.kinds import EVERY_KIND
from geometry.preconditions import refuse
from geometry.quantities import quantity
from geometry.role import HEEL, Cam, Role
from geometry.sentences import Amount, Rounding, angle, length
from geometry.surfaces import SURFACES
from geometry.tooth import eccentric, flat
from geometry.tooth.heel_advice import clears, no_drop, require_short_of_centre, rubs
from geometry.tooth.land import land_angle, land_width
from geometry.tooth.margin import margin_angle


def _checks(
    edge: Edge, form: str, turned: float, radial: float, diameter: float, measured_as: str
) -> tuple[Check, ...]:
    """What the heel means, seen square to the axis; advice is given in the surface's own view."""

    def as_given(relief: float) -> float:
        return edge.given(relief, "radial")

    if turned == 0 or radial == 0:
        return (no_drop(turned, form, as_given),)
    shape = eccentric if form == "eccentric" else flat
    heel = shape.drop(turned, radial, diameter)
    if heel <= 0:
        return (rubs(heel, turned, radial, diameter, measured_as, as_given),)
    found = clears(heel, turned, diameter, form, as_given)
    return (found, *_rises_again(turned, radial, diameter)) if form == "flat" else (found,)


def _end_checks(turned: float, heel: float) -> tuple[Check, ...]:
    """What the heel of an end tooth means, where nothing is seen square to the axis."""
    if turned == 0:
        return (watch("The land has no width, so there is nothing to fall away. Measure the land."),)
    if heel <= 0:
        return (
            complaint(
                "stop",
                "There is no relief behind the end: it rubs.",
                [way("choose a relief above {zero}", "relief_angle", "zero", angle(0.0))],
            ),
        )
    return (passed("The heel lies {drop} behind the edge along the axis: it clears.", drop=length(heel)),)


def _rises_again(turned: float, relief: float, diameter: float) -> tuple[Check, ...]:
    """Tell of the deepest place of a flat, where that is not the heel."""
    if turned <= relief:
        return ()
    return (
        note(
            "The flat is deepest, {depth}, at {deepest} behind the edge and rises again toward the heel.",
            depth=length(flat.deepest_drop(relief, diameter)),
            deepest=angle(relief),
        ),
    )


def _read(edge: Edge, view: View) -> tuple[Check, ...]:
    """Where the indicator stands for the readings, on a surface that can be read in more than one way."""
    if edge.is_cylinder:
        return ()
    return (
        note(
            "The indicator points {points}; the edge of the {surface} lies at {kappa} to the axis.",
            points=POINTS[view],
            surface=edge.surface.title,
            kappa=angle(edge.kappa),
        ),
    )


def _require_within_reach(
    edge: Edge, form: str, turned: float, radial: float | None, diameter: float, measured_as: str
) -> None:
    """Raise where the surface would go past the centre, or a flat never comes round to the heel."""
    reach = math.pi if radial is None else radial + math.pi / 2
    if form == "eccentric":
        if radial is not None:
            require_short_of_centre(turned, radial, lambda relief: edge.given(relief, "radial"))
    elif turned >= reach and radial == 0:
        raise refuse(
            "relief_angle",
            "A flat without relief stands proud of the circle behind its edge: it rubs. Choose a relief above {zero}.",
            {"zero": angle(0.0)},
        )
    elif turned >= reach:
        clear = math.pi / 2 if radial is None else flat.clear_angle(radial)
        raise refuse(
            "land_width",
            "One flat facet cannot reach so far round the tool. Narrow the land to {widest}, or plan the facets behind it.",
            {"widest": length(land_width(clear, diameter, measured_as), Rounding.DOWN)},
        )


def _clear_width(form: str, radial: float | None, diameter: float, measured_as: str) -> dict[str, float]:
    """The widest land that clears; nothing where the surface clears all the way round."""
    if form == "eccentric" or radial is None:
        return {}
    reach = flat.clear_angle(radial)
    return {
        "clear_land_width": land_width(
            min(reach, math.pi) if measured_as == "chord" else reach, diameter, measured_as
        )
    }


def _throws(given: Inputs, radial: float | None, diameter: float) -> dict[str, float]:
    """What a cam that draws the tool toward its axis falls, an end's along it, in a turn and from tooth to tooth."""
    if given.choice("relief_form") != "eccentric":
        return {}
    if radial is None:
        # On an end the cam moves along the axis, and falls as the end does round the circle of its corners.
        radial = given.number("relief_angle")
    return throws_for(radial, diameter, given.number("flutes") if given.has("flutes") else None)


def _relief_of_cam(given: Inputs, edge: Edge, diameter: float) -> float | None:
    """The relief (rad) that the chosen cam gives, in the surface's own view; nothing where none was chosen."""
    if not given.has("chosen_throw"):
        return None
    if edge.is_end:
        raise refuse(
            "chosen_throw", "A cam that moves toward the axis gives an end no relief. Leave its throw out."
        )
    return relief_by_cam(edge, given.number("chosen_throw"), turn_of_throw(given), diameter)


def _cam_check(edge: Edge, wanted: float, found: float, needed: dict[str, float], per: str) -> Check:
    """What the chosen cam gives, held against what is wanted."""
    parts: dict[str, Amount | str] = {
        "found": angle(found),
        "wanted": angle(wanted),
        "surface": edge.surface.title,
    }
    if abs(found - wanted) <= NEAR_ENOUGH:
        return passed("The cam gives {found} on the {surface}, near the {wanted} wanted.", **parts)
    throw = needed["throw_per_tooth" if per == "tooth" else "throw_per_turn"]
    return complaint(
        "watch",
        "The cam gives {found} on the {surface}, not the {wanted} wanted.",
        [way(f"take a throw of {{throw}} per {per}", "chosen_throw", "throw", length(throw))],
        ["grind and inspect by what this one gives"],
        **parts,
    )


@dataclass(frozen=True)
class _Job:
    """One surface with its relief.

    Attributes:
        edge: the surface and how its edge lies.
        form: ``eccentric`` or ``flat``.
        diameter: of the circle of the edges, in mm.
        wanted: the relief that was asked for, in radians, in the surface's own view.
        by_cam: that of the chosen cam; nothing where none was chosen.
        throws: what a cam falls for the wanted relief.
        measured_as: how the land was measured, ``arc`` or ``chord``.
        turned: from edge to heel, in radians.
        radial: the relief seen square to the axis; nothing on an end.
        margin: how far the land runs on the circle behind the edge before an eccentric relief begins, in radians.
    """

    edge: Edge
    form: str
    diameter: float
    wanted: float
    by_cam: float | None
    throws: dict[str, float]
    measured_as: str
    turned: float
    radial: float | None
    margin: float = 0.0

    @property
    def relieved(self) -> float:
        """From where the relief begins to the heel, in radians."""
        return self.turned - self.margin

    def behind_margin(self, reading: Callable[[float], float]) -> Callable[[float], float]:
        """A reading of the relief as it stands behind the margin: nothing on that, which lies on the circle. Derived."""
        if not self.margin:
            return reading
        return lambda turned: reading(turned - self.margin) if turned > self.margin else 0.0

    @property
    def relief(self) -> float:
        """The relief that is ground, in radians, in the surface's own view."""
        return self.wanted if self.by_cam is None else self.by_cam


def _job(given: Inputs) -> _Job:
    edge, diameter = edge_of(given), given.number("diameter")
    wanted, form = given.number("relief_angle"), given.choice("relief_form")
    by_cam, measured_as = _relief_of_cam(given, edge, diameter), given.choice("land_measured_as")
    throws = _throws(given, edge.seen(wanted, "radial"), diameter)
    turned = land_angle(given.number("land_width"), diameter, measured_as)
    radial = edge.seen(wanted if by_cam is None else by_cam, "radial")
    margin = _margin(given, edge, turned)
    _require_within_reach(edge, form, turned - margin, radial, diameter, measured_as)
    return _Job(edge, form, diameter, wanted, by_cam, throws, measured_as, turned, radial, margin)


def _has_margin(given: Inputs, edge: Edge) -> bool:
    return edge.is_cylinder and given.number_or("margin_width", 0.0) > 0


def _margin(given: Inputs, edge: Edge, turned: float) -> float:
    """How far the margin goes round (rad), behind which an eccentric relief begins."""
    if turned == 0 or given.choice("relief_form") != "eccentric" or not _has_margin(given, edge):
        return 0.0
    return margin_angle(given.number("margin_width"), given.number("diameter"), turned)


def _of_the_margin(given: Inputs, job: _Job) -> Iterator[Check]:
    """What a margin makes of the relief, or that it does not count."""
    if job.margin:
        yield note(
            "The margin runs on the circle for {turned} behind the edge, by design; the relief begins where it ends.",
            turned=angle(job.margin),
        )
    elif _has_margin(given, job.edge):
        yield note(
            "The margin of {margin} is not counted: the flat begins at the edge.",
            margin=length(given.number("margin_width")),
        )


def _figure(job: _Job) -> Figure | None:
    """The section square to the axis with both profiles, the chosen one first; none of an end."""
    if job.turned <= 0 or job.radial is None:
        return None
    corners = (job.margin,) if job.margin else ()
    reach = min(job.turned, job.margin + job.radial + math.radians(80))
    cam, plane = (one.profile(job.radial, job.diameter) for one in (eccentric, flat))
    curves: tuple[Curve, ...] = (
        curve("eccentric", job.turned, job.behind_margin(cam), corners),
        curve("flat", reach, job.behind_margin(plane), corners),
    )
    return Figure(job.diameter / 2, job.turned, curves if job.form == "eccentric" else curves[::-1])


def _all_checks(given: Inputs, job: _Job) -> tuple[Check, ...]:
    cam = (
        ()
        if job.by_cam is None
        else (_cam_check(job.edge, job.wanted, job.by_cam, job.throws, given.choice("throw_per")),)
    )
    view = pointed(given, job.edge)
    if job.radial is None:
        heel = job.edge.readings(job.relief, job.form, job.diameter)[view](job.turned)
        found = _end_checks(job.turned, heel)
    else:
        found = _checks(job.edge, job.form, job.relieved, job.radial, job.diameter, job.measured_as)
    return (*cam, *found, *_of_the_margin(given, job), *_read(job.edge, view), *_other_cam(given, job))


def _other_cam(given: Inputs, job: _Job) -> Iterator[Check]:
    """How far a cam along the axis would move for the relief of a lip, which the throw toward the axis does not tell."""
    axial = job.edge.seen(job.wanted, "axial")
    if job.edge.surface.view != "axial" or job.edge.is_end or not job.throws or axial is None:
        return
    by_tooth = given.choice("throw_per") == "tooth" and given.has("flutes")
    flutes = given.number("flutes") if by_tooth else None
    key, per = ("throw_per_tooth", "tooth") if by_tooth else ("throw_per_turn", "turn")
    yield note(
        "The throw is radial, toward the axis: {radial} per {per} for the relief wanted. A cam that moves along the axis has "
        "an axial throw of {axial} per {per} for the same relief.",
        radial=length(job.throws[key]),
        axial=length(throws_for(axial, job.diameter, flutes)[key]),
        per=per,
    )


def _named(edge: Edge) -> dict[str, str]:
    """What the throws are called on a surface whose relief is not given the way that a cam toward the axis moves."""
    if edge.surface.view == "radial":
        return {}
    way_of_cam = "axial" if edge.is_end else "radial"
    return {key: f"{quantity(key).title}, {way_of_cam}" for key in ("throw_per_turn", "throw_per_tooth")}


def _compute(given: Inputs) -> Result:
    return settled(_raw(given), given, lambda other, _: _all_checks(other, _job(other)))


def _raw(given: Inputs) -> Result:
    job = _job(given)
    view = pointed(given, job.edge)
    edge, form, turned, relief = job.edge, job.form, job.turned, job.relief
    readings = {
        one: job.behind_margin(reading) for one, reading in edge.readings(relief, form, job.diameter).items()
    }
    others = {} if edge.is_cylinder else {READING_KEYS[one]: readings[one] for one in readings if one != view}
    return Result(
        outputs={
            "heel_drop": readings[view](turned),
            **{key: reading(turned) for key, reading in others.items()},
            **_clear_width(form, job.radial, job.diameter, job.measured_as),
            "land_angle": turned,
            **job.throws,
            **({} if job.by_cam is None else {"relief_angle": job.by_cam}),
            **edge.reliefs(relief),
            **(edge.half_included() if form == "eccentric" else {}),
        },
        stations=stations(turned, {"drop": readings[view], **others}),
        checks=_all_checks(given, job),
        figure=_figure(job),
        named=_named(edge) if job.throws else {},
    )


CALCULATION = Calculation(
    name="relief-drop",
    title="Indicator drop of the heel for a relief",
    question="How far inside the circle does the heel lie, does it clear, and what does the indicator read on the way?",
    wants="The surface says in which view the relief is given. The diameter is that of the circle the edges run on there, and "
    "the land is measured on it; say whether you laid a caliper across it (chord) or went round it (arc).",
    neglects="It takes the edge as sharp and the tool as running true, and the edge as lying in one plane with the axis. "
    "A flat is one facet over the whole land, and a margin before it is not counted; an eccentric relief is an even cam, "
    "and begins where a margin ends.",
    kinds=EVERY_KIND,
    inputs=(
        *surface_fields(*SURFACES, default="land"),
        Field("diameter"),
        Field("relief_angle"),
        Field("land_width"),
        Field("land_measured_as", default="arc"),
        Field("relief_form", default="eccentric"),
        Field("flutes", optional=True),
        Field("chosen_throw", optional=True, when=("relief_form", "eccentric")),
        Field("throw_per", default="turn", when=("relief_form", "eccentric")),
        Field("indicator_points", optional=True),
        Field("margin_width", optional=True, when=("surface", "land")),
    ),
    outputs=(
        "heel_drop",
        "relief_angle",
        "radial_drop",
        "square_drop",
        "axial_drop",
        "clear_land_width",
        "throw_per_turn",
        "throw_per_tooth",
        "land_angle",
        "normal_relief_angle",
        "radial_relief_angle",
        "axial_relief_angle",
        "half_included_angle",
    ),
    cautions=AT_THE_WHEEL,
    compute=_compute,
    role=Role(
        place=100,
        does=HEEL,
        sets=("half_included_angle", "chosen_throw", "throw_per_tooth", "throw_per_turn"),
        cam=Cam("chosen_throw", "relief_angle"),
        counts=True,
        left_out_by=("work-head",),
        tells=("pass", "note"),
        drawn=1,
    ),
    sample={
        "diameter": 12.0,
        "relief_angle": math.radians(8),
        "land_width": 2.0,
        "land_measured_as": "chord",
        "relief_form": "flat",
    },
)
