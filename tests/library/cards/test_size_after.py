"""The diameter after grinding: larger than before, and a reamer whose hole nobody named."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from library.book.model import Book, Family
from library.cards.close import finished
from library.cards.issues import issues_of, keeps_open
from library.cards.job import work_out
from library.cards.model import Card, Inspection, Setting, Tool
from library.cards.starting import from_entry
from library.issue import Issue
from library.setup_sheet.sheets import setup_sheet
from tui.view.card_form import CardForm
from tui.view.card_page import CardPage
from tui.view.lines import text_of

EMPTY = Book(
    {},
    {
        "reamer": Family("reamer", "reamer", kind="reamer"),
        "end-mill": Family("end-mill", "end mill", kind="end-mill"),
        "step": Family("step", "step drill", kind="step-drill"),
    },
)


def measured(
    before: str, after: str, family: str = "end-mill", size: str = "10 mm", hole: str = "", units: str = "mm"
) -> Card:
    return Card(
        family=family,
        units=units,
        tool=Tool(size=size, flutes="4"),
        received={"diameter": tuple(before.split(", "))} if before else {},
        settings={"reamer-size": Setting({"hole_tolerance": hole})} if hole else {},
        after={"diameter": Inspection(tuple(after.split(", ")))},
    )


def told(card: Card) -> list[Issue]:
    return [one for one in issues_of(work_out(card, EMPTY)) if one.way == "after.diameter"]


@pytest.mark.parametrize(
    ("before", "after", "more"),
    [
        ("9.98 mm", "9.99 mm", "0.010 mm"),
        ("0.393 in", "0.3935 in", "0.0005 in"),
        ("9.97 mm, 9.98 mm", "9.99 mm", "0.010 mm"),
    ],
)
def test_a_tool_that_is_larger_than_it_came_is_on_watch(before: str, after: str, more: str) -> None:
    (one,) = told(measured(before, after))
    assert one.state == "watch"
    assert f"is {more} more than the" in one.text
    assert "grinding makes no tool larger" in one.text


@pytest.mark.parametrize(
    ("before", "after"), [("9.98 mm", "9.97 mm"), ("9.98 mm", "9.981 mm"), ("", "10.2 mm")]
)
def test_a_tool_that_is_smaller_or_within_a_micrometer_or_was_not_measured_is_not(
    before: str, after: str
) -> None:
    assert not [one for one in told(measured(before, after)) if "larger" in one.text]


def test_of_a_tool_with_steps_each_step_is_laid_beside_its_own() -> None:
    (one,) = told(measured("6.02 mm, 8.01 mm, 9.99 mm", "6.01 mm, 8.05 mm, 9.98 mm", "step", "6, 8, 10 mm"))
    assert one.flute == 2
    assert "8.050 mm is 0.040 mm more than the 8.010 mm" in one.text


def test_a_larger_reamer_closes_and_its_sheet_bears_the_watch() -> None:
    card = measured("10.008 mm", "10.012 mm", "reamer", hole="H7")
    job = work_out(card, EMPTY)
    assert [one.way for one in keeps_open(job)] == []
    assert "10.012 mm is 0.004 mm more than the 10.008 mm" in " ".join(setup_sheet(job).split())
    assert finished(job, date(2026, 11, 26)).done


# ISO 286: a hole 10 H7 is 10.000 to 10.015 mm. ISO 522: the reamer ends 15 percent of 0.015, taken up to 0.003, under it,
# and is made within 35 percent, taken up to 0.006: 10.006 to 10.012 mm.
def test_a_reamer_for_a_hole_that_nobody_named_says_by_what_it_would_be_judged_and_where_to_name_it() -> None:
    card = measured("", "10.010 mm", "reamer")
    (one,) = told(card)
    assert one.state == "watch"
    assert "not judged" in one.text
    assert "For H7, which is presumed, a new reamer has 10.006 mm to 10.012 mm" in one.text
    form = CardForm(EMPTY, measured("", "", "reamer"))
    form.go_to("after.diameter")
    page = " ".join("\n".join(text_of(one) for one in CardPage(form).draw(80, 24)).split())
    assert "Not judged: H7 (10.006 mm to 10.012 mm) is presumed; name the hole on Set." in page


def test_the_limits_of_a_presumed_hole_stand_beside_the_reading_that_they_do_not_judge() -> None:
    form = CardForm(EMPTY, measured("", "10.010 mm", "reamer"))
    form.go_to("after.diameter")
    page = " ".join("\n".join(text_of(one)[50:] for one in CardPage(form).draw(80, 24)).split())
    assert "by H7, presumed 10.006 mm to 10.012 mm" in page


def test_the_last_page_says_before_the_card_closes_that_the_reamer_is_larger_and_not_judged() -> None:
    form = CardForm(EMPTY, measured("10.006 mm", "10.010 mm", "reamer"))
    form.go_to("result")
    page = " ".join("\n".join(text_of(one)[50:] for one in CardPage(form).draw(80, 36)).split())
    assert "Of what was measured: Diameter: 10.010 mm is 0.004 mm more than the 10.006 mm" in page
    assert "Diameter: not judged, as nobody named the hole. The page After has the rest." in page


@pytest.mark.parametrize("measured", ["10.03 mm", "9.9 mm"])
def test_a_presumed_hole_stops_no_job_and_has_no_circle_ground(measured: str) -> None:
    job = work_out(measured_first(measured), EMPTY)
    assert [one for one in issues_of(job) if one.severity == "error"] == []
    sheet = " ".join(setup_sheet(job).split())
    assert "STOP" not in sheet
    assert "Grind its circle" not in sheet
    assert "Nobody named the hole. For H7, which is presumed" in sheet


def measured_first(came: str) -> Card:
    return Card(family="reamer", tool=Tool(size="10 mm", flutes="4"), received={"diameter": (came,)})


def test_a_taper_reamer_has_neither_limits_nor_a_verdict_of_a_class(book: Book) -> None:
    begun = from_entry(book, book.entries["reamer-taper-pin"])
    card = replace(
        begun,
        tool=Tool(size="10 mm", flutes="4"),
        received={"diameter": ("10.03 mm",)},
        after={"diameter": Inspection(("10.02 mm",))},
    )
    job = work_out(card, book)
    assert [
        one for one in issues_of(job) if one.way.startswith(("after.diameter", "settings.reamer-size"))
    ] == []
    sheet = " ".join(setup_sheet(job).split())
    for word in ("H7", "imit of the reamer", "presumed", "Nobody named the hole"):
        assert word not in sheet
    form = CardForm(book, card)
    form.go_to("after.diameter")
    assert "H7" not in "\n".join(text_of(one) for one in CardPage(form).draw(80, 24))


def test_a_parallel_hole_that_was_named_for_a_taper_reamer_judges_it_all_the_same(book: Book) -> None:
    begun = from_entry(book, book.entries["reamer-taper-pin"])
    card = replace(
        begun,
        tool=Tool(size="10 mm"),
        settings={"reamer-size": Setting({"hole_tolerance": "H7"})},
        received={"diameter": ("10.03 mm",)},
    )
    assert "settings.reamer-size" in [one.way for one in issues_of(work_out(card, book))]


def test_what_stands_within_the_limits_of_a_reamer_is_left_empty() -> None:
    form = CardForm(EMPTY, measured("", "10.010 mm", "reamer", hole="H7"))
    form.go_to("after.diameter.tolerance")
    assert form.row.hint.startswith("Leave it empty: the limits of the reamer, hole H7 hold.")
    assert not form.row.wants


def test_a_reamer_whose_hole_was_named_is_judged_and_told_nothing_more() -> None:
    assert told(measured("", "10.010 mm", "reamer", hole="H7")) == []


# 3/8 in is 9.525 mm: for H7 the reamer is 9.531 to 9.537 mm, 0.37524 to 0.37547 in.
@pytest.mark.parametrize(("size", "passes"), [("0.3753 in", True), ("0.3754 in", True), ("0.3755 in", False)])
def test_limits_in_inches_are_rounded_so_that_what_they_allow_passes(size: str, passes: bool) -> None:
    card = measured("", size, "reamer", "3/8 in", "H7", "in")
    assert (told(card) == []) is passes
    form = CardForm(EMPTY, card)
    form.go_to("after.diameter")
    page = "\n".join(text_of(one) for one in CardPage(form).draw(80, 24))
    assert "0.37524 in to 0.37547 in" in page
    assert "0.37548 in" not in page
    assert "0.37524 in to 0.37547 in (limits of the reamer" in " ".join(setup_sheet(form.job).split())
    form.go_to("settings.reamer-size")
    page = "\n".join(text_of(one) for one in CardPage(form).draw(80, 24))
    assert ("0.37547 in" in page) or not passes
