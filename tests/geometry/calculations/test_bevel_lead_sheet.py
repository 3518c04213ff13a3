"""The bevel lead of a reamer, found again from its drawn section and from a cone in space."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Given, Result
from geometry.calculations import calculation
from geometry.cone import bevel
from geometry.evaluate import Refusal, run

SHEET = calculation("bevel-lead")
REAMER: dict[str, Given] = {"diameter": 12.0, "bevel_angle": math.radians(45)}
BEVELS = st.floats(math.radians(0.5), math.radians(85))


def states(result: Result) -> list[str]:
    return [check.state for check in result.checks if check.state in ("watch", "stop")]


def crossing(
    one: tuple[float, float, float, float], other: tuple[float, float, float, float]
) -> tuple[float, float]:
    """Where two lines meet, each through a place along a direction, by Cramer's rule."""
    (x, y, dx, dy), (u, v, du, dv) = one, other
    across = dx * dv - dy * du
    way = ((u - x) * dv - (v - y) * du) / across
    return x + way * dx, y + way * dy


@given(BEVELS, st.floats(1.0, 100.0), st.floats(0.05, 0.95))
def test_the_lead_is_as_long_as_from_its_start_to_where_its_side_meets_that_of_the_body(
    slope: float, diameter: float, share: float
) -> None:
    # Derived: the side of the cone as a line through its start, the side of the body as a line along the axis.
    start = share * diameter
    side = (0.0, start / 2, math.cos(slope), math.sin(slope))
    x, _ = crossing(side, (0.0, diameter / 2, 1.0, 0.0))
    assert bevel.bevel_length(start, diameter, slope) == pytest.approx(x, rel=1e-9)
    assert bevel.start_diameter(x, diameter, slope) == pytest.approx(start, rel=1e-6, abs=1e-9)


@given(BEVELS, st.floats(0.0, 2.0))
def test_the_lead_moved_back_by_the_stock_goes_through_the_worn_place(slope: float, wear: float) -> None:
    # Derived: the worn place lies under the corner, which is the origin; the new lead is the old one moved by its
    # infeed square to itself, and its distance from the worn place is counted with the vector square to it.
    stock = bevel.stock_for_wear(wear, slope)
    infeed = bevel.square_stock(stock, slope)
    inward = (math.sin(slope), -math.cos(slope))
    on_new_lead = (infeed * inward[0], infeed * inward[1])
    worn = (0.0, -wear)
    gap = sum((w - n) * i for w, n, i in zip(worn, on_new_lead, inward, strict=True))
    assert gap == pytest.approx(0.0, abs=1e-9 * (1 + stock))


def test_a_worn_corner_of_45_degrees_costs_as_much_along_the_axis_as_on_the_radius() -> None:
    # By hand: a right-angled triangle with two equal sides, 0.12 and 0.12; its height is 0.12 / sqrt(2). Derived.
    found = run(SHEET, {**REAMER, "bevel_length": 1.5, "corner_wear": 0.12}).outputs
    assert found["axial_stock"] == pytest.approx(0.12, rel=1e-12)
    assert found["square_stock"] == pytest.approx(0.12 / math.sqrt(2), rel=1e-12)
    assert found["bevel_length_after"] == pytest.approx(1.62, rel=1e-12)
    assert found["bevel_start_after"] == pytest.approx(8.76, rel=1e-12)


def test_wear_along_the_land_counts_where_it_is_more_than_that_on_the_radius() -> None:
    worn: dict[str, Given] = {**REAMER, "corner_wear": 0.12, "corner_wear_length": 0.4}
    assert run(SHEET, worn).outputs["axial_stock"] == 0.4
    assert run(SHEET, {**worn, "corner_wear_length": 0.1}).outputs["axial_stock"] == pytest.approx(0.12)


def test_the_start_may_be_measured_in_place_of_the_length() -> None:
    by_length = run(SHEET, {**REAMER, "bevel_length": 1.5}).outputs
    by_start = run(SHEET, {**REAMER, "bevel_start_diameter": 9.0}).outputs
    assert by_start == pytest.approx(by_length, rel=1e-12)


@given(BEVELS, st.floats(math.radians(1), math.radians(20)))
def test_each_view_is_the_slope_of_an_eccentric_cone_there(slope: float, relief: float) -> None:
    # Derived, by a surface in space: behind the edge a cone about the axis sinks square to itself by tan(relief) for
    # each unit of the way round. Its distance from the plunger is solved for at a small turn.
    found = run(SHEET, {**REAMER, "bevel_angle": slope, "relief_angle": relief}).outputs
    radius, turned = 6.0, 1e-2
    sunk = radius * turned * math.tan(relief)
    wall = (0.0 + sunk * math.sin(slope), radius - sunk * math.cos(slope), math.cos(slope), math.sin(slope))
    _, at_axis = crossing(wall, (0.0, 0.0, 0.0, 1.0))
    along, _ = crossing(wall, (0.0, radius, 1.0, 0.0))
    assert math.tan(found["radial_relief_angle"]) == pytest.approx(
        (radius - at_axis) / (radius * turned), rel=1e-6
    )
    assert math.tan(found["axial_relief_angle"]) == pytest.approx(along / (radius * turned), rel=1e-6)
    assert found["normal_relief_angle"] == pytest.approx(relief, rel=1e-12)


@given(st.floats(1e-4, 1e-2))
def test_hardly_any_wear_costs_hardly_anything_and_a_flat_bevel_costs_ever_more(wear: float) -> None:
    costs = [bevel.stock_for_wear(wear, math.radians(slope)) for slope in (89, 60, 45, 20, 5, 1)]
    assert costs == sorted(costs)
    assert costs[0] < wear / 50


def test_a_reamer_whose_lead_starts_outside_the_hole_does_not_enter() -> None:
    short: dict[str, Given] = {**REAMER, "bevel_length": 0.08, "reaming_stock": 0.2}
    assert states(run(SHEET, short)) == ["watch"]
    assert states(run(SHEET, {**short, "bevel_length": 0.11})) == []
    # By hand: half of the stock over a slope of one.
    assert run(SHEET, short).outputs["least_bevel_length"] == pytest.approx(0.1, rel=1e-12)


def test_back_taper_makes_the_reamer_smaller_by_what_the_corner_moves_back() -> None:
    # By hand: 0.02 mm on 100 mm, the corner 2 mm further back. Derived.
    worn: dict[str, Given] = {**REAMER, "corner_wear_length": 2.0, "back_taper": 0.02}
    found = run(SHEET, worn).outputs
    assert found["size_lost"] == pytest.approx(0.0004, rel=1e-9)
    assert found["diameter_after"] == pytest.approx(11.9996, rel=1e-12)


def test_the_taper_that_a_reamer_cuts_is_no_back_taper_and_loses_no_size() -> None:
    # A taper pin reamer, 1 in 50, is larger toward its back.
    worn: dict[str, Given] = {**REAMER, "corner_wear_length": 2.0}
    found = run(SHEET, {**worn, "taper_ratio": 0.02})
    assert {"size_lost", "diameter_after"}.isdisjoint(found.outputs)
    assert "axial_stock" in found.outputs
    assert "size_lost" in run(SHEET, {**worn, "taper_ratio": 0.0002}).outputs


def test_without_relief_the_lead_is_stopped() -> None:
    assert states(run(SHEET, {**REAMER, "relief_angle": 0.0})) == ["stop"]
    assert states(run(SHEET, {**REAMER, "relief_angle": math.radians(7)})) == []


@pytest.mark.parametrize(
    ("more", "key"),
    [
        ({"bevel_length": 6.1}, "bevel_length"),
        ({"bevel_start_diameter": 12.0}, "bevel_start_diameter"),
        ({"bevel_length": 5.0, "corner_wear": 2.0}, "corner_wear"),
        ({"bevel_length": 5.0, "corner_wear_length": 2.0}, "corner_wear_length"),
        ({"bevel_angle": 0.0}, "bevel_angle"),
        ({"bevel_angle": math.pi / 2}, "bevel_angle"),
        ({"diameter": 5.0, "reaming_stock": 5.0}, "reaming_stock"),
    ],
)
def test_what_no_reamer_can_be_is_refused_at_its_own_input(more: dict[str, Given], key: str) -> None:
    with pytest.raises(Refusal) as refused:
        run(SHEET, {**REAMER, **more})
    assert [problem.key for problem in refused.value.problems] == [key]


def test_the_swivel_under_a_cup_is_told_beside_that_of_the_lead_where_the_relief_is_known() -> None:
    # Derived: tan 7 / cos 45 is the tangent of 9.85, by which the rest turns the tooth; tan 45 cos 9.85 is 0.9853, 44.57.
    with_relief = " ".join(
        str(one.sentence) for one in run(SHEET, {**REAMER, "relief_angle": math.radians(7)}).checks
    )
    assert (
        "Swivel by 45 deg, or under a cup, where its rest turns the tooth 9.851 deg down, by 44.57 deg,"
        in with_relief
    )
    assert "Swivel by 45 deg, so that" in " ".join(str(one.sentence) for one in run(SHEET, REAMER).checks)
