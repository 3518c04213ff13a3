"""A height is told with the side of the axis on which it stands: set on the other, the heel stands proud.

By hand, for the land lying above the edge: a tooth rest turns the tool down to its edge, so it stands below the axis; a
straight wheel slopes its tangent down to the edge where its own axis stands above. Held alike, a left-hand tool has its
edge on the other side. Derived.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.job import Job, work_out
from library.cards.model import Card, Tool
from library.cards.planning import plan
from library.pages.as_text import as_text
from library.pages.life import batch_page
from library.setup_sheet.sheets import setup_sheet
from library.units.system import METRIC
from tests.library.cards.test_land_in_facets import REAMER

MACHINES = """schema = 1

[[machine]]
id = "bare"
title = "The grinder without a scale"

[[machine]]
id = "scaled"
title = "The grinder with a scale"

[machine.graduations.tooth-rest]
title = "rest screw"
division = "0.01 mm"
sets = ["tooth_rest_height"]
more = "out"
less = "in"

[[wheel]]
id = "straight"
title = "Straight"
shape = "type-1-straight"
diameter = "150 mm"
"""

FLAT = {key: text for key, text in REAMER.items() if "second" not in key and "primary" not in key} | {
    "received.land_width": "0.8 mm",
    "wanted.margin_width": "0 mm",
}
"""A narrow land of one flat: 0.8 / 5.99 = 7.65 deg, less than twice the relief of 5, so that its heel clears."""


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    folder = tmp_path_factory.mktemp("shop")
    (folder / "machines.toml").write_text(MACHINES, encoding="utf-8")
    return open_book(folder)


def card_of(values: dict[str, str], **places: str) -> Card:
    card = Card("2026-11-26-01", family="reamer", tool=Tool("R-12", flutes="6"))
    for place, text in {**values, **{key.replace("__", "."): text for key, text in places.items()}}.items():
        card = edited(card, place, text)
    return card


def sheet(job: Job) -> str:
    return " ".join(setup_sheet(job).split())


@pytest.mark.parametrize("machine", ["", "bare"])
def test_without_a_scale_a_tooth_rest_is_told_to_stand_below_the_axis(book: Book, machine: str) -> None:
    # 5.99 sin 15 = 1.550 and 5.99 sin 5 = 0.522, for facets with no margin before them.
    said = sheet(work_out(replace(card_of(REAMER, wanted__margin_width="0 mm"), machine=machine), book))
    assert "Facet 2: rest height 1.550 mm below the tool axis" in said
    assert "Facet 1: rest height 0.522 mm below the tool axis" in said


def test_with_a_scale_the_words_of_the_machine_follow_behind_the_side(book: Book) -> None:
    said = sheet(work_out(replace(card_of(FLAT), machine="scaled"), book))
    assert "Tooth rest height 0.522 mm below the tool axis; 52 divisions of 0.01 mm, rest screw out" in said


def test_the_axis_of_a_straight_wheel_is_told_to_stand_above_that_of_the_tool(book: Book) -> None:
    card = replace(card_of(FLAT, wanted__relief_method="wheel-head-height"), wheel="straight")
    # 75 sin 5 = 6.537, by the radius of the wheel.
    assert "Wheel head height 6.537 mm above the tool axis" in sheet(work_out(card, book))


def test_of_a_left_hand_tool_held_alike_the_other_side_is_named_first(book: Book) -> None:
    said = sheet(work_out(card_of(FLAT, wanted__hand="left"), book))
    assert "Tooth rest height 0.522 mm LEFT-HAND above the tool axis, right-hand below it" in said


def test_a_rest_far_beside_the_wheel_whose_height_is_below_zero_stands_above_the_axis(book: Book) -> None:
    # Where the edge stands higher, 4 mm along a helix of 45 deg, it is turned 4 / 5.99 = 38.26 deg: 5.99 sin(5 - 38.26) < 0.
    card = card_of(
        FLAT,
        received__helix_angle="45 deg",
        **{"settings__tooth-rest__rest_offset": "-4 mm", "settings__setting-height": "skip"},
    )
    job = work_out(card, book)
    step = job.step("tooth-rest")
    assert step is not None
    assert step.answer.result is not None
    assert step.answer.result.outputs["tooth_rest_height"] < 0
    assert "minus: above the tool axis" in sheet(job)


def test_a_plan_of_cards_says_the_side_too(book: Book) -> None:
    said = " ".join(as_text(batch_page(plan([card_of(FLAT)], book, METRIC))).split())
    assert "Tooth rest height: 0.522 mm, below the tool axis" in said
