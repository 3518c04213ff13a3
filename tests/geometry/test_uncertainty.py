"""The plus or minus of an answer, against sampling and against slopes worked out by hand."""

from __future__ import annotations

import math
import random
from collections.abc import Mapping

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Calculation, Field, Given, Inputs, Result
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run
from geometry.uncertainty import spread


def sampled(
    sheet: Calculation, values: Mapping[str, Given], half_widths: Mapping[str, float], output: str, count: int
) -> float:
    """The standard deviation of an output, in units of one half width per input, from normal errors."""
    source = random.Random(20_240_607)
    found = []
    for _ in range(count):
        moved: dict[str, Given] = dict(values)
        for key, half_width in half_widths.items():
            value = values[key]
            assert not isinstance(value, str)
            if isinstance(value, tuple):
                moved[key] = tuple(one + source.gauss(0.0, half_width) for one in value)
            else:
                moved[key] = value + source.gauss(0.0, half_width)
        found.append(run(sheet, moved).outputs[output])
    mean = math.fsum(found) / len(found)
    return math.sqrt(math.fsum((one - mean) ** 2 for one in found) / (len(found) - 1))


CASES = [
    (
        "relief-drop",
        {"diameter": 12.0, "relief_angle": math.radians(8), "land_width": 2.0, "relief_form": "flat"},
        {"diameter": 0.02, "relief_angle": math.radians(0.1), "land_width": 0.02},
        "heel_drop",
    ),
    (
        "lead-over-land",
        {"diameter": 12.0, "pitch": 1.75, "land_width": 3.2},
        {"diameter": 0.05, "land_width": 0.05},
        "lead_over_land",
    ),
    (
        "face-offset",
        {"diameter": 10.0, "rake_angle": math.radians(15)},
        {"diameter": 0.05, "rake_angle": math.radians(0.5)},
        "face_offset",
    ),
    (
        "screw-thread",
        {"diameter": 10.0, "pitch": 1.5, "drilled_diameter": 8.6},
        {"drilled_diameter": 0.03, "diameter": 0.02},
        "thread_percent",
    ),
    (
        "tap-chamfer",
        {"diameter": 10.0, "pitch": 1.5, "chamfer_length": 6.0, "point_diameter": 8.2},
        {"diameter": 0.02, "chamfer_length": 0.1, "point_diameter": 0.05},
        "chamfer_angle",
    ),
]


@pytest.mark.parametrize(("name", "values", "half_widths", "output"), CASES, ids=[case[0] for case in CASES])
@pytest.mark.parametrize(
    ("count", "part"), [(1_500, 0.07), pytest.param(20_000, 0.03, marks=pytest.mark.depth)]
)
def test_agrees_with_many_samples(
    name: str, values: dict[str, Given], half_widths: dict[str, float], output: str, count: int, part: float
) -> None:
    sheet = calculation(name)
    found = spread(sheet, values, half_widths)[output]
    # The standard deviation of 20,000 normal samples is itself good to about half a percent, of 5,000 to one.
    assert found.half_width == pytest.approx(sampled(sheet, values, half_widths, output, count), rel=part)
    assert found.straight


@given(st.floats(1.0, 50.0), st.floats(0.05, 0.3), st.floats(0.0, 0.05), st.floats(0.0, 0.01))
def test_agrees_with_slopes_worked_out_by_hand(
    diameter: float, relief: float, of_diameter: float, of_relief: float
) -> None:
    # setting-height with a cup wheel: h = D/2 sin a, so dh/dD = sin(a)/2 and dh/da = D/2 cos a.
    values: dict[str, Given] = {
        "diameter": diameter,
        "relief_angle": relief,
        "wheel_shape": "type-6-straight-cup",
    }
    found = spread(
        calculation("setting-height"), values, {"diameter": of_diameter, "relief_angle": of_relief}
    )["tooth_rest_height"]
    parts = (math.sin(relief) / 2 * of_diameter, diameter / 2 * math.cos(relief) * of_relief)
    assert found.half_width == pytest.approx(math.hypot(*parts), rel=1e-6, abs=1e-12)
    if found.half_width > 0:
        assert found.shares["relief_angle"] == pytest.approx((parts[1] / found.half_width) ** 2, abs=1e-6)


@given(st.lists(st.floats(0.0, 0.2), min_size=3, max_size=3))
def test_shares_add_up_and_the_dominant_one_is_the_greatest(widths: list[float]) -> None:
    values = {"diameter": 12.0, "relief_angle": 0.14, "land_width": 2.0}
    half_widths = dict(zip(("diameter", "relief_angle", "land_width"), widths, strict=True))
    half_widths["relief_angle"] /= 10
    for found in spread(calculation("relief-drop"), values, half_widths).values():
        if found.half_width == 0:
            assert found.dominant == ""
            continue
        assert math.fsum(found.shares.values()) == pytest.approx(1.0)
        assert found.shares[found.dominant] == max(found.shares.values())


def formula(compute: object) -> Calculation:
    """A calculation made up for one formula of the diameter and of several other diameters."""
    assert callable(compute)

    def answer(given: Inputs) -> Result:
        outputs: Mapping[str, float] = compute(given)
        return Result(outputs)

    return Calculation(
        name="made-up",
        title="Made up",
        question="What?",
        wants="Anything.",
        neglects="Nothing.",
        kinds=("tap",),
        inputs=(
            Field("diameter"),
            Field("rake_angle", optional=True),
            Field("other_diameter", many=True, optional=True),
        ),
        outputs=("drop",),
        cautions=("eyes",),
        compute=answer,
    )


def test_a_curve_that_bends_over_the_plus_or_minus_is_not_called_straight() -> None:
    bent = formula(lambda given: {"drop": given.number("diameter") ** 3})
    assert spread(bent, {"diameter": 10.0}, {"diameter": 0.1})["drop"].straight
    far = spread(bent, {"diameter": 10.0}, {"diameter": 2.0})["drop"]
    assert not far.straight
    assert far.half_width == pytest.approx(3 * 10.0**2 * 2.0, rel=1e-6)


def test_a_turning_point_has_no_slope_and_is_not_called_straight() -> None:
    valley = formula(lambda given: {"drop": (given.number("diameter") - 10.0) ** 2})
    found = spread(valley, {"diameter": 10.0}, {"diameter": 0.5})["drop"]
    assert found.half_width == pytest.approx(0.0, abs=1e-6)
    assert not found.straight


def test_a_product_of_two_zeros_is_not_called_straight() -> None:
    saddle = formula(lambda given: {"drop": (given.number("diameter") - 10.0) * given.number("rake_angle")})
    found = spread(saddle, {"diameter": 10.0, "rake_angle": 0.0}, {"diameter": 0.5, "rake_angle": 0.1})[
        "drop"
    ]
    assert found.half_width == 0.0
    assert not found.straight


def test_several_values_of_one_input_are_each_out_on_their_own() -> None:
    total = formula(lambda given: {"drop": math.fsum(given.numbers("other_diameter"))})
    values: dict[str, Given] = {"diameter": 10.0, "other_diameter": (1.0, 2.0, 3.0, 4.0)}
    found = spread(total, values, {"other_diameter": 0.1})["drop"]
    assert found.half_width == pytest.approx(0.2, rel=1e-9)
    assert found.shares == {"other_diameter": pytest.approx(1.0)}


def test_at_the_edge_of_what_can_exist_the_slope_is_taken_from_the_side_that_does() -> None:
    values = {"diameter": 12.0, "relief_angle": 0.0, "land_width": 2.0}
    found = spread(calculation("relief-drop"), values, {"relief_angle": 0.01})["heel_drop"]
    # Derived: the drop is w tan(a), so its slope at no relief is the land itself.
    assert found.half_width == pytest.approx(2.0 * 0.01, rel=1e-5)
    assert not found.straight


def test_an_output_that_comes_only_on_one_side_is_taken_from_that_side() -> None:
    sheet = formula(
        lambda given: {"drop": given.number("diameter")} if given.number("diameter") <= 10.0 else {}
    )
    found = spread(sheet, {"diameter": 10.0}, {"diameter": 0.1})["drop"]
    assert found.half_width == pytest.approx(0.1, rel=1e-6)
    assert not found.straight


def test_where_no_neighbour_exists_nothing_is_claimed() -> None:
    alone = formula(lambda given: {"drop": 1.0} if given.number("diameter") == 10.0 else {})
    found = spread(alone, {"diameter": 10.0}, {"diameter": 0.1})["drop"]
    assert (found.half_width, found.dominant, found.straight) == (0.0, "", False)


def test_a_counted_answer_says_by_how_many_it_may_be_out() -> None:
    values = {
        "diameter": 12.0,
        "stock_per_sharpening": 0.2,
        "relief_angle": math.radians(4),
        "land_width": 3.05,
        "least_land": 1.0,
    }
    sheet = calculation("size-loss")
    found = spread(sheet, values, {"land_width": 0.5})["sharpenings_left"]
    counts = [
        run(sheet, values | {"land_width": 3.05 + by}).outputs["sharpenings_left"] for by in (-0.5, 0.0, 0.5)
    ]
    assert found.half_width == max(counts[1] - counts[0], counts[2] - counts[1])
    assert found.half_width >= 2
    assert not found.straight


def test_an_input_that_does_not_matter_has_no_share() -> None:
    values = {"diameter": 12.0, "pitch": 1.75, "land_width": 3.2}
    found = spread(calculation("lead-over-land"), values, {"land_width": 0.1, "diameter": 0.1})["lead"]
    assert (found.half_width, found.dominant, found.straight) == (0.0, "", True)
    assert found.shares == {"land_width": 0.0, "diameter": 0.0}


def test_no_plus_or_minus_gives_none() -> None:
    values = {"diameter": 12.0, "relief_angle": 0.14, "land_width": 2.0}
    for found in spread(calculation("relief-drop"), values, {}).values():
        assert (found.half_width, found.shares, found.straight) == (0.0, {}, True)
    for found in spread(calculation("relief-drop"), values, {"land_width": 0.0}).values():
        assert found.half_width == 0.0


@pytest.mark.parametrize(
    ("half_widths", "says"),
    [
        ({"land_width": -0.1}, "0 or more"),
        ({"land_width": math.inf}, "0 or more"),
        ({"relief_form": 0.1}, "counted or chosen"),
        ({"helix_angle": 0.1}, "before its plus or minus"),
    ],
)
def test_a_plus_or_minus_that_makes_no_sense_is_refused(half_widths: dict[str, float], says: str) -> None:
    values = {"diameter": 12.0, "relief_angle": 0.14, "land_width": 2.0}
    with pytest.raises(Refusal, match=says) as refused:
        spread(calculation("relief-drop"), values, half_widths)
    assert [problem.key for problem in refused.value.problems] == list(half_widths)


def test_counts_have_no_plus_or_minus() -> None:
    values = {"diameter": 12.0, "pitch": 1.75, "land_width": 3.2}
    with pytest.raises(Refusal, match="counted or chosen"):
        spread(calculation("lead-over-land"), values, {"starts": 1.0})


def test_a_calculation_that_cannot_answer_refuses_here_too() -> None:
    with pytest.raises(Refusal):
        spread(calculation("relief-drop"), {"diameter": 12.0}, {"diameter": 0.1})
