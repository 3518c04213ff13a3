"""Settings in the graduations of a machine. Expected numbers by hand; derived."""

from __future__ import annotations

import math

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from geometry.calculation import Given
from geometry.calculations import calculation
from geometry.evaluate import run
from geometry.sentences import Kind
from geometry.setting.graduation import on_graduation
from library.book.model import Measure
from library.equipment.driving import Worked, drive
from library.equipment.model import Graduation, Machine
from library.equipment.settings import (
    GraduationLine,
    cost_said,
    graduation_lines,
    in_divisions,
    in_short,
    said,
)


def worked(name: str, **values: Given) -> Worked:
    sheet = calculation(name)
    return Worked(sheet, dict(values), dict(run(sheet, values).outputs))


def height_of(degrees: float, diameter: float) -> Worked:
    return worked(
        "setting-height",
        relief_angle=math.radians(degrees),
        wheel_shape="type-6-straight-cup",
        diameter=diameter,
    )


def test_a_height_becomes_divisions_with_the_shops_own_direction(machine: Machine) -> None:
    # 6 sin 1.65 degrees is 0.17277 mm, 17 divisions of 0.01 mm.
    (line,) = graduation_lines(machine, height_of(1.65, 12.0))
    assert said(line) == "17 divisions of 0.01 mm, wheel head up"


def test_more_than_a_turn_is_said_in_turns_of_the_handle(machine: Machine) -> None:
    # 6 sin 30 degrees is 3 mm: one turn of 2.5 mm and 50 divisions.
    (line,) = graduation_lines(machine, height_of(30, 12.0))
    assert said(line) == "1 turn and 50 of 0.01 mm, wheel head up"
    (exact,) = graduation_lines(machine, height_of(30, 20.0))
    assert said(exact) == "2 turns, wheel head up"


def test_no_height_leaves_the_graduations_at_zero(machine: Machine) -> None:
    (line,) = graduation_lines(machine, height_of(0, 12.0))
    assert said(line) == "wheel head at zero"


def test_an_angle_that_its_graduation_cannot_show_is_set_by_an_indicator_and_not_left_at_zero(
    machine: Machine,
) -> None:
    # On a helix: tan 0.1 deg x tan 30 deg is 0.0577 deg, less than half of 15 min (0.125 deg). Derived.
    slight = worked("wheel-tilt", relief_angle=math.radians(0.1), helix_angle=math.radians(30))
    (line,) = (one for one in graduation_lines(machine, slight) if one.key == "wheel_tilt")
    assert said(line) == "less than half a division of 15 min on the tilt, set by an indicator"
    assert in_short(line) == "by an indicator"
    assert cost_said(line) == ""


def test_a_negative_setting_goes_the_other_way(machine: Machine) -> None:
    # 6 sin(-5 degrees) is -0.5229 mm.
    (line,) = graduation_lines(machine, worked("face-offset", diameter=12.0, rake_angle=math.radians(-5)))
    assert said(line) == "52 divisions of 0.01 mm, wheel head down"


def test_what_the_rounding_costs_is_told_in_degrees(machine: Machine) -> None:
    # On 2 mm the height for 7 degrees is 0.121869; 0.12 gives asin 0.12 = 6.8921 degrees, 0.1079 less.
    (line,) = graduation_lines(machine, height_of(7, 2.0))
    assert line.setting.divisions == 12
    assert line.cost is not None
    assert math.degrees(line.cost.change) == pytest.approx(-0.10790, abs=1e-5)
    assert cost_said(line) == "rounding takes 0.11 deg off the relief angle"


def test_a_rounding_that_nobody_can_measure_is_told_as_that(machine: Machine) -> None:
    # On 300 mm one division of 0.01 mm is 0.004 degrees.
    (line,) = graduation_lines(machine, height_of(7, 300.0))
    assert cost_said(line) == "rounding changes the relief angle by less than 0.01 deg"


def test_the_rake_is_what_a_face_offset_costs(machine: Machine) -> None:
    (line,) = graduation_lines(machine, worked("face-offset", diameter=2.0, rake_angle=math.radians(10)))
    # sin 10 degrees is 0.173648; 0.17 is 9.78778 degrees.
    assert line.cost is not None
    assert line.cost.key == "rake_angle"
    assert math.degrees(line.cost.change) == pytest.approx(-0.21222, abs=1e-4)


def test_a_graduation_of_angles_tells_its_rounding_directly(machine: Machine) -> None:
    # tan 8 tan 30 is the tangent of 4.6389 degrees; on quarter degrees that is 19 of them, 4.75.
    found = worked("wheel-tilt", relief_angle=math.radians(8), helix_angle=math.radians(30), land_width=2.0,
                   land_measured_as="arc", diameter=12.0)  # fmt: skip
    (line,) = (one for one in graduation_lines(machine, found) if one.key == "wheel_tilt")
    assert said(line) == "19 divisions of 15 min, tilt"
    assert (
        cost_said(line)
        == "rounding adds 0.11 deg to the wheel tilt, which makes the relief angle 8.19 deg in place of 8.00 deg"
    )


def test_readings_are_given_in_divisions_of_the_indicator(machine: Machine) -> None:
    assert in_divisions(machine, "drop", 0.281) == pytest.approx(28.1)
    assert in_divisions(machine, "lead_over_land", 0.281) is None


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.floats(1, 40), st.floats(0.5, 35))
def test_the_height_that_is_set_gives_the_angle_that_is_told(
    machine: Machine, degrees: float, diameter: float
) -> None:
    (line,) = graduation_lines(machine, height_of(degrees, diameter))
    if line.setting.set_value <= 0:
        return
    assert line.cost is not None
    # The second way: sin a = 2 h / D with the rounded height.
    expected = math.asin(2 * line.setting.set_value / diameter) - math.radians(degrees)
    assert line.cost.change == pytest.approx(expected, abs=1e-9)


def test_a_setting_that_no_angle_gives_has_no_cost() -> None:
    # On a radius of 1 mm no relief gives a height of 3 mm.
    assert drive(height_of(7, 2.0), "tooth_rest_height", 3.0) is None
    assert drive(height_of(7, 2.0), "no_such_key", 3.0) is None


def _by_degrees(*keys: str) -> Machine:
    """A machine that sets some angles by whole degrees."""
    table = Graduation("table", "table", Measure("1 deg", math.radians(1)), Kind.ANGLE, sets=keys)
    return Machine("old", "The old one", graduations={"table": table})


def test_a_rounding_that_is_a_large_part_of_the_setting_is_told_as_such() -> None:
    # asin(0.1 / 10) is 0.573 degrees: one division of 1 degree is 0.427 more, 75 percent. Derived.
    machine = _by_degrees("wheel_tilt")
    graduation = machine.graduations["table"]
    wanted = math.asin(0.01)
    line = GraduationLine("wheel_tilt", wanted, graduation, on_graduation(wanted, graduation.division.number))
    assert line.is_coarse
    assert cost_said(line) == "rounding adds 0.43 deg to the wheel tilt, 75 percent of it"
    fine = GraduationLine(
        "wheel_tilt", 10 * wanted, graduation, on_graduation(10 * wanted, graduation.division.number)
    )
    assert not fine.is_coarse
    assert "percent" not in cost_said(fine)


def test_the_threads_that_a_rounded_chamfer_has_are_told() -> None:
    # (16 - 11.5) / 2 over 12 threads of 4 mm is 2.684 degrees; 3 degrees make 2.25 / tan 3 / 4 = 10.73 threads.
    tap = worked("tap-chamfer", diameter=16.0, pitch=4.0, thread_form="trapezoidal", chamfer_threads=12.0)
    (line,) = graduation_lines(_by_degrees("chamfer_angle"), tap)
    assert line.made is not None
    assert line.made.found == pytest.approx(2.25 / math.tan(math.radians(3)) / 4)
    assert cost_said(line).endswith("which makes the threads in the chamfer 10.73 in place of 12")
    given = worked("tap-chamfer", diameter=16.0, pitch=4.0, chamfer_angle=math.radians(2.68))
    assert all(one.made is None for one in graduation_lines(_by_degrees("chamfer_angle"), given))


def test_what_rounded_roll_and_swivel_make_of_point_and_relief_is_told_of_both_together() -> None:
    # The square to the wheel face is laid into the drill: its axis z, the lip along x, turned back by the roll. Half the
    # point is seen from the side of the lip, the relief from its end. Derived.
    drill = worked("point-setup", point_angle=math.radians(118), lip_relief_angle=math.radians(12))
    machine = _by_degrees("axis_to_wheel_angle", "roll_angle")
    lines = {one.key: one for one in graduation_lines(machine, drill)}
    axis, roll = (lines[key].setting.set_value for key in ("axis_to_wheel_angle", "roll_angle"))
    normal = (math.cos(axis) * math.cos(roll), math.cos(axis) * math.sin(roll), math.sin(axis))
    half, relief = math.atan2(normal[2], normal[0]), math.atan2(normal[1], normal[2])
    assert lines["axis_to_wheel_angle"].made is not None
    assert lines["axis_to_wheel_angle"].made.found == pytest.approx(2 * half)
    assert lines["roll_angle"].made is not None
    assert lines["roll_angle"].made.found == pytest.approx(relief)
    assert cost_said(lines["axis_to_wheel_angle"]).endswith(
        "; together with the rounded work head roll that makes the point angle 116.90 deg in place of 118.00 deg"
    )


def test_what_two_roundings_make_only_together_is_told_of_both() -> None:
    # Derived: the square to the wheel face, laid back into the drill, once at the axis as it is found and once as it is set.
    drill = worked("point-setup", point_angle=math.radians(118), lip_relief_angle=math.radians(12))
    lines = {
        one.key: one for one in graduation_lines(_by_degrees("axis_to_wheel_angle", "roll_angle"), drill)
    }
    roll, axis = lines["roll_angle"], drill.outputs["axis_to_wheel_angle"]
    alone = math.atan2(math.cos(axis) * math.sin(roll.setting.set_value), math.sin(axis))
    assert roll.made is not None
    assert roll.made.alone == pytest.approx(alone)
    together = math.degrees(roll.made.found)
    assert abs(together - math.degrees(alone)) > 0.05
    assert cost_said(roll).endswith(
        f"; together with the rounded axis to the wheel face that makes the lip relief angle {together:.2f} deg in place of 12.00 deg"
    )


def test_a_swivel_on_a_rest_tells_the_edge_that_its_rounding_makes() -> None:
    # Derived: at 40 degrees, turned down 10.549 by the rest, the edge has tan 40 / cos 10.549: 40.48, a cone of 80.96.
    cup = worked(
        "setting-height",
        surface="cone",
        included_angle=math.radians(82),
        relief_angle=math.radians(8),
        wheel_shape="type-6-straight-cup",
        diameter=25.4,
    )
    (line,) = graduation_lines(_by_degrees("axis_to_wheel_angle"), cup)
    assert line.made is not None
    set_to = math.tan(line.setting.set_value)
    found = line.made.found / 2
    # The relief is kept square to the edge as it comes, so that the turn follows it.
    turned = math.atan(math.tan(math.radians(8)) / math.cos(found))
    assert math.tan(found) == pytest.approx(set_to / math.cos(turned))
    assert "makes the included angle" in cost_said(line)


@pytest.mark.parametrize("edge", ["half_included_angle", "bevel_angle", "chamfer_angle"])
def test_a_swivel_written_down_for_an_edge_sets_that_of_a_tooth_on_its_rest_too(edge: str) -> None:
    found = _by_degrees(edge).setting_graduation("axis_to_wheel_angle")
    assert found is not None
    assert found.title == "table"
    assert _by_degrees("swivel_angle").setting_graduation("axis_to_wheel_angle") is None
    # What names it itself goes before.
    other = Graduation("axis", "axis", Measure("1 deg", 1.0), Kind.ANGLE, sets=("axis_to_wheel_angle",))
    both = Machine("m", "M", graduations={**_by_degrees(edge).graduations, "axis": other})
    assert both.setting_graduation("axis_to_wheel_angle") == other
