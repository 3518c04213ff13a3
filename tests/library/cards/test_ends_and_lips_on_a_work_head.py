"""An end is ground by a tilt of the work head: what is set, read and judged belongs to it. Numbers by hand; derived."""

from __future__ import annotations

import math
from dataclasses import replace
from pathlib import Path

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.chosen import CAM, WORK_HEAD, surfaces_of
from library.cards.inspecting import received_reliefs, reliefs_after, verdicts
from library.cards.job import Job, work_out
from library.cards.model import Card, Inspection, Setting, Tool, Wanted
from library.cards.settings_lines import setting_lines
from library.cards.shall_be import wanted_number
from library.cards.starting import from_entry
from library.cards.still_to_measure import inspected
from library.demo import lay_out
from library.pages.readings_on_the_way import on_the_way
from library.setup_sheet.sheets import setup_sheet
from library.units.system import METRIC

YARD = Path(__file__).parents[3] / "library" / "demo" / "ferry-yard"

TURNED = 3.5 / 7.5
"""From edge to heel of a land of 3.5 mm on 15 mm, in radians."""


@pytest.fixture(scope="module")
def yard() -> Book:
    return open_book(YARD)


def counterbore(method: str = "", dish: str = "0 deg", size: str = "15 mm") -> Card:
    """A counterbore with three end teeth of 7 degrees, on the yard's machine with its drawer of cams."""
    wanted = {"end_relief_angle": Wanted("7 deg")}
    return Card(
        family="counterbore",
        machine="grey-grinder",
        wheel="straight-150",
        tool=Tool("C-8", size, flutes="3"),
        received={"land_width": ("3.5 mm",), "land_measured_as": ("arc",)},
        wanted=wanted | ({"relief_method": Wanted(method)} if method else {}),
        settings={"end-teeth": Setting({"dish_angle": dish})} if dish else {},
        after={"drop": Inspection(("0.41 mm", "0.41 mm", "0.42 mm"), "", "0.02 mm")},
    )


def in_use(job: Job) -> set[str]:
    return {one.sheet.name for one in job.steps if one.in_use}


def heel_read(job: Job) -> str:
    found = on_the_way(job)
    assert found is not None
    return next(
        numbers[-1] for title, _, numbers in found.rows if "along the axis" in title or "drop" in title
    )


def test_an_end_is_tilted_on_the_work_head_until_somebody_says_otherwise(yard: Book) -> None:
    job = work_out(counterbore(), yard)
    assert job.choice.method == WORK_HEAD
    assert {line.key: line.value for line in setting_lines(job, METRIC)}["workhead_tilt"] == "7.00 deg"
    # A flat falls by R sin(turn) tan(7).
    assert 7.5 * math.sin(TURNED) * math.tan(math.radians(7)) == pytest.approx(0.414, abs=5e-4)
    assert heel_read(job) == "0.414"


def test_the_end_teeth_ask_for_their_dish_by_themselves(yard: Book) -> None:
    job = work_out(counterbore(dish=""), yard)
    step = job.step("end-teeth")
    assert step is not None
    assert step.in_use
    assert [one.key for one in step.answer.issues] == ["dish_angle"]


def test_readings_after_grinding_are_held_against_what_the_head_gives(yard: Book) -> None:
    job = work_out(counterbore(), yard)
    assert wanted_number(job, "drop") == pytest.approx(0.414)
    (found,) = verdicts(job)
    assert found.state == "pass"
    # With a dish of 2 degrees the heel lies R (1 - cos(turn)) tan(2) deeper.
    dished = 0.4143 + 7.5 * (1 - math.cos(TURNED)) * math.tan(math.radians(2))
    assert wanted_number(work_out(counterbore(dish="2 deg"), yard), "drop") == pytest.approx(dished, abs=6e-4)


def test_by_a_cam_the_end_is_set_by_its_throw_and_read_as_it_falls_evenly(yard: Book) -> None:
    job = work_out(counterbore(CAM), yard)
    assert "end-teeth" not in in_use(job)
    lines = {line.key: line.value for line in setting_lines(job, METRIC)}
    assert "workhead_tilt" not in lines
    # In a turn the end falls by pi x 15 x tan(7) = 5.786 mm, from one of three teeth to the next by a third of that.
    assert math.pi * 15 * math.tan(math.radians(7)) == pytest.approx(5.786, abs=5e-4)
    assert lines["throw_per_tooth"] == "1.929 mm"
    assert 3.5 * math.tan(math.radians(7)) == pytest.approx(0.430, abs=5e-4)
    assert heel_read(job) == "0.430"
    assert wanted_number(job, "drop") == pytest.approx(0.430)


def test_one_diameter_has_no_steps_under_a_cam(yard: Book) -> None:
    def stepped(size: str) -> set[str]:
        wanted = {"surface": Wanted("land"), "land_relief_angle": Wanted("9 deg")}
        card = counterbore(CAM, dish="", size=size)
        return in_use(work_out(Card(**{**vars(card), "family": "step-drill", "wanted": wanted}), yard))

    assert "step-relief" not in in_use(work_out(counterbore(CAM), yard))
    assert "step-relief" not in stepped("15 mm")
    assert "step-relief" in stepped("9, 15 mm")


def test_a_lip_is_rolled_where_the_work_head_of_the_machine_has_a_roll(yard: Book) -> None:
    drill = Card(
        family="twist-drill",
        machine="grey-grinder",
        tool=Tool("D-1", "10 mm", flutes="2"),
        received={"land_width": ("3 mm",), "land_measured_as": ("arc",)},
        wanted={"lip_relief_angle": Wanted("12 deg"), "point_angle": Wanted("118 deg")},
    )
    job = work_out(drill, yard)
    assert job.choice.method == WORK_HEAD
    assert {"roll_angle", "axis_to_wheel_angle"} <= {line.key for line in setting_lines(job, METRIC)}
    step = job.step("point-setup")
    assert step is not None
    assert step.answer.result is not None
    assert wanted_number(job, "drop") == pytest.approx(step.answer.result.outputs["axial_drop"], abs=6e-4)
    assert work_out(Card(**{**vars(drill), "machine": ""}), yard).choice.method == ""


def test_a_dish_that_is_set_is_measured_after_grinding_and_held_against_what_was_set(yard: Book) -> None:
    job = work_out(counterbore(dish="2 deg"), yard)
    assert inspected(job) == ("drop", "diameter", "dish_angle")
    assert wanted_number(job, "dish_angle") == pytest.approx(math.radians(2))
    assert "Dish of the end  2.00 deg" in setup_sheet(job)


def test_a_flat_end_asks_for_no_dish(yard: Book) -> None:
    assert inspected(work_out(counterbore(dish="0 deg"), yard)) == ("drop", "diameter")


def test_the_land_of_an_end_says_that_it_is_of_the_end_teeth(yard: Book) -> None:
    assert "Land width, end teeth: 3.5 mm" in " ".join(setup_sheet(work_out(counterbore(), yard)).split())


def faceted(**after: Inspection) -> Card:
    """A drill of 10 mm whose point is ground in two facets."""
    return Card(
        family="twist-drill",
        machine="grey-grinder",
        tool=Tool("D-10-1", "10 mm", flutes="2"),
        received={"land_width": ("4.2 mm",), "land_measured_as": ("chord",), "drop": ("0.7 mm", "0.85 mm")},
        wanted={"lip_relief_angle": Wanted("12 deg"), "point_angle": Wanted("118 deg")},
        settings={"point-setup": Setting({"second_lip_relief_angle": "25 deg"})},
        after=after,
    )


def test_the_rear_facet_of_a_point_is_set_before_the_one_at_the_lip(yard: Book) -> None:
    keys = [one.key for one in setting_lines(work_out(faceted(), yard), METRIC) if "roll" in one.key]
    assert keys == ["second_roll_angle", "roll_angle"]


def test_no_relief_is_told_of_a_point_that_is_read_over_its_facets(yard: Book) -> None:
    # A flat from edge to heel would have 24 to 29 degrees where two facets of 12 and 25 are wanted.
    job = work_out(faceted(drop=Inspection(("1.05 mm", "1.06 mm"), "", "0.03 mm")), yard)
    assert received_reliefs(job) == ()
    assert reliefs_after(job) == ()
    eccentric = replace(faceted(), received={**faceted().received, "relief_form": ("eccentric",)})
    assert [one.angles.keys() for one in received_reliefs(work_out(eccentric, yard))] == [{"eccentric"}] * 2


def test_what_is_turned_is_named_and_that_the_machine_names_no_dial_for_it(
    yard: Book, tmp_path: Path
) -> None:
    folder = tmp_path / "yard"
    lay_out(folder)
    written = (folder / "machines.toml").read_text(encoding="utf-8")
    whole = 'sets = ["roll_angle", "second_roll_angle"]'
    assert whole in written
    (folder / "machines.toml").write_text(written.replace(whole, "sets = []"), encoding="utf-8")
    chosen = replace(faceted(), wanted={**faceted().wanted, "relief_method": Wanted(WORK_HEAD)})
    lines = {one.key: one for one in setting_lines(work_out(chosen, open_book(folder)), METRIC)}
    assert lines["roll_angle"].title == "Work head roll"
    assert (lines["roll_angle"].divisions, lines["roll_angle"].off) == ("", "no graduation given")
    assert "the machine names none" in lines["roll_angle"].cost
    assert lines["axis_to_wheel_angle"].divisions.endswith("div")
    assert not {one.off for one in setting_lines(work_out(chosen, yard), METRIC)} & {"no graduation given"}


def test_an_end_with_a_second_relief_has_it_among_its_settings_and_is_not_judged_as_one_flat(
    yard: Book,
) -> None:
    single = counterbore()
    card = replace(single, received={**single.received, "drop": ("0.3 mm",)})
    two = replace(card, wanted={**card.wanted, "second_end_relief_angle": Wanted("15 deg")})
    assert wanted_number(work_out(card, yard), "drop") is not None
    assert received_reliefs(work_out(card, yard)) != ()
    job = work_out(two, yard)
    lines = {one.key: one.value for one in setting_lines(job, METRIC)}
    assert (lines["workhead_tilt"], lines["second_workhead_tilt"]) == ("7.00 deg", "15.00 deg")
    # A tooth rightly ground falls deeper at its heel than one flat of 7 degrees: it is held against nothing.
    assert wanted_number(job, "drop") is None
    assert on_the_way(job) is None
    assert [one.state for one in verdicts(job) if one.state == "stop"] == []
    assert received_reliefs(job) == reliefs_after(job) == ()
    assert "no reading is told there" in " ".join(setup_sheet(job).split())


def test_lip_heights_that_were_measured_before_are_measured_again_and_then_judged_by_what_they_are(
    yard: Book,
) -> None:
    # Under a cup wheel without a work head the point of a drill is looked at for its lips.
    drill = Card(
        family="twist-drill",
        tool=Tool("D-1", "10 mm", flutes="2"),
        received={"lip_height_difference": ("0.08 mm",)},
        wanted={"point_angle": Wanted("118 deg")},
    )
    before = work_out(drill, yard).step("drill-point")
    assert before is not None
    assert "watch" in {one.state for one in before.checks}
    ground = replace(drill, after={"lip_height_difference": Inspection(("0 mm",))})
    after = work_out(ground, yard).step("drill-point")
    assert after is not None
    assert "watch" not in {one.state for one in after.checks}
    within = replace(drill, after={"lip_height_difference": Inspection(("0.01 mm",), "at most 0.02 mm")})
    judged = work_out(within, yard).step("drill-point")
    assert judged is not None
    assert "watch" not in {one.state for one in judged.checks}
    assert inspected(work_out(drill, yard)) == ("drop", "diameter", "lip_height_difference")
    assert inspected(work_out(replace(drill, received={}), yard)) == ("drop", "diameter")


@pytest.fixture
def own(tmp_path: Path) -> Book:
    """A shop's book with a D-bit: one edge on its end, relieved by 8 degrees."""
    (tmp_path / "own.toml").write_text(
        """schema = 1

[[entry]]
id = "d-bit-8"
family = "reamer"
title = "D-bit"
work_material = "any"

[entry.end_relief_angle]
usual = "8 deg"
source = "shop"

[entry.flutes]
usual = "1"
source = "shop"
"""
    )
    return open_book(tmp_path)


def d_bit(own: Book) -> Card:
    return replace(
        from_entry(own, own.entries["d-bit-8"]),
        tool=Tool(size="8 mm"),
        received={"land_width": ("1 mm",), "land_measured_as": ("arc",)},
    )


def test_the_end_of_a_d_bit_waits_for_its_dish_and_is_then_tilted_by_its_relief(own: Book) -> None:
    waiting = work_out(d_bit(own), own).step("end-teeth")
    assert waiting is not None
    assert waiting.in_use
    assert [one.key for one in waiting.answer.issues] == ["dish_angle"]
    job = work_out(replace(d_bit(own), settings={"end-teeth": Setting({"dish_angle": "0 deg"})}), own)
    assert {line.key: line.value for line in setting_lines(job, METRIC)}["workhead_tilt"] == "8.00 deg"
    # 1 mm of arc on a radius of 4 turns 0.25; a flat falls by R sin(turn) tan(8).
    assert 4 * math.sin(0.25) * math.tan(math.radians(8)) == pytest.approx(0.139, abs=5e-4)
    assert heel_read(job) == "0.139"


def test_the_surface_whose_relief_the_card_wants_is_one_to_choose(own: Book) -> None:
    assert surfaces_of(d_bit(own), own) == ("bevel", "land", "end")
    assert surfaces_of(Card(family="reamer"), own) == ("bevel", "land")


def test_the_sheet_of_a_tool_with_one_edge_says_so_and_has_one_box_at_each_place(own: Book) -> None:
    text = setup_sheet(
        work_out(replace(d_bit(own), settings={"end-teeth": Setting({"dish_angle": "0 deg"})}), own)
    )
    assert "Flutes: 1" in text.split("CAUTION")[0]
    heel = next(line for line in text.splitlines() if line.startswith("heel "))
    assert heel.count("______") == 1
