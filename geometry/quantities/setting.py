"""Words for setting the machine: wheel types, heights and tilts."""

from __future__ import annotations

from geometry.quantities.quantity import angle, choice, length
from geometry.wheel.types import TYPES

ROWS = (
    choice(
        "wheel_shape",
        "Wheel type",
        "The type of the grinding wheel by ISO 525: 1 straight, 6 straight cup, 11 flaring cup, 12 dish.",
        "Look at the wheel: a straight one grinds on its rim, a cup on the flat end of its rim, a dish is flat with a thin rim.",
        TYPES,
    ),
    length(
        "wheel_head_height",
        "Wheel head height",
        "How far the axis of a straight wheel stands above the axis of the tool, the land lying above the edge.",
        "Vertically, from the setting where wheel and tool are level; the graduations of the wheel head name the way.",
        0.0,
        500.0,
    ),
    length(
        "tooth_rest_height",
        "Tooth rest height",
        "How far the tooth rest stands below the axis of the tool, the land lying above the edge; for cup and dish wheels.",
        "Vertically, with a height gauge, from the setting where the rest is level with the axis of the tool.",
        0.0,
        500.0,
    ),
    length(
        "rule_height",
        "Height by the shop rule",
        "The same height by the handbook rule 0.0087 x degrees x diameter, which needs no sine.",
        "Vertically, as the exact height.",
        0.0,
        500.0,
    ),
    length(
        "rule_difference",
        "Rule minus exact",
        "How much the shop rule differs from the exact height; above zero the rule asks for more.",
        "Subtract the exact height from the rule's.",
        -100.0,
        100.0,
    ),
    angle(
        "wheel_tilt",
        "Wheel tilt",
        "How far the line in which the wheel touches is inclined to the axis of the tool, deeper toward the heel.",
        "On the tilt scale of the wheel head, or from the dressing of the wheel face.",
        0.0,
        89.0,
    ),
    angle(
        "round_wheel_relief",
        "Relief of a round wheel",
        "The relief at the edge that a round wheel of this diameter really grinds on a helical land.",
        "Worked out: the wheel touches a little beside its lowest line; square to the axis, from the tangent at the edge.",
    ),
    length(
        "wheel_width",
        "Wheel width in contact",
        "How wide the face of the wheel is that touches along the land.",
        "Along the axis of the tool, with a scale on the dressed face.",
        0.01,
        200.0,
    ),
    length(
        "contact_length",
        "Contact along the wheel",
        "How far the contact wanders along the wheel while it goes from the edge to the heel.",
        "Along the axis of the tool; a narrower wheel does not reach the heel.",
        0.0,
        100_000.0,
    ),
    length(
        "tilt_fall",
        "Fall along the wheel",
        "How far the inclined line of contact sinks over the width of the wheel.",
        "With an indicator square to the axis of the tool, moved along the wheel or along the slide that carries it.",
        0.0,
        100_000.0,
    ),
)
