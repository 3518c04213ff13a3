"""What the cams of a machine can do. Expected numbers by hand; derived."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from dataclasses import replace
from typing import Any

from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from geometry.calculation import Check, Given
from geometry.calculations import calculation
from geometry.evaluate import run
from library.equipment.cam_limits import cam_checks
from library.equipment.driving import Worked
from library.equipment.model import Machine
from library.units.show import say

FIXTURES = settings(suppress_health_check=[HealthCheck.function_scoped_fixture])


def worked(name: str, **values: Given) -> Worked:
    sheet = calculation(name)
    return Worked(sheet, dict(values), dict(run(sheet, values).outputs))


def eccentric(relief: float, diameter: float, **more: Given) -> Worked:
    return worked("relief-drop", diameter=diameter, relief_angle=relief, land_width=1.0,
                  relief_form="eccentric", **more)  # fmt: skip


def only(checks: tuple[Check, ...]) -> tuple[str, str]:
    (check,) = checks
    return check.state, say(check.sentence)


def test_a_fixed_cam_that_gives_another_relief_is_no_pass(machine: Machine) -> None:
    # pi 10 tan 8 / 4 is 1.1038 mm from tooth to tooth; the cam of 1.2 mm above it gives atan(4.8 / (10 pi)) = 8.6873.
    state, text = only(cam_checks(machine, eccentric(math.radians(8), 10.0), 4))
    assert (state, text) == (
        "watch",
        "The throw has to be 1.104 mm from tooth to tooth: the nearest cam above the need, 1.2 mm, gives 8.69 deg, not the 8.00 deg wanted.",
    )
    # With five flutes it is 0.8830 mm, and the smaller cam is the nearest.
    assert (
        "the nearest cam above the need, 0.04 in,"
        in only(cam_checks(machine, eccentric(math.radians(8), 10.0), 5))[1]
    )


def test_a_fixed_cam_that_gives_the_wanted_relief_within_a_quarter_of_a_degree_passes(
    machine: Machine,
) -> None:
    # atan(1.2 * 4 / (pi 10)) is 8.6873 degrees.
    assert only(cam_checks(machine, eccentric(math.radians(8.5), 10.0), 4))[0] == "pass"
    assert only(cam_checks(machine, eccentric(math.radians(8.4), 10.0), 4))[0] == "watch"


def test_an_adjustable_cam_is_set_to_the_throw_that_is_needed(
    machine: Machine, reading: Callable[[str], Any]
) -> None:
    only_set = reading(
        '[[machine]]\nid = "a"\ntitle = "A"\ncam_throw_range = { low = "0.5 mm", high = "1.3 mm" }\n'
    ).machine
    assert only_set.has_cams
    # 1.1038 mm is within it; 12 mm at 8 degrees asks for 1.3246 mm, and 3 mm for 0.3312 mm.
    state, text = only(cam_checks(only_set, eccentric(math.radians(8), 10.0), 4))
    assert state == "pass"
    assert "the adjustable cam is set to that" in text
    state, text = only(cam_checks(only_set, eccentric(math.radians(8), 12.0), 4))
    assert state == "stop"
    # atan(1.3 * 4 / (pi 12)) is 7.8535 degrees.
    assert "Lower the relief angle to 7.85 deg" in text
    state, text = only(cam_checks(only_set, eccentric(math.radians(8), 3.0), 4))
    assert state == "stop"
    assert "set to 0.5 mm at the least" in text


def test_a_chosen_cam_is_left_to_the_calculation_but_has_to_be_in_the_drawer(machine: Machine) -> None:
    chosen = eccentric(math.radians(8), 10.0, chosen_throw=1.2, throw_per="tooth", flutes=4.0)
    assert cam_checks(machine, chosen, 4) == ()
    state, text = only(
        cam_checks(
            machine, eccentric(math.radians(8), 10.0, chosen_throw=1.1, throw_per="tooth", flutes=4.0), 4
        )
    )
    assert state == "stop"
    assert "There is no cam of 1.100 mm from tooth to tooth" in text
    assert "the nearest has 0.04 in" in text  # 1.016 mm is 0.084 away, 1.2 mm is 0.1


def test_a_lift_that_no_cam_has_stops_and_names_the_relief_that_the_largest_gives(machine: Machine) -> None:
    state, text = only(cam_checks(machine, eccentric(math.radians(8), 12.0), 4))
    assert state == "stop"
    # pi 12 tan 8 / 4 is 1.32459 mm; atan(1.2 * 4 / (pi 12)) is 7.2562 degrees.
    assert "be 1.325 mm" in text
    assert "Lower the relief angle to 7.25 deg" in text
    assert "a cam of 1.33 mm or more" in text


@FIXTURES
@given(st.floats(1, 40), st.floats(2, 60), st.integers(1, 8))
def test_the_relief_that_is_advised_can_be_ground_with_the_largest_cam(
    machine: Machine, relief: float, diameter: float, flutes: int
) -> None:
    found = cam_checks(machine, eccentric(math.radians(relief), diameter), flutes)
    advised = re.search(r"relief angle to ([0-9.]+) deg", say(found[0].sentence)) if found else None
    assume(advised is not None)
    assert advised is not None
    after = cam_checks(machine, eccentric(math.radians(float(advised[1])), diameter), flutes)
    assert {check.state for check in after} <= {"pass", "watch"}


def test_a_cam_counted_per_turn_needs_no_flutes_on_a_machine_that_counts_so(machine: Machine) -> None:
    per_turn = replace(machine, throw_per="turn")
    # pi 12 tan 8 is 5.298 mm in one turn.
    assert "be 5.298 mm in one turn" in only(cam_checks(per_turn, eccentric(math.radians(8), 12.0), None))[1]
    assert only(cam_checks(machine, eccentric(math.radians(8), 12.0), None))[0] == "watch"


def test_a_cam_that_was_typed_is_held_against_the_cams_at_hand(machine: Machine) -> None:
    cone = worked("cone-relief", included_angle=math.radians(90), diameter=(20.0,), throw_per="tooth", flutes=3.0,
                  radial_throw=1.5)  # fmt: skip
    state, text = only(cam_checks(machine, cone, 3))
    assert state == "stop"
    assert "get one of 1.500 mm." in text
    assert cam_checks(replace(machine, cam_throws=()), cone, 3) == ()
