"""A reamer is judged after grinding by its limits for the hole that was named, and by none that is only assumed.

ISO 286: a hole 10 H8 is 10.000 to 10.022 mm. ISO 522: the upper limit of its reamer is 15 percent of 0.022 under the
largest hole, 0.0033 taken up to 0.004; the reamer is made within 35 percent, 0.0077 taken up to 0.008: 10.010 to 10.018.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from geometry.calculation import State
from library.book.model import Book, Family
from library.cards.close import finished
from library.cards.inspecting import Verdict, verdicts
from library.cards.issues import keeps_open
from library.cards.job import Job, work_out
from library.cards.learn import lessons
from library.cards.model import Card, Inspection, Setting, Tool, Wanted
from library.cards.settings_lines import setting_lines
from library.setup_sheet.sheets import setup_sheet
from library.units.system import METRIC
from tui.view.card_form import CardForm
from tui.view.card_page import CardPage
from tui.view.lines import text_of

EMPTY = Book({}, {"reamer": Family("reamer", "reamer", kind="reamer")})


def reamer(measured: str, hole: str = "H8", **more: str) -> Card:
    typed = {"hole_tolerance": hole} if hole else {}
    return Card(family="reamer", tool=Tool("R-10", size="10 mm", flutes="6"),
                settings={"reamer-size": Setting(typed)}, after={"diameter": Inspection((measured,), **more)})  # fmt: skip


def judged(job: Job) -> Verdict:
    (found,) = (one for one in verdicts(job) if one.key == "diameter")
    return found


@pytest.mark.parametrize(
    ("measured", "state"),
    [("10.02 mm", "stop"), ("10.018 mm", "pass"), ("10.012 mm", "pass"), ("10.004 mm", "pass"), ("9.998 mm", "stop")],
)  # fmt: skip
def test_a_diameter_is_judged_by_the_limits_of_the_reamer_with_what_is_for_wear(
    measured: str, state: State
) -> None:
    job = work_out(reamer(measured), EMPTY)
    (mark,) = judged(job).marks
    assert mark.state == state
    if state == "stop":
        assert "the limits of the reamer, hole H8" in mark.text_off
        assert any(one.way == "after.diameter" for one in keeps_open(job))


def test_a_hole_that_nobody_named_judges_nothing() -> None:
    (mark,) = judged(work_out(reamer("10.02 mm", ""), EMPTY)).marks
    assert mark.state == "watch"


def test_what_a_person_writes_for_the_inspection_goes_before_the_limits() -> None:
    job = work_out(reamer("10.02 mm", wanted="10.02 mm", tolerance="0.005 mm"), EMPTY)
    assert [mark.state for mark in judged(job).marks] == ["pass"]


def test_a_closed_reamer_is_judged_as_on_its_day() -> None:
    done = finished(work_out(reamer("10.004 mm"), EMPTY), date(2026, 11, 26))
    assert [mark.state for mark in judged(work_out(done, EMPTY)).marks] == ["pass"]


def test_the_screen_and_the_sheet_name_both_limits() -> None:
    form = CardForm(EMPTY, reamer("10.02 mm"))
    form.go_to("settings.reamer-size")
    steps = [text_of(one) for one in CardPage(form).draw(80, 24)][1:12]
    for end, number in (("Lower", "10.010 mm"), ("Upper", "10.018 mm")):
        assert [one for one in steps if f"{end} limit of the reamer" in one and number in one]
    form.go_to("after.diameter")
    after = " ".join("\n".join(text_of(one) for one in CardPage(form).draw(80, 24)).split())
    assert "10.010 mm to 10.018 mm" in after
    assert "no limit set" not in after
    sheet = " ".join(setup_sheet(work_out(reamer("10.02 mm"), EMPTY)).split())
    assert "10.010 mm to 10.018 mm (limits of the reamer, hole H8, worn down to 10.000 mm)" in sheet


# A hole 12 H7 is 12.000 to 12.018 mm. ISO 522: the upper limit of its reamer is 15 percent of 0.018 under the largest hole,
# 0.0027 taken up to 0.003; made within 35 percent, 0.0063 taken up to 0.007: 12.008 to 12.015, in the middle 12.0115.
LARGE = Card(
    family="reamer",
    entry="some-reamer",
    tool=Tool("R-12", size="12 mm", flutes="6"),
    received={"diameter": ("12.022 mm",)},
    settings={"reamer-size": Setting({"hole_tolerance": "H7"})},
)


def ground_to(measured: str) -> Card:
    return replace(LARGE, after={"diameter": Inspection((measured,), tolerance="0.001 mm")})


def test_a_reamer_that_cut_large_closes_once_its_ground_circle_lies_within_the_limits() -> None:
    assert [one.way for one in keeps_open(work_out(LARGE, EMPTY))] == ["settings.reamer-size"]
    before = work_out(LARGE, EMPTY)
    assert keeps_open(work_out(ground_to("12.013 mm"), EMPTY, before)) == ()
    sheet = setup_sheet(work_out(ground_to("12.013 mm"), EMPTY))
    assert "12.022" in sheet
    assert "more than the largest hole" not in " ".join(sheet.split())


def test_a_size_typed_for_its_limits_is_that_of_before_once_the_tool_was_measured_again() -> None:
    typed = {"reamer-size": Setting({"hole_tolerance": "H7", "measured_diameter": "12.022 mm"})}
    card = replace(LARGE, received={}, settings=typed)
    line = "settings.reamer-size.measured_diameter"
    assert [one.way for one in keeps_open(work_out(card, EMPTY))] == [line]
    assert keeps_open(work_out(replace(card, after=ground_to("12.013 mm").after), EMPTY)) == ()


def test_a_circle_that_is_still_too_large_is_told_once_and_where_it_was_measured() -> None:
    assert [one.way for one in keeps_open(work_out(ground_to("12.025 mm"), EMPTY))] == ["after.diameter"]


def test_a_reamer_ground_under_size_closes_with_what_became_of_it() -> None:
    card = ground_to("11.99 mm")
    assert keeps_open(work_out(card, EMPTY))
    assert keeps_open(work_out(replace(card, result="another size"), EMPTY)) == ()


def test_the_back_taper_counts_with_the_front_that_is_to_be_ground() -> None:
    taper = {"back-taper": Setting({"back_diameter": "12.015 mm", "taper_length": "60 mm"})}
    card = replace(LARGE, settings={**LARGE.settings, **taper})
    step = work_out(card, EMPTY).step("back-taper")
    assert step is not None
    assert step.answer.inputs["diameter"].value == pytest.approx(12.0115, abs=0.0006)
    assert step.stopped
    again = work_out(replace(card, after={"diameter": Inspection(("12.013 mm",))}), EMPTY).step("back-taper")
    assert again is not None
    assert again.answer.inputs["diameter"].text == "12.013 mm"


def test_a_size_wanted_of_one_reamer_is_nothing_learned_for_all() -> None:
    assert lessons(replace(LARGE, wanted={"diameter": Wanted("12.012 mm")})) == ()
    (learned,) = lessons(replace(LARGE, wanted={"diameter": Wanted("12.012 mm", "12 mm")}))
    assert learned.key == "diameter"


@pytest.mark.parametrize(("came", "state"), [("10.02 mm", "watch"), ("10.03 mm", "stop")])
def test_a_reamer_that_came_over_its_size_has_its_circle_among_what_is_set(came: str, state: State) -> None:
    # Half way between the 10.010 and 10.018 mm of its limits.
    card = replace(reamer("", "H8"), received={"diameter": (came,)}, after={})
    job = work_out(card, EMPTY)
    step = job.step("reamer-size")
    assert step is not None
    assert step.checks[0].state == state
    (line,) = (one for one in setting_lines(job, METRIC) if one.key == "circle_ground_to")
    assert (line.value, line.is_set, line.stopped) == ("10.014 mm", True, False)
    assert "Circle ground to" in setup_sheet(job)
    form = CardForm(EMPTY, card)
    form.go_to("settings.reamer-size")
    page = CardPage(form).draw(80, 40)
    assert any("Circle ground to" in text_of(one) and "10.014 mm" in text_of(one) for one in page)


def test_one_that_came_within_its_limits_has_no_circle_to_set() -> None:
    job = work_out(replace(reamer("", "H8"), received={"diameter": ("10.012 mm",)}, after={}), EMPTY)
    assert not any(one.key == "circle_ground_to" for one in setting_lines(job, METRIC))


@pytest.mark.parametrize(
    ("measured", "hole", "said"),
    [
        ("9.998 mm", "", "Under H7, presumed, it would be out: 10.000 mm to 10.012 mm would serve."),
        ("10.02 mm", "", "Under H7, presumed, it would be out: 10.000 mm to 10.012 mm would serve."),
        ("10.004 mm", "", ""),
        ("9.998 mm", "H8", ""),
    ],
)
def test_a_reamer_that_would_be_out_by_a_hole_that_is_presumed_says_so_under_its_diameter(
    measured: str, hole: str, said: str
) -> None:
    # ISO 286: 10 H7 is 10.000 to 10.015; 15 percent of it are 2.25, taken up to 3 micrometres.
    after = reamer(measured, hole)
    came = replace(after, received={"diameter": (measured,)}, after={})
    for card, way in ((after, "after.diameter"), (came, "received.diameter")):
        form = CardForm(EMPTY, card)
        form.go_to(way)
        assert form.row.below == ((said,) if said else ())
