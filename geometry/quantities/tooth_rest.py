"""Words for the rest under a helical tooth: its width and place, and how the edge rises over it."""

from __future__ import annotations

from geometry.quantities.quantity import angle, choice, length

ROWS = (
    length(
        "helix_lead",
        "Lead of the helix",
        "How far along the axis an edge of the tool winds once round.",
        "Along the axis, from the edge to where the same edge comes round again; worked out on most tools.",
        0.1,
        1_000_000.0,
    ),
    length(
        "rest_width",
        "Width of the tooth rest",
        "How wide the top of the rest is that the tooth lies on.",
        "Along the axis of the tool, with a caliper over the blade.",
        0.1,
        100.0,
    ),
    choice(
        "rest_top",
        "Top of the tooth rest",
        "How the top of the rest meets a helical tooth: sloped along it, rounded so that its middle touches, or level.",
        "Look along the rest: on a level one the tooth touches a corner alone.",
        ("sloped", "rounded", "level"),
    ),
    length(
        "rest_offset",
        "Rest beside the wheel",
        "How far the middle of the rest stands from the line where the wheel touches, above zero where the edge stands lower.",
        "Along the axis of the tool, from the middle of the wheel face in use to the middle of the rest.",
        -100.0,
        100.0,
    ),
    length(
        "tooth_length",
        "Length of the teeth",
        "How long the teeth are that are ground.",
        "Along the axis of the tool, with a scale.",
        0.1,
        2000.0,
    ),
    angle(
        "rest_turn",
        "Turn by the rest",
        "How far the edge at the rest stands turned against the one under the wheel; the relief is off by as much unless the height allows for it.",
        "Worked out from the helix and from how far beside the wheel the tooth touches its rest.",
        -360.0,
        360.0,
    ),
    length(
        "rest_rise",
        "Rise over the rest",
        "How far the edge rises over the width of the rest: the slope that its top needs.",
        "Across the top of the rest, from its lower to its higher corner.",
        0.0,
        1000.0,
    ),
    length(
        "tooth_rise",
        "Rise along the teeth",
        "How far round the circle an edge winds from one end of the teeth to the other.",
        "Round the circle, square to the axis; worked out.",
        0.0,
        10_000.0,
    ),
    angle(
        "tooth_turn",
        "Turn along the teeth",
        "How far the tool turns while one tooth is led over the rest from end to end.",
        "On the work head or by a mark on the arbor.",
        0.0,
        36_000.0,
    ),
)
