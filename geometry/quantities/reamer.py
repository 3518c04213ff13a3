"""Words for what lies behind the point of reamers, drills and taps: taper of the body and of the land."""

from __future__ import annotations

from geometry.quantities.quantity import angle, choice, length, ratio

SMALLER, LARGER = "smaller", "larger"
"""The two ways in which a tool may taper from its front to its back."""

ROWS = (
    choice(
        "taper_direction",
        "Toward the back",
        "Whether the tool is smaller toward the back, so that it does not bind, or larger, as one that cuts a taper is.",
        "With a micrometer at the front and toward the shank; a tool that cuts a taper grows toward its shank.",
        (SMALLER, LARGER),
    ),
    ratio(
        "taper_ratio",
        "Taper on diameter",
        "How much the diameter changes for each unit of length: 1 in 1000 is 0.001.",
        "Two micrometer readings a known way apart along the axis, their difference divided by that way.",
        0.0,
        2.0,
    ),
    ratio(
        "wanted_taper",
        "Taper wanted",
        "The taper on diameter that a tool shall have which cuts a taper, for each unit of length: 1 in 50 is 0.02.",
        "From the drawing, from the pin or from the gauge of the hole; it is not measured on the tool.",
        0.0,
        2.0,
    ),
    length(
        "back_diameter",
        "Diameter at the back",
        "The diameter measured at the back, the taper length behind the front.",
        "With a micrometer over opposite edges, as the diameter at the front.",
        0.05,
        500.0,
    ),
    length(
        "taper_length",
        "Taper length",
        "How far apart along the axis the two diameters were measured.",
        "Along the axis, with a scale between the two places.",
        0.1,
        2000.0,
    ),
    angle(
        "taper_angle",
        "Taper angle, whole",
        "The whole angle between the two sides of the taper.",
        "In a plane through the axis, from side to side.",
        0.0,
        90.0,
    ),
    angle(
        "swivel_angle",
        "Swivel angle",
        "The angle of one side to the axis: how far the table is swivelled.",
        "On the scale of the swivel table, proved with an indicator along the tool.",
        -45.0,
        45.0,
    ),
    length(
        "distance_from_front",
        "Distance from the front",
        "How far behind the front a diameter is wanted.",
        "Along the axis, from where the front diameter was measured.",
        0.0,
        2000.0,
    ),
    length(
        "diameter_there",
        "Diameter there",
        "The diameter at that distance behind the front.",
        "With a micrometer over opposite edges.",
        0.0,
        1000.0,
    ),
    length(
        "indicator_fall",
        "Fall on the indicator",
        "How far the side has come in toward the axis since the front: half of what the diameter has lost.",
        "With an indicator square to the axis, moved along the tool from the front.",
        -500.0,
        500.0,
    ),
    length(
        "indicator_rise",
        "Rise on the indicator",
        "How far the side has gone out from the axis since the front, on a tool that cuts a taper: half of what the diameter has "
        "gained.",
        "With an indicator square to the axis, moved along the tool from the front.",
        -500.0,
        500.0,
    ),
    length(
        "primary_drop",
        "Indicator drop, primary land",
        "How far the back of the primary land, where the secondary begins, lies inside the circle of the edges.",
        "With an indicator set to zero at the edge, the tool turned on.",
        -50.0,
        50.0,
    ),
)
