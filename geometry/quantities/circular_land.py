"""Words for the circular land of a reamer: how wide it is, where it ends, and what the indicator shows of that."""

from __future__ import annotations

from geometry.quantities.quantity import angle, length

ROWS = (
    length(
        "indicator_division",
        "Division of the indicator",
        "The least that the indicator shows: from one of its lines to the next.",
        "It is written on the indicator.",
        0.0001,
        1.0,
    ),
    angle(
        "first_division_angle",
        "Turn to the first division",
        "How far the tool turns from the edge until the indicator, at zero on the circular land, has fallen by one division.",
        "On the dividing head or workhead, the indicator at the axis, the tool turned on from the edge.",
        0.0,
        360.0,
    ),
    angle(
        "turn_from_edge",
        "Turn from the edge",
        "How far the tool is turned from the edge to a place behind it.",
        "On the dividing head or workhead, from the edge.",
        0.0,
        360.0,
    ),
    length(
        "land_as_read",
        "Circular land as it reads",
        "How wide the circular land seems on the indicator: as far as the relief behind it has fallen by one division.",
        "Round the circle, from the turn to the first division.",
        0.0,
        1600.0,
    ),
    length(
        "margin_now",
        "Circular land before grinding",
        "How wide the circular land is before its relief is ground, such as after the circle was ground.",
        "Square to the strip, on the outside diameter, with a scale under a glass.",
        0.0,
        50.0,
    ),
    length(
        "land_stock",
        "Stock to narrow the land",
        "How much comes off the relief from where the wheel first touches until the circular land is as narrow as wanted.",
        "Square to the facet of a flat, on the radius of an eccentric relief: the infeed after the first spark.",
        0.0,
        50.0,
    ),
)
