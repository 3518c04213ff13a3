"""Tapers and swivels against printed figures."""

from __future__ import annotations

import math

import pytest

from geometry.calculations import calculation
from geometry.evaluate import run
from geometry.setting.taper import diameter_behind, swivel_of_taper, taper_of_angle


def test_the_side_of_a_taper_pipe_thread_leans_one_degree_forty_seven_minutes() -> None:
    # ASME B1.20.1, NPT: taper 1 in 16 on diameter, half angle 1 deg 47 min.
    minutes = math.degrees(swivel_of_taper(1 / 16)) * 60
    assert round(minutes) == 60 + 47


def test_three_quarters_of_an_inch_in_a_foot_is_one_in_sixteen() -> None:
    # ASME B1.20.1, NPT: the same taper stated as 0.75 in for each foot; BS taper pipe threads state it so too.
    found = run(
        calculation("back-taper"),
        {"diameter": 50.8, "back_diameter": 50.8 - 0.75 * 25.4, "taper_length": 304.8},
    )
    assert found.outputs["taper_ratio"] == pytest.approx(1 / 16, rel=1e-12)
    assert math.degrees(found.outputs["swivel_angle"]) == pytest.approx(1 + 47 / 60, abs=0.5 / 60)


@pytest.mark.parametrize(
    ("degrees", "printed"),
    [
        # "Turning and Boring Tapers" (1902), table of included angle and taper for each inch. Its 15 degrees are
        # left out: .28330 stands there for .26330, a slip of the printer.
        (1, 0.01746),
        (2, 0.03490),
        (3, 0.05236),
        (5, 0.08732),
        (10, 0.17498),
        (20, 0.35266),
        (30, 0.53590),
        (45, 0.82842),
    ],
)
def test_an_included_angle_tapers_as_the_old_table_prints(degrees: int, printed: float) -> None:
    assert taper_of_angle(math.radians(degrees)) == pytest.approx(printed, abs=1.5e-5)


@pytest.mark.parametrize(
    ("length_in", "front_in", "back_in", "set_over_in"),
    [
        # NAVEDTRA 14345, Machinery Repairman, taper turning by setting the tailstock over: 12 in long from 3 to
        # 2 in over the whole length, set over 1/2 in; 6 in long at 1 in to the foot, set over 1/4 in.
        (12.0, 3.0, 2.0, 0.5),
        (6.0, 3.0, 2.5, 0.25),
    ],
)
def test_the_tailstock_is_set_over_by_what_one_side_falls(
    length_in: float, front_in: float, back_in: float, set_over_in: float
) -> None:
    values = {"diameter": front_in * 25.4, "back_diameter": back_in * 25.4, "taper_length": length_in * 25.4}
    assert run(calculation("back-taper"), values).outputs["indicator_fall"] == pytest.approx(
        set_over_in * 25.4, rel=1e-12
    )


def test_a_tap_with_the_most_back_taper_allowed_loses_a_tenth_in_a_hundred() -> None:
    # IS 6171 as a tap maker prints it: back taper at most 1 in 1000.
    assert 10.0 - diameter_behind(10.0, 1 / 1000, 100.0) == pytest.approx(0.1, rel=1e-9)
