"""The relief of a rounded corner round its profile, by the reliefs of land and end."""

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
    Row,
    note,
    passed,
    worst_first,
)
from geometry.complaints import complaint, settled
from geometry.cone.corner import END, Corner, corner
from geometry.cures import Way, way
from geometry.plausible import relief_plausible
from geometry.preconditions import require_angle
from geometry.quantities import quantity
from geometry.role import Role
from geometry.sentences import Rounding, angle, length
from geometry.side_view import BODY, Mark, SideView

SHOWN = 6
"""Into how many equal parts the profile is cut for the table."""

HAIR = 1e-9
"""What a relief may fall short by its last digit, as a share."""


def _corner(given: Inputs) -> Corner:
    return corner(
        given.number("diameter"),
        given.number("corner_radius"),
        given.number("relief_angle"),
        given.number_or("end_relief_angle", 0.0),
    )


def _up_to(given: Inputs) -> float:
    return require_angle("profile_angle", given.number("profile_angle"), 0.0, END + HAIR)


def _ways(given: Inputs, made: Corner, at: float) -> list[Way]:
    """What raises the relief at the end of the profile where it is least."""
    least, up_to = given.number("least_form_relief"), _up_to(given)
    wanted = math.tan(least) * made.radius_at(at)
    found: list[Way] = []
    if at == 0.0 or up_to < END:
        left = wanted - made.back * math.sin(at)
        enough = math.atan(left / (made.radius * math.cos(at)))
        if 0 < enough <= quantity("relief_angle").high:
            found.append(
                way(
                    "raise the relief of the land to {land}",
                    "relief_angle",
                    "land",
                    angle(enough, Rounding.UP),
                )
            )
    if at > 0:
        back = (wanted - (made.inward * math.cos(at) if at < END else 0.0)) / math.sin(at)
        enough = math.atan(back / (made.radius - made.corner_radius))
        if 0 < enough <= quantity("end_relief_angle").high:
            says = "give the end a relief of {end}, by a cam that goes back along the axis as well"
            found.append(way(says, "end_relief_angle", "end", angle(enough, Rounding.UP)))
    return found


def _check(given: Inputs, made: Corner) -> Check:
    """Whether the relief is enough all along the profile; it is least at one of its ends."""
    wanted = given.number("least_form_relief")
    at = made.least(_up_to(given))
    found = made.relief(at)
    where = "the land" if at == 0.0 else "the end of the profile"
    if found <= 0:
        return complaint(
            "stop",
            f"At {where} the form has no relief square to itself: it rubs.",
            _ways(given, made, at) if wanted > 0 else (),
        )
    if found < wanted * (1 - HAIR):
        return complaint(
            "watch",
            f"At {where} the relief square to the profile is {{found}}, less than the {{wanted}} that no place shall fall "
            "short of.",
            _ways(given, made, at),
            found=angle(found),
            wanted=angle(wanted),
        )
    return passed("Nowhere on the profile is the relief square to it under {found}.", found=angle(found))


def _checks(given: Inputs, made: Corner) -> Iterator[Check]:
    yield from relief_plausible(given.number("relief_angle"), "land", key="relief_angle")
    yield _check(given, made)
    if made.back == 0:
        yield note(
            "A cam that goes only toward the axis gives each place its radial relief times the cosine of the profile angle."
        )
    yield note(
        "In a turn the cam goes {inward} toward the axis and {back} back along it.",
        inward=length(2 * math.pi * made.inward),
        back=length(2 * math.pi * made.back),
    )


def _rows(made: Corner, up_to: float) -> Iterator[Row]:
    for number in range(SHOWN + 1):
        turned = up_to * number / SHOWN
        label = "Land" if number == 0 else "End of the profile" if number == SHOWN else f"Place {number + 1}"
        values = {
            "diameter": 2 * made.radius_at(turned),
            "normal_relief_angle": made.relief(turned),
        }
        if number:
            values = {"profile_angle": turned, **values}
        yield Row(label, values)


def _side(made: Corner, up_to: float) -> SideView:
    front = made.corner_radius * math.sin(up_to)
    arc = [
        (front - made.corner_radius * math.sin(turned), made.radius_at(turned))
        for turned in (up_to * (1 - number / 12) for number in range(13))
    ]
    middle = arc[6]
    return SideView(
        ((0.0, 0.0), *((max(x, 0.0), r) for x, r in arc), (front + BODY * made.radius, made.radius)),
        (Mark("corner", max(middle[0], 0.0), middle[1]), Mark("land", front, made.radius)),
    )


def _all_checks(given: Inputs) -> tuple[Check, ...]:
    return worst_first(_checks(given, _corner(given)))


def _compute(given: Inputs) -> Result:
    made, up_to = _corner(given), _up_to(given)
    outputs = {
        "normal_relief_angle": made.relief(made.least(up_to)),
        "radial_throw": 2 * math.pi * made.inward,
        "axial_throw": 2 * math.pi * made.back,
    }
    found = Result(
        outputs, rows=tuple(_rows(made, up_to)), checks=_all_checks(given), side=_side(made, up_to)
    )
    return settled(found, given, lambda other, _: _all_checks(other))


CALCULATION = Calculation(
    name="corner-radius",
    title="Relief of a rounded corner",
    question="How much relief is left round a corner radius that is relieved as one form, and which cam gives it?",
    wants="The relief is that of the land, square to the axis, and that of the end, along the axis where the corner meets it; the "
    "diameter is that of the land. The throws are those of a whole turn.",
    neglects="It holds for even cams that move the whole form, ground in a plane through the axis; a face with rake cuts another "
    "profile than the wheel ground.",
    kinds=("counterbore", "step-drill", "subland-drill", "countersink"),
    belongs_on=("end", "shoulder"),
    beside=True,
    inputs=(
        Field("diameter"),
        Field("corner_radius"),
        Field("profile_angle", default=END),
        Field("relief_angle", fill_from=("land_relief_angle",)),
        Field("end_relief_angle", optional=True),
        Field("least_form_relief", default=math.radians(3)),
    ),
    outputs=("normal_relief_angle", "radial_throw", "axial_throw"),
    cautions=(*AT_THE_WHEEL, "sharp-edges"),
    compute=_compute,
    methods=("cam",),
    role=Role(place=84, of_course=(), about="corner_radius", tells=("pass", "note"), tabled=True),
    sample={
        "diameter": 20.0,
        "corner_radius": 3.0,
        "relief_angle": math.radians(8),
        "end_relief_angle": math.radians(6),
        "least_form_relief": math.radians(3),
    },
)
