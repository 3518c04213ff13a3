"""A value may be another for tools of one size, or for through or blind holes; who knows the size gets that one."""

from __future__ import annotations

from pathlib import Path

import pytest

from geometry.calculations import calculation
from library.book.bands import at, entry_at, hole_of
from library.book.model import Book, Entry, Value
from library.book.opening import open_book
from library.calc.answer import Answer, answer
from library.calc.report import as_data
from library.calc.wording import in_one_paragraph
from library.cards.editing import edited
from library.cards.model import Wanted
from library.cards.starting import for_its_size, from_entry
from library.pages.as_text import as_text
from library.pages.entry import entry_page, in_hand
from library.search.sizes import Size

pytestmark = pytest.mark.usefixtures("nothing_shipped")

HEAD = """\
schema = 1

[[family]]
id = "twist-drill"
title = "Twist drills"
kind = "twist-drill"

[[entry]]
id = "awl"
family = "twist-drill"
title = "An awl"
point_angle = { usual = "118 deg", source = "shop" }

[entry.lip_relief_angle]
usual = "12 deg"
source = "shop"
"""
BAND = '\n[[entry.lip_relief_angle.bands]]\n{when}\n{more}\nsource = "common practice"\n'


def band(when: str, more: str = 'usual = "15 deg"') -> str:
    return BAND.format(when=when, more=more)


SIZES = (
    band('to = "3 mm"', 'low = "12 deg"\nhigh = "18 deg"\nnote = "Of small ones."')
    + band('over = "3 mm"\nto = "1/4 in"')
    + band('from = "10 mm"', 'usual = "8 deg"')
)


def book_of(folder: Path, bands: str) -> Book:
    (folder / "awls.toml").write_text(HEAD + bands)
    return open_book(folder)


def relief(book: Book) -> Value:
    return book.entries["awl"].values["lip_relief_angle"]


def said(value: Value) -> str:
    return (
        "unread"
        if value.unread
        else "/".join(one.text for one in (value.low, value.usual, value.high) if one)
    )


@pytest.mark.parametrize(
    ("diameter", "says", "words"),
    [
        (None, "12 deg", ""),
        (0.5, "12 deg/18 deg", "up to 3 mm"),
        (3.0, "12 deg/18 deg", "up to 3 mm"),
        (3.1, "15 deg", "over 3 mm to 1/4 in"),
        (6.35, "15 deg", "over 3 mm to 1/4 in"),
        (6.4, "12 deg", ""),
        (9.9, "12 deg", ""),
        (10.0, "8 deg", "from 10 mm on"),
        (50.0, "8 deg", "from 10 mm on"),
    ],
)
def test_the_band_of_the_size_is_taken_and_the_value_itself_between_them(
    tmp_path: Path, diameter: float | None, says: str, words: str
) -> None:
    book = book_of(tmp_path, SIZES)
    assert book.findings == ()
    found = at(relief(book), diameter)
    assert (said(found), found.band) == (says, words)
    assert found.citation.label == ("common practice" if words else "shop")


def test_a_band_of_a_kind_of_hole_is_taken_where_the_names_or_the_person_say_which(tmp_path: Path) -> None:
    both = band('hole = "blind"\nto = "3 mm"', 'usual = "20 deg"')
    book = book_of(tmp_path, band('hole = "blind"') + both + band('to = "3 mm"', 'usual = "18 deg"'))
    assert book.findings == ()
    asked = [
        (None, ""),
        (None, "through"),
        (None, "blind"),
        (2.0, ""),
        (2.0, "through"),
        (2.0, "blind"),
        (5.0, "blind"),
    ]
    wanted = ["12 deg", "12 deg", "15 deg", "18 deg", "18 deg", "20 deg", "15 deg"]
    assert [said(at(relief(book), *one)) for one in asked] == wanted
    named = Entry("a", "tap", "Tap for blind holes", values={"lip_relief_angle": relief(book)})
    assert said(entry_at(named, None).values["lip_relief_angle"]) == "15 deg"
    assert hole_of(Entry("a", "tap", "Tap for blind and through holes")) == ""


@pytest.mark.parametrize(
    ("bands", "says"),
    [
        (band('over = "5 mm"\nto = "3 mm"'), "lip_relief_angle.bands.0.to: to is '3 mm', not more than where"),
        (band('over = "5 mm"\nfrom = "5 mm"\nto = "8 mm"'), "bands.0.from: This band begins twice"),
        (band(""), "bands.0: Nothing says for which tools this band is."),
        (band('to = "3"'), "bands.0.to: "),
        (band('to = "0.5 D"'), "bands.0.to: '0.5 D' is no size of a tool."),
        (band("to = 3"), "bands.0.to: "),
        (band('hole = "square"'), "bands.0.hole: This is 'square'. It can be through or blind."),
        (band('hole = 3'), "bands.0.hole: This is 3."),
        (band('too = "3 mm"\nover = "1 mm"'), "bands.0.too: A band has no key 'too'. Did you mean to?"),
        ('bands = 3\n', "bands: This is 3; a list of bands is wanted."),
        ('bands = [3]\n', "bands.0: This is 3; a band is wanted."),
        (band('to = "3 mm"') + band('from = "3 mm"'), "bands.1: This band and the one up to 3 mm are meant"),
        (band('to = "3 mm"', 'usual = "steep"'), "bands.0.usual: "),
        (band('to = "3 mm"', ""), "bands.0: This value has neither low, usual nor high."),
        (band('to = "3 mm"', 'usual = "9 deg"\nalso = []'), "bands.0.also: A band has no key 'also'."),
    ],
)  # fmt: skip
def test_what_is_wrong_with_a_band_is_told_and_no_number_is_taken_that_it_may_be_meant_to_change(
    tmp_path: Path, bands: str, says: str
) -> None:
    book = book_of(tmp_path, bands)
    assert any(says in str(one) for one in book.findings), [str(one) for one in book.findings]
    found = said(at(relief(book), 2.0))
    is_harmless = "are meant" in says or "also" in says
    assert found in ({"15 deg", "9 deg"} if is_harmless else {"unread"})


def test_the_bands_stand_below_their_value_and_at_the_value_in_hand(tmp_path: Path) -> None:
    book = book_of(tmp_path, SIZES)
    entry = book.entries["awl"]
    lines = [line.split() for line in as_text(entry_page(book, entry)).splitlines()]
    at_head = lines.index(["Lip", "relief", "angle", "12", "deg", "P+"])
    assert lines[at_head + 1] == ["up", "to", "3", "mm", "12", "deg", "18", "deg", "P", "C+"]
    assert lines[at_head + 3] == ["from", "10", "mm", "on", "8", "deg", "P", "C"]
    told = in_hand(book, relief(book))
    assert "Up to 3 mm: 12 deg to 18 deg [common practice, no source] Of small ones." in told


def answered(book: Book, diameter: str) -> Answer:
    sheet = calculation("drill-point")
    return answer(sheet, {"diameter": diameter}, entry=book.entries["awl"], book=book)


def test_a_calculation_is_filled_with_the_number_of_the_size_and_says_so(tmp_path: Path) -> None:
    book = book_of(tmp_path, SIZES)
    filled = answered(book, "5 mm").inputs["lip_relief_angle"]
    assert filled.text == "15 deg"
    assert filled.recommended is not None
    assert in_one_paragraph(book, filled.recommended).startswith(
        "15 deg over 3 mm to 1/4 in. Source: common practice"
    )
    assert answered(book, "8 mm").inputs["lip_relief_angle"].text == "12 deg"
    small = answered(book, "2.5 mm")
    assert "lip_relief_angle" not in small.inputs
    assert said(small.offers["lip_relief_angle"]) == "12 deg/18 deg"
    offers = as_data(small, book)["offers"]
    assert offers["lip_relief_angle"]["band"] == "up to 3 mm"


def test_a_card_begun_with_a_size_wants_what_the_book_has_for_it(tmp_path: Path) -> None:
    book = book_of(tmp_path, SIZES)
    entry = book.entries["awl"]
    sizes = {"": None, "2.5": Size("2.5"), "1/4 in": Size("1/4 in"), "M3": Size("M3", True)}
    found = {size: from_entry(book, entry, "mm", sizes[size]).wanted for size in sizes}
    told = {
        size: (wanted["lip_relief_angle"].value, wanted["lip_relief_angle"].source)
        for size, wanted in found.items()
    }
    assert told == {
        "": ("12 deg", "this shop"),
        "2.5": ("12 to 18 deg", "common practice, no source, up to 3 mm"),
        "1/4 in": ("15 deg", "common practice, no source, over 3 mm to 1/4 in"),
        "M3": ("12 deg", "this shop"),  # no diameter of a tool that has no thread
    }


def test_a_size_typed_on_a_card_changes_what_is_wanted_and_nothing_that_a_person_changed(
    tmp_path: Path,
) -> None:
    book = book_of(tmp_path, SIZES)
    card = from_entry(book, book.entries["awl"])
    for size, wanted in (
        ("5 mm", "15 deg"),
        ("12", "8 deg"),
        ("2, 30 mm", "8 deg"),  # a tool with steps goes by its largest
        ("", "12 deg"),
        ("5 mm", "15 deg"),
    ):
        before, card = card, edited(card, "tool.size", size)
        card = for_its_size(card, before, book)
        assert card.wanted["lip_relief_angle"].value == wanted, size
    changed = edited(card, "wanted.lip_relief_angle", "10 deg")
    after = for_its_size(edited(changed, "tool.size", "12 mm"), changed, book)
    assert after.wanted["lip_relief_angle"] == Wanted(
        "10 deg", "15 deg", "common practice, no source, over 3 mm to 1/4 in"
    )
    assert after.wanted["point_angle"] == card.wanted["point_angle"]


def test_a_rule_may_have_bands_and_a_search_by_number_finds_them(tmp_path: Path) -> None:
    bands = SIZES.replace("entry.", "rule.")
    (tmp_path / "awls.toml").write_text(
        'schema = 1\n[[family]]\nid = "awl"\ntitle = "Awls"\nkind = "tap"\n'
        '[[entry]]\nid = "awl"\nfamily = "awl"\ntitle = "Awl"\n'
        '[[rule]]\nid = "awls"\ntitle = "awls"\nfamily = "awl"\n[rule.lip_relief_angle]\nusual = "12 deg"\nsource = "shop"\n'
        + bands
    )
    book = open_book(tmp_path)
    assert book.findings == ()
    assert said(at(relief(book), 2.0)) == "12 deg/18 deg"
    assert at(relief(book), 2.0).by_rule is not None
    (row,) = [row for row in book.rows if row.id == "awl"]
    # Derived: 8, 12, 15 and 18 degrees are pi/22.5, pi/15, pi/12 and pi/10.
    ends = [part.split(":") for part in row.ranges.removeprefix("lip_relief_angle=").split("|")]
    found = [(float(low), float(high)) for low, high in ends]
    wanted = [(0.20944, 0.20944), (0.20944, 0.314159), (0.261799, 0.261799), (0.139626, 0.139626)]
    assert found == [pytest.approx(one, abs=1e-5) for one in wanted]
