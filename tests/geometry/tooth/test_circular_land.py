"""Where a circular land ends and where an indicator shows it, against points of lines and circles."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.preconditions import GeometryError
from geometry.tooth.circular_land import first_fall, narrowing_stock


def distance_at(turned: float, facet: tuple[complex, complex]) -> float:
    """How far from the axis a ray, ``turned`` (rad) behind the real axis, meets a straight line."""
    start, direction = facet
    ray = complex(math.cos(turned), math.sin(turned))
    cross = (direction.conjugate() * ray).imag
    return (direction.conjugate() * start).imag / cross


def facet_from(at: float, relief: float, radius: float) -> tuple[complex, complex]:
    """A flat that leaves the circle ``at`` (rad), leaning from the tangent inward by its relief."""
    out = complex(math.cos(at), math.sin(at))
    return radius * out, out * complex(-math.sin(relief), math.cos(relief))


@given(st.floats(1, 60), st.floats(0.02, 0.6), st.floats(0.01, 0.999))
def test_where_a_flat_has_fallen_by_a_division_it_lies_that_far_inside_the_circle(
    diameter: float, relief: float, share: float
) -> None:
    # Derived: the facet as a line in the plane, cut by the ray of the indicator.
    division = share * diameter / 2 * (1 - math.cos(relief))
    turned = first_fall(division, relief, diameter, "flat")
    assert turned is not None
    assert 0 < turned <= relief
    found = distance_at(turned, facet_from(0.0, relief, diameter / 2))
    assert diameter / 2 - found == pytest.approx(division, rel=1e-6, abs=1e-12)


def test_a_division_that_a_flat_never_reaches_is_never_shown() -> None:
    deepest = 5 * (1 - math.cos(0.1))
    assert first_fall(deepest * 1.0001, 0.1, 10.0, "flat") is None
    assert first_fall(deepest * 0.9999, 0.1, 10.0, "flat") == pytest.approx(0.1, abs=2e-3)
    assert first_fall(0.01, 0.0, 10.0, "eccentric") is None


def test_a_small_division_shows_alike_on_either_form() -> None:
    # Derived: both leave the circle at the same slope, so that the turn is d / (R tan a) in the limit.
    both = [first_fall(1e-7, 0.1, 10.0, form) for form in ("flat", "eccentric")]
    assert both == pytest.approx([1e-7 / (5 * math.tan(0.1))] * 2, rel=1e-4)


@given(st.floats(1, 60), st.floats(0.02, 0.6), st.floats(0.0, 0.3), st.floats(0.0, 1.0))
def test_the_stock_is_the_way_of_the_wheel_from_the_first_spark_to_the_wanted_flat(
    diameter: float, relief: float, wanted: float, share: float
) -> None:
    # Derived: the wheel is a line that keeps its direction; it touches first whatever stands out furthest toward it.
    turn, radius = 0.5 * share, diameter / 2
    square = wanted + relief
    old_end = wanted + turn
    circle = [min(old_end, wanted + turn * n / 400) for n in range(401)]
    touches = max(radius * math.cos(at - square) for at in circle)
    line = radius * math.cos(relief)
    found = narrowing_stock(old_end, wanted, relief, diameter, "flat")
    assert found == pytest.approx(touches - line, rel=1e-3, abs=1e-5 * radius)


def test_a_land_that_is_wide_as_wanted_needs_no_stock_and_a_narrower_one_has_none() -> None:
    assert narrowing_stock(0.04, 0.04, 0.1, 10.0, "flat") == 0
    with pytest.raises(GeometryError):
        narrowing_stock(0.03, 0.04, 0.1, 10.0, "eccentric")
