"""A batch of cards, and the life of one tool."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.history import history, sharpenings_left
from library.cards.job import work_out
from library.cards.model import Card, Inspection
from library.cards.planning import plan
from library.cards.store import load
from library.demo import lay_out
from library.pages.as_text import as_text
from library.pages.life import batch_page
from library.setup_sheet.sheets import setup_sheet
from library.units.system import METRIC


def variant(job: Card, card_id: str, **edits: str) -> Card:
    card = replace(job, id=card_id)
    for way, text in edits.items():
        card = edited(card, way.replace("__", "."), text)
    return card


def test_what_is_alike_stays_and_what_differs_is_changed(book: Book, job: Card) -> None:
    steeper = variant(job, "2", wanted__thread_relief_angle="6 deg")
    found = plan([job, steeper], book, METRIC)
    stays = {line.title for line in found.stays}
    assert {"Machine", "Wheel", "Index", "Rotational speed"} <= stays
    assert [turn.card.id for turn in found.turns] == [job.id, "2"]
    assert {line.title for line in found.turns[1].changes} == {"Throw per tooth"}
    # What stays is told once and never again.
    assert not any(line.title in stays for turn in found.turns for line in turn.changes)
    assert found.changes == 1
    assert found.turns[0].flutes == 4


def test_like_tools_are_ground_one_after_the_other(book: Book, job: Card) -> None:
    steep = [variant(job, name, wanted__thread_relief_angle="6 deg") for name in ("b", "d")]
    plain = [variant(job, name) for name in ("a", "c")]
    found = plan([plain[0], steep[0], plain[1], steep[1]], book, METRIC)
    assert [turn.card.id for turn in found.turns] == ["a", "c", "b", "d"]
    # Three changes of the throw as named, one as planned.
    assert (found.changes_as_given, found.changes) == (3, 1)


def test_a_wheel_is_changed_as_seldom_as_can_be(book: Book, job: Card) -> None:
    other = [replace(job, id=name, wheel="dish-80") for name in ("b", "d")]
    mine = [variant(job, "a"), variant(job, "c", wanted__thread_relief_angle="6 deg")]
    found = plan([mine[0], other[0], mine[1], other[1]], book, METRIC)
    wheels = [turn.card.wheel for turn in found.turns]
    assert sum(1 for one, two in pairwise(wheels) if one != two) == 1


def test_an_order_that_is_good_already_is_left_as_it_is(book: Book, job: Card) -> None:
    cards = [
        variant(job, name, wanted__thread_relief_angle=angle)
        for name, angle in (("a", "6 deg"), ("b", "7 deg"), ("c", "8 deg"))
    ]
    assert [turn.card.id for turn in plan(cards, book, METRIC).turns] == ["a", "b", "c"]


def test_a_batch_of_none_and_of_one(book: Book, job: Card) -> None:
    assert plan([], book, METRIC).turns == ()
    alone = plan([job], book, METRIC)
    assert alone.turns[0].changes == ()
    assert "Throw per tooth" in {line.title for line in alone.stays}


def size_loss(job: Card) -> Card:
    card = edited(job, "settings.size-loss.stock_per_sharpening", "0.2 mm")
    return edited(card, "settings.size-loss.least_diameter", "11.8 mm")


def test_sharpenings_left_are_counted_from_the_size_after_grinding(book: Book, job: Card) -> None:
    card = size_loss(job)
    # Face grinding takes 0.2 tan 8 = 0.028108 mm off the radius each time, a little more as the circle shrinks: from
    # 11.97 to 11.8 there is room for 0.17 / 0.0562 = 3.02, from 11.90 for 1.78.
    assert 0.17 / (2 * 0.2 * math.tan(math.radians(8))) == pytest.approx(3.024, abs=1e-3)
    assert sharpenings_left(work_out(card, book)) == 3
    ground = replace(card, after={"diameter": Inspection(("11.90 mm", "11.89 mm"))})
    assert sharpenings_left(work_out(ground, book)) == 1
    assert sharpenings_left(work_out(job, book)) is None


def test_the_life_of_a_tool_is_told_from_its_first_card_to_its_last(book: Book, job: Card) -> None:
    first = replace(size_loss(job), id="2024-01-10-01", after={"diameter": Inspection(("11.95 mm",))})
    second = replace(
        job, id="2025-03-01-01", received={**job.received, "diameter": ("11.94 mm", "11.93 mm")}, after={}
    )
    found = history("T-14", [second, first], book)
    assert [visit.card.id for visit in found.visits] == ["2024-01-10-01", "2025-03-01-01"]
    assert [(visit.before, visit.after) for visit in found.visits] == [(11.97, 11.95), (11.94, None)]
    assert found.size == 11.94
    # From 11.95 to 11.8: 0.15 / 0.0562 is 2.67.
    assert (found.left, found.left_as_of) == (2, "2024-01-10-01")


def test_a_tool_without_cards_has_no_history(book: Book) -> None:
    found = history("T-99", [], book)
    assert (found.visits, found.size, found.left) == ((), None, None)


def test_cards_set_to_the_same_division_are_told_what_it_gives_once_and_each_its_own_angle(
    tmp_path: Path,
) -> None:
    lay_out(tmp_path / "yard")
    book = open_book(tmp_path / "yard")
    cards = [load(tmp_path / "yard", name).card for name in ("2025-10-14-01", "2026-03-11-01")]
    found = plan(cards, book, METRIC)
    # 14 divisions of 30 minutes are 7 degrees, whatever either card asked for.
    (once,) = (line for line in found.stays if line.key == "chamfer_angle")
    assert (once.value, once.graduation) == ("7.00 deg", "14 divisions of 30 min, work head swivel")
    own = [next(line.value for line in turn.exactly if line.key == "chamfer_angle") for turn in found.turns]
    sheets = [setup_sheet(work_out(turn.card, book)) for turn in found.turns]
    assert own[0] != own[1]
    assert all(f"Chamfer angle      {value}" in sheet for value, sheet in zip(own, sheets, strict=True))
    text = as_text(batch_page(found))
    assert text.count("Chamfer angle: 7.00 deg") == 1
    assert all(f"Chamfer angle of this card, before rounding: {value}" in text for value in own)
    # What all have alike to the last figure is told as it is, and of no card again.
    assert all(line.key == "chamfer_angle" for turn in found.turns for line in turn.exactly)
