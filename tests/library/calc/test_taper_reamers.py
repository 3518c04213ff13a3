"""A reamer that cuts a taper is asked for no class of hole: told by its taper, or by how it is called."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from geometry.calculations import calculation
from library.book.model import Book, Entry, Family, Measure, Value
from library.book.opening import open_book
from library.calc.answer import Answer, answer
from library.calc.taper_reamers import cuts_a_taper, with_taper_told
from library.cards.job import Job, work_out
from library.cards.model import Card, Setting, Tool
from library.cards.starting import from_entry
from library.setup_sheet.sheets import setup_sheet
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


TAPER = calculation("back-taper")


def test_the_taper_reamers_of_the_book_grow_toward_the_shank_and_its_other_reamers_do_not(
    shipped: Book,
) -> None:
    for entry in (one for one in shipped.entries.values() if one.family == "reamer"):
        typed = {"diameter": "6 mm", "taper_ratio": "1:1000", "taper_length": "60 mm"}
        found = answer(TAPER, typed, entry=entry, book=shipped).result
        assert found is not None
        # By hand: 1 in 1000 is 0.06 mm in 60 mm.
        meant = 6.06 if "taper" in entry.id else 5.94
        assert found.outputs["diameter_there"] == pytest.approx(meant, rel=1e-12)


@pytest.mark.parametrize(("key", "number"), [("taper_ratio", 0.02), ("taper_angle", 0.0199993)])
def test_the_taper_of_an_entry_is_the_one_that_is_wanted(key: str, number: float, shipped: Book) -> None:
    # By hand: the whole angle of 1 in 50 is 2 atan(0.01), 0.0199993 radians.
    entry = Entry("a", "reamer", "Odd", values={key: Value(key, usual=Measure("as typed", number))})
    typed = {"diameter": "6 mm", "back_diameter": "7.2 mm", "taper_length": "60 mm"}
    found = answer(TAPER, typed, entry=entry, book=shipped).result
    assert found is not None
    assert found.checks[0].state == "pass"
    worn = answer(TAPER, {**typed, "back_diameter": "7.1 mm"}, entry=entry, book=shipped).result
    assert worn is not None
    assert worn.checks[0].state == "watch"


def test_a_class_that_an_entry_names_for_its_hole_makes_its_reamer_a_parallel_one(shipped: Book) -> None:
    held = Entry(
        "a",
        "reamer",
        "Taper reamer",
        values={"hole_tolerance": Value("hole_tolerance", usual=Measure("H7", word="H7"))},
    )
    assert "taper_direction" not in with_taper_told(held, None).values
    marked = Entry(
        "a",
        "reamer",
        "Odd",
        values={"hole_tolerance": Value("hole_tolerance", usual=Measure("taper", word="taper"))},
    )
    assert "taper_direction" in with_taper_told(marked, None).values


def test_a_card_of_a_taper_reamer_sets_the_table_for_a_tool_that_grows(shipped: Book) -> None:
    begun = from_entry(shipped, shipped.entries["reamer-taper-pin"])
    received: dict[str, tuple[str, ...]] = {"diameter": ("6 mm",), "back_diameter": ("7.2 mm",)}
    typed = {"taper_length": "60 mm", "wanted_taper": "1:50"}
    card = replace(begun, received=received, settings={"back-taper": Setting(typed)})
    step = work_out(card, shipped).step("back-taper")
    assert step is not None
    assert [one.state for one in step.checks] == ["pass", "note"]
    sheet = " ".join(setup_sheet(work_out(card, shipped)).split())
    assert "STOP" not in sheet
    # By hand: atan(0.6 / 60).
    assert "Swivel angle 0.57 deg" in sheet
    assert "rises 0.600 mm over 60.000 mm" in sheet
