"""A step drill whose shoulders have two angles: each is swivelled for by itself, and what is counted at one says which. By hand."""

from __future__ import annotations

import math
from dataclasses import replace
from datetime import date

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.close import finished
from library.cards.how_ground import Numbers
from library.cards.job import Job, work_out
from library.cards.model import Card, Setting, Tool
from library.cards.settings_lines import setting_lines
from library.cards.starting import from_entry
from library.cards.step import Step
from library.pages.setting_answers import setting_answers
from library.setup_sheet.sheets import setup_sheet
from library.units.show import say
from library.units.system import INCH

SHOP = """schema = 1

[[machine]]
id = "own"
title = "Own grinder"

[machine.graduations.table]
title = "swivel of the table"
division = "0.25 deg"
sets = ["half_included_angle"]

[[machine]]
id = "short"
title = "Grinder with a short swivel"

[machine.graduations.table]
title = "swivel of the table"
division = "0.25 deg"
sets = ["half_included_angle"]
low = "0 deg"
high = "50 deg"
"""

ENTRY = "step-drill-spiral-flute-plain-steel"


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Book:
    folder = tmp_path_factory.mktemp("shoulders") / "shop"
    folder.mkdir()
    (folder / "machines.toml").write_text(SHOP)
    return open_book(folder)


def card(shop: Book, angles: str = "118, 90 deg", machine: str = "", **drop: str) -> Card:
    """A step drill of 1/4, 3/8 and 1/2 in under a cam of 0.2 in, with 0.004 in of feed."""
    begun = replace(from_entry(shop, shop.entries[ENTRY]), units="in", machine=machine)
    typed = {"included_angle": angles, "radial_throw": "0.2 in", "feed": "0.004 in"}
    settings = {"step-relief": Setting(typed)} | ({"relief-drop": Setting(drop)} if drop else {})
    return replace(
        begun,
        tool=Tool(size="0.25 in, 0.375 in, 0.5 in", flutes="2"),
        received={"land_width": ("0.062 in",)},
        settings=settings,
    )


def swivels(job: Job) -> list[tuple[str, str, str]]:
    return [(one.title, one.value, one.divisions) for one in setting_lines(job, INCH) if "ngle" in one.title]


def step(job: Job, name: str) -> Step:
    found = job.step(name)
    assert found is not None
    assert found.in_use
    return found


def stops(found: Step) -> list[str]:
    return [say(one.sentence, INCH) for one in found.checks if one.state == "stop"]


def test_each_shoulder_has_its_own_swivel_on_the_graduation_of_the_machine(shop: Book) -> None:
    job = work_out(card(shop, machine="own"), shop)
    # Half of 118 and half of 90 degrees, in quarters of a degree.
    assert swivels(job) == [
        ("Half angle, shoulder 1", "59.00 deg", "236 div"),
        ("Half angle, shoulder 2", "45.00 deg", "180 div"),
    ]


def test_a_shoulder_to_which_the_machine_cannot_be_swivelled_stops(shop: Book) -> None:
    job = work_out(card(shop, machine="short"), shop)
    assert stops(step(job, "step-relief")) == [
        "Half included angle of 59.00 deg: the swivel of the table goes only to 50.00 deg. Set it another way, or on "
        "another machine."
    ]


def test_the_swivel_is_known_before_the_cam_is(shop: Book) -> None:
    begun = card(shop)
    without = replace(begun, settings={"step-relief": Setting({"included_angle": "118, 90 deg"})})
    assert [value for _, value, _ in swivels(work_out(without, shop))] == ["59.00 deg", "45.00 deg"]


def test_shoulders_alike_are_swivelled_for_once(shop: Book) -> None:
    for alike in ("90 deg", "90, 90 deg"):
        assert [one[:2] for one in swivels(work_out(card(shop, alike), shop))] == [
            ("Half included angle", "45.00 deg")
        ]


def test_no_one_included_angle_is_asked_for(shop: Book) -> None:
    job = work_out(card(shop), shop)
    for name in ("relief-drop", "feed-clearance"):
        found = step(job, name)
        assert not [one for one in found.answer.issues if one.key == "included_angle"]
        # Both count on the largest diameter, on which shoulder 2 ends, whichever way the angles are told.
        assert found.answer.inputs["included_angle"].value == pytest.approx(math.radians(90))


def test_a_calculation_on_another_step_counts_with_the_shoulder_that_ends_there(shop: Book) -> None:
    job = work_out(card(shop, diameter="0.375 in"), shop)
    assert step(job, "relief-drop").answer.inputs["included_angle"].value == pytest.approx(math.radians(118))


def test_the_set_up_names_both_swivels(shop: Book) -> None:
    assert Numbers(work_out(card(shop), shop), INCH)("half_included_angle") == "59.00 deg, then 45.00 deg"


def test_the_sheet_has_both_swivels_and_says_on_which_shoulder_it_reads(shop: Book) -> None:
    text = setup_sheet(work_out(card(shop), shop), display=INCH)
    assert "Half angle, shoulder 1" in text
    assert "59.00 deg" in text
    assert "shoulder 2 at 0.5000 in" in text
    assert "Half included angle" not in text


def test_each_largest_feed_says_of_which_shoulder_it_is(shop: Book) -> None:
    job = work_out(card(shop), shop)
    said = {name: str([*setting_answers(job, name)]) for name in ("step-relief", "feed-clearance")}
    assert "Largest feed: all shoulders" in said["step-relief"]
    assert "Largest feed: shoulder 2" in said["feed-clearance"]


@pytest.mark.parametrize("typed", ["100 deg", "118 deg"])
def test_an_angle_that_the_shoulder_does_not_have_stops(shop: Book, typed: str) -> None:
    job = work_out(card(shop, included_angle=typed), shop)
    said = typed.replace(" ", ".00 ")
    assert stops(step(job, "relief-drop")) == [
        f"The included angle of {said} typed here is not that of shoulder 2, which ends on 0.5000 in and has 90.00 deg. "
        "Empty the line, and this is counted with 90.00 deg."
    ]


def test_the_angle_of_the_shoulder_itself_is_taken(shop: Book) -> None:
    assert not stops(step(work_out(card(shop, included_angle="90 deg"), shop), "relief-drop"))
    assert not stops(
        step(work_out(card(shop, included_angle="118 deg", diameter="0.375 in"), shop), "relief-drop")
    )


def test_another_angle_than_that_of_all_shoulders_stops_too(shop: Book) -> None:
    assert stops(step(work_out(card(shop, "90 deg", included_angle="100 deg"), shop), "relief-drop"))


def test_a_record_says_what_it_said_as_a_draft(shop: Book) -> None:
    draft = card(shop)
    done = finished(work_out(replace(draft, result="good"), shop), date(2026, 11, 27))
    assert swivels(work_out(done, shop)) == swivels(work_out(draft, shop))
    assert step(work_out(done, shop), "relief-drop").works
