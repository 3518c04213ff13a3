"""A reamer that cuts a taper is asked for no class of hole: told by its taper, or by how it is called."""

from __future__ import annotations

from pathlib import Path

import pytest

from geometry.calculations import calculation
from library.book.model import Book, Entry, Family, Measure, Value
from library.book.opening import open_book
from library.calc.answer import Answer, answer
from library.calc.taper_reamers import cuts_a_taper
from library.cards.job import Job, work_out
from library.cards.model import Card, Tool
from library.cards.starting import from_entry
from library.units.show import say


@pytest.fixture(scope="module")
def shipped() -> Book:
    return open_book()


SHEET = calculation("reamer-size")


def asked(entry: Entry, book: Book, **typed: str) -> Answer:
    return answer(
        SHEET, {"nominal_diameter": "12 mm", "measured_diameter": "12.03 mm", **typed}, entry=entry, book=book
    )


@pytest.mark.parametrize("name", ["reamer-taper-pin", "reamer-taper-finishing"])
def test_the_taper_reamers_of_the_book_have_no_limits_of_a_class(shipped: Book, name: str) -> None:
    found = asked(shipped.entries[name], shipped)
    assert found.result is None
    assert "no class of hole" in found.issues[0].text
    named = asked(shipped.entries[name], shipped, hole_tolerance="H7").result
    assert named is not None
    assert named.checks[0].state == "stop"


def test_all_other_reamers_of_the_book_are_held_to_a_presumed_class_that_stops_nothing(shipped: Book) -> None:
    others = [one for one in shipped.entries.values() if one.family == "reamer" and "taper" not in one.id]
    assert len(others) > 8
    for entry in others:
        found = asked(entry, shipped).result
        assert found is not None
        assert {one.state for one in found.checks} == {"note"}
        assert "H7, which is presumed" in say(found.checks[0].sentence)


@pytest.mark.parametrize(
    ("title", "is_one"),
    [
        ("Morse taper reamer No. 3", True),
        ("Taper-pin reamer 1:50", True),
        ("Machine reamer, Morse taper shank", False),
        ("Hand reamer with a long taper lead", False),
    ],
)
def test_a_shop_calls_its_taper_reamers_as_the_trade_does(title: str, is_one: bool) -> None:
    assert cuts_a_taper(Entry("a", "reamer", title), None) is is_one
    assert cuts_a_taper(Entry("a", "own", ""), Family("own", title, kind="reamer")) is is_one


# 1 in 50 is a taper pin, 1 in 1000 the back taper of a reamer; 1.146 degrees, 0.020 radians, is the angle of 1 in 50.
@pytest.mark.parametrize(
    ("key", "number", "is_one"),
    [("taper_ratio", 0.02, True), ("taper_ratio", 0.001, False), ("taper_angle", 0.02, True)],
)
def test_the_taper_of_an_entry_tells_a_taper_reamer(key: str, number: float, is_one: bool) -> None:
    entry = Entry("a", "reamer", "Odd reamer", values={key: Value(key, usual=Measure("as typed", number))})
    assert cuts_a_taper(entry, None) is is_one


def test_a_card_goes_by_the_title_in_the_shop_s_book_and_not_by_what_a_tool_is_called(tmp_path: Path) -> None:
    (tmp_path / "own.toml").write_text(
        'schema = 1\n\n[[entry]]\nid = "r-17"\nfamily = "reamer"\ntitle = "Morse taper reamer No. 3"\nwork_material = "any"\n'
    )
    book = open_book(tmp_path)

    def hole(card: Card, last: Job | None = None) -> Job:
        return work_out(card, book, last)

    of_shop = hole(from_entry(book, book.entries["r-17"])).step("reamer-size")
    assert of_shop is not None
    assert of_shop.rests
    plain = hole(Card(family="reamer", tool=Tool(size="12 mm")))
    named = Card(family="reamer", tool=Tool("Taper pin reamer", size="12 mm"))
    for job in (hole(named), hole(named, plain)):
        step = job.step("reamer-size")
        assert step is not None
        assert step.works
