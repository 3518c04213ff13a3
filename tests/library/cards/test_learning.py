"""What a job taught goes into the book beside what other sources say, and is told as such afterwards."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from library.book.model import Book, Citation, Entry, Label, Measure, Value
from library.book.opening import open_book
from library.cards.job import work_out
from library.cards.learn import Lesson, change_for, lessons, not_in_book
from library.cards.model import Card, Wanted
from library.demo import lay_out
from library.editing.planning import plan
from library.editing.saving import save
from library.pages.as_text import as_text
from library.pages.card_end import end_answers
from library.pages.page import Page, Section

DRILL = "ferry-hatch-dowel-drill"
TAUGHT = Card(
    id="2026-11-25-01",
    family="twist-drill",
    entry=DRILL,
    wanted={"land_relief_angle": Wanted("12 deg", "9 deg", "ferry-yard-notebook", "9 polished")},
)


@pytest.fixture
def yard(tmp_path: Path) -> Path:
    folder = tmp_path / "yard"
    lay_out(folder)
    return folder


def _learned(yard: Path, card: Card) -> Book:
    book = open_book(yard)
    (lesson,) = lessons(card)
    save(plan(change_for(lesson, book), yard, Path("library/shipped").resolve()))
    return open_book(yard)


def _texts(value: Value) -> tuple[str, ...]:
    return tuple(one.text if one else "" for one in (value.low, value.usual, value.high))


def test_the_notebook_keeps_its_value_beside_the_one_that_was_learned(yard: Path) -> None:
    book = _learned(yard, TAUGHT)
    value = book.entries[DRILL].values["land_relief_angle"]
    assert (_texts(value), value.citation.label) == (("", "12 deg", ""), "shop")
    (other,) = value.also
    assert _texts(other) == ("", "9 deg", "")
    assert (other.citation.document, other.citation.place) == ("ferry-yard-notebook", "page 12, in pencil")
    assert "9 degrees" in value.disagreement
    assert {one.place.file.name for one in book.findings} == {"a-slip.toml"}


def test_a_range_of_another_source_stays_whole_and_its_ends_do_not_become_the_shops(yard: Path) -> None:
    countersink = "countersink-multi-flute-90-plain-steel"
    wanted = {"cone_relief_angle": Wanted("8 deg 30 min", "9 deg", "ferry-yard-notebook")}
    value = _learned(yard, Card(id="2026-11-25-02", entry=countersink, wanted=wanted))
    found = value.entries[countersink].values["cone_relief_angle"]
    assert _texts(found) == ("", "8 deg 30 min", "")
    assert [_texts(one) for one in found.also] == [("8 deg", "9 deg", "9 deg")]


@pytest.mark.parametrize("label", ["from memory", "common practice", "published"])
def test_the_limits_of_another_source_never_become_the_shops_by_one_number(label: Label) -> None:
    low, usual, high = Measure("3 deg", 0.052), Measure("5 deg", 0.087), Measure("7 deg", 0.122)
    relief = Value("land_relief_angle", low, usual, high, Citation(label, speaks_of="drills"))
    book = Book({"r": Entry("r", "reamer", "Reamer", values={"land_relief_angle": relief})})
    change = change_for(
        Lesson("r", "land_relief_angle", "6.0 deg", "A new tool of 12 mm.", "", "measured"), book
    )
    # All three numbers are another source's; the shop found one of them, and only that is told as the shop's.
    assert [change.fields[key] for key in ("low", "usual", "high")] == [None, "6.0 deg", None]
    assert (change.fields["source"], change.fields["speaks_of"]) == ("shop", None)
    in_shop = replace(book.entries["r"], values={"land_relief_angle": replace(relief, layer="shop")})
    again = change_for(Lesson("r", "land_relief_angle", "6.0 deg", "", ""), Book({"r": in_shop}))
    said = {"low": "3 deg", "usual": "5 deg", "high": "7 deg", "speaks_of": "drills"}
    assert again.fields["also"] == [said | {"source": label}]


def test_a_third_value_stands_beside_the_two_that_were_there(yard: Path) -> None:
    third = Card(
        id="2026-11-25-01", entry=DRILL, wanted={"land_relief_angle": Wanted("10 deg 30 min", "9 deg")}
    )
    value = _learned(yard, third).entries[DRILL].values["land_relief_angle"]
    assert _texts(value) == ("", "10 deg 30 min", "")
    assert [(one.usual.text, one.citation.label) for one in value.also if one.usual] == [
        ("12 deg", "shop"),
        ("9 deg", "published"),
    ]


def test_learning_again_replaces_the_shops_own_value_and_keeps_the_notebooks_once(yard: Path) -> None:
    _learned(yard, TAUGHT)
    again = Card(
        id="2026-11-26-01", entry=DRILL, wanted={"land_relief_angle": Wanted("11 deg", "12 deg", "shop")}
    )
    value = _learned(yard, again).entries[DRILL].values["land_relief_angle"]
    assert _texts(value) == ("", "11 deg", "")
    assert [_texts(one) for one in value.also] == [("", "9 deg", "")]


def test_what_was_saved_is_no_lesson_any_more_and_the_card_says_that_it_is_in_the_book(yard: Path) -> None:
    assert [one.key for one in not_in_book(TAUGHT, open_book(yard))] == ["land_relief_angle"]
    assert "not in the book yet" in _end(open_book(yard))
    book = _learned(yard, TAUGHT)
    assert not_in_book(TAUGHT, book) == ()
    assert "it is in the book now" in _end(book)
    assert "not in the book yet" not in _end(book)


def _end(book: Book) -> str:
    parts = [block for part in end_answers(work_out(TAUGHT, book), "") for block in part if block is not None]
    return as_text(Page("", (Section("", tuple(parts)),)))
