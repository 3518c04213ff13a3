"""Words for cones: countersinks, chamfers, the shoulders of step drills, and the cams that relieve them."""

from __future__ import annotations

from geometry.quantities.quantity import angle, choice, length

ROWS = (
    angle(
        "included_angle",
        "Included angle",
        "The whole angle of the cone, from side to side; 180 degrees is a flat face, 0 a cylinder.",
        "In a plane through the axis, with a protractor or a cone gauge over both sides.",
        0.0,
        180.0,
    ),
    length(
        "radial_throw",
        "Radial throw",
        "How far the cam brings work and wheel together along the radius, inward counted above zero.",
        "With an indicator along the radius, over one turn or over one tooth; say which.",
        -2000.0,
        2000.0,
    ),
    length(
        "axial_throw",
        "Axial throw",
        "How far the cam lets the wheel go along the axis, away from the point of the tool counted above zero.",
        "With an indicator along the axis, over one turn or over one tooth; say which.",
        -2000.0,
        2000.0,
    ),
    choice(
        "throw_per",
        "Throw counted per",
        "Whether the cam's travel is that of one whole turn of the tool or that of one tooth.",
        "An even cam on a turning workhead gives so much per turn; a relieving cam with one lobe for each tooth, per tooth.",
        ("turn", "tooth"),
    ),
    length(
        "square_throw",
        "Throw square to the cone",
        "How far the cam moves square to the surface of the cone, over the same turn or tooth as the cam itself.",
        "Worked out from the radial and the axial throw.",
        -4000.0,
        4000.0,
    ),
    length(
        "needed_radial_throw",
        "Radial throw needed",
        "The radial throw that gives the wanted relief with the axial throw left as it is.",
        "Set it with an indicator along the radius, over the same turn or tooth as the cam.",
        -10_000.0,
        10_000.0,
    ),
    length(
        "needed_axial_throw",
        "Axial throw needed",
        "The axial throw that gives the wanted relief with the radial throw left as it is.",
        "Set it with an indicator along the axis, over the same turn or tooth as the cam.",
        -10_000.0,
        10_000.0,
    ),
    angle(
        "greatest_relief_angle",
        "Max. relief angle",
        "The relief where it is steepest, which on a cone is at the smallest diameter.",
        "Square to the surface of the cone, between the land and the cone that the edges sweep.",
        -90.0,
        90.0,
    ),
    length(
        "square_drop",
        "Indicator drop square to the cone",
        "How far the land lies inside the cone that the edges sweep.",
        "With an indicator square to the cone, set to zero at the edge, the tool turned on.",
        -2000.0,
        2000.0,
    ),
    length(
        "axial_drop",
        "Indicator drop along the axis",
        "How far the land has fallen back along the axis from where the edge was.",
        "With an indicator along the axis on one diameter, set to zero at the edge, the tool turned on.",
        -2000.0,
        2000.0,
    ),
    angle(
        "shoulder_relief_angle",
        "Shoulder relief",
        "How steeply the land of a shoulder falls away, square to its cone.",
        "Square to the edge: the indicator points square to the shoulder, set to zero at the edge, the tool turned on.",
        -90.0,
        90.0,
    ),
    angle(
        "least_relief_angle",
        "Min. relief wanted",
        "The relief that no step may fall short of.",
        "Square to the axis at the circle of a step.",
        0.0,
        45.0,
    ),
)
