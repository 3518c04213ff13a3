"""The wheel-tilt calculation: forward and back, the wheel wide enough, and what the indicator shows."""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from geometry.calculation import Check, Given
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run
from geometry.sentences import Amount

SHEET = calculation("wheel-tilt")
HELICES = st.floats(math.radians(2), math.radians(60))


def amount(check: Check, name: str) -> float:
    part = check.sentence.parts[name]
    assert isinstance(part, Amount)
    return part.value


def test_the_check_value() -> None:
    # Relief 8, helix 30: tilt 4.6389 degrees. Derived.
    found = run(SHEET, {"relief_angle": math.radians(8), "helix_angle": math.radians(30)})
    assert math.degrees(found.outputs["wheel_tilt"]) == pytest.approx(4.6389, abs=5e-5)
    assert found.stations == ()


@given(st.floats(0.01, 0.7), HELICES)
def test_a_tilt_found_for_a_relief_gives_that_relief(relief: float, helix: float) -> None:
    tilt = run(SHEET, {"relief_angle": relief, "helix_angle": helix}).outputs["wheel_tilt"]
    back = run(SHEET, {"wheel_tilt": tilt, "helix_angle": helix}).outputs
    assert back["relief_angle"] == pytest.approx(relief, rel=1e-9)


@given(
    st.floats(0.01, 0.4), HELICES, st.floats(3, 60), st.floats(0.02, 0.5), st.sampled_from(["arc", "chord"])
)
def test_the_indicator_shows_an_even_fall_over_the_land(
    relief: float, helix: float, diameter: float, share: float, measured_as: str
) -> None:
    land = share * diameter
    result = run(
        SHEET,
        {
            "relief_angle": relief,
            "helix_angle": helix,
            "diameter": diameter,
            "land_width": land,
            "land_measured_as": measured_as,
        },
    )
    turned = 2 * share if measured_as == "arc" else 2 * math.asin(share)
    for station in result.stations:
        arc = station.fraction * turned * diameter / 2
        assert station.readings["drop"] == pytest.approx(arc * math.tan(relief), rel=1e-9, abs=1e-15)
        assert station.readings["contact_length"] == pytest.approx(arc / math.tan(helix), rel=1e-9, abs=1e-15)


@given(
    st.floats(0.01, 0.4),
    HELICES,
    st.floats(3, 40),
    st.floats(0.05, 0.5),
    st.floats(0.1, 0.95),
    st.sampled_from(["arc", "chord"]),
)
def test_a_wheel_too_narrow_is_fixed_by_its_width_or_by_the_land(
    relief: float, helix: float, diameter: float, share: float, part: float, measured_as: str
) -> None:
    values: dict[str, Given] = {
        "relief_angle": relief,
        "helix_angle": helix,
        "diameter": diameter,
        "land_width": share * diameter,
        "land_measured_as": measured_as,
    }
    contact = run(SHEET, values).outputs["contact_length"]
    assume(part * contact >= 0.01 and contact <= 190)
    narrow = {**values, "wheel_width": part * contact}
    check = run(SHEET, narrow).checks[-1]
    assert check.state == "stop"
    wider = run(SHEET, {**narrow, "wheel_width": amount(check, "wanted") * (1 + 1e-9)})
    less_land = run(SHEET, {**narrow, "land_width": amount(check, "land") * (1 - 1e-9)})
    assert all(one.state in ("pass", "note") for one in (*wider.checks, *less_land.checks))


def test_the_wheel_falls_over_its_width_by_the_tilt() -> None:
    found = run(SHEET, {"wheel_tilt": math.radians(45), "helix_angle": math.radians(45), "wheel_width": 10.0})
    assert found.outputs["tilt_fall"] == pytest.approx(10.0, rel=1e-12)


def test_no_relief_is_a_stop_and_any_tilt_above_it_none() -> None:
    (check,) = run(SHEET, {"relief_angle": 0.0, "helix_angle": 0.5}).checks
    assert check.state == "stop"
    (better,) = run(SHEET, {"wheel_tilt": amount(check, "zero") + 1e-3, "helix_angle": 0.5}).checks
    assert better.state == "note"


def test_a_straight_flute_is_refused_with_the_other_way_to_do_it() -> None:
    with pytest.raises(Refusal) as refused:
        run(SHEET, {"relief_angle": 0.1, "helix_angle": 0.0})
    assert refused.value.problems[0].key == "helix_angle"
    assert "tooth rest" in str(refused.value)


def test_a_land_without_a_diameter_waits_for_it() -> None:
    with pytest.raises(Refusal) as refused:
        run(SHEET, {"relief_angle": 0.1, "helix_angle": 0.5, "land_width": 2.0})
    assert [(problem.key, problem.missing) for problem in refused.value.problems] == [("diameter", True)]


@pytest.mark.parametrize(("relief", "real"), [(8.0, 8.08), (15.0, 15.54), (20.0, 21.34), (25.0, 27.78)])
def test_a_round_wheel_grinds_steeper_and_the_tilt_that_is_named_mends_it(relief: float, real: float) -> None:
    # Derived, and found again by a search of the least distance: diameter 12, wheel 150, helix 30 degrees.
    tool: dict[str, Given] = {"helix_angle": math.radians(30), "diameter": 12.0, "wheel_diameter": 150.0}
    found = run(SHEET, {**tool, "relief_angle": math.radians(relief)})
    assert math.degrees(found.outputs["round_wheel_relief"]) == pytest.approx(real, abs=5e-3)
    check = found.checks[1]
    assert check.state == ("watch" if real - relief > 0.25 else "pass")
    if check.state == "watch":
        again = run(SHEET, {**tool, "wheel_tilt": amount(check, "lean")})
        assert math.degrees(again.outputs["round_wheel_relief"]) == pytest.approx(relief, abs=1e-9)
        assert [one.state for one in again.checks] == ["note", "note"]


def test_a_wheel_as_wide_as_the_land_on_a_helix_of_half_a_right_angle_reaches_the_heel() -> None:
    values: dict[str, Given] = {"relief_angle": 0.14, "helix_angle": math.radians(45), "diameter": 12.0}
    checks = run(SHEET, {**values, "land_width": 2.0, "wheel_width": 2.0}).checks
    assert checks[-1].state == "pass"
    assert run(SHEET, {**values, "land_width": 2.0, "wheel_width": 1.99}).checks[-1].state == "stop"


def test_a_round_wheel_without_the_diameter_of_the_tool_waits_for_it() -> None:
    with pytest.raises(Refusal) as refused:
        run(SHEET, {"relief_angle": 0.1, "helix_angle": 0.5, "wheel_diameter": 150.0})
    assert [(problem.key, problem.missing) for problem in refused.value.problems] == [("diameter", True)]


def test_a_wheel_that_touches_beside_the_tool_is_refused() -> None:
    with pytest.raises(Refusal, match="beside the tool"):
        run(
            SHEET,
            {
                "wheel_tilt": math.radians(60),
                "helix_angle": math.radians(30),
                "diameter": 12.0,
                "wheel_diameter": 150.0,
            },
        )
