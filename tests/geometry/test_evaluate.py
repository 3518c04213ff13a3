"""Running a calculation: defaults, alternatives, and every problem told at once."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Calculation, Field, Inputs, Result, passed
from geometry.calculations import calculation
from geometry.evaluate import Refusal, asked_for, run, unfit, with_defaults
from geometry.preconditions import NotGiven, refuse
from geometry.quantities import QUANTITIES, Quantity, quantity
from geometry.sentences import Kind, Sentence
from tests.each import each


def seen(given: Inputs) -> Result:
    """A computation that hands back every number it was given."""
    keys = ("diameter", "pitch", "threads_per_inch", "starts", "land_width", "wheel_diameter")
    return Result({key: given.number(key) for key in keys if given.has(key)}, checks=(passed("Seen."),))


SHEET = Calculation(
    name="seen",
    title="Seen",
    question="What was given?",
    wants="Anything.",
    neglects="Everything.",
    kinds=("tap",),
    inputs=(
        Field("diameter"),
        Field("pitch", one_of="pitch", default=1.5),
        Field("threads_per_inch", one_of="pitch"),
        Field("starts", default=1.0),
        Field("land_width", optional=True, many=True),
        Field("wheel_shape", default="type-6-straight-cup"),
        Field("wheel_diameter", when=("wheel_shape", "type-1-straight")),
    ),
    outputs=("diameter", "pitch", "threads_per_inch", "starts", "land_width", "wheel_diameter"),
    cautions=("eyes",),
    compute=seen,
)


def problems(sheet: Calculation, **values: float | tuple[float, ...] | str) -> list[tuple[str, bool]]:
    with pytest.raises(Refusal) as refused:
        run(sheet, values)
    return [(problem.key, problem.missing) for problem in refused.value.problems]


def test_a_value_given_beats_the_default_and_a_default_beats_nothing() -> None:
    assert run(SHEET, {"diameter": 12.0}).outputs == {"diameter": 12.0, "pitch": 1.5, "starts": 1.0}
    assert run(SHEET, {"diameter": 12.0, "starts": 2.0}).outputs["starts"] == 2.0


def test_giving_an_alternative_drops_the_default_of_the_other() -> None:
    outputs = run(SHEET, {"diameter": 12.0, "threads_per_inch": 0.8}).outputs
    assert outputs["threads_per_inch"] == 0.8
    assert "pitch" not in outputs
    assert "pitch" not in with_defaults(SHEET, {"threads_per_inch": 0.8})


def test_two_alternatives_at_once_are_one_too_many() -> None:
    assert problems(SHEET, diameter=12.0, pitch=1.5, threads_per_inch=0.8) == [("threads_per_inch", False)]


def test_neither_of_two_alternatives_is_missing_once() -> None:
    sheet = calculation("wheel-speed")
    assert problems(sheet, wheel_diameter=150.0) == [("rotational_speed", True)]
    with pytest.raises(Refusal, match="Give rotational_speed or surface_speed"):
        run(sheet, {"wheel_diameter": 150.0})


def test_alternatives_that_are_all_optional_may_all_be_left_out() -> None:
    optional = replace(
        SHEET,
        inputs=(
            Field("diameter"),
            Field("pitch", one_of="pitch", optional=True),
            Field("threads_per_inch", one_of="pitch", optional=True),
        ),
    )
    assert run(optional, {"diameter": 12.0}).outputs == {"diameter": 12.0}


def test_an_input_is_asked_for_only_where_its_condition_is_met() -> None:
    assert problems(SHEET, diameter=12.0, wheel_shape="type-1-straight") == [("wheel_diameter", True)]
    keys = [field.key for field in asked_for(SHEET, {"wheel_shape": "type-6-straight-cup"})]
    assert "wheel_diameter" not in keys
    assert "wheel_diameter" in [field.key for field in asked_for(SHEET, {"wheel_shape": "type-1-straight"})]


def test_a_value_that_is_not_asked_for_here_is_not_computed_with() -> None:
    outputs = run(SHEET, {"diameter": 12.0, "wheel_diameter": 150.0}).outputs
    assert "wheel_diameter" not in outputs


def test_every_problem_is_told_at_once() -> None:
    told = problems(SHEET, pitch=-1.0, hand="right", starts=1.5, wheel_shape="type-1-straight")
    assert told == [
        ("hand", False),
        ("diameter", True),
        ("wheel_diameter", True),
        ("pitch", False),
        ("starts", False),
    ]


def test_an_unknown_key_is_answered_with_what_is_taken() -> None:
    with pytest.raises(Refusal) as refused:
        run(SHEET, {"diameter": 12.0, "diametre": 12.0})
    text = str(refused.value.problems[0].sentence)
    assert text.startswith("This calculation does not ask for diametre; it takes diameter, pitch")


def test_several_values_are_taken_only_where_several_are_asked_for() -> None:
    assert run(SHEET, {"diameter": 12.0, "land_width": (1.0, 2.0)}).outputs["land_width"] == 1.0
    assert problems(SHEET, diameter=(12.0, 10.0)) == [("diameter", False)]
    assert problems(SHEET, diameter=12.0, land_width=()) == [("land_width", False)]
    assert problems(SHEET, diameter=()) == [("diameter", False)]
    assert problems(SHEET, diameter=12.0, land_width=(1.0, -1.0)) == [("land_width", False)]


def test_a_list_of_one_is_one_value() -> None:
    assert run(SHEET, {"diameter": (12.0,)}).outputs["diameter"] == 12.0


def test_an_error_of_geometry_becomes_a_refusal_of_the_quantity_to_change() -> None:
    def refusing(_: Inputs) -> Result:
        raise refuse("diameter", "No such tool.")

    def waiting(_: Inputs) -> Result:
        raise NotGiven(Sentence("Give starts too."), "starts")

    assert problems(replace(SHEET, compute=refusing), diameter=12.0) == [("diameter", False)]
    assert problems(replace(SHEET, compute=waiting), diameter=12.0) == [("starts", True)]


def test_the_refusal_reads_as_its_sentences() -> None:
    with pytest.raises(Refusal) as refused:
        run(calculation("relief-drop"), {"diameter": 900.0})
    assert str(refused.value) == (
        "Give relief_angle. Give land_width. diameter is 900 mm; it can be from 0.05 mm to 500 mm."
    )


NUMBERS = [row for row in QUANTITIES.values() if row.kind is not Kind.CHOICE]
WORDS = [row for row in QUANTITIES.values() if row.kind is Kind.CHOICE]


@each("known", NUMBERS, lambda row: row.key)
def test_both_ends_of_a_range_are_in_it_and_what_lies_beyond_is_not(known: Quantity) -> None:
    assert unfit(known, known.low) is None
    below = known.low - max(1.0, abs(known.low)) * (1 if known.whole else 1e-3)
    assert unfit(known, below) is not None
    if math.isfinite(known.high):
        assert unfit(known, known.high) is None
        assert unfit(known, known.high + max(1.0, abs(known.high)) * (1 if known.whole else 1e-3)) is not None


@each("known", WORDS, lambda row: row.key)
def test_a_choice_takes_its_words_and_nothing_else(known: Quantity) -> None:
    assert all(unfit(known, word) is None for word in known.choices)
    assert unfit(known, "no such word") is not None
    assert unfit(known, 1.0) is not None


def test_a_limit_reached_by_rounding_alone_is_still_in_range() -> None:
    assert unfit(quantity("relief_angle"), math.radians(45) * (1 + 1e-15)) is None
    assert unfit(quantity("relief_angle"), math.radians(45.001)) is not None


@given(st.floats())
def test_a_number_fits_or_is_refused_in_a_sentence(value: float) -> None:
    for key in ("diameter", "starts", "drop", "relief_angle"):
        found = unfit(quantity(key), value)
        fits = math.isfinite(value) and quantity(key).low <= value <= quantity(key).high
        if found is None:
            assert math.isfinite(value)
        else:
            assert str(found).startswith(key)
            assert not fits or quantity(key).whole


@pytest.mark.parametrize(
    "error", [ZeroDivisionError("by zero"), OverflowError("too big"), ValueError("domain")]
)
def test_arithmetic_that_was_not_foreseen_is_refused_in_a_sentence(error: Exception) -> None:
    def stumbles(given: Inputs) -> Result:
        raise error

    with pytest.raises(Refusal) as refused:
        run(replace(SHEET, compute=stumbles), {"diameter": 12.0, "wheel_diameter": 150.0})
    (problem,) = refused.value.problems
    assert not problem.missing
    assert str(problem.sentence).endswith("Look at each value and its unit again.")


def test_a_refusal_of_a_calculation_within_a_calculation_keeps_its_words() -> None:
    def asks_another(given: Inputs) -> Result:
        return run(SHEET, {})

    with pytest.raises(Refusal) as refused:
        run(replace(SHEET, compute=asks_another), {"diameter": 12.0, "wheel_diameter": 150.0})
    assert all(problem.missing for problem in refused.value.problems)


def _alike(given: Inputs) -> None:
    if given.has("diameter") and given.has("land_width"):
        lands = given.numbers("land_width")
        if len(lands) != given.number("diameter"):
            raise refuse("land_width", "As many lands as the diameter has millimetres.")


def test_inputs_that_do_not_fit_one_another_are_told_beside_what_is_missing_or_wrong() -> None:
    sheet = replace(SHEET, inputs=(*SHEET.inputs, Field("flutes")), agree=_alike)
    assert problems(sheet, diameter=3.0, land_width=(1.0, 2.0)) == [("flutes", True), ("land_width", False)]
    assert problems(sheet, diameter=2.0, land_width=(1.0, 2.0)) == [("flutes", True)]
    assert problems(sheet, land_width=(1.0, 2.0)) == [("diameter", True), ("flutes", True)]
    # What makes no sense by itself is not held against anything.
    assert problems(sheet, diameter=-1.0, land_width=(1.0, 2.0), flutes=3.0) == [("diameter", False)]
