"""Threads, points, faces, tapers, margins, speeds and index: one number has one verdict and one rounding."""

from __future__ import annotations

from collections.abc import Mapping

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Calculation, Field, Given, Result
from geometry.calculations import calculation
from geometry.quantities import quantity
from geometry.running import Refusal, run
from geometry.sentences import Amount, Kind

NAMES = (
    "back-taper",
    "drill-point",
    "face-offset",
    "index-moves",
    "lead-over-land",
    "reamer-land",
    "screw-thread",
    "tap-chamfer",
    "wheel-speed",
)
ORDER = ("stop", "watch", "pass", "note")

each = pytest.mark.parametrize("sheet", [calculation(name) for name in NAMES], ids=lambda sheet: sheet.name)


def values_of(field: Field) -> st.SearchStrategy[Given]:
    row = quantity(field.key)
    if row.kind is Kind.CHOICE:
        return st.sampled_from(row.choices)
    if row.whole:
        one: st.SearchStrategy[Given] = st.integers(int(row.low), int(min(row.high, 60))).map(float)
    else:
        one = st.floats(max(row.low, -5.0), min(row.high, 30.0)).map(lambda number: round(number, 3))
    return st.lists(one, min_size=1, max_size=4).map(tuple) if field.many else one  # type: ignore[arg-type]


def answered(sheet: Calculation, data: st.DataObject) -> tuple[dict[str, Given], Result] | None:
    """A result for ordinary random inputs, or nothing where they are refused."""
    values: dict[str, Given] = {}
    groups: set[str] = set()
    for field in sheet.inputs:
        if field.one_of in groups - {""}:
            continue
        may_lack = field.optional or field.default is not None
        if may_lack and not data.draw(st.booleans()):
            continue
        group = [one for one in sheet.inputs if one.one_of and one.one_of == field.one_of] or [field]
        chosen = field if may_lack else data.draw(st.sampled_from(group))
        groups.add(field.one_of)
        values[chosen.key] = data.draw(values_of(chosen), label=chosen.key)
    try:
        return values, run(sheet, values)
    except Refusal:
        return None


@each
@given(data=st.data())
def test_the_worst_comes_first(sheet: Calculation, data: st.DataObject) -> None:
    found = answered(sheet, data)
    if found:
        places = [ORDER.index(check.state) for check in found[1].checks]
        assert places == sorted(places)


def amounts(result: Result) -> Mapping[tuple[float, Kind], set[str]]:
    """How each number that a sentence says is rounded, by its size."""
    found: dict[tuple[float, Kind], set[str]] = {}
    for check in result.checks:
        for name, part in check.sentence.parts.items():
            if isinstance(part, Amount) and name not in ("over", "marked"):
                found.setdefault((abs(part.value), part.kind), set()).add(part.rounding.value)
    return found


@each
@given(data=st.data())
def test_a_number_that_is_answered_is_said_with_the_same_rounding(
    sheet: Calculation, data: st.DataObject
) -> None:
    found = answered(sheet, data)
    if not found:
        return
    values, result = found
    said = amounts(result)
    for key, number in result.outputs.items():
        row = quantity(key)
        alike = [other for other in result.outputs.values() if abs(other) == abs(number)]
        if key in values or number == 0 or len(alike) > 1:
            continue  # what was typed stands as it was typed, and two answers that fall together are two numbers
        for rounding in said.get((abs(number), row.kind), ()):
            assert rounding == row.rounding.value, key
