"""The relief of a rounded corner, by a numeric surface."""

from __future__ import annotations

import math

import pytest

from geometry.cone.corner import END, corner
from geometry.preconditions import GeometryError

Vector = tuple[float, float, float]
TINY = 1e-6


def cross(one: Vector, other: Vector) -> Vector:
    (a, b, c), (x, y, z) = one, other
    return b * z - c * y, c * x - a * z, a * y - b * x


@pytest.mark.parametrize("degrees", [0, 20, 45, 70, 90])
@pytest.mark.parametrize(("land", "end"), [(8, 0), (8, 6), (3, 12)])
def test_the_relief_is_the_angle_between_the_form_and_what_its_edge_sweeps(
    land: float, end: float, degrees: float
) -> None:
    made = corner(20.0, 3.0, math.radians(land), math.radians(end))
    inward, back = 10 * math.tan(math.radians(land)), 7 * math.tan(math.radians(end))

    def form(turned: float, p: float, *, cam: bool) -> Vector:
        r = 10 - 3 * (1 - math.cos(p)) - (inward * turned if cam else 0.0)
        z = -3 * math.sin(p) + (back * turned if cam else 0.0)
        return r * math.cos(turned), r * math.sin(turned), z

    def normal(*, cam: bool) -> Vector:
        p = math.radians(degrees)
        one, other = form(0, p + TINY, cam=cam), form(0, p - TINY, cam=cam)
        ahead, behind = form(TINY, p, cam=cam), form(-TINY, p, cam=cam)
        found = cross(
            (one[0] - other[0], one[1] - other[1], one[2] - other[2]),
            (ahead[0] - behind[0], ahead[1] - behind[1], ahead[2] - behind[2]),
        )
        size = math.hypot(*found)
        return found[0] / size, found[1] / size, found[2] / size

    between = math.asin(min(1.0, math.hypot(*cross(normal(cam=True), normal(cam=False)))))
    assert made.relief(math.radians(degrees)) == pytest.approx(between, abs=1e-6)


def test_a_throw_at_the_axis_gives_the_radial_relief_times_the_cosine_of_the_profile_angle() -> None:
    # Derived: tan(normal) = cos(p) tan(radial), the radial one being that of the smaller circle there.
    made = corner(20.0, 3.0, math.radians(8))
    for degrees in (0, 30, 60, 89):
        p = math.radians(degrees)
        radial = 10 * math.tan(math.radians(8)) / (10 - 3 * (1 - math.cos(p)))
        assert math.tan(made.relief(p)) == pytest.approx(math.cos(p) * radial)
    assert made.relief(END) == 0.0


@pytest.mark.parametrize(("land", "end"), [(8, 0), (8, 6), (3, 12), (12, 1), (6, 6)])
@pytest.mark.parametrize("up_to", [30, 60, 90])
def test_the_least_relief_lies_at_an_end_of_the_profile(land: float, end: float, up_to: float) -> None:
    made = corner(20.0, 6.0, math.radians(land), math.radians(end))
    looked_at = [made.relief(math.radians(up_to) * n / 500) for n in range(501)]
    assert made.relief(made.least(math.radians(up_to))) == pytest.approx(min(looked_at))


def test_a_corner_that_reaches_the_axis_is_refused() -> None:
    with pytest.raises(GeometryError, match="reaches the axis"):
        corner(10.0, 5.0, 0.1)
