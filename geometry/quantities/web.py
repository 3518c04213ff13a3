"""Words for the web of a drill: its growth toward the shank, and how it is thinned."""

from __future__ import annotations

from geometry.quantities.quantity import Quantity, angle, choice, length, ratio
from geometry.sentences import Kind

ROWS = (
    length(
        "second_web",
        "Web thickness further back",
        "How thick the web is at a second place, nearer to the shank.",
        "With a web micrometer or a tube micrometer in two opposite flutes.",
        0.0,
        200.0,
    ),
    length(
        "web_distance",
        "Way to the second web",
        "How far behind the point the web was measured a second time.",
        "Along the axis, from the place of the first measurement.",
        0.01,
        2000.0,
    ),
    ratio(
        "web_growth",
        "Growth of the web",
        "How much thicker the web becomes for each millimetre toward the shank; times a hundred it is what books give over 100 mm.",
        "Worked out from the web in two places.",
        -20_000.0,
        20_000.0,
    ),
    length(
        "length_ground_off",
        "Length ground away",
        "How much shorter the drill is, or will be, than where its web was measured at the point.",
        "Along the axis: the length then less the length now.",
        0.0,
        2000.0,
    ),
    length(
        "web_after",
        "Web at the new point",
        "How thick the web is at the point of the shortened drill, before it is thinned.",
        "As the web thickness.",
        0.0,
        100_000.0,
    ),
    Quantity(
        "web_share",
        "Web as share of the diameter",
        Kind.PERCENT,
        "The web at the new point in percent of the diameter of the drill.",
        "Worked out.",
        0.0,
        100.0,
    ),
    choice(
        "thinning",
        "Point is",
        "How the chisel edge is shortened: the web thinned on both sides of it, or the point split by a notch that makes it two new edges.",
        "Look along the axis: a thinned web leaves a short chisel edge between rounded hollows, a split one hardly any, between two straight notches.",
        ("thinned", "split"),
    ),
    length(
        "wanted_web",
        "Web wanted",
        "How thick the web shall be at the point after thinning; of a split point what is left between the notches.",
        "As the web thickness; copy a new drill of the same kind where there is one.",
        0.0,
        200.0,
    ),
    length(
        "thinning_stock",
        "Stock of thinning, each side",
        "How much comes off the web on each side of the axis at the point, the same on both.",
        "Square to the bottom of the flute, at the point.",
        0.0,
        100_000.0,
    ),
    length(
        "thinned_edge_length",
        "Chisel edge after thinning",
        "How long the chisel edge is that thinning leaves.",
        "As the length of the chisel edge.",
        0.0,
        1000.0,
    ),
    length(
        "new_lip_length",
        "New edge, each side",
        "How much of the old chisel edge becomes a cutting edge on each side.",
        "Looking at the point along the axis.",
        0.0,
        1000.0,
    ),
    angle(
        "notch_angle",
        "Angle of the notch",
        "The angle between the floor of the notch that thins the web and the axis of the drill.",
        "How the wheel stands to the axis of the drill while it thins or splits the point.",
        0.0,
        90.0,
    ),
    length(
        "notch_length",
        "Length of the notch",
        "How far the notch runs up the flute from the point.",
        "Along the axis, from the chisel edge to where the notch comes out of the web.",
        0.0,
        1_000_000.0,
    ),
)
