"""Whatever is typed for whatever a calculation asks, it is answered or told in a sentence; nobody ever sees it raise."""

from __future__ import annotations

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculations import calculation, calculation_names
from geometry.quantities import QUANTITIES, quantity
from geometry.sentences import Kind
from library.book.model import Book, Entry, Measure, Value
from library.calc.answer import answer
from library.calc.report import as_data
from library.pages.answer import answer_page
from library.pages.as_text import as_text
from library.units.system import INCH, METRIC

NUMBERS = st.sampled_from(
    ["0", "1", "3", "4", "40", "12", "1.75", "0.2", "-2", "1e99", "1e-99", "1/8", "9" * 40, ""]
)
UNITS = st.sampled_from(
    ["", "", "mm", "in", "thou", "deg", "rad", "%", "tpi", "rpm", "m/s", "mm2", "D", "furlongs"]
)
ONE = st.builds("{} {}".format, NUMBERS, UNITS)
MEASURED = ONE | st.builds("{} +/- {}".format, ONE, ONE)
WORDS = st.sampled_from(
    [
        "low",
        "middle",
        "high",
        "M12",
        "1/4-20 UNC",
        "chord",
        "flat",
        "cone",
        "lip",
        "right",
        "+/-",
        "+/- 1",
        "6,5 mm",
    ]
) | st.text(max_size=12)
TEXTS = st.one_of(MEASURED, MEASURED, st.lists(MEASURED, min_size=2, max_size=4).map(", ".join), WORDS)
SHEETS = st.sampled_from(calculation_names()).map(calculation)
ENTRY = Entry(
    id="odd",
    family="tap",
    title="Odd",
    values={
        "flutes": Value("flutes", usual=Measure("4", 4.0)),
        "diameter": Value("diameter", usual=Measure("1e300 mm", 1e300)),
        "land_width": Value("land_width", usual=Measure("0.25 D", 0.25, per_diameter=True)),
        "rake_angle": Value("rake_angle", low=Measure("3 deg", 0.05), high=Measure("80 deg", 1.4)),
    },
)


@given(st.data())
def test_no_calculation_raises_whatever_is_typed(data: st.DataObject) -> None:
    sheet = data.draw(SHEETS)
    around = {key: str(value) for key, value in _sample_texts(sheet.name).items()}
    typed = around | data.draw(
        st.dictionaries(st.sampled_from([field.key for field in sheet.inputs]), TEXTS, max_size=6)
    )
    entry, display = data.draw(st.sampled_from([None, ENTRY])), data.draw(st.sampled_from([METRIC, INCH]))
    found = answer(sheet, typed, entry=entry, book=Book({}), display=display)
    assert found.result is not None or found.issues
    assert all(issue.text.endswith((".", "?")) for issue in found.issues)
    if found.result is not None:
        as_text(answer_page(found, Book({}), display, entry))
    json.dumps(as_data(found, Book({}), display), allow_nan=False)


def _sample_texts(name: str) -> dict[str, str]:
    """A tool that the calculation answers, as a person would type it."""
    units = {
        Kind.LENGTH: "mm",
        Kind.ANGLE: "rad",
        Kind.SPEED: "mm/s",
        Kind.PER_LENGTH: "per mm",
        Kind.AREA: "mm2",
    }
    texts = {}
    for key, value in calculation(name).sample.items():
        numbers = value if isinstance(value, tuple) else (value,)
        unit = units.get(quantity(key).kind, "")
        texts[key] = ", ".join(
            one if isinstance(one, str) else f"{one:.12g} {unit}".strip() for one in numbers
        )
        if quantity(key).kind is Kind.ROTATION:
            del texts[key]
    return texts


COUNTED = sorted(
    (name, field.key)
    for name in calculation_names()
    for field in calculation(name).inputs
    if QUANTITIES[field.key].whole
)


@pytest.mark.parametrize(("name", "key"), COUNTED)
def test_a_plus_or_minus_behind_what_is_counted_is_a_sentence_at_its_field(name: str, key: str) -> None:
    found = answer(calculation(name), {**_sample_texts(name), key: "3 +/- 1"})
    assert found.result is None
    told = [issue for issue in found.issues if issue.key == key]
    assert [issue.text for issue in told] == [
        f"{key}: '3 +/- 1' has a +/-; what is counted has none, so write 3."
    ]


def test_a_plus_or_minus_so_large_that_nothing_is_left_of_a_measure_is_answered_all_the_same() -> None:
    found = answer(calculation("lead-over-land"), {"diameter": "12 mm", "pitch": "1.75 mm",
                                                   "land_width": "3.2 mm +/- 1e99 mm"})  # fmt: skip
    assert found.result is not None or found.issues
