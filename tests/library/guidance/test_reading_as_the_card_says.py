"""What a set-up says of the indicator, and what it sets, agrees with the card that it stands on."""

from __future__ import annotations

from dataclasses import replace

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.how_ground import Numbers, setup_of
from library.cards.job import work_out
from library.cards.model import Card, Setting, Tool, Wanted
from library.cards.starting import from_entry
from library.demo import lay_out
from library.guidance.model import setups
from library.pages.card_answers import settings_answers
from library.setup_sheet.sheets import setup_sheet

SHOULDER = Card(
    family="step-drill",
    tool=Tool("S-1", "6, 8, 10 mm", flutes="2"),
    received={"land_width": ("1.6 mm",), "land_measured_as": ("arc",)},
    wanted={
        "surface": Wanted("shoulder"),
        "shoulder_relief_angle": Wanted("10 deg"),
        "included_angle": Wanted("90 deg"),
    },
    settings={"relief-drop": Setting({"chosen_throw": "2.5 mm"})},
)
"""A step drill that is ground on its shoulders, with a cam."""


@pytest.fixture(scope="module")
def shipped() -> Book:
    return open_book()


def test_no_set_up_names_a_way_to_point_at_a_heel_that_the_card_may_name_otherwise(shipped: Book) -> None:
    reads = [(name, one.lines["read"].text) for name, one in setups(shipped).items() if "read" in one.lines]
    of_the_heel = [(name, text) for name, text in reads if "heel" in text]
    assert len(of_the_heel) > 8
    for name, text in of_the_heel:
        assert "unless the card says otherwise" in text, name


def test_the_set_up_of_a_shoulder_points_where_its_readings_do(shipped: Book) -> None:
    job = work_out(SHOULDER, shipped)
    assert "Read at 10.000 mm diameter, zero at the edge; drop: indicator at the axis" in setup_sheet(job)
    told = " ".join(str(one) for part in settings_answers(job, "") for one in part if one is not None)
    assert "indicator at the axis" in told
    assert "square to the shoulder" not in told


@pytest.fixture(scope="module")
def yard(tmp_path_factory: pytest.TempPathFactory) -> Book:
    """With a machine whose work head rolls and whose drawer has cams."""
    folder = tmp_path_factory.mktemp("yard") / "yard"
    lay_out(folder)
    return open_book(folder)


@pytest.mark.parametrize("entry", ["centre-drill-type-a", "centre-drill-type-b"])
def test_a_centre_drill_is_rolled_on_its_lips_as_a_small_drill_and_its_set_up_says_what_is_set(
    yard: Book, entry: str
) -> None:
    card = from_entry(yard, yard.entries[entry])
    job = work_out(replace(card, tool=replace(card.tool, size="3.15 mm", flutes="2")), yard)
    assert (job.choice.surface, job.choice.method) == ("lip", "work-head")
    setup, numbers = setup_of(job), Numbers(job, job.display)
    assert setup is not None
    said = setup.lines["set"].text
    assert "{roll_angle}" in said
    assert "{axis_to_wheel_angle}" in said
    assert "{half_point_angle}" not in said
    # By hand: the lip lies 0.15 of the radius ahead, so that 12 degrees at the corner are rolled 11.64 degrees. Of the
    # other the book has no relief of the lip.
    assert numbers("roll_angle") == ("11.64 deg" if "lip_relief_angle" in card.wanted else "")


def test_a_centre_drill_whose_cone_a_person_wants_relieved_is_ground_there(yard: Book) -> None:
    card = edited(from_entry(yard, yard.entries["centre-drill-type-b"]), "wanted.cone_relief_angle", "9 deg")
    assert work_out(card, yard).choice.surface == "cone"


def test_a_protecting_cone_alone_is_ground_on_its_cone(yard: Book) -> None:
    job = work_out(from_entry(yard, yard.entries["countersink-protecting-cone"]), yard)
    assert job.choice.surface == "cone"
    setup = setup_of(job)
    assert setup is not None
    assert setup.surface == "cone"


def test_a_set_up_that_swivels_to_half_an_angle_stands_by_the_half_and_by_the_cam_that_is_fitted(
    shipped: Book,
) -> None:
    cone = Card(
        family="countersink",
        tool=Tool("C-1", "20 mm", flutes="3"),
        received={"land_width": ("3.2 mm",), "land_measured_as": ("arc",)},
        wanted={
            "cone_relief_angle": Wanted("9 deg"),
            "included_angle": Wanted("90 deg"),
            "relief_form": Wanted("eccentric"),
        },
    )
    assert "half the shoulder angle (45.00 deg), fit the cam (2.500 mm per turn)" in _told(SHOULDER, shipped)
    assert "half the included angle (45.00 deg)" in _told(cone, shipped)


def _told(card: Card, book: Book) -> str:
    return " ".join(setup_sheet(work_out(replace(card, id="1"), book)).split())
