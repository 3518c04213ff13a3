"""A family of the shop's own follows the one that it is like, in all that it does not say itself."""

from __future__ import annotations

from pathlib import Path

import pytest

from library.book.model import Book, Family
from library.book.opening import open_book
from library.calc.by_family import sheets_for
from tests.library.shop_texts import OWN_FAMILIES


def book_of(folder: Path, text: str) -> Book:
    (folder / "ours.toml").write_text(text if text.startswith("schema") else f"schema = 1\n{text}")
    return open_book(folder)


def family(name: str, **said: str) -> str:
    lines = [
        f'id = "{name}"',
        f'title = "{name.capitalize()}s"',
        *(f"{key} = {text}" for key, text in said.items()),
    ]
    return "[[family]]\n" + "\n".join(lines) + "\n"


@pytest.fixture
def ours(tmp_path: Path) -> Book:
    book = book_of(tmp_path, OWN_FAMILIES)
    assert book.findings == ()
    return book


def test_a_family_has_kind_surfaces_cautions_and_texts_of_the_one_that_it_is_like(ours: Book) -> None:
    flats, drills = ours.families["flat-drill"], ours.families["twist-drill"]
    assert flats.kind == "twist-drill"
    assert (flats.surfaces, flats.cautions) == (drills.surfaces, drills.cautions)
    assert "light-cut-on-a-land" not in flats.cautions
    assert flats.texts["order"] == drills.texts["order"] != ""


def test_what_it_says_itself_wins_and_its_texts_keep_the_order_of_all_families(ours: Book) -> None:
    flats, drills = ours.families["flat-drill"], ours.families["twist-drill"]
    assert flats.texts["never_ground"] == "The sides of the blade."
    assert list(flats.texts) == [key for key in drills.texts if key != "recognise"]


def test_what_tells_two_families_apart_is_never_taken(ours: Book) -> None:
    flats, drills = ours.families["flat-drill"], ours.families["twist-drill"]
    assert "recognise" in drills.texts
    assert (flats.title, flats.what) == ("Flat drills", "A flat blade with two lips, held in a bar.")
    assert drills.synonyms
    assert flats.synonyms == ()
    assert "recognise" not in flats.texts


def test_the_calculations_are_those_of_the_other_family(ours: Book) -> None:
    assert sheets_for(ours.families["flat-drill"]) == sheets_for(ours.families["twist-drill"]) != ()


def test_a_family_of_no_kind_has_the_calculations_of_its_surfaces(ours: Book) -> None:
    burrs = ours.families["valve-burr"]
    names = [sheet.name for sheet in sheets_for(burrs)]
    assert (burrs.kind, burrs.texts) == ("", {})
    assert names[0] == "cone-relief"
    assert {"relief-drop", "wheel-speed", "index-moves"} < set(names)
    assert {"drill-point", "tap-chamfer", "lead-over-land"}.isdisjoint(names)


def test_a_chain_is_followed_and_the_nearest_that_says_something_is_taken(tmp_path: Path) -> None:
    chain = (
        family("gun-drill", like='"flat-drill"'),
        family("flat-drill", like='"twist-drill"', fails='"The corners burn."', surfaces='["lip"]'),
    )
    guns = book_of(tmp_path, "".join(chain)).families["gun-drill"]
    assert (guns.kind, guns.surfaces, guns.texts["fails"]) == ("twist-drill", ("lip",), "The corners burn.")
    assert "order" in guns.texts


def test_a_shop_that_changes_a_family_changes_what_follows_it(tmp_path: Path) -> None:
    book = book_of(
        tmp_path,
        family("flat-drill", like='"twist-drill"') + '[[family]]\nid = "twist-drill"\nfails = "Early."\n',
    )
    assert book.families["flat-drill"].texts["fails"] == "Early."


def test_a_shipped_family_made_like_another_keeps_what_it_says_itself(tmp_path: Path) -> None:
    book = book_of(tmp_path, '[[family]]\nid = "subland-drill"\nlike = "twist-drill"\n')
    assert book.findings == ()
    assert book.families["subland-drill"].kind == "subland-drill"
    assert book.families["subland-drill"].surfaces[0] == "shoulder"


@pytest.mark.parametrize("like", ["gone", "flat-drill", "hand-drill"])
def test_an_unknown_one_and_a_circle_are_told_and_leave_the_family_as_it_says_itself(
    tmp_path: Path, like: str
) -> None:
    text = family("flat-drill", like=f'"{like}"', surfaces='["lip"]') + family(
        "hand-drill", like='"flat-drill"'
    )
    book = book_of(tmp_path, text)
    assert any(one.way == "flat-drill.like" and one.severity == "warning" for one in book.findings)
    assert book.families["flat-drill"].surfaces == book.families["hand-drill"].surfaces == ("lip",)


def test_a_circle_over_two_files_is_told_also_when_only_one_of_them_was_read_again(tmp_path: Path) -> None:
    (tmp_path / "a.toml").write_text("schema = 1\n" + family("a-drill", like='"b-drill"'))
    (tmp_path / "b.toml").write_text("schema = 1\n" + family("b-drill", like='"twist-drill"'))
    assert open_book(tmp_path).findings == ()
    (tmp_path / "b.toml").write_text("schema = 1\n" + family("b-drill", like='"a-drill"'))
    assert [one.way for one in open_book(tmp_path).findings] == ["a-drill.like", "b-drill.like"]


def test_a_family_of_which_nothing_is_said_has_what_serves_every_tool_and_is_told_of(tmp_path: Path) -> None:
    book = book_of(tmp_path, family("hob"))
    (finding,) = book.findings
    assert (finding.way, finding.severity) == ("hob", "warning")
    assert "index-moves" in [sheet.name for sheet in sheets_for(book.families["hob"])]


def test_a_kind_alone_is_enough(tmp_path: Path) -> None:
    book = book_of(tmp_path, family("shell-reamer", kind='"reamer"'))
    assert book.findings == ()
    assert sheets_for(book.families["shell-reamer"])[0].name == "bevel-lead"


def test_an_unknown_family_has_no_calculations() -> None:
    assert sheets_for(None) == ()
    assert Book({}).kind_of("gone") == ""
    assert Book({}, {"hob": Family("hob", "Hobs", kind="tap")}).kind_of("hob") == "tap"
