"""The limits of the pitch diameter of an internal thread by its class: 1B to 3B of unified threads, 4H to 8G of metric ones."""

from __future__ import annotations

import math
from bisect import bisect_left

from geometry.fit.hole import MICRON, Limits
from geometry.preconditions import refuse, require_positive
from geometry.sentences import length
from geometry.thread.form import Thread
from geometry.thread.iso_965 import FIRST, G_ABOVE, GRADE_5, R40, STEPS
from geometry.thread.tap_limits import by_formula

INCH = 25.4

HAIR = 1e-9
"""What half of the last digit is brought up by, so that it is rounded up as in a table, in inches."""

OF_2A = {"1B": 1.95, "2B": 1.3, "3B": 0.975}
"""The tolerance of each class in parts of that of a 2A screw. ASME B1.1, as engineering pages give it."""

METRIC = ("6H", "5H", "4H", "7H", "8H", "6G", "7G")
"""Classes of metric threads, the commonest first. ISO 965-1."""

CLASSES = (*METRIC[:1], "2B", "3B", "1B", *METRIC[1:])
"""Classes of internal threads, the commonest first."""


def unified_tolerance(diameter: float, pitch: float, engagement: float, thread_class: str) -> float:
    """The tolerance of the pitch diameter of an internal unified thread, in mm.

    Relation: ASME B1.1, in inches, 0.0015 D^(1/3) + 0.0015 L^(1/2) + 0.015 p^(2/3) for a 2A screw, and of that 1.95 parts
    for 1B, 1.3 for 2B and 0.975 for 3B. As its tables are, the first is rounded to a millionth of an inch, and what comes of it
    to a ten-thousandth.

    Args:
        diameter: basic, over the crests of the screw, in mm, above zero.
        pitch: in mm, above zero.
        engagement: how long screw and nut hold each other, in mm, above zero: the diameter for UNC, UNF and 8-UN threads, nine
            pitches for UNEF, UNS, 12-UN and 16-UN threads.
        thread_class: ``1B``, ``2B`` or ``3B``.

    Example:
        >>> round(unified_tolerance(6.35, 1.27, 6.35, "2B") / 25.4, 4)
        0.0049
    """
    size = require_positive("diameter", diameter) / INCH
    held = require_positive("engagement_length", engagement) / INCH
    step = require_positive("pitch", pitch) / INCH
    of_screw = 0.0015 * math.pow(size, 1 / 3) + 0.0015 * math.sqrt(held) + 0.015 * math.pow(step, 2 / 3)
    return round(OF_2A[thread_class] * round(of_screw, 6) + HAIR, 4) * INCH


def grade_tolerance(diameter: float, pitch: float, grade: int) -> float:
    """The tolerance of a grade of the pitch diameter of an internal metric thread, in mm.

    Relation: the table of ISO 965-1 has for grade 5 numbers of the series R 40, and for each other grade the number that lies
    four places further on or back, about a quarter more or a fifth less. For a pitch that it does not list its formula for
    grade 5, and 10^0.1 times that for each grade.

    Args:
        diameter: nominal, in mm, from 0.99 to 180.
        pitch: in mm, above zero.
        grade: 4 to 8.

    Raises:
        GeometryError: for a diameter that the table does not reach.

    Example:
        >>> [grade_tolerance(10.0, 1.5, grade) for grade in (4, 5, 6)]
        [0.112, 0.14, 0.18]
    """
    if not FIRST <= diameter <= STEPS[-1]:
        raise refuse(
            "thread_class",
            "The classes of metric threads reach from {least} to {most}. Leave the class out.",
            {"least": length(FIRST), "most": length(STEPS[-1])},
        )
    at = bisect_left(STEPS, diameter)
    listed = [wide for one, wide in GRADE_5[at].items() if math.isclose(one, pitch, rel_tol=1e-9)]
    if listed:
        return R40[R40.index(listed[0]) + 4 * (grade - 5)] * MICRON
    return by_formula(at, require_positive("pitch", pitch)) * 10 ** ((grade - 5) / 10) * MICRON


def above_basic(pitch: float, position: str) -> float:
    """How far the least pitch diameter lies above the basic one, in mm: nothing for H, 15 + 11 P micrometres for G.

    Relation: the table of ISO 965-1, from memory, and its formula for a pitch that is not listed.

    Args:
        pitch: in mm.
        position: ``H`` or ``G``.

    Example:
        >>> above_basic(1.5, "G"), above_basic(1.5, "H")
        (0.032, 0.0)
    """
    if position == "H":
        return 0.0
    listed = [micron for one, micron in G_ABOVE.items() if math.isclose(one, pitch, rel_tol=1e-9)]
    return (listed[0] if listed else 15 + 11 * pitch) * MICRON


def nut_limits(made: Thread, thread_class: str, engagement: float | None = None) -> Limits:
    """The limits of the pitch diameter of an internal thread.

    Args:
        made: the thread, of the 60 degree form.
        thread_class: one of ``CLASSES``.
        engagement: of a unified thread, in mm; nothing takes its diameter.

    Returns:
        The limits in mm.

    Example:
        >>> from geometry.thread.form import thread
        >>> found = nut_limits(thread(12.7, 25.4 / 13, "iso"), "2B")
        >>> round(found.low / 25.4, 4), round(found.high / 25.4, 4)
        (0.45, 0.4565)
    """
    basic = made.pitch_diameter
    if thread_class in OF_2A:
        held = made.diameter if engagement is None else engagement
        basic = round(basic / INCH, 4) * INCH
        return Limits(basic, basic + unified_tolerance(made.diameter, made.pitch, held, thread_class))
    low = basic + above_basic(made.pitch, thread_class[1])
    return Limits(low, low + grade_tolerance(made.diameter, made.pitch, int(thread_class[0])))
