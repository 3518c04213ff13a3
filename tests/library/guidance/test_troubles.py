"""A trouble that is seen, what to measure then, and which value to change which way."""

from __future__ import annotations

import json
from datetime import date
from pathlib import Path

import pytest

from geometry.quantities import QUANTITIES
from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.job import work_out
from library.cards.model import Card
from library.guidance.finding import guidance
from library.guidance.model import Symptom, symptoms
from library.guidance.setups import is_named
from library.guidance.troubles import meant_by, recognised, symptoms_of, told_of, troubles_of
from library.pages.as_text import as_text
from library.pages.card_answers import received_answers
from library.pages.entry import entry_page
from library.pages.own_tables import carriers
from library.pages.page import Page, Section
from library.pages.reader import Reader
from tui.main import main
from tui.screens.cards.listing import _troubles


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book()


def ids(found: tuple[Symptom, ...]) -> set[str]:
    return {one.id for one in found}


def card_of(book: Book, wrong: str, family: str = "reamer") -> str:
    card = edited(Card(id="2026-11-25-01", started=date(2026, 11, 25), family=family), "wrong", wrong)
    blocks = [block for part in received_answers(work_out(card, book), "") for block in part if block]
    return " ".join(as_text(Page("", (Section("", tuple(blocks)),)), Reader(80)).split())


@pytest.mark.parametrize(
    ("words", "found"),
    [
        ("chatter", "Chatters"),
        ("chattering", "Chatters"),
        ("tears the thread", "Tears the thread"),
        ("cuts large", "Cuts large"),
        ("oversize", "Cuts large"),
        ("cuts small", "Cuts small"),
        ("squeals", "Squeals"),
        ("drifts", "Drifts"),
        ("leaves a burr", "Leaves a burr"),
        ("breaks at the corner", "Breaks at the corner"),
        ("burns", "Burns"),
    ],
)
def test_a_trouble_is_found_by_its_words(book: Book, words: str, found: str) -> None:
    assert found in {one.title for one in meant_by(words.split(), symptoms(book).values())}


@pytest.mark.parametrize("words", ["the", "", "reamer", "gun tap"])
def test_words_that_are_no_trouble_find_none(book: Book, words: str) -> None:
    assert meant_by(words.split(), symptoms(book).values()) == ()


def test_every_symptom_says_what_to_measure_and_to_change_and_a_quantity_has_its_way(book: Book) -> None:
    for one in symptoms(book).values():
        assert one.measure is not None, one.id
        assert one.change is not None, one.id
        assert bool(one.value) is bool(one.way), one.id
        assert not one.value or one.value in QUANTITIES, one.id


def test_every_family_has_its_own_troubles_and_the_trade_s_own_words_among_them(book: Book) -> None:
    for family in book.families:
        assert len(troubles_of(book, family)) >= 4, family
    titles = {one.title for one in symptoms(book).values()}
    # The words that were asked for.
    assert {
        "Chatters",
        "Burns",
        "Cuts large",
        "Cuts small",
        "Tears the thread",
        "Squeals",
        "Drifts",
        "Leaves a burr",
        "Breaks at the corner",
    } <= titles


def test_a_family_of_a_known_kind_has_the_troubles_of_its_kind(book: Book) -> None:
    assert ids(symptoms_of(book, "acme-tap")) == ids(symptoms_of(book, "tap"))
    assert all(not one.families for one in symptoms_of(book, "gone"))


def test_a_person_s_own_words_on_a_card_tell_of_the_trouble(book: Book) -> None:
    found = told_of("It chattered badly, and the hole is bell mouthed.", symptoms_of(book, "reamer"))
    assert {one.title for one in found} == {"Chatters", "Bell mouth"}
    assert told_of("Rusty.", symptoms_of(book, "reamer")) == ()


def test_beside_the_card_stands_what_to_look_at_and_to_change(book: Book) -> None:
    said = card_of(book, "It chatters.")
    assert "Chatters Look at how the teeth are spaced" in said
    assert "Land relief: less." in said
    assert "Look at" not in card_of(book, "Rusty.")


@pytest.mark.parametrize("family", ["tap", "twist-drill", "step-drill", "countersink", "reamer", "end-mill"])
@pytest.mark.parametrize("words", ["Dull", "it is blunt", "Worn."])
def test_a_dull_tool_is_known_whatever_it_is_and_what_has_to_come_off_is_told(
    book: Book, family: str, words: str
) -> None:
    assert "Dull" in troubles_of(book, family)
    said = card_of(book, words, family)
    assert "Look at the wear under a glass, at the corners first" in said
    assert "common practice, no source" in said


REDUCED = "twist-drill-ground-down"


def test_too_big_is_the_size_of_a_drill_to_be_ground_down_and_the_hole_of_any_other(book: Book) -> None:
    for entry, title in ((REDUCED, "Too big"), ("twist-drill-jobber-plain-steel", "Cuts large")):
        card = Card(id="2026-11-25-01", started=date(2026, 11, 25), family="twist-drill", entry=entry)
        job = work_out(edited(card, "wrong", "Too big"), book)
        shown = [block for part in received_answers(job, "") for block in part if block]
        text = " ".join(as_text(Page("", (Section("", tuple(shown)),)), Reader(80)).split())
        assert ("the height of both lips" in text) is (title == "Cuts large")
        assert ("over the lands" in text) is (title == "Too big")
        listed = [one.id for one in _troubles(job)]
        assert ("Too big" in listed) is (title == "Too big")


def test_what_is_seen_on_some_tools_alone_is_told_of_no_other_and_hides_no_entry(book: Book) -> None:
    alone = [one for one in symptoms(book).values() if one.when]
    assert alone
    for one in alone:
        assert one not in symptoms_of(book, one.families[0])
        its = [
            entry
            for entry in book.entries.values()
            if entry.family in one.families and is_named(entry, one.when)
        ]
        assert its
        assert all(one in symptoms_of(book, one.families[0], entry) for entry in its)
        assert [family.id for family in carriers(book, one)]


@pytest.mark.parametrize(
    ("entry", "whole"), [("reamer-taper-pin", True), ("reamer-machine-plain-steel", False)]
)
def test_a_taper_reamer_that_tears_is_cleared_along_its_whole_length_first(
    entry: str, whole: bool, book: Book
) -> None:
    found = troubles_of(book, "reamer", book.entries[entry])["Tears the hole"]
    texts = [one.change.text for one in found if one.change is not None]
    assert ("along the whole length" in texts[0]) is whole
    assert not [text for text in texts if "bevel" in text and "parallel" not in text]
    order = book.families["reamer"].texts["order"]
    assert "of a taper reamer the clearance along the whole length" in order


@pytest.mark.parametrize(
    ("family", "words", "title"),
    [
        ("tap", "Tears", "Tears the thread"),
        ("tap", "It tore; the thread is torn.", "Tears the thread"),
        ("twist-drill", "Too big", "Cuts large"),
        ("twist-drill", "it cuts oversized", "Cuts large"),
        ("step-drill", "Burnt", "Burns"),
        ("step-drill", "Burns", "Burns"),
        ("reamer", "chipped", ""),
        ("countersink", "Chipped at one tooth", "Breaks at the corner"),
        ("reamer", "Wears", "Wears too soon"),
        ("twist-drill", "Over 12 mm", ""),
        ("twist-drill", "A big burr.", "Leaves a burr"),
        ("reamer", "Cuts", ""),
    ],
)
def test_a_trouble_is_known_by_its_beginning_and_by_the_words_of_the_shop(
    book: Book, family: str, words: str, title: str
) -> None:
    assert [one.title for one in recognised(words, symptoms_of(book, family))] == ([title] if title else [])


def test_what_was_taken_for_a_trouble_of_another_name_is_told(book: Book) -> None:
    assert 'Squeals: taken for "Binds"' in card_of(book, "Squeals", "step-drill")
    assert "taken for" not in card_of(book, "It chatters.")


@pytest.mark.parametrize("words", ["Breaks", "it broke off", "Snapped", "Chipped teeth"])
def test_a_tap_that_breaks_has_a_trouble_of_taps_and_not_the_corner_of_a_drill(
    book: Book, words: str
) -> None:
    found = recognised(words, symptoms_of(book, "tap"))
    assert {one.title for one in found} <= {"Breaks"}
    assert "corner" not in card_of(book, words, "tap")
    assert "taken for" not in card_of(book, "It breaks", "tap")


def test_only_troubles_of_the_tool_or_of_all_tools_are_taken_and_other_words_stay_as_typed(
    book: Book,
) -> None:
    for family in book.families:
        own = {family, book.families[family].like, book.kind_of(family)}
        others = [one for one in symptoms(book).values() if one.families and own.isdisjoint(one.families)]
        here = symptoms_of(book, family)
        assert all(not one.families or not own.isdisjoint(one.families) for one in here), family
        titles = {one.title for one in here}
        for other in others:
            found = recognised(other.title, here)
            assert {one.title for one in found} <= titles, (family, other.title)
    assert recognised("Web splits", symptoms_of(book, "twist-drill"))
    assert "Web splits" not in card_of(book, "Web splits", "tap"), "a tap is not told of a trouble of drills"


def test_a_trouble_of_that_very_name_goes_before_one_that_is_said_so_too() -> None:
    binds, burns = Symptom("a", "Binds", synonyms=("burns",)), Symptom("b", "Burns")
    assert [one.title for one in recognised("Burns", [binds, burns])] == ["Burns"]
    assert [one.title for one in recognised("Burns and binds", [binds, burns])] == ["Binds", "Burns"]
    assert [one.id for one in meant_by(["burns"], [binds, burns])] == ["b", "a"]


@pytest.mark.parametrize("family", ["step-drill", "subland-drill", "twist-drill", "countersink", "end-mill"])
def test_burns_is_a_trouble_of_its_own_wherever_it_is_known(book: Book, family: str) -> None:
    assert "Burns" in troubles_of(book, family)
    assert "taken for" not in card_of(book, "Burns", family)


def test_the_list_of_troubles_is_that_of_the_family(book: Book) -> None:
    job = work_out(Card(id="2026-11-25-01", started=date(2026, 11, 25), family="countersink"), book)
    listed = [one.id for one in _troubles(job)]
    assert listed[0] == "Chatters"
    assert "Tears the thread" not in listed


def test_in_full_every_trouble_of_the_family_stands_on_the_page_of_an_entry(book: Book) -> None:
    text = " ".join(as_text(entry_page(book, book.entries["reamer-rose"], sources=True), Reader(80)).split())
    for title, rows in troubles_of(book, "reamer").items():
        assert title in text
        for one in rows:
            assert one.change is not None
            assert one.change.said() in text


def test_find_gives_a_short_answer_first(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["find", "chatter"]) == 0
    out = capsys.readouterr().out.splitlines()
    assert out[0] == "Chatters"
    assert len(out) <= 36
    assert main(["find", "reamer", "chatters"]) == 0
    text = " ".join(capsys.readouterr().out.split())
    assert "Less relief, or a wider land" in text
    assert "Countersinks." not in text
    assert main(["find", "chatter", "--json"]) == 0
    found = [one for one in json.loads(capsys.readouterr().out) if one.get("kind") == "symptom"]
    assert {"value", "way", "measure", "change", "source"} <= set(found[0])


def test_a_shop_changes_one_line_of_a_symptom_and_adds_its_own(tmp_path: Path) -> None:
    (tmp_path / "ours.toml").write_text(
        'schema = 1\n\n[[symptom]]\nid = "reamer-chatters-relief"\nway = "more"\n\n'
        '[[symptom]]\nid = "sings"\ntitle = "Sings"\nfamilies = ["reamer"]\n'
        'change = { text = "Slower.", source = "shop" }\n'
    )
    book = open_book(tmp_path)
    assert book.findings == ()
    known = symptoms(book)
    assert (known["reamer-chatters-relief"].way, known["reamer-chatters-relief"].title) == (
        "more",
        "Chatters",
    )
    assert "Sings" in troubles_of(book, "reamer")


@pytest.mark.parametrize(
    ("family", "said", "trouble"),
    [
        ("tap", "broken", "Breaks"),
        ("tap", "broken tooth", "Breaks"),
        ("countersink", "broken tooth", "Breaks at the corner"),
        ("end-mill", "Broken tooth.", "Breaks at the corner"),
        ("twist-drill", "hole too big", "Cuts large"),
        ("reamer", "hole too big", "Cuts large"),
        ("subland-drill", "hole too big", "Cuts large"),
        ("tap", "loads up", "Chips pack"),
        ("acme-tap", "chip packing", "Chips pack"),
    ],
)
def test_a_trouble_is_known_by_the_words_of_the_bench(family: str, said: str, trouble: str) -> None:
    book = open_book()
    assert trouble in [one.title for one in recognised(said, symptoms_of(book, family))]
    assert trouble in {one.title for one in guidance(book, said.casefold().rstrip(".").split()).symptoms}
