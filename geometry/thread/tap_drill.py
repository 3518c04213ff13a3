"""The hole before tapping, and how much of a thread it leaves."""

from __future__ import annotations

from geometry.preconditions import GeometryError, require_not_negative, require_positive
from geometry.thread.form import Thread

FULL_DEPTHS = {"three-quarters": 3 / 4, "five-eighths": 5 / 8}
"""What a full 60 degree thread is, on one side, as a part of the sharp height.

Three quarters is the 0.01299 of tap makers' rules (1.299 P on the diameter for 100 percent); five eighths,
1.08253 P on the diameter, is the basic internal thread of ASME B1.1 and ISO 68-1.
"""


def rule_diameter(thread: Thread) -> float:
    """The hole by the common rule: diameter less pitch.

    Published: the metric tap drills of ISO 2306 follow it, rounded to a drill that can be had.

    Args:
        thread: the thread to be cut.

    Returns:
        The diameter in mm.

    Example:
        >>> from geometry.thread.form import thread
        >>> rule_diameter(thread(10.0, 1.5, "iso"))
        8.5
    """
    return thread.diameter - thread.pitch


def full_depth(thread: Thread, counted_as: str) -> float:
    """How deep a thread of 100 percent is, on one side, in mm.

    Args:
        thread: the thread to be cut.
        counted_as: ``"three-quarters"`` or ``"five-eighths"`` of the sharp height for a 60 degree thread; any
            other thread has one depth, and that is taken whatever is said here.

    Raises:
        GeometryError: for another word.

    Example:
        >>> from geometry.thread.form import thread
        >>> round(2 * full_depth(thread(8.0, 1.0, "iso"), "three-quarters"), 3)
        1.299
    """
    if counted_as not in FULL_DEPTHS:
        raise GeometryError("A full thread is three-quarters or five-eighths.", "full_thread")
    if thread.shape.has_one_depth:
        return thread.internal_depth
    return FULL_DEPTHS[counted_as] * thread.sharp_height


def percent_of_thread(hole_diameter: float, thread: Thread, counted_as: str) -> float:
    """How much of a full thread a tapped hole carries: ``100 (D - hole) / (2 full depth)``.

    Args:
        hole_diameter: before tapping, in mm, from zero.
        thread: the thread to be cut.
        counted_as: as for ``full_depth``.

    Returns:
        The percentage; 0 or less when the hole is as large as the thread.

    Raises:
        GeometryError: when the hole is below zero.

    Example:
        >>> from geometry.thread.form import thread
        >>> round(percent_of_thread(6.8, thread(8.0, 1.25, "iso"), "three-quarters"), 1)
        73.9
    """
    require_not_negative("drilled_diameter", hole_diameter)
    return 100 * (thread.diameter - hole_diameter) / (2 * full_depth(thread, counted_as))


def hole_for_percent(percent: float, thread: Thread, counted_as: str) -> float:
    """The hole that leaves ``percent`` of a full thread; the inverse of ``percent_of_thread``.

    Args:
        percent: of a full thread, above zero.
        thread: the thread to be cut.
        counted_as: as for ``full_depth``.

    Returns:
        The diameter in mm.

    Raises:
        GeometryError: when nothing of the hole would be left.

    Example:
        >>> from geometry.thread.form import thread
        >>> round(hole_for_percent(75.0, thread(10.0, 1.5, "iso"), "three-quarters"), 2)
        8.54
    """
    hole = thread.diameter - require_positive("thread_percent", percent) / 100 * 2 * full_depth(
        thread, counted_as
    )
    if hole <= 0:
        raise GeometryError("So deep a thread leaves no hole; ask for a lower percentage.", "thread_percent")
    return hole
