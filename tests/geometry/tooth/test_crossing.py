"""Where two facets dip under an eccentric relief, against root finding on lines in the plane."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.tooth.crossing import crossing_angle
from geometry.tooth.facets import facet_of_width, facet_to

diameters = st.floats(0.5, 100.0)
reliefs = st.floats(math.radians(2), math.radians(25))


@given(diameters, reliefs, st.floats(0.1, 0.9), st.floats(0.02, 0.7), st.floats(0.05, 0.9))
def test_the_crossing_is_the_first_place_where_the_facet_lies_deeper(
    diameter: float, relief: float, share: float, steeper: float, reach: float
) -> None:
    first = facet_of_width(0.0, 0.0, relief, share * diameter * math.sin(relief), diameter)
    second = facet_to(first.end, first.end_drop, relief + steeper, first.end + reach, diameter)
    fall = diameter / 2 * math.tan(relief)
    found = crossing_angle(second, fall, diameter)
    turns = np.linspace(second.start, second.end, 4001)
    radius = (diameter / 2 - second.start_drop) * math.cos(second.angle - second.start)
    under = diameter / 2 - radius / np.cos(turns - second.angle) - fall * turns
    deeper = np.flatnonzero(under > 1e-9 * diameter)
    if found is None:
        assert len(deeper) == 0
        return
    assert under.max() > -1e-6 * diameter
    if len(deeper):
        assert found == pytest.approx(turns[deeper[0]], abs=2 * (turns[1] - turns[0]) + 1e-6)
    assert second.drop(found) == pytest.approx(fall * found, abs=1e-9 * diameter)


def test_a_facet_as_flat_as_the_primary_land_never_crosses() -> None:
    first = facet_of_width(0.0, 0.0, 0.15, 0.8, 12.0)
    second = facet_to(first.end, first.end_drop, 0.16, 0.5, 12.0)
    assert crossing_angle(second, 6 * math.tan(0.15), 12.0) is None


def test_facets_over_no_cam_at_all_lie_deeper_from_the_start() -> None:
    second = facet_to(0.1, 0.05, 0.4, 0.5, 12.0)
    assert crossing_angle(second, 0.0, 12.0) == pytest.approx(0.1)
