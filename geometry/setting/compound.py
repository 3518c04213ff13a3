"""A flat face at two slopes to the base of a universal head or vise, and the angles that bring it level.

The base is the plane z = 0, x along the jaws, y across them; the face falls by ``ta`` along x and by ``tb`` along y, so its
normal is ``(ta, tb, 1)``. An edge that is turned by ``C`` from across the jaws lies along ``(-sin C, cos C)``; square to it,
along ``(cos C, sin C)``, the same face falls by

    tan(slope)       = tan(a) cos(C) + tan(b) sin(C)
    tan(inclination) = tan(b) cos(C) - tan(a) sin(C)

which is how a tool catalogue prints true rake and inclination from radial and axial rake and the corner angle (its sign of the
inclination differs between makers). Measured square to the inclined edge itself the slope is ``tan(slope) cos(inclination)``.
The face is brought level by swivel and one tilt, or by two tilts of which the first carries the second. All derived; the
tests turn the normal with rotation matrices.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.preconditions import require_angle, require_finite

QUARTER = math.pi / 2


@dataclass(frozen=True)
class Face:
    """A flat face over a base.

    Attributes:
        along: how far it falls for each millimetre along the jaws; below zero it rises.
        across: the same across the jaws.

    Example:
        >>> face = face_of_slopes(math.radians(10), math.radians(10))
        >>> round(math.degrees(face.swivel), 6), round(math.degrees(face.tilt), 3)
        (45.0, 14.002)
    """

    along: float
    across: float

    @property
    def swivel(self) -> float:
        """From the jaws to where the face falls most, toward across, in radians; zero for a level face."""
        return math.atan2(self.across, self.along)

    @property
    def tilt(self) -> float:
        """How much it falls there: ``atan(sqrt(ta^2 + tb^2))``, in radians."""
        return math.atan(math.hypot(self.along, self.across))

    @property
    def two_tilts(self) -> tuple[float, float]:
        """The tilts (rad) where the axis along the jaws carries the one across them: ``atan(tb cos(a))``, and then ``a``.

        The upper axis turns the face in its own frame and takes its whole slope; what the lower one has left to take is
        less, because the face has come nearer to it.
        """
        upper = math.atan(self.along)
        return math.atan(self.across * math.cos(upper)), upper

    @property
    def other_order(self) -> tuple[float, float]:
        """The tilts (rad) where the axis across the jaws carries the one along them: ``atan(ta cos(b))``, and then ``b``."""
        upper = math.atan(self.across)
        return math.atan(self.along * math.cos(upper)), upper

    def at_edge(self, turn: float) -> tuple[float, float]:
        """Slope square to an edge, and inclination along it, in radians, both over the base.

        Args:
            turn: of the edge from across the jaws, in radians.
        """
        cos, sin = math.cos(turn), math.sin(turn)
        return (
            math.atan(self.along * cos + self.across * sin),
            math.atan(self.across * cos - self.along * sin),
        )


def _slope(key: str, angle: float) -> float:
    return math.tan(require_angle(key, angle, -QUARTER, QUARTER))


def face_of_slopes(along: float, across: float) -> Face:
    """The face of two slopes over the base (radians), along the jaws and across them."""
    return Face(_slope("along_slope_angle", along), _slope("cross_slope_angle", across))


def face_of_edge(turn: float, slope: float, inclination: float = 0.0) -> Face:
    """The face of an edge: the inverse of ``Face.at_edge``.

    Args:
        turn: of the edge from across the jaws, in radians.
        slope: square to the edge, over the base, in radians.
        inclination: along the edge, in radians.

    Example:
        >>> face = face_of_edge(math.radians(30), math.radians(8), math.radians(5))
        >>> [round(math.degrees(one), 9) for one in face.at_edge(math.radians(30))]
        [8.0, 5.0]
    """
    cos, sin = math.cos(require_finite("edge_turn_angle", turn)), math.sin(turn)
    falls, runs = _slope("edge_slope_angle", slope), _slope("edge_inclination_angle", inclination)
    return Face(falls * cos - runs * sin, falls * sin + runs * cos)


def square_to_edge(slope: float, inclination: float) -> float:
    """The slope in the plane square to an inclined edge: ``tan(slope) cos(inclination)``.

    It is the normal rake of an edge from its orthogonal one, and that of a helical edge from the one square to the axis.

    Args:
        slope: square to the edge over the base, in radians, under a right angle either way.
        inclination: of the edge, in radians, under a right angle either way.

    Example:
        >>> round(math.degrees(square_to_edge(math.radians(15), math.radians(30))), 3)
        13.064
    """
    require_angle("edge_inclination_angle", inclination, -QUARTER, QUARTER)
    return math.atan(_slope("edge_slope_angle", slope) * math.cos(inclination))
