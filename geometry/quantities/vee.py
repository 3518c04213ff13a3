"""Words for measuring a tool with an odd number of flutes in a vee."""

from __future__ import annotations

from geometry.quantities.quantity import angle, length, ratio

ROWS = (
    angle(
        "vee_angle",
        "Angle of the vee",
        "The whole angle between the two sides of a vee block or of the vee of a flute micrometer.",
        "Read it off the vee, or set it with a protractor.",
        10.0,
        175.0,
    ),
    angle(
        "fitting_vee_angle",
        "Vee that fits",
        "The angle of the vee that touches this number of flutes on two edges when a third stands on top.",
        "Worked out: half a turn less one spacing of the edges.",
        0.0,
        180.0,
    ),
    length(
        "vee_reading",
        "Reading over the vee",
        "How far the top edge of a tool that lies in a vee stands above the apex of the vee.",
        "With a height gauge or an indicator square to the axis, one edge on top; the apex is found with a plug of known size.",
        0.01,
        10_000.0,
    ),
    length(
        "vee_difference",
        "Difference to the master",
        "How far the top edge of the tool stands above the top of a master cylinder in the same vee; below zero it is lower.",
        "With an indicator set to zero on top of the master, then on the tool with one edge on top.",
        -1000.0,
        1000.0,
    ),
    length(
        "master_diameter",
        "Master diameter",
        "The diameter of a plug gauge or ground cylinder that the indicator is set on.",
        "As marked on the plug, or with a micrometer.",
        0.05,
        500.0,
    ),
    ratio(
        "vee_gain",
        "Reading for each mm of diameter",
        "How much the reading over the vee changes where the diameter changes by one: 1.5 in a vee of 60 degrees.",
        "Worked out from the angle of the vee.",
        1.0,
        20.0,
    ),
)
