"""A diameter or a pitch that cannot be this tool's is told where it was typed, before anything counts with it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from library.book.model import Book
from library.cards.editing import edited
from library.cards.issues import issues_of, keeps_open
from library.cards.job import work_out
from library.cards.model import Card, Inspection, Tool, Wanted
from library.issue import Issue


def half_inch_tap() -> Card:
    return Card(family="tap", units="in", tool=Tool("T-1", thread="1/2-13 UNC", flutes="4"))


def told(card: Card, book: Book, way: str) -> list[Issue]:
    return [one for one in issues_of(work_out(card, book)) if one.way == way]


def test_a_diameter_with_its_point_in_the_wrong_place_is_told_at_its_line(book: Book) -> None:
    (one,) = told(edited(half_inch_tap(), "received.diameter", ".023 in"), book, "received.diameter")
    assert one.state == "stop"
    assert one.text == (
        "Diameter: A diameter of 0.0230 in cannot be that of a tool of 0.5000 in. See the unit and the decimal point; a reading from "
        "0.450 in to 0.550 in would be believed."
    )


@pytest.mark.parametrize(
    ("reading", "states"),
    [(".498 in", []), (".46 in", []), (".44 in", ["watch"]), ("12.6 mm", []), ("12.6 in", ["stop"])],
)
def test_a_diameter_is_believed_near_the_size_and_doubted_far_from_it(
    book: Book, reading: str, states: list[str]
) -> None:
    found = told(edited(half_inch_tap(), "received.diameter", reading), book, "received.diameter")
    assert [one.state for one in found if "would be believed" in one.text] == states


@pytest.mark.parametrize(
    ("shall_be", "doubt"),
    [
        ("1.2 in", "cannot be that of a tool of 0.5000 in"),
        ("0.498 in", ""),
    ],
)
def test_a_size_that_it_shall_have_after_grinding_is_doubted_far_from_the_tool(
    book: Book, shall_be: str, doubt: str
) -> None:
    after = {"diameter": Inspection(("0.497 in",), wanted=shall_be)}
    found = told(replace(half_inch_tap(), after=after), book, "after.diameter.wanted")
    assert [one.state for one in found] == (["watch"] if doubt else [])
    assert all(doubt in one.text for one in found)


@pytest.mark.parametrize(
    ("shall_be", "tolerance", "is_doubted"),
    [("9 deg", "", True), ("6.2 deg", "", False), ("9 deg", "0.5 deg", False)],
)
def test_an_angle_that_it_shall_have_is_doubted_far_from_every_reading(
    book: Book, shall_be: str, tolerance: str, is_doubted: bool
) -> None:
    # With a tolerance beside it each reading is judged off itself.
    after = {"rake_angle": Inspection(("6 deg", "6.1 deg"), shall_be, tolerance)}
    found = told(replace(half_inch_tap(), after=after), book, "after.rake_angle.wanted")
    assert bool(found) is is_doubted


def test_after_grinding_the_same_is_told_and_a_tool_of_another_size_may_be_closed(book: Book) -> None:
    card = replace(half_inch_tap(), after={"diameter": Inspection((".23 in",), ".5 in", ".3 in")})
    (one,) = told(card, book, "after.diameter")
    assert one.state == "stop"
    other = replace(card, result="ground to another size")
    assert [one.state for one in told(other, book, "after.diameter")] == ["watch"]
    assert not any(one.way == "after.diameter" for one in keeps_open(work_out(other, book)))


def test_each_reading_says_which_it_is(book: Book) -> None:
    card = edited(half_inch_tap(), "received.diameter", ".498 in; .049 in")
    (one,) = told(card, book, "received.diameter")
    assert one.flute == 2
    assert one.text.startswith("Diameter, reading 2: A diameter of 0.0490 in cannot be")


def test_a_step_drill_may_be_measured_on_any_of_its_steps(book: Book) -> None:
    card = Card(family="step-drill", tool=Tool("S-1", size="6, 20 mm", flutes="2"))
    for reading, states in (("5.98 mm", []), ("19.9 mm", []), ("13 mm", ["watch"]), ("1.99 mm", ["stop"])):
        found = told(edited(card, "received.diameter", reading), book, "received.diameter")
        # That the other step has no reading is told in any case.
        *found, too_few = sorted(found, key=lambda one: "Give one for each step" in one.text)
        assert "there is 1 reading, and the tool has 2 steps" in too_few.text
        assert [one.state for one in found] == states


def test_a_pitch_too_coarse_for_the_tool_asks_whether_threads_per_inch_were_meant(book: Book) -> None:
    for section in ("received", "after"):
        (one,) = told(edited(half_inch_tap(), f"{section}.pitch", "13 mm"), book, f"{section}.pitch")
        assert one.state == "stop"
        assert "Were threads per inch meant?" in one.text
        fine = told(edited(half_inch_tap(), f"{section}.pitch", "1.95 mm"), book, f"{section}.pitch")
        assert [one for one in fine if "pitch of" in one.text] == []


def test_on_a_cone_any_smaller_circle_may_have_been_measured(book: Book) -> None:
    card = Card(family="countersink", tool=Tool("C-1", size="20 mm", flutes="3"))
    for reading, states in (("8 mm", []), ("20 mm", []), ("80 mm", ["stop"])):
        found = told(edited(card, "received.diameter", reading), book, "received.diameter")
        assert [one.state for one in found] == states


def test_without_a_size_nothing_is_doubted(book: Book) -> None:
    card = edited(edited(Card(family="tap", tool=Tool("T-1", flutes="4")), "received.diameter", ".023 in"), "received.pitch", "3 mm")  # fmt: skip
    assert [one for one in issues_of(work_out(card, book)) if "believed" in one.text] == []


def test_what_was_told_at_its_line_is_not_told_again_with_every_calculation(book: Book) -> None:
    card = edited(half_inch_tap(), "received.diameter", ".023 in")
    card = edited(card, "received.land_width", ".13 in")
    texts = [one.text for one in issues_of(work_out(card, book))]
    assert sum("would be believed" in one for one in texts) == 1


def reamer(back: str, entry: str = "", size: str = "16 mm") -> Card:
    card = Card(family="reamer", entry=entry, tool=Tool("R-16", size=size, flutes="8"))
    return edited(card, "received.back_diameter", back)


@pytest.mark.parametrize(
    ("back", "states"),
    [
        ("15.97 mm", []),
        ("15.52 mm", []),
        (".15 mm", ["watch"]),
        ("15.4 mm", ["watch"]),
        ("159.7 mm", ["watch"]),
    ],
)
def test_a_diameter_at_the_back_is_asked_about_far_from_that_at_the_front(
    book: Book, back: str, states: list[str]
) -> None:
    found = told(reamer(back), book, "received.back_diameter")
    assert [one.state for one in found] == states
    assert all("or how much smaller it is there?" in one.text for one in found)


def test_a_diameter_at_the_back_goes_with_what_was_measured_before_what_is_stamped(book: Book) -> None:
    card = edited(reamer("15.2 mm"), "received.diameter", "15.3 mm")
    assert told(card, book, "received.back_diameter") == []


def test_the_back_of_a_reamer_that_cuts_a_taper_is_not_asked_about(book: Book) -> None:
    # A taper of 1 in 50 over 100 mm makes 10 mm of 8 mm.
    card = replace(reamer("10 mm", size="8 mm"), wanted={"taper_ratio": Wanted("0.02")})
    assert told(card, book, "received.back_diameter") == []
