"""What a machine and a wheel cannot do. Expected numbers by hand; derived."""

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
from library.equipment.driving import Worked
from library.equipment.machine_limits import reach_checks, speed_checks
from library.equipment.model import Machine, Wheel
from library.units.show import say

RPM = 2 * math.pi / 60
FIXTURES = settings(suppress_health_check=[HealthCheck.function_scoped_fixture])


def worked(name: str, **values: Given) -> Worked:
    sheet = calculation(name)
    return Worked(sheet, dict(values), dict(run(sheet, values).outputs))


def tilt(relief: float, helix: float) -> Worked:
    return worked("wheel-tilt", relief_angle=relief, helix_angle=helix, land_width=2.0,
                  land_measured_as="arc", diameter=12.0)  # fmt: skip


def only(checks: tuple[Check, ...]) -> tuple[str, str]:
    (check,) = checks
    return check.state, say(check.sentence)


def test_a_tilt_within_the_heads_range_is_not_mentioned(machine: Machine) -> None:
    assert reach_checks(machine, tilt(math.radians(8), math.radians(30))) == ()


def test_a_tilt_beyond_the_head_stops_and_names_the_relief_that_it_allows(machine: Machine) -> None:
    state, text = only(reach_checks(machine, tilt(math.radians(20), math.radians(45))))
    assert state == "stop"
    # With a helix of 45 degrees the tilt is the relief itself.
    assert text == (
        "Wheel tilt of 20.00 deg: the wheel head goes only to 15.00 deg. "
        "Lower the relief angle to 15.00 deg, or use another machine."
    )


@FIXTURES
@given(st.floats(5, 40), st.floats(20, 60))
def test_the_relief_that_is_advised_is_within_the_tilt(machine: Machine, relief: float, helix: float) -> None:
    found = reach_checks(machine, tilt(math.radians(relief), math.radians(helix)))
    assume(found)
    advised = re.search(r"relief angle to ([0-9.]+) deg", say(found[0].sentence))
    assert advised is not None
    # Rounded to the safe side, so it is just inside and no more than a hundredth of a degree too little.
    after = math.atan(math.tan(math.radians(float(advised[1]))) * math.tan(math.radians(helix)))
    assert after <= math.radians(15) + 1e-9
    more = math.atan(math.tan(math.radians(float(advised[1]) + 0.0101)) * math.tan(math.radians(helix)))
    assert more > math.radians(15)
    assert reach_checks(machine, tilt(math.radians(float(advised[1])), math.radians(helix))) == ()


def test_a_height_beyond_the_travel_of_its_slide_stops(machine: Machine) -> None:
    found = worked(
        "setting-height", relief_angle=math.radians(10), wheel_shape="type-1-straight", wheel_diameter=250.0
    )
    state, text = only(reach_checks(machine, found))
    assert state == "stop"
    # 125 sin 10 degrees is 21.706 mm; asin(20 / 125) is 9.2069 degrees.
    assert "Wheel head height of 21.706 mm: the wheel head goes only to 20.000 mm." in text
    assert "Lower the relief angle to 9.20 deg" in text


def test_a_chosen_speed_over_the_rating_stops_and_names_the_machines_slower_one(
    machine: Machine, wheel: Wheel
) -> None:
    # 20 m/s on 100 mm is 3819.7 turns in a minute.
    state, text = only(speed_checks(machine, wheel, 4200 * RPM))
    assert state == "stop"
    assert "must not run at 4200 rpm" in text
    assert "allows 3819 rpm" in text
    assert "Change to 2800 rpm." in text
    assert only(speed_checks(machine, wheel, 2800 * RPM))[0] == "pass"


def test_without_a_chosen_speed_the_allowed_ones_are_told(machine: Machine, wheel: Wheel) -> None:
    state, text = only(speed_checks(machine, wheel))
    assert state == "watch"
    assert "at 2800 rpm or slower" in text
    assert "must not run at 4200 rpm" in text


def test_a_wheel_that_no_speed_of_the_machine_suits_stops(
    machine: Machine, reading: Callable[[str], Any]
) -> None:
    wheel = reading(
        '[[wheel]]\nid = "a"\ntitle = "Old wheel"\ndiameter = "200 mm"\nrated_speed = "20 m/s"\n'
    ).wheel
    state, text = only(speed_checks(machine, wheel))
    assert state == "stop"
    # 20 m/s on 200 mm is 1909.9 rpm; 2800 rpm on 200 mm is 29.32 m/s, rounded up.
    assert "allows 1909 rpm" in text
    assert "rated for 29.33 m/s or more" in text


def test_a_wheel_at_exactly_its_rating_may_run(machine: Machine, reading: Callable[[str], Any]) -> None:
    wheel = reading('[[wheel]]\nid = "a"\ntitle = "A"\nrated_speed = "2800 rpm"\n').wheel
    assert only(speed_checks(machine, wheel, 2800 * RPM))[0] == "pass"
    assert only(speed_checks(machine, wheel, 2801 * RPM))[0] == "stop"


def test_a_wheel_without_a_rating_is_never_passed(machine: Machine, wheel: Wheel) -> None:
    state, text = only(speed_checks(machine, replace(wheel, rated_speed=None), 10 * RPM))
    assert state == "watch"
    assert "no rating" in text
    assert only(speed_checks(machine, replace(wheel, diameter=None), 10 * RPM))[0] == "watch"


def test_a_worn_wheel_is_held_to_the_turns_of_the_new_one(
    machine: Machine, reading: Callable[[str], Any]
) -> None:
    # By hand: 20 m/s on 100 mm is 3819.7 turns in a minute, on 90 mm 4244.1, which would let it run at 4200.
    text = '[[wheel]]\nid = "a"\ntitle = "A"\ndiameter = "90 mm"\nrated_speed = "20 m/s"\n'
    worn = reading(text + 'new_diameter = "100 mm"\n').wheel
    state, told = only(speed_checks(machine, worn, 4200 * RPM))
    assert state == "stop"
    assert "its rating allows 3819 rpm" in told
    assert only(speed_checks(machine, worn))[1].endswith("as its rating allows 3819 rpm.")
    assert only(speed_checks(machine, reading(text).wheel))[1].endswith(
        "its rating allows 4244 rpm. Never turn it faster than the turns marked on it."
    )
