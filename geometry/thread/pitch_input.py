"""Inputs on a pitch: millimetres or threads per inch, for every calculation that wants one."""

from __future__ import annotations

from geometry.calculation import Check, Field, Inputs
from geometry.plausible import pitch_plausible

PITCH = (Field("pitch", one_of="pitch"), Field("threads_per_inch", one_of="pitch"))
"""Exactly one of them is asked for."""


def pitch_of(given: Inputs) -> float:
    """The pitch in mm, whichever way it was given.

    Example:
        >>> pitch_of(Inputs({"threads_per_inch": 0.5}))
        2.0
    """
    return given.number("pitch") if given.has("pitch") else 1 / given.number("threads_per_inch")


def pitch_checks(given: Inputs) -> tuple[Check, ...]:
    """Whether the pitch, whichever way it was given, can belong to a thread of the diameter given.

    Example:
        >>> pitch_checks(Inputs({"diameter": 12.0, "pitch": 1.75}))
        ()
    """
    key = "pitch" if given.has("pitch") else "threads_per_inch"
    return pitch_plausible(pitch_of(given), given.number("diameter"), key=key)
