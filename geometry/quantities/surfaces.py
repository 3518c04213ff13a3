"""Words for the reliefs of a tool's surfaces, the views in which they are given and how they are made.

Each surface has its own relief and its own second facet; the shoulder's and the lip's first ones stand
with the other words for cones and drill points.
"""

from __future__ import annotations

from geometry.edge.views import VIEWS
from geometry.quantities.quantity import Quantity, angle, choice
from geometry.surfaces import SURFACES, Surface

_AT_THE_AXIS = (
    "Square to the axis: the indicator points at the axis, set to zero at the edge, the tool turned on."
)
_SQUARE = "Square to the edge: the indicator points square to the surface, set to zero at the edge, the tool turned on."
_ALONG = "On the cylinder through the edge: the indicator points along the axis, set to zero at the edge, the tool turned on."

HOW_MEASURED = {"radial": _AT_THE_AXIS, "normal": _SQUARE, "axial": _ALONG}
"""For each view, where the indicator points."""

_LIES = {
    "land": "The relief of a land on the outside diameter: how steeply it falls away inside the circle of the edges.",
    "thread-land": "The relief of the threaded land of a tap behind its edge; the thread loses its size by it as the face is ground.",
    "chamfer": "The relief of the chamfer of a tap, which does the cutting; it says nothing of the thread behind it.",
    "cone": "The relief of a cone, such as a countersink's: how steeply its land falls away inside the cone of the edges.",
    "bevel": "The relief of the bevel lead of a reamer, on which a machine reamer cuts.",
    "end": "The relief of teeth that cut on the end of the tool, such as a counterbore's.",
}


def _second(surface: Surface) -> Quantity:
    """The row for the facet behind the first one of a surface."""
    return angle(
        surface.second_key,
        f"Second relief, {surface.title}",
        f"The steeper relief of the facet behind the first one of the {surface.title}, ground so that the heel clears.",
        HOW_MEASURED[surface.view],
        0.0,
        60.0,
    )


ROWS = (
    choice(
        "surface",
        "Surface",
        "The relieved surface that is ground; each has its own relief, and nothing is taken from one for another.",
        "Look where the wheel touches: on the land, the chamfer, the cone, the shoulder, the lip, the bevel lead or the end.",
        tuple(SURFACES),
    ),
    *(
        angle(
            SURFACES[name].relief_key,
            f"{SURFACES[name].title.capitalize()} relief",
            text,
            HOW_MEASURED[SURFACES[name].view],
            0.0,
            45.0,
        )
        for name, text in _LIES.items()
    ),
    *(_second(surface) for surface in SURFACES.values()),
    angle(
        "bevel_angle",
        "Bevel angle",
        "The angle of the bevel lead of a reamer to its axis, for one side.",
        "In a plane through the axis, with a protractor against the bevel of one tooth.",
        0.0,
        90.0,
    ),
    choice(
        "relief_view",
        "View of the relief",
        "The plane in which a relief is given: square to the edge (normal), square to the axis (radial), or on the cylinder (axial).",
        "Normal: the indicator points square to the surface; radial: at the axis; axial: along the axis.",
        VIEWS,
    ),
    choice(
        "indicator_points",
        "Indicator points",
        "Where the plunger of the indicator points while the tool is turned: the same relief reads differently each way.",
        "Look along the plunger: at the axis, square to the surface that it touches, or along the axis.",
        ("at-the-axis", "square", "along-the-axis"),
    ),
    angle(
        "normal_relief_angle",
        "Relief square to the edge",
        "The relief as it cuts: in the plane square to the edge.",
        _SQUARE,
        -90.0,
        90.0,
    ),
    angle(
        "radial_relief_angle",
        "Relief square to the axis",
        "The same relief in the plane square to the axis of the tool.",
        _AT_THE_AXIS,
        -90.0,
        90.0,
    ),
    angle(
        "axial_relief_angle",
        "Relief along the axis",
        "The same relief on the cylinder through the place on the edge; the feed takes from it.",
        _ALONG,
        -90.0,
        90.0,
    ),
    choice(
        "relief_method",
        "Relief made by",
        "How the relief is made: eccentric by a cam or, on a helix, by an inclined wheel; flat by the height of the wheel head or of the tooth rest, or by roll and swivel of the work head.",
        "Choose it once for the job; only its steps are set.",
        ("cam", "wheel-head-height", "tooth-rest-height", "inclined-wheel", "work-head"),
    ),
)
