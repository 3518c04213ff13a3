"""A calculation on a relief asks for the surface: the same angle means another reading on another surface."""

from __future__ import annotations

import math
from collections.abc import Mapping

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from geometry.calculation import Given, Result
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run
from geometry.surfaces import SURFACES

INCH = 25.4
DEG = math.pi / 180

COUNTERSINK: Mapping[str, Given] = {
    "surface": "cone",
    "included_angle": 82 * DEG,
    "diameter": INCH,
    "relief_angle": 8 * DEG,
    "land_width": 0.250 * INCH,
}
"""A countersink of 1 in and 82 degrees, 8 degrees square to its cone, with a land of 0.250 in as an arc."""


def drop(**given: Given) -> Result:
    return run(calculation("relief-drop"), given)


def reading(**given: Given) -> Result:
    return run(calculation("relief-from-reading"), given)


def test_a_countersink_reads_more_at_the_axis_than_square_to_its_cone() -> None:
    """By hand: tan 8 deg is 0.140541 and cos 41 deg 0.754710, over a land of 0.250 in."""
    found = drop(**COUNTERSINK).outputs
    assert found["heel_drop"] / INCH == pytest.approx(0.250 * 0.140541 / 0.754710, abs=1e-6)
    assert found["square_drop"] / INCH == pytest.approx(0.250 * 0.140541, abs=1e-6)
    assert found["throw_per_turn"] / INCH == pytest.approx(math.pi * 0.140541 / 0.754710, abs=1e-5)
    assert found["radial_relief_angle"] / DEG == pytest.approx(10.549, abs=5e-4)


def test_the_throw_per_tooth_is_that_of_the_turn_over_the_flutes() -> None:
    found = drop(**COUNTERSINK, flutes=3.0).outputs
    assert found["throw_per_tooth"] / INCH == pytest.approx(0.58501 / 3, abs=1e-5)


def test_a_correct_countersink_read_at_the_axis_is_found_to_have_its_relief() -> None:
    """What the indicator reads at the axis, 0.0466 in, means 8 degrees square to the cone, not 10.56."""
    tool = {key: value for key, value in COUNTERSINK.items() if key != "relief_angle"}
    found = reading(**tool, drop=0.0466 * INCH, relief_form="eccentric").outputs
    assert found["relief_angle"] / DEG == pytest.approx(8.0, abs=0.02)
    square = reading(**tool, drop=0.0351 * INCH, relief_form="eccentric", indicator_points="square").outputs
    assert square["relief_angle"] / DEG == pytest.approx(8.0, abs=0.02)


def test_a_land_has_one_view_only() -> None:
    found = drop(diameter=12.0, relief_angle=8 * DEG, land_width=2.0).outputs
    assert found["heel_drop"] == pytest.approx(0.28108, abs=5e-6)
    assert not {"square_drop", "axial_drop", "normal_relief_angle", "radial_relief_angle"} & set(found)


def test_a_lip_is_read_along_the_axis_at_its_outer_corner() -> None:
    """12 degrees on the cylinder through the corner: a land of 2 mm falls 2 tan 12 = 0.42511 mm along the axis."""
    found = drop(
        surface="lip", point_angle=118 * DEG, diameter=10.0, relief_angle=12 * DEG, land_width=2.0
    ).outputs
    assert found["heel_drop"] == pytest.approx(0.42511, abs=5e-6)
    assert "axial_drop" not in found, "the heel's drop is that one"


def test_an_end_tooth_is_seen_along_the_axis_only() -> None:
    given: dict[str, Given] = {"surface": "end", "diameter": 20.0, "relief_angle": 7 * DEG, "land_width": 3.0}
    even = drop(**given)
    assert even.outputs["heel_drop"] == pytest.approx(3.0 * math.tan(7 * DEG))
    assert even.figure is None
    flat = drop(**given, relief_form="flat").outputs["heel_drop"]
    assert flat == pytest.approx(10 * math.sin(0.3) * math.tan(7 * DEG))
    with pytest.raises(Refusal, match="sees nothing"):
        drop(**given, indicator_points="at-the-axis")


def test_the_angle_of_the_edge_is_asked_for_where_it_is_not_known() -> None:
    with pytest.raises(Refusal) as refused:
        drop(surface="cone", diameter=20.0, relief_angle=7 * DEG, land_width=3.0)
    assert [one.key for one in refused.value.problems if one.missing] == ["included_angle"]


@given(
    st.sampled_from(sorted(SURFACES)),
    st.sampled_from(("eccentric", "flat")),
    st.sampled_from(("at-the-axis", "square", "along-the-axis")),
    st.floats(1.0, 50.0),
    st.floats(1.0, 20.0),
    st.floats(20.0, 140.0),
    st.floats(0.05, 0.9),
)
def test_every_surface_gives_its_relief_back_from_its_own_reading(
    surface: str, form: str, points: str, diameter: float, relief: float, whole: float, share: float
) -> None:
    edge = SURFACES[surface]
    tool: dict[str, Given] = {"surface": surface, "diameter": diameter, "indicator_points": points}
    if edge.edge_key:
        tool[edge.edge_key] = whole * DEG if edge.edge_share < 1 else min(whole / 2, 60.0) * DEG
    land = share * min(2 * relief * DEG, 0.5) * diameter / 2
    try:
        found = drop(**tool, relief_angle=relief * DEG, land_width=land, relief_form=form)
    except Refusal as refused:
        assume("sees nothing" not in str(refused))
        raise
    read = found.outputs["heel_drop"]
    assume(1e-9 < read < 0.9 * diameter / 2)
    back = reading(**tool, drop=read, land_width=land, relief_form=form)
    assert back.outputs["relief_angle"] == pytest.approx(relief * DEG, rel=1e-6)


@given(st.floats(2.0, 20.0), st.floats(20.0, 120.0), st.floats(0.1, 0.6))
def test_advice_on_a_cone_is_given_square_to_the_cone(relief: float, included: float, turned: float) -> None:
    """The relief that the stop names, set as it is said, makes the flat clear."""
    tool: dict[str, Given] = {
        "surface": "cone",
        "included_angle": included * DEG,
        "diameter": 20.0,
        "land_width": turned * 10.0,
        "relief_form": "flat",
    }
    found = drop(**tool, relief_angle=relief * DEG)
    stops = [one for one in found.checks if one.state == "stop"]
    assume(stops and "enough" in stops[0].sentence.parts)
    enough = stops[0].sentence.parts["enough"]
    assert not isinstance(enough, str)
    again = drop(**tool, relief_angle=enough.value + 0.01 * DEG)
    assert not [one for one in again.checks if one.state == "stop"]


def test_a_cam_out_of_the_drawer_gives_what_it_gives() -> None:
    """By hand: a throw of 1.6 mm a tooth on a tap of 16 mm with 4 flutes is atan(6.4 / 50.265) = 7.256 degrees."""
    tool: dict[str, Given] = {"surface": "chamfer", "chamfer_angle": 8 * DEG, "diameter": 16.0, "flutes": 4.0,
                              "land_width": 4.2, "throw_per": "tooth"}  # fmt: skip
    found = drop(**tool, relief_angle=6.5 * DEG, chosen_throw=1.6)
    assert found.outputs["throw_per_tooth"] == pytest.approx(math.pi * 16 * math.tan(6.5 * DEG) / 4)
    assert found.outputs["relief_angle"] / DEG == pytest.approx(7.256, abs=1e-3)
    assert found.outputs["heel_drop"] == pytest.approx(4.2 * 6.4 / 50.26548, abs=1e-5)
    (check,) = [one for one in found.checks if one.state == "watch"]
    ((key, throw),) = check.cure
    assert key == "chosen_throw"
    assert isinstance(throw, float)
    again = drop(**tool, relief_angle=6.5 * DEG, chosen_throw=throw)
    assert {one.state for one in again.checks} == {"pass", "note"}
