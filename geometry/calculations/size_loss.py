"""What a sharpening takes off the size of a tool, and how many are left."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace

from geometry.calculation import (
    AT_THE_WHEEL,
    Calculation,
    Check,
    Field,
    Inputs,
    Result,
    Row,
    passed,
    watch,
)
from geometry.complaints import complaint, settled
from geometry.cures import way
from geometry.edge.surface_input import Edge as SurfaceEdge
from geometry.edge.surface_input import edge_of, surface_fields
from geometry.edge.views import PLANES
from geometry.figure import Curve, Figure, curve
from geometry.kinds import EVERY_KIND
from geometry.preconditions import GeometryError, refuse
from geometry.role import LASTING, Role
from geometry.sentences import Rounding, angle, count, length
from geometry.surfaces import GROUND_BACK, SURFACES
from geometry.tooth import eccentric, flat
from geometry.tooth.heel_advice import SECOND_FACET, rubs
from geometry.tooth.land import land_angle, land_width
from geometry.upkeep.on_end import End
from geometry.upkeep.on_face import Face
from geometry.upkeep.sharpening import ground_back, most, stock_along, taper_from_book

SERVED = ("thread-land", "land", "cone", "shoulder", "bevel")
"""The surfaces whose edge goes back with the face; that which holds the size comes first."""

SHOWN = 10
"""How many sharpenings the table shows before it goes on to the last."""

EVEN = 0.0005
"""Sharpenings (mm) that differ by less take the same off the land, as it is shown: half a thousandth of a millimetre."""

STEEPEST = math.radians(45)
"""The greatest relief that the vocabulary takes for one."""


def _left(face: Face, left: int) -> Check:
    first = face.limits_passed(left + 1)[0]
    limit = {"land": face.least_land, "size": face.least_diameter}.get(first, 0.0)
    why = {
        "land": "the land would fall under {limit}" if limit else "the land would be gone",
        "size": "the diameter would fall under {limit}",
        "heel": "the heel of the flat would come up to the circle and rub",
    }[first]
    one, last = (face.land(face.edge(at)) - face.land(face.edge(at + 1)) for at in (0, left - 1))
    takes = "makes the tool {lost} smaller and takes {stock} off the land"
    if face.form != "eccentric":
        taken = f"The first sharpening {takes}"
    elif one - last < EVEN:
        taken = f"Each sharpening {takes}"
    else:
        taken = "Each sharpening makes the tool {lost} smaller; the first takes {stock} off the land, each later one less"
    says = f"{taken}. Sharpenings left: {{left}}; with one more {why}."
    lost = length(face.diameter - face.edge(1).diameter)
    parts = {
        "lost": lost,
        "stock": length(one),
        "left": count(left),
    }
    return passed(says, **parts, **({"limit": length(limit)} if limit else {}))


def _none_left(face: Face, edge: SurfaceEdge, along: float) -> Iterator[Check]:
    if face.form == "flat" and face.turned > 2 * face.relief_angle:
        yield _rubs_now(face, edge)
        return
    for limit in face.limits_passed(1):
        if limit == "land":
            yield _no_land(face, along)
        elif limit == "size":
            yield _no_size(face.edge(1).diameter, face.least_diameter)
        else:
            yield _no_heel(face, edge)


def _rubs_now(face: Face, edge: SurfaceEdge) -> Check:
    """The stop for a flat whose heel rubs before anything is ground."""
    return rubs(
        flat.drop(face.turned, face.relief_angle, face.diameter),
        face.turned,
        face.relief_angle,
        face.diameter,
        face.measured_as,
        lambda relief: edge.given(relief, "radial"),
    )


def _no_land(face: Face, along: float) -> Check:
    now = land_width(face.turned, face.diameter, face.measured_as)
    if now == 0:
        return watch("The land has no width, so nothing can come off its face. Measure the land.")
    if face.step >= face.turned:
        half = face.turned * face.diameter / 4 / along
        return complaint(
            "stop",
            "One sharpening of {stock} would take away the whole land.",
            [
                way(
                    "take {half} at a time, or less",
                    "stock_per_sharpening",
                    "half",
                    length(half, Rounding.DOWN),
                )
            ],
            stock=length(face.stock / along),
        )
    after = length(face.land(face.edge(1)), Rounding.DOWN)
    return complaint(
        "stop",
        "No sharpening is left: the land would fall under {least}.",
        [way("allow a land of {after}", "least_land", "after", after)],
        ["replace the tool"],
        least=length(face.least_land),
    )


def _no_size(diameter: float, least: float) -> Check:
    """The stop of a tool that one more sharpening makes too small."""
    return complaint(
        "stop",
        "No sharpening is left: the diameter would fall under {least}.",
        [way("allow a diameter of {after}", "least_diameter", "after", length(diameter, Rounding.DOWN))],
        ["use the tool for a smaller size"],
        least=length(least),
    )


def _no_heel(face: Face, edge: SurfaceEdge) -> Check:
    enough = edge.given((face.turned + face.step) / 2, "radial")
    widest = 2 * face.relief_angle - face.step
    ways = [
        way("before that, raise the relief to {enough}", "relief_angle", "enough", angle(enough, Rounding.UP))
    ]
    if widest > face.step:
        narrow = length(land_width(widest, face.diameter, face.measured_as), Rounding.DOWN)
        ways.append(way("narrow the land to {widest}", "land_width", "widest", narrow))
    return complaint(
        "stop",
        "Grinding the face of a flat takes relief away with it, and after one sharpening its heel rubs.",
        ways,
        [SECOND_FACET],
    )


def _face_row(face: Face, times: int) -> Row:
    edge = face.edge(times)
    return Row(
        f"after {times}",
        {
            "diameter_after": edge.diameter,
            "land_after": face.land(edge),
            "relief_after": max(edge.relief_angle, 0.0),
        },
    )


def _shown(left: int) -> list[int]:
    return sorted({*range(1, min(left, SHOWN) + 1), *([left] if left else [])})


def _profile(face: Face) -> Curve:
    if face.form == "eccentric":
        return curve("eccentric", face.turned, lambda a: eccentric.drop(a, face.relief_angle, face.diameter))
    reach = min(face.turned, face.relief_angle + math.radians(80))
    return curve("flat", reach, lambda a: flat.drop(a, face.relief_angle, face.diameter))


def _face_of(given: Inputs) -> tuple[Face, SurfaceEdge, float]:
    """The tool ground on its face, its edge, and how much of the land goes with each mm off the face."""
    diameter, measured_as = given.number("diameter"), given.choice("land_measured_as")
    edge = edge_of(given)
    radial = edge.seen(given.number("relief_angle"), "radial")
    if radial is None:
        raise refuse(
            "surface", "An end is ground back along the axis. Choose the end as the place that is ground."
        )
    along = stock_along(1.0, given.number_or("rake_angle", 0.0), radial)
    face = Face(
        diameter,
        radial,
        given.choice("relief_form"),
        given.number("stock_per_sharpening") * along,
        land_angle(given.number("land_width"), diameter, measured_as),
        measured_as,
        given.number_or("least_land", 0.0),
        given.number_or("least_diameter", 0.0),
    )
    ground_back(face.turned, diameter, face.relief_angle, face.turned, face.form)
    return face, edge, along


def _face_checks(given: Inputs, face: Face, edge: SurfaceEdge, along: float, left: int) -> Iterator[Check]:
    if left:
        yield _left(face, left)
    else:
        yield from _none_left(face, edge, along)
    if not given.has("least_land") and not given.has("least_diameter"):
        yield watch(
            "No limit was given, so the count runs until the land is gone. Give the least land that still holds the edge "
            "up, or the least diameter."
        )


def _face(given: Inputs) -> Result:
    face, edge, along = _face_of(given)
    left = most(lambda times: not face.limits_passed(times))
    after = face.edge(left)
    outputs = {
        "sharpenings_left": float(left),
        "diameter_after": after.diameter,
        "land_after": face.land(after),
    }
    if face.step < face.turned:
        outputs["size_lost"] = face.diameter - face.edge(1).diameter
    return Result(
        outputs,
        rows=[_face_row(face, times) for times in _shown(left)],
        checks=tuple(_face_checks(given, face, edge, along, left)),
        figure=Figure(face.diameter / 2, face.turned, (_profile(face),)) if face.turned else None,
        # It is told square to the axis, in whichever view the relief of the surface is given.
        heads={"relief_after": f"{edge.surface.title} relief after, {PLANES['radial']}"},
    )


def _end_left(end: End, left: int) -> Check:
    first = end.limits_passed(left + 1)[0]
    why = (
        "would go past the {limit} that may be ground away"
        if first == "length"
        else "would bring it under {limit}"
    )
    return passed(
        "Each sharpening makes the tool {lost} smaller. Sharpenings left: {left}; one more " + why + ".",
        lost=length(end.lost),
        left=count(left),
        limit=length(end.usable_length if first == "length" else end.least_diameter),
    )


def _end_none_left(end: End) -> Iterator[Check]:
    for limit in end.limits_passed(1):
        if limit == "size":
            yield _no_size(end.diameter_after(1), end.least_diameter)
        else:
            usable = length(end.usable_length, Rounding.DOWN)
            yield complaint(
                "stop",
                "No sharpening is left: {stock} is more than may be ground away.",
                [way("take no more than {usable}", "stock_per_sharpening", "usable", usable)],
                stock=length(end.stock),
            )


def _end_row(end: End, times: int) -> Row:
    return Row(
        f"after {times}",
        {"diameter_after": end.diameter_after(times), "length_after": end.length_after(times)},
    )


def _end_of(given: Inputs) -> End:
    taper = (
        given.number("taper_ratio")
        if given.has("taper_ratio")
        else taper_from_book(given.number("back_taper"))
    )
    end = End(
        given.number("diameter"),
        given.number("stock_per_sharpening"),
        taper,
        given.number("usable_length"),
        given.number_or("least_diameter", 0.0),
    )
    if end.lost >= end.diameter:
        raise GeometryError("So much taper leaves nothing of the tool behind one sharpening.", "taper_ratio")
    return end


def _end(given: Inputs) -> Result:
    end = _end_of(given)
    left = most(lambda times: not end.limits_passed(times))
    return Result(
        {
            "size_lost": end.lost,
            "sharpenings_left": float(left),
            "diameter_after": end.diameter_after(left),
            "length_after": end.length_after(left),
        },
        rows=[_end_row(end, times) for times in _shown(left)],
        checks=[_end_left(end, left)] if left else list(_end_none_left(end)),
    )


def _compute(given: Inputs) -> Result:
    found = _face(given) if given.choice("ground_on") == "face" else _end(given)
    return settled(found, given, _trial)


def _trial(given: Inputs, _: Check) -> Iterator[Check]:
    """The checks alone, for which one sharpening tells as much as all of them."""
    if given.choice("ground_on") == "face":
        face, edge, along = _face_of(given)
        if face.limits_passed(1):
            yield from _face_checks(given, face, edge, along, 0)
        return
    end = _end_of(given)
    if end.limits_passed(1):
        yield from _end_none_left(end)


CALCULATION = Calculation(
    name="size-loss",
    title="Size lost in sharpening",
    question="How much smaller does each sharpening make the tool, and how many are left?",
    wants="The diameter is that of the circle the edges run on now, and the land is measured on it; stock off the face is "
    "taken square to the face, stock off the end along the axis. On a tap the size hangs on the thread land, not on the chamfer.",
    neglects="It takes every sharpening as the same turn of the tool or the same length, and the rake as kept; "
    "the hook of a tap along its chord is taken for the rake, which is a little more on a concave face; on a drill ground on its end the web grows as well, and worn corners need more stock than a sharp edge.",
    kinds=EVERY_KIND,
    surfaces=SERVED,
    inputs=(
        Field("ground_on", default="face"),
        *(
            replace(field, when=field.when or ("ground_on", "face"))
            for field in surface_fields(*SERVED, default="land")
        ),
        Field("diameter"),
        Field("stock_per_sharpening"),
        Field("relief_angle", when=("ground_on", "face")),
        Field("rake_angle", optional=True, when=("ground_on", "face"), fill_from=("hook_angle",)),
        Field("relief_form", default="eccentric", when=("ground_on", "face")),
        Field("land_width", when=("ground_on", "face")),
        Field("land_measured_as", default="arc", when=("ground_on", "face")),
        Field("least_land", optional=True, when=("ground_on", "face")),
        Field("back_taper", one_of="taper", when=("ground_on", "end")),
        Field("taper_ratio", one_of="taper", when=("ground_on", "end")),
        Field("usable_length", when=("ground_on", "end")),
        Field("least_diameter", optional=True),
    ),
    outputs=("sharpenings_left", "size_lost", "diameter_after", "land_after", "length_after"),
    cautions=AT_THE_WHEEL,
    compute=_compute,
    role=Role(
        place=160,
        does=LASTING,
        ground=tuple(one for one in SURFACES if one not in GROUND_BACK),
        counts=True,
        sizes=True,
        tells=("pass", "note"),
    ),
    sample={
        "diameter": 12.0,
        "stock_per_sharpening": 0.2,
        "relief_angle": math.radians(4),
        "land_width": 3.0,
        "least_land": 1.0,
        "least_diameter": 11.9,
    },
)
