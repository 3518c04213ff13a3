"""Words for the spiral point of a gun tap."""

from __future__ import annotations

from geometry.quantities.quantity import Quantity, angle, length
from geometry.sentences import Kind

ROWS = (
    angle(
        "spiral_point_angle",
        "Spiral point angle",
        "The angle of the slanted gash at the front of a gun tap's flute to the axis of the tap.",
        "With a protractor along the gash, looking square to the axis with the flute in front.",
        1.0,
        60.0,
    ),
    angle(
        "least_spiral_point_angle",
        "Min. spiral point angle",
        "The smallest spiral point angle that a gash of this tap may have.",
        "From the low end of the entry, or from a new tap of the same kind.",
        1.0,
        60.0,
    ),
    length(
        "spiral_point_depth",
        "Depth of the spiral point",
        "How far the gash lies behind the face of the flute at the very front of the tap.",
        "Square to the face of the flute, looking at the front along the axis, with a scale under a glass.",
        0.001,
        100.0,
    ),
    length(
        "spiral_point_length",
        "Length of the spiral point",
        "How far the gash runs up the flute, from the front of the tap to where it ends in the face.",
        "Along the axis, with a scale.",
        0.0,
        10_000.0,
    ),
    Quantity(
        "threads_beyond",
        "Threads past the chamfer",
        Kind.COUNT,
        "How many threads the gash of a gun tap goes on past the last thread of the chamfer.",
        "Count along one land from the first full thread to the end of the gash; halves are allowed.",
        0.0,
        20.0,
    ),
    length(
        "spiral_point_depth_after",
        "Depth of the spiral point after",
        "How deep the gash is at the front after the end was cut back and the gash ground.",
        "Square to the face of the flute, at the front.",
        0.0,
        1000.0,
    ),
    length(
        "spiral_point_length_after",
        "Length of the spiral point after",
        "How far the gash runs up the flute after the end was cut back and the gash ground.",
        "Along the axis, with a scale.",
        0.0,
        100_000.0,
    ),
    length(
        "cut_back_wanted",
        "Cut back to keep the length",
        "How much is cut off the end so that the ground gash runs as far past the chamfer as before.",
        "Along the axis; worked out from what is ground off the gash.",
        0.0,
        10_000.0,
    ),
    length(
        "front_land",
        "Land at the front",
        "How wide a land still is at the very front, where the gash has gone into it.",
        "Straight across, looking at the front along the axis.",
        0.0,
        250.0,
    ),
)
