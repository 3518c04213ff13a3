"""The spiral point of a gun tap: a flat gash at the front of a straight flute, at an angle to the axis.

At the very front the gash lies ``d`` behind the face of the flute, square to that face; at its angle it runs out into the
face ``L = d / tan(angle)`` further up. It shall go past the chamfer by one to two threads, so that every tooth that cuts
drives its chip ahead. All derived from that triangle.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.preconditions import require_angle, require_not_negative, require_positive


@dataclass(frozen=True)
class Gash:
    """A gash at the front of a flute.

    Attributes:
        angle: of the gash to the axis, in radians, between zero and a right angle.
        depth: at the front, square to the face of the flute, in mm; zero or less where it is gone.

    Example:
        >>> round(gash_of_length(math.radians(10), 10.5).depth, 3)
        1.851
    """

    angle: float
    depth: float

    @property
    def length(self) -> float:
        """How far the gash runs up the flute: ``d / tan(angle)``, in mm."""
        return self.depth / math.tan(self.angle)

    def cut_back(self, by: float) -> Gash:
        """The gash after so much (mm) is cut off the end of the tap: it is shorter by that, and less deep."""
        return Gash(self.angle, self.depth - require_not_negative("cut_back", by) * math.tan(self.angle))

    def ground(self, stock: float) -> Gash:
        """The gash after so much (mm) is ground off square to it: deeper by ``s / cos(angle)``.

        Example:
            >>> round(Gash(math.radians(60), 1.0).ground(0.5).depth, 9)
            2.0
        """
        require_not_negative("stock_per_sharpening", stock)
        return Gash(self.angle, self.depth + stock / math.cos(self.angle))

    def stock_for(self, depth: float) -> float:
        """What is ground off square to the gash until it has a depth (mm): the inverse of ``ground``."""
        return (depth - self.depth) * math.cos(self.angle)


def require_gash(angle: float) -> float:
    """Return the angle of a gash (radians), or raise unless it lies between zero and a right angle."""
    return require_angle("spiral_point_angle", angle, 0.0, math.pi / 2)


def gash_of_length(angle: float, length: float) -> Gash:
    """The gash that runs so far up the flute: ``d = L tan(angle)``.

    Args:
        angle: to the axis, in radians, between zero and a right angle.
        length: along the axis, in mm, above zero.
    """
    return Gash(require_gash(angle), require_positive("spiral_point_length", length) * math.tan(angle))


def keeps_length(stock: float, angle: float) -> float:
    """How much is cut off the end so that a gash ground by ``stock`` runs as far as before: ``s / sin(angle)``.

    Example:
        >>> round(keeps_length(0.1, math.radians(30)), 9)
        0.2
    """
    return require_not_negative("stock_per_sharpening", stock) / math.sin(require_gash(angle))
