"""What a cam makes behind one edge is read once, by that cam."""

from __future__ import annotations

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.job import Job, work_out
from library.cards.model import Card, Tool
from library.cards.read_order import steps_read
from library.setup_sheet.sheets import setup_sheet

TAP = {
    "received.land_width": "0.17 in",
    "received.diameter": "0.625 in",
    "wanted.surface": "chamfer",
    "wanted.relief_method": "cam",
    "wanted.chamfer_threads": "2.5",
    "settings.tap-chamfer.radial_chamfer_relief": "7 deg",
}


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book(None)


def chamfer(book: Book, **more: str) -> Job:
    card = Card("2026-11-27-01", family="tap", units="in", tool=Tool("T-5", thread="5/8-11 UNC", flutes="4"))
    for place, text in {**TAP, **{key.replace("__", "."): text for key, text in more.items()}}.items():
        card = edited(card, place, text)
    return work_out(card, book)


def read_at_the_heel(job: Job) -> dict[str, float]:
    return {
        step.sheet.name: step.answer.result.stations[-1].readings["drop"]
        for step in steps_read(job)
        if step.answer.result is not None and "drop" in step.answer.result.stations[-1].readings
    }


def test_behind_a_chamfer_with_a_cam_only_what_the_cam_gives_is_read(book: Book) -> None:
    job = chamfer(
        book, **{"wanted__chamfer_relief_angle": "7 deg", "settings__relief-drop__chosen_throw": "1.6 mm"}
    )
    # 0.17 in round a radius of 0.3125 in is 0.544 of a radian; a cam of 1.6 mm a turn falls 1.6 / (2 pi) of a mm a radian.
    assert read_at_the_heel(job) == {"relief-drop": pytest.approx(0.544 * 1.6 / 6.283185, abs=1e-4)}
    # 7 deg would be 0.17 tan 7 = 0.0209 in; it stands with what is wanted alone.
    readings = setup_sheet(job).split("Read on the way", 1)[1].split("After grinding")[0]
    assert "0.0209" not in readings


def test_without_a_cam_the_chamfer_is_read_by_what_is_wanted(book: Book) -> None:
    # 0.17 in tan 7 deg, in mm.
    assert read_at_the_heel(chamfer(book))["tap-chamfer"] == pytest.approx(0.02087 * 25.4, abs=1e-3)
