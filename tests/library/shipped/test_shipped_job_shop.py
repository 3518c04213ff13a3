"""The tools that a job shop meets in its first month: found by the trade's words, with their dangers and their hand."""

from __future__ import annotations

import pytest

from geometry.calculations import calculation
from library.book.model import Book
from library.book.opening import open_book
from library.book.rows import Rows
from library.calc.answer import answer
from library.calc.by_family import sheets_for
from library.calc.cautions import cautions_for
from library.search.ranking import ranked


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book()


@pytest.mark.parametrize(
    ("words", "family"),
    [
        ("jobber", "twist-drill"),
        ("stub", "stub-drill"),
        ("screw machine drill", "stub-drill"),
        ("spotting", "spotting-drill"),
        ("spot drill", "spotting-drill"),
        ("left hand drill", "left-hand-drill"),
        ("broken bolt", "left-hand-drill"),
        ("spade", "spade-drill"),
        ("masonry", "masonry-drill"),
        ("concrete", "masonry-drill"),
        ("carbide drill", "carbide-drill"),
        ("end mill", "end-mill"),
        ("slot drill", "slot-drill"),
        ("keyway", "slot-drill"),
        ("wire thread insert", "insert-tap"),
        ("STI", "insert-tap"),
        ("left hand tap", "left-hand-tap"),
        ("Acme", "acme-tap"),
        ("trapezoidal", "acme-tap"),
        ("BA tap", "tap"),
        ("NPTF", "tap"),
    ],
)
def test_they_are_found_by_the_words_of_the_trade(book: Book, words: str, family: str) -> None:
    assert isinstance(book.rows, Rows)
    assert book.rows[ranked(book.rows, words).numbers[0]].family == family


# Common practice, no source: which other tool each is ground like, and on which surface first.
@pytest.mark.parametrize(
    ("family", "kind", "first"),
    [
        ("stub-drill", "twist-drill", "lip"),
        ("spotting-drill", "twist-drill", "lip"),
        ("left-hand-drill", "twist-drill", "lip"),
        ("spade-drill", "twist-drill", "lip"),
        ("masonry-drill", "twist-drill", "lip"),
        ("carbide-drill", "twist-drill", "lip"),
        ("end-mill", "end-mill", "end"),
        ("slot-drill", "end-mill", "end"),
        ("insert-tap", "tap", "chamfer"),
        ("left-hand-tap", "tap", "chamfer"),
        ("acme-tap", "tap", "chamfer"),
    ],
)
def test_each_is_ground_like_a_kind_that_the_calculations_know(
    book: Book, family: str, kind: str, first: str
) -> None:
    found = book.families[family]
    assert (found.kind, found.surfaces[0]) == (kind, first)
    assert len(sheets_for(found)) >= 10


def test_an_end_mill_has_its_outside_ground_and_no_threads_looked_at(book: Book) -> None:
    names = {sheet.name for sheet in sheets_for(book.families["end-mill"])}
    assert {"wheel-tilt", "setting-height", "relief-facets", "face-offset", "feed-clearance"} <= names
    assert {"lead-over-land", "tap-chamfer", "drill-point", "cone-relief"}.isdisjoint(names)


def test_carbide_brings_its_dust_and_its_wheel_and_braze_its_cadmium(book: Book) -> None:
    told = 0
    for entry in book.entries.values():
        cautions = {one.id for one in cautions_for(None, entry, book)}
        if "carbide" in entry.title.casefold() and "tipped machine" not in entry.title:
            told += 1
            assert {"carbide-dust", "diamond-wheel"} <= cautions, entry.id
        if entry.family == "masonry-drill" or "tipped" in entry.id:
            assert {"carbide-dust", "cadmium-braze"} <= cautions, entry.id
    assert told >= 14


def test_no_caution_on_carbide_stands_with_a_tool_of_steel(book: Book) -> None:
    for family in ("stub-drill", "left-hand-drill", "spade-drill", "insert-tap", "left-hand-tap", "acme-tap"):
        assert "diamond-wheel" not in book.families[family].cautions
    assert "diamond-wheel" not in book.entries["end-mill-plain-steel"].cautions


def test_left_hand_tools_say_so_and_no_other_one_does(book: Book) -> None:
    left = {entry.id for entry in book.entries.values() if "hand" in entry.values}
    assert all(book.entries[name].values["hand"].usual.word == "left" for name in left)  # type: ignore[union-attr]
    families = {"left-hand-drill", "left-hand-tap"}
    assert left == {one.id for one in book.entries.values() if one.family in families} | {
        "acme-tap-left-hand-bronze"
    }


def sentences(book: Book, sheet: str, entry: str, **typed: str) -> str:
    found = answer(calculation(sheet), typed, book=book, entry=book.entries[entry])
    assert found.result is not None, found.issues
    return " ".join(str(check.sentence) for check in found.result.checks)


@pytest.mark.parametrize(
    ("entry", "turns"),
    [
        ("left-hand-tap-plain-steel", "anticlockwise"),
        ("acme-tap-left-hand-bronze", "anticlockwise"),
        ("tap-hand-plain-steel", "clockwise"),
        ("tap-spiral-flute-left-hand", "clockwise"),  # Its flutes wind left; its thread does not.
    ],
)
def test_the_lead_over_the_land_follows_the_hand_of_the_thread(book: Book, entry: str, turns: str) -> None:
    said = sentences(book, "lead-over-land", entry, diameter="12 mm", pitch="1.75 mm", land_width="3 mm")
    assert f"as it cuts, {turns} seen from its shank" in said


@pytest.mark.parametrize(
    ("entry", "end"),
    [
        ("reamer-taper-finishing", "shank"),  # Left-hand flutes, right-hand cut.
        ("tap-spiral-flute-left-hand", "shank"),
        ("left-hand-drill-plain-steel", "point"),  # Left-hand flutes, left-hand cut.
        ("end-mill-plain-steel", "point"),
    ],
)
def test_the_tilt_of_the_wheel_follows_the_hand_of_cut_and_flute(book: Book, entry: str, end: str) -> None:
    said = sentences(book, "wheel-tilt", entry, helix_angle="20 deg", relief_angle="8 deg")
    assert f"deeper toward the {end}" in said


def test_two_starts_have_twice_the_lead_of_one(book: Book) -> None:
    leads = []
    for entry in ("trapezoidal-tap-two-starts", "trapezoidal-tap-bronze"):
        typed = {"diameter": "20 mm", "pitch": "4 mm", "land_width": "5 mm"}
        found = answer(calculation("lead-over-land"), typed, book=book, entry=book.entries[entry])
        assert found.result is not None
        leads.append(found.result.outputs["lead"])
    # Tr 20 x 8 (P4): the designation itself names the lead before the pitch.
    assert leads == pytest.approx([8, 4])


def test_no_insert_tap_is_given_the_diameter_of_the_screw(book: Book) -> None:
    taps = [entry for entry in book.entries.values() if entry.family == "insert-tap"]
    assert len(taps) >= 5
    for tap in taps:
        assert "diameter" not in tap.values
        assert "larger than the screw" in tap.notes
