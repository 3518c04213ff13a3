"""Lands that are not alike: each flute is judged by its own land, on card, sheet and record. Numbers by hand; derived."""

from __future__ import annotations

import math
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.as_data import card_data
from library.cards.close import finished
from library.cards.editing import edited
from library.cards.inspecting import reliefs_after, verdicts
from library.cards.issues import issues_of
from library.cards.job import work_out
from library.cards.model import Card, Inspection, Tool, Wanted
from library.cards.store import from_bytes
from library.cards.writing import as_toml
from library.pages.readings_on_the_way import on_the_way
from library.setup_sheet.sheets import setup_sheet
from library.units.system import METRIC

SHOP = """schema = 1

[[machine]]
id = "drawer"
title = "The grinder with the drawer"
cam_throws = ["1.2 mm"]
throw_per = "tooth"

[[wheel]]
id = "straight"
title = "Straight"
shape = "type-1-straight"
diameter = "150 mm"
rated_speed = "6000 rpm"
"""

NARROW, WIDE = (2 * math.degrees(math.asin(land / 9.98)) for land in (2.4, 2.5))
"""Behind their edges two lands of 2.4 mm and one of 2.5 mm, straight across, end at 27.83 and at 29.01 degrees."""


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Book:
    folder = tmp_path_factory.mktemp("uneven") / "shop"
    folder.mkdir()
    (folder / "machines.toml").write_text(SHOP)
    return open_book(folder)


def tap(*, lands: str = "2.4, 2.4, 2.5 mm", drops: str = "0.371, 0.371, 0.387 mm", flutes: str = "4") -> Card:
    card = Card(
        id="2026-11-26-01",
        family="tap",
        machine="drawer",
        tool=Tool("T-10-L", thread="M10 x 1.5", flutes=flutes),
        received={"diameter": ("9.98 mm",), "land_measured_as": ("chord",)},
        wanted={"relief_form": Wanted("eccentric"), "thread_relief_angle": Wanted("6 deg"),
                "surface": Wanted("thread-land")},
        after={"drop": Inspection((), "", "0.01 mm")},
    )  # fmt: skip
    return edited(edited(card, "received.land_width", completed(lands)), "after.drop", completed(drops))


def completed(text: str) -> str:
    """Readings with the unit of the last behind each."""
    *numbers, last = text.split(", ")
    return ", ".join([*(f"{one} mm" for one in numbers), last])


def after(card: Card, book: Book) -> tuple[list[str], list[float]]:
    (verdict,) = verdicts(work_out(card, book))
    return [mark.state for mark in verdict.marks], [round(one, 3) for one in verdict.each]


def test_right_flutes_pass_each_by_its_own_land(shop: Book) -> None:
    # A quarter of a turn falls 1.2 mm: 27.83 / 90 * 1.2 is 0.371, 29.01 / 90 * 1.2 is 0.387.
    assert (round(NARROW / 90 * 1.2, 3), round(WIDE / 90 * 1.2, 3)) == (0.371, 0.387)
    assert after(tap(), shop) == (["pass"] * 3, [0.371, 0.371, 0.387])
    assert not [one.text for one in issues_of(work_out(tap(), shop)) if "Grind it again" in one.text]
    # 1.2 mm in a quarter of a turn is atan(1.2 / (pi / 2 * 4.99)) = 8.70 degrees on all three, which was said before too.
    found = [one.angles["eccentric"] for one in reliefs_after(work_out(tap(), shop))]
    assert [round(math.degrees(one), 1) for one in found] == [8.7] * 3


def test_a_wrong_flute_is_off_by_its_own_land_though_it_is_right_for_the_widest(shop: Book) -> None:
    # 0.387 is right for the third flute and 0.016 too much for the first, where it is 0.006 over the tolerance.
    card = tap(drops="0.387, 0.371, 0.371 mm")
    assert after(card, shop)[0] == ["stop", "pass", "stop"]
    texts = [
        one.text for one in issues_of(work_out(card, shop)) if one.way == "after.drop" and "is" in one.text
    ]
    assert any("flute 1: 0.387 mm is 0.006 mm over the tolerance" in text for text in texts)
    assert any("flute 3: 0.371 mm is 0.006 mm under the tolerance" in text for text in texts)


def test_one_land_for_all_and_equal_lands_are_judged_as_ever(shop: Book) -> None:
    for lands in ("2.5 mm", "2.5, 2.5, 2.5 mm"):
        states, each = after(tap(lands=lands), shop)
        assert (states, each) == (["stop", "stop", "pass"], [])


def test_what_a_person_wrote_that_it_shall_be_holds_for_every_flute(shop: Book) -> None:
    card = edited(tap(), "after.drop.wanted", "0.38 mm")
    assert after(card, shop) == (["pass"] * 3, [])


def test_a_flute_without_a_land_is_held_against_the_widest(shop: Book) -> None:
    card = edited(tap(), "received.land_width", "2.4 mm, , 2.5 mm")
    assert after(card, shop)[1] == [0.371, 0.387, 0.387]


def test_lands_measured_again_after_grinding_hold_from_then_on(shop: Book) -> None:
    # 2.3 mm across 9.98 is 26.65 degrees, which fall 0.355 mm.
    card = replace(tap(), after={**tap().after, "land_width": Inspection(("2.3 mm", "2.4 mm", "2.5 mm"))})
    found = next(one for one in verdicts(work_out(card, shop)) if one.key == "drop")
    assert [round(one, 3) for one in found.each] == [0.355, 0.371, 0.387]


def test_what_the_wanted_relief_would_have_read_is_told_of_each_land_too(shop: Book) -> None:
    (verdict,) = verdicts(work_out(tap(), shop))
    # 6 degrees fall R theta tan 6: 4.99 * 0.4857 * 0.10510 is 0.255, with 0.5063 it is 0.266.
    fall = [4.99 * math.radians(one) * math.tan(math.radians(6)) for one in (NARROW, NARROW, WIDE)]
    assert [round(one, 3) for one in fall] == [0.255, 0.255, 0.266]
    assert verdict.first_each == pytest.approx(fall)


@pytest.mark.parametrize("form", ["text", "markdown", "html"])
def test_the_sheet_says_what_each_flute_shall_read_and_which_land_the_way_is_of(
    shop: Book, form: str
) -> None:
    text = " ".join(setup_sheet(work_out(tap(), shop), form).split())
    assert "0.371, 0.371, 0.387 mm +/- 0.01 mm" in text
    assert "OFF" not in text.replace("OFFICE", "")
    assert "widest land, flute 3" in text
    assert "heel of 1, 2" in text
    assert "27.83" in text
    assert "reads 0.371, 0.371, 0.387 mm" in text


def test_the_way_on_the_card_says_its_land_and_has_a_heel_for_each_other(shop: Book) -> None:
    found = on_the_way(work_out(tap(), shop))
    assert found is not None
    assert found.land == "widest land, flute 3"
    assert found.rows[0][2][-1] == "29.01"
    heels = {title: numbers[-1] for title, _, numbers in found.rows if title.startswith("heel of 1, 2")}
    # A pitch of 1.5 mm in a turn is 1.5 * 27.83 / 360 = 0.116 mm over the narrow land.
    assert heels == {
        "heel of 1, 2: turned": "27.83",
        "heel of 1, 2: drop": "0.371",
        "heel of 1, 2: lead along the axis": "0.116",
    }
    assert found.may_be == "0.361 to 0.381 (1, 2), 0.377 to 0.397 mm (3)"
    even = on_the_way(work_out(tap(lands="2.5 mm"), shop))
    assert even is not None
    assert (even.land, even.may_be) == ("", "0.377 mm to 0.397 mm")


def test_a_record_is_judged_by_each_land_ever_after(shop: Book) -> None:
    # With three flutes the 1.2 mm fall in a third of a turn: 27.83 / 120 * 1.2 is 0.278, 29.01 / 120 * 1.2 is 0.290.
    card = replace(tap(flutes="3", drops="0.278, 0.278, 0.290 mm"), result="good")
    done = finished(work_out(card, shop), date(2026, 11, 26))
    read = from_bytes(as_toml(done).encode(), Path("2026-11-26-01.toml")).card
    assert read.after["drop"].judged_by == "0.278 mm, 0.278 mm, 0.29 mm"
    job = work_out(replace(read, machine="sold"), shop)
    (verdict,) = verdicts(job)
    assert [mark.state for mark in verdict.marks] == ["pass"] * 3
    assert "0.278, 0.278, 0.290 mm" in " ".join(setup_sheet(job).split())


def test_plain_data_has_what_each_flute_shall_read(shop: Book) -> None:
    (found,) = card_data(work_out(tap(), shop), METRIC)["inspection"]
    assert [one["wanted"] for one in found["flutes"]] == pytest.approx([0.371, 0.371, 0.387])


def reamer(received: dict[str, tuple[str, ...]], drops: tuple[str, ...]) -> Card:
    return Card(
        family="reamer",
        wheel="straight",
        tool=Tool("R-10", size="10 mm", flutes="2"),
        received={"diameter": ("10 mm",), "land_measured_as": ("arc",), **received},
        wanted={"relief_form": Wanted("flat"), "land_relief_angle": Wanted("6 deg")},
        after={"drop": Inspection(drops, "", "0.002 mm")},
    )


def flat(behind: float) -> float:
    """How far one flat of 6 degrees lies inside a circle of 10 mm, so far (rad) behind where it begins."""
    relief = math.radians(6)
    return 5 - 5 * math.cos(relief) / math.cos(behind - relief)


def test_a_flat_is_judged_by_the_land_of_each_flute_of_which_the_wider_falls_less(shop: Book) -> None:
    # 0.8 mm round the circle are 0.16 rad: 5 - 5 cos 6 / cos(0.05528) is 0.020; 0.6 mm are 0.12 rad: 0.027.
    assert (round(flat(0.16), 3), round(flat(0.12), 3)) == (0.020, 0.027)
    card = reamer({"land_width": ("0.8 mm", "0.6 mm")}, ("0.020 mm", "0.027 mm"))
    assert after(card, shop) == (["pass", "pass"], [0.020, 0.027])


def test_a_margin_of_each_flute_counts_as_its_land_does(shop: Book) -> None:
    # The flat begins where the margin ends: 0.1 and 0.2 mm round the circle are 0.02 and 0.04 rad of 0.16.
    assert (round(flat(0.14), 3), round(flat(0.12), 3)) == (0.024, 0.027)
    card = reamer({"land_width": ("0.8 mm",), "margin_width": ("0.1 mm", "0.2 mm")}, ("0.024 mm", "0.027 mm"))
    assert after(card, shop) == (["pass", "pass"], [0.024, 0.027])


def test_facets_are_planned_once_and_a_narrow_land_ends_on_them_before(shop: Book) -> None:
    card = Card(
        family="twist-drill",
        wheel="straight",
        tool=Tool("D-87", size="8.7 mm", flutes="2"),
        received={"diameter": ("8.7 mm",), "land_measured_as": ("arc",), "body_diameter": ("9 mm",),
                  "land_width": ("3.1 mm", "2.9 mm")},
        wanted={"relief_form": Wanted("flat"), "land_relief_angle": Wanted("12 deg"), "surface": Wanted("land")},
        after={"drop": Inspection(("0.040 mm", "0.097 mm"), "", "0.005 mm")},
    )  # fmt: skip
    for key, text in (("primary_land", "0.6 mm"), ("least_gap", "0.04 mm")):
        card = edited(card, f"settings.relief-facets.{key}", text)
    # The second facet begins 0.6 mm along the first and leaves the tangent at the edge by 23.3708 degrees, as on the card.
    first, second = math.radians(12), math.radians(23.3708)
    x, y = 4.35 - 0.6 * math.sin(first), 0.6 * math.cos(first)

    def drop(land: float) -> float:
        turned = land / 4.35
        along = (x * math.sin(turned) - y * math.cos(turned)) / math.cos(turned - second)
        return 4.35 - math.hypot(x - along * math.sin(second), y + along * math.cos(second))

    assert (round(drop(3.1), 3), round(drop(2.9), 3)) == (0.040, 0.097)
    assert after(card, shop) == (["pass", "pass"], [0.040, 0.097])
