"""A helical tooth on its rest, against points of a helix in space."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.preconditions import GeometryError
from geometry.setting.tooth_rest import helix_lead, helix_of_lead, rest_height, rise, widest_level_rest

HELICES = st.floats(0.05, 1.0)


def wound(along: float, lead: float, diameter: float, start: float) -> tuple[float, float]:
    """Across and up of a helical edge, so far along the axis; at none it stands ``start`` (rad) below level."""
    below = start + 2 * math.pi * along / lead
    return -diameter / 2 * math.cos(below), -diameter / 2 * math.sin(below)


@given(st.floats(3, 60), HELICES, st.floats(0.02, 0.3), st.floats(-0.2, 0.2))
def test_the_rest_stands_where_the_winding_edge_comes_down_on_it(
    diameter: float, helix: float, relief: float, share: float
) -> None:
    # Derived: the edge goes through the place under the wheel and winds by its lead.
    lead = math.pi * diameter / math.tan(helix)
    along = share * lead / 4
    turned = rise(along, helix) / (diameter / 2)
    assert rest_height(relief, turned, diameter) == pytest.approx(
        -wound(along, lead, diameter, relief)[1], abs=1e-9
    )


@given(st.floats(3, 60), HELICES)
def test_the_edge_climbs_by_its_helix_angle_on_the_cylinder(diameter: float, helix: float) -> None:
    # Derived: the direction of the helix, found by a small step along it, against the axis.
    lead, step = helix_lead(helix, diameter), 1e-5
    assert lead is not None
    (x0, y0), (x1, y1) = wound(0.0, lead, diameter, 0.3), wound(step, lead, diameter, 0.3)
    assert math.atan(math.hypot(x1 - x0, y1 - y0) / step) == pytest.approx(helix, rel=1e-5)
    assert helix_of_lead(lead, diameter) == pytest.approx(helix)


def test_a_45_degree_helix_winds_once_in_the_way_round_the_tool() -> None:
    # By hand: the unrolled edge is the diagonal of a square.
    assert helix_lead(math.radians(45), 20.0) == pytest.approx(62.8319, abs=1e-4)
    assert helix_lead(0.0, 20.0) is None
    assert widest_level_rest(0.01, 0.0, 20.0) is None


@given(st.floats(3, 60), HELICES, st.floats(0.001, 0.02))
def test_over_the_widest_level_rest_the_tool_turns_as_far_as_it_may(
    diameter: float, helix: float, most: float
) -> None:
    widest = widest_level_rest(most, helix, diameter)
    assert widest is not None
    assert 2 * math.pi * widest / (math.pi * diameter / math.tan(helix)) == pytest.approx(most)


def test_a_tooth_that_has_wound_away_from_the_rest_is_refused() -> None:
    with pytest.raises(GeometryError):
        rest_height(0.1, 1.5, 20.0)
