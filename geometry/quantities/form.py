"""Words for forms: a rounded corner that is relieved in one piece, and the cross hole of a countersink."""

from __future__ import annotations

from geometry.quantities.quantity import angle, length

ROWS = (
    length(
        "corner_radius",
        "Corner radius",
        "The radius of the rounding between the land of a tool and its end.",
        "With a radius gauge against the corner, in a plane through the axis.",
        0.01,
        200.0,
    ),
    angle(
        "profile_angle",
        "Profile angle",
        "How far round a rounded corner its profile has turned: 0 on the land, 90 degrees on the end.",
        "From the axis to the tangent of the profile, in a plane through the axis.",
        1.0,
        90.0,
    ),
    angle(
        "least_form_relief",
        "Min. relief square to the form",
        "The relief that no place of a form may fall short of.",
        "Square to the profile at that place.",
        0.0,
        30.0,
    ),
    length(
        "cross_hole_diameter",
        "Cross hole",
        "The diameter of the slanted hole of a countersink without flutes, whose rim is the edge.",
        "With a plug or a drill shank that slides in.",
        0.1,
        200.0,
    ),
    angle(
        "cross_hole_tilt",
        "Tilt of the cross hole",
        "The angle between the axis of the cross hole and that of the tool.",
        "With a plug in the hole and a protractor from the shank to it.",
        1.0,
        90.0,
    ),
    length(
        "cross_hole_height",
        "Cross hole above the tip",
        "How far behind the tip of the whole cone the axis of the cross hole crosses that of the tool.",
        "Along the axis, to the middle of a plug in the hole; of a blunt cone add what the tip lacks.",
        0.01,
        500.0,
    ),
    length(
        "edge_from_diameter",
        "Edge begins at",
        "The diameter of the cone at which the rim of the cross hole begins.",
        "Over the cone, at the lowest place of the rim.",
        0.0,
        2000.0,
    ),
    length(
        "edge_to_diameter",
        "Edge ends at",
        "The diameter of the cone at which the rim of the cross hole ends.",
        "Over the cone, at the highest place of the rim.",
        0.0,
        2000.0,
    ),
    angle(
        "edge_inclination",
        "Inclination of the edge",
        "How far the edge leans away from square to its way: 0 cuts straight on, 90 degrees only slides along.",
        "Seen onto the cone, from its straight side to the edge.",
        0.0,
        90.0,
    ),
    angle(
        "edge_rake_angle",
        "Rake square to the edge",
        "How the wall of a cross hole leans as the face of its rim: above zero it leans back under the edge.",
        "In the plane square to the edge, worked out.",
        -90.0,
        90.0,
    ),
)
