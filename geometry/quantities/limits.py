"""Words for limits of size: of a hole or a thread, and of the reamer or tap that makes it."""

from __future__ import annotations

from geometry.fit.hole import CLASSES
from geometry.quantities.quantity import choice, length
from geometry.sentences import Rounding
from geometry.thread.nut_limits import CLASSES as THREAD_CLASSES
from geometry.thread.tap_limits import MARKS

LIMITS = "limits"
"""The choice of giving limits as numbers."""

TAPER = "taper"
"""The choice that says that the hole is a taper, which has no class."""

ROWS = (
    length(
        "nominal_diameter",
        "Nominal size",
        "The size that a tool, its hole or its thread is called by: 12 mm for a 12H7 hole or an M12 thread.",
        "From the drawing of the work or the shank of the tool; it is not measured.",
        0.05,
        500.0,
    ),
    length(
        "measured_diameter",
        "Diameter as measured",
        "The diameter that a tool of a known nominal size has today.",
        "With a micrometer over opposite edges, on a reamer right behind its lead.",
        0.05,
        501.0,
    ),
    choice(
        "hole_tolerance",
        "Tolerance of the hole",
        "How far the hole may differ from its nominal size, as a class of ISO 286 such as H7, or as limits in numbers; a taper has none.",
        "From the drawing of the work; a large letter is a hole and a small one a shaft.",
        (*CLASSES, LIMITS, TAPER),
    ),
    length(
        "hole_lower_limit",
        "Smallest hole",
        "The smallest diameter that the hole may have.",
        "From the drawing, proved with the end of a plug gauge that goes in.",
        0.05,
        501.0,
        fine=True,
    ),
    length(
        "hole_upper_limit",
        "Largest hole",
        "The largest diameter that the hole may have.",
        "From the drawing, proved with the end of a plug gauge that does not go in.",
        0.05,
        501.0,
        fine=True,
    ),
    length(
        "reamer_lower_limit",
        "Lower limit of the reamer",
        "The smallest diameter that a reamer is ground to when it is new.",
        "With a micrometer over opposite edges, right behind the lead.",
        0.0,
        501.0,
        rounding=Rounding.UP,
        fine=True,
    ),
    length(
        "reamer_upper_limit",
        "Upper limit of the reamer",
        "The largest diameter that a reamer may have, as it cuts a hole a little over its own size.",
        "With a micrometer over opposite edges, right behind the lead.",
        0.0,
        501.0,
        rounding=Rounding.DOWN,
        fine=True,
    ),
    length(
        "left_to_grind",
        "Min. left to grind",
        "How much the diameter still has to lose to come down to its upper limit.",
        "On the diameter, twice what the wheel takes on one side.",
        0.0,
        500.0,
        fine=True,
    ),
    length(
        "circle_ground_to",
        "Circle ground to",
        "The diameter that the circle of a reamer over its upper limit is ground to: the middle of its limits.",
        "With a micrometer over opposite edges, right behind the lead.",
        0.0,
        501.0,
        fine=True,
    ),
    length(
        "left_to_wear",
        "Left to wear",
        "How much the diameter may still lose until the tool is as small as the smallest hole.",
        "On the diameter, from what was measured.",
        0.0,
        500.0,
        fine=True,
    ),
    choice(
        "tap_limit",
        "Limits of the tap",
        "How large a tap is made within the tolerance of its thread: an ISO class, an H, L or D number, or limits in numbers.",
        "From the mark on the shank of the tap, behind the size of the thread.",
        (*MARKS, LIMITS),
    ),
    length(
        "tap_lower_limit",
        "Smallest pitch diameter of the tap",
        "The least pitch diameter that a new tap of this mark has.",
        "Worked out from the mark, or from the table of the tap's maker.",
        0.0,
        500.0,
    ),
    length(
        "tap_upper_limit",
        "Largest pitch diameter of the tap",
        "The largest pitch diameter that a new tap of this mark has.",
        "Worked out from the mark, or from the table of the tap's maker.",
        0.0,
        500.0,
    ),
    length(
        "tap_pitch_diameter",
        "Pitch diameter of the tap",
        "The pitch diameter that the tap has today.",
        "Over three wires on full threads right behind the chamfer, with an odd number of flutes in a vee.",
        0.0,
        500.0,
    ),
    length(
        "above_least",
        "Above its lower limit",
        "How far the pitch diameter of the tap lies above the least that a new one has; below zero it is worn beyond it.",
        "What was measured less the least pitch diameter of the tap.",
        -500.0,
        500.0,
    ),
    choice(
        "thread_class",
        "Class of the thread",
        "How wide the pitch diameter of an internal thread may be: 1B to 3B of unified threads, 4H to 8H, 6G and 7G of metric ones.",
        "From the drawing of the work, behind the size: 1/2-13 UNC-2B, M12-6H.",
        THREAD_CLASSES,
    ),
    length(
        "engagement_length",
        "Length of engagement",
        "How long screw and nut hold each other; the tolerance of a unified thread is reckoned with it.",
        "Along the axis: the height of the nut or the depth of the tapped hole.",
        0.05,
        500.0,
    ),
    length(
        "thread_lower_limit",
        "Smallest pitch diameter of the thread",
        "The least pitch diameter that an internal thread of this class may have.",
        "Proved with a thread plug gauge whose GO end goes in.",
        0.0,
        500.0,
    ),
    length(
        "thread_upper_limit",
        "Largest pitch diameter of the thread",
        "The largest pitch diameter that an internal thread of this class may have.",
        "Proved with a thread plug gauge whose NOT GO end does not go in.",
        0.0,
        500.0,
    ),
)
