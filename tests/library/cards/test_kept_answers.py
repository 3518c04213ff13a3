"""A card worked out after the one before it: the same as worked out alone, and no more of it computed than must be."""

from __future__ import annotations

import random
from collections.abc import Mapping
from dataclasses import replace

import pytest

import library.cards.answers
import library.cards.job
from geometry.calculation import Calculation
from geometry.calculations import calculation
from geometry.complaints import untried
from library.book.model import Book, Entry
from library.book.opening import open_book
from library.calc.answer import Answer, answer
from library.calc.cautions import cautions_for
from library.cards.answers import Answers
from library.cards.editing import CardEditRefused, edited
from library.cards.inspecting import received_reliefs
from library.cards.job import Job, work_out
from library.cards.model import Card
from library.cards.store import load
from library.demo import BOOK
from library.equipment.model import Machine
from library.units.system import METRIC, Display
from tests.examples import every_third_at_once

CARDS = sorted(path.stem for path in (BOOK / "cards").rglob("*.toml"))
TEXTS = (
    "",
    "1",
    "12 mm",
    "12 mm, 11.9 mm",
    "6 deg",
    "5 to 8 deg",
    "high",
    "1/2-13 UNC",
    "bronze",
    "cone",
    "eccentric",
    "HSS-E",
    "x",
)


@pytest.fixture(scope="module")
def yard() -> Book:
    """The book of the invented ferry yard."""
    return open_book(BOOK)


class Forgetful(Answers):
    """Keeps nothing, and gives every calculation all there is of the entry."""

    def __init__(
        self,
        entry: Entry,
        book: Book,
        display: Display,
        before: Answers | None = None,
        machine: Machine | None = None,
    ) -> None:
        super().__init__(entry, book, display, machine=machine)
        self.whole = entry

    def ask(self, sheet: Calculation, texts: Mapping[str, str]) -> Answer:
        cautions = cautions_for(sheet, self.whole, self._book, in_job=True)
        return answer(
            sheet, texts, entry=self.whole, book=self._book, display=self._display, cautions=cautions,
            machine=self._machine,
        )  # fmt: skip


def alone(card: Card, book: Book) -> Job:
    """A card worked out with nothing kept at all."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(library.cards.job, "Answers", Forgetful)
        return work_out(card, book)


@pytest.fixture
def asked(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The calculations that are computed, as they are."""
    names: list[str] = []

    def noted(sheet: Calculation, texts: dict[str, str], **more: object) -> Answer:
        names.append(sheet.name)
        return answer(sheet, texts, **more)  # type: ignore[arg-type]

    monkeypatch.setattr(library.cards.answers, "answer", noted)
    return names


def ways_of(card: Card, book: Book) -> list[str]:
    """Everything on a card that a person may type into."""
    parts = {"tool": ("name", "thread", "size", "flutes", "marks", "work_material"), "received": card.received,
             "wanted": (*card.wanted, "surface", "relief_method"), "after": card.after}  # fmt: skip
    settings = [
        f"{step.sheet.name}.{one.key}" for step in work_out(card, book).steps for one in step.answer.fields
    ]
    return ["family", "machine", "wheel", "units", "notes",
            *(f"settings.{one}" for one in settings),
            *(f"{part}.{key}" for part, keys in parts.items() for key in keys)]  # fmt: skip


@pytest.mark.parametrize("name", every_third_at_once(CARDS))
def test_whatever_is_typed_one_after_another_the_job_is_the_same_as_worked_out_alone(
    name: str, yard: Book
) -> None:
    chance = random.Random(name)
    card = load(BOOK, name).card
    job, ways = work_out(card, yard), ways_of(card, yard)
    for _ in range(25):
        try:
            card = edited(card, chance.choice(ways), chance.choice(TEXTS))
        except CardEditRefused:
            continue
        job = work_out(card, yard, job)
        assert job == alone(card, yard)


def test_a_reading_after_grinding_computes_nothing_of_the_settings(
    job: Card, book: Book, asked: list[str]
) -> None:
    before = work_out(job, book)
    asked.clear()
    work_out(edited(job, "after.drop", "0.46 mm"), book, before)
    assert asked == []


def test_what_is_typed_into_one_calculation_computes_that_one_alone(
    job: Card, book: Book, asked: list[str]
) -> None:
    before = work_out(job, book)
    asked.clear()
    work_out(edited(job, "settings.wheel-speed.rotational_speed", "2500 rpm"), book, before)
    assert set(asked) == {"wheel-speed"}


def test_what_is_wanted_computes_only_what_can_look_at_it(job: Card, book: Book, asked: list[str]) -> None:
    before = work_out(edited(job, "wanted.rake_angle", "7 deg"), book)
    asked.clear()
    found = work_out(edited(job, "wanted.rake_angle", "8 deg"), book, before)
    assert "wheel-speed" not in asked
    assert {step.sheet.name for step in found.steps if step.sheet.field("rake_angle") is not None} == set(
        asked
    )


@pytest.mark.parametrize("what", ["unit", "book"])
def test_another_unit_or_another_book_computes_everything(
    what: str, job: Card, book: Book, asked: list[str]
) -> None:
    card, other = (edited(job, "units", "in"), book) if what == "unit" else (job, replace(book))
    before = work_out(job, book)
    asked.clear()
    after = work_out(card, other, before)
    assert {step.sheet.name for step in after.steps} <= set(asked)
    assert after == alone(card, other)


def test_a_job_that_was_handed_on_stays_as_it_was_when_the_card_goes_on(job: Card, book: Book) -> None:
    first = work_out(job, book)
    went_on = edited(edited(job, "units", "in"), "tool.thread", "1-8 UNC")
    work_out(went_on, book, work_out(went_on, book, first))
    assert received_reliefs(first) == received_reliefs(alone(job, book))


def test_an_answer_that_was_only_a_search_for_a_cam_is_not_told_to_a_person(book: Book) -> None:
    # A narrow land on a large tool: only tried advice leaves out a relief that no fixed cam would give.
    texts = {"diameter": "40 mm", "land_width": "0.2 mm", "relief_angle": "0.2 deg", "flutes": "3",
             "throw_per": "tooth", "chosen_throw": "1 mm"}  # fmt: skip
    answers, sheet = Answers(Entry("", "", ""), book, METRIC), calculation("relief-drop")
    with untried():
        searched = answers.ask(sheet, texts)
    assert searched != answer(sheet, texts, entry=Entry("", "", ""), book=book)
    assert answers.ask(sheet, texts) == answer(sheet, texts, entry=Entry("", "", ""), book=book)
