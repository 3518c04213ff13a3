"""The point of a drill: how to set it to the wheel, how long it is, and what unlike lips do to the hole."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping

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
    stop,
    watch,
    worst_first,
)
from geometry.drill import point
from geometry.drill.facet_point import facet_point
from geometry.drill.not_rolled import rolled, said_of_rolled
from geometry.plausible import LEAST_RELIEF, chisel_plausible, land_plausible, relief_plausible
from geometry.preconditions import GeometryError
from geometry.role import Role
from geometry.sentences import Rounding, angle, length
from geometry.side_view import point_view
from geometry.tooth.land import land_angle

LIPS = 2
"""The calculation is one of drills with two straight lips."""


def _setting(given: Inputs) -> Iterator[Check]:
    point_angle = given.number("point_angle")
    half = point_angle / 2
    yield note(
        "Set the axis of the drill at {half} to the wheel face, which is {rest} away from square to it, and grind both "
        "lips at the same setting" + said_of_rolled(given),
        half=angle(half),
        rest=angle(math.pi / 2 - half),
        **rolled(given),
    )
    if point.slope_of_point(point_angle) == 0:
        yield note(
            "A point of {whole} is flat: it has no tip that leads the drill.", whole=angle(point_angle)
        )


def _chisel(given: Inputs) -> tuple[dict[str, float], Iterator[Check]]:
    """Chisel edge and lips, as far as web and chisel edge angle were given."""
    outputs: dict[str, float] = {}
    if given.has("chisel_edge_angle"):
        sharp = point.sharp_chisel_angle(given.number("chisel_edge_angle"))
        outputs |= {"chisel_edge_angle": math.pi - sharp, "chisel_edge_supplement": sharp}
    if given.has("chisel_edge_angle") and given.has("web_thickness"):
        measured = (
            given.number("web_thickness"),
            given.number("chisel_edge_angle"),
            given.number("diameter"),
        )
        reach = point.lip_reach(*measured)
        outputs |= {
            "chisel_edge_length": point.chisel_edge_length(*measured),
            "lip_length": reach / math.sin(given.number("point_angle") / 2),
            "chisel_height": point.chisel_height(reach, given.number("point_angle")),
        }
    return outputs, _chisel_checks(given, outputs)


def _chisel_checks(given: Inputs, found: dict[str, float]) -> Iterator[Check]:
    if "chisel_edge_angle" in found:
        yield from chisel_plausible(given.number("chisel_edge_angle")) or (_chisel_usual(found),)
    if "chisel_edge_length" in found:
        yield note(
            "The chisel edge is {edge} long, so the lips begin on a circle of that diameter, {height} ahead of the corners.",
            edge=length(found["chisel_edge_length"]),
            height=length(found["chisel_height"]),
        )
    elif given.has("web_thickness"):
        yield note(
            "With the chisel edge angle as well, the length of the chisel edge and of the lips can be told."
        )


def _chisel_usual(found: dict[str, float]) -> Check:
    return passed(
        "The chisel edge lies as usual, at {wide} to a lip counted one way and at {sharp} counted the other; books use "
        "both.",
        wide=angle(found["chisel_edge_angle"]),
        sharp=angle(found["chisel_edge_supplement"]),
    )


def _heights(given: Inputs) -> tuple[dict[str, float], Iterator[Check]]:
    """What a difference in lip height does to the hole."""
    if not given.has("lip_height_difference"):
        return {}, iter(())
    difference, diameter = given.number("lip_height_difference"), given.number("diameter")
    outputs = {"hole_oversize": point.hole_oversize_by_rule(difference)}
    offset = point.point_offset(difference, given.number("point_angle"))
    if offset is not None and offset < diameter / 2:
        outputs |= {"point_offset": offset, "hole_oversize_about_point": 2 * offset}
    return outputs, _height_checks(difference, diameter, given.number("point_angle"), outputs)


def _height_checks(
    difference: float, diameter: float, whole: float, found: dict[str, float]
) -> Iterator[Check]:
    if difference == 0:
        yield passed("Both lips are of one height: both cut.")
        return
    high = {"difference": length(difference), "rule": length(found["hole_oversize"])}
    if "point_offset" not in found:
        yield watch(
            "The lips differ by {difference} in height, more than a tip off the axis can explain: their angles differ. Grind "
            "both at {half} to the wheel face until they are level.",
            cure=(("lip_height_difference", 0.0),),
            difference=high["difference"],
            half=angle(whole / 2),
        )
        return
    yield watch(
        "One lip is {difference} higher than the other. Take {difference} off it. By the shop rule of twice that height the "
        "hole comes out {rule} too large, about {hole}; a drill that turns about its own tip, {offset} off the axis, makes it "
        "{about} too large.",
        cure=(("lip_height_difference", 0.0),),
        hole=length(diameter + found["hole_oversize"]),
        offset=length(found["point_offset"]),
        about=length(found["hole_oversize_about_point"]),
        **high,
    )


def _lip_relief(given: Inputs) -> tuple[dict[str, float], Iterator[Check]]:
    if not given.has("lip_relief_angle"):
        return {}, iter(())
    lip = given.number("lip_relief_angle")
    if not given.has("web_thickness") or lip == 0:
        square = point.relief_square_to_lip(lip, given.number("point_angle"))
        return {"relief_angle": square}, _relief_checks(given, lip, square)
    try:
        first = facet_point(given).first
    except GeometryError:
        return {}, _none_square(lip)
    square = math.atan(first.square_fall)
    return {"relief_angle": square}, _relief_checks(given, lip, square)


def _none_square(lip: float) -> Iterator[Check]:
    yield watch(
        "The lip lies so far ahead of the axis, by half the web, that a lip relief of {lip} at the corner leaves none square "
        "to it.",
        lip=angle(lip),
    )


def _relief_checks(given: Inputs, lip: float, square: float) -> Iterator[Check]:
    if lip == 0:
        yield stop(
            "There is no relief behind the lip: it rubs and will not cut. Grind a lip relief of {least} or more.",
            cure=(("lip_relief_angle", LEAST_RELIEF),),
            least=angle(LEAST_RELIEF, Rounding.UP),
        )
        return
    complaints = relief_plausible(lip, "lip", key="lip_relief_angle")
    yield from complaints
    says = note if complaints else passed
    without = (
        "" if given.has("web_thickness") else ", without the web: half of it ahead of the axis leaves less"
    )
    yield says(
        "A lip relief of {lip} along the axis, across the margin at the corner, is {square} square to the lip"
        + without
        + ".",
        lip=angle(lip),
        square=angle(square),
    )


def _readings(given: Inputs) -> tuple[dict[str, float], tuple[Station, ...]]:
    """What an indicator along the axis shows at the outer corner while the drill is turned over the land."""
    if not given.has("land_width") or not given.has("lip_relief_angle"):
        return {}, ()
    diameter = given.number("diameter")
    turned = land_angle(given.number("land_width"), diameter, given.choice("land_measured_as"))
    per_radian = diameter / 2 * math.tan(given.number("lip_relief_angle"))
    found = {"land_angle": turned, "axial_drop": per_radian * turned}
    return found, stations(turned, {"axial_drop": lambda turn: per_radian * turn})


def _compute(given: Inputs) -> Result:
    whole, diameter = given.number("point_angle"), given.number("diameter")
    outputs = {"half_point_angle": whole / 2, "point_length": point.point_length(whole, diameter)}
    checks = [*_setting(given)]
    for found, said in (_heights(given), _lip_relief(given), _chisel(given)):
        outputs |= found
        checks += said
    readings, places = _readings(given)
    if "land_angle" in readings:
        checks += land_plausible(readings["land_angle"], LIPS)
    return Result(
        outputs | readings,
        places,
        checks=worst_first(checks),
        side=point_view(whole, diameter),
        # The relief that is asked for is along the axis; what is answered is how it cuts.
        named=_named(given, outputs),
    )


def _named(given: Inputs, outputs: Mapping[str, float]) -> dict[str, str]:
    """What each answer leaves out: the half point angle the roll of a work head, the relief the web where it is not given."""
    found = {"half_point_angle": "Half point angle, drill not rolled"}
    if "relief_angle" in outputs:
        without = "" if given.has("web_thickness") else ", without the web"
        found["relief_angle"] = f"Relief of the lip, square to the edge{without}"
    return found


CALCULATION = Calculation(
    name="drill-point",
    title="Point of a drill",
    question="How is a drill set to the wheel for its point, how long is the point, and what do unlike lips do to the hole?",
    wants="The diameter is over the margins at the corners, the web is measured at the point, and the lip relief along the axis, across the margin at the outer corner; "
    "the land is that behind the corner, and the chisel edge angle may be counted either way.",
    neglects="It holds for two straight lips and takes the chisel edge as level; without the web the relief square to the lip takes the lip as in line with the axis, which makes it too large. "
    "The indicator readings take the flank as falling evenly, which a ground flank does only close behind the lip.",
    kinds=("twist-drill", "step-drill", "subland-drill", "centre-drill"),
    belongs_on=("lip",),
    inputs=(
        Field("diameter"),
        Field("point_angle"),
        Field("lip_height_difference", optional=True),
        Field("lip_relief_angle", optional=True, fill_from=("relief_angle",)),
        Field("web_thickness", optional=True),
        Field("chisel_edge_angle", optional=True),
        Field("land_width", optional=True),
        Field("land_measured_as", default="arc"),
    ),
    outputs=(
        "half_point_angle",
        "point_length",
        "hole_oversize",
        "hole_oversize_about_point",
        "point_offset",
        "relief_angle",
        "axial_drop",
        "chisel_edge_length",
        "lip_length",
        "chisel_height",
        "chisel_edge_angle",
        "chisel_edge_supplement",
        "land_angle",
    ),
    cautions=(*AT_THE_WHEEL, "sharp-edges"),
    compute=_compute,
    role=Role(
        place=50,
        sets=("half_point_angle",),
        otherwise_by=("work-head",),
        better=(("point_length", "point_height"), ("point_length", "chisel_height")),
        ground=("lip", "shoulder", "cone"),
    ),
    sample={
        "diameter": 12.7,
        "point_angle": math.radians(118),
        "lip_height_difference": 0.08,
        "lip_relief_angle": math.radians(12),
        "web_thickness": 2.0,
        "chisel_edge_angle": math.radians(125),
        "land_width": 3.0,
    },
)
