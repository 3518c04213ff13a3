"""A tool that is ground down is set by the diameter that it is to have. Numbers by hand; derived."""

from __future__ import annotations

import math
from dataclasses import replace
from datetime import date

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.close import finished
from library.cards.editing import edited
from library.cards.issues import issues_of
from library.cards.job import Job, work_out
from library.cards.model import Card, Setting, Tool, Wanted
from library.cards.settings_lines import setting_lines
from library.cards.shall_be import wanted_limits, wanted_number


@pytest.fixture(scope="module")
def shipped() -> Book:
    return open_book()


def odd(size: str = "9.7 mm", came: str = "10 mm", **more: str) -> Card:
    """A drill with a body of 10 mm, its land 3.2 mm round the circle, with flats of 10 and 20 degrees."""
    wanted = {
        "surface": "land",
        "relief_form": "flat",
        "relief_method": "tooth-rest-height",
        "land_relief_angle": "10 deg",
    }
    card = Card(
        family="twist-drill",
        tool=Tool("D-97", size, flutes="2"),
        received={"diameter": (came,), "land_width": ("3.2 mm",), "land_measured_as": ("arc",)},
        wanted={key: Wanted(text) for key, text in {**wanted, "second_land_relief_angle": "20 deg"}.items()},
        settings={
            "relief-facets": Setting(
                {"body_diameter": "10 mm", "primary_land": "0.8 mm", "least_gap": "0.05 mm"}
            ),
        },
    )
    for way, text in more.items():
        card = edited(card, way, text)
    return card


def given(job: Job, name: str, key: str = "diameter") -> object:
    step = job.step(name)
    assert step is not None
    return step.answer.inputs[key].value


def heights(job: Job) -> list[float]:
    step = job.step("relief-facets")
    assert step is not None
    assert step.answer.result is not None
    return [row.values["facet_height"] for row in step.answer.result.rows]


def test_facets_and_heights_of_a_drill_ground_down_are_those_of_the_circle_that_it_is_to_have(
    shipped: Book,
) -> None:
    job = work_out(odd(), shipped)
    assert given(job, "relief-facets") == given(job, "setting-height") == 9.7
    # Where the flat lies level, the edge stands 4.85 sin 10 off the axis and the flat 4.85 cos 10 above it.
    assert heights(job)[0] == pytest.approx(4.85 * math.cos(math.radians(10)))
    lines = {one.key: one.value for one in setting_lines(job, job.display)}
    assert lines["tooth_rest_height"] == "0.842 mm"  # 4.85 sin 10 = 0.8422, and 5 sin 10 = 0.868
    assert lines["facet 2: height"] == "1.659 mm"  # 4.85 sin 20 = 1.6588, and 5 sin 20 = 1.710
    # The second flat goes on where the first ends, and the land ends 3.2 / 4.85 round.
    along, inward = 0.8 * math.cos(math.radians(10)), 4.85 - 0.8 * math.sin(math.radians(10))
    foot = inward * math.cos(math.radians(20)) + along * math.sin(math.radians(20))
    heel = foot / math.cos(3.2 / 4.85 - math.radians(20))
    step = job.step("relief-facets")
    assert step is not None
    assert step.answer.result is not None
    assert step.answer.result.outputs["heel_drop"] == pytest.approx(4.85 - heel)
    assert 4.85 - heel == pytest.approx(-0.083, abs=5e-4)


def test_nothing_changes_where_the_diameter_as_it_came_is_left_open(shipped: Book) -> None:
    left_open = edited(odd(), "received.diameter", "")
    assert heights(work_out(left_open, shipped)) == heights(work_out(odd(), shipped))


def test_a_tool_that_keeps_its_size_is_set_by_what_was_measured(shipped: Book) -> None:
    for size, came in (("10 mm", "9.96 mm"), ("10 mm", "10.05 mm")):
        card = replace(odd(size, came), settings={})
        assert given(work_out(card, shipped), "relief-drop") == float(came.split()[0])


def test_the_diameter_that_is_wanted_goes_before_the_size_that_is_marked(shipped: Book) -> None:
    for way in ("wanted.diameter", "after.diameter.wanted"):
        job = work_out(odd("10 mm", "10 mm", **{way: "9.6 mm"}), shipped)
        assert given(job, "relief-facets") == 9.6
        step = job.step("relief-facets")
        assert step is not None
        assert step.provenance["diameter"] in {"to be", "wanted"}


def test_a_diameter_that_it_shall_be_is_taken_as_soon_as_it_is_written(shipped: Book) -> None:
    before = work_out(odd("10 mm", "10 mm"), shipped)
    after = work_out(odd("10 mm", "10 mm", **{"after.diameter.wanted": "9.6 mm"}), shipped, before)
    assert (given(before, "relief-facets"), given(after, "relief-facets")) == (10.0, 9.6)


def test_the_size_of_the_hole_that_a_reamer_makes_is_still_held_against_what_it_measures(
    shipped: Book,
) -> None:
    card = replace(
        odd("12 mm", "12.6 mm"),
        family="reamer",
        settings={"reamer-size": Setting({"hole_tolerance": "H7"})},
    )
    job = work_out(card, shipped)
    assert given(job, "reamer-size", "measured_diameter") == 12.6
    assert given(job, "relief-drop") == 12.0


def test_a_tap_stands_over_the_thread_that_it_is_called_by_and_is_never_ground_down(shipped: Book) -> None:
    card = Card(family="tap", tool=Tool("T", "6 mm", flutes="3"), received={"diameter": ("6.15 mm",)})
    assert work_out(card, shipped).to_be is None
    named = replace(odd("", "8.3 mm"), tool=Tool("D", "8 mm", thread="M8"))
    assert work_out(named, shipped).to_be is None


def test_a_diameter_that_is_read_over_a_vee_is_no_size_to_set_by_where_the_tool_is_ground_down(
    shipped: Book,
) -> None:
    # By hand: 1 / sin 54 = 1.236068; 2 * 17.89 / 2.236068 = 16.0013. Derived.
    card = Card(
        family="reamer",
        tool=Tool("R", "15.5 mm", flutes="5"),
        received={"vee_reading": ("17.89 mm",), "land_width": ("1 mm",)},
        wanted={"surface": Wanted("land"), "land_relief_angle": Wanted("8 deg")},
    )
    job = work_out(card, shipped)
    assert given(job, "relief-drop") == 15.5
    same = replace(card, tool=replace(card.tool, size="16 mm"))
    assert given(work_out(same, shipped), "relief-drop") == pytest.approx(16.001)


def test_it_is_said_by_which_diameter_all_is_set_at_the_line_of_the_other_one(shipped: Book) -> None:
    def told(card: Card) -> list[str]:
        return [one.text for one in issues_of(work_out(card, shipped)) if one.way == "received.diameter"]

    (said,) = told(odd())
    assert "came with 10.000 mm and is to have 9.700 mm" in said
    assert "set and read by 9.700 mm" in said
    assert told(odd("9.95 mm")) == []
    assert told(odd("10 mm")) == []


def test_after_grinding_it_shall_have_the_diameter_that_it_is_ground_down_to(shipped: Book) -> None:
    assert wanted_number(work_out(odd(), shipped), "diameter") == 9.7
    # A tool that keeps its size may be measured as it likes, and a reamer is held against its hole.
    assert wanted_number(work_out(odd("10 mm"), shipped), "diameter") is None
    hole = Setting({"hole_tolerance": "H7"})
    reamer = replace(odd("12 mm", "12.6 mm"), family="reamer", settings={"reamer-size": hole})
    job = work_out(reamer, shipped)
    limits = wanted_limits(job, "diameter")
    assert (wanted_number(job, "diameter"), limits.high if limits else None) == (None, 12.015)


def test_a_record_keeps_the_diameter_that_it_was_ground_by(shipped: Book) -> None:
    job = work_out(odd(**{"wanted.second_land_relief_angle": ""}), shipped)
    card = finished(job, date(2026, 11, 26))
    assert card.settings["relief-facets"].filled["diameter"] == "9.7 mm"
    assert given(work_out(card, shipped), "relief-facets") == 9.7
    # One that was closed when all was set by what the tool came with goes on saying so.
    settings = {
        name: replace(one, filled={key: text for key, text in one.filled.items() if key != "diameter"})
        for name, one in card.settings.items()
    }
    assert given(work_out(replace(card, settings=settings), shipped), "relief-facets") == 10.0
