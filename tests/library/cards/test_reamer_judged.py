"""A reamer is judged after grinding by its limits for the hole that was named, and by none that is only assumed.

ISO 286: a hole 10 H8 is 10.000 to 10.022 mm. ISO 522: the upper limit of its reamer is 15 percent of 0.022 under the
largest hole, 0.0033 taken up to 0.004; the reamer is made within 35 percent, 0.0077 taken up to 0.008: 10.010 to 10.018.
"""

from __future__ import annotations

from datetime import date

import pytest

from geometry.calculation import State
from library.book.model import Book, Family
from library.cards.close import finished
from library.cards.inspecting import Verdict, verdicts
from library.cards.issues import keeps_open
from library.cards.job import Job, work_out
from library.cards.model import Card, Inspection, Setting, Tool
from library.setup_sheet.sheets import setup_sheet
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
