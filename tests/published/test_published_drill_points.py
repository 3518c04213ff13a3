"""Drill points against printed figures."""

from __future__ import annotations

import math

import pytest

from geometry.calculations import calculation
from geometry.drill.point import hole_oversize_by_rule
from geometry.evaluate import run


def test_a_point_of_118_degrees_is_ground_at_59_to_the_wheel_face() -> None:
    # NAVEDTRA 14345, Machinery Repairman, chapter 5, sharpening twist drills: the axis stands about 59 degrees to the
    # wheel face; the Steelworker manual, NAVEDTRA 14251, gives the same.
    found = run(calculation("drill-point"), {"diameter": 12.7, "point_angle": math.radians(118)})
    assert math.degrees(found.outputs["half_point_angle"]) == pytest.approx(59, rel=1e-12)


@pytest.mark.parametrize(("to_the_axis", "included"), [(60, 120), (50, 100)])
def test_the_angle_of_a_lip_to_the_axis_is_half_of_the_point(to_the_axis: int, included: int) -> None:
    # George Iles, Inventors at Work (1906): lips at 60 degrees to the axis, 120 included; 50 for brass, 100 included.
    found = run(calculation("drill-point"), {"diameter": 10.0, "point_angle": math.radians(included)})
    assert math.degrees(found.outputs["half_point_angle"]) == pytest.approx(to_the_axis, rel=1e-12)


def test_lips_three_thou_unlike_drill_six_thou_too_large_by_the_shop_rule() -> None:
    # A trade article on regrinding tolerances, a weak source: a 1/2 in drill with 0.003 in between its lips drills
    # about 0.506 in. The rule names no point angle.
    assert 0.5 + hole_oversize_by_rule(0.003 * 25.4) / 25.4 == pytest.approx(0.506, abs=5e-7)


@pytest.mark.parametrize(("one_way", "other_way"), [(125, 55), (133, 47)])
def test_a_chisel_edge_may_be_stated_either_way(one_way: int, other_way: int) -> None:
    # 55 degrees in a maker's manual for grinding drills, 47 to 55 in the Great Soviet Encyclopedia, article Drill; they are what is left
    # to 180 of the 120 to 135 degrees that other books print.
    values = {"diameter": 10.0, "point_angle": math.radians(118)}
    long = run(calculation("drill-point"), {**values, "chisel_edge_angle": math.radians(one_way)}).outputs
    short = run(calculation("drill-point"), {**values, "chisel_edge_angle": math.radians(other_way)}).outputs
    assert long == pytest.approx(short, rel=1e-12)
    assert math.degrees(long["chisel_edge_supplement"]) == pytest.approx(other_way, rel=1e-12)
