"""Words for indexing: the crank of a dividing head and the hole circles in its plates."""

from __future__ import annotations

from geometry.quantities.quantity import angle, count, length

ROWS = (
    angle(
        "index_angle",
        "Angle to index",
        "How far the tool is to be turned, when it is one angle and not a number of flutes.",
        "About the axis of the tool, from one place to the next.",
        0.0,
        360.0,
    ),
    angle(
        "spacing_angles",
        "Unequal spacing",
        "The angles from each edge to the next, once round the tool, when the edges are not evenly spaced.",
        "About the axis, edge to edge; together they make one whole turn.",
        1.0,
        360.0,
    ),
    count(
        "index_ratio",
        "Dividing-head ratio",
        "How many turns of the crank turn the spindle once round.",
        "Read it off the head, or count the turns of the crank; 1 for plain direct indexing.",
        1,
        1000,
    ),
    count(
        "plate_holes",
        "Hole circles",
        "How many holes stand in each circle of the plates in the shop.",
        "They are stamped on the plates; give each circle once.",
        1,
        1000,
    ),
    count(
        "index_circle",
        "Hole circle",
        "The circle in which the pin of the crank is set.",
        "Its number of holes is stamped on the plate.",
        1,
        1_000_000,
    ),
    count(
        "index_turns",
        "Whole turns",
        "How many whole turns the crank makes for this move.",
        "Count them as the pin passes the hole it started from.",
        0,
        1000,
    ),
    count(
        "index_holes",
        "Spaces",
        "How many holes the pin goes on beyond the whole turns; the hole it starts from is not counted.",
        "Set the sector arms to it once.",
        0,
        1000,
    ),
    angle(
        "index_error",
        "Index error",
        "How far the tool stands after this move from where it should, past it counted above zero.",
        "About the axis of the tool; worked out from the holes.",
        -180.0,
        180.0,
    ),
    length(
        "index_error_length",
        "Index error along the circle",
        "The error of this move as a length along the circle of the edges.",
        "On the diameter of the tool.",
        -1000.0,
        1000.0,
    ),
    angle(
        "worst_index_error",
        "Worst index error",
        "The error of the edge that comes furthest out of place of all, past its place counted above zero.",
        "About the axis of the tool; the table shows after which move.",
        -180.0,
        180.0,
    ),
    length(
        "worst_index_error_length",
        "Worst error along the circle",
        "The worst error as a length along the circle of the edges.",
        "On the diameter of the tool.",
        -1000.0,
        1000.0,
    ),
    angle(
        "accumulated_error",
        "Error once round",
        "How far off the last edge would come if the first move were simply repeated all the way round.",
        "About the axis of the tool; worked out from the holes.",
        -21_600.0,
        21_600.0,
    ),
)
