"""Words for the face of a tooth: where its plane lies, and what rake it gives elsewhere."""

from __future__ import annotations

from geometry.quantities.quantity import angle, length

ROWS = (
    length(
        "face_offset",
        "Face offset",
        "How far the plane of the face passes from the axis of the tool; above zero for a positive rake.",
        "Square to the face: from the axis to the plane in which the wheel grinds, seen along the axis.",
        -200.0,
        220.0,
    ),
    length(
        "other_diameter",
        "Other diameter",
        "Another diameter on which the same flat face also cuts, such as the pilot of a step drill.",
        "With a micrometer over opposite edges at that place.",
        0.05,
        500.0,
    ),
    angle(
        "local_rake_angle",
        "Rake there",
        "The rake that the same flat face gives on another diameter.",
        "In the plane square to the axis, at the cutting edge on that diameter.",
        -90.0,
        90.0,
    ),
    angle(
        "hook_angle",
        "Hook along the chord",
        "The angle between the chord of a concave face, from the crest to the root of the thread, and the radius through the edge.",
        "Square to the axis, with a straight edge laid from crest to root, or on a drawing made large.",
        -45.0,
        60.0,
    ),
    length(
        "face_radius",
        "Radius of the face",
        "The radius of a concave face: that of the rounded rim of the wheel that grinds it.",
        "With a radius gauge in the flute against the face, or on the dressed wheel.",
        0.05,
        500.0,
    ),
    angle(
        "root_rake_angle",
        "Rake at the root",
        "The rake that a concave face has at the root of the thread.",
        "In the plane square to the axis, against the radius through the root.",
        -90.0,
        90.0,
    ),
    length(
        "face_hollow",
        "Hollow of the face",
        "How deep a concave face lies behind its chord in the middle.",
        "Square to the chord, with a feeler under a straight edge from crest to root.",
        0.0,
        500.0,
    ),
    length(
        "wheel_centre_ahead",
        "Rounding ahead of the edge",
        "How far the middle of the wheel's rounding lies ahead of the radius through the edge.",
        "Square to that radius, seen along the axis of the tap.",
        0.0,
        500.0,
    ),
    length(
        "wheel_centre_below",
        "Rounding below the edge",
        "How much nearer to the axis than the edge the middle of the wheel's rounding lies; below zero it is further out.",
        "Along the radius through the edge.",
        -500.0,
        500.0,
    ),
)
