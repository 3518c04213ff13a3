"""What holds for every calculation, those that do not exist yet included."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Mapping

import pytest

from geometry.calculation import Calculation, Given, Result
from geometry.calculations import calculation, calculation_names, calculations_for
from geometry.evaluate import Refusal, run
from geometry.kinds import EVERY_KIND
from geometry.quantities import QUANTITIES, quantity
from geometry.sentences import Amount, Kind
from geometry.surfaces import SURFACES
from tests.each import each

each_calculation = each("sheet", map(calculation, calculation_names()), lambda sheet: sheet.name)
Samples = Mapping[str, Mapping[str, Given]]


def numbers(result: Result) -> Iterator[tuple[str, float]]:
    """Every number that a result shows, with the quantity it is."""
    yield from result.outputs.items()
    for row in result.rows:
        yield from row.values.items()
    for station in result.stations:
        yield from station.readings.items()


def words(sheet: Calculation) -> list[str]:
    return [sheet.title, sheet.question, sheet.wants, sheet.neglects]


@each_calculation
def test_has_a_sample_for_what_it_asks(sheet: Calculation) -> None:
    assert sheet.sample, f"{sheet.name} has no sample"
    assert set(sheet.sample) <= {field.key for field in sheet.inputs}


@each_calculation
def test_answers_its_sample_with_ordinary_numbers_of_the_vocabulary(
    sheet: Calculation, samples: Samples
) -> None:
    result = run(sheet, samples[sheet.name])
    assert result.outputs
    assert set(result.outputs) <= set(sheet.outputs), "an output that the calculation does not announce"
    for key, number in numbers(result):
        assert key in QUANTITIES
        assert math.isfinite(number)


@each_calculation
def test_every_number_of_its_sample_lies_in_the_range_of_its_quantity(
    sheet: Calculation, samples: Samples
) -> None:
    for key, number in numbers(run(sheet, samples[sheet.name])):
        row = quantity(key)
        assert row.low - 1e-9 <= number <= row.high + 1e-9, key


@each_calculation
def test_every_check_of_its_sample_can_be_read_aloud(sheet: Calculation, samples: Samples) -> None:
    checks = run(sheet, samples[sheet.name]).checks
    assert checks, "a result without a check leaves the reader alone with the numbers"
    for check in checks:
        places = set(re.findall(r"{(\w+)}", check.sentence.template))
        assert places == set(check.sentence.parts), "every amount is said and every place is filled"
        assert str(check.sentence).endswith(".")
        for part in check.sentence.parts.values():
            assert not isinstance(part, Amount) or math.isfinite(part.value)


@each_calculation
def test_says_what_it_wants_and_what_it_neglects_in_whole_sentences(sheet: Calculation) -> None:
    for text in words(sheet):
        assert text.strip()
        assert "  " not in text
    assert sheet.question.endswith("?")
    assert sheet.wants.endswith(".")
    assert sheet.neglects.endswith(".")


@each_calculation
def test_is_named_after_its_file_and_serves_known_kinds_of_tool(sheet: Calculation) -> None:
    assert sheet.name in calculation_names()
    assert sheet.kinds
    assert set(sheet.kinds) <= set(EVERY_KIND)
    assert all(sheet in calculations_for(kind) for kind in sheet.kinds)


@each_calculation
def test_a_tool_of_no_known_kind_has_it_by_one_of_its_surfaces(sheet: Calculation) -> None:
    served = sheet.belongs_on or sheet.surfaces
    assert set(served) <= set(SURFACES)
    for surface in SURFACES:
        assert (sheet in calculations_for("", (surface,))) is (not served or surface in served)


@each_calculation
def test_names_its_cautions_each_once(sheet: Calculation) -> None:
    assert sheet.cautions
    assert len(set(sheet.cautions)) == len(sheet.cautions)


@each_calculation
def test_asks_and_answers_only_in_words_of_the_vocabulary(sheet: Calculation) -> None:
    keys = [field.key for field in sheet.inputs]
    assert len(set(keys)) == len(keys)
    assert {*keys, *sheet.outputs} <= set(QUANTITIES)
    for field in sheet.inputs:
        if field.when:
            other = sheet.field(field.when[0])
            assert other is not None
            assert set(field.when[1:]) <= set(quantity(other.key).choices)
        if quantity(field.key).kind is Kind.CHOICE and field.default is not None:
            assert field.default in quantity(field.key).choices


@each_calculation
def test_asks_for_what_is_missing_and_for_nothing_else(sheet: Calculation, samples: Samples) -> None:
    required = [field.key for field in sheet.inputs if not field.optional and field.default is None]
    if not required:
        return
    with pytest.raises(Refusal) as refused:
        run(sheet, {})
    assert all(problem.missing for problem in refused.value.problems)
    assert all(problem.key in required for problem in refused.value.problems)


@each_calculation
def test_refuses_a_value_that_is_no_ordinary_number(sheet: Calculation, samples: Samples) -> None:
    for key, value in samples[sheet.name].items():
        if isinstance(value, str):
            continue
        for bad in (math.nan, math.inf, -math.inf):
            with pytest.raises(Refusal) as refused:
                run(sheet, {**samples[sheet.name], key: bad})
            assert key in [problem.key for problem in refused.value.problems]


@each_calculation
def test_refuses_a_word_it_does_not_know(sheet: Calculation, samples: Samples) -> None:
    for key in samples[sheet.name]:
        with pytest.raises(Refusal) as refused:
            run(sheet, {**samples[sheet.name], key: "no such word"})
        assert key in [problem.key for problem in refused.value.problems]


def scaled(values: Mapping[str, Given], factor: float) -> dict[str, Given]:
    """The same tool, drawn larger: every length times ``factor``, every speed with it."""
    power = {Kind.LENGTH: 1, Kind.SPEED: 1, Kind.AREA: 2, Kind.PER_LENGTH: -1}

    def larger(key: str, value: Given) -> Given:
        if isinstance(value, str):
            return value
        by = factor ** power.get(quantity(key).kind, 0)
        return tuple(one * by for one in value) if isinstance(value, tuple) else value * by

    return {key: larger(key, value) for key, value in values.items()}


SIZE_MATTERS = frozenset({"pipe-tap", "reamer-size", "tap-limits"})
"""Calculations by tables of sizes or tolerances, which do not grow with the size."""


@each_calculation
def test_a_tool_drawn_twice_as_large_gives_the_same_angles_and_lengths_twice_as_large(
    sheet: Calculation, samples: Samples
) -> None:
    if sheet.name in SIZE_MATTERS:
        return
    small = run(sheet, samples[sheet.name]).outputs
    large = run(sheet, scaled(samples[sheet.name], 2.0)).outputs
    assert set(large) == set(small)
    for key, number in scaled(small, 2.0).items():
        assert large[key] == pytest.approx(number, rel=1e-12, abs=1e-13), key
