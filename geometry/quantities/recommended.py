"""Words for what a tool should have, as a book recommends it, beyond one tooth seen along the axis."""

from __future__ import annotations

from geometry.quantities.quantity import Quantity, angle, choice, length
from geometry.sentences import Kind

ROWS = (
    angle(
        "helix_angle",
        "Helix angle",
        "The angle between the flute and the axis of the tool; 0 for a straight flute.",
        "On the outside diameter: roll the tool over carbon paper and measure the line of the margin from the axis.",
        0.0,
        75.0,
    ),
    choice(
        "helix_hand",
        "Flutes wind",
        "Which way the flutes wind: mostly the way in which the tool cuts, and the other way on left-hand spiral reamers and on taps that push the chip ahead.",
        "Held upright, right-hand flutes rise to the right.",
        ("right", "left"),
    ),
    length(
        "web_thickness",
        "Web thickness",
        "How thick the metal between the bottoms of the flutes is at the point; the chisel edge lies across it.",
        "At the point, with a web or point micrometer in two opposite flutes.",
        0.0,
        200.0,
    ),
    length(
        "margin_width",
        "Margin width",
        "The width of the narrow unrelieved strip behind the edge that runs on the circle and guides the tool.",
        "Square to the strip, on the outside diameter, with a scale under a glass.",
        0.0,
        50.0,
    ),
    length(
        "back_taper",
        "Back taper over 100 mm",
        "How much smaller the diameter is 100 mm behind the point, so that the body does not bind in the hole.",
        "Two micrometer readings a known way apart along the flutes, scaled to 100 mm.",
        0.0,
        10.0,
    ),
    Quantity(
        "chamfer_threads",
        "Threads in the chamfer",
        Kind.COUNT,
        "How many threads the chamfer of a tap takes to reach its full height.",
        "Count along one land from the point to the first full thread; halves are allowed.",
        0.5,
        40.0,
    ),
    angle(
        "chamfer_angle",
        "Chamfer angle",
        "The angle of the chamfer to the axis, for one side.",
        "In a plane through the axis, with a protractor against the chamfer of one land.",
        0.0,
        90.0,
    ),
    length(
        "reaming_stock",
        "Stock for reaming",
        "How much smaller than the reamer the hole is made, so that the reamer has something to cut.",
        "On diameter: the reamer less the hole before reaming.",
        0.0,
        10.0,
    ),
    length(
        "pilot_diameter",
        "Pilot diameter",
        "The diameter of the part in front that guides the tool or opens the hole for it.",
        "With a micrometer over the pilot.",
        0.05,
        500.0,
    ),
    length(
        "mouth_diameter",
        "Mouth of the hole",
        "How wide a countersunk or centre hole is made at the face of the work.",
        "Across the rim of the hole, with a scale or a caliper.",
        0.05,
        500.0,
    ),
)
