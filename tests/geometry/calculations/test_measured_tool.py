"""A new tool measured: the numbers it was made with come back from what an indicator and a height gauge show."""

from __future__ import annotations

import math

import pytest

from geometry.calculation import Given
from geometry.calculations import calculation
from geometry.evaluate import run

SHEET = calculation("measured-tool")


def shown(form: str, turned: float, relief: float, radius: float) -> float:
    """What the indicator shows behind the edge, by the even cam or by the line of the flat; derived."""
    if form == "eccentric":
        return radius * math.tan(relief) * turned
    return radius - radius * math.cos(relief) / math.cos(turned - relief)


@pytest.mark.parametrize("form", ["eccentric", "flat"])
@pytest.mark.parametrize("rake", [-4.0, 0.0, 12.0])
def test_rake_relief_and_form_of_a_tool_that_is_known_come_back(form: str, rake: float) -> None:
    radius, relief, turned = 8.0, math.radians(11), 0.35
    tool: dict[str, Given] = {
        "surface": "land",
        "diameter": 2 * radius,
        "land_width": radius * turned,
        "drop": shown(form, turned, relief, radius),
        "second_land_width": radius * turned / 2,
        "second_drop": shown(form, turned / 2, relief, radius),
        "face_offset": radius * math.sin(math.radians(rake)),
    }
    found = run(SHEET, tool)
    assert found.outputs["relief_angle"] == pytest.approx(relief, abs=1e-6)
    assert found.outputs[f"{form}_relief_angle"] == found.outputs["relief_angle"]
    assert math.degrees(found.outputs["rake_angle"]) == pytest.approx(rake, abs=1e-6)
    assert f"it is {form}" in " ".join(str(check.sentence) for check in found.checks)


def test_without_the_face_the_rest_is_told_and_the_face_asked_for() -> None:
    tool = {key: value for key, value in SHEET.sample.items() if key != "face_offset"}
    found = run(SHEET, tool)
    assert "rake_angle" not in found.outputs
    assert any("how far the face passes" in str(check.sentence) for check in found.checks)


def test_on_a_cone_the_relief_is_the_one_square_to_the_edge() -> None:
    # 82 deg countersink of 1 in, 8 deg square to the edge: .0466 in at the axis for half a radian; derived in two ways
    # in the tests of the cone.
    tool: dict[str, Given] = {
        "surface": "cone",
        "included_angle": math.radians(82),
        "diameter": 25.4,
        "land_width": 6.35,
        "drop": 0.04655 * 25.4,
        "second_land_width": 3.175,
        "second_drop": 0.04655 * 25.4 / 2,
    }
    assert math.degrees(run(SHEET, tool).outputs["relief_angle"]) == pytest.approx(8.0, abs=0.01)


@pytest.mark.parametrize(("form", "other"), [("eccentric", "flat"), ("flat", "eccentric")])
def test_the_relief_of_the_form_that_was_found_comes_first(form: str, other: str) -> None:
    radius, relief, turned = 8.0, math.radians(11), 0.35
    drops = [shown(form, one, relief, radius) for one in (turned, turned / 2)]
    found = run(
        SHEET,
        {
            "surface": "land",
            "diameter": 2 * radius,
            "land_width": radius * turned,
            "drop": drops[0],
            "second_land_width": radius * turned / 2,
            "second_drop": drops[1],
        },
    )
    assert next(iter(found.outputs)) == "relief_angle"
    assert found.outputs["relief_angle"] != found.outputs[f"{other}_relief_angle"]
