"""Compound angles of a universal head or vise: swivel and tilt, or two tilts, that bring a face level."""

from __future__ import annotations

import math
from collections.abc import Iterator

from geometry.calculation import (
    AT_THE_WHEEL,
    Calculation,
    Check,
    Field,
    Inputs,
    Result,
    note,
    passed,
    watch,
    worst_first,
)
from geometry.kinds import EVERY_KIND
from geometry.role import Role
from geometry.sentences import angle
from geometry.setting.compound import Face, face_of_edge, face_of_slopes, square_to_edge

STEEPEST = math.radians(45)
"""As far as heads and vises commonly tilt; common practice, no source."""

SEEN = math.radians(0.005)
"""An angle (rad) under this is shown as none."""


def _face(given: Inputs) -> Face:
    if given.choice("face_given_by") == "slopes":
        return face_of_slopes(given.number("along_slope_angle"), given.number("cross_slope_angle"))
    return face_of_edge(
        given.number("edge_turn_angle"),
        given.number("edge_slope_angle"),
        given.number("edge_inclination_angle"),
    )


def _settings(given: Inputs, face: Face) -> dict[str, float]:
    if given.choice("head_axes") == "swivel-and-tilt":
        return {"base_swivel_angle": face.swivel, "compound_tilt_angle": face.tilt}
    first, second = face.two_tilts
    return {"first_tilt_angle": first, "second_tilt_angle": second}


def _steep(face: Face) -> Check:
    if face.tilt <= STEEPEST + 1e-9:
        return passed(
            "In all the face lies {tilt} from level, within what heads and vises tilt.",
            tilt=angle(face.tilt),
        )
    return watch(
        "In all the face lies {tilt} from level, more than the {most} that heads and vises commonly tilt. See what yours "
        "does, or set the tool over in the jaws and give the slopes that are left.",
        tilt=angle(face.tilt),
        most=angle(STEEPEST),
    )


def _how(given: Inputs, face: Face, found: dict[str, float]) -> Iterator[Check]:
    if face.tilt < SEEN:
        yield note("The face lies level as it is: set all scales to zero.")
        return
    if "base_swivel_angle" in found:
        yield note(
            "The face falls most {swivel} "
            + _turned(found["base_swivel_angle"])
            + ": swivel the base by that until this "
            "way lies where the head tilts, and tilt {tilt}, so that the side to which it falls comes up.",
            swivel=angle(abs(found["base_swivel_angle"])),
            tilt=angle(found["compound_tilt_angle"]),
        )
        return
    first, second = found["first_tilt_angle"], found["second_tilt_angle"]
    yield note(
        "Tilt {first} about the lower axis, along the jaws, so that the "
        + ("far" if first >= 0 else "near")
        + " side comes up; then {second} about the upper one, so that the "
        + ("right" if second >= 0 else "left")
        + " side comes up.",
        first=angle(abs(first)),
        second=angle(abs(second)),
    )
    error = abs(math.atan(face.across) - first)
    if error >= SEEN:
        other, after = face.other_order
        yield note(
            "Set as two plain slopes the face would lie {error} off. With the axis across the jaws below the other one, tilt "
            "{other} about it and then {after} about the one along them.",
            error=angle(error),
            other=angle(abs(other)),
            after=angle(abs(after)),
        )


def _turned(swivel: float) -> str:
    return "from the jaws toward the far side" if swivel >= 0 else "from the jaws toward you"


def _compute(given: Inputs) -> Result:
    face = _face(given)
    settings = _settings(given, face)
    slope, inclination = face.at_edge(given.number("edge_turn_angle"))
    outputs = {
        **settings,
        "along_slope_angle": math.atan(face.along),
        "cross_slope_angle": math.atan(face.across),
        "edge_slope_angle": slope,
        "edge_inclination_angle": inclination,
        "normal_slope_angle": square_to_edge(slope, inclination),
    }
    known = {
        "slopes": ("along_slope_angle", "cross_slope_angle"),
        "edge": ("edge_slope_angle", "edge_inclination_angle"),
    }[given.choice("face_given_by")]
    outputs = {key: value for key, value in outputs.items() if key not in known}
    return Result(outputs, checks=worst_first((_steep(face), *_how(given, face, settings))))


CALCULATION = Calculation(
    name="compound-angles",
    title="Compound angles of a head or vise",
    question="How are a universal head or vise swivelled and tilted to bring a face with two slopes level, and what is its slope at an edge?",
    wants="Slopes count from the base, which lies parallel to the face of the wheel with all scales at zero: along the jaws and across "
    "them, or square to an edge that is turned from across the jaws. Of a face on a helix the turn is the helix angle.",
    neglects="It holds for a flat face and axes square to each other; the tool sits in the jaws along them. Where the face is a "
    "rake, the slope in the plane square to the edge is the normal rake.",
    kinds=EVERY_KIND,
    inputs=(
        Field("face_given_by", default="slopes"),
        Field("along_slope_angle", when=("face_given_by", "slopes")),
        Field("cross_slope_angle", when=("face_given_by", "slopes")),
        Field("edge_slope_angle", when=("face_given_by", "edge")),
        Field("edge_inclination_angle", default=0.0, when=("face_given_by", "edge")),
        Field("edge_turn_angle", default=0.0),
        Field("head_axes", default="swivel-and-tilt"),
    ),
    outputs=(
        "base_swivel_angle",
        "compound_tilt_angle",
        "first_tilt_angle",
        "second_tilt_angle",
        "along_slope_angle",
        "cross_slope_angle",
        "edge_slope_angle",
        "edge_inclination_angle",
        "normal_slope_angle",
    ),
    cautions=AT_THE_WHEEL,
    compute=_compute,
    role=Role(
        place=72,
        of_course=(),
        about="cross_slope_angle",
        sets=("base_swivel_angle", "compound_tilt_angle", "first_tilt_angle", "second_tilt_angle"),
        tells=("pass", "note"),
    ),
    sample={
        "along_slope_angle": math.radians(8),
        "cross_slope_angle": math.radians(12),
        "edge_turn_angle": math.radians(15),
        "head_axes": "two-tilts",
    },
)
