"""Words for a work head that is rolled, swivelled and tilted, and for facets ground so."""

from __future__ import annotations

from geometry.quantities.quantity import angle

ROWS = (
    angle(
        "roll_angle",
        "Work head roll",
        "How far a drill is turned about its own axis for a flat facet, from where the lip lies level, the way it cuts.",
        "On the index or the roll scale of the work head; zero with the lip level, in front of the wheel.",
        0.0,
        90.0,
    ),
    angle(
        "axis_to_wheel_angle",
        "Axis to the wheel face",
        "The angle of the tool's axis to the face of the wheel for a flat facet; a little less than half the point of a drill, and "
        "than the angle of an edge whose tooth is turned down by its rest.",
        "On the swivel of the work head or the table, from where the axis lies along the face of the wheel.",
        0.0,
        90.0,
    ),
    angle(
        "second_roll_angle",
        "Head roll, second facet",
        "The roll for the second facet, from where the lip lies level, the way the drill cuts.",
        "On the index or the roll scale of the work head.",
        0.0,
        90.0,
    ),
    angle(
        "second_axis_to_wheel_angle",
        "Axis to wheel, second facet",
        "The angle of the drill's axis to the face of the wheel for the second facet.",
        "On the swivel of the work head, from where the axis lies along the face of the wheel.",
        0.0,
        90.0,
    ),
    angle(
        "corner_relief_angle",
        "Lip relief at the corner",
        "The lip relief that a flat facet shows at the outer corner when the lip lies ahead of the axis by half the web.",
        "On the cylinder, from a plane square to the axis: the indicator points along the axis.",
        0.0,
        90.0,
    ),
)
