"""Values of the book in the unit that is worked in: about the same, and never past a limit. An inch is 25.4 mm; derived."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from library.book.model import Band, Measure, Value
from library.calc.in_units import as_written, in_units, in_units_of, shown_span
from library.calc.wording import span
from library.units.system import INCH, METRIC, Display


def mm(text: str) -> Fraction:
    """What a shown length is, without the reader of the program."""
    number, unit = text.split()
    return Fraction(number) * (Fraction(254, 10) if unit == "in" else 1)


lengths = st.decimals("0.001", "120", places=3)


@given(lengths, lengths, lengths, st.sampled_from(["mm", "in"]))
def test_what_keeps_a_range_as_it_is_shown_keeps_it_as_the_book_has_it(
    one: object, two: object, three: object, unit: str
) -> None:
    texts = sorted((str(number) for number in (one, two, three)), key=Fraction)
    own = [Measure(f"{text} {unit}", float(mm(f"{text} {unit}"))) for text in texts]
    value = Value("land_width", own[0], own[1], own[2])
    display = INCH if unit == "mm" else METRIC
    shown = in_units(value, display)
    told = [mm(part.text) for part in (shown.low, shown.usual, shown.high) if part is not None]
    meant = [mm(part.text) for part in own]
    assert meant[0] <= told[0] <= told[1] <= told[2] <= meant[2] or meant[0] == meant[2]
    for as_told, as_meant in zip(told, meant, strict=True):
        assert abs(as_told - as_meant) <= Fraction("0.0514") * as_meant
    assert {part.text.split()[1] for part in (shown.low, shown.usual, shown.high) if part} == {
        display.lengths
    }
    assert as_written(value, display) == f"book: {span(value)}"


@pytest.mark.parametrize(
    ("texts", "display", "shown"),
    [
        # 0.5 and 1 mm are 0.01968... and 0.03937... in; 1/64 and 1/32 in are 0.396875 and 0.79375 mm.
        (("0.5 mm", None, "1 mm"), INCH, "0.0197 in to 0.0393 in"),
        (("1/64 in", None, "1/32 in"), METRIC, "0.397 mm to 0.793 mm"),
        ((None, "25 mm", None), INCH, "0.9843 in"),
        # Small ones get another decimal before they become something else.
        (("0.01 mm", None, "0.02 mm"), INCH, "0.0004 in to 0.00078 in"),
        ((None, "1 mm", "1 mm"), INCH, "0.0393 in (0.0393 in or less)"),
        # What is of the unit already stays as it is written.
        ((None, "40 thou", "1/16 in"), INCH, "40 thou (1/16 in or less)"),
        (("0.5 mm", None, "1/16 in"), INCH, "0.0197 in to 1/16 in"),
    ],
)
def test_lengths_are_shown_in_the_unit_that_is_worked_in(
    texts: tuple[str | None, str | None, str | None], display: Display, shown: str
) -> None:
    numbers = {"0.5 mm": 0.5, "1 mm": 1.0, "1/64 in": 0.396875, "1/32 in": 0.79375, "25 mm": 25.0, "0.01 mm": 0.01,
               "0.02 mm": 0.02, "40 thou": 1.016, "1/16 in": 1.5875}  # fmt: skip
    low, usual, high = (Measure(one, numbers[one]) if one else None for one in texts)
    value = Value("land_width", low, usual, high)
    assert span(in_units(value, display)) == shown


def test_angles_shares_and_words_stay_and_the_bands_go_along() -> None:
    angle = Value("rake_angle", usual=Measure("8 deg", 0.14))
    share = Value("land_width", usual=Measure("0.25 D", 0.25, per_diameter=True))
    form = Value("relief_form", usual=Measure("flat", word="flat"))
    for value in (angle, share, form):
        assert in_units(value, INCH) == value
        assert as_written(value, INCH) == ""
    small = Band(None, Measure("3 mm", 3.0), "", Value("lip_relief_angle", usual=Measure("12 deg", 0.21)))
    (band,) = in_units(Value("lip_relief_angle", bands=(small,)), INCH).bands
    assert band.in_words == "up to 0.1181 in"  # 3 / 25.4 is 0.11811.
    also = Value("land_width", usual=Measure("2 mm", 2.0))
    assert shown_span(also, INCH) == "0.0787 in; book: 2 mm"
    assert shown_span(also, METRIC) == shown_span(also, None) == "2 mm"


@pytest.mark.parametrize(
    ("text", "display", "shown"),
    [
        ("0.5 to 1 mm", INCH, "0.0197 to 0.0393 in"),
        ("at least 1/8 in", METRIC, "at least 3.175 mm"),
        ("0.25 D", INCH, "0.25 D"),
        ("2 mm or so", INCH, "2 mm or so"),
        ("2 mm", METRIC, "2 mm"),
    ],
)
def test_a_measure_in_words_is_shown_so_too(text: str, display: Display, shown: str) -> None:
    assert in_units_of("land_width", text, display) == shown
