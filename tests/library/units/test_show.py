"""Numbers as they are shown: with a unit, no finer than an indicator, limits to the safe side."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.quantities import quantity
from geometry.sentences import Kind, Rounding, Sentence, angle, length
from library.units.read import read
from library.units.show import say, show, show_answer
from library.units.system import INCH, METRIC


@pytest.mark.parametrize(
    ("value", "kind", "metric", "inch"),
    [
        (0.14854, Kind.LENGTH, "0.149 mm", "0.0058 in"),
        (-0.05485, Kind.LENGTH, "-0.055 mm", "-0.0022 in"),
        (-0.0001, Kind.LENGTH, "0.000 mm", "0.0000 in"),
        (math.radians(8), Kind.ANGLE, "8.00 deg", "8.00 deg"),
        (23562.0, Kind.SPEED, "23.56 m/s", "4638 ft/min"),
        (2 * math.pi * 50, Kind.ROTATION, "3000 rpm", "3000 rpm"),
        (2 * math.pi * 0.65 / 60, Kind.ROTATION, "0.65 rpm", "0.65 rpm"),
        (2 * math.pi * 3 / 60, Kind.ROTATION, "3 rpm", "3 rpm"),
        (10 / 25.4, Kind.PER_LENGTH, "10 tpi", "10 tpi"),
        (4.0, Kind.COUNT, "4", "4"),
        (0.0625, Kind.RATIO, "0.0625", "0.0625"),
    ],
)
def test_each_kind_is_shown_with_its_unit(value: float, kind: Kind, metric: str, inch: str) -> None:
    assert show(value, kind, METRIC) == metric
    assert show(value, kind, INCH) == inch


def test_a_limit_is_rounded_to_the_safe_side() -> None:
    assert show(1.6755, Kind.LENGTH, rounding=Rounding.DOWN) == "1.67 mm"
    assert show(1.6755, Kind.LENGTH, rounding=Rounding.UP) == "1.68 mm"
    assert show(0.0834, Kind.LENGTH, rounding=Rounding.DOWN) == "0.083 mm"
    assert show(math.radians(9.5493), Kind.ANGLE, rounding=Rounding.UP) == "9.55 deg"
    assert show(2.0, Kind.LENGTH, rounding=Rounding.DOWN) == "2.00 mm"


@given(st.floats(min_value=0.001, max_value=400), st.sampled_from([METRIC, INCH]))
def test_a_limit_shown_and_typed_back_never_passes_the_limit(value: float, display: object) -> None:
    shown = INCH if display is INCH else METRIC
    down = read(show(value, Kind.LENGTH, shown, Rounding.DOWN), Kind.LENGTH).number
    up = read(show(value, Kind.LENGTH, shown, Rounding.UP), Kind.LENGTH).number
    assert down <= value * (1 + 1e-8) + 1e-11
    assert up >= value * (1 - 1e-8) - 1e-11


@pytest.mark.parametrize(
    ("key", "value", "metric", "inch"),
    [
        # A rim of 30 m/s on a wheel of 150 mm is 3819.7 turns a minute.
        ("highest_rotational_speed", 30_000 / 75, "3819 rpm", "3819 rpm"),
        # A flat of 8 degrees on 12 mm clears over an arc of 1.67552 mm, which is 0.065965 in.
        ("clear_land_width", 12 * math.radians(8), "1.675 mm", "0.0659 in"),
        ("surface_speed", 23_561.9, "23.57 m/s", "4639 ft/min"),
        ("heel_drop", 0.0996, "0.100 mm", "0.0039 in"),
        ("facets", 3.0, "3", "3"),
    ],
)
def test_an_answer_that_is_a_limit_is_not_rounded_over_it(
    key: str, value: float, metric: str, inch: str
) -> None:
    assert show_answer(value, quantity(key), METRIC) == metric
    assert show_answer(value, quantity(key), INCH) == inch


def test_a_sentence_is_said_in_the_reader_s_units() -> None:
    sentence = Sentence(
        "Narrow the land to {width} or raise the relief above {relief}, {name}.",
        {"width": length(1.6755, Rounding.DOWN), "relief": angle(0.16667, Rounding.UP), "name": "grinder"},
    )
    assert say(sentence, METRIC) == "Narrow the land to 1.67 mm or raise the relief above 9.55 deg, grinder."
    assert say(sentence, INCH) == "Narrow the land to 0.065 in or raise the relief above 9.55 deg, grinder."


# 0.010 mm over 100 mm is 0.00005 to a side, 0.00286 deg; 0.02 mm is 0.0057 deg; 1/16 in 1 is 1.79 deg. Derived.
@pytest.mark.parametrize(
    ("taper", "said"),
    [
        (0.0001, "0.0029 deg"),
        (0.0002, "0.0057 deg"),
        (-0.0001, "-0.0029 deg"),
        (0.0, "0.00 deg"),
        (1 / 16, "1.79 deg"),
    ],
)
def test_a_slight_angle_is_never_answered_as_none(taper: float, said: str) -> None:
    assert show_answer(math.atan(taper / 2), quantity("swivel_angle")) == said
