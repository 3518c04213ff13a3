"""The swivel for an edge that lies at an angle to the axis, where the rest has turned its tooth down before the wheel.

A rest that goes along with the tool turns it by ``d`` about its own axis; then a wheel face that stands upright grinds
it. Seen from the tooth, whose edge lies in one plane with the axis, the face stands square to

    (sin s, cos s cos d, cos s sin d)        along the axis, along the radius, round the tool

so that it leaves an edge of ``tan(kappa) = tan(s) / cos(d)`` for the swivel ``s``, and the turn ``d`` is the relief
square to the axis, of a cone as of a cylinder. Derived; the tests lay a plane through turned points. A wheel head that is
raised over a level tooth tilts the face about the edge, and a cam turns nothing: both leave the swivel as the edge.
"""

from __future__ import annotations

import math

from geometry.preconditions import refuse, require_angle, require_relief


def swivel_for_edge(kappa: float, turned: float) -> float:
    """The angle of the axis to the wheel face for an edge: ``atan(tan(kappa) cos(d))``.

    Args:
        kappa: of the edge to the axis, in radians, from zero to under a right angle.
        turned: how far the rest turns the tooth down, in radians, from zero to under a right angle.

    Returns:
        The angle in radians; the edge itself where nothing is turned.

    Raises:
        GeometryError: for an angle out of these ranges.

    Example:
        >>> round(math.degrees(swivel_for_edge(math.radians(41), math.radians(10.549))), 2)
        40.52
    """
    require_angle("kappa", kappa, -1e-12, math.pi / 2)
    return math.atan(math.tan(kappa) * math.cos(require_relief("relief_angle", turned)))


def edge_of_swivel(swivel: float, turned: float) -> float:
    """The edge that a swivel leaves: ``atan(tan(s) / cos(d))``, the inverse of ``swivel_for_edge``.

    Args:
        swivel: the angle of the axis to the wheel face, in radians, from zero to under a right angle.
        turned: how far the rest turns the tooth down, in radians, from zero to under a right angle.

    Returns:
        Its angle to the axis in radians.

    Raises:
        GeometryError: for an angle out of these ranges.

    Example:
        >>> round(2 * math.degrees(edge_of_swivel(math.radians(41), math.radians(10.549))), 2)
        82.97
    """
    require_angle("axis_to_wheel_angle", swivel, -1e-12, math.pi / 2)
    return math.atan2(math.tan(swivel), math.cos(require_relief("relief_angle", turned)))


def edge_of_relief(swivel: float, normal_relief: float) -> float:
    """The edge that a swivel leaves where the rest stands for a relief square to that edge.

    Relation: ``cos(kappa)**2 = cos(s)**2 - sin(s)**2 tan(a)**2``, from ``edge_of_swivel`` with the turn ``tan(d) = tan(a) /
    cos(kappa)``. Derived.

    Args:
        swivel: the angle of the axis to the wheel face, in radians, from zero to under a right angle.
        normal_relief: square to the edge, in radians, from zero to under a right angle.

    Returns:
        Its angle to the axis in radians.

    Raises:
        GeometryError: for an angle out of these ranges, or where no edge has so much relief at that swivel.

    Example:
        >>> round(math.degrees(edge_of_relief(math.radians(40.5173), math.radians(8))), 3)
        41.0
    """
    require_angle("axis_to_wheel_angle", swivel, -1e-12, math.pi / 2)
    sine = math.sin(swivel) * math.tan(require_relief("relief_angle", normal_relief))
    if sine >= math.cos(swivel):
        raise refuse(
            "axis_to_wheel_angle",
            "At that swivel no rest gives an edge so much relief square to itself. Swivel less, or give less relief.",
        )
    return math.acos(math.sqrt(math.cos(swivel) ** 2 - sine**2))
