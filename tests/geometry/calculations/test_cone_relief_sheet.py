"""The cone-relief calculation: what it answers, and that its advice fixes what it complains of."""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from geometry.calculation import Check, Given, Result
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run
from geometry.sentences import Amount
from geometry.slips import Slip

SHEET = calculation("cone-relief")
TURN = 2 * math.pi
INCLUDED = st.floats(math.radians(20), math.radians(175))
A_LITTLE = 1e-9


def amount(check: Check, name: str) -> float:
    part = check.sentence.parts[name]
    assert isinstance(part, Amount)
    return part.value


def complaint(result: Result) -> Check | None:
    return next(
        (
            check
            for check in result.checks
            if check.state in {"watch", "stop"} and not isinstance(check, Slip)
        ),
        None,
    )


def test_the_check_value_given_per_turn() -> None:
    # 0.3 and 0.4 mm for each radian on a cone of 82 degrees, 10 mm from the axis: 2.7986 degrees. Derived.
    result = run(
        SHEET,
        {
            "included_angle": math.radians(82),
            "radial_throw": 0.3 * TURN,
            "axial_throw": 0.4 * TURN,
            "diameter": (6.0, 20.0),
        },
    )
    assert math.degrees(result.outputs["relief_angle"]) == pytest.approx(2.7986, abs=5e-5)
    assert [row.values["diameter"] for row in result.rows] == [20.0, 6.0]
    assert result.rows[-1].values["relief_angle"] == result.outputs["greatest_relief_angle"]
    assert "largest diameter" in str(result.checks[0].sentence)


def test_a_throw_per_tooth_asks_for_the_teeth_and_counts_them() -> None:
    values: dict[str, Given] = {
        "included_angle": 1.4,
        "radial_throw": 0.9,
        "diameter": 20.0,
        "throw_per": "tooth",
    }
    with pytest.raises(Refusal) as refused:
        run(SHEET, values)
    assert [problem.key for problem in refused.value.problems] == ["flutes"]
    per_tooth = run(SHEET, {**values, "flutes": 3.0}).outputs
    per_turn = run(SHEET, {**values, "radial_throw": 2.7, "throw_per": "turn"}).outputs
    assert per_tooth["relief_angle"] == pytest.approx(per_turn["relief_angle"], rel=1e-12)


@given(INCLUDED, st.floats(2, 60), st.floats(0.01, 0.5))
def test_each_cam_alone_gives_the_relief_it_was_asked_for(
    included: float, diameter: float, wanted: float
) -> None:
    values: dict[str, Given] = {"included_angle": included, "diameter": (diameter, diameter / 3)}
    asked = run(SHEET, {**values, "relief_angle": wanted}).outputs
    for name in ("radial", "axial"):
        found = run(SHEET, {**values, f"{name}_throw": asked[f"needed_{name}_throw"]}).outputs
        assert found["relief_angle"] == pytest.approx(wanted, rel=1e-9)
        assert found["greatest_relief_angle"] == pytest.approx(asked["greatest_relief_angle"], rel=1e-9)


@given(INCLUDED, st.floats(2, 60), st.floats(0.05, 0.5), st.floats(0, 1))
def test_a_mix_of_both_cams_gives_the_relief_too(
    included: float, diameter: float, wanted: float, share: float
) -> None:
    values: dict[str, Given] = {"included_angle": included, "diameter": diameter}
    alone = run(SHEET, {**values, "relief_angle": wanted}).outputs
    assume("needed_radial_throw" in alone)
    radial = share * alone["needed_radial_throw"]
    mixed = run(SHEET, {**values, "relief_angle": wanted, "radial_throw": radial})
    again = run(
        SHEET, {**values, "radial_throw": radial, "axial_throw": mixed.outputs["needed_axial_throw"]}
    ).outputs
    assert again["relief_angle"] == pytest.approx(wanted, rel=1e-9)


@given(INCLUDED, st.floats(2, 60), st.floats(0.05, 0.5), st.floats(0.01, 0.9))
def test_too_little_relief_is_fixed_by_either_cam_as_advised(
    included: float, diameter: float, wanted: float, share: float
) -> None:
    values: dict[str, Given] = {"included_angle": included, "diameter": diameter, "relief_angle": wanted}
    alone = run(SHEET, values).outputs
    assume("needed_radial_throw" in alone)
    radial = share * alone["needed_radial_throw"]
    short = {**values, "radial_throw": radial, "axial_throw": 0.0}
    check = complaint(run(SHEET, short))
    assert check is not None
    assert check.state == "watch"
    for name in ("radial", "axial"):
        fixed = run(SHEET, {**short, f"{name}_throw": amount(check, name) + A_LITTLE})
        assert complaint(fixed) is None


@given(st.floats(0, math.pi), st.floats(2, 60), st.floats(-5, 5), st.floats(-5, 5))
def test_a_land_that_does_not_fall_is_fixed_by_each_cam_that_is_named(
    included: float, diameter: float, radial: float, axial: float
) -> None:
    values: dict[str, Given] = {
        "included_angle": included,
        "diameter": diameter,
        "radial_throw": radial,
        "axial_throw": axial,
    }
    result = run(SHEET, values)
    check = complaint(result)
    assert (check is not None) is (result.outputs["square_throw"] <= 0)
    assume(check is not None)
    assert check is not None
    assert check.state == "stop"
    named = {"radial", "axial"} & set(check.sentence.parts)
    assert named
    for name in named:
        fixed = run(SHEET, {**values, f"{name}_throw": amount(check, name) + 1e-6})
        assert fixed.outputs["square_throw"] >= 0
        assert complaint(fixed) is None or fixed.outputs["square_throw"] < 1e-12


@pytest.mark.parametrize(
    ("included", "useless", "useful"), [(math.pi, "radial", "axial"), (0.0, "axial", "radial")]
)
def test_a_face_and_a_cylinder_each_have_a_cam_that_does_nothing(
    included: float, useless: str, useful: str
) -> None:
    values: dict[str, Given] = {"included_angle": included, "diameter": 20.0}
    nothing = run(SHEET, {**values, f"{useless}_throw": 3.0})
    assert nothing.outputs["relief_angle"] == 0
    assert any(f"only the {useful} throw counts" in str(check.sentence) for check in nothing.checks)
    check = complaint(nothing)
    assert check is not None
    assert useful in check.sentence.parts
    assert useless not in check.sentence.parts
    wanted = run(SHEET, {**values, "relief_angle": 0.1}).outputs
    assert f"needed_{useless}_throw" not in wanted
    assert wanted[f"needed_{useful}_throw"] == pytest.approx(TURN * 10 * math.tan(0.1), rel=1e-12)


def test_where_no_single_cam_reaches_far_enough_both_together_do() -> None:
    values: dict[str, Given] = {
        "included_angle": math.pi / 2,
        "diameter": 500.0,
        "relief_angle": math.radians(45),
    }
    asked = run(SHEET, values)
    says = asked.checks[-1]
    both = {f"{name}_throw": amount(says, name) for name in ("radial", "axial")}
    assert "needed_radial_throw" not in asked.outputs
    assert all(cam <= 2000 for cam in both.values())
    assert run(SHEET, {**values, **both}).outputs["relief_angle"] == pytest.approx(math.radians(45), rel=1e-9)


def test_with_neither_cam_nor_relief_it_waits_for_one_of_them() -> None:
    with pytest.raises(Refusal) as refused:
        run(SHEET, {"included_angle": 1.4, "diameter": 20.0})
    assert [problem.missing for problem in refused.value.problems] == [True]


@given(INCLUDED, st.floats(5, 60), st.floats(0.1, 5), st.floats(0.1, 5), st.floats(0, 1))
def test_the_indicator_square_to_the_cone_and_along_the_axis_show_what_the_cams_do(
    included: float, diameter: float, radial: float, axial: float, share: float
) -> None:
    land = share * diameter
    result = run(
        SHEET,
        {
            "included_angle": included,
            "diameter": diameter,
            "radial_throw": radial,
            "axial_throw": axial,
            "land_width": land,
        },
    )
    turned = 2 * land / diameter
    assert result.outputs["land_angle"] == pytest.approx(turned, rel=1e-12)
    for station in result.stations:
        part = station.angle / TURN
        # Along the axis the indicator stays on one diameter, so the cone comes to meet the radial throw.
        along = part * (axial + radial / math.tan(included / 2))
        assert station.readings["axial_drop"] == pytest.approx(along, rel=1e-9, abs=1e-15)
        square = along * math.sin(included / 2)
        assert station.readings["square_drop"] == pytest.approx(square, rel=1e-9, abs=1e-15)


def test_a_land_of_no_width_has_nothing_to_draw_and_reads_nothing() -> None:
    values: dict[str, Given] = {
        "included_angle": 1.4,
        "diameter": 20.0,
        "radial_throw": 2.0,
        "land_width": 0.0,
    }
    result = run(SHEET, values)
    assert result.figure is None
    assert all(station.readings["square_drop"] == 0 for station in result.stations)


def test_the_figure_is_the_section_square_to_the_axis() -> None:
    values: dict[str, Given] = {
        "included_angle": 1.4,
        "diameter": 20.0,
        "radial_throw": 2.0,
        "land_width": 3.0,
    }
    figure = run(SHEET, values).figure
    assert figure is not None
    # In that section an axial throw would count too; a purely radial one falls by itself.
    assert figure.curves[0].points[-1] == pytest.approx((0.3, 2.0 * 0.3 / TURN), rel=1e-12)


@pytest.mark.parametrize(
    ("cone_of", "said"),
    [
        (90.0, "In a mix both throws count alike: added up they make that length."),
        # tan 41 is 0.8693. Derived.
        (82.0, "In a mix an axial throw does as much as a radial one {times} times as long."),
    ],
)
def test_a_mix_of_throws_is_told_in_plain_words_and_that_the_numbers_are_rounded(
    cone_of: float, said: str
) -> None:
    inputs: dict[str, Given] = {
        "diameter": (20.0,),
        "included_angle": math.radians(cone_of),
        "relief_angle": math.radians(8),
    }
    found = run(calculation("cone-relief"), inputs)
    (told,) = [one.sentence for one in found.checks if "In a mix" in one.sentence.template]
    assert told.template.endswith(said)
    assert ", rounded up to what can be set." in told.template
    if "times" in told.parts:
        times = told.parts["times"]
        assert not isinstance(times, str)
        assert times.value == pytest.approx(math.tan(math.radians(cone_of / 2)))


@pytest.mark.parametrize(
    ("radial", "axial", "keys"),
    [
        # On a cone of 90 degrees both count alike: about 7.9 mm in all, pi times 10 tan 10 sqrt 2. By hand.
        (12.0, 6.0, {"radial_throw"}),
        (6.0, 12.0, {"axial_throw"}),
        (6.0, 6.0, {"radial_throw", "axial_throw"}),
        (12.0, 12.0, {"radial_throw", "axial_throw"}),
    ],
)
def test_no_throw_is_advised_that_would_have_to_move_the_other_way(
    radial: float, axial: float, keys: set[str]
) -> None:
    inputs: dict[str, Given] = {
        "diameter": (10.0,),
        "included_angle": math.radians(90),
        "relief_angle": math.radians(10),
        "radial_throw": radial,
        "axial_throw": axial,
    }
    (told,) = [one for one in run(calculation("cone-relief"), inputs).checks if one.state == "watch"]
    assert all(isinstance(value, float) and value >= 0 for _, value in told.cure)
    assert {key for key, _ in told.cure} == keys
    assert "-" not in str(told.sentence).partition("wanted there.")[2]
