"""A card says the same once it is closed, however bare its numbers were typed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from geometry.quantities import quantity
from geometry.sentences import Kind
from library.book.model import Book
from library.book.opening import open_book
from library.cards.close import finished
from library.cards.editing import edited
from library.cards.inspecting import received_reliefs
from library.cards.job import Job, work_out
from library.cards.model import Card, Tool, Wanted
from library.cards.settings_lines import setting_lines
from library.cards.shall_be import wanted_number
from library.cards.store import from_bytes
from library.cards.writing import as_toml
from library.units.read import with_units
from library.units.system import METRIC

MACHINE = """schema = 1

[[machine]]
id = "drawer"
title = "The grinder with the drawer"
cam_throws = ["8 mm"]
throw_per = "{per}"
index_ratio = 60
plate_holes = [18, 20]
spindle_speeds = ["2800 rpm"]

[[wheel]]
id = "cup"
title = "Cup"
shape = "type-11-flaring-cup"
diameter = "100 mm"
rated_speed = "4140 rpm"
"""

Texts = Mapping[str, str]


@pytest.fixture(scope="module", params=["tooth", "turn"])
def shop(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Book:
    folder = tmp_path_factory.mktemp("shop")
    (folder / "machines.toml").write_text(MACHINE.format(per=request.param))
    return open_book(folder)


def step_drill(units: str = "mm") -> Card:
    return Card(
        id="2026-11-26-01",
        units=units,
        family="step-drill",
        machine="drawer",
        wheel="cup",
        tool=Tool("S-3", size="8, 12 mm", flutes="2"),
        received={"diameter": ("12 mm",), "land_width": ("2.4 mm",), "land_measured_as": ("arc",)},
        wanted={"surface": Wanted("shoulder"), "relief_form": Wanted("eccentric"),
                "shoulder_relief_angle": Wanted("10 deg")},
        result="good",
    )  # fmt: skip


def countersink(units: str = "mm") -> Card:
    return Card(
        id="2026-11-26-01",
        units=units,
        family="countersink",
        machine="drawer",
        wheel="cup",
        tool=Tool("C-1", size="25.4 mm", flutes="3"),
        received={"land_width": ("6.35 mm",), "land_measured_as": ("arc",)},
        wanted={"relief_form": Wanted("eccentric"), "cone_relief_angle": Wanted("8 deg"),
                "included_angle": Wanted("82 deg")},
        result="good",
    )  # fmt: skip


def tap(units: str = "mm", form: str = "eccentric") -> Card:
    return Card(
        id="2026-11-26-01",
        units=units,
        family="tap",
        machine="drawer",
        wheel="cup",
        tool=Tool("T-1", thread="M12 x 1.75", flutes="3"),
        received={"diameter": ("11.98 mm",), "land_width": ("3.2 mm",), "land_measured_as": ("chord",)},
        wanted={"relief_form": Wanted(form), "chamfer_relief_angle": Wanted("6.5 deg"),
                "chamfer_angle": Wanted("7 deg")},
        result="good",
    )  # fmt: skip


THROWS = ["8", "8.0", "8mm", "8 mm", ".315 in", "7.5", "7.5 mm", "6 +/- 0.1"]

STEPPED = [
    {"settings.step-relief.included_angle": "120", "settings.step-relief.radial_throw": one} for one in THROWS
]
"""A cam of the drawer in every spelling, and throws that are no cam of it."""

OTHERS: list[Texts] = [
    {"settings.step-relief.included_angle": "120"},
    {"settings.step-relief.included_angle": "120", "settings.step-relief.radial_throw": "8",
     "settings.step-relief.axial_throw": "1"},
    {"settings.step-relief.included_angle": "120", "settings.step-relief.radial_throw": "8",
     "settings.step-relief.throw_per": "turn"},
    {"settings.step-relief.included_angle": "120", "settings.step-relief.radial_throw": "4",
     "settings.step-relief.throw_per": "tooth"},
    {"settings.relief-drop.chosen_throw": "8"},
    {"settings.relief-drop.chosen_throw": "3", "settings.relief-drop.throw_per": "tooth"},
]  # fmt: skip

CONES: list[Texts] = [
    {"settings.cone-relief.radial_throw": "8"},
    {"settings.cone-relief.radial_throw": "5", "settings.cone-relief.axial_throw": "1"},
    {"settings.cone-relief.axial_throw": "5"},
    {"settings.cone-relief.radial_throw": "5", "settings.cone-relief.throw_per": "turn"},
    {"settings.cone-relief.radial_throw": "5", "settings.cone-relief.flutes": "4"},
]

TAPS: list[Texts] = [
    {"settings.relief-drop.chosen_throw": "1"},
    {"settings.relief-drop.land_width": "3.1"},
    {"settings.index-moves.index_ratio": "40"},
    {"settings.index-moves.plate_holes": "15, 33"},
    {"settings.wheel-speed.wheel_diameter": "95"},
]


def numbers(job: Job) -> dict[tuple[str, str], float]:
    """Every output of a job, and every reading of every row."""
    found: dict[tuple[str, str], float] = {}
    for step in job.steps:
        if step.works and step.answer.result is not None:
            name, result = step.sheet.name, step.answer.result
            found |= {(name, key): value for key, value in result.outputs.items()}
            for place, row in enumerate(result.rows):
                found |= {(name, f"{place} {row.label} {key}"): value for key, value in row.values.items()}
    return found


def read_back(card: Card) -> Card:
    return from_bytes(as_toml(card).encode(), Path(f"{card.id}.toml")).card


def told(job: Job) -> list[object]:
    """What is set, what the readings are held against, and what the relief was; but not what stops a job."""
    lines = [replace(one, stopped=False) for one in setting_lines(job, METRIC)]
    wants = [(step.sheet.name, one.key) for step in job.steps if step.in_use for one in step.answer.issues]
    return [*lines, *wants, job.by_cam, wanted_number(job, "drop"), *received_reliefs(job)]


@pytest.fixture
def closed_at_any_rate(monkeypatch: pytest.MonkeyPatch) -> None:
    """A cam that is not in the drawer keeps a card open; what is written down of it is looked at all the same."""
    monkeypatch.setattr("library.cards.close.keeps_open", lambda job: ())


def assert_says_the_same(card: Card, texts: Texts, book: Book) -> None:
    for way, text in texts.items():
        card = edited(card, way, text)
    before = work_out(card, book)
    closed = read_back(finished(before, date(2026, 11, 26)))
    after = work_out(closed, book)
    assert numbers(before)
    assert numbers(after) == pytest.approx(numbers(before))
    assert told(after) == told(before)
    # Nor does it hang on the machine of tomorrow.
    assert numbers(work_out(closed, Book({}, book.families))) == pytest.approx(numbers(before))
    for setting in closed.settings.values():
        for key, text in (*setting.typed.items(), *setting.filled.items()):
            assert with_units(text, quantity(key).kind, METRIC) == text
            assert quantity(key).kind is not Kind.LENGTH or text[-1].isalpha() or "+/-" in text


pytestmark = pytest.mark.usefixtures("closed_at_any_rate")


@pytest.mark.parametrize("texts", [*STEPPED, *OTHERS], ids=lambda one: ", ".join(one.values()))
def test_a_step_drill_with_a_cam_says_the_same_closed(shop: Book, texts: Texts) -> None:
    assert_says_the_same(step_drill(), texts, shop)


@pytest.mark.parametrize("throw", [".315", "8 mm", "5/16"])
def test_an_inch_card_says_the_same_closed(shop: Book, throw: str) -> None:
    texts = {"settings.step-relief.included_angle": "120", "settings.step-relief.radial_throw": throw}
    assert_says_the_same(step_drill("in"), texts, shop)


@pytest.mark.parametrize("texts", CONES, ids=lambda one: ", ".join(one.values()))
def test_a_countersink_with_cams_says_the_same_closed(shop: Book, texts: Texts) -> None:
    assert_says_the_same(countersink(), texts, shop)


@pytest.mark.parametrize("form", ["eccentric", "flat"])
@pytest.mark.parametrize("texts", TAPS, ids=lambda one: ", ".join(one.values()))
def test_a_tap_with_index_and_wheel_says_the_same_closed(shop: Book, texts: Texts, form: str) -> None:
    assert_says_the_same(tap(form=form), texts, shop)


def test_a_record_without_how_its_throw_is_counted_takes_it_from_where_the_throw_came(shop: Book) -> None:
    card = step_drill()
    for way, text in STEPPED[0].items():
        card = edited(card, way, text)
    before = work_out(card, shop)
    closed = finished(before, date(2026, 11, 26))
    drop = closed.settings["relief-drop"]
    filled = {key: text for key, text in drop.filled.items() if key != "throw_per"} | {"chosen_throw": "8"}
    stepped = replace(closed.settings["step-relief"], typed=card.settings["step-relief"].typed)
    older = replace(closed, settings={**closed.settings, "step-relief": stepped,
                                      "relief-drop": replace(drop, filled=filled)})  # fmt: skip
    assert numbers(work_out(read_back(older), shop)) == pytest.approx(numbers(before))
