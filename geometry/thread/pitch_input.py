"""Inputs on a thread: its pitch in millimetres or threads per inch, and the size that it is called by where its tap was measured."""

from __future__ import annotations

from geometry.calculation import Check, Field, Inputs
from geometry.plausible import pitch_plausible

PITCH = (Field("pitch", one_of="pitch"), Field("threads_per_inch", one_of="pitch"))
"""Exactly one of them is asked for."""

NOMINAL = Field("nominal_diameter", optional=True)
"""The size that a thread is called by, beside the diameter of a tap as it measures."""


def basic_diameter(given: Inputs) -> float:
    """The diameter that the thread is called by, in mm: what a tap measures over its crests says nothing of it.

    Example:
        >>> basic_diameter(Inputs({"diameter": 16.5, "nominal_diameter": 16.0})), basic_diameter(Inputs({"diameter": 16.0}))
        (16.0, 16.0)
    """
    return given.number_or("nominal_diameter", given.number("diameter"))


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
