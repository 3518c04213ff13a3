"""Sentences with amounts in them, as logs and tracebacks show them."""

from __future__ import annotations

import math
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.sentences import (
    Amount,
    Kind,
    Rounding,
    Sentence,
    angle,
    count,
    length,
    ratio,
    rotation,
    speed,
)


@pytest.mark.parametrize(
    ("amount", "shown"),
    [
        (length(0.25), "0.25 mm"),
        (length(-1.6755161), "-1.676 mm"),
        (angle(math.radians(8)), "8 deg"),
        (count(3), "3"),
        (ratio(0.75), "0.75"),
        (speed(35_000.0), "3.5e+04 mm/s"),
        (rotation(10.0), "10 rad/s"),
        (Amount(2.5, Kind.AREA), "2.5 mm2"),
        (Amount(0.5, Kind.PER_LENGTH), "0.5 per mm"),
    ],
)
def test_an_amount_is_shown_with_the_unit_of_its_kind(amount: Amount, shown: str) -> None:
    assert str(Sentence("{it}", {"it": amount})) == shown


@pytest.mark.parametrize(
    ("make", "kind"),
    [(length, Kind.LENGTH), (angle, Kind.ANGLE), (speed, Kind.SPEED), (rotation, Kind.ROTATION)],
)
def test_an_amount_keeps_its_number_its_kind_and_its_rounding(make: object, kind: Kind) -> None:
    assert callable(make)
    assert make(1.5) == Amount(1.5, kind, Rounding.NEAREST)
    assert make(1.5, Rounding.DOWN) == Amount(1.5, kind, Rounding.DOWN)


def test_bare_numbers_have_no_rounding_to_choose() -> None:
    assert count(3) == Amount(3, Kind.COUNT)
    assert ratio(0.5) == Amount(0.5, Kind.RATIO)


@given(st.floats(-1e6, 1e6))
def test_a_length_is_shown_to_four_figures(value: float) -> None:
    shown = str(Sentence("It is {it} wide.", {"it": length(value)}))
    found = re.fullmatch(r"It is (\S+) mm wide\.", shown)
    assert found is not None
    assert float(found[1]) == pytest.approx(value, rel=1e-3)


def test_words_are_put_in_as_they_are() -> None:
    assert str(Sentence("{which} is {what}.", {"which": "hand", "what": "'middle'"})) == "hand is 'middle'."
    assert str(Sentence("Nothing to fill in.")) == "Nothing to fill in."


def test_a_place_without_an_amount_is_an_error_and_not_a_gap() -> None:
    with pytest.raises(KeyError):
        str(Sentence("The gap is {gap}."))
