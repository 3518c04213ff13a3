"""The rim of a cross hole by vectors: points of both surfaces, their tangents and normals, found without the relations."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest

from geometry.cone.cross_hole import CrossHole, cross_hole
from geometry.preconditions import GeometryError

Vector = tuple[float, float, float]
TINY = 1e-5

TOOLS = [
    (90, 6.0, 45, 10.0),
    (82, 5.0, 45, 9.0),
    (60, 4.0, 60, 14.0),
    (120, 8.0, 30, 12.0),
    (90, 4.0, 90, 8.0),
]
each_tool = pytest.mark.parametrize(("included", "hole", "tilt", "height"), TOOLS)


def plus(one: Vector, other: Vector, times: float = 1.0) -> Vector:
    return one[0] + times * other[0], one[1] + times * other[1], one[2] + times * other[2]


def dot(one: Vector, other: Vector) -> float:
    return sum(a * b for a, b in zip(one, other, strict=True))


def unit(one: Vector) -> Vector:
    size = math.hypot(*one)
    return one[0] / size, one[1] / size, one[2] / size


def cross(one: Vector, other: Vector) -> Vector:
    (a, b, c), (x, y, z) = one, other
    return b * z - c * y, c * x - a * z, a * y - b * x


def rim(made: CrossHole) -> Callable[[float], Vector]:
    """A point of the rim for each turn round the hole: along its wall, from the lower side, to where it meets the cone."""
    along: Vector = (-math.sin(made.tilt), 0.0, math.cos(made.tilt))
    one: Vector = (math.cos(made.tilt), 0.0, math.sin(made.tilt))
    slope = math.tan(made.half_angle)

    def point(turn: float) -> Vector:
        start: Vector = (0.0, made.radius * math.sin(turn), made.height)
        start = plus(start, one, made.radius * math.cos(turn))

        def outside(way: float) -> float:
            x, y, z = plus(start, along, -way)
            return math.hypot(x, y) - z * slope

        low, high = 0.0, 10 * made.height
        assert outside(low) < 0 < outside(high)
        for _ in range(80):
            middle = (low + high) / 2
            low, high = (middle, high) if outside(middle) < 0 else (low, middle)
        return plus(start, along, -low)

    return point


@each_tool
def test_the_rim_begins_and_ends_where_the_wall_of_the_hole_meets_the_cone(
    included: float, hole: float, tilt: float, height: float
) -> None:
    made = cross_hole(math.radians(included), hole, math.radians(tilt), height)
    radii = [math.hypot(*rim(made)(2 * math.pi * n / 720)[:2]) for n in range(720)]
    assert made.ends == pytest.approx((min(radii), max(radii)), rel=1e-4)


@each_tool
@pytest.mark.parametrize("turn", [0.7, 1.2, 1.6, 2.0, 2.5])
def test_turn_rake_and_inclination_are_those_of_the_vectors(
    included: float, hole: float, tilt: float, height: float, turn: float
) -> None:
    made = cross_hole(math.radians(included), hole, math.radians(tilt), height)
    point = rim(made)
    x, y, z = at = point(turn)
    edge = unit(plus(point(turn + TINY), point(turn - TINY), -1))
    radius, round_by = math.hypot(x, y), math.atan2(y, x)
    # The tool turns so that the metal beyond this half of the rim follows it: against the turn of the place.
    way: Vector = (math.sin(round_by), -math.cos(round_by), 0.0)
    straight: Vector = unit((x, y, z))
    outward = cross((-math.sin(round_by), math.cos(round_by), 0.0), straight)
    along: Vector = (-math.sin(made.tilt), 0.0, math.cos(made.tilt))
    centre: Vector = (0.0, 0.0, made.height)
    to_axis = plus(at, centre, -1)
    to_axis = plus(to_axis, along, -dot(to_axis, along))
    wall = unit(cross(edge, unit(to_axis)))
    wall = wall if dot(wall, outward) < 0 else (-wall[0], -wall[1], -wall[2])
    ahead = unit(plus(way, edge, -dot(way, edge)))
    rake = math.atan2(-dot(wall, ahead), -dot(wall, outward))
    found = made.place(radius)
    assert found.turned == pytest.approx(abs(round_by), abs=1e-6)
    assert found.rake == pytest.approx(rake, abs=1e-4)
    assert found.inclination == pytest.approx(math.asin(abs(dot(edge, way))), abs=1e-4)


@each_tool
def test_the_relief_square_to_the_inclined_edge_is_that_of_the_surfaces(
    included: float, hole: float, tilt: float, height: float
) -> None:
    made = cross_hole(math.radians(included), hole, math.radians(tilt), height)
    low, high = made.ends
    cos, sin = math.cos(made.half_angle), math.sin(made.half_angle)
    sinks = 0.02 * high  # square to the cone, for each radian

    def land(r: float, p: float) -> Vector:
        """The cone after the cam, which has sunk by as much as the place has turned."""
        fallen = sinks * p
        flat = r - fallen * cos
        return flat * math.cos(p), flat * math.sin(p), r / math.tan(made.half_angle) + fallen * sin

    for share in (0.3, 0.5, 0.7):
        r = low + share * (high - low)
        place = made.place(r)
        p = place.turned
        edge = unit(plus(land(r + TINY, made.turned(r + TINY)), land(r - TINY, made.turned(r - TINY)), -1))
        behind = plus(land(r, p + TINY), land(r, p - TINY), -1)
        way: Vector = (-math.sin(p), math.cos(p), 0.0)
        flank, swept = unit(cross(edge, behind)), unit(cross(edge, way))
        angle = math.asin(min(1.0, math.hypot(*cross(flank, swept))))
        assert place.square_relief(math.atan(sinks / r)) == pytest.approx(angle, rel=0.03)


def test_a_hole_square_to_the_tool_is_worked_out_by_hand() -> None:
    # By hand: a hole of radius 2 at 8 above the tip of a 90 degree cone. Rim from r 6 to 10. In its middle r is 8, the wall is
    # 2 beside the plane of the axes, sin p = 2/8, and the outward normal leans there by cos 45 x 2/8 against the wall.
    made = cross_hole(math.radians(90), 4.0, math.radians(90), 8.0)
    assert made.ends == pytest.approx((6.0, 10.0))
    found = made.place(8.0)
    assert found.turned == pytest.approx(math.asin(0.25))
    assert found.rake == pytest.approx(math.asin(math.cos(math.radians(45)) / 4))


@pytest.mark.parametrize(
    ("tool", "words"),
    [
        ((90, 6.0, 45, 4.0), "takes the tip away"),
        ((30, 6.0, 45, 8.0), "openings meet"),
        ((90, 6.0, 95, 10.0), "up to square"),
    ],
)
def test_a_hole_that_no_such_tool_has_is_refused(tool: tuple[float, float, float, float], words: str) -> None:
    included, hole, tilt, height = tool
    with pytest.raises(GeometryError, match=words):
        cross_hole(math.radians(included), hole, math.radians(tilt), height)
