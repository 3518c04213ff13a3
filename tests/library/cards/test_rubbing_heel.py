"""Where the heel of a lip rubs, nothing says beside it that the lip clears in some feed. Numbers by hand; derived."""

from __future__ import annotations

import math

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.job import Job, work_out
from library.cards.model import Card, Tool, Wanted
from library.setup_sheet.sheets import setup_sheet


@pytest.fixture(scope="module")
def shipped() -> Book:
    return open_book()


def drill(land: str, book: Book) -> Job:
    """A drill of 10 mm whose lips of 12 degrees are ground as one flat facet on a work head, its web of 1.5 mm."""
    wanted = {
        "lip_relief_angle": "12 deg",
        "point_angle": "118 deg",
        "web_thickness": "1.5 mm",
        "relief_method": "work-head",
        "surface": "lip",
    }
    return work_out(
        Card(
            family="twist-drill",
            tool=Tool("D-1", "10 mm", flutes="2"),
            received={"land_width": (land,), "land_measured_as": ("arc",)},
            wanted={key: Wanted(text) for key, text in wanted.items()},
        ),
        book,
    )


def test_no_feed_clears_where_the_heel_stands_ahead_of_the_lip(shipped: Book) -> None:
    job = drill("9 mm", shipped)
    heel, feed = job.step("point-setup"), job.step("feed-clearance")
    assert heel is not None
    assert feed is not None
    assert heel.stopped
    assert feed.stopped
    assert feed.answer.result is not None
    assert "largest_feed" not in feed.answer.result.outputs
    paper = " ".join(setup_sheet(job).split())
    assert "clears in feeds under" not in paper
    assert "The heel of the lip rubs, so that it clears in no feed." in paper


def test_the_feed_of_a_lip_whose_heel_clears_is_told(shipped: Book) -> None:
    feed = drill("3 mm", shipped).step("feed-clearance")
    assert feed is not None
    assert feed.answer.result is not None
    # pi 10 tan 12 is 6.678 mm in a turn.
    assert feed.answer.result.outputs["largest_feed"] == pytest.approx(
        math.pi * 10 * math.tan(math.radians(12))
    )
    assert not feed.stopped
