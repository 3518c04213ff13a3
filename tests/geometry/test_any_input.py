"""Whatever a person types, a calculation answers in ordinary numbers or says why not; nothing else comes out."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Calculation, Field, Given, Result
from geometry.calculations import calculation, calculation_names
from geometry.evaluate import Refusal, run
from geometry.quantities import Quantity, quantity
from geometry.sentences import Amount, Kind
from tests.examples import OVER_ALL

each_calculation = pytest.mark.parametrize(
    "sheet", [calculation(name) for name in calculation_names()], ids=lambda sheet: sheet.name
)


def sensible(row: Quantity) -> st.SearchStrategy[float]:
    """Numbers in the range of a quantity, its ends, its middle and very small ones among them."""
    low, high = row.low, min(row.high, 1e6)
    if row.whole:
        return st.integers(int(low), int(high)).map(float)
    usual = low + (high - low) / 20
    ends = st.sampled_from(
        [low, high, usual, math.nextafter(low, high), math.nextafter(high, low), min(max(0.0, low), high)]
    )
    return st.one_of(st.floats(low, high), st.floats(low, usual), ends)


def values_for(field: Field, one_value: st.SearchStrategy[float]) -> st.SearchStrategy[Given]:
    row = quantity(field.key)
    if row.kind is Kind.CHOICE:
        return st.sampled_from(row.choices)
    if field.many:
        return st.lists(one_value, min_size=1, max_size=5).map(tuple)
    return one_value


def inputs_for(sheet: Calculation, *, wild: bool) -> st.SearchStrategy[dict[str, Given]]:
    """Values for a calculation: one of each group of alternatives, optional ones now and then."""
    anything = st.floats(allow_nan=True, allow_infinity=True)

    def value(field: Field) -> st.SearchStrategy[Given]:
        found = values_for(field, sensible(quantity(field.key)))
        return (
            st.one_of(found, found, values_for(field, anything), st.just("no such word")) if wild else found
        )

    alternatives = sorted({field.one_of for field in sheet.inputs if field.one_of})
    chosen = st.tuples(
        *(st.sampled_from([f.key for f in sheet.inputs if f.one_of == group]) for group in alternatives)
    )
    always = {f.key: value(f) for f in sheet.inputs if not f.one_of and not f.optional and f.default is None}
    may_be = {f.key: value(f) for f in sheet.inputs if not f.one_of and f.key not in always}
    others = {f.key: value(f) for f in sheet.inputs if f.one_of}

    def with_chosen(keys: tuple[str, ...]) -> st.SearchStrategy[dict[str, Given]]:
        return st.fixed_dictionaries(always | {key: others[key] for key in keys}, optional=may_be)

    return chosen.flatmap(with_chosen)


def numbers(result: Result) -> Iterator[float]:
    yield from result.outputs.values()
    for row in result.rows:
        yield from row.values.values()
    for station in result.stations:
        yield from (station.fraction, station.angle)
        yield from station.readings.values()
    if result.figure is not None:
        yield from (result.figure.radius, result.figure.land_angle)
        for curve in result.figure.curves:
            for point in curve.points:
                yield from point
    for check in result.checks:
        yield from (part.value for part in check.sentence.parts.values() if isinstance(part, Amount))


def outcome(sheet: Calculation, values: dict[str, Given]) -> Result | None:
    """The result, or nothing for a refusal that says which quantity to change, in whole sentences."""
    try:
        return run(sheet, values)
    except Refusal as refusal:
        assert refusal.problems
        for problem in refusal.problems:
            assert str(problem.sentence).endswith(".")
            for part in problem.sentence.parts.values():
                assert not isinstance(part, Amount) or not math.isnan(part.value)
        return None


@each_calculation
@OVER_ALL
@given(data=st.data())
def test_values_within_their_ranges_give_ordinary_numbers_in_whole_sentences_or_a_refusal(
    sheet: Calculation, data: st.DataObject
) -> None:
    result = outcome(sheet, data.draw(inputs_for(sheet, wild=False)))
    if result is not None:
        assert all(map(math.isfinite, numbers(result)))
        assert set(result.outputs) <= set(sheet.outputs)
        for check in result.checks:
            assert set(re.findall(r"{(\w+)}", check.sentence.template)) <= set(check.sentence.parts)
            assert str(check.sentence).endswith(".")


@each_calculation
@OVER_ALL
@given(data=st.data())
def test_values_out_of_all_reason_are_refused_and_never_crash(
    sheet: Calculation, data: st.DataObject
) -> None:
    result = outcome(sheet, data.draw(inputs_for(sheet, wild=True)))
    if result is not None:
        assert all(map(math.isfinite, numbers(result)))
