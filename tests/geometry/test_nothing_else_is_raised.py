"""No calculation stumbles: whatever legal values come together, it answers or refuses in its own words."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Calculation, Field, Given, Inputs
from geometry.calculations import calculation, calculation_names
from geometry.evaluate import asked_for, run, with_defaults
from geometry.preconditions import GeometryError
from geometry.quantities import quantity
from geometry.sentences import Kind
from tests.examples import OVER_ALL

each_calculation = pytest.mark.parametrize(
    "sheet", [calculation(name) for name in calculation_names()], ids=lambda sheet: sheet.name
)


def legal(field: Field) -> st.SearchStrategy[Given]:
    """Every value of the range, its ends, what lies on a bench, and round numbers that meet one another."""
    row = quantity(field.key)
    if row.kind is Kind.CHOICE:
        return st.sampled_from(row.choices)
    low, high = row.low, min(row.high, 1e6)
    if row.whole:
        one = st.integers(math.ceil(low), math.floor(high)).map(float)
    else:
        bench = [value for value in (0.05, 0.5, 1.0, 4.0, 8.0, math.radians(45)) if low <= value <= high]
        one = st.one_of(
            st.floats(low, high),
            st.floats(low, low + (high - low) / 50),
            st.sampled_from([low, high, *bench]),
        )
    return st.lists(one, min_size=1, max_size=4).map(tuple) if field.many else one


@st.composite
def wild(draw: st.DrawFn, sheet: Calculation) -> dict[str, Given]:
    """One of each group of alternatives, what is wanted, and half of what is optional."""
    values: dict[str, Given] = {}
    for group in sorted({field.one_of for field in sheet.inputs if field.one_of}):
        chosen = draw(st.sampled_from([field for field in sheet.inputs if field.one_of == group]))
        values[chosen.key] = draw(legal(chosen))
    for field in sheet.inputs:
        wanted = not field.optional and field.default is None
        if not field.one_of and (wanted or draw(st.booleans())):
            values[field.key] = draw(legal(field))
    return values


@each_calculation
@OVER_ALL
@given(data=st.data())
def test_a_calculation_refuses_in_its_own_words_before_the_last_net_catches_it(
    sheet: Calculation, data: st.DataObject
) -> None:
    given_values = data.draw(wild(sheet))
    values = with_defaults(sheet, given_values)
    wanted = {field.key for field in asked_for(sheet, values)}
    try:
        sheet.compute(Inputs({key: value for key, value in values.items() if key in wanted}))
    except GeometryError as error:
        assert str(error.sentence).endswith(".")


def test_a_least_gap_that_reaches_the_axis_is_refused_in_a_sentence() -> None:
    tool: dict[str, Given] = {"diameter": 8.0, "body_diameter": 9.0, "land_width": 4.0, "primary_land": 0.6}
    angles: dict[str, Given] = {"relief_angle": math.radians(10), "secondary_relief_angle": math.radians(20)}
    for gap in (4.0, 5.0, 50.0):
        with pytest.raises(ValueError, match="no core in a tool of 8 mm"):
            run(calculation("relief-facets"), {**tool, **angles, "least_gap": gap})
