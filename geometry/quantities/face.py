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
)
