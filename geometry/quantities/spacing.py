"""Words for edges that stand unevenly round a tool, so that it does not chatter."""

from __future__ import annotations

from geometry.quantities.quantity import angle, choice, ratio

ROWS = (
    angle(
        "spacing_step",
        "Step from space to space",
        "By how much each space between two edges is wider than the next narrower one.",
        "About the axis; a small part of an even space, so that no edge takes much more than its share.",
        0.01,
        60.0,
    ),
    choice(
        "spacing_pairs",
        "Edges stand",
        "Whether each edge stands opposite another, so that a micrometer finds the diameter, or all spaces differ.",
        "Choose opposite for an even number of flutes unless no two spaces may be alike.",
        ("opposite", "free"),
    ),
    angle(
        "least_spacing",
        "Narrowest space",
        "The angle from an edge to the next where the two stand closest.",
        "About the axis, edge to edge.",
        0.0,
        360.0,
    ),
    angle(
        "greatest_spacing",
        "Widest space",
        "The angle from an edge to the next where the two stand furthest apart; the edge behind it takes the most.",
        "About the axis, edge to edge.",
        0.0,
        360.0,
    ),
    ratio(
        "spacing_spread",
        "Spread of the spaces",
        "By how much the widest space differs from the narrowest, as a share of an even space.",
        "Worked out from the spaces.",
        0.0,
        60.0,
    ),
    ratio(
        "off_balance",
        "Middle of the edges off the axis",
        "How far off the axis the middle of all edges lies, as a share of the radius; nothing where all stand opposite.",
        "Worked out from the spaces.",
        0.0,
        1.0,
    ),
)
