"""What is looked at on a drill's point of flat facets: lip, heel, second facet, chisel edge, web; and the ways out."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace

from geometry.calculation import (
    Check,
    Inputs,
    note,
    passed,
    watch,
    worst_first,
)
from geometry.complaints import complaint
from geometry.cures import Way, way
from geometry.drill import facet as facets
from geometry.drill.facet import Facet
from geometry.drill.facet_point import SECOND, FacetPoint
from geometry.drill.web import USUAL_SHARE
from geometry.plausible import CHISEL, LEAST_RELIEF, SLACK, land_plausible, relief_plausible
from geometry.quantities import quantity
from geometry.sentences import Amount, Rounding, angle, length, ratio

LIPS = 2
"""The calculation is one of drills with two straight lips."""


SAME = math.radians(0.005)
"""Two angles (rad) that are shown alike; no head is set finer."""


THIN = ("thin the web, so that the chisel edge is short",)
"""What helps a chisel edge with little relief where no second facet does; common practice, no source."""


SHOWN = 0.0005
"""Drops (mm) that differ by less are shown alike."""


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


def _setting(point: FacetPoint) -> Iterator[Check]:
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


def _counted_across(point: FacetPoint) -> tuple[str, dict[str, Amount]]:
    """Where a second facet is counted, and what the first one is there, to stand behind a complaint; empty where it is the same."""
    if abs(point.at_corner - point.first.lip_relief) < SAME:
        return "", {}
    return (
        " A second facet is counted straight across the lip, where it begins in line with the axis: the first one's {corner} at the "
        "corner are {across} there.",
        {"corner": angle(point.at_corner), "across": angle(point.first.lip_relief)},
    )


def _second_checks(given: Inputs, point: FacetPoint) -> Iterator[Check]:
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


def _chisel_checks(given: Inputs, point: FacetPoint, sharp: float | None) -> Iterator[Check]:
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


def _by_two(point: FacetPoint) -> str:
    """Ends the sentence on little relief at the centre: a plain point of two flats has it at every lip relief in use."""
    return (
        ", as plain points of two flats have it up to a lip relief of {two}." if point.second is None else "."
    )


def _with_chisel(point: FacetPoint, chisel: float) -> float:
    """The lip relief (rad) at the corner at which two flats alone make a chisel edge angle."""
    return replace(point, first=Facet(point.first.slope, point.first.slope / math.tan(chisel))).at_corner


def _steeper(point: FacetPoint, chisel: float) -> list[Way]:
    found = facets.second_for_chisel(point.first, chisel)
    if found >= quantity(SECOND).high:
        return []
    says = (
        "a second facet of {second} or more behind the first"
        if point.second is None
        else "the second facet with {second} or more"
    )
    return [way(f"grind {says}", SECOND, "second", angle(found, Rounding.UP))]


def _flatter(given: Inputs, point: FacetPoint, chisel: float) -> list[Way]:
    if point.second is not None:
        second = angle(facets.second_for_chisel(point.first, chisel), Rounding.DOWN)
        return [way("grind the second facet with {second} or less", SECOND, "second", second)]
    if not given.has("lip_relief_angle"):
        return []
    less = angle(_with_chisel(point, chisel), Rounding.DOWN)
    return [way("give a lip relief of {less} or less", "lip_relief_angle", "less", less)]


def _heel_checks(point: FacetPoint) -> Iterator[Check]:
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


def _rising_checks(point: FacetPoint) -> Iterator[Check]:
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


def _web_checks(given: Inputs, point: FacetPoint) -> Iterator[Check]:
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


def facet_checks(given: Inputs, point: FacetPoint) -> tuple[Check, ...]:
    """Everything that is looked at on such a point, the worst first.

    Args:
        given: the inputs of the calculation, lengths in mm, angles in radians.
        point: the facets that follow from them.
    """
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
