"""A closed card says and judges what it did on its day, whatever machine and book have become. Numbers by hand; derived."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.close import differs, finished, reopened
from library.cards.inspecting import verdicts
from library.cards.issues import issues_of
from library.cards.job import work_out
from library.cards.model import Card, Inspection, Setting, Tool, Wanted
from library.cards.settings_lines import setting_lines
from library.cards.store import from_bytes
from library.cards.writing import as_table, as_toml
from library.editing.plan import with_table
from library.setup_sheet.sheets import setup_sheet
from library.units.system import METRIC
from tui.view.card_form import CardForm
from tui.view.card_page import CardPage
from tui.view.lines import text_of

MACHINE = """schema = 1

[[machine]]
id = "drawer"
title = "The grinder with the drawer"
cam_throws = [{cams}]
throw_per = "tooth"
"""

DAY = date(2026, 11, 26)


def with_cams(folder: Path, *cams: str) -> Book:
    folder.mkdir()
    (folder / "machines.toml").write_text(MACHINE.format(cams=", ".join(f'"{one}"' for one in cams)))
    return open_book(folder)


@pytest.fixture(scope="module")
def then(tmp_path_factory: pytest.TempPathFactory) -> Book:
    return with_cams(tmp_path_factory.mktemp("then") / "shop", "2.5 mm", "5 mm")


@pytest.fixture(scope="module")
def now(tmp_path_factory: pytest.TempPathFactory) -> Book:
    return with_cams(tmp_path_factory.mktemp("now") / "shop", "2.5 mm", "4.5 mm", "5 mm")


@pytest.fixture(scope="module")
def closed(then: Book) -> Card:
    """A countersink of 3/4 in and 90 degrees with three flutes: 1/8 in behind the edge 5 mm from tooth to tooth fall 0.8 mm."""
    card = Card(
        id="2026-11-26-01",
        family="countersink",
        machine="drawer",
        tool=Tool("C-34-B", size="3/4 in", flutes="3"),
        received={"land_width": ("1/8 in",), "land_measured_as": ("chord",)},
        wanted={"relief_form": Wanted("eccentric"), "cone_relief_angle": Wanted("9 deg"),
                "included_angle": Wanted("90 deg")},
        after={"drop": Inspection(("31 thou", "31 thou", "32 thou"), "", "1 thou")},
        result="good",
    )  # fmt: skip
    done = finished(work_out(card, then), DAY)
    return from_bytes(as_toml(done).encode(), Path("2026-11-26-01.toml")).card


def of_an_older_program(card: Card) -> Card:
    """The card as it was closed before anything but the answers was recorded."""
    settings = {name: replace(one, filled={}) for name, one in card.settings.items()}
    after = {key: replace(one, judged_by="") for key, one in card.after.items()}
    return replace(card, settings=settings, after=after, chosen={})


def sheet(card: Card, book: Book) -> str:
    return " ".join(setup_sheet(work_out(card, book)).split())


@pytest.mark.parametrize("is_older", [False, True])
def test_a_new_cam_in_the_drawer_does_not_judge_a_closed_card_again(
    closed: Card, now: Book, is_older: bool
) -> None:
    job = work_out(of_an_older_program(closed) if is_older else closed, now)
    throws = [line.value for line in setting_lines(job, METRIC) if line.key == "radial_throw"]
    assert throws == ["5.000 mm"]
    (verdict,) = verdicts(job)
    assert [mark.state for mark in verdict.marks] == ["pass"] * 3
    assert verdict.wanted == pytest.approx(0.800)
    assert not [one.text for one in issues_of(job) if one.severity == "error"]
    said = sheet(job.card, now)
    assert "STOP" not in said
    assert "4.500" not in said


def test_the_screen_of_a_closed_card_has_the_cam_and_the_verdict_of_its_day(closed: Card, now: Book) -> None:
    form = CardForm(now, closed)
    form.go_to("after.drop")
    after = "\n".join(text_of(one) for one in CardPage(form).draw(80, 24))
    assert "STOP" not in after
    assert "OFF" not in after
    assert "0.800 mm" in after
    form.go_to("settings.cone-relief")
    found = "\n".join(text_of(one) for one in CardPage(form).draw(80, 100))
    assert "5.000 mm" in found
    assert "4.500 mm" not in found
    assert "the record of that day has" in found


def test_a_closed_card_says_once_and_quietly_what_todays_drawer_would_give(closed: Card, now: Book) -> None:
    said = sheet(closed, now)
    assert said.count("the record of that day has") == 1
    # Square to the cone, atan(r d / cos 45 ...): by the README the cam of 5 mm gives 10.05 degrees; 0.9 of its tangent is 9.06.
    assert "has relief angle 10.05 deg; today it comes out as 9.06 deg" in said
    assert "the record of that day" not in sheet(reopened(closed), now)


def test_the_draft_of_the_same_card_takes_the_new_cam(closed: Card, now: Book) -> None:
    job = work_out(reopened(closed), now)
    assert [line.value for line in setting_lines(job, METRIC) if line.key == "radial_throw"] == ["4.500 mm"]


def test_a_closed_card_outlives_the_machine_itself(closed: Card, then: Book) -> None:
    job = work_out(closed, Book({}, then.families))
    assert job.choice.method == "cam"
    assert [line.value for line in setting_lines(job, METRIC) if line.key == "radial_throw"] == ["5.000 mm"]
    (verdict,) = verdicts(job)
    assert [mark.state for mark in verdict.marks] == ["pass"] * 3


def test_with_the_book_of_that_day_nothing_differs(closed: Card, then: Book) -> None:
    assert differs(work_out(closed, then)) == ()
    assert "record of that day" not in sheet(closed, then)


def test_a_closed_card_in_its_file_is_opened_again_with_nothing_left_of_that_day(closed: Card) -> None:
    path = Path("2026-11-26-01.toml")
    changed = with_table(path, as_toml(closed).encode(), "card", as_table(reopened(closed)))
    assert from_bytes(changed, path).card == reopened(closed)
    assert not [word for word in (b"filled", b"judged_by", b"chosen]") if word in changed]


def test_what_is_typed_into_a_closed_card_still_counts(closed: Card, now: Book) -> None:
    was = closed.settings.get("cone-relief", Setting())
    typed = replace(was, typed={**was.typed, "radial_throw": "2.5 mm"})
    job = work_out(replace(closed, settings={**closed.settings, "cone-relief": typed}), now)
    assert [line.value for line in setting_lines(job, METRIC) if line.key == "radial_throw"] == ["2.500 mm"]
