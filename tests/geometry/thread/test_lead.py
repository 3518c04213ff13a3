"""How a thread advances, followed again as a straight line on the unrolled cylinder."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString

from geometry.preconditions import GeometryError
from geometry.thread.lead import advance, lead, lead_angle
from geometry.tooth.land import land_angle


def unrolled(lead_length: float, diameter: float) -> LineString:
    """One turn of the thread on the unrolled cylinder: once round against once forward."""
    return LineString([(0.0, 0.0), (math.pi * diameter, lead_length)])


@given(st.floats(0.1, 20.0), st.floats(1.0, 100.0), st.floats(0.0, 1.0))
def test_the_advance_over_an_arc_lies_on_the_unrolled_thread(
    lead_length: float, diameter: float, part: float
) -> None:
    arc = part * math.pi * diameter
    there = unrolled(lead_length, diameter).interpolate(part, normalized=True)
    angle = land_angle(min(arc, math.pi * diameter), diameter, "arc")
    assert advance(angle, lead_length) == pytest.approx(there.y, rel=1e-9, abs=1e-12)


@given(st.floats(0.1, 20.0), st.floats(1.0, 100.0))
def test_the_lead_angle_is_the_slope_of_the_unrolled_thread(lead_length: float, diameter: float) -> None:
    (_, _), (x, y) = unrolled(lead_length, diameter).coords
    assert math.tan(lead_angle(lead_length, diameter)) == pytest.approx(y / x, rel=1e-12)


@given(st.floats(0.1, 5.0), st.integers(1, 12))
def test_many_starts_advance_by_as_many_pitches(pitch: float, starts: int) -> None:
    assert lead(pitch, starts) == pytest.approx(math.fsum([pitch] * starts), rel=1e-14)


def test_one_whole_turn_advances_by_the_lead() -> None:
    assert advance(2 * math.pi, 1.75) == pytest.approx(1.75, rel=1e-15)
    assert advance(0.0, 1.75) == 0.0


def test_half_a_start_and_no_pitch_are_refused() -> None:
    with pytest.raises(GeometryError):
        lead(1.5, 1.5)
    with pytest.raises(GeometryError):
        lead(0.0, 1)
