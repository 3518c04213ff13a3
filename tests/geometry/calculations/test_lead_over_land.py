"""Lead over a tap land."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Given, Result
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run


def travel(**values: Given) -> Result:
    return run(calculation("lead-over-land"), values)


@pytest.mark.parametrize(
    ("measured_as", "expected"),
    # Derived: 1.75 x 3.2 / (12 pi), and 1.75 asin(3.2 / 12) / pi.
    [("arc", 0.14854), ("chord", 0.15036)],
)
def test_a_land_of_3_2_on_m12(measured_as: str, expected: float) -> None:
    found = travel(diameter=12.0, pitch=1.75, land_width=3.2, land_measured_as=measured_as)
    assert found.outputs["lead_over_land"] == pytest.approx(expected, abs=5e-6)
    by_hand = 1.75 * 3.2 / (12 * math.pi) if measured_as == "arc" else 1.75 * math.asin(3.2 / 12) / math.pi
    assert found.outputs["lead_over_land"] == pytest.approx(by_hand, rel=1e-12)


@pytest.mark.parametrize(("measured_as", "expected"), [("arc", 0.24828), ("chord", 0.25117)])
def test_two_starts_travel_twice_as_far(measured_as: str, expected: float) -> None:
    # Derived: lead 3.0 on a land of 2.6 and a diameter of 10.
    one = travel(diameter=10.0, pitch=1.5, land_width=2.6, land_measured_as=measured_as)
    two = travel(diameter=10.0, pitch=1.5, land_width=2.6, land_measured_as=measured_as, starts=2.0)
    assert two.outputs["lead_over_land"] == pytest.approx(expected, abs=5e-6)
    assert two.outputs["lead_over_land"] == pytest.approx(2 * one.outputs["lead_over_land"], rel=1e-14)


def test_three_quarter_ten_in_inches() -> None:
    # Common practice, no source: 3/4-10, land 0.200 in, about 0.0085 in.
    found = travel(diameter=0.75 * 25.4, threads_per_inch=10 / 25.4, land_width=0.2 * 25.4)
    assert found.outputs["lead_over_land"] / 25.4 == pytest.approx(0.0085, abs=5e-5)


@given(st.floats(2.0, 100.0), st.floats(0.03, 0.3), st.floats(0.0, 0.4), st.sampled_from(["right", "left"]))
def test_inches_and_millimetres_give_the_same_travel(
    diameter: float, part: float, land: float, hand: str
) -> None:
    pitch = part * diameter
    metric = travel(diameter=diameter, pitch=pitch, land_width=land * diameter, hand=hand).outputs
    inch = travel(
        diameter=diameter / 25.4 * 25.4,
        threads_per_inch=(25.4 / pitch) / 25.4,
        land_width=(land * diameter / 25.4) * 25.4,
        hand=hand,
    ).outputs
    for key, value in metric.items():
        assert inch[key] == pytest.approx(value, rel=1e-12, abs=1e-15)


def test_the_indicator_moves_evenly_from_edge_to_heel() -> None:
    found = travel(diameter=12.0, pitch=1.75, land_width=3.2)
    readings = [station.readings["lead_over_land"] for station in found.stations]
    heel = found.outputs["lead_over_land"]
    assert readings == pytest.approx([0.0, heel / 4, heel / 2, 3 * heel / 4, heel])


def test_a_left_hand_tap_gives_the_same_travel_and_turns_the_other_way() -> None:
    right = travel(diameter=12.0, pitch=1.75, land_width=3.2)
    left = travel(diameter=12.0, pitch=1.75, land_width=3.2, hand="left")
    assert left.outputs == right.outputs
    assert left.outputs["lead_over_land"] > 0
    assert "cuts, clockwise" in str(right.checks[0].sentence)
    assert "cuts, anticlockwise" in str(left.checks[0].sentence)


@pytest.mark.parametrize("hand", ["right", "left"])
def test_the_heel_lies_farther_from_the_point_whichever_way_the_thread_winds(hand: str) -> None:
    """Derived: the thread as a helix in space with the point up, and the tap turned so that it screws upward."""
    winding = (
        1.0 if hand == "right" else -1.0
    )  # the helix (cos t, sin t, winding t) climbs right- or left-handed
    cutting_turn = winding  # the sense of turning in which such a helix screws up along the axis
    land = 3.2 / 6
    heel = -cutting_turn * land  # the heel follows the edge, so it lies back against the turning
    climbed = winding * 1.75 * heel / (2 * math.pi)
    assert climbed < 0  # down, away from the point
    found = travel(diameter=12.0, pitch=1.75, land_width=3.2, hand=hand)
    assert found.outputs["lead_over_land"] == pytest.approx(-climbed)
    assert "away from the point" in str(found.checks[0].sentence)


def test_a_land_without_width_and_one_more_than_half_way_round_are_watched() -> None:
    assert travel(diameter=12.0, pitch=1.75, land_width=0.0).checks[0].state == "watch"
    wide = travel(diameter=12.0, pitch=1.75, land_width=20.0)
    assert [check.state for check in wide.checks] == ["watch", "note"]


def test_thirteen_threads_per_inch_typed_as_millimetres_are_asked_about() -> None:
    # Derived for a half inch tap of 13 threads to the inch, land .160 in: (25.4 / 13) x 4.064 / (12.7 pi) = .199 mm;
    # with 13 mm for the pitch it would be 1.324 mm.
    wrong = travel(diameter=12.7, pitch=13.0, land_width=4.064)
    assert wrong.outputs["lead_over_land"] == pytest.approx(1.324, abs=5e-4)
    assert wrong.checks[0].state == "stop"
    assert "threads per inch" in str(wrong.checks[0].sentence)
    right = travel(diameter=12.7, threads_per_inch=13 / 25.4, land_width=4.064)
    assert right.outputs["lead_over_land"] == pytest.approx(0.199, abs=5e-4)
    assert [check.state for check in right.checks] == ["note"]


def test_a_diameter_typed_a_thousandfold_too_small_is_asked_about() -> None:
    found = travel(diameter=0.023 * 25.4, threads_per_inch=13 / 25.4, land_width=0.2)
    assert found.checks[0].state == "stop"


@pytest.mark.parametrize("taper", ["npt", "bspt"])
def test_a_taper_tap_is_told_to_be_measured_in_one_place(taper: str) -> None:
    parallel = travel(diameter=13.4, threads_per_inch=18 / 25.4, land_width=3.0)
    found = travel(diameter=13.4, threads_per_inch=18 / 25.4, land_width=3.0, thread_taper=taper)
    assert found.outputs == parallel.outputs
    assert "measure the diameter where" in str(found.checks[-1].sentence)


def test_pitch_and_threads_per_inch_together_are_one_too_many() -> None:
    with pytest.raises(Refusal, match="only one"):
        travel(diameter=12.0, pitch=1.75, threads_per_inch=0.4, land_width=3.2)
    with pytest.raises(Refusal, match="pitch or threads_per_inch"):
        travel(diameter=12.0, land_width=3.2)
