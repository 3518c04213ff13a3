"""The numbers of a job in the lines that tell how its tool is ground."""

from __future__ import annotations

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.how_ground import Numbers, setup_of
from library.cards.job import Job, work_out
from library.cards.model import Card, Tool
from library.cards.settings_lines import setting_lines
from library.cards.starting import from_entry
from library.guidance.model import setups


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book(None)


def bevel_lead(book: Book, points: str = "") -> Job:
    card = Card("2026-11-27-01", family="reamer", tool=Tool("R-1", flutes="6"))
    for place, text in {
        "received.diameter": "12.705 mm",
        "received.land_width": "1.2 mm",
        "received.land_measured_as": "chord",
        "wanted.bevel_angle": "45 deg",
        "wanted.bevel_relief_angle": "7 deg",
        "wanted.relief_method": "tooth-rest-height",
        "wanted.indicator_points": points,
    }.items():
        card = edited(card, place, text)
    return work_out(card, book)


# Derived: the bevel falls to the axis by atan(tan 7 / cos 45) = 9.8496 deg, the heel is turned by
# 2 asin(0.6 / 6.3525) = 10.840 deg, and the flat meets the ray there at
# 6.3525 cos 9.8496 / cos(10.840 - 9.8496) = 6.25981; 6.3525 less that is 0.093, and square to 45 deg 0.066.
@pytest.mark.parametrize(
    ("points", "said"),
    [("", "(0.093 mm, indicator at the axis)"), ("square", "(0.066 mm, indicator square to the surface)")],
)
def test_the_drop_says_where_the_indicator_points_for_it(book: Book, points: str, said: str) -> None:
    job = bevel_lead(book, points)
    setup = setup_of(job)
    assert setup is not None
    assert said in setup.lines["read"].said(Numbers(job, job.display))


def test_no_line_with_a_drop_says_itself_where_the_indicator_points_for_the_number(book: Book) -> None:
    named = [
        one.text
        for setup in setups(book).values()
        for one in setup.lines.values()
        if "{heel_drop}" in one.text
    ]
    assert named
    assert [text for text in named if text.startswith("Indicator ")] == []


@pytest.mark.parametrize(
    ("entry", "typed", "keys"),
    [
        (
            "twist-drill-jobber-plain-steel",
            {
                "tool.size": "12.5 mm",
                "received.web_thickness": "2.1 mm",
                "received.land_width": "6 mm",
                "wanted.relief_method": "work-head",
                "wanted.lip_relief_angle": "12 deg",
                "wanted.second_lip_relief_angle": "32 deg",
            },
            ("second_roll_angle", "roll_angle"),
        ),
        (
            "reamer-taper-pin",
            {
                "tool.size": "6 mm",
                "received.land_width": "1 mm",
                "settings.setting-height.wheel_diameter": "100 mm",
                "settings.reamer-land.primary_land": "0.25 mm",
                "settings.back-taper.taper_ratio": "1/50",
            },
            ("facet 2: height", "wheel_head_height"),
        ),
    ],
)
def test_a_setting_of_two_facets_is_told_for_both_in_the_order_of_the_settings(
    book: Book, entry: str, typed: dict[str, str], keys: tuple[str, str]
) -> None:
    card = from_entry(book, book.entries[entry])
    for place, text in {"tool.flutes": "2", **typed}.items():
        card = edited(card, place, text)
    job = work_out(card, book)
    lines = [(line.key, line.value) for line in setting_lines(job, job.display) if line.key in keys]
    assert tuple(key for key, _ in lines) == keys
    assert Numbers(job, job.display)(keys[1]) == ", then ".join(value for _, value in lines)
    assert lines[0][1] != lines[1][1]


def test_a_length_of_the_book_is_told_in_the_unit_of_the_card_and_one_that_was_typed_as_typed(
    book: Book,
) -> None:
    card = from_entry(book, book.entries["reamer-taper-pin"], "in")
    for place, text in {"tool.size": "1/4 in", "tool.flutes": "6", "received.land_width": "0.04 in"}.items():
        card = edited(card, place, text)
    of_book = work_out(card, book)
    # 0.05 mm / 25.4 = 0.00197 in.
    assert Numbers(of_book, of_book.display)("margin_width") == "0.002 in"
    setup = setup_of(of_book)
    assert setup is not None
    assert "(0.002 in)" in setup.lines["set"].said(Numbers(of_book, of_book.display))
    typed = work_out(edited(card, "wanted.margin_width", "0.06 mm"), book)
    assert Numbers(typed, typed.display)("margin_width") == "0.06 mm"
