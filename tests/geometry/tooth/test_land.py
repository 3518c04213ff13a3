"""The land as an angle and back, against points laid out on a circle."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import Point

from geometry.preconditions import GeometryError
from geometry.tooth.land import land_angle, land_width

diameters = st.floats(0.05, 500.0)
half_turns = st.floats(1e-6, math.pi)
measures = st.sampled_from(("arc", "chord"))


def on_circle(diameter: float, turned: float) -> Point:
    return Point(diameter / 2 * math.sin(turned), diameter / 2 * math.cos(turned))


@given(diameters, half_turns)
def test_a_chord_is_the_straight_way_between_edge_and_heel(diameter: float, turned: float) -> None:
    across = on_circle(diameter, 0.0).distance(on_circle(diameter, turned))
    assert land_width(turned, diameter, "chord") == pytest.approx(across, rel=1e-9, abs=1e-12)


@given(diameters, st.floats(1e-6, 2 * math.pi))
def test_an_arc_is_its_share_of_the_whole_way_round(diameter: float, turned: float) -> None:
    assert land_width(turned, diameter, "arc") == pytest.approx(
        math.pi * diameter * turned / (2 * math.pi), rel=1e-14
    )


@given(diameters, st.floats(1e-6, 3.1), measures)
def test_width_and_angle_lead_back_to_each_other(diameter: float, turned: float, measure: str) -> None:
    width = land_width(turned, diameter, measure)
    assert land_angle(width, diameter, measure) == pytest.approx(turned, rel=1e-9)


@given(diameters, half_turns)
def test_a_caliper_never_finds_more_than_the_way_round(diameter: float, turned: float) -> None:
    assert land_width(turned, diameter, "chord") <= land_width(turned, diameter, "arc") * (1 + 1e-15)


def test_half_a_turn_is_the_diameter_across() -> None:
    assert land_width(math.pi, 12.0, "chord") == pytest.approx(12.0, rel=1e-15)
    assert land_angle(12.0, 12.0, "chord") == pytest.approx(math.pi, rel=1e-15)


@pytest.mark.parametrize("measure", ["arc", "chord"])
def test_no_land_turns_nothing(measure: str) -> None:
    assert land_angle(0.0, 12.0, measure) == 0.0
    assert land_width(0.0, 12.0, measure) == 0.0


@pytest.mark.parametrize(
    ("width", "diameter", "measure", "key"),
    [
        (38.0, 12.0, "arc", "land_width"),
        (12.1, 12.0, "chord", "land_width"),
        (-1.0, 12.0, "arc", "land_width"),
        (2.0, 0.0, "arc", "diameter"),
        (2.0, math.nan, "arc", "diameter"),
        (2.0, 12.0, "round about", "land_measured_as"),
    ],
)
def test_a_land_that_cannot_be_is_refused_by_its_own_name(
    width: float, diameter: float, measure: str, key: str
) -> None:
    with pytest.raises(GeometryError) as refused:
        land_angle(width, diameter, measure)
    assert refused.value.key == key


def test_a_land_past_half_way_round_has_no_chord() -> None:
    with pytest.raises(GeometryError, match="give its arc"):
        land_width(3.2, 12.0, "chord")
    with pytest.raises(GeometryError, match="arc or as chord"):
        land_width(1.0, 12.0, "round about")
