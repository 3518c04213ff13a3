"""After grinding a reading is held against a range or a limit that is wanted, as it is against a number."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from library.book.model import Book
from library.cards.as_data import card_data
from library.cards.inspecting import verdicts
from library.cards.issues import issues_of
from library.cards.job import work_out
from library.cards.model import Card, Inspection, Wanted
from library.setup_sheet.sheets import setup_sheet
from library.units.system import INCH, METRIC


def ground(job: Card, wanted: str, reading: str, tolerance: str = "", key: str = "rake_angle") -> Card:
    """The tap of the bench with one more quantity that is wanted and was measured after grinding."""
    return replace(
        job,
        wanted={**job.wanted, key: Wanted(wanted)},
        after={key: Inspection(tuple(reading.split("; ")), "", tolerance)},
    )


@pytest.mark.parametrize(
    ("wanted", "reading", "tolerance", "state", "off"),
    [
        ("5 to 8 deg", "6 deg", "", "pass", ""),
        ("5 to 8 deg", "5 deg", "", "pass", ""),
        ("5 to 8 deg", "8 deg", "", "pass", ""),
        ("5 to 8 deg", "8.5 deg", "", "stop", "0.50 deg over what is wanted"),
        ("5 to 8 deg", "4 deg", "", "stop", "1.00 deg under what is wanted"),
        ("5 to 8 deg", "8.5 deg", "0.5 deg", "pass", ""),
        ("5 to 8 deg", "8.75 deg", "0.5 deg", "stop", "0.25 deg over the tolerance"),
        ("5 to 8 deg", "4.75 deg", "+0.5 -0 deg", "stop", "0.25 deg under the tolerance"),
        ("at most 8 deg", "-2 deg", "", "pass", ""),
        ("at most 8 deg", "9 deg", "", "stop", "1.00 deg over what is wanted"),
        ("at least 5 deg", "20 deg", "", "pass", ""),
        ("at least 5 deg", "4 deg", "0.5 deg", "stop", "0.50 deg under the tolerance"),
    ],
)
def test_a_reading_passes_inside_the_range_and_is_off_outside_it(
    book: Book, job: Card, wanted: str, reading: str, tolerance: str, state: str, off: str
) -> None:
    (verdict,) = verdicts(work_out(ground(job, wanted, reading, tolerance), book))
    (mark,) = verdict.marks
    assert (mark.state, mark.text_off) == (state, off)
    assert (verdict.state, verdict.wanted) == (state, None)


def test_the_range_of_the_inspection_itself_comes_before_the_wanted_number(book: Book, job: Card) -> None:
    card = ground(job, "6 deg", "9 deg")
    for said, state in (("8 to 10 deg", "pass"), ("at most 8 deg", "stop")):
        after = {"rake_angle": Inspection(("9 deg",), said, "")}
        (verdict,) = verdicts(work_out(replace(card, after=after), book))
        assert verdict.state == state


def test_a_range_of_the_drop_comes_before_the_one_that_was_worked_out(book: Book, job: Card) -> None:
    card = replace(job, after={"drop": Inspection(("0.3 mm",) * 4, "0.2 to 0.35 mm", "")})
    (verdict,) = verdicts(work_out(card, book))
    assert verdict.state == "pass"


def test_a_share_of_the_diameter_is_a_limit_too(book: Book, job: Card) -> None:
    # 0.25 of 11.97 is 2.9925 mm.
    card = ground(job, "at most 0.25 D", "2.99 mm; 3 mm; 2.9 mm; 2.9 mm", key="land_width")
    (verdict,) = verdicts(work_out(card, book))
    assert [mark.state for mark in verdict.marks] == ["pass", "stop", "pass", "pass"]


def test_what_is_outside_the_range_keeps_the_card_open_and_says_how_far(book: Book, job: Card) -> None:
    found = issues_of(work_out(ground(job, "5 to 8 deg", "6 deg; 9 deg; 7 deg; 7 deg"), book))
    (told,) = [one for one in found if one.way == "after.rake_angle"]
    assert (told.state, told.flute) == ("stop", 2)
    assert told.text.startswith(
        "Rake angle, flute 2: 9 deg is 1.00 deg over what is wanted. Set less and grind it again"
    )


@pytest.mark.parametrize("form", ["text", "markdown", "html"])
def test_the_page_shows_the_range_and_the_verdict_of_each_reading(book: Book, job: Card, form: str) -> None:
    card = ground(job, "5 to 8 deg", "6 deg; 9 deg; 7 deg; 7 deg", "0.5 deg")
    text = " ".join(setup_sheet(work_out(card, book), form).split())
    assert "5.00 deg to 8.00 deg +/- 0.5 deg" in text
    assert "6 deg ok" in text
    assert "9 deg OFF" in text
    lengths = ground(job, "at most 12.7 mm", "12 mm", key="diameter")
    assert "at most 0.5000 in" in " ".join(setup_sheet(work_out(lengths, book), form, INCH).split())


def test_a_script_reads_the_ends_of_the_range(book: Book, job: Card) -> None:
    (one,) = card_data(work_out(ground(job, "at most 8 deg", "6 deg"), book), METRIC)["inspection"]
    assert (one["wanted"], one["low"], one["state"]) == (None, None, "pass")
    assert one["high"] == pytest.approx(8)
    assert one["flutes"][0]["value"] == pytest.approx(math.degrees(math.radians(6)))


def test_a_limit_that_cannot_be_read_is_told_at_its_line(book: Book, job: Card) -> None:
    card = replace(job, after={"rake_angle": Inspection(("6 deg",) * 4, "about eight", "")})
    told = [one for one in issues_of(work_out(card, book)) if one.way == "after.rake_angle.wanted"]
    assert [one.state for one in told] == ["stop"]
    assert told[0].text.startswith("What the rake angle shall be: ")
