"""What is advised beside a cam that the card took out of the drawer, and what becomes of that cam."""

from __future__ import annotations

from pathlib import Path

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.job import work_out
from library.cards.model import Card, Tool, Wanted
from library.cards.step import Step
from library.units.show import say

DRAWER = """schema = 1

[[machine]]
id = "drawer"
title = "The grinder with the drawer"
cam_throws = ["0.5 mm", "1 mm", "2.5 mm"]
throw_per = "tooth"
"""


@pytest.fixture(scope="module")
def drawer(tmp_path_factory: pytest.TempPathFactory) -> Book:
    folder: Path = tmp_path_factory.mktemp("drawer")
    (folder / "machines.toml").write_text(DRAWER)
    return open_book(folder)


def card(family: str, size: str, **wanted: str) -> Card:
    return Card(
        family=family,
        machine="drawer",
        tool=Tool("A-1", size=size, flutes="4"),
        received={"land_width": ("3 mm",), "land_measured_as": ("arc",)},
        wanted={key: Wanted(text) for key, text in wanted.items()},
    )


def step_of(one: Card, book: Book, name: str) -> Step:
    step = work_out(one, book).step(name)
    assert step is not None
    return step


def watched(step: Step) -> list[str]:
    return [say(check.sentence) for check in step.checks if check.state in {"watch", "stop"}]


def test_beside_a_cam_that_came_out_of_the_drawer_no_other_throw_is_advised_alone(drawer: Book) -> None:
    countersink = card(
        "countersink", "20 mm", relief_form="eccentric", cone_relief_angle="8 deg", included_angle="82 deg"
    )
    step = step_of(countersink, drawer, "cone-relief")
    assert step.provenance["radial_throw"] == "machine"
    assert not any("axial throw" in one for one in watched(step))
    # Typed by a person the same cam stays, and the other throw may be advised beside it.
    cam = step.answer.inputs["radial_throw"].text
    typed = edited(countersink, "settings.cone-relief.radial_throw", cam)
    told = watched(step_of(typed, drawer, "cone-relief"))
    assert any("axial throw" in one for one in told)


def test_the_cam_of_a_step_drill_stays_where_a_throw_along_the_axis_is_typed(drawer: Book) -> None:
    drill = card(
        "step-drill",
        "6, 8 mm",
        land_relief_angle="8 deg",
        included_angle="90 deg",
        shoulder_relief_angle="10 deg",
    )
    before = step_of(drill, drawer, "step-relief")
    assert before.provenance["radial_throw"] == "machine"
    after = step_of(edited(drill, "settings.step-relief.axial_throw", "0.5 mm"), drawer, "step-relief")
    assert after.answer.inputs["radial_throw"].text == before.answer.inputs["radial_throw"].text
    assert after.answer.result is not None
