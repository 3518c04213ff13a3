"""The limits of a tap's pitch diameter by what is marked on its shank: ISO classes, H and L numbers, D numbers."""

from __future__ import annotations

import math
from bisect import bisect_left

from geometry.fit.hole import MICRON, Limits
from geometry.preconditions import refuse
from geometry.sentences import length
from geometry.thread.form import Thread
from geometry.thread.iso_965 import D_BANDS, FIRST, GRADE_5, STEPS

STEP = 0.0254 / 2
"""One step of H and L numbers, in mm: half a thousandth of an inch. A tap maker's technical page, ground thread tap limits."""

D_STEP = 0.013
"""One step of D numbers, in mm, as a tap maker's catalogue rounds half a thousandth of an inch."""

ISO_SHARES = {"ISO1-4H": (0.1, 0.3), "ISO2-6H": (0.3, 0.5), "ISO3-6G": (0.5, 0.7)}
"""Lower and upper limit of each class, in parts of the tolerance of grade 5. ISO 2857, as a tap maker gives it."""

MOST_H, MOST_D = 10, 12
"""The greatest numbers that are marked. Common practice, no source."""

MARKS = (
    *ISO_SHARES,
    *(f"H{number}" for number in range(1, MOST_H + 1)),
    "L1",
    *(f"D{number}" for number in range(1, MOST_D + 1)),
)
"""What may be marked on a tap."""


def marks_first(*, by_inch: bool) -> tuple[str, ...]:
    """The marks of taps for one system of threads: H and L numbers where threads are counted per inch, else the others.

    Common practice, no source: some makers mark metric taps with H numbers too.

    Args:
        by_inch: whether the threads are counted per inch.

    Example:
        >>> marks_first(by_inch=True)[0], marks_first(by_inch=False)[:2]
        ('H1', ('ISO1-4H', 'ISO2-6H'))
    """
    return tuple(mark for mark in MARKS if (mark[0] in "HL") == by_inch)


def fifth_grade(diameter: float, pitch: float) -> float:
    """The tolerance of grade 5 of the pitch diameter of an internal metric thread, in mm.

    Relation: the table of ISO 965-1; for a pitch that it does not list its formula, 1.06 times 90 P^0.4 d^0.1 micrometres
    with d the geometric mean of the step of diameters.

    Args:
        diameter: nominal, in mm, from 0.99 to 180.
        pitch: in mm, above zero.

    Raises:
        GeometryError: for a diameter that the table does not reach.

    Example:
        >>> fifth_grade(10.0, 1.5)
        0.14
    """
    if not FIRST <= diameter <= STEPS[-1]:
        raise refuse(
            "nominal_diameter",
            "ISO classes of taps reach from {least} to {most}. Set tap_limit to limits and give those of the tap's maker.",
            {"least": length(FIRST), "most": length(STEPS[-1])},
        )
    at = bisect_left(STEPS, diameter)
    # A pitch may come from threads per inch, and be off by its last digit.
    listed = [wide for one, wide in GRADE_5[at].items() if math.isclose(one, pitch, rel_tol=1e-9)]
    return listed[0] * MICRON if listed else by_formula(at, pitch) * MICRON


def by_formula(step: int, pitch: float) -> float:
    """The same by the formula of ISO 965-1, in micrometres.

    Args:
        step: the number of the step of diameters.
        pitch: in mm, above zero.

    Example:
        >>> round(by_formula(3, 1.5), 1)
        138.0
    """
    middle = math.sqrt((FIRST, *STEPS)[step] * STEPS[step])
    return float(1.06 * 90.0 * pitch**0.4 * middle**0.1)


def tap_limits(made: Thread, mark: str) -> Limits:
    """The limits of the pitch diameter of a tap.

    Relation: the basic pitch diameter of the thread and what the mark adds. An H number is so many half thousandths of an
    inch above it at most, and one less at least; an L number below it. A D number is the same for metric taps, with
    limits that are wider the coarser the pitch. An ISO class lies at tenths of the tolerance of grade 5.

    Args:
        made: the thread, of the 60 degree form.
        mark: one of ``MARKS``.

    Returns:
        The limits in mm.

    Example:
        >>> from geometry.thread.form import thread
        >>> found = tap_limits(thread(12.0, 1.75, "iso"), "ISO2-6H")
        >>> round(found.low, 3), round(found.high, 3)
        (10.911, 10.943)
    """
    basic = made.pitch_diameter
    if mark in ISO_SHARES:
        wide = fifth_grade(made.diameter, made.pitch)
        low, high = ISO_SHARES[mark]
        return Limits(basic + low * wide, basic + high * wide)
    number = int(mark[1:])
    if mark[0] == "D":
        high = number * D_STEP
        return Limits(basic + high - _d_band(made.pitch), basic + high)
    if mark[0] == "L":
        return Limits(basic - number * STEP, basic - (number - 1) * STEP)
    return Limits(basic + (number - 1) * STEP, basic + number * STEP)


def _d_band(pitch: float) -> float:
    for coarsest, wide in D_BANDS:
        if pitch <= coarsest * (1 + 1e-9):
            return wide * MICRON
    raise refuse(
        "tap_limit",
        "D numbers reach to a pitch of {most}. Set tap_limit to limits and give those of the tap's maker.",
        {"most": length(D_BANDS[-1][0])},
    )


def number_of(made: Thread, letter: str, measured: float) -> str:
    """The H number between whose limits a measured pitch diameter lies; empty where there is none.

    Args:
        made: the thread.
        letter: ``H``; of other letters no number follows.
        measured: pitch diameter in mm.

    Example:
        >>> from geometry.thread.form import thread
        >>> made = thread(12.7, 25.4 / 13, "iso")
        >>> number_of(made, "H", made.pitch_diameter + 0.0012 * 25.4)
        'H3'
    """
    number = math.ceil((measured - made.pitch_diameter) / STEP - 1e-9)
    return f"H{number}" if letter == "H" and 1 <= number <= MOST_H else ""
