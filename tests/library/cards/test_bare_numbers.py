"""Numbers written on a card without a unit: the card's for a length, degrees for an angle."""

from __future__ import annotations

import math

import pytest

from library.book.model import Book
from library.cards.bare_numbers import completed
from library.cards.editing import edited
from library.cards.history import visit_of
from library.cards.inspecting import verdicts
from library.cards.issues import issues_of
from library.cards.job import work_out
from library.cards.model import Card, Inspection, Tool, Wanted

EMPTY = Book({})


@pytest.mark.parametrize(
    ("way", "typed", "kept"),
    [
        ("received.diameter", "0.5", "0.5 in"),
        ("received.land_width", "1/8", "1/8 in"),
        ("received.drop", "0.25 +/- 0.01", "0.25 in +/- 0.01"),
        ("received.drop", "0.2 mm", "0.2 mm"),
        ("received.rake_angle", "5", "5 deg"),
        ("received.flutes", "4", "4"),
        ("received.flutes", "0", "0"),
        ("received.rake_angle", "0", "0 deg"),
        ("received.drop", "0.0", "0.0 in"),
        ("wanted.rake_angle", "0", "0 deg"),
        ("wanted.margin_width", ".0", ".0 in"),
        ("received.drop", "0 +/- 0.01", "0 in +/- 0.01"),
        ("received.drop", "0 +/- 0.01 mm", "0 +/- 0.01 mm"),
        ("after.drop.wanted", "0", "0 in"),
        ("after.drop.tolerance", "0", "0 in"),
        ("received.drop", "0,25", "0,25"),
        ("received.drop", "wide", "wide"),
        ("wanted.rake_angle", "5 to 8", "5 to 8 deg"),
        ("wanted.land_width", "at most 0.1", "at most 0.1 in"),
        ("wanted.land_width", "0.25 D", "0.25 D"),
        ("after.drop.tolerance", "0.001", "0.001 in"),
        ("after.drop.tolerance", "+0 -.003", "+0 -.003 in"),
        ("after.drop.tolerance", "0 -.003", "0 -.003 in"),
        ("after.drop.wanted", ".02", ".02 in"),
        ("tool.size", "5/8", "5/8 in"),
        ("tool.size", "1/4, 3/8", "1/4, 3/8 in"),
        ("tool.size", "No. 10", "No. 10"),
    ],
)
def test_a_number_without_a_unit_takes_that_of_an_inch_card(way: str, typed: str, kept: str) -> None:
    card = completed(edited(Card(units="in", family="tap"), way, typed))
    section, key, *part = way.split(".")
    found = getattr(card, section)
    if section == "tool":
        found = getattr(found, key)
    elif section == "received":
        found = found[key][0]
    elif section == "wanted":
        found = found[key].value
    else:
        found = getattr(found[key], part[0])
    assert found == kept


@pytest.mark.parametrize("typed", ["1/8", "3-1/16", "1/8 to 1/4"])
def test_a_fraction_without_a_unit_is_never_taken_for_millimetres(typed: str) -> None:
    card = completed(edited(Card(), "wanted.land_width", typed))
    assert card.wanted["land_width"].value == typed
    assert "unit" in " ".join(one.text for one in issues_of(work_out(card, EMPTY)) if one.key == "land_width")


@pytest.mark.parametrize(
    "typed", ["0 -.02", "0/-0.02", "+0 -.02", "-.02 0", "-0.02/0", "+.01/-.02", "+/- 0.02"]
)
def test_a_tolerance_without_a_unit_takes_that_of_the_card_whatever_parts_its_sides(typed: str) -> None:
    card = completed(edited(Card(), "after.diameter.tolerance", typed))
    assert card.after["diameter"].tolerance == f"{typed} mm"
    assert [one.text for one in issues_of(work_out(card, EMPTY)) if "olerance" in one.text] == []


def test_completing_twice_is_completing_once() -> None:
    card = completed(
        Card(received={"drop": ("0.2", "x", "")}, after={"drop": Inspection(("0.3",), "", ".02")})
    )
    assert completed(card) == card


def test_a_bare_reading_is_judged_in_the_unit_of_the_card() -> None:
    for units, size in (("mm", 1.0), ("in", 25.4)):
        card = Card(units=units, after={"drop": Inspection(("0.02",), "0.02", "0.001")})
        job = work_out(card, EMPTY)
        (verdict,) = verdicts(job)
        assert verdict.state == "pass"
        assert verdict.marks[0].value == pytest.approx(0.02 * size)
        assert not [one for one in issues_of(job) if one.way.startswith("after")]


def test_a_bare_angle_is_degrees() -> None:
    job = work_out(Card(wanted={"rake_angle": Wanted("6")}), EMPTY)
    usual = job.entry.values["rake_angle"].usual
    assert usual is not None
    assert usual.number == pytest.approx(math.radians(6))


def test_the_life_of_a_tool_reads_its_bare_sizes_in_the_unit_of_each_card() -> None:
    found = visit_of(Card(units="in", tool=Tool("T-1"), received={"diameter": ("0.5",)}))
    assert found.before == pytest.approx(12.7)
