"""Words for what sharpening takes away, and how much is left to take."""

from __future__ import annotations

from geometry.quantities.quantity import angle, choice, count, length

ROWS = (
    choice(
        "ground_on",
        "Ground on",
        "Whether the tool is sharpened on the face of its teeth or on its end.",
        "Look where the wheel touches: along the flute is the face, at the point is the end.",
        ("face", "end"),
    ),
    length(
        "stock_per_sharpening",
        "Stock off face or end",
        "How much each sharpening takes off the faces, or off the end; stock off a land does not count here.",
        "On the face: square to it, as the grinder feeds; the rake makes it more along the circle. On the end: along the axis.",
        0.001,
        50.0,
    ),
    length(
        "least_diameter",
        "Min. diameter",
        "The smallest diameter at which the tool is still of use.",
        "From the drawing of the hole or the thread, over the cutting edges.",
        0.05,
        500.0,
    ),
    length(
        "least_land",
        "Min. land",
        "The narrowest land that still holds the edge up.",
        "In the same measure as the land width, arc or chord.",
        0.0,
        250.0,
    ),
    length(
        "usable_length",
        "Length that may be ground away",
        "How much of the tool can be ground off its end before the flutes or the reach are used up.",
        "Along the axis, from the point back to the last place that can still be an edge.",
        0.0,
        1000.0,
    ),
    length(
        "size_lost",
        "Size lost",
        "How much smaller one sharpening makes the diameter.",
        "With a micrometer over the edges before and after.",
        0.0,
        500.0,
    ),
    count(
        "sharpenings_left",
        "Sharpenings left",
        "How many sharpenings of this size are left before the first limit is passed.",
        "Worked out; count them off on the card as they are done.",
        0,
        2_000_000,
    ),
    length(
        "diameter_after",
        "Diameter after",
        "The diameter that is left after so many sharpenings.",
        "With a micrometer over opposite edges.",
        0.0,
        500.0,
    ),
    length(
        "land_after",
        "Land after",
        "The width of the land that is left after so many sharpenings.",
        "In the same measure as the land width, arc or chord.",
        0.0,
        250.0,
    ),
    angle(
        "relief_after",
        "Relief after, square to the axis",
        "The relief at the edge after so many sharpenings of the face.",
        "Square to the axis, as the relief angle.",
        0.0,
        90.0,
    ),
    length(
        "length_after",
        "Length left",
        "How much may still be ground off the end after so many sharpenings.",
        "Along the axis, as the length that may be ground away.",
        0.0,
        1000.0,
    ),
)
