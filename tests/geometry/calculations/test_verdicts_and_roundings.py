"""Threads, points, faces, tapers, margins, speeds and index: one number has one verdict and one rounding."""

from __future__ import annotations

import math
from collections.abc import Mapping

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Calculation, Field, Given, Result
from geometry.calculations import calculation, calculation_names
from geometry.evaluate import Refusal, run
from geometry.quantities import quantity
from geometry.sentences import Amount, Kind, Rounding
from library.units.show import amount, say, show_answer
from library.units.system import Display
from tests.examples import OVER_ALL

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
@OVER_ALL
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
            if isinstance(part, Amount) and name not in ("over", "marked", "least", "most"):
                found.setdefault((abs(part.value), part.kind), set()).add(part.rounding.value)
    return found


def typed_numbers(values: Mapping[str, Given]) -> list[float]:
    """All the numbers that were typed, alone or in lists."""
    many = (value if isinstance(value, tuple) else (value,) for value in values.values())
    return [float(one) for each in many for one in each if isinstance(one, (int, float))]


@each
@OVER_ALL
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
        alike = [
            other for other in (*result.outputs.values(), *typed_numbers(values)) if abs(other) == abs(number)
        ]
        if key in values or number == 0 or len(alike) > 1:
            continue  # what was typed stands as it was typed, and two that fall together are two numbers
        roundings = said.get((abs(number), row.kind))
        # What is to be ground off may fall together with it, and is said in its own way beside it.
        assert not roundings or row.rounding.value in roundings, key


def reads_alike(result: Result, typed: Mapping[str, Given]) -> None:
    """See that an answer that a sentence says too has the same digits in both places, unless it is a limit there."""
    for key, number in result.outputs.items():
        row = quantity(key)
        alike = [
            other
            for other in (*result.outputs.values(), *typed_numbers(typed))
            if math.isclose(abs(other), abs(number), rel_tol=1e-12)
        ]
        if number == 0 or key in typed or len(alike) > 1:
            continue
        parts = [part for check in result.checks for part in check.sentence.parts.values()]
        for part in parts:
            if not isinstance(part, Amount) or (part.kind, part.rounding) != (row.kind, Rounding.NEAREST):
                continue
            if math.isclose(part.value, number, rel_tol=1e-12):
                for display in (Display("mm"), Display("in")):
                    said = amount(part, display)
                    assert said == show_answer(number, row, display), key


every = pytest.mark.parametrize("name", calculation_names())


@every
def test_an_answer_reads_as_its_sentence_says_it(
    name: str, samples: Mapping[str, Mapping[str, Given]]
) -> None:
    reads_alike(run(calculation(name), samples[name]), {})


@every
@OVER_ALL
@given(data=st.data())
def test_any_answer_reads_as_its_sentence_says_it(name: str, data: st.DataObject) -> None:
    found = answered(calculation(name), data)
    if found:
        reads_alike(found[1], found[0])


def test_a_speed_that_is_limited_reads_alike_where_it_is_checked() -> None:
    # By hand: pi x 98 mm x 60 turns a second is 18.4726 m/s, and up to the safe side 18.48. Derived.
    values: dict[str, Given] = {
        "wheel_diameter": 98.0,
        "rotational_speed": 120 * math.pi,
        "rated_speed": 25_000.0,
    }
    found = run(calculation("wheel-speed"), values)
    assert show_answer(found.outputs["surface_speed"], quantity("surface_speed")) == "18.48 m/s"
    assert "runs at 18.48 m/s, rounded up, within" in say(found.checks[0].sentence)
    # Nothing is said of a rounding where the speed was typed, or turns are held against turns.
    typed: dict[str, Given] = {"wheel_diameter": 98.0, "surface_speed": 20_000.0, "rated_speed": 25_000.0}
    in_turns = {key: value for key, value in values.items() if key != "rated_speed"}
    in_turns |= {"rated_rotational_speed": 160 * math.pi}
    for one in (typed, in_turns):
        assert "rounded" not in say(run(calculation("wheel-speed"), one).checks[0].sentence)
