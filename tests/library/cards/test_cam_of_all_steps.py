"""The cam of a card and its steps reach the checks of all steps, and one rule says when a cam will do. Numbers by hand; derived."""

from __future__ import annotations

import math
from dataclasses import replace
from datetime import date

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.close import finished
from library.cards.job import Job, work_out
from library.cards.model import Card, Setting, Tool
from library.cards.settings_lines import setting_lines
from library.cards.starting import from_entry
from library.setup_sheet.sheets import setup_sheet
from library.units.show import say
from library.units.system import METRIC

SHOP = """schema = 1

[[machine]]
id = "own"
title = "Own grinder"
cam_throws = ["0.5 mm", "1 mm", "1.5 mm", "2 mm", "3 mm", "4 mm", "6 mm"]
throw_per = "tooth"
"""

SHEET = "step-drill-straight-flute-sheet-metal"
"""Shoulders of 90 degrees with 8 degrees of relief, 6 to 10, and two flutes."""

SINK = "countersink-multi-flute-90-plain-steel"
"""A cone of 90 degrees with 8 degrees of relief, 6 to 10."""


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Book:
    folder = tmp_path_factory.mktemp("steps") / "shop"
    folder.mkdir()
    (folder / "machines.toml").write_text(SHOP)
    return open_book(folder)


def begun(shop: Book, entry: str = SHEET, size: str = "6, 9, 12 mm", flutes: str = "") -> Card:
    """A card as it is begun from the book, with nothing typed but the land."""
    card = from_entry(shop, shop.entries[entry])
    return replace(card, tool=Tool(size=size, flutes=flutes), received={"land_width": ("1.5 mm",)})


def relief(throw: float, diameter: float, flutes: int = 2) -> float:
    """By hand, in degrees: at 45 degrees a radial throw counts by the root of a half, over the turn to the next tooth."""
    square = throw * math.sqrt(0.5) / (2 * math.pi / flutes)
    return math.degrees(math.atan(square / (diameter / 2)))


def told(job: Job, name: str) -> list[tuple[str, str]]:
    step = job.step(name)
    assert step is not None
    return [(check.state, say(check.sentence, METRIC)) for check in step.checks]


def taken(job: Job, name: str, key: str) -> str:
    step = job.step(name)
    assert step is not None
    return step.answer.inputs[key].text if key in step.answer.inputs else ""


def test_the_cam_that_a_card_takes_is_held_against_all_its_steps(shop: Book) -> None:
    job = work_out(begun(shop), shop)
    assert taken(job, "step-relief", "radial_throw") == "4 mm"
    assert taken(job, "relief-drop", "chosen_throw") == "4 mm"
    (watch,) = (text for state, text in told(job, "step-relief") if state == "watch")
    assert f"Shoulder 1 has {relief(4, 6):.2f} deg at its inner end (6.000 mm)" in watch
    assert f"{relief(4, 9):.2f} deg at its outer end (9.000 mm)" in watch


def test_a_card_begun_with_the_throw_typed_says_the_same(shop: Book) -> None:
    typed = replace(begun(shop), settings={"step-relief": Setting({"radial_throw": "4 mm"})})
    assert told(work_out(typed, shop), "step-relief") == told(work_out(begun(shop), shop), "step-relief")


def test_a_throw_typed_where_the_heel_is_read_serves_the_steps_before_it(shop: Book) -> None:
    card = replace(begun(shop), settings={"relief-drop": Setting({"chosen_throw": "3 mm"})})
    assert taken(work_out(card, shop), "step-relief", "radial_throw") == "3 mm"


def test_a_shoulder_begins_at_the_step_below_it(shop: Book) -> None:
    job = work_out(begun(shop), shop)
    assert taken(job, "feed-clearance", "inner_diameter") == "9 mm"
    assert not any("No inner diameter" in text for _, text in told(job, "feed-clearance"))


def test_a_throw_of_its_own_is_told_with_how_to_have_it_and_does_what_is_said(shop: Book) -> None:
    (watch,) = (text for state, text in told(work_out(begun(shop), shop), "step-relief") if state == "watch")
    # Both ends of shoulder 2 are within for 6 tan 6 to 4.5 tan 10 degrees, times pi times the root of two.
    least, most = (
        math.pi * math.sqrt(2) * r * math.tan(math.radians(a)) for r, a in ((6.0, 6.0), (4.5, 10.0))
    )
    assert "all as far back, on a card of its two steps: " in watch
    assert (
        f"{math.ceil(least * 100) / 100:.2f} mm to {math.floor(most * 100) / 100:.2f} mm per tooth for shoulder 2"
        in watch
    )
    alone = begun(shop, size="9, 12 mm")
    alone = replace(alone, settings={"step-relief": Setting({"radial_throw": "3 mm"})})
    found = told(work_out(alone, shop), "step-relief")
    assert "watch" not in {state for state, _ in found}
    assert (
        "pass",
        f"Shoulder 1 has {relief(3, 12):.2f} deg square to its cone at 12.000 mm where 8.00 deg was wanted: "
        "within the 6.00 deg to 10.00 deg that will do.",
    ) in found


@pytest.mark.parametrize(("cam", "state"), [("3 mm", "watch"), ("4 mm", "pass"), ("6 mm", "watch")])
def test_one_cam_on_a_countersink_is_judged_alike_on_every_line_and_on_the_sheet(
    shop: Book, cam: str, state: str
) -> None:
    # With three teeth on 20.5 mm: 5.64, 7.51 and 11.18 degrees, of 6 to 10.
    card = replace(
        begun(shop, SINK, "20.5 mm", "3"), settings={"cone-relief": Setting({"radial_throw": cam})}
    )
    job = work_out(card, shop)
    given = f"{relief(float(cam.removesuffix(' mm')), 20.5, 3):.2f} deg"
    for name in ("cone-relief", "relief-drop"):
        (found,) = {one for one, text in told(job, name) if given in text and one != "note"}
        assert found == state
    page = setup_sheet(job)
    assert ("WATCH" in page and "of the book" in page) == (state == "watch")
    assert ("within the book's 6 deg to 10 deg" in " ".join(page.split())) == (state == "pass")


def test_a_relief_that_a_person_wants_instead_of_the_books_is_still_held_against_the_cam(shop: Book) -> None:
    card = begun(shop, SINK, "20.5 mm", "3")
    typed = {"cone-relief": Setting({"radial_throw": "4 mm", "relief_angle": "9 deg"})}
    states = {state for state, _ in told(work_out(replace(card, settings=typed), shop), "cone-relief")}
    assert "watch" in states


def test_a_record_of_a_day_without_a_cam_for_the_steps_stays_without(shop: Book) -> None:
    card = replace(
        begun(shop),
        machine="",
        settings={
            one: Setting(skipped=True) for one in ("wheel-speed", "step-relief", "relief-drop", "size-loss")
        },
    )
    record = finished(work_out(card, shop), date(2026, 11, 27))
    later = replace(record, machine="own", settings={**record.settings, "step-relief": Setting()})
    assert taken(work_out(later, shop), "step-relief", "radial_throw") == ""


def test_what_the_cam_gives_is_told_with_its_place_on_a_tool_with_steps_and_once_on_a_countersink(
    shop: Book,
) -> None:
    steps = " ".join(setup_sheet(work_out(begun(shop), shop)).split())
    assert f"gives {relief(4, 12):.2f} deg at 12.000 mm, within the book's 6 deg to 10 deg" in steps
    sink = " ".join(setup_sheet(work_out(begun(shop, SINK, "20.5 mm", "3"), shop)).split())
    assert sink.count("where 8.00 deg was wanted: within the book's") == 1


NINE_A_TURN = {"radial_throw": "9 mm", "throw_per": "turn", "included_angle": "90 deg"}


def test_no_single_throw_is_advised_for_shoulders_that_no_single_throw_serves(shop: Book) -> None:
    # With 9 mm a turn the outermost end has atan(9 / (2 pi root 2) / 6) = 9.58 of 10 to 15 degrees; 12 degrees there want
    # 11.33 mm, which give the innermost end atan(11.33 / (2 pi root 2) / 3) = 23.03.
    aluminium = "step-drill-spiral-flute-aluminium-wrought"
    card = begun(shop, aluminium, "6, 8, 10, 12 mm")
    card = replace(card, machine="", settings={"step-relief": Setting(NINE_A_TURN)})
    job = work_out(card, shop)
    (of_all,) = (text for state, text in told(job, "step-relief") if state == "watch")
    assert "6.27 mm to 7.14 mm per turn for shoulder 1, 9.41 mm to 11.90 mm per turn for shoulder 3" in of_all
    (of_one,) = (text for state, text in told(job, "relief-drop") if state == "watch")
    assert "9.58 deg on the shoulder" in of_one
    assert "is told by 'Relief of all steps under one cam'" in of_one
    assert "11.33" not in of_one
    assert "ake a throw of" not in setup_sheet(job)


def test_one_throw_is_advised_where_it_serves_all_shoulders(shop: Book) -> None:
    # One shoulder of 10 to 12 mm: the throw for 12 degrees at its outer end gives atan(1.2 tan 12) = 14.31 at its inner one.
    card = begun(shop, "step-drill-spiral-flute-aluminium-wrought", "10, 12 mm")
    card = replace(card, machine="", settings={"step-relief": Setting(NINE_A_TURN)})
    (watch,) = (text for state, text in told(work_out(card, shop), "relief-drop") if state == "watch")
    assert "Take a throw of 11.332 mm per turn" in watch


def test_the_throw_for_one_diameter_is_not_set_while_that_for_all_steps_is_asked_for(shop: Book) -> None:
    card = begun(shop, "step-drill-spiral-flute-aluminium-wrought", "6, 8, 10, 12 mm")
    asked = Setting({key: text for key, text in NINE_A_TURN.items() if key != "radial_throw"})
    job = work_out(replace(card, machine="", settings={"step-relief": asked}), shop)
    assert "radial_throw" in {one.key for step in job.steps if step.in_use for one in step.answer.issues}
    assert not any("throw" in line.key for line in setting_lines(job, METRIC))
