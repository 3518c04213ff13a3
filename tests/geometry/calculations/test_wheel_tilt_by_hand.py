"""Toward which end of the tool the wheel leans deeper, by the hand of the cut and of the flutes."""

from __future__ import annotations

import math

import pytest

from geometry.calculations import calculation
from geometry.evaluate import run

HELIX = {"helix_angle": math.radians(20), "relief_angle": math.radians(8)}


def heel_end(cuts: str, winds: str) -> str:
    """A second way: a tool laid out in space, its point at z = 0 and its shank above, seen from the shank.

    A right-hand flute turns anticlockwise as it goes up, a left-hand one clockwise. A tool that cuts clockwise passes
    a line parallel to its axis with its edge first and its heel after it. Of two places on that line, a little below
    and a little above the one in which the edge is now, the heel is at the one that the edge has left already.
    """
    climb = 1.0 if winds == "right" else -1.0
    turns = -1.0 if cuts == "right" else 1.0
    for end, z in (("point", -0.01), ("shank", 0.01)):
        edge = complex(math.cos(climb * z), math.sin(climb * z))
        line = complex(1.0, 0.0)
        # The way from the edge to the line, against the way in which the tool turns, is the way to its heel.
        if (edge.conjugate() * line).imag * turns < 0:
            return end
    raise AssertionError


@pytest.mark.parametrize("cuts", ["right", "left"])
@pytest.mark.parametrize("winds", ["right", "left"])
def test_the_wheel_leans_deeper_toward_the_end_where_the_heel_comes_under_it(cuts: str, winds: str) -> None:
    found = run(calculation("wheel-tilt"), {**HELIX, "hand": cuts, "helix_hand": winds})
    assert f"deeper toward the {heel_end(cuts, winds)}," in str(found.checks[0].sentence)


@pytest.mark.parametrize("cuts", ["right", "left"])
def test_flutes_of_which_nothing_is_said_wind_the_way_in_which_the_tool_cuts(cuts: str) -> None:
    said = run(calculation("wheel-tilt"), {**HELIX, "hand": cuts})
    assert said == run(calculation("wheel-tilt"), {**HELIX, "hand": cuts, "helix_hand": cuts})


def test_a_mirror_image_has_the_same_numbers() -> None:
    right = run(calculation("wheel-tilt"), {**HELIX, "hand": "right"})
    left = run(calculation("wheel-tilt"), {**HELIX, "hand": "left"})
    assert (left.outputs, left.stations) == (right.outputs, right.stations)


def test_behind_a_margin_the_land_falls_from_where_the_margin_ends() -> None:
    # By hand: of 1 mm of land 0.2 mm run on the circle, and 0.8 tan 8 = 0.1124 mm are left to the heel.
    found = run(
        calculation("wheel-tilt"), {**HELIX, "diameter": 20.0, "land_width": 1.0, "margin_width": 0.2}
    )
    assert found.outputs["heel_drop"] == pytest.approx(0.8 * math.tan(math.radians(8)))
    assert any("from its end to the heel the land falls" in str(one.sentence) for one in found.checks)


def test_a_wheel_that_does_not_reach_past_the_margin_is_told_no_narrower_land() -> None:
    # By hand: 1 mm along the wheel at a helix of 1 rad is tan 1 = 1.557 mm round the circle, less than the margin of 2 mm;
    # the whole land of 3 mm wants 3 / tan 1 = 1.926 mm.
    values = {
        "helix_angle": 1.0,
        "relief_angle": 0.5,
        "diameter": 3.0,
        "land_width": 3.0,
        "margin_width": 2.0,
        "wheel_width": 1.0,
    }
    (told,) = [one for one in run(calculation("wheel-tilt"), values).checks if one.state == "stop"]
    assert [key for key, _ in told.cure] == ["wheel_width"]
    assert dict(told.cure)["wheel_width"] == pytest.approx(3 / math.tan(1.0))
    assert "Of a land so narrow the margin would take up all." in str(told.sentence)
