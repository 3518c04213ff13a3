"""The relief that a cam gives on a cone, at several diameters, and the throw for a wanted relief."""

from __future__ import annotations

import math
from collections.abc import Callable

from geometry.calculation import (
    AT_THE_WHEEL,
    Calculation,
    Check,
    Field,
    Inputs,
    Result,
    Row,
    Station,
    note,
    passed,
    stations,
)
from geometry.complaints import complaint, settled
from geometry.cone import relief as cone
from geometry.cone.one_cam import CamOnCone, advice_to, ways_to
from geometry.edge.cam import NEAR_ENOUGH
from geometry.edge.surface_input import RELIEF_KEYS, edge_of, surface_fields
from geometry.figure import Figure, curve
from geometry.preconditions import NotGiven
from geometry.role import Cam, Role
from geometry.sentences import Amount, angle, length, ratio
from geometry.side_view import cone_view
from geometry.tooth.land import land_angle

SERVED = ("cone", "shoulder", "chamfer", "bevel")
"""The surfaces that are parts of a cone."""

HEEL_KEYS = {"drop": "heel_drop", "square_drop": "square_drop", "axial_drop": "axial_drop"}
"""The answer for each reading at the heel; the one at the axis is the heel's drop."""

ALIKE = 5e-5
"""A ratio this near to one is shown as one."""

CLOSE_ENOUGH = 1e-9
"""A relief this near to the wanted one (radians) has reached it: far finer than any machine; no source."""


def _cam(given: Inputs) -> CamOnCone:
    has_cam = given.has("radial_throw") or given.has("axial_throw")
    if not has_cam and not given.has("relief_angle"):
        raise NotGiven(
            "Give radial_throw or axial_throw, or both, to find the relief; or give relief_angle to find the throw.",
            "radial_throw",
        )
    diameters = tuple(sorted(given.numbers("diameter"), reverse=True))
    edge, per = edge_of(given), given.choice("throw_per")
    included = 2 * edge.kappa
    turn = cone.radians_of_throw(per, given.number_or("flutes", 1))
    radial, axial = given.number_or("radial_throw", 0.0), given.number_or("axial_throw", 0.0)
    if has_cam:
        square = cone.square_throw(radial, axial, included)
    else:
        square = turn * cone.square_throw_for(edge.normal(given.number("relief_angle")), diameters[0])
    return CamOnCone(included, diameters, turn, f"per {per}", radial, axial, square, edge)


def _limits(cam: CamOnCone) -> tuple[Check, ...]:
    """What is said of a cone that is a face or a cylinder."""
    radial_share, axial_share = cone.half_angle_parts(cam.included_angle)
    if radial_share == 0:
        return (
            note("A cone of {whole} is a face: a radial throw gives it no relief, only the axial throw counts.",
                   whole=angle(cam.included_angle)),
        )  # fmt: skip
    if axial_share == 0:
        return (
            note("A cone of {whole} is a cylinder: an axial throw gives it no relief, only the radial throw counts.",
                   whole=angle(cam.included_angle)),
        )  # fmt: skip
    return ()


def _relief_check(cam: CamOnCone) -> Check:
    largest, smallest = cam.diameters[0], cam.diameters[-1]
    least, greatest = cam.relief(largest), cam.relief(smallest)
    if cam.square <= 0:
        ways = advice_to(cam, 0.0, "above")
        if cam.square == 0:
            return complaint("stop", "The throws give no relief: the whole land rubs.", ways)
        return complaint(
            "stop",
            "The land rises behind the edge, by {rise} at {diameter}: it will rub.",
            ways,
            rise=angle(-greatest),
            diameter=length(smallest),
        )
    if largest == smallest:
        return note(
            "The relief square to the cone is {least} at {largest}.",
            least=angle(least),
            largest=length(largest),
        )
    return note(
        "The relief square to the cone is least, {least}, at the largest diameter, {largest}, and grows toward the "
        "point to {greatest} at {smallest}.",
        least=angle(least),
        largest=length(largest),
        greatest=angle(greatest),
        smallest=length(smallest),
    )


def _wanted_check(cam: CamOnCone, wanted: float, *, has_cam: bool) -> Check:
    largest = cam.diameters[0]
    square = cam.turn * cone.square_throw_for(cam.edge.normal(wanted), largest)
    say: dict[str, Amount | str] = {"wanted": angle(wanted), "diameter": length(largest)}
    if not has_cam:
        return _alone(cam, square, say)
    found = cam.as_given(largest)
    if wanted - CLOSE_ENOUGH <= found <= wanted + NEAR_ENOUGH:
        return passed("The relief at {diameter} reaches the {wanted} wanted there.", **say)
    off = "short of" if found < wanted else "more than"
    return complaint(
        "watch",
        "The relief at {diameter} is {found}, " + off + " the {wanted} wanted there.",
        # Rounded up to what can be set it is more than the throw that stands among the answers.
        advice_to(cam, square, "to at least" if found < wanted else "down to at least"),
        found=angle(found),
        **say,
    )


def _alone(cam: CamOnCone, square: float, say: dict[str, Amount | str]) -> Check:
    """Which cam gives the wanted relief: radial alone, axial alone, or a mix of them."""
    ways, amounts = ways_to(cam, square, "alone")
    template = "For {wanted} at {diameter} make " + ", or ".join(ways) + ", rounded up to what can be set."
    if len(ways) == 2:
        radial_share, axial_share = cone.half_angle_parts(cam.included_angle)
        times = axial_share / radial_share
        if abs(times - 1) < ALIKE:
            template += " In a mix both throws count alike: added up they make that length."
        else:
            template += " In a mix an axial throw does as much as a radial one {times} times as long."
            amounts["times"] = ratio(times)
    return note(template, **say, **amounts)


def _rows(cam: CamOnCone) -> tuple[Row, ...]:
    found = []
    for place, diameter in enumerate(cam.diameters):
        values = {"diameter": diameter, "relief_angle": cam.as_given(diameter)}
        if cam.square > 0:
            own = RELIEF_KEYS[cam.edge.surface.view]
            values |= {
                key: one for key, one in cam.edge.reliefs(cam.as_given(diameter)).items() if key != own
            }
        last = place == len(cam.diameters) - 1
        found.append(
            Row(
                "Largest diameter" if place == 0 else "Smallest diameter" if last else f"Place {place + 1}",
                values,
            )
        )
    return tuple(found)


def _readings(cam: CamOnCone, turned: float) -> tuple[Station, ...]:
    return stations(turned, _falls(cam))


def _falls(cam: CamOnCone) -> dict[str, Callable[[float], float]]:
    """What an indicator reads behind the edge: pointed at the axis, square to the cone and along the axis."""
    per_radian = cam.square / cam.turn
    radial_share, axial_share = cone.half_angle_parts(cam.included_angle)
    readings: dict[str, Callable[[float], float]] = {}
    if radial_share > 0:
        readings["drop"] = lambda a: per_radian * a / radial_share
    readings["square_drop"] = lambda a: per_radian * a
    if axial_share > 0:
        readings["axial_drop"] = lambda a: per_radian * a / axial_share
    return readings


def _figure(cam: CamOnCone, turned: float) -> Figure | None:
    """The section square to the axis through the largest diameter, where the land is a radial throw too."""
    radial_share, radius = cone.half_angle_parts(cam.included_angle)[0], cam.diameters[0] / 2
    if radial_share == 0 or turned == 0 or not 0 <= cam.square / cam.turn * turned < radius * radial_share:
        return None
    per_radian = cam.square / cam.turn / radial_share
    return Figure(radius, turned, (curve("eccentric", turned, lambda a: per_radian * a),))


def _of_wanted(given: Inputs, cam: CamOnCone) -> tuple[Check, ...]:
    if not given.has("relief_angle"):
        return ()
    has_cam = given.has("radial_throw") or given.has("axial_throw")
    return (_wanted_check(cam, given.number("relief_angle"), has_cam=has_cam),)


def _trial(given: Inputs, of: Check) -> tuple[Check, ...]:
    """What would be said again of other throws: a watch is of the relief wanted, a stop of the relief itself."""
    cam = _cam(given)
    return _of_wanted(given, cam) if of.state == "watch" else (_relief_check(cam),)


def _compute(given: Inputs) -> Result:
    return settled(_raw(given), given, _trial)


def _raw(given: Inputs) -> Result:
    cam = _cam(given)
    outputs = {
        "relief_angle": min(map(cam.as_given, cam.diameters)),
        "greatest_relief_angle": max(map(cam.as_given, cam.diameters)),
        "square_throw": cam.square,
        **cam.edge.half_included(),
    }
    checks = (*_limits(cam), _relief_check(cam), *_of_wanted(given, cam))
    if given.has("relief_angle"):
        square = cam.edge.normal(given.number("relief_angle"))
        needed = cam.needed(cam.turn * cone.square_throw_for(square, cam.diameters[0]))
        outputs |= {f"needed_{name}_throw": value for name, value in needed.items()}
    side = cone_view(cam.included_angle, cam.diameters)
    if not given.has("land_width"):
        return Result(outputs, rows=_rows(cam), checks=checks, side=side)
    turned = land_angle(given.number("land_width"), cam.diameters[0], given.choice("land_measured_as"))
    falls = _falls(cam)
    outputs |= {HEEL_KEYS[key]: fall(turned) for key, fall in falls.items()} | {"land_angle": turned}
    return Result(outputs, _readings(cam, turned), _rows(cam), checks, _figure(cam, turned), side)


CALCULATION = Calculation(
    name="cone-relief",
    title="Relief of a cone from its throw",
    question="What relief does a throw give at each diameter of a countersink, chamfer or shoulder, or which throw gives the relief?",
    wants="Give the diameters of the places along the edge, and the throw of the cam inward (radial) and away from the point (axial), both counted above zero; "
    "a wanted relief and the land are those at the largest of these diameters.",
    neglects="It holds for a straight edge and even cams, and takes the edge as lying in one plane with the axis. "
    "The relief is counted in the view in which the surface's is given; the other views stand in the table.",
    kinds=("countersink", "step-drill", "subland-drill", "counterbore", "tap", "reamer", "centre-drill"),
    surfaces=SERVED,
    inputs=(
        *surface_fields(*SERVED, default="cone"),
        Field("diameter", many=True),
        Field("throw_per", default="turn"),
        Field("flutes", when=("throw_per", "tooth")),
        Field("radial_throw", optional=True),
        Field("axial_throw", optional=True),
        Field("relief_angle", optional=True),
        Field("land_width", optional=True),
        Field("land_measured_as", default="arc"),
    ),
    outputs=(
        "relief_angle",
        "greatest_relief_angle",
        "square_throw",
        "needed_radial_throw",
        "needed_axial_throw",
        "heel_drop",
        "square_drop",
        "axial_drop",
        "land_angle",
        "half_included_angle",
    ),
    cautions=(*AT_THE_WHEEL, "sharp-edges"),
    compute=_compute,
    methods=("cam",),
    role=Role(
        place=80,
        of_course=("countersink", "centre-drill"),
        about="included_angle",
        sets=("half_included_angle", "radial_throw", "axial_throw", "needed_radial_throw"),
        cam=Cam("radial_throw", "relief_angle", gives=(("", "relief_angle"),)),
        repeats_cam=True,
        tells=("pass",),
        tabled=True,
    ),
    sample={
        "included_angle": math.radians(82),
        "diameter": (20.0, 12.0, 6.0),
        "throw_per": "tooth",
        "flutes": 3.0,
        "radial_throw": 1.2,
        "axial_throw": 0.8,
        "relief_angle": math.radians(8),
        "land_width": 3.0,
    },
)
