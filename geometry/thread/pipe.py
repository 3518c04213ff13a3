"""Taper pipe threads: the diameters of a thread that grows by 1 in 16 along its axis.

The American one, NPT of ASME B1.20.1, is called by the outside diameter of its pipe and gauged at the hand-tight
plane; the British one, BSPT of ISO 7-1, by its largest diameter at the gauge plane. In front of that plane the
thread is smaller, and nothing of a parallel thread of that diameter holds for it.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.preconditions import GeometryError, refuse
from geometry.sentences import length
from geometry.thread.form import form

TAPER = 1 / 16
"""Growth of the diameter for each unit of length, ASME B1.20.1 and ISO 7-1 alike."""

INCH = 25.4

NPT_DEPTH = 0.8
"""Greatest depth of an NPT thread as a share of the pitch: ASME B1.20.1, h = 0.800 P."""

_NPT = {
    "1/16": (0.3125, 27, 0.160),
    "1/8": (0.405, 27, 0.1615),
    "1/4": (0.540, 18, 0.2278),
    "3/8": (0.675, 18, 0.240),
    "1/2": (0.840, 14, 0.320),
    "3/4": (1.050, 14, 0.339),
    "1": (1.315, 11.5, 0.400),
    "1-1/4": (1.660, 11.5, 0.420),
    "1-1/2": (1.900, 11.5, 0.420),
    "2": (2.375, 11.5, 0.436),
    "2-1/2": (2.875, 8, 0.682),
    "3": (3.500, 8, 0.766),
    "3-1/2": (4.000, 8, 0.821),
    "4": (4.500, 8, 0.844),
    "5": (5.563, 8, 0.937),
    "6": (6.625, 8, 0.958),
}
"""ASME B1.20.1, inches: outside diameter of the pipe, threads per inch, length L1 of hand-tight engagement."""

_BSPT = {
    "1/16": (7.723, 28, 4.0),
    "1/8": (9.728, 28, 4.0),
    "1/4": (13.157, 19, 6.0),
    "3/8": (16.662, 19, 6.4),
    "1/2": (20.955, 14, 8.2),
    "3/4": (26.441, 14, 9.5),
    "1": (33.249, 11, 10.4),
    "1-1/4": (41.910, 11, 12.7),
    "1-1/2": (47.803, 11, 12.7),
    "2": (59.614, 11, 15.9),
    "2-1/2": (75.184, 11, 17.5),
    "3": (87.884, 11, 20.6),
    "4": (113.030, 11, 25.4),
    "5": (138.430, 11, 28.6),
    "6": (163.830, 11, 28.6),
}
"""ISO 7-1: gauge diameter in mm, threads per inch, gauge length in mm, as pages on pipe threads list it."""

MISSED_DIAMETER, MISSED_PITCH = 0.01, 0.005
"""How far a diameter and a pitch may be rounded and still name their size; the sizes lie far apart."""


@dataclass(frozen=True)
class PipeThread:
    """One taper pipe thread; lengths in mm.

    Attributes:
        series: ``"NPT"`` or ``"BSPT"``.
        size: such as ``1/4``.
        diameter: of the pipe for NPT; over the crests at the gauge plane for BSPT.
        pitch: along the axis.
        gauge_length: from the small end to the hand-tight or gauge plane.
        depth: of the thread on one side.
        sharp_height: of the sharp triangle.
        beyond: how much further than the gauge length a tapped hole is threaded.
    """

    series: str
    size: str
    diameter: float
    pitch: float
    gauge_length: float
    depth: float
    sharp_height: float
    beyond: float

    @property
    def front_pitch_diameter(self) -> float:
        """At the small end: E0 = D - (0.05 D + 1.1) p for NPT, all in inches."""
        if self.series == "NPT":
            return self.diameter - (0.05 * self.diameter + 1.1 * INCH) * self.pitch / INCH
        return self.diameter - self.depth - TAPER * self.gauge_length

    @property
    def pitch_diameter(self) -> float:
        """At the hand-tight or gauge plane, the mouth of a tapped hole: E1 = E0 + L1 / 16."""
        return self.front_pitch_diameter + TAPER * self.gauge_length

    @property
    def front_minor_diameter(self) -> float:
        """At the root of the small end: the pitch diameter there less the depth."""
        return self.front_pitch_diameter - self.depth

    @property
    def mouth_minor_diameter(self) -> float:
        """Over the crests of a tapped hole at its mouth."""
        return self.pitch_diameter - self.depth

    @property
    def inner_minor_diameter(self) -> float:
        """Over the crests of a tapped hole where its thread ends inside."""
        return self.front_minor_diameter - TAPER * self.beyond

    def depth_at_mouth(self, hole: float) -> float:
        """How much of the depth a straight hole leaves at its mouth: 1 for all of it."""
        return (self.pitch_diameter + self.depth - hole) / (2 * self.depth)

    def hole_for_depth(self, share: float) -> float:
        """The straight hole that leaves a share of the depth at its mouth; the inverse."""
        return self.pitch_diameter + self.depth - 2 * share * self.depth


def pipe_thread(series: str, diameter: float, pitch: float) -> PipeThread:
    """The taper pipe thread that is called by a diameter and a pitch.

    Args:
        series: ``"npt"`` or ``"bspt"``.
        diameter: of the pipe for NPT, at the gauge plane for BSPT, in mm; within a hundredth of the table's.
        pitch: in mm.

    Returns:
        The thread with the sizes of its standard.

    Raises:
        GeometryError: when there is no such size.

    Example:
        >>> quarter = pipe_thread("npt", 13.716, 25.4 / 18)
        >>> round(quarter.front_pitch_diameter, 3), round(quarter.pitch_diameter, 3)
        (12.126, 12.487)
    """
    sizes = _sizes(series)
    for one in sizes:
        if (
            abs(diameter - one.diameter) <= MISSED_DIAMETER * one.diameter
            and abs(pitch - one.pitch) <= MISSED_PITCH * one.pitch
        ):
            return one
    near = min(sizes, key=lambda one: (abs(math.log(diameter / one.diameter)), one.diameter))
    raise refuse(
        "diameter",
        "No {series} thread has a diameter of {diameter} and a pitch of {pitch}: the nearest, {size} {series}, has "
        "{near} and {near_pitch}. Give its diameter as the standard lists it, or choose parallel for a parallel thread.",
        {
            "series": near.series,
            "size": near.size,
            "diameter": length(diameter),
            "pitch": length(pitch),
            "near": length(near.diameter),
            "near_pitch": length(near.pitch),
        },
    )


def _sizes(series: str) -> tuple[PipeThread, ...]:
    if series == "npt":
        return tuple(
            _npt(size, outside * INCH, INCH / count, tight * INCH)
            for size, (outside, count, tight) in _NPT.items()
        )
    if series == "bspt":
        shape = form("whitworth")
        return tuple(
            PipeThread("BSPT", size, gauge, INCH / count, long, shape.internal * INCH / count,
                       shape.sharp * INCH / count, 0.0)
            for size, (gauge, count, long) in _BSPT.items()
        )  # fmt: skip
    raise GeometryError("A taper pipe thread is npt or bspt.", "thread_taper")


def _npt(size: str, outside: float, pitch: float, tight: float) -> PipeThread:
    # L3, the wrench make-up of the internal thread: three threads, and two from 2-1/2 on (ASME B1.20.1).
    beyond = (2 if pitch > 3.0 else 3) * pitch
    return PipeThread(
        "NPT", size, outside, pitch, tight, NPT_DEPTH * pitch, form("iso").sharp * pitch, beyond
    )
