"""Words for teeth on the end of a tool: dish, tilt and corner."""

from __future__ import annotations

from geometry.quantities.quantity import angle, length

ROWS = (
    angle(
        "dish_angle",
        "Dish of the end",
        "How far the end edges lean back from the corner toward the middle, so that the corner cuts first.",
        "From the plane square to the axis, with a square or an indicator led along an edge.",
        0.0,
        30.0,
    ),
    length(
        "dish_depth",
        "Depth of the dish",
        "How far the inner ends of the end edges lie behind the corners; below zero the middle stands ahead.",
        "Along the axis, with an indicator led along an edge from the corner inward.",
        -50.0,
        50.0,
    ),
    angle(
        "workhead_tilt",
        "Tilt of the work head",
        "How far the axis of the work head is tilted out of level, on its swivelled base, for the relief of the end.",
        "On the tilt scale of the work head, from level.",
        0.0,
        60.0,
    ),
    angle(
        "workhead_swivel",
        "Swivel of the work head",
        "How far the base of the work head is swivelled for the dish, from where its axis stands square to the wheel face.",
        "On the swivel scale of the work head, from square to the face of the wheel.",
        -45.0,
        45.0,
    ),
    angle(
        "second_workhead_tilt",
        "Head tilt, second facet",
        "How far the axis of the work head is tilted out of level for the second facet of the end.",
        "On the tilt scale of the work head, from level.",
        0.0,
        60.0,
    ),
    angle(
        "second_workhead_swivel",
        "Head swivel, second facet",
        "How far the base of the work head is swivelled for the dish while the second facet is ground.",
        "On the swivel scale of the work head, from square to the face of the wheel.",
        -45.0,
        45.0,
    ),
    angle(
        "corner_angle",
        "Angle of the corner",
        "How the chamfer on the corner between outside and end lies to the axis.",
        "In a plane through the axis, with a protractor against the chamfer of one tooth.",
        0.0,
        90.0,
    ),
    angle(
        "corner_chamfer_relief",
        "Relief of the corner chamfer",
        "The relief of the corner chamfer that keeps its width from the edge to the heel.",
        "Square to the chamfer: the indicator points square to it, set to zero at the edge, the tool turned on.",
        0.0,
        90.0,
    ),
)
