"""A relief found after grinding outside the book's range: each flute by its own reading. Numbers by hand; derived."""

from __future__ import annotations

import math
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from geometry.sentences import Kind
from library.book.model import Book, Measure
from library.book.opening import open_book
from library.cards.close import finished, reopened
from library.cards.inspecting import verdicts
from library.cards.issues import issues_of, keeps_open
from library.cards.job import work_out
from library.cards.model import Card, Inspection, Setting, Tool, Wanted
from library.cards.relief_after import relief_after
from library.cards.starting import from_entry
from library.cards.store import from_bytes
from library.cards.writing import as_toml
from library.equipment.model import Graduation, Machine
from library.issue import Issue
from library.pages.card_end import end_answers
from library.setup_sheet.sheets import setup_sheet
from library.units.show import say
from library.units.system import METRIC
from tui.view.card_form import CardForm
from tui.view.card_page import CardPage
from tui.view.lines import text_of

LAND = 1.4
"""In mm along the arc: at the axis a heel of 0.28 mm falls 0.2 of it, and square to a cone of 90 degrees cos 45 of that."""


def relief(drop: float) -> str:
    return f"{math.degrees(math.atan(drop / LAND * math.cos(math.pi / 4))):.2f} deg"


@pytest.fixture(scope="module")
def shipped() -> Book:
    return open_book()


def step_drill(book: Book, *drops: str, throw: str = "2.5 mm") -> Card:
    """The book has 8 to 12 degrees for its shoulders; the cam of 2.5 mm a tooth gives 8.01 on 8 mm."""
    begun = from_entry(book, book.entries["step-drill-spiral-flute-plain-steel"])
    settings = {"relief-drop": {"included_angle": "90 deg", "chosen_throw": throw, "throw_per": "tooth"}}
    return replace(
        begun,
        tool=Tool("S-1", size="4, 8 mm", flutes="2"),
        received={"diameter": ("8 mm",), "land_width": (f"{LAND} mm",), "land_measured_as": ("arc",)},
        settings={name: Setting(typed) for name, typed in settings.items()},
        after={"drop": Inspection(drops, tolerance="0.02 mm")},
        result="good",
    )


def told(card: Card, book: Book) -> list[Issue]:
    return [
        one for one in issues_of(work_out(card, book)) if "of the book" in one.text and one.where == "after"
    ]


def screen(card: Card, book: Book, way: str) -> str:
    form = CardForm(book, card)
    form.go_to(way)
    return " ".join(" ".join(text_of(one) for one in CardPage(form).draw(80, 60)).replace("│", " ").split())


def test_a_flute_that_passes_under_the_books_range_is_on_watch(shipped: Book) -> None:
    card = step_drill(shipped, "0.28 mm", "0.27 mm")
    job = work_out(card, shipped)
    assert [mark.state for mark in verdicts(job)[0].marks] == ["pass", "pass"]
    (one,) = told(card, shipped)
    assert (one.way, one.flute, one.state) == ("after.drop", 2, "watch")
    assert relief(0.27) == "7.77 deg"
    assert one.text.startswith(
        "Relief on the shoulder, flute 2: 7.77 deg found, less than the 8 deg of the book. "
    )
    assert not keeps_open(job)


def test_it_stands_on_after_end_and_sheet(shipped: Book) -> None:
    card = step_drill(shipped, "0.28 mm", "0.27 mm")
    says = "flute 2: 7.77 deg found, less than the 8 deg of the book"
    assert f"WATCH: Relief on the shoulder, {says}" in screen(card, shipped, "after.drop")
    assert says in str(list(end_answers(work_out(card, shipped), "result")))
    assert says in " ".join(setup_sheet(work_out(card, shipped)).split())


def test_a_record_says_it_by_the_book_of_its_day_and_an_older_one_stays_as_it_was(shipped: Book) -> None:
    done = finished(work_out(step_drill(shipped, "0.28 mm", "0.27 mm"), shipped), date(2026, 11, 26))
    read = from_bytes(as_toml(done).encode(), Path("2026-11-26-01.toml")).card
    entry = shipped.entries[done.entry]
    value = entry.values["shoulder_relief_angle"]
    other = replace(shipped, entries={**shipped.entries, entry.id: replace(entry, values={**entry.values, value.key: replace(value, low=None)})})  # fmt: skip
    assert [one.flute for one in told(read, other)] == [2]
    older = replace(done, chosen={key: done.chosen[key] for key in ("surface", "relief_method")})
    assert told(older, shipped) == []
    assert reopened(done).chosen == {}


@pytest.mark.parametrize(
    ("drops", "end"),
    [
        # 8 deg is 0.2783 mm: a micron under it reads as well.
        (("0.2775 mm", "0.28 mm"), ""),
        (("0.277 mm", "0.276 mm"), "flutes 1 and 2: 7.96 deg and 7.94 deg found, less than the 8 deg"),
        (("0.43 mm", "0.42 mm"), "flute 1: 12.25 deg found, more than the 12 deg"),
        (("0.40 mm", "0.35 mm"), ""),
    ],
)
def test_only_what_a_micron_does_not_make_is_told(shipped: Book, drops: tuple[str, ...], end: str) -> None:
    found = told(step_drill(shipped, *drops), shipped)
    assert [end in one.text for one in found] == ([True] if end else [])


def test_an_end_that_a_person_wanted_to_pass_is_not_told(shipped: Book) -> None:
    card = step_drill(shipped, "0.26 mm", "0.43 mm")
    book = card.wanted["shoulder_relief_angle"].book
    card = replace(
        card, wanted={**card.wanted, "shoulder_relief_angle": Wanted("7.5 deg", book, reason="it tore")}
    )
    (one,) = told(card, shipped)
    assert "flute 2: 12.25 deg found, more than the 12 deg" in one.text


def test_an_end_that_the_cam_passes_is_told_of_the_cam_alone(shipped: Book) -> None:
    # 4 mm from tooth to tooth of two is 4 / pi for each radian: 12.68 deg square to the cone, and 0.446 mm at the heel.
    card = step_drill(shipped, "0.446 mm", "0.44 mm", throw="4 mm")
    assert told(card, shipped) == []
    # The shoulders themselves are laid out over all steps, and judged by their own calculation.
    heel = work_out(card, shipped).step("relief-drop")
    assert heel is not None
    (watch,) = (one for one in heel.checks if one.state == "watch")
    assert "12.68 deg" in (said := say(watch.sentence, METRIC))
    assert "more than the 12 deg of the book" in said
    (one,) = told(step_drill(shipped, "0.446 mm", "0.27 mm", throw="4 mm"), shipped)
    assert "flute 2: 7.77 deg found, less than the 8 deg" in one.text


def test_a_number_that_a_person_took_within_the_range_keeps_the_range(shipped: Book) -> None:
    card = step_drill(shipped, "0.26 mm", "0.28 mm")
    book = card.wanted["shoulder_relief_angle"].book
    card = replace(
        card, wanted={**card.wanted, "shoulder_relief_angle": Wanted("9 deg", book, reason="it tore")}
    )
    (one,) = told(card, shipped)
    assert "flute 1: 7.48 deg found, less than the 8 deg" in one.text


def test_half_a_division_of_the_indicator_is_no_relief_of_another_tool(shipped: Book) -> None:
    indicator = Graduation("indicator", "indicator", Measure("0.02 mm", 0.02), Kind.LENGTH, reads=("drop",))
    job = work_out(step_drill(shipped, "0.269 mm", "0.267 mm"), shipped)
    assert [one.flute for one in relief_after(job)] == [1]
    coarse = replace(job, machine=Machine("grey", "The grey grinder", graduations={"indicator": indicator}))
    # 8 deg is 0.2783 mm, and 0.01 mm is half a division: 0.269 mm may be as much, 0.267 mm may not.
    assert ["flute 2: 7.68 deg found" in one.text for one in relief_after(coarse)] == [True]
