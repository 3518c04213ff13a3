"""A taper pipe tap: its chamfer at the small end, and what cutting that end back takes away.

The tap is a cone whose pitch diameter is ``E0`` at the small face of a ring gauge that was screwed on by hand; its end
stands ahead of that face by the projection. Everything is counted along the axis from there.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.preconditions import refuse, require_not_negative, require_positive
from geometry.sentences import Rounding, angle
from geometry.thread.pipe import INCH, TAPER, PipeThread

_PROJECTIONS = {
    "1/16": 0.312,
    "1/8": 0.312,
    "1/4": 0.459,
    "3/8": 0.454,
    "1/2": 0.579,
    "3/4": 0.565,
    "1": 0.678,
    "1-1/4": 0.686,
    "1-1/2": 0.699,
    "2": 0.667,
    "2-1/2": 0.925,
    "3": 0.925,
}
"""ASME B94.9-2008, taper pipe thread limits, as Machinery's Handbook 31st ed. p. 1005 has them, inches: how far the
small end of an NPT tap stands out of a thin ring gauge."""

_SMALL_TOLERANCE, _LARGE_TOLERANCE, _LARGE_PITCH = 1 / 16 * INCH, 3 / 32 * INCH, INCH / 12
"""The same table: a sixteenth either way up to 3/4, three thirty-seconds from 1 on, which has 11-1/2 to the inch."""


def projection_of_standard(made: PipeThread) -> tuple[float, float] | None:
    """How far the small end of a new tap stands out of its ring gauge, and the tolerance either way, in mm.

    Args:
        made: the thread.

    Returns:
        Nothing where no table was read: for British taper pipe, and above 3 inches.

    Example:
        >>> from geometry.thread.pipe import pipe_thread
        >>> [round(one, 4) for one in projection_of_standard(pipe_thread("npt", 21.336, 25.4 / 14))]
        [14.7066, 1.5875]
    """
    if made.series != "NPT" or made.size not in _PROJECTIONS:
        return None
    return _PROJECTIONS[made.size] * INCH, (
        _LARGE_TOLERANCE if made.pitch > _LARGE_PITCH else _SMALL_TOLERANCE
    )


def chamfer_slope(rise: float, length: float) -> float:
    """The angle to the axis of a chamfer on a taper thread: ``atan(h / l + 1 / 32)``.

    Over its length the chamfer gains its rise on crests that climb by half the taper themselves. Derived.

    Args:
        rise: how deep the chamfer cuts into the crests at the very end, in mm, from zero.
        length: along the axis to the first full thread, in mm, above zero.

    Returns:
        The angle in radians.

    Example:
        >>> round(math.degrees(chamfer_slope(1.4515, 2.5 * 25.4 / 14)), 2)
        19.35
    """
    return math.atan(
        require_not_negative("rise", rise) / require_positive("chamfer_length", length) + TAPER / 2
    )


def chamfer_length_for(rise: float, slope: float) -> float:
    """How long such a chamfer is: the inverse of ``chamfer_slope``.

    Args:
        rise: at the very end, in mm, from zero.
        slope: to the axis, in radians, above that of the thread and under a right angle.

    Raises:
        GeometryError: when the chamfer would not be steeper than the thread.

    Example:
        >>> round(chamfer_length_for(1.0, math.atan(0.25 + 1 / 32)), 9)
        4.0
    """
    over = math.tan(slope) - TAPER / 2 if slope < math.pi / 2 else math.inf
    if over <= 1e-9 or not math.isfinite(over):
        raise refuse(
            "chamfer_angle",
            "The thread itself rises at {thread} to the axis; a chamfer is steeper than that. Measure it again.",
            {"thread": angle(math.atan(TAPER / 2), Rounding.UP)},
        )
    return require_not_negative("rise", rise) / over


@dataclass(frozen=True)
class PipeTap:
    """A taper pipe tap at its small end.

    Attributes:
        thread: that it cuts.
        projection: of its end out of the ring gauge, in mm, before it is cut back.
        cut_back: off its end, in mm.
        chamfer: its length along the axis, in mm.

    Example:
        >>> from geometry.thread.pipe import pipe_thread
        >>> tap = PipeTap(pipe_thread("npt", 21.336, 25.4 / 14), 14.7, 3.0, 4.5)
        >>> round(tap.turns_lost, 4), round(tap.full_threads, 3), round(tap.depth_in_hole, 3)
        (1.6535, 3.969, 19.828)
    """

    thread: PipeThread
    projection: float
    cut_back: float
    chamfer: float

    @property
    def left(self) -> float:
        """The projection after cutting back, in mm."""
        return self.projection - self.cut_back

    @property
    def end_pitch_diameter(self) -> float:
        """The pitch diameter that the cone of the thread has at the end, after cutting back, in mm."""
        return self.thread.front_pitch_diameter - TAPER * self.left

    @property
    def turns_lost(self) -> float:
        """The turns of thread that are cut off."""
        return self.cut_back / self.thread.pitch

    @property
    def full_threads(self) -> float:
        """The full threads between the chamfer and the small face of the gauge; below zero the chamfer reaches past it."""
        return (self.left - self.chamfer) / self.thread.pitch

    @property
    def threads_wanted(self) -> float:
        """The full threads that an internal thread needs there, for its wrench make-up."""
        return self.thread.beyond / self.thread.pitch

    @property
    def depth_in_hole(self) -> float:
        """How far the tap goes in until its hand-tight or gauge plane is at the mouth, in mm."""
        return self.left + self.thread.gauge_length

    @property
    def may_be_cut(self) -> float:
        """What more may be cut off the end before too few full threads are left, in mm; below zero it is too much now."""
        return self.left - self.chamfer - self.thread.beyond

    @property
    def mouth_grows(self) -> float:
        """How much larger the hole becomes at its mouth when the tap is run in as deep as before, in mm."""
        return TAPER * self.cut_back
