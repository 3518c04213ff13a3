"""How often the tool can be sharpened again is one number on the sheet, on the page Set and at the end of the card."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.history import sharpenings_left
from library.cards.job import Job, work_out
from library.cards.model import Card, Inspection, Setting, Tool, Wanted
from library.pages.as_text import as_text
from library.pages.page import Page, Section
from library.pages.setting_answers import setting_answers
from library.setup_sheet.sheets import setup_sheet

CARD = Card(
    family="tap",
    tool=Tool("T-12", thread="M12", flutes="3"),
    received={"diameter": ("11.98 mm",), "land_width": ("3.2 mm",), "land_measured_as": ("chord",)},
    wanted={
        "thread_relief_angle": Wanted("6 deg"),
        "surface": Wanted("thread-land"),
        "relief_form": Wanted("eccentric"),
    },
    settings={"size-loss": Setting({"stock_per_sharpening": "0.2 mm", "least_diameter": "11.8 mm"})},
)


@pytest.fixture(scope="module")
def shipped() -> Book:
    return open_book()


def told(text: str) -> set[str]:
    return set(re.findall(r"Sharpenings left: (\d+)", " ".join(text.split())))


def on_the_page_set(job: Job) -> str:
    blocks = [one for part in setting_answers(job, "size-loss") for one in part if one]
    return as_text(Page("", (Section("", tuple(blocks)),)))


@pytest.mark.parametrize("now", ["", "11.9 mm"])
def test_a_tool_measured_after_grinding_has_one_number_of_sharpenings_left(shipped: Book, now: str) -> None:
    card = replace(CARD, after={"diameter": Inspection((now,))}) if now else CARD
    job = work_out(card, shipped)
    # 2 x 0.2 x tan 6 are 0.042 mm each time: from 11.98 to 11.8 mm four times, from 11.9 twice.
    assert sharpenings_left(job) == (2 if now else 4)
    assert told(setup_sheet(job)) == told(on_the_page_set(job)) == {str(sharpenings_left(job))}
