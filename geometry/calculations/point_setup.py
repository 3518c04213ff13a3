"""Flat facets of a drill point on a work head: roll, swivel, the second facet, and what comes of them."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from geometry.calculation import (
    AT_THE_WHEEL,
    Calculation,
    Check,
    Field,
    Inputs,
    Result,
    Station,
    note,
    passed,
    stations,
    watch,
    worst_first,
)
from geometry.complaints import complaint, settled
from geometry.cures import Way, way
from geometry.drill import facet as facets
from geometry.drill.facet import Facet
from geometry.drill.flank import Flank
from geometry.drill.web import USUAL_SHARE
from geometry.plausible import CHISEL, LEAST_RELIEF, SLACK, land_plausible, relief_plausible
from geometry.preconditions import NotGiven
from geometry.quantities import quantity
from geometry.role import Role
from geometry.sentences import Amount, Rounding, angle, length, ratio
from geometry.side_view import point_view
from geometry.tooth.land import land_angle

LIPS = 2
"""The calculation is one of drills with two straight lips."""

SECOND = "second_lip_relief_angle"

ROLL, SECOND_ROLL = "roll_angle", "second_roll_angle"

FROM_THE_LIP = "from the level lip, the way it cuts"
"""From where a roll counts and which way; the other way round the flank would rise behind the lip."""

SAME = math.radians(0.005)
"""Two angles (rad) that are shown alike; no head is set finer."""

THIN = ("thin the web, so that the chisel edge is short",)
"""What helps a chisel edge with little relief where no second facet does; common practice, no source."""

SHOWN = 0.0005
"""Drops (mm) that differ by less are shown alike."""


@dataclass(frozen=True)
class _Point:
    """The facets of one side.

    Attributes:
        web: as it was measured, or the usual one of the diameter; nothing where neither is known.
        first: at the lip.
        second: behind it, where there is one.
        flank: both on the cylinder of the corner, where the diameter is known.
        heel: from the corner to the heel, in radians, where the land was measured.
    """

    web: float | None
    first: Facet
    second: Facet | None
    flank: Flank | None
    heel: float | None

    @property
    def ahead(self) -> float:
        """How far the lip lies ahead of the axis at the corner, in radians; zero where nothing tells it."""
        return 0.0 if self.flank is None else math.asin(self.flank.half_web / self.flank.radius)

    @property
    def at_corner(self) -> float:
        """The lip relief on the cylinder at the corner, in radians."""
        ahead = self.ahead
        return math.atan(self.first.fall * math.cos(ahead) + self.first.slope * math.sin(ahead))


def _first(given: Inputs, ahead: float) -> Facet:
    if given.has("point_angle"):
        whole = given.number("point_angle")
        if given.has("roll_angle"):
            return facets.facet_of_roll(whole, given.number("roll_angle"))
        return facets.facet(whole, given.number("lip_relief_angle"), ahead)
    axis = given.number("axis_to_wheel_angle")
    if given.has("roll_angle"):
        return facets.facet_of_setting(axis, given.number("roll_angle"))
    return facets.facet_of_axis(axis, given.number("lip_relief_angle"), ahead)


def _web(given: Inputs) -> float | None:
    if given.has("web_thickness"):
        return given.number("web_thickness")
    return USUAL_SHARE * given.number("diameter") if given.has("diameter") else None


def _point(given: Inputs) -> _Point:
    web = _web(given)
    sized = web is not None and given.has("diameter")
    ahead = facets.lip_ahead(web, given.number("diameter")) if web is not None and sized else 0.0
    first = _first(given, ahead)
    second = Facet(first.slope, math.tan(given.number(SECOND))) if given.has(SECOND) else None
    if web is None or not sized:
        if given.has("land_width"):
            raise NotGiven("Give the diameter as well, so that the land can be laid round it.", "diameter")
        return _Point(web, first, second, None, None)
    diameter = given.number("diameter")
    flank = Flank(first, second, web / 2, diameter / 2)
    heel = None
    if given.has("land_width"):
        heel = land_angle(given.number("land_width"), diameter, given.choice("land_measured_as"))
    return _Point(web, first, second, flank, heel)


def _lip_checks(given: Inputs, first: Facet) -> Iterator[Check]:
    if first.fall == 0:
        says = "There is no relief behind the lip: it rubs and will not cut."
        if given.has("roll_angle"):
            yield complaint("stop", says, [way("roll it above {zero}", "roll_angle", "zero", angle(0.0))])
            return
        least = angle(LEAST_RELIEF, Rounding.UP)
        yield complaint(
            "stop", says, [way("give a lip relief of {least} or more", "lip_relief_angle", "least", least)]
        )
        return
    if given.has("lip_relief_angle"):
        yield from relief_plausible(given.number("lip_relief_angle"), "lip", key="lip_relief_angle")


def _setting(point: _Point) -> Iterator[Check]:
    first = point.first
    yield note(
        "With the lip level, turn the drill {roll} the way it cuts, on the roll scale or the index of the work head, and set its "
        "axis at {axis} to the wheel face, which is {rest} from square to it and not half the point, {half}.",
        roll=angle(first.roll),
        axis=angle(first.axis_to_wheel),
        rest=angle(math.pi / 2 - first.axis_to_wheel),
        half=angle(first.point_angle / 2),
    )
    if point.second is not None:
        yield note(
            "Second facet: {roll} of roll, counted from the level lip too, and the axis at {axis}. Grind it until it comes "
            "to the line through the axis, so that all four facets meet in a point.",
            roll=angle(point.second.roll),
            axis=angle(point.second.axis_to_wheel),
        )


def _counted_across(point: _Point) -> tuple[str, dict[str, Amount]]:
    """Where a second facet is counted, and what the first one is there, to stand behind a complaint; empty where it is the same."""
    if abs(point.at_corner - point.first.lip_relief) < SAME:
        return "", {}
    return (
        " A second facet is counted straight across the lip, where it begins in line with the axis: the first one's {corner} at the "
        "corner are {across} there.",
        {"corner": angle(point.at_corner), "across": angle(point.first.lip_relief)},
    )


def _second_checks(given: Inputs, point: _Point) -> Iterator[Check]:
    if point.second is None or point.second.fall > point.first.fall:
        return
    enough = angle(point.first.lip_relief, Rounding.UP)
    counted, amounts = _counted_across(point)
    yield complaint(
        "watch",
        "The second facet is no steeper than the first, so it takes nothing away behind it." + counted,
        [
            way("give it more than {enough}", SECOND, "enough", enough),
            way("leave the second facet out", SECOND),
        ],
        **amounts,
    )


def _chisel_checks(given: Inputs, point: _Point, sharp: float | None) -> Iterator[Check]:
    if sharp is None or point.first.fall == 0:
        return
    low, high = CHISEL
    amounts = {
        "sharp": angle(sharp),
        "wide": angle(math.pi - sharp),
        "low": angle(low),
        "high": angle(high),
    }
    says = "The chisel edge comes to {sharp} to a lip, {wide} counted the other way"
    if low * (1 - SLACK) <= sharp <= high * (1 + SLACK):
        yield passed(says + ", as usual.", sharp=amounts["sharp"], wide=amounts["wide"])
    elif sharp > high:
        ways = _steeper(point, high)
        yield complaint(
            "watch",
            says + ", where {low} to {high} are usual. There is little relief at the centre" + _by_two(point),
            ways,
            () if ways else THIN,
            **amounts | ({} if point.second else {"two": angle(_with_chisel(point, high), Rounding.UP)}),
        )
    else:
        yield complaint(
            "watch",
            says + ", where {low} to {high} are usual. There is much relief at the centre.",
            _flatter(given, point, low),
            **amounts,
        )


def _by_two(point: _Point) -> str:
    """Ends the sentence on little relief at the centre: a plain point of two flats has it at every lip relief in use."""
    return (
        ", as plain points of two flats have it up to a lip relief of {two}." if point.second is None else "."
    )


def _with_chisel(point: _Point, chisel: float) -> float:
    """The lip relief (rad) at the corner at which two flats alone make a chisel edge angle."""
    return replace(point, first=Facet(point.first.slope, point.first.slope / math.tan(chisel))).at_corner


def _steeper(point: _Point, chisel: float) -> list[Way]:
    found = facets.second_for_chisel(point.first, chisel)
    if found >= quantity(SECOND).high:
        return []
    says = (
        "a second facet of {second} or more behind the first"
        if point.second is None
        else "the second facet with {second} or more"
    )
    return [way(f"grind {says}", SECOND, "second", angle(found, Rounding.UP))]


def _flatter(given: Inputs, point: _Point, chisel: float) -> list[Way]:
    if point.second is not None:
        second = angle(facets.second_for_chisel(point.first, chisel), Rounding.DOWN)
        return [way("grind the second facet with {second} or less", SECOND, "second", second)]
    if not given.has("lip_relief_angle"):
        return []
    less = angle(_with_chisel(point, chisel), Rounding.DOWN)
    return [way("give a lip relief of {less} or less", "lip_relief_angle", "less", less)]


def _heel_checks(point: _Point) -> Iterator[Check]:
    if point.flank is None or point.heel is None or point.first.fall == 0:
        return
    found = land_plausible(point.heel, LIPS)
    yield from found
    if found:
        return
    drop = point.flank.drop(point.heel)
    if drop > 0:
        yield passed("The heel lies {drop} behind the corner along the axis: it clears.", drop=length(drop))
        return
    enough = point.flank.second_to_clear(point.heel)
    ways = (
        [way("grind a second facet of more than {enough}", SECOND, "enough", angle(enough, Rounding.UP))]
        if enough is not None and enough < quantity(SECOND).high
        else []
    )
    counted, amounts = _counted_across(point) if ways else ("", {})
    yield complaint(
        "stop",
        "The heel stands {proud} ahead of the corner along the axis: it rubs and the lip does not cut."
        + counted,
        ways,
        ["grind the heel away with one more facet"],
        proud=length(-drop),
        **amounts,
    )


def _rising_checks(point: _Point) -> Iterator[Check]:
    """That the indicator rises again before a heel that clears, and why, where it does by what is shown of it."""
    if point.flank is None or point.heel is None or point.heel <= point.flank.deepest:
        return
    most, heel = point.flank.drop(point.flank.deepest), point.flank.drop(point.heel)
    if heel > 0 and most - heel >= SHOWN:
        yield note(
            "The drop is greatest {turn} behind the corner, {most}, and gets less again before the heel: right on a flat "
            "facet, for the indicator comes back toward the middle, where the point stands higher.",
            turn=angle(point.flank.deepest),
            most=length(most),
        )


def _web_checks(given: Inputs, point: _Point) -> Iterator[Check]:
    """Where the lip lies, and what the facet falls so that the lip relief is right at the corner."""
    if point.flank is None or point.web is None:
        yield note(
            "Roll and relief are those of a lip in line with the axis. A lip lies half a web ahead of it, where the same "
            "facet shows more at the corner: give the diameter, and the web as it is measured."
        )
        return
    if not given.has("web_thickness"):
        yield watch(
            "The web was not measured: {web} is taken, {share} of the diameter (common practice). Measure it.",
            web=length(point.web),
            share=ratio(USUAL_SHARE),
        )
    if abs(point.at_corner - point.first.lip_relief) >= SAME:
        yield note(
            "The lip lies {half} ahead of the axis: a facet that would show {falls} behind a lip in line with the axis shows "
            "{corner} at the corner.",
            half=length(point.web / 2),
            falls=angle(point.first.lip_relief),
            corner=angle(point.at_corner),
        )


def _checks(given: Inputs, point: _Point) -> tuple[Check, ...]:
    sharp = facets.chisel_angle(point.first, point.second)
    return worst_first(
        (
            *_lip_checks(given, point.first),
            *_heel_checks(point),
            *_second_checks(given, point),
            *_chisel_checks(given, point, sharp),
            *_setting(point),
            *_rising_checks(point),
            *_web_checks(given, point),
        )
    )


def _trial(given: Inputs, _: Check) -> tuple[Check, ...]:
    return _checks(given, _point(given))


def _outputs(given: Inputs, point: _Point) -> dict[str, float]:
    first = point.first
    found = {
        "roll_angle": first.roll,
        "axis_to_wheel_angle": first.axis_to_wheel,
        **({} if given.has("point_angle") else {"point_angle": first.point_angle}),
        **({} if given.has("lip_relief_angle") else {"lip_relief_angle": point.at_corner}),
        "normal_relief_angle": math.atan(first.fall / math.hypot(1.0, first.slope)),
    }
    if point.second is not None:
        found |= {
            "second_roll_angle": point.second.roll,
            "second_axis_to_wheel_angle": point.second.axis_to_wheel,
        }
    if point.flank is not None:
        found["corner_relief_angle"] = point.at_corner
        if point.flank.ahead_of_corner > 0:
            found["point_height"] = point.flank.ahead_of_corner
    if point.web is not None and not given.has("web_thickness"):
        found["web_thickness"] = point.web
    sharp = facets.chisel_angle(first, point.second)
    if sharp is not None:
        found |= {"chisel_edge_angle": math.pi - sharp, "chisel_edge_supplement": sharp}
    if point.web is not None and point.second is not None:
        found["primary_land"] = facets.first_facet_width(first, point.web)
    return found


def _compute(given: Inputs) -> Result:
    point = _point(given)
    outputs = _outputs(given, point)
    read: tuple[Station, ...] = ()
    if point.flank is not None and point.heel is not None:
        outputs["axial_drop"] = point.flank.drop(point.heel)
        read = stations(point.heel, {"axial_drop": point.flank.drop})
    found = Result(
        outputs,
        read,
        checks=_checks(given, point),
        side=point_view(point.first.point_angle, given.number("diameter")) if given.has("diameter") else None,
    )
    return settled(found, given, _trial)


CALCULATION = Calculation(
    name="point-setup",
    title="Facet point of a drill on a work head",
    question="How far is a drill rolled and swivelled for a flat facet, and which lip relief and chisel edge come of it?",
    wants="Give the point or the axis to the wheel face, and the lip relief on the cylinder at the corner, or the roll; the "
    "second facet has a lip relief of its own, where it begins on the line through the axis. The roll counts from the lip "
    "level; the web is measured at the point, the land behind the corner.",
    neglects="It holds for a flat wheel face and two straight lips, each half a web ahead of the axis; a second facet is taken "
    "as beginning on the line through the axis.",
    kinds=("twist-drill", "step-drill", "subland-drill", "centre-drill"),
    belongs_on=("lip",),
    inputs=(
        Field("point_angle", one_of="point"),
        Field("axis_to_wheel_angle", one_of="point"),
        Field("lip_relief_angle", one_of="relief", fill_from=("relief_angle",)),
        Field("roll_angle", one_of="relief"),
        Field(SECOND, optional=True),
        Field("diameter", optional=True),
        Field("web_thickness", optional=True),
        Field("land_width", optional=True),
        Field("land_measured_as", default="arc"),
    ),
    outputs=(
        "roll_angle",
        "axis_to_wheel_angle",
        "second_roll_angle",
        "second_axis_to_wheel_angle",
        "point_angle",
        "lip_relief_angle",
        "normal_relief_angle",
        "corner_relief_angle",
        "chisel_edge_angle",
        "chisel_edge_supplement",
        "primary_land",
        "point_height",
        "axial_drop",
        "web_thickness",
    ),
    cautions=(*AT_THE_WHEEL, "sharp-edges"),
    compute=_compute,
    methods=("work-head",),
    role=Role(
        place=48,
        sets=(SECOND_ROLL, "second_axis_to_wheel_angle", ROLL, "axis_to_wheel_angle"),
        counted=((SECOND_ROLL, FROM_THE_LIP), (ROLL, FROM_THE_LIP)),
        turned=(
            (ROLL, "The drill cuts turning {cuts}, seen from the shank."),
            (SECOND_ROLL, "The second facet stops on the line through the axis."),
            (ROLL, "With the wheel stopped, the indicator must fall from lip to heel."),
        ),
        asks=("web_thickness",),
        of_facets=True,
        tells=("pass", "note"),
    ),
    sample={
        "point_angle": math.radians(118),
        "lip_relief_angle": math.radians(12),
        SECOND: math.radians(28),
        "diameter": 10.0,
        "web_thickness": 1.5,
        "land_width": 5.0,
    },
)
