"""What the trade never goes to is doubted in whichever calculation it stands. Common practice, no source."""

from __future__ import annotations

import math

import pytest

from geometry.calculation import Given, Inputs, Result
from geometry.calculations import calculation, calculation_names
from geometry.evaluate import run
from geometry.slips import Slip, slips


def told(result: Result) -> list[str]:
    """The doubts, in words."""
    return [str(one.sentence) for one in result.checks if isinstance(one, Slip)]


@pytest.mark.parametrize("name", calculation_names())
def test_the_sample_of_no_calculation_is_doubted(name: str) -> None:
    sheet = calculation(name)
    assert told(run(sheet, sheet.sample)) == []


def test_forty_threads_in_the_chamfer_of_a_tap_are_no_pass() -> None:
    # 40 threads of 1.25 mm are 50 mm on a tap of 9.4 mm.
    values: dict[str, Given] = {"diameter": 9.4, "pitch": 1.25, "chamfer_length": 50.0}
    found = run(calculation("tap-chamfer"), values)
    assert found.checks[0].state == "watch"
    assert ["Threads in the chamfer" in one for one in told(found)] == [True]


def test_a_throw_that_no_cam_has_is_not_asked_for_without_a_word() -> None:
    # A countersink of 5 in at 11 degrees: pi times 127 mm times tan 11 is 77.6 mm a turn, 3.1 in.
    values: dict[str, Given] = {
        "diameter": 127.0,
        "surface": "cone",
        "included_angle": math.radians(90),
        "relief_angle": math.radians(11),
        "land_width": 5.0,
        "relief_form": "eccentric",
    }
    found = run(calculation("relief-drop"), values)
    assert any("A cam with a throw" in one for one in told(found))


@pytest.mark.parametrize(
    ("name", "key", "value"),
    [
        ("step-relief", "radial_throw", 30.0),
        ("bevel-lead", "reaming_stock", 2.0),
        ("bevel-lead", "corner_wear", 1.2),
        ("tooth-rest", "tooth_length", 600.0),
        ("tooth-rest", "rest_width", 60.0),
        ("back-taper", "taper_length", 800.0),
        ("drill-web", "length_ground_off", 300.0),
        ("drill-web", "web_distance", 500.0),
        ("drill-web", "web_thickness", 0.18),
        ("drill-web", "wanted_web", 12.0),
        ("index-moves", "index_ratio", 400.0),
        ("index-moves", "plate_holes", (180.0, 490.0)),
        ("relief-facets", "deepest_gap", 5.0),
        ("circular-land", "margin_now", 5.0),
        ("size-loss", "least_diameter", 1.19),
        ("tap-hook", "pitch", 0.175),
        ("pipe-tap", "flutes", 40.0),
        ("index-moves", "diameter", 200.0),
    ],
)
def test_ten_times_too_much_or_too_little_is_doubted_by_one_rule(name: str, key: str, value: Given) -> None:
    sheet = calculation(name)
    found = run(sheet, {**sheet.sample, key: value})
    assert found.checks[0].state == "watch"
    assert len(told(found)) == 1


@pytest.mark.parametrize(
    ("name", "given"),
    [
        # A nut tap, 20 threads; a metric fine thread; a reamer of 1 mm with four flutes; a shell reamer of 100 mm.
        ("tap-chamfer", {"diameter": 12.0, "pitch": 1.75, "chamfer_threads": 20.0}),
        ("lead-over-land", {"diameter": 42.0, "pitch": 0.75, "land_width": 8.0}),
        ("index-moves", {"flutes": 4.0, "diameter": 1.0, "plate_holes": (18.0, 20.0)}),
        ("tooth-rest", {**calculation("tooth-rest").sample, "diameter": 100.0}),
    ],
)
def test_what_is_rare_but_real_is_not_doubted(name: str, given: dict[str, Given]) -> None:
    assert told(run(calculation(name), given)) == []


@pytest.mark.parametrize("name", ["step-relief", "cone-relief", "cross-hole"])
def test_a_feed_typed_for_the_angle_of_a_cone_is_doubted(name: str) -> None:
    sheet = calculation(name)
    many = isinstance(sheet.sample["included_angle"], tuple)
    wrong: Given = tuple(map(math.radians, (90, 0.004, 118))) if many else math.radians(0.004)
    (doubt,) = (one for one in slips(Inputs({**sheet.sample, "included_angle": wrong}), {}))
    assert doubt.state == "watch"
    assert str(doubt.sentence).startswith("Included angle: 0.004 deg looks like a slip")


def test_a_slender_cone_and_a_cylinder_are_not_doubted() -> None:
    # At ten degrees a cone is still one; at none it is a cylinder, of which the calculation itself tells.
    for degrees in (10, 0):
        assert not [*slips(Inputs({"included_angle": math.radians(degrees)}), {})]
