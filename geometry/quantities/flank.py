"""Words for the flanks of a thread behind the cutting edge: how they lean, and how they fall away."""

from __future__ import annotations

from geometry.quantities.quantity import angle, length

ROWS = (
    angle(
        "flank_angle",
        "Flank angle",
        "How far one flank of the thread leans from the plane square to the axis: half of the angle between alike flanks.",
        "In a plane through the axis, from the line square to it; 30 degrees on the 60 degree form.",
        0.0,
        60.0,
    ),
    angle(
        "flank_relief_angle",
        "Flank relief, square to the flank",
        "How steeply a flank of the thread falls away behind its edge, square to the flank: the angle it cuts with.",
        "Worked out from the relief of the thread land; square to the flank, along the thread.",
        0.0,
        45.0,
    ),
    angle(
        "flank_side_angle",
        "Flank relief, sideways",
        "The same fall of the flank as it shows along the axis, beside the lead of the thread.",
        "Along the axis against a flank, the lead taken off; worked out.",
        0.0,
        90.0,
    ),
    length(
        "crest_drop",
        "Indicator drop of the crest",
        "How far the crests of the thread at the heel lie inside the circle of those at the edge.",
        "With an indicator on the crests that points at the axis, set to zero at the edge, the tap led along its thread.",
        -50.0,
        50.0,
    ),
    length(
        "flank_gap",
        "Flank gap",
        "How far a flank stands off the thread that its edge has cut, square to the flank.",
        "Worked out from the drop of the crest at the same place.",
        0.0,
        50.0,
    ),
)
