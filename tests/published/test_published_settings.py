"""Setting heights and wheel speeds against printed figures."""

from __future__ import annotations

import math

import pytest

from geometry.calculations import calculation
from geometry.evaluate import run
from geometry.setting.height import rule_height, setting_height
from geometry.wheel.speed import rotational_speed, surface_speed

INCH = 25.4
FOOT_A_MINUTE = 304.8 / 60
RPM = 2 * math.pi / 60


def test_five_degrees_with_a_six_inch_wheel_is_about_the_army_s_264_thou() -> None:
    # TC 9-524, Fundamentals of Machine Tools, chapter 5, cutter sharpening: 0.0088 x 5 x 6 = 0.264 in. Its 0.0088 is
    # 0.8 percent above pi / 360, so the exact height is less by about that.
    exact = setting_height(math.radians(5), 6 * INCH) / INCH
    assert exact == pytest.approx(0.264, rel=0.011)
    assert exact < 0.264
    # The Navy's rule for the same job is 0.0087 x 5 x 6.
    assert rule_height(math.radians(5), 6 * INCH) / INCH == pytest.approx(0.261, rel=1e-9)


def test_the_navy_multiplies_by_0_0087_with_the_wheel_for_a_disc_and_the_cutter_for_a_cup() -> None:
    # NAVEDTRA Machinery Repairman, chapter 10, setting the clearance angle: angle x wheel diameter x 0.0087 for a straight
    # wheel, angle x cutter diameter x 0.0087 for a cup wheel.
    sheet = calculation("setting-height")
    values = {"relief_angle": math.radians(6), "wheel_diameter": 7 * INCH, "diameter": 3 * INCH}
    disc = run(sheet, {**values, "wheel_shape": "type-1-straight"}).outputs["rule_height"]
    cup = run(sheet, {**values, "wheel_shape": "type-6-straight-cup"}).outputs["rule_height"]
    assert disc / INCH == pytest.approx(6 * 7 * 0.0087, rel=1e-9)
    assert cup / INCH == pytest.approx(6 * 3 * 0.0087, rel=1e-9)


def test_a_six_inch_wheel_at_6500_feet_a_minute_turns_4138_times() -> None:
    # A trade page on wheel speed: rpm = 3.82 x surface feet / diameter, with 6 in and 6,500 giving 4,138.
    turns = rotational_speed(6 * INCH, 6500 * FOOT_A_MINUTE) / RPM
    assert turns == pytest.approx(4138, abs=0.5)
    assert turns == pytest.approx(3.82 * 6500 / 6, rel=1e-3)


@pytest.mark.parametrize(("inches", "rpm"), [(6.0, 3600.0), (7.0, 3450.0), (3.5, 5000.0)])
def test_surface_feet_are_pi_times_diameter_times_turns_over_twelve(inches: float, rpm: float) -> None:
    # A maker of broaches on choosing wheels prints sfpm = pi x D x rpm / 12, with D in inches.
    found = surface_speed(inches * INCH, rpm * RPM) / FOOT_A_MINUTE
    assert found == pytest.approx(math.pi * inches * rpm / 12, rel=1e-12)


def test_metres_a_minute_are_pi_times_diameter_times_turns_over_a_thousand() -> None:
    # A supplier's technical page on diamond and CBN wheels prints V = pi D N / 1000 with D in mm, V in m/min.
    assert surface_speed(150.0, 3000 * RPM) * 60 / 1000 == pytest.approx(
        math.pi * 150 * 3000 / 1000, rel=1e-12
    )


def test_a_drill_of_half_an_inch_at_100_feet_a_minute_turns_by_the_old_rule() -> None:
    # "Use and Care of Twist Drills": rpm = 3.8 x surface feet / diameter, and surface feet = 0.26 x rpm x diameter.
    turns = rotational_speed(0.5 * INCH, 100 * FOOT_A_MINUTE) / RPM
    assert turns == pytest.approx(3.8 * 100 / 0.5, rel=0.01)
    assert 0.26 * turns * 0.5 == pytest.approx(100, rel=0.01)
