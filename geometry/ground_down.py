"""When a tool is ground down to another diameter, and does not only stand over its size."""

from __future__ import annotations

from geometry.plausible import WRONG_READING

OVER_SIZE = 0.02
"""By which share of its size a tool may stand over it by itself, as counterbores and countersinks are made. Common
practice, no source."""


def is_ground_down(came: float, size: float, *, body: float | None = None) -> bool:
    """Whether a tool that came with one diameter and is to have another is ground down to it.

    With a body that stands outside of the size, as it was before, it is by however little; else where it came larger than
    a tool of that size is made: ``came > size (1 + OVER_SIZE)``. A diameter that cannot be that of a tool of this size at all
    says nothing.

    Args:
        came: the diameter that it came with, in mm, above zero; not a number where nobody knows it.
        size: the diameter that it is to have, in mm, above zero.
        body: the diameter of the body behind the edges, in mm; nothing where it was not measured.

    Example:
        >>> is_ground_down(10.0, 9.7), is_ground_down(12.02, 12.0), is_ground_down(9.75, 9.7, body=10.0)
        (True, False, True)
        >>> is_ground_down(97.0, 9.7)
        False
    """
    least = size if body is not None and body > size else size * (1 + OVER_SIZE)
    return least < came <= size * (1 + WRONG_READING)
