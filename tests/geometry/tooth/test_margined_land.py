"""A margin with facets behind it, against a polygon laid down corner by corner. Expected numbers are derived."""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely import LineString, Point
from shapely.affinity import rotate

from geometry.preconditions import GeometryError
from geometry.tooth.margin import margined_land


def drawn_drop(
    diameter: float, margin: float, primary: tuple[float, float], secondary: float, turned: float
) -> float:
    """The drop from a drawing: the edge at the top, the land going right, a ray from the middle."""
    radius = diameter / 2
    across, down = primary[1] * math.cos(primary[0]), primary[1] * math.sin(primary[0])
    first = (across, radius - down)
    second = (across + diameter * math.cos(secondary), radius - down - diameter * math.sin(secondary))
    facets = rotate(LineString([(0, radius), first, second]), -margin, origin=(0, 0), use_radians=True)
    ray = LineString([(0, 0), (2 * diameter * math.sin(turned), 2 * diameter * math.cos(turned))])
    met = ray.intersection(facets)
    assert isinstance(met, Point)
    return float(radius - met.distance(Point(0, 0)))


@given(
    st.floats(2, 60),
    st.floats(0, 0.05),
    st.floats(0.02, 0.4),
    st.floats(0.02, 0.25),
    st.floats(0.1, 0.9),
    st.floats(0.05, 0.95),
)
def test_every_place_of_the_land_lies_where_the_drawing_has_it(
    diameter: float, margin_share: float, relief: float, primary_share: float, secondary: float, part: float
) -> None:
    margin, primary = 2 * margin_share, primary_share * diameter / 2
    heel = margin + 0.9
    turned = margin + 0.9 * part
    land = margined_land(diameter, margin_share * diameter, heel, (relief, primary), secondary)
    assume(len(land.facets) == 2)
    expected = drawn_drop(diameter, margin, (relief, primary), secondary, turned)
    assert land.drop(turned) == pytest.approx(expected, abs=1e-9 * diameter)


def test_the_margin_stays_on_the_circle() -> None:
    land = margined_land(10.0, 0.5, 0.4, (0.14, 0.8), 0.3)
    assert land.drop(0.0) == land.drop(0.05) == land.drop(0.1) == 0
    assert land.drop(0.11) > 0


@given(st.floats(0.02, 0.7), st.floats(0.02, 0.9))
def test_without_margin_one_facet_is_the_plain_flat(relief: float, heel: float) -> None:
    # The closed form of a flat, worked by hand: R - R cos(a) / cos(theta - a).
    expected = 5.0 - 5.0 * math.cos(relief) / math.cos(heel - relief)
    assert margined_land(10.0, 0.0, heel, (relief, None)).drop(heel) == pytest.approx(expected, abs=1e-12)


def test_a_secondary_behind_the_heel_is_never_reached() -> None:
    land = margined_land(10.0, 0.2, 0.2, (0.14, 3.0), 0.3)
    assert len(land.facets) == 1


@given(st.floats(0.05, 0.4), st.floats(0.3, 0.9), st.floats(0.5, 0.9), st.floats(-0.02, 0.02))
def test_the_angle_for_a_heel_drop_lays_the_heel_there(
    relief: float, secondary: float, heel: float, wanted: float
) -> None:
    land = margined_land(10.0, 0.2, heel, (relief, 0.6), secondary)
    again = margined_land(10.0, 0.2, heel, (relief, 0.6), land.last_angle_for(wanted))
    assert again.drop(heel) == pytest.approx(wanted, abs=1e-12)


@given(st.floats(0.05, 0.3), st.floats(0.3, 0.7))
def test_where_the_land_is_back_on_the_circle_its_drop_is_nothing(relief: float, secondary: float) -> None:
    land = margined_land(10.0, 0.2, 0.3, (relief, 0.6), secondary)
    longer = margined_land(10.0, 0.2, land.clear_angle(), (relief, 0.6), secondary)
    assert longer.drop(longer.heel) == pytest.approx(0, abs=1e-9)


def test_a_margin_as_wide_as_the_land_leaves_nothing_to_relieve() -> None:
    with pytest.raises(GeometryError) as refused:
        margined_land(10.0, 2.0, 0.4, (0.14, None))
    assert refused.value.key == "margin_width"
