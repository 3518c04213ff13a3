"""What belongs to one surface of a tool is neither set nor read on a job that grinds another."""

from __future__ import annotations

from dataclasses import replace

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.history import sharpenings_left
from library.cards.job import Job, work_out
from library.cards.model import Card, Tool
from library.cards.read_order import steps_read, surface_read
from library.cards.settings_lines import setting_lines
from library.setup_sheet.sheets import setup_sheet

MEASURED = {
    "received.diameter": "12.705 mm",
    "received.land_width": "1.2 mm",
    "received.land_measured_as": "chord",
}

REAMER = {
    **MEASURED,
    "wanted.bevel_angle": "45 deg",
    "wanted.bevel_relief_angle": "7 deg",
    "wanted.land_relief_angle": "7 deg",
    "wanted.margin_width": "0.2 mm",
    "wanted.relief_method": "tooth-rest-height",
}


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book(None)


def job(book: Book, family: str, places: dict[str, str]) -> Job:
    card = Card("2026-11-27-01", family=family, tool=Tool("R-1", flutes="6"))
    for place, text in places.items():
        card = edited(card, place, text)
    return work_out(card, book)


def lines(found: Job) -> dict[str, str]:
    return {line.title: line.value for line in setting_lines(found, found.display)}


def test_the_margin_of_the_land_is_none_of_the_bevel_lead(book: Book) -> None:
    # The bevel falls to the axis by atan(tan 7 / cos 45) = 9.8496 deg; 6.3525 sin 9.8496 = 1.0867. With the margin of
    # 0.2 / 6.3525 = 1.804 deg it would be 8.804 deg square to the bevel, and 1.359.
    found = lines(job(book, "reamer", REAMER))
    assert found["Tooth rest height"] == "1.087 mm"


def test_a_second_facet_of_the_land_makes_no_facets_of_the_bevel(book: Book) -> None:
    places = REAMER | {"wanted.second_land_relief_angle": "16 deg", "wanted.primary_land": "0.6 mm"}
    found = lines(job(book, "reamer", places))
    assert found["Tooth rest height"] == "1.087 mm"
    assert not [title for title in found if title.startswith("Facet")]


def test_what_was_typed_of_the_land_leaves_the_height_of_the_bevel_alone(book: Book) -> None:
    found = job(book, "reamer", REAMER | {"settings.reamer-land.margin_width": "0.3 mm"})
    step = found.step("reamer-land")
    assert step is not None
    assert step.works
    assert lines(found)["Tooth rest height"] == "1.087 mm"


def test_on_a_land_the_margin_counts(book: Book) -> None:
    # 6.3525 sin(7 + 1.804) = 0.972.
    found = lines(job(book, "reamer", REAMER | {"wanted.surface": "land"}))
    assert found["Tooth rest height"] == "0.972 mm"


def test_of_a_reamer_ground_on_its_bevel_no_land_is_read(book: Book) -> None:
    found = job(book, "reamer", REAMER)
    assert [surface_read(found, step) for step in steps_read(found)] == ["bevel"]
    assert "\nland " not in setup_sheet(found)


STOCK = {"settings.size-loss.stock_per_sharpening": "0.1 mm"}


def test_a_reamer_ground_on_its_bevel_loses_no_diameter_of_its_land(book: Book) -> None:
    step = job(book, "reamer", REAMER).step("size-loss")
    assert step is not None
    assert not step.in_use


def test_stock_off_a_bevel_is_length_and_judges_no_heel_of_the_land(book: Book) -> None:
    # On the face of the land the same stock is stopped, for the heel of so wide a flat without a margin would rub.
    wide = (
        REAMER
        | STOCK
        | {"received.land_width": "3 mm", "wanted.relief_form": "flat", "wanted.margin_width": "0 mm"}
    )
    on_land = job(book, "reamer", wide | {"wanted.surface": "land"}).step("size-loss")
    on_bevel = job(book, "reamer", wide).step("size-loss")
    assert on_land is not None
    assert on_bevel is not None
    assert on_land.stopped
    assert not on_bevel.stopped
    assert on_bevel.answer.inputs["ground_on"].value == "end"
    assert {one.key for one in on_bevel.answer.issues if one.missing} >= {"usable_length"}


def test_the_sheet_of_a_bevel_tells_what_is_left_for_wear_and_no_loss_of_diameter(book: Book) -> None:
    sized = {
        "tool.size": "10 mm",
        "received.diameter": "10.014 mm",
        "settings.reamer-size.hole_tolerance": "H8",
    }
    paper = " ".join(setup_sheet(job(book, "reamer", REAMER | sized)).split())
    # H8 of 10 mm begins at 10.000 mm.
    assert "0.014 mm of its diameter are left for wear" in paper
    assert "may lose" not in paper


def test_how_often_a_tool_can_be_sharpened_is_not_told_where_that_was_left_out(book: Book) -> None:
    places = REAMER | STOCK | {"wanted.surface": "land", "wanted.relief_form": "eccentric"}
    found = job(book, "reamer", places)
    assert sharpenings_left(found) is not None
    setting = found.card.settings["size-loss"]
    settings = {**found.card.settings, "size-loss": replace(setting, skipped=True)}
    assert sharpenings_left(work_out(replace(found.card, settings=settings), book)) is None


@pytest.mark.parametrize(
    ("family", "surface", "title"),
    [
        ("reamer", "bevel", "Wheel tilt"),
        ("reamer", "bevel", "Swivel angle"),
        ("reamer", "land", "Bevel angle"),
        ("twist-drill", "land", "Half point angle"),
        ("tap", "thread-land", "Chamfer angle"),
        ("end-mill", "end", "Face offset"),
        ("end-mill", "end", "Wheel tilt"),
    ],
)
def test_nothing_of_another_surface_is_set(book: Book, family: str, surface: str, title: str) -> None:
    places = REAMER | {
        "wanted.surface": surface,
        "wanted.relief_method": "inclined-wheel",
        "wanted.end_relief_angle": "7 deg",
        "wanted.thread_relief_angle": "2 deg",
        "wanted.point_angle": "118 deg",
        "wanted.chamfer_angle": "8 deg",
        "wanted.rake_angle": "8 deg",
        "wanted.back_taper": "0.02 mm",
        "received.helix_angle": "20 deg",
        "tool.thread": "M12 x 1.75" if family == "tap" else "",
    }
    found = lines(job(book, family, places))
    assert found
    assert title not in found
