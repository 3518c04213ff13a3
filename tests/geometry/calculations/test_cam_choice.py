"""The cam out of the drawer: its relief found again on the curve that it grinds."""

from __future__ import annotations

import math
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Given, Result
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run
from library.units.show import say


def chosen(**values: Given) -> Result:
    return run(calculation("cam-choice"), values)


def said(result: Result) -> str:
    return " ".join(f"{check.state}: {check.sentence}" for check in result.checks)


@given(st.floats(3.0, 60.0), st.floats(0.2, 4.0), st.integers(1, 8))
def test_each_cam_gives_the_angle_between_its_curve_and_the_circle(
    diameter: float, throw: float, flutes: int
) -> None:
    # Independent: a curve that falls the throw from tooth to tooth, and its direction by a short step along it.
    radius, step = diameter / 2, 1e-6
    fall = throw * flutes / (2 * math.pi)
    ahead = (radius - fall * step) * complex(math.cos(step), math.sin(step))
    way = ahead - radius
    relief = math.atan2(-way.real, way.imag)
    found = chosen(
        surface="land",
        diameter=diameter,
        relief_angle=math.radians(8),
        cam_throws=(throw,),
        throw_per="tooth",
        flutes=float(flutes),
    )
    assert found.rows[0].values["relief_angle"] == pytest.approx(relief, abs=1e-5)
    # The throw that is wanted, as the cam rise of form-relieved hobs is published: pi D tan(a) / Z.
    rise = math.pi * diameter * math.tan(math.radians(8)) / flutes
    assert found.outputs["throw_per_tooth"] == pytest.approx(rise, rel=1e-12)


def test_the_first_cam_that_gives_enough_is_taken_and_its_readings_follow() -> None:
    values: dict[str, Given] = {
        "surface": "land",
        "diameter": 16.0,
        "relief_angle": math.radians(7),
        "cam_throws": (4.0, 1.0, 2.5, 1.6),
        "throw_per": "tooth",
        "flutes": 4.0,
        "land_width": 3.2,
    }
    found = chosen(**values)
    # Derived by hand: 7 degrees want pi 16 tan 7 / 4 = 1.5430 mm, so 1.6 mm; it gives atan(4 1.6 / (16 pi)) = 7.2561
    # degrees, and at the heel, 0.4 rad on, the indicator reads 0.4 / (pi / 2) of its throw.
    assert found.outputs["chosen_throw"] == 1.6
    assert math.degrees(found.outputs["relief_angle"]) == pytest.approx(7.2561, abs=1e-4)
    assert found.outputs["heel_drop"] == pytest.approx(1.6 * 0.4 / (math.pi / 2))
    assert [row.label for row in found.rows] == ["Cam 1", "Cam 2 (taken)", "Cam 3", "Cam 4"]
    assert "watch: The nearest cam above the need, 1.6 mm, gives 7.256 deg" in said(found)
    assert "The next smaller one, 1 mm, gives 4.55 deg." in said(found)
    assert "pass" in said(chosen(**values | {"relief_angle": math.radians(7.2)}))
    short = chosen(**values | {"relief_angle": math.radians(25)})
    assert short.outputs["chosen_throw"] == 4.0
    assert "watch: The largest cam of the drawer, 4 mm" in said(short)


def test_the_same_cam_gives_a_cone_less_square_to_its_edge_than_square_to_the_axis() -> None:
    # Derived: square to a cone of 82 degrees a radial throw counts by cos 41.
    values: dict[str, Given] = {"diameter": 20.0, "relief_angle": math.radians(5), "cam_throws": (6.0,)}
    cone = chosen(**values, surface="cone", included_angle=math.radians(82))
    per_radian = 6.0 / (2 * math.pi)
    assert math.tan(cone.outputs["radial_relief_angle"]) == pytest.approx(per_radian / 10.0)
    assert math.tan(cone.outputs["relief_angle"]) == pytest.approx(
        per_radian / 10.0 * math.cos(math.radians(41))
    )


def test_without_a_drawer_the_throw_that_is_needed_is_told() -> None:
    found = chosen(surface="land", diameter=12.0, relief_angle=math.radians(8))
    assert "chosen_throw" not in found.outputs
    assert found.outputs["throw_per_turn"] == pytest.approx(12 * math.pi * math.tan(math.radians(8)))
    assert "note: A cam of 5.298 mm per turn" in said(found)


def test_a_throw_from_tooth_to_tooth_wants_the_teeth_and_a_flat_face_no_cam_toward_the_axis() -> None:
    with pytest.raises(Refusal, match="Give flutes"):
        chosen(surface="land", diameter=12.0, relief_angle=0.1, throw_per="tooth")
    with pytest.raises(Refusal, match="faces along the axis"):
        chosen(surface="cone", included_angle=math.pi, diameter=12.0, relief_angle=0.1)


def test_beside_a_cam_that_is_taken_the_throw_that_is_wanted_is_called_so() -> None:
    # 9.525 tan 9 * 2 pi / 3 = 3.160 from tooth to tooth; the cam above it has 5. Derived.
    values: dict[str, Given] = {"diameter": 19.05, "relief_angle": math.radians(9), "flutes": 3.0}
    found = chosen(**values, surface="land", throw_per="tooth", cam_throws=(1.0, 5.0))
    assert found.outputs["throw_per_tooth"] == pytest.approx(3.160, abs=5e-4)
    assert found.outputs["chosen_throw"] == 5.0
    assert found.named["throw_per_tooth"] == "Wanted, throw per tooth"
    assert not chosen(**values, surface="land", throw_per="tooth").named


SMALLER_FITS: dict[str, Given] = {
    # Derived by hand: 9.525 mm of radius and 3 teeth; 1.6 mm give atan(4.8 / (2 pi 9.525)) = 4.585 degrees, 2.5 mm 7.143
    # and 5 mm 14.074.
    "surface": "land",
    "diameter": 19.05,
    "flutes": 3.0,
    "throw_per": "tooth",
    "cam_throws": (1.6, 2.5, 5.0),
    "relief_angle": math.radians(8),
}


def within(low: float, high: float, **more: Given) -> Result:
    limits = {"relief_lower_limit": math.radians(low), "relief_upper_limit": math.radians(high)}
    return chosen(**SMALLER_FITS | limits | more)


def test_a_smaller_cam_within_the_limits_is_taken_before_a_larger_one_outside_them() -> None:
    assert chosen(**SMALLER_FITS).outputs["chosen_throw"] == 5.0
    found = within(6, 10)
    assert found.outputs["chosen_throw"] == 2.5
    assert math.degrees(found.outputs["relief_angle"]) == pytest.approx(7.143, abs=5e-4)
    told = said(found)
    assert "pass: The cam of 2.5 mm gives 7.143 deg on the land where 8 deg is wanted" in told
    assert "watch" not in told
    # Without an upper limit too, but not without a lower one: too little rubs.
    ends = {"relief_lower_limit": math.radians(6)}
    assert chosen(**SMALLER_FITS | ends).outputs["chosen_throw"] == 2.5
    ends = {"relief_upper_limit": math.radians(10)}
    assert chosen(**SMALLER_FITS | ends).outputs["chosen_throw"] == 5.0


def test_of_two_cams_within_the_limits_the_one_nearer_to_what_is_wanted_is_taken() -> None:
    assert within(4, 15).outputs["chosen_throw"] == 2.5
    assert within(4, 15, relief_angle=math.radians(5)).outputs["chosen_throw"] == 1.6
    assert within(4, 15, relief_angle=math.radians(12)).outputs["chosen_throw"] == 5.0


def test_where_no_cam_keeps_the_limits_or_what_is_wanted_does_not_the_one_above_is_taken() -> None:
    assert within(7.5, 10).outputs["chosen_throw"] == 5.0
    assert "watch: The nearest cam above the need, 5 mm" in said(within(7.5, 10))
    assert within(4, 7, relief_angle=math.radians(8)).outputs["chosen_throw"] == 5.0
    with pytest.raises(Refusal, match="under its lower limit"):
        within(10, 6)


@pytest.mark.parametrize("flutes", [2.0, 3.0, 4.0, 5.0])
@pytest.mark.parametrize("diameter", [8.0, 11.98, 19.05])
def test_what_the_advice_says_to_type_is_what_comes_out(diameter: float, flutes: float) -> None:
    values = SMALLER_FITS | {"diameter": diameter, "flutes": flutes, "relief_angle": math.radians(5.7)}
    found = chosen(**values)
    (watch,) = [check for check in found.checks if check.state == "watch"]
    told = say(watch.sentence)
    gives, typed = (re.findall(rf"{word} ([\d.]+) deg", told)[0] for word in ("gives", "gives,"))
    assert gives == typed
    followed = chosen(**values | {"relief_angle": math.radians(float(typed))})
    assert followed.outputs["chosen_throw"] == found.outputs["chosen_throw"]
    assert "watch" not in said(followed)
