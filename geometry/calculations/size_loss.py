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
    note,
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
from geometry.preconditions import GeometryError, NotGiven, refuse
from geometry.role import LASTING, Role
from geometry.sentences import Rounding, count, length
from geometry.surfaces import GROUND_BACK, SURFACES
from geometry.tooth import eccentric, flat
from geometry.tooth.facets import facet_of_width
from geometry.tooth.land import land_angle
from geometry.tooth.margin import MarginedLand, margined_land
from geometry.upkeep.face_advice import left_told, no_size, none_left
from geometry.upkeep.on_end import End
from geometry.upkeep.on_face import Face
from geometry.upkeep.on_margin import Margined
from geometry.upkeep.on_margin import told as margin_told
from geometry.upkeep.sharpening import ground_back, most, stock_along, taper_from_book

SERVED = ("thread-land", "land", "cone", "shoulder", "bevel")
"""The surfaces whose edge goes back with the face; that which holds the size comes first."""

SHOWN = 10
"""How many sharpenings the table shows before it goes on to the last."""

STEEPEST = math.radians(45)
"""The greatest relief that the vocabulary takes for one."""


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


def _profile(face: Face, facets: MarginedLand | None) -> Curve:
    if facets is not None:
        return curve("facets", face.turned, facets.drop, tuple(one.end for one in facets.facets[:-1]))
    if face.form == "eccentric":
        return curve("eccentric", face.turned, lambda a: eccentric.drop(a, face.relief_angle, face.diameter))
    reach = min(face.turned if face.primary is None else face.primary, face.relief_angle + math.radians(80))
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
    turned = land_angle(given.number("land_width"), diameter, measured_as)
    facets = _facets(given, radial, turned)
    face = Face(
        diameter,
        radial,
        given.choice("relief_form"),
        given.number("stock_per_sharpening") * along,
        turned,
        measured_as,
        given.number_or("least_land", 0.0),
        given.number_or("least_diameter", 0.0),
        _primary(given, radial, turned),
        None if facets is None else facets.drop(turned),
    )
    ground_back(face.turned, diameter, face.relief_angle, face.turned, face.form)
    return face, edge, along


def _facets(given: Inputs, relief: float, turned: float) -> MarginedLand | None:
    """The primary and the secondary land of a tooth, where both are known; nothing on one with a single surface."""
    if given.choice("relief_form") != "flat" or not given.has("secondary_relief_angle"):
        return None
    if not given.has("primary_land"):
        raise NotGiven(
            "Give the width of the primary land as well, where the secondary begins.", "primary_land"
        )
    primary = relief, given.number("primary_land")
    return margined_land(
        given.number("diameter"), 0.0, turned, primary, given.number("secondary_relief_angle")
    )


def _primary(given: Inputs, relief: float, turned: float) -> float | None:
    """Where the primary land ends (rad behind the edge); nothing where one surface goes to the heel."""
    if given.choice("relief_form") != "flat" or not given.has("primary_land"):
        return None
    ends = facet_of_width(0.0, 0.0, relief, given.number("primary_land"), given.number("diameter")).end
    return ends if ends < turned else None


def _face_checks(given: Inputs, face: Face, edge: SurfaceEdge, along: float, left: int) -> Iterator[Check]:
    if left:
        yield left_told(face, left)
    else:
        yield from none_left(face, edge, along)
    if face.primary is not None and face.heel_drop is None:
        yield note(
            "The count goes by the primary land alone; the facets behind it must lie inside the smaller circle too."
        )
    elif not given.has("least_land") and not given.has("least_diameter") and face.primary is None:
        yield watch(
            "No limit was given, so the count runs until the land is gone. Give the least land that still holds the edge "
            "up, or the least diameter."
        )


def _face(given: Inputs) -> Result:
    if given.number_or("margin_width", 0.0) > 0:
        return _margin(given)
    face, edge, along = _face_of(given)
    left = most(lambda times: not face.limits_passed(times))
    after, facets = face.edge(left), _facets(given, face.relief_angle, face.turned)
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
        figure=Figure(face.diameter / 2, face.turned, (_profile(face, facets),)) if face.turned else None,
        # It is told square to the axis, in whichever view the relief of the surface is given.
        heads={"relief_after": f"{edge.surface.title} relief after, {PLANES['radial']}"},
    )


def _margined(given: Inputs) -> Margined:
    """The tool whose edge goes back along its margin, where nothing falls behind it."""
    diameter, measured_as = given.number("diameter"), given.choice("land_measured_as")
    return Margined(
        diameter,
        land_angle(given.number("margin_width"), diameter, "arc"),
        stock_along(given.number("stock_per_sharpening"), given.number_or("rake_angle", 0.0), 0.0),
        land_angle(given.number("land_width"), diameter, measured_as),
        measured_as,
        given.number_or("least_land", 0.0),
        given.number_or("least_diameter", 0.0),
    )


def _margin(given: Inputs) -> Result:
    tooth = _margined(given)
    left = most(lambda times: not tooth.limits_passed(times))
    rows = [
        Row(
            f"after {times}",
            {
                "diameter_after": tooth.diameter,
                "land_after": tooth.land_after(times),
                "margin_width": tooth.margin_after(times),
            },
        )
        for times in _shown(left)
    ]
    outputs = {
        "sharpenings_left": float(left),
        "diameter_after": tooth.diameter,
        "land_after": tooth.land_after(left),
    }
    if tooth.step < tooth.margin:
        outputs["size_lost"] = 0.0
    return Result(
        outputs, rows=rows, checks=tuple(margin_told(tooth, left)), heads={"margin_width": "margin after"}
    )


def _end_left(end: End, left: int) -> Check:
    first = end.limits_passed(left + 1)[0]
    why = (
        "would go past the {limit} that may be ground away"
        if first == "length"
        else "would bring it under {limit}"
    )
    return passed(
        "Each sharpening of the end makes the tool {lost} smaller. Sharpenings left: {left}; one more "
        + why
        + ".",
        lost=length(end.lost),
        left=count(left),
        limit=length(end.usable_length if first == "length" else end.least_diameter),
    )


def _end_none_left(end: End) -> Iterator[Check]:
    for limit in end.limits_passed(1):
        if limit == "size":
            yield no_size(end.diameter_after(1), end.least_diameter)
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
        if given.number_or("margin_width", 0.0) > 0:
            tooth = _margined(given)
            yield from () if not tooth.limits_passed(1) else margin_told(tooth, 0)
            return
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
    "taken square to the face, stock off the end along the axis. A margin on the circle keeps the size until it is ground away, "
    "and goes by its width round the circle; without one, the relief counts over the primary land where flats stand behind "
    "one another. On a tap the size hangs on the thread land, not on the chamfer.",
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
        Field("margin_width", optional=True, when=("surface", "land")),
        Field("primary_land", optional=True, when=("surface", "land")),
        Field(
            "secondary_relief_angle",
            optional=True,
            when=("surface", "land"),
            fill_from=("second_land_relief_angle",),
        ),
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
