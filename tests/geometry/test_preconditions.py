"""What is asked of every argument, and how a refusal names it."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.preconditions import (
    GeometryError,
    refuse,
    require_angle,
    require_at_most,
    require_finite,
    require_not_negative,
    require_positive,
    require_relief,
)
from geometry.sentences import Sentence, length

no_numbers = st.sampled_from((math.nan, math.inf, -math.inf))
some_numbers = st.floats(allow_nan=False, allow_infinity=False)


@given(no_numbers)
def test_what_is_no_ordinary_number_passes_nowhere(value: float) -> None:
    asked: list[Callable[[], float]] = [
        lambda: require_finite("land_width", value),
        lambda: require_positive("land_width", value),
        lambda: require_not_negative("land_width", value),
        lambda: require_angle("land_width", value, -1.0, 1.0),
        lambda: require_relief("land_width", value),
        lambda: require_at_most("land_width", value, 1.0, "which is all there is"),
    ]
    for ask in asked:
        with pytest.raises(GeometryError, match="The land width must be an ordinary number") as refused:
            ask()
        assert refused.value.key == "land_width"


def passes(ask: Callable[[], float]) -> bool:
    try:
        ask()
    except GeometryError:
        return False
    return True


@given(some_numbers)
def test_each_question_lets_through_just_its_own_range(value: float) -> None:
    assert require_finite("x", value) == value
    assert passes(lambda: require_positive("x", value)) == (value > 0)
    assert passes(lambda: require_not_negative("x", value)) == (value >= 0)
    assert passes(lambda: require_angle("x", value, -0.5, 1.5)) == (-0.5 < value < 1.5)
    assert passes(lambda: require_relief("x", value)) == (0 <= value < math.pi / 2)
    assert passes(lambda: require_at_most("x", value, 2.0, "too far")) == (value <= 2.0)


@given(st.floats(0.01, 1.5))
def test_what_passes_is_handed_back_unchanged(value: float) -> None:
    assert require_positive("x", value) == value
    assert require_not_negative("x", value) == value
    assert require_angle("x", value, 0.0, 2.0) == value
    assert require_relief("x", value) == value
    assert require_at_most("x", value, 2.0, "too far") == value


def test_refusals_are_sentences_with_their_limits() -> None:
    with pytest.raises(GeometryError) as steep:
        require_relief("relief_angle", 2.0)
    assert str(steep.value) == "The relief angle must be from 0 deg to under 90 deg."
    with pytest.raises(GeometryError) as wide:
        require_at_most("land_width", 3.0, 2.0, "the whole way round")
    assert str(wide.value) == "The land width of 3 mm is more than 2 mm, the whole way round."
    with pytest.raises(GeometryError) as turned:
        require_angle("tilt", 2.0, 0.0, math.pi / 4)
    assert str(turned.value) == "The tilt must be more than 0 deg and less than 45 deg."


def test_an_error_carries_a_sentence_however_it_was_made() -> None:
    plain = GeometryError("No such tool.")
    assert plain.sentence == Sentence("No such tool.")
    assert plain.key == ""
    made = refuse("diameter", "No tool of {diameter}.", {"diameter": length(3.0)})
    assert str(made) == "No tool of 3 mm."
    assert made.key == "diameter"
    assert isinstance(made, ValueError)
