"""Whatever plus and minus is typed beside whatever numbers, an ordinary spread comes, or a refusal in words."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Calculation, Field, Given
from geometry.calculations import calculation
from geometry.evaluate import Refusal
from geometry.quantities import quantity
from geometry.sentences import Kind
from geometry.uncertainty import spread

SHEETS = ("face-offset", "size-loss", "tap-chamfer", "index-moves", "screw-thread", "lead-over-land")
any_float = st.floats(allow_nan=True, allow_infinity=True)


ORDINARY = {
    Kind.LENGTH: (0.1, 20.0),
    Kind.ANGLE: (0.02, 0.7),
    Kind.RATIO: (0.001, 20.0),
    Kind.COUNT: (1.0, 12.0),
}
"""What is on a bench; half of the values are from here, so that enough of them are answered."""


def in_range(field: Field) -> st.SearchStrategy[Given]:
    """Values that the vocabulary takes for this input, extremes included."""
    row = quantity(field.key)
    if row.kind is Kind.CHOICE:
        return st.sampled_from(row.choices)
    low, high = ORDINARY.get(row.kind, (row.low, row.high))
    ends = st.sampled_from([row.low, min(row.high, 1e9)])
    one = st.one_of(
        st.floats(max(low, row.low), min(high, row.high)), st.floats(row.low, min(row.high, 1e9)), ends
    )
    if row.whole:
        one = one.map(round).map(float)
    return st.one_of(one, st.lists(one, min_size=1, max_size=6).map(tuple)) if field.many else one


@st.composite
def typed(draw: st.DrawFn, sheet: Calculation) -> dict[str, Given]:
    """Some of a calculation's inputs, mostly one of each alternative, now and then with something wild."""
    values: dict[str, Given] = {}
    taken: set[str] = set()
    for field in draw(st.permutations(sheet.inputs)):
        if field.one_of in taken or (field.optional and draw(st.booleans())):
            continue
        taken |= {field.one_of} - {""}
        wild = draw(st.integers(0, 19)) == 0
        values[field.key] = draw(st.one_of(any_float, st.text(max_size=3)) if wild else in_range(field))
    return values


def has_plus_or_minus(field: Field) -> bool:
    row = quantity(field.key)
    return row.kind is not Kind.CHOICE and not row.whole


@pytest.mark.parametrize("name", SHEETS)
@given(data=st.data())
def test_a_spread_is_ordinary_or_refused(name: str, data: st.DataObject) -> None:
    sheet = calculation(name)
    values = data.draw(typed(sheet))
    measured = [field.key for field in sheet.inputs if field.key in values and has_plus_or_minus(field)]
    widths = {key: data.draw(st.floats(0.0, 1.0)) for key in measured}
    if widths and data.draw(st.integers(0, 9)) == 0:
        widths[measured[0]] = data.draw(any_float)
    try:
        found = spread(sheet, values, widths)
    except Refusal:
        return
    for one in found.values():
        assert math.isfinite(one.half_width)
        assert all(0 <= share <= 1 + 1e-9 for share in one.shares.values())
