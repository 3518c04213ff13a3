"""The cross-hole calculation: no relief falls from the hole alone, and where the rim leaves its cone."""

from __future__ import annotations

import math

import pytest

from geometry.calculation import Given, Result
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run

SHEET = calculation("cross-hole")


def tool(**more: Given) -> Result:
    values: dict[str, Given] = {
        "included_angle": math.radians(90),
        "diameter": 20.0,
        "cross_hole_diameter": 6.0,
        "cross_hole_height": 10.0,
    }
    return run(SHEET, {**values, **more})


def test_a_cone_without_a_cam_is_stopped_and_right_with_the_throw_that_is_told() -> None:
    stopped = tool(radial_throw=0.0).checks[0]
    assert stopped.state == "stop"
    ((key, throw),) = stopped.cure
    assert isinstance(throw, float)
    assert key == "radial_throw"
    assert tool(radial_throw=throw).checks[0].state == "pass"


def test_the_throw_for_a_relief_gives_that_relief() -> None:
    # Derived: square to the cone the throw of a turn is 2 pi r tan(relief), and that over cos 45 along the radius; the edge
    # ends at (10 sin 45 + 3) sin 45 / sin 90, which is 7.1213 from the axis.
    needed = tool(relief_angle=math.radians(6)).outputs["needed_radial_throw"]
    assert needed == pytest.approx(
        2 * math.pi * 7.12132 * math.tan(math.radians(6)) / math.cos(math.radians(45)), rel=1e-5
    )
    assert tool(radial_throw=needed).outputs["relief_angle"] == pytest.approx(math.radians(6))


def test_a_rim_that_runs_over_its_cone_is_told() -> None:
    found = tool(diameter=12.0, relief_angle=math.radians(6))
    over = next(check for check in found.checks if check.state == "watch")
    assert "over the largest diameter" in str(over.sentence)
    for key, value in over.cure:
        assert value is not None
        again = tool(**{"diameter": 12.0, "relief_angle": math.radians(6), key: value})
        assert all(check.state != "watch" for check in again.checks), key
    assert {key for key, _ in over.cure} == {"cross_hole_diameter", "cross_hole_height"}


def test_the_relief_grows_toward_the_tip() -> None:
    reliefs = [row.values["relief_angle"] for row in tool(relief_angle=math.radians(6)).rows]
    assert reliefs == sorted(reliefs, reverse=True)
    assert min(reliefs) > math.radians(6)


def test_a_cone_as_flat_as_a_face_is_refused() -> None:
    with pytest.raises(Refusal, match="So flat a cone"):
        tool(included_angle=math.nextafter(math.pi, 0), relief_angle=math.radians(6))
