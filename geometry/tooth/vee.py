"""A tool with an odd number of edges in a vee: what is read from its apex, and the diameter that it stands for.

The circle of the edges lies in the vee with its centre ``R / sin(V / 2)`` above the apex, so its top stands
``R (1 + 1 / sin(V / 2))`` above it. Edges touch like the circle only where the sides of the vee do, a right angle less
half the vee to either side of straight down. With one of ``Z`` odd edges on top, the two lowest stand ``180 / Z`` degrees to
either side: such a tool wants a vee of ``180 - 360 / Z`` degrees, 60 for three edges and 108 for five. All derived; both
numbers are printed as those of flute micrometers too, on a home workshop's page about them.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.preconditions import refuse, require_angle, require_finite, require_positive
from geometry.sentences import Rounding, length


@dataclass(frozen=True)
class Vee:
    """A vee, and how far the edges of a tool lie from where it touches.

    Attributes:
        angle: between its sides, in radians.
        off: from where a side would touch the circle to the nearest edge, about the axis, in radians.

    Example:
        >>> round(Vee(math.radians(60)).per_radius, 9), round(Vee(math.radians(60)).diameter(18.0), 9)
        (3.0, 12.0)
    """

    angle: float
    off: float = 0.0

    @property
    def per_radius(self) -> float:
        """The reading for each millimetre of the radius: ``1 + cos(off) / sin(V / 2)``."""
        return 1 + math.cos(self.off) / math.sin(self.angle / 2)

    def reading(self, diameter: float) -> float:
        """From the apex to the top of the circle, in mm.

        Args:
            diameter: of the circle, in mm, above zero.
        """
        return require_positive("diameter", diameter) / 2 * self.per_radius

    def diameter(self, reading: float) -> float:
        """The diameter of the circle, in mm: the inverse of ``reading``.

        Args:
            reading: from the apex to the top, in mm, above zero.
        """
        return 2 * require_positive("vee_reading", reading) / self.per_radius


def fitting_vee(flutes: float) -> float:
    """The vee that touches a tool with an odd number of even edges on two of them when a third is on top.

    Args:
        flutes: how many edges, odd, from three.

    Returns:
        The angle in radians.

    Example:
        >>> [round(math.degrees(fitting_vee(z)), 2) for z in (3, 5, 7)]
        [60.0, 108.0, 128.57]
    """
    if flutes < 3 or flutes % 2 == 0:
        raise refuse(
            "flutes",
            "A vee is for an odd number of flutes from three on. With an even number two edges lie opposite: measure across "
            "them with a micrometer.",
        )
    return math.pi - 2 * math.pi / flutes


def vee_of(angle: float, flutes: float | None = None) -> Vee:
    """A vee with a tool of so many even edges in it, one of them on top; nothing counted stands for a whole cylinder.

    A vee of another angle may fit as well: nine edges lie in a vee of 60 degrees, for every third of them is there.

    Args:
        angle: between its sides, in radians, between zero and half a turn.
        flutes: how many edges, odd, from three; nothing for a cylinder.

    Example:
        >>> round(vee_of(math.radians(60), 9).off, 9), round(math.degrees(vee_of(math.radians(90), 3).off), 9)
        (0.0, 15.0)
    """
    require_angle("vee_angle", angle, 0.0, math.pi)
    if flutes is None:
        return Vee(angle)
    fitting_vee(flutes)
    touches, apart = math.pi / 2 - angle / 2, 2 * math.pi / flutes
    # The edges stand half a spacing, one and a half, and so on, to each side of straight down.
    nearest = max(round(touches / apart - 0.5), 0)
    return Vee(angle, abs((nearest + 0.5) * apart - touches))


def reading_of_difference(difference: float, master_diameter: float, angle: float) -> float:
    """The reading from the apex where only the difference to a master cylinder in the same vee was read.

    Args:
        difference: the tool's top over that of the master, in mm; below zero where the tool is smaller.
        master_diameter: in mm, above zero.
        angle: of the vee, in radians, between zero and half a turn.

    Example:
        >>> round(reading_of_difference(0.03, 12.0, math.radians(60)), 9)
        18.03
    """
    found = vee_of(angle).reading(require_positive("master_diameter", master_diameter))
    found += require_finite("vee_difference", difference)
    if found > 0:
        return found
    raise refuse(
        "vee_difference",
        "The tool cannot lie so far under the master: at {most} its top would be in the apex. Read it again.",
        {"most": length(difference - found, Rounding.UP)},
    )
