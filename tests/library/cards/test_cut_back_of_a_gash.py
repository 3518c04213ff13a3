"""A cut off the end of a gun tap is a setting to tick, and the gash is set as it is counted after it."""

from __future__ import annotations

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.job import work_out
from library.cards.model import Card
from library.cards.setting_line import SettingLine
from library.cards.settings_lines import setting_lines
from library.cards.starting import from_entry
from library.setup_sheet.sheets import setup_sheet
from library.units.system import Display
from tui.view.card_row import Opened
from tui.view.card_settings_rows import settings_rows

GUN_TAP = "tap-spiral-point-aluminium-wrought"
GASH = {"cut_back", "spiral_point_angle", "spiral_point_depth", "spiral_point_depth_after"}


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book()


def card_of(book: Book, **settings: str) -> Card:
    card = edited(from_entry(book, book.entries[GUN_TAP]), "wanted.chamfer_threads", "4")
    given = {
        "diameter": "1/4 in",
        "threads_per_inch": "20 tpi",
        "spiral_point_depth": "0.0529 in",
        **settings,
    }
    for key, text in given.items():
        card = edited(card, f"settings.spiral-point.{key}", text)
    return card


def lines_of(card: Card, book: Book) -> dict[str, SettingLine]:
    return {
        line.key: line
        for line in setting_lines(work_out(card, book), Display("in"))
        if line.sheet == "spiral-point" and line.key in GASH
    }


def test_a_planned_cut_is_the_first_step_at_the_gash_and_its_depth_stands_as_after_the_cut(
    book: Book,
) -> None:
    # By hand: 0.0529 less 0.0165 tan 10 = 0.00291 is 0.0500 in. Derived.
    found = lines_of(card_of(book, cut_back="0.0165 in"), book)
    assert list(found) == ["cut_back", "spiral_point_angle", "spiral_point_depth_after"]
    assert (found["cut_back"].value, found["cut_back"].is_set) == ("0.0165 in", True)
    assert found["cut_back"].counted == "off the end, before anything is ground"
    assert found["spiral_point_depth_after"].value == "0.0500 in"


def test_the_end_cut_off_and_the_stock_off_the_chamfer_are_steps_to_tick_in_their_order(book: Book) -> None:
    card = edited(from_entry(book, book.entries[GUN_TAP]), "tool.thread", "M12")
    for key, text in {"cut_back": "2 mm", "chamfer_stock": "0.3 mm", "chamfer_threads": "4"}.items():
        card = edited(card, f"settings.tap-chamfer.{key}", text)
    job = work_out(card, book)
    lines = [line for line in setting_lines(job, Display("mm")) if line.sheet == "tap-chamfer"]
    assert [(line.title, line.value, line.counted) for line in lines if line.key != "chamfer_angle"] == [
        ("Cut back", "2.000 mm", "off the end, before anything is ground"),
        ("Stock off the chamfer", "0.300 mm", "square to the chamfer, off every land alike"),
    ]
    assert [line.key for line in lines] == ["cut_back", "chamfer_angle", "chamfer_stock"]
    sheet = " ".join(setup_sheet(job).split())
    assert "Cut back 2.000 mm off the end, before anything is ground" in sheet
    assert "Stock off the chamfer 0.300 mm square to the chamfer, off every land alike" in sheet
    # What is ticked is not told again at the foot.
    assert "cut back 2 mm" not in sheet
    (row,) = (one for one in settings_rows(job, Opened()) if one.way == "settings.tap-chamfer")
    # The cut back is set before what is worked out, and stands so; the stock is set last, and has its own line alone.
    assert [one.title for one in row.told if one.is_set] == ["Cut back", "Chamfer angle"]
    told = [one.title for one in row.told if one.is_text]
    assert told == [
        "Off the end, before anything is ground.",
        "Stock off the chamfer: square to the chamfer, off every land alike.",
    ]


def test_the_stock_off_a_gash_is_a_step_too(book: Book) -> None:
    card = card_of(book, cut_back="0.0165 in", stock_per_sharpening="0.002 in")
    lines = [
        one for one in setting_lines(work_out(card, book), Display("in")) if one.key == "stock_per_sharpening"
    ]
    assert [(one.value, one.counted, one.is_set) for one in lines] == [
        ("0.0020 in", "off the gash, in every flute alike", True)
    ]


def test_without_a_cut_the_depth_is_set_as_it_is_and_nothing_is_cut(book: Book) -> None:
    found = lines_of(card_of(book), book)
    assert list(found) == ["spiral_point_angle", "spiral_point_depth"]
    assert found["spiral_point_depth"].value == "0.0529 in"


def test_no_smaller_angle_than_that_of_the_entry_is_advised(book: Book) -> None:
    # Half the land of 0.06 in stays at 5.71 deg, under the 8 deg at which the entry begins; 0.09 in would do at 8.53 deg.
    card = edited(
        card_of(book, land_width="0.06 in", land_measured_as="chord"), "wanted.chamfer_threads", "5"
    )
    for land, offered in (("0.06 in", False), ("0.09 in", True)):
        tried = edited(card, "settings.spiral-point.land_width", land)
        tried = edited(tried, "settings.spiral-point.spiral_point_depth", "")
        (step,) = (one for one in work_out(tried, book).steps if one.sheet.name == "spiral-point")
        assert step.answer.result is not None
        (watched,) = (one for one in step.answer.result.checks if one.state == "watch")
        assert ("spiral_point_angle" in dict(watched.cure)) is offered
