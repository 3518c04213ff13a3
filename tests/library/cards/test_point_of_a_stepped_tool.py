"""The point of a tool with several diameters stands on the first of them. Numbers by hand; derived."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.inspecting import received_reliefs
from library.cards.job import Job, work_out
from library.cards.model import Card, Setting, Tool, Wanted
from library.cards.settings_lines import setting_lines
from library.pages.readings_on_the_way import on_the_way
from library.setup_sheet.sheets import setup_sheet
from library.units.system import METRIC


@pytest.fixture(scope="module")
def shipped() -> Book:
    return open_book()


def stepped(size: str = "6, 8, 10 mm", family: str = "step-drill", **wanted: str) -> Card:
    """A step drill with lands of 1.6 mm, ground on its lands."""
    values = {
        "surface": "land",
        "land_relief_angle": "9 deg",
        "lip_relief_angle": "12 deg",
        "point_angle": "118 deg",
        "relief_form": "eccentric",
    }
    return Card(
        family=family,
        tool=Tool("S-1", size, flutes="2"),
        received={"land_width": ("1.6 mm",), "land_measured_as": ("arc",)},
        wanted={key: Wanted(text) for key, text in {**values, **wanted}.items()},
        settings={"feed-clearance": Setting({"feed": "0.12 mm"})},
    )


def given(job: Job, name: str, key: str = "diameter") -> object:
    step = job.step(name)
    assert step is not None
    found = step.answer.inputs[key].value
    assert isinstance(found, float | tuple)
    return found


def answer(job: Job, name: str, key: str) -> float:
    step = job.step(name)
    assert step is not None
    assert step.answer.result is not None
    return step.answer.result.outputs[key]


def test_the_lip_of_a_step_drill_clears_the_feed_of_its_first_step(shipped: Book) -> None:
    job = work_out(stepped(), shipped)
    assert answer(job, "feed-clearance", "largest_feed") == pytest.approx(
        math.pi * 6 * math.tan(math.radians(12))
    )
    slope = math.degrees(math.atan(0.12 / (math.pi * 6)))
    assert math.degrees(answer(job, "feed-clearance", "feed_slope")) == pytest.approx(slope)
    assert slope == pytest.approx(0.365, abs=1e-3)
    assert answer(job, "feed-clearance", "weakest_diameter") == 6.0


def test_the_point_stands_on_the_first_step_and_lands_and_shoulders_where_they_were(shipped: Book) -> None:
    job = work_out(stepped(), shipped)
    assert given(job, "drill-point") == 6.0
    assert given(job, "drill-web") == 6.0
    assert given(job, "step-relief") == (6.0, 8.0, 10.0)
    assert given(job, "relief-drop") == given(job, "size-loss") == 10.0


def test_the_lip_is_read_at_the_same_turn_as_the_land(shipped: Book) -> None:
    # 1.6 mm on 10 mm are 18.33 degrees; there a radius of 3 mm falls by 3 x 0.32 x tan 12.
    job = work_out(stepped(), shipped)
    step = job.step("drill-point")
    assert step is not None
    assert step.answer.result is not None
    heel = step.answer.result.stations[-1]
    assert math.degrees(heel.angle) == pytest.approx(18.335, abs=1e-3)
    assert heel.readings["axial_drop"] == pytest.approx(0.2041, abs=1e-4)


def test_a_land_measured_behind_the_lip_counts_as_it_was_measured(shipped: Book) -> None:
    job = work_out(stepped(surface="lip"), shipped)
    assert given(job, "relief-drop") == 6.0
    assert given(job, "drill-point", "land_width") == given(job, "relief-drop", "land_width") == 1.6


def test_of_several_readings_that_of_the_first_step_counts_and_a_single_one_is_that_of_its_own_step(
    shipped: Book,
) -> None:
    def measured(*texts: str) -> object:
        card = stepped()
        return given(
            work_out(Card(**{**vars(card), "received": {**card.received, "diameter": texts}}), shipped),
            "feed-clearance",
        )

    assert measured("5.98 mm", "7.97 mm", "9.96 mm") == 5.98
    assert measured("9.96 mm") == 6.0
    assert measured("5.95 mm") == 5.95


def test_two_readings_of_one_diameter_are_no_steps(shipped: Book) -> None:
    card = stepped(size="10 mm")
    card = Card(**{**vars(card), "received": {**card.received, "diameter": ("9.97 mm", "9.99 mm")}})
    assert given(work_out(card, shipped), "feed-clearance") == 9.99


def test_a_diameter_typed_into_a_calculation_stays(shipped: Book) -> None:
    card = stepped()
    typed = {"feed-clearance": Setting({"feed": "0.12 mm", "diameter": "8 mm"})}
    assert given(work_out(Card(**{**vars(card), "settings": typed}), shipped), "feed-clearance") == 8.0


def test_a_subland_drill_and_a_centre_drill_drill_with_their_small_end(shipped: Book) -> None:
    assert given(work_out(stepped("6, 10 mm", "subland-drill"), shipped), "feed-clearance") == 6.0
    centre = stepped("8 mm", "centre-drill", surface="lip", pilot_diameter="3.15 mm")
    job = work_out(centre, shipped)
    assert given(job, "feed-clearance") == given(job, "drill-point") == 3.15


def test_a_counterbore_cuts_at_its_outside_and_not_at_its_pilot(shipped: Book) -> None:
    card = stepped("15 mm", "counterbore", surface="end", pilot_diameter="9 mm", end_relief_angle="7 deg")
    assert given(work_out(card, shipped), "feed-clearance") == 15.0


@pytest.mark.parametrize("size", ["6,8,10 mm", "6 / 8 / 10 mm", "6 8 10 mm", "6-8-10 mm", "6, 8 and 10 mm"])
def test_the_steps_are_understood_however_they_are_parted(shipped: Book, size: str) -> None:
    job = work_out(stepped(size), shipped)
    assert given(job, "step-relief") == (6.0, 8.0, 10.0)
    assert given(job, "feed-clearance") == 6.0


@pytest.mark.parametrize("size", ["1 1/2 in", "1-1/2 in", "5/8 in", "10,5 mm"])
def test_a_fraction_and_a_decimal_comma_are_no_steps(shipped: Book, size: str) -> None:
    step = work_out(stepped(size), shipped).step("step-relief")
    assert step is not None
    found = step.answer.inputs.get("diameter")
    assert found is None or found.value in ((38.1,), (15.875,))


def test_the_relief_behind_a_reading_on_the_lip_is_that_at_the_first_step(shipped: Book) -> None:
    # Across a land of 1.6 mm a chord on 6 mm is an arc of 6 asin(1.6 / 6) = 1.6194 mm.
    card = stepped(surface="lip")
    card = Card(
        **{
            **vars(card),
            "received": {**card.received, "land_measured_as": ("chord",), "drop": ("0.34 mm",)},
        }
    )
    (found,) = received_reliefs(work_out(card, shipped))
    expected = math.degrees(math.atan(0.34 / (6 * math.asin(1.6 / 6))))
    assert math.degrees(found.angles["eccentric"]) == pytest.approx(expected)


def on_the_shoulders(lip: Wanted, **typed: str) -> Card:
    """The same ground on its shoulders, with a relief of its lip that is the book's or wanted by a person."""
    card = stepped(surface="shoulder", shoulder_relief_angle="10 deg")
    return replace(
        card,
        wanted={**card.wanted, "lip_relief_angle": lip},
        settings={"step-relief": Setting(typed)} if typed else {},
    )


def test_only_what_is_ground_is_read_and_each_reading_bears_the_name_of_its_surface(shipped: Book) -> None:
    of_book = Wanted("12 deg", "12 deg", "from memory")
    assert on_the_way(work_out(on_the_shoulders(of_book), shipped)) is None
    found = on_the_way(
        work_out(on_the_shoulders(of_book, included_angle="90 deg", radial_throw="3 mm"), shipped)
    )
    assert found is not None
    assert {title.split(":")[0] for title, _, _ in found.rows} == {"turned", "shoulder"}


def set_on(card: Card, shipped: Book) -> list[str]:
    return [one.key for one in setting_lines(work_out(card, shipped), METRIC)]


def test_the_shoulders_are_swivelled_before_their_throw_and_the_point_is_left_alone(shipped: Book) -> None:
    of_book = Wanted("12 deg", "12 deg", "from memory")
    keys = set_on(on_the_shoulders(of_book, included_angle="120 deg", radial_throw="3 mm"), shipped)
    assert keys.index("half_included_angle") < keys.index("radial_throw")
    assert "half_point_angle" not in keys
    card = on_the_shoulders(Wanted("13 deg", "12 deg"), included_angle="120 deg", radial_throw="3 mm")
    assert "half_point_angle" in set_on(card, shipped)


def test_shoulders_at_unlike_angles_have_no_one_swivel(shipped: Book) -> None:
    of_book = Wanted("12 deg", "12 deg", "from memory")
    keys = set_on(on_the_shoulders(of_book, included_angle="90, 120 deg", radial_throw="3 mm"), shipped)
    assert "radial_throw" in keys
    assert "half_included_angle" not in keys


def test_a_lip_that_a_person_wants_beside_the_shoulders_is_read_under_its_own_name(shipped: Book) -> None:
    found = on_the_way(work_out(on_the_shoulders(Wanted("13 deg", "12 deg")), shipped))
    assert found is not None
    assert {title.split(":")[0] for title, _, _ in found.rows} == {"turned", "lip"}
    paper = setup_sheet(work_out(on_the_shoulders(Wanted("13 deg", "12 deg")), shipped))
    (heel,) = (one for one in paper.splitlines() if one.startswith("heel "))
    assert heel.count("______") == 2
