"""A tool with steps after grinding: a diameter for each step, the smallest first, each held against its own. Numbers by hand."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from library.book.model import Book, Entry
from library.book.opening import open_book
from library.cards.as_data import card_data
from library.cards.close import finished
from library.cards.each_step import each_step
from library.cards.first_step import diameter_at_point
from library.cards.inspecting import Verdict, verdicts
from library.cards.issues import issues_of
from library.cards.job import Job, work_out
from library.cards.model import Card, Inspection, Setting, Tool, Wanted
from library.cards.starting import again
from library.cards.store import from_bytes
from library.cards.writing import as_toml
from library.pages.card_answers import after_answers
from library.pages.page import Values
from library.setup_sheet.readings import boxes
from library.units.system import METRIC

READ = ("5.95 mm", "8.94 mm", "11.93 mm")


@pytest.fixture(scope="module")
def shipped() -> Book:
    return open_book()


def stepped(
    readings: tuple[str, ...] = READ, wanted: str = "", tolerance: str = "", size: str = "6, 9, 12 mm"
) -> Card:
    """A step drill of 6, 9 and 12 mm that was measured after grinding."""
    return Card(
        id="2026-11-27-01",
        family="step-drill",
        tool=Tool("S-2", size, flutes="2"),
        received={"diameter": ("6 mm", "9 mm", "12 mm")},
        settings={name: Setting(skipped=True) for name in ("wheel-speed", "step-relief", "relief-drop")},
        after={"diameter": Inspection(readings, wanted, tolerance)},
        result="good",
    )


def judged(job: Job) -> Verdict:
    return next(one for one in verdicts(job) if one.key == "diameter")


def states(found: Verdict) -> list[str]:
    return [mark.state for mark in found.marks]


def told(job: Job) -> str:
    return " ".join(one.text for one in issues_of(job) if one.way.startswith("after."))


def test_as_many_diameters_as_steps_are_held_each_against_its_own_size(shipped: Book) -> None:
    found = judged(work_out(stepped(tolerance="0.06 mm"), shipped))
    # 9 - 8.94 is 0.06; 12 - 11.93 is 0.07, a hundredth too much.
    assert found.each == (6.0, 9.0, 12.0)
    assert states(found) == ["pass", "pass", "stop"]
    assert (found.place, found.spread) == ("step", None)


def test_without_a_tolerance_no_step_is_judged(shipped: Book) -> None:
    job = work_out(stepped(), shipped)
    assert states(judged(job)) == ["watch", "watch", "watch"]
    assert told(job) == ""


def test_what_the_steps_shall_be_takes_a_list_with_its_unit_behind_the_last_or_none(shipped: Book) -> None:
    for text in ("5.95, 8.97, 11.95 mm", "5.95, 8.97, 11.95"):
        found = judged(work_out(stepped(wanted=text, tolerance="0.02 mm"), shipped))
        assert found.each == pytest.approx((5.95, 8.97, 11.95))
        assert states(found) == ["pass", "stop", "pass"]


def test_only_the_largest_step_can_be_under_the_least_diameter(shipped: Book) -> None:
    card = replace(stepped(), wanted={"least_diameter": Wanted("11.8 mm")})
    assert "under size" not in told(work_out(card, shipped))
    worn = replace(card, after={"diameter": Inspection(("5.95 mm", "8.94 mm", "11.70 mm"))})
    assert "under size: 11.70 mm is less than the 11.800 mm" in told(work_out(worn, shipped))
    assert "5.95 mm is less" not in told(work_out(worn, shipped))


@pytest.mark.parametrize("readings", [("5.95 mm", "8.94 mm"), ("5.95 mm", "8.94 mm", "11.93 mm", "14 mm")])
def test_another_number_of_diameters_is_told_and_judges_nothing(
    shipped: Book, readings: tuple[str, ...]
) -> None:
    job = work_out(stepped(readings, tolerance="0.02 mm"), shipped)
    assert f"there are {len(readings)} readings, and the tool has 3 steps (6.000, 9.000, 12.000 mm)" in told(
        job
    )
    assert set(states(judged(job))) == {"watch"}
    assert judged(job).spread is None


def test_steps_written_from_the_shank_down_are_told_and_judge_nothing(shipped: Book) -> None:
    job = work_out(stepped(READ[::-1], tolerance="0.02 mm"), shipped)
    assert "Write the smallest step first" in told(job)
    assert "under size" not in told(job)
    assert set(states(judged(job))) == {"watch"}


def test_one_diameter_alone_is_that_of_the_largest_step(shipped: Book) -> None:
    found = judged(work_out(stepped(("11.93 mm",), tolerance="0.1 mm"), shipped))
    assert found.wanted == 12.0
    assert states(found) == ["pass"]


def test_one_number_is_not_what_three_steps_shall_be(shipped: Book) -> None:
    job = work_out(stepped(wanted="11.95 mm", tolerance="0.1 mm"), shipped)
    assert "What the diameter shall be: one number stands there, and the tool has 3 steps" in told(job)
    assert set(states(judged(job))) == {"watch"}


def test_steps_that_were_only_measured_are_steps_too_and_have_no_size_to_be_held_against(
    shipped: Book,
) -> None:
    found = judged(work_out(stepped(tolerance="0.1 mm", size=""), shipped))
    assert (found.place, found.each, found.spread) == ("step", (), None)
    assert set(states(found)) == {"watch"}


def test_a_tool_of_one_diameter_keeps_a_reading_for_each_flute(shipped: Book) -> None:
    reamer = Card(
        family="reamer",
        tool=Tool(size="10 mm", flutes="2"),
        received={"diameter": ("10.01 mm", "10.00 mm")},
        after={"diameter": Inspection(("9.99 mm", "9.98 mm"))},
    )
    job = work_out(reamer, shipped)
    assert each_step(job) is None
    assert judged(job).place == "flute"
    assert judged(job).spread == pytest.approx(0.01)


def test_the_page_after_and_the_sheet_name_the_steps(shipped: Book) -> None:
    job = work_out(stepped(tolerance="0.06 mm"), shipped)
    parts = [block for part in after_answers(job, "") for block in part]
    names = [one.title for block in parts if isinstance(block, Values) for one in block.values]
    assert [name.strip() for name in names if "step" in name or "flute" in name] == [
        f"step {number} {text}" for number, text in enumerate(READ, 1)
    ]
    assert not any("spread" in name for name in names)
    found = boxes(job, METRIC)
    assert found is not None
    row = next(one for one in found.rows if one.title == "Diameter")
    assert row.wanted == "6.000, 9.000, 12.000 mm +/- 0.06 mm"
    assert row.cells == ("step 1 5.95 mm ok", "step 2 8.94 mm ok", "step 3 11.93 mm OFF")


def test_the_sheet_has_an_empty_box_for_each_step_before_they_are_measured(shipped: Book) -> None:
    found = boxes(work_out(stepped((), tolerance="0.06 mm"), shipped), METRIC)
    assert found is not None
    assert next(one for one in found.rows if one.title == "Diameter").cells == ("step 1", "step 2", "step 3")


def test_a_record_keeps_the_steps_and_what_they_were_held_against(shipped: Book) -> None:
    card = finished(work_out(stepped(tolerance="0.1 mm"), shipped), date(2026, 11, 27))
    card = from_bytes(as_toml(card).encode(), Path("2026-11-27-01.toml")).card
    # Whatever becomes of the size written on the card, the record is judged as on its day.
    job = work_out(replace(card, tool=replace(card.tool, size="7, 10, 13 mm")), shipped)
    assert judged(job).each == (6.0, 9.0, 12.0)
    assert states(judged(job)) == ["pass", "pass", "pass"]
    assert '"place": "step"' in json.dumps(card_data(job, METRIC))


def test_the_same_job_again_keeps_what_each_step_shall_be(shipped: Book) -> None:
    card = again(stepped(wanted="5.95, 8.97, 11.95 mm", tolerance="0.02 mm"), shipped)
    assert card.after["diameter"] == Inspection((), "5.95, 8.97, 11.95 mm", "0.02 mm")


def test_steps_in_inches_with_their_unit_behind_the_last_are_inches_each(shipped: Book) -> None:
    card = replace(stepped((), size="0.25, 0.375, 0.5 in"), received={})
    found = each_step(work_out(card, shipped))
    assert found is not None
    assert found.sizes == pytest.approx((6.35, 9.525, 12.7))
    point = Card(family="step-drill", tool=Tool(size="0.25, 0.375, 0.5 in"))
    assert diameter_at_point(point, Entry("", "step-drill", ""), METRIC) == "0.25 in"


def test_a_step_that_was_not_measured_is_not_judged(shipped: Book) -> None:
    job = work_out(stepped(("5.95 mm", "", "11.93 mm"), tolerance="0.1 mm"), shipped)
    assert states(judged(job)) == ["pass", "watch", "pass"]
    (second,) = (
        row
        for part in after_answers(job, "after.diameter")
        for block in part
        if isinstance(block, Values)
        for row in block.values
        if row.title.strip() == "step 2"
    )
    assert (second.value, second.below) == ("not measured", ())


def test_the_sheet_leaves_an_empty_box_and_a_record_says_why(shipped: Book) -> None:
    card = stepped(("5.95 mm", "", "11.93 mm"), tolerance="0.1 mm")
    found = {}
    for one in (card, finished(work_out(card, shipped), date(2026, 11, 27))):
        page = boxes(work_out(one, shipped), METRIC)
        assert page is not None
        found[one.status] = next(row.boxes for row in page.rows if row.title == "Diameter")
    assert found == {
        "draft": ("5.95 mm ok", "", "11.93 mm ok"),
        "done": ("5.95 mm ok", "not measured", "11.93 mm ok"),
    }


def test_a_flute_that_was_not_measured_is_not_judged_either(shipped: Book) -> None:
    card = replace(stepped(), after={"drop": Inspection(("0.20 mm", ""), "0.2 mm", "0.01 mm")})
    (found,) = verdicts(work_out(card, shipped))
    assert states(found) == ["pass", "watch"]
