"""A fraction of a millimetre is asked about where a tool may have several diameters, and refused where it is no measure."""

from __future__ import annotations

import pytest

from geometry.sentences import Kind
from library.book.model import Book
from library.cards.issues import issues_of
from library.cards.job import work_out
from library.cards.model import Card, Tool
from library.units.read import UnitError, read, read_many

SAYS = "'8/12 mm' is a fraction, 0.667 mm; for steps write 8, 12 mm"


@pytest.mark.parametrize("text", ["8/12 mm", " 8/12 mm "])
def test_a_list_refuses_it(text: str) -> None:
    with pytest.raises(UnitError, match=SAYS):
        read_many(text, Kind.LENGTH)


def test_a_list_of_inches_takes_its_fractions() -> None:
    assert [one.number for one in read_many("8/12, 1 in", Kind.LENGTH)] == pytest.approx(
        [8 / 12 * 25.4, 25.4]
    )
    assert [one.number for one in read_many("1/4, 3/8 in", Kind.LENGTH)] == pytest.approx([6.35, 9.525])


def test_the_size_of_a_card_says_so_and_fills_nothing() -> None:
    job = work_out(Card(family="step-drill", tool=Tool("S-3", size="8/12 mm")), Book({}))
    said = [one.text for one in issues_of(job) if one.way == "tool.size"]
    assert said == [f"Size: {SAYS}, and for the fraction 0.667 mm."]
    assert job.known_text("diameter") == ""


def test_a_measured_diameter_says_so_too() -> None:
    job = work_out(Card(family="step-drill", received={"diameter": ("8/12 mm",)}), Book({}))
    assert any(SAYS in one.text for one in issues_of(job) if one.way == "received.diameter")


def test_among_other_numbers_it_is_the_fraction_that_it_says() -> None:
    assert [round(one.number, 3) for one in read_many("1/2 mm, 6 mm", Kind.LENGTH)] == [0.5, 6.0]


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("8/12 mm", "0.667 mm"),
        ("6/12 mm", "0.500 mm"),
        ("6/8 mm", "0.750 mm"),
        ("12/8 mm", "1.500 mm"),
        ("-8/12 mm", "-0.667 mm"),
        ("8/12 mm +/- 0.1", "0.667 mm"),
        ("8/12 +/- 0.1 mm", "0.667 mm"),
        ("8/12 cm", "0.667 cm"),
    ],
)
def test_where_one_length_is_wanted_steps_and_slips_are_no_fraction(text: str, number: str) -> None:
    with pytest.raises(UnitError, match=r"is a fraction, .*; one length is wanted here") as refused:
        read(text, Kind.LENGTH)
    assert number in str(refused.value)


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("1/2 mm", 0.5),
        ("3/4 mm", 0.75),
        ("1-1/2 mm", 1.5),
        ("1/100 mm", 0.01),
        ("2/100 mm", 0.02),
        ("3/8 in", 9.525),
        ("8/12 in", 8 / 12 * 25.4),
        ("1/20 in", 1.27),
    ],
)
def test_what_shops_write_stays(text: str, mm: float) -> None:
    assert read(text, Kind.LENGTH).number == pytest.approx(mm)


def test_without_a_unit_no_inches_are_offered_for_what_is_no_fraction_of_an_inch() -> None:
    with pytest.raises(
        UnitError, match="none that an inch is parted into; one length is wanted here, such as 8 mm"
    ):
        read("8/12", Kind.LENGTH)
    with pytest.raises(UnitError, match="none that an inch is parted into; for steps write 8, 12 mm"):
        read_many("8/12", Kind.LENGTH)
    with pytest.raises(UnitError, match="write 3/8 in if it is inches"):
        read("3/8", Kind.LENGTH)


def test_a_list_refuses_one_among_others_too() -> None:
    with pytest.raises(UnitError, match=SAYS):
        read_many("8/12 mm, 14 mm", Kind.LENGTH)
