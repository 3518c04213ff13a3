"""How far to raise or lower the wheel head or the tooth rest for a relief angle."""

from __future__ import annotations

import math
from dataclasses import replace

from geometry.calculation import AT_THE_WHEEL, Calculation, Check, Field, Inputs, Result, note, stop, watch
from geometry.edge.surface_input import Edge, edge_of, surface_fields
from geometry.edge.views import View
from geometry.kinds import EVERY_KIND
from geometry.preconditions import NotGiven, refuse
from geometry.role import Role
from geometry.sentences import angle, length
from geometry.setting.height import FROM_THE_AXIS, relief_of_height, rule_height, setting_height
from geometry.setting.swivel_notes import left_by_swivel, turned_down
from geometry.setting.under_rest import edge_of_relief, edge_of_swivel, swivel_for_edge
from geometry.surfaces import SURFACES
from geometry.wheel.types import DISH, FLARING_CUP, ON_THE_END, STRAIGHT, STRAIGHT_CUP, title

VIEW_SET: dict[bool, View] = {True: "normal", False: "radial"}
"""In which view a height gives its relief. The rim of a straight wheel turns its tangent about a line along the edge:
square to the edge. A tooth rest under a cup wheel turns the tool about its own axis: square to that. Derived."""

SERVED = ("land", "thread-land", "cone", "chamfer", "shoulder", "bevel", "lip", "end")
"""The surfaces that are ground by a height."""

ALONG_THE_AXIS = ("lip", "end")
"""Surfaces whose relief is along the axis. A straight wheel gives it, for it turns its tangent about the edge; a tooth
rest turns the tool about its own axis, which tips a lip out of the wheel's face and does nothing to an end. Derived."""

AXIS_TO_WHEEL = "axis_to_wheel_angle"
"""The quantity that holds how far a tool is swivelled whose tooth is turned down by its rest."""

SWIVELLED = {
    key: SURFACES[key].edge_key for key in SERVED if SURFACES[key].edge_key and key not in ALONG_THE_AXIS
}
"""The surfaces whose edge lies at an angle that a swivel makes, each with the quantity that says it."""

SHOWN = math.radians(0.005)
"""Two angles (rad) nearer than this are shown alike."""

RULE_GOOD_TO = math.radians(15)
"""Up to here the shop rule stays within about one part in a hundred of the exact height; derived."""


def _compute(given: Inputs) -> Result:
    shape = given.choice("wheel_shape")
    is_straight = shape == STRAIGHT
    key = "wheel_head_height" if is_straight else "tooth_rest_height"
    diameter = given.number("wheel_diameter" if is_straight else "diameter")
    edge, view = _edge(given, is_straight=is_straight), VIEW_SET[is_straight]
    _require_served(edge, is_straight=is_straight)
    exact, set_relief = _height_and_relief(given, edge, view, diameter, key)
    relief, is_swivelled = edge.given(set_relief, view), given.has(AXIS_TO_WHEEL)
    rule = rule_height(set_relief, diameter)
    return Result(
        outputs={
            key: exact,
            "rule_height": rule,
            "rule_difference": rule - exact,
            "relief_angle": relief,
            **edge.reliefs(relief),
            **_swivel(edge, set_relief, is_straight=is_straight),
            **({edge.surface.edge_key: edge.kappa / edge.surface.edge_share} if is_swivelled else {}),
        },
        checks=(
            _how(
                shape,
                exact,
                diameter,
                "relief_angle" if given.has("relief_angle") else key,
                "edge" if edge.surface.key in ALONG_THE_AXIS else "tooth rest",
            ),
            *_dish(shape),
            *_rule(set_relief, exact, rule),
            *_turned(edge, view, set_relief, is_given=is_swivelled),
        ),
    )


def _height_and_relief(
    given: Inputs, edge: Edge, view: View, diameter: float, key: str
) -> tuple[float, float]:
    """The height (mm) under its key and the relief (rad) that it makes, whichever of the two was given."""
    if given.has("relief_angle"):
        set_relief = edge.seen(given.number("relief_angle"), view)
        assert set_relief is not None, "an edge that a tooth rest serves is seen square to the axis"
        return setting_height(set_relief, diameter), set_relief
    if not given.has(key):
        raise NotGiven(f"Give relief_angle or {key}.", key)
    return given.number(key), relief_of_height(given.number(key), diameter, key)


def _edge(given: Inputs, *, is_straight: bool) -> Edge:
    """The edge, as it is wanted, or as it comes of a swivel."""
    if not given.has(AXIS_TO_WHEEL):
        return edge_of(given)
    surface, swivel = SURFACES[given.choice("surface")], given.number(AXIS_TO_WHEEL)
    if is_straight:
        kappa = swivel
    elif given.has("relief_angle") and surface.view == "normal":
        kappa = edge_of_relief(swivel, given.number("relief_angle"))
    elif given.has("relief_angle"):
        kappa = edge_of_swivel(swivel, given.number("relief_angle"))
    elif given.has("tooth_rest_height"):
        height = given.number("tooth_rest_height")
        kappa = edge_of_swivel(
            swivel, relief_of_height(height, given.number("diameter"), "tooth_rest_height")
        )
    else:
        raise NotGiven("Give relief_angle or tooth_rest_height.", "tooth_rest_height")
    return edge_of(given.but({surface.edge_key: kappa / surface.edge_share}))


def _require_served(edge: Edge, *, is_straight: bool) -> None:
    """A tooth rest under a cup relieves no lip and nothing that lies square to the axis.

    Raises:
        GeometryError: with what to do instead.
    """
    if is_straight:
        return
    if edge.surface.key == "lip":
        raise refuse(
            "surface",
            "The height of a tooth rest does not set a lip. Roll and swivel it on the work head, or take a straight wheel.",
        )
    if edge.is_end:
        raise refuse(
            "surface",
            "The height of a tooth rest gives an end no relief. Tilt the wheel or the work head.",
        )


def _swivel(edge: Edge, set_relief: float, *, is_straight: bool) -> dict[str, float]:
    """How far the side of the tool is swivelled; a tooth that its rest has turned down wants less than its edge."""
    if is_straight or edge.is_cylinder:
        return edge.half_included()
    return {AXIS_TO_WHEEL: swivel_for_edge(edge.kappa, set_relief)}


def _turned(edge: Edge, view: View, relief: float, *, is_given: bool) -> tuple[Check, ...]:
    """On an edge at an angle to the axis: in which view the height works, and by how much it is swivelled."""
    if edge.is_cylinder:
        return ()
    if view == "radial" and edge.kappa - swivel_for_edge(edge.kappa, relief) >= SHOWN:
        return (left_by_swivel(edge, relief) if is_given else turned_down(edge, relief),)
    return (
        note(
            "The height gives the relief {view}, {relief}; swivel by {kappa} so that the edge runs along the wheel.",
            view="square to the edge" if view == "normal" else "square to the axis",
            relief=angle(relief),
            kappa=angle(edge.kappa),
        ),
    )


def _how(shape: str, exact: float, diameter: float, asked: str, level: str) -> Check:
    if exact == 0:
        says = "Without height there is no relief: the whole land rubs."
        if asked == "relief_angle":
            return stop(f"{says} Choose a relief above {{zero}}.", cure=((asked, 0.0),), zero=angle(0.0))
        return stop(f"{says} Choose a height above {{zero}}.", cure=((asked, 0.0),), zero=length(0.0))
    if shape == STRAIGHT:
        return note(
            "{wheel}: set the wheel axis {height} above the tool axis, {level} level with the tool axis. The figure "
            "uses the WHEEL's diameter of {diameter}; take it again when the wheel has been dressed.",
            wheel=title(shape),
            level=level,
            height=length(exact),
            diameter=length(diameter),
        )
    return note(
        "{wheel}: set the tooth rest {height} below the tool axis. The figure uses the TOOL's diameter of {diameter}.",
        wheel=title(shape),
        height=length(exact),
        diameter=length(diameter),
    )


def _dish(shape: str) -> tuple[Check, ...]:
    """A dish is not a cup: its rim is thin and made for the faces of flutes (common practice, no source)."""
    if shape != DISH:
        return ()
    return (
        watch(
            "A dish wheel is made for the faces of flutes, and its rim is thin. Grind a land with a cup wheel or a straight one.",
            cure=(("wheel_shape", STRAIGHT_CUP), ("wheel_shape", FLARING_CUP)),
        ),
    )


def _rule(relief: float, exact: float, rule: float) -> tuple[Check, ...]:
    if relief <= RULE_GOOD_TO:
        return ()
    return (
        note(
            "Above {limit} the shop rule drifts: it asks for {difference} more than the exact height. Use the exact one, {exact}.",
            limit=angle(RULE_GOOD_TO),
            difference=length(rule - exact),
            exact=length(exact),
        ),
    )


CALCULATION = Calculation(
    name="setting-height",
    title="Setting height for a relief angle",
    question="How high does the wheel head or the tooth rest stand to grind this relief angle, or which angle does a height give?",
    wants="For a straight wheel it wants the diameter of the WHEEL as it is now; "
    "for a cup or dish wheel, with the tooth rest moved, it wants the diameter of the TOOL.",
    neglects="It takes the tooth rest level with the axis to begin with and the wheel trued; "
    "it grinds one flat (cup) or very slightly hollow (straight) facet and says nothing of whether the heel clears. On an edge at an "
    "angle to the axis the tooth rest goes along with the tool; one that stands beside the wheel turns the tooth the more "
    "the nearer to the point it lies, and leaves no straight edge.",
    kinds=EVERY_KIND,
    inputs=(
        *(
            replace(field, one_of="edge") if field.key in SWIVELLED.values() else field
            for field in surface_fields(*SERVED, default="land")
        ),
        Field(AXIS_TO_WHEEL, one_of="edge", when=("surface", *SWIVELLED)),
        Field("relief_angle", one_of="relief"),
        Field("wheel_head_height", one_of="relief", when=("wheel_shape", STRAIGHT)),
        Field("tooth_rest_height", one_of="relief", when=("wheel_shape", *ON_THE_END)),
        Field("wheel_shape", default=STRAIGHT),
        Field("wheel_diameter", when=("wheel_shape", STRAIGHT)),
        Field("diameter", when=("wheel_shape", *ON_THE_END)),
    ),
    outputs=(
        "wheel_head_height",
        "tooth_rest_height",
        "relief_angle",
        "rule_height",
        "rule_difference",
        "normal_relief_angle",
        "radial_relief_angle",
        "axial_relief_angle",
        "half_included_angle",
        AXIS_TO_WHEEL,
        *dict.fromkeys(SWIVELLED.values()),
    ),
    cautions=(*AT_THE_WHEEL, "pinch", "side-grinding", "dressing"),
    compute=_compute,
    methods=("wheel-head-height", "tooth-rest-height"),
    surfaces=SERVED,
    role=Role(
        place=60,
        sets=("half_included_angle", AXIS_TO_WHEEL, "wheel_head_height", "tooth_rest_height"),
        better=tuple((key, AXIS_TO_WHEEL) for key in ("half_included_angle", "chamfer_angle", "bevel_angle")),
        counted=((AXIS_TO_WHEEL, "less than the edge, as the rest turns the tooth"), *FROM_THE_AXIS),
        not_on=tuple(("tooth-rest-height", one) for one in ALONG_THE_AXIS),
        tells=("pass", "note"),
    ),
    sample={"relief_angle": math.radians(7), "wheel_shape": "type-1-straight", "wheel_diameter": 150.0},
)
