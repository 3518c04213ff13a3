"""The swivel of a tooth that its rest has turned down, held against a plane laid through turned points."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Given
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run
from geometry.setting.under_rest import edge_of_relief, edge_of_swivel, swivel_for_edge

SHEET = calculation("setting-height")
RADIUS = 12.7
CUP: dict[str, Given] = {"wheel_shape": "type-6-straight-cup", "diameter": 2 * RADIUS}


def distance(point: tuple[float, float, float], swivel: float, turned: float) -> float:
    """How far a point of the tool stands before the upright wheel face through its corner, after turn and swivel.

    The tool lies along x with its point ahead, its edge level at the front along y, z up.
    """
    turn = np.array(
        [
            [1, 0, 0],
            [0, math.cos(turned), math.sin(turned)],
            [0, -math.sin(turned), math.cos(turned)],
        ]
    )
    swing = np.array(
        [
            [math.cos(swivel), -math.sin(swivel), 0],
            [math.sin(swivel), math.cos(swivel), 0],
            [0, 0, 1],
        ]
    )
    at_corner = swing @ turn @ np.array([0.0, RADIUS, 0.0])
    return float((swing @ turn @ np.array(point) - at_corner)[1])


def ground_to(along: float, behind: float, swivel: float, turned: float) -> float:
    """The radius to which the wheel face grinds, ``along`` the axis (mm) and ``behind`` the edge (rad); found by halving."""
    low, high = 0.0, 3 * RADIUS
    for _ in range(200):
        radius = (low + high) / 2
        point = (along, radius * math.cos(behind), radius * math.sin(behind))
        low, high = (low, radius) if distance(point, swivel, turned) > 0 else (radius, high)
    return low


def edge_ground(swivel: float, turned: float) -> float:
    """The angle of the edge to the axis that is measured on the ground tool."""
    return math.atan2(ground_to(0, 0, swivel, turned) - ground_to(2, 0, swivel, turned), 2)


def relief_square_to_edge(swivel: float, turned: float) -> float:
    """How steeply the ground land falls square to the edge, measured by a small step behind it, from the cone of the edges."""
    step = 1e-5
    falls = RADIUS - ground_to(0, step, swivel, turned)
    return math.atan2(falls * math.cos(edge_ground(swivel, turned)), step * RADIUS)


@pytest.mark.parametrize(
    ("surface", "key", "whole", "relief"),
    [
        ("cone", "included_angle", 82, 8),
        ("cone", "included_angle", 120, 12),
        ("shoulder", "included_angle", 90, 6),
        ("bevel", "bevel_angle", 45, 7),
    ],
)
def test_what_is_set_for_a_rest_grinds_the_edge_and_the_relief_that_are_wanted(
    surface: str, key: str, whole: float, relief: float
) -> None:
    wanted: dict[str, Given] = {
        "surface": surface,
        key: math.radians(whole),
        "relief_angle": math.radians(relief),
    }
    found = run(SHEET, CUP | wanted).outputs
    swivel, turned = found["axis_to_wheel_angle"], math.asin(found["tooth_rest_height"] / RADIUS)
    half = whole if key == "bevel_angle" else whole / 2
    assert math.degrees(edge_ground(swivel, turned)) == pytest.approx(half, abs=1e-6)
    assert math.degrees(relief_square_to_edge(swivel, turned)) == pytest.approx(relief, abs=1e-3)
    # The plain angle of the edge on the scale is not it.
    assert math.degrees(edge_ground(math.radians(half), turned)) > half + 0.2


def test_the_chamfer_of_a_tap_is_swivelled_by_the_same() -> None:
    wanted: dict[str, Given] = {
        "surface": "chamfer",
        "chamfer_angle": math.radians(20),
        "relief_angle": math.radians(8),
    }
    found = run(SHEET, CUP | wanted).outputs
    turned = math.asin(found["tooth_rest_height"] / RADIUS)
    assert math.degrees(turned) == pytest.approx(8)
    assert math.degrees(edge_ground(found["axis_to_wheel_angle"], turned)) == pytest.approx(20, abs=1e-6)


@pytest.mark.parametrize("surface", ["cone", "bevel", "chamfer"])
def test_a_swivel_that_was_set_tells_the_edge_that_it_leaves(surface: str) -> None:
    key = {"cone": "included_angle", "bevel": "bevel_angle", "chamfer": "chamfer_angle"}[surface]
    given_now: dict[str, Given] = {
        "surface": surface,
        "axis_to_wheel_angle": math.radians(41),
        "relief_angle": math.radians(8),
    }
    found = run(SHEET, CUP | given_now)
    turned = math.asin(found.outputs["tooth_rest_height"] / RADIUS)
    share = 2 if surface == "cone" else 1
    assert found.outputs[key] == pytest.approx(share * edge_ground(math.radians(41), turned))
    by_height: dict[str, Given] = {key: value for key, value in given_now.items() if key != "relief_angle"}
    again = run(SHEET, CUP | by_height | {"tooth_rest_height": found.outputs["tooth_rest_height"]})
    assert again.outputs[key] == pytest.approx(found.outputs[key])
    assert again.outputs["relief_angle"] == pytest.approx(math.radians(8))


def test_the_answer_says_the_swivel_the_edge_and_what_the_plain_angle_would_make() -> None:
    wanted: dict[str, Given] = {
        "surface": "cone",
        "included_angle": math.radians(82),
        "relief_angle": math.radians(8),
    }
    said = " ".join(str(check.sentence) for check in run(SHEET, CUP | wanted).checks)
    turned = math.asin(math.sin(math.atan(math.tan(math.radians(8)) / math.cos(math.radians(41)))))
    off = 2 * math.degrees(edge_ground(math.radians(41), turned))
    assert "swivel by 40.52 deg and not by half the included angle, 41 deg." in said
    assert f"The cone then reads 82 deg; at 41 deg on the scale it would read {off:.2f} deg." in said


def test_a_straight_wheel_over_a_level_tooth_leaves_the_swivel_as_the_edge() -> None:
    straight: dict[str, Given] = {
        "wheel_shape": "type-1-straight",
        "wheel_diameter": 150.0,
        "relief_angle": 0.14,
    }
    wanted = run(SHEET, {**straight, "surface": "cone", "included_angle": math.radians(82)})
    assert "axis_to_wheel_angle" not in wanted.outputs
    assert wanted.outputs["half_included_angle"] == pytest.approx(math.radians(41))
    by_swivel = run(SHEET, {**straight, "surface": "cone", "axis_to_wheel_angle": math.radians(41)})
    assert by_swivel.outputs["included_angle"] == pytest.approx(math.radians(82))


def test_a_cylinder_is_swivelled_by_nothing() -> None:
    outputs = run(SHEET, CUP | {"surface": "land", "relief_angle": 0.14}).outputs
    assert "axis_to_wheel_angle" not in outputs


def test_a_swivel_too_steep_for_any_edge_of_that_relief_is_refused() -> None:
    steep: dict[str, Given] = {
        "surface": "cone",
        "axis_to_wheel_angle": math.radians(85),
        "relief_angle": math.radians(10),
    }
    with pytest.raises(Refusal) as refused:
        run(SHEET, CUP | steep)
    assert "Swivel less, or give less relief." in str(refused.value)


@given(st.floats(0.01, 1.4), st.floats(0.0, 0.6))
def test_swivel_and_edge_lead_back_to_each_other(kappa: float, normal: float) -> None:
    turned = math.atan(math.tan(normal) / math.cos(kappa))
    swivel = swivel_for_edge(kappa, turned)
    assert edge_of_swivel(swivel, turned) == pytest.approx(kappa)
    assert edge_of_relief(swivel, normal) == pytest.approx(kappa)
