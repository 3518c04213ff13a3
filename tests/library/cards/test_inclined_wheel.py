"""An inclined wheel leaves an eccentric relief, whatever form is wanted: one form in every number of the card.

While the tool is led along its helix the land falls evenly round the circle: 1 mm of land at 7 degrees falls
1 x tan 7 = 0.123 mm (derived), where one flat on a circle of 19.9 mm falls 0.072 mm.
"""

from __future__ import annotations

import math
from dataclasses import replace
from pathlib import Path

import pytest

from library.book.model import Book, Family
from library.book.opening import open_book
from library.cards.inspecting import received_reliefs, reliefs_after, verdicts
from library.cards.issues import issues_of
from library.cards.job import Job, work_out
from library.cards.model import Card, Inspection, Tool, Wanted
from library.cards.settings_lines import setting_lines
from library.setup_sheet.sheets import setup_sheet
from library.units.system import METRIC

BOOK = Book(
    {},
    {
        "end-mill": Family("end-mill", "End mills", kind="end-mill", surfaces=("land",)),
        "reamer": Family("reamer", "Reamers", kind="reamer", surfaces=("land",)),
        "twist-drill": Family("twist-drill", "Drills", kind="twist-drill", surfaces=("land", "lip")),
    },
)

HEEL = "0.123 mm"


def card(form: str = "flat", family: str = "end-mill", method: str = "inclined-wheel") -> Card:
    wanted = {"land_relief_angle": "7 deg", "relief_form": form, "relief_method": method}
    return Card(
        family=family,
        tool=Tool(size="20 mm", flutes="4"),
        received={
            "diameter": ("19.9 mm",),
            "land_width": ("1 mm",),
            "land_measured_as": ("arc",),
            "helix_angle": ("30 deg",),
        },
        wanted={key: Wanted(text) for key, text in wanted.items() if text},
    )


def form_watches(job: Job) -> list[str]:
    return [one.text for one in issues_of(job) if one.way == "wanted.relief_method"]


@pytest.mark.parametrize("family", ["end-mill", "reamer"])
@pytest.mark.parametrize("form", ["flat", "eccentric", ""])
def test_all_that_reads_the_heel_counts_with_the_form_that_the_wheel_leaves(family: str, form: str) -> None:
    job = work_out(card(form, family), BOOK)
    heels = {
        round(step.answer.result.outputs["heel_drop"], 3)
        for step in job.steps
        if step.works and step.answer.result is not None and "heel_drop" in step.answer.result.outputs
    }
    assert heels == {0.123}
    sheet = " ".join(setup_sheet(job).split())
    assert f"Indicator drop at the heel {HEEL}" in sheet
    assert "0.072" not in sheet


def test_the_inspection_is_held_against_that_form() -> None:
    measured = replace(card(), after={"drop": Inspection(("0.122 mm",), tolerance="0.005 mm")})
    (found,) = (one for one in verdicts(work_out(measured, BOOK)) if one.key == "drop")
    assert [mark.state for mark in found.marks] == ["pass"]
    as_flat = replace(card(), after={"drop": Inspection(("0.072 mm",), tolerance="0.005 mm")})
    (found,) = (one for one in verdicts(work_out(as_flat, BOOK)) if one.key == "drop")
    assert [mark.state for mark in found.marks] == ["stop"]


# 0.123 mm in 1 mm of arc is an eccentric relief of atan 0.123 = 7.01 degrees. Derived.
@pytest.mark.parametrize("came", ["flat", "eccentric"])
def test_the_relief_that_is_found_after_grinding_is_that_of_the_wheel_and_not_that_of_the_tool_as_it_came(
    came: str,
) -> None:
    begun = card("")
    ground = replace(
        begun,
        received={**begun.received, "drop": ("0.072 mm",), "relief_form": (came,)},
        after={"drop": Inspection(("0.123 mm",))},
    )
    job = work_out(ground, BOOK)
    (after,) = reliefs_after(job)
    assert {form: round(math.degrees(one), 2) for form, one in after.angles.items()} == {"eccentric": 7.01}
    (before,) = received_reliefs(job)
    assert [*before.angles] == [came]


def test_another_form_that_is_wanted_is_told_once_with_what_to_do() -> None:
    job = work_out(card("flat"), BOOK)
    (said,) = form_watches(job)
    assert "inclined wheel, makes the relief eccentric, and flat is wanted" in said
    assert "Change the relief form to that, or choose another way" in said
    assert " ".join(setup_sheet(job).split()).count("flat is wanted") == 1
    assert form_watches(work_out(card("eccentric"), BOOK)) == []


def test_no_throw_of_a_cam_is_set_for_an_inclined_wheel() -> None:
    def titles(method: str) -> list[str]:
        job = work_out(card("eccentric", method=method), BOOK)
        return [line.title for line in setting_lines(job, METRIC)]

    assert "Throw per turn" in titles("cam")
    assert "Throw per turn" not in titles("inclined-wheel")
    assert "Wheel tilt" in titles("inclined-wheel")


@pytest.fixture
def bare(tmp_path: Path) -> Book:
    (tmp_path / "machines.toml").write_text(
        'schema = 1\n\n[[machine]]\nid = "bare"\ntitle = "The grinder without cams"\n'
    )
    return open_book(tmp_path)


def test_a_wide_back_is_brought_inside_by_facets_and_not_by_an_inclined_wheel_of_itself(bare: Book) -> None:
    helical = replace(card("", "twist-drill", ""), machine="bare")
    assert work_out(helical, bare).choice.method == "inclined-wheel"
    lowered = replace(helical, received={**helical.received, "body_diameter": ("20.5 mm",)})
    job = work_out(lowered, bare)
    assert (job.choice.method, job.choice.form) == ("wheel-head-height", "flat")
    assert job.step("relief-facets") is not None


@pytest.mark.parametrize("method", ["inclined-wheel", "cam"])
def test_behind_a_margin_the_land_falls_only_from_where_the_margin_ends(method: str) -> None:
    # Of 1 mm of land 0.2 mm run on the circle: 0.8 tan 7 = 0.098 mm are left (derived). One drop stands for no relief there.
    plain = card("eccentric", "reamer", method)
    job = work_out(
        replace(
            plain,
            wanted={**plain.wanted, "margin_width": Wanted("0.2 mm")},
            after={"drop": Inspection(("0.098 mm",) * 4, "", "0.005 mm")},
        ),
        BOOK,
    )
    heels = {
        round(step.answer.result.outputs["heel_drop"], 3)
        for step in job.steps
        if step.in_use and step.answer.result is not None and "heel_drop" in step.answer.result.outputs
    }
    assert heels == {0.098}
    assert [one.state for one in verdicts(job) if one.key == "drop"] == ["pass"]
    assert reliefs_after(job) == ()
    assert "relief begins where it ends" in " ".join(setup_sheet(job).split())
