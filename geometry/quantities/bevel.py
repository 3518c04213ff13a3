"""Words for the bevel lead of a reamer and for what its worn corner costs."""

from __future__ import annotations

from geometry.quantities.quantity import length
from geometry.sentences import Rounding

ROWS = (
    length(
        "bevel_length",
        "Length of the lead",
        "How long the bevel lead of a reamer is, from its start to the corner where the land begins.",
        "Along the axis, with a scale under a glass.",
        0.01,
        1000.0,
    ),
    length(
        "bevel_start_diameter",
        "Diameter at the start",
        "The diameter at the very front of the bevel lead, where the reamer enters the hole.",
        "With a micrometer or an optical scale over opposite teeth at the front.",
        0.01,
        500.0,
    ),
    length(
        "least_bevel_length",
        "Min. length of the lead",
        "How long the bevel lead must be at least for the reamer to enter the hole before reaming.",
        "Along the axis; worked out from the stock for reaming.",
        0.0,
        100_000.0,
        Rounding.UP,
    ),
    length(
        "corner_wear",
        "Wear at the corner",
        "How far the worn corner of the lead lies inside the circle of the lands.",
        "On the radius, under a glass: from where the corner was, square to the axis, down to the worn edge.",
        0.0,
        25.0,
    ),
    length(
        "corner_wear_length",
        "Wear behind the corner",
        "How far back along the land the wear reaches behind the corner of the lead.",
        "Along the axis, under a glass: the bright strip on the edge, from where the corner was.",
        0.0,
        250.0,
    ),
    length(
        "axial_stock",
        "Stock along the axis",
        "How far the lead is ground back along the axis until the worn corner is gone.",
        "Along the axis: with an indicator against the end of the tool, or on the longitudinal slide.",
        0.0,
        1_000_000.0,
    ),
    length(
        "square_stock",
        "Stock square to the lead",
        "The same stock as the wheel takes it that is fed square to the lead.",
        "Square to the lead: the infeed of a wheel that stands along it.",
        0.0,
        1000.0,
    ),
    length(
        "bevel_length_after",
        "Length of the lead after",
        "How long the lead is when it has been ground and the end was not cut back.",
        "Along the axis, with a scale under a glass.",
        0.0,
        1_000_000.0,
    ),
    length(
        "bevel_start_after",
        "Diameter at the start after",
        "The diameter at the front of the lead when it has been ground and the end was not cut back.",
        "Over opposite teeth at the front.",
        0.0,
        500.0,
    ),
)
