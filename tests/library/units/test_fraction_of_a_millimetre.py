"""A fraction of a millimetre is asked about where a tool may have several diameters."""

from __future__ import annotations

import pytest

from geometry.sentences import Kind
from library.book.model import Book
from library.cards.issues import issues_of
from library.cards.job import work_out
from library.cards.model import Card, Tool
from library.units.read import UnitError, read_many

SAYS = "'8/12 mm' is a fraction, 0.667 mm; for steps write 8, 12 mm"


@pytest.mark.parametrize("text", ["8/12 mm", " 8/12 mm "])
def test_a_list_refuses_it(text: str) -> None:
    with pytest.raises(UnitError, match=SAYS):
        read_many(text, Kind.LENGTH)


def test_a_list_of_inches_takes_its_fractions() -> None:
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
