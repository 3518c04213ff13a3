"""Machines and wheels as they stand in a book."""

from __future__ import annotations

import math
from collections.abc import Callable
from datetime import date
from typing import Any

import pytest

from geometry.sentences import Kind
from library.equipment.model import Machine, Wheel


def test_a_machine_is_read_with_its_numbers_and_the_text_they_were_typed_in(machine: Machine) -> None:
    assert machine.title == "The grinder by the window"
    assert machine.index_ratio == 40
    assert machine.plate_holes == (15, 16, 18)
    assert [one.text for one in machine.spindle_speeds] == ["2800 rpm", "4200 rpm"]
    # 2800 turns in a minute are 2800 * 2 pi / 60 radians in a second; derived.
    assert machine.spindle_speeds[0].number == pytest.approx(293.2153, abs=1e-4)
    assert [one.text for one in machine.cam_throws] == ["0.04 in", "1.2 mm"]
    assert machine.cam_throws[0].number == pytest.approx(1.016)
    assert machine.head_tilt.high is not None
    assert machine.head_tilt.high.number == pytest.approx(math.radians(15))
    assert machine.extra == {"x-bought": "long ago"}


def test_a_graduation_knows_its_division_its_direction_and_what_it_sets(machine: Machine) -> None:
    head = machine.setting_graduation("wheel_head_height")
    assert head is not None
    assert (head.title, head.kind, head.more, head.less) == ("wheel head", Kind.LENGTH, "up", "down")
    assert head.division.number == pytest.approx(0.01)
    tilt = machine.setting_graduation("wheel_tilt")
    assert tilt is not None
    assert (tilt.title, tilt.kind) == ("tilt", Kind.ANGLE)
    assert tilt.division.number == pytest.approx(math.radians(0.25))
    assert machine.setting_graduation("drop") is None
    assert machine.reading_graduation("drop") is not None


def test_a_wheel_is_read_with_its_rating(wheel: Wheel) -> None:
    assert (wheel.shape, wheel.grit, wheel.dressed) == ("type-6-straight-cup", "60", date(2026, 11, 2))
    assert wheel.diameter is not None
    assert wheel.diameter.number == 100
    assert wheel.rated_speed is not None
    assert wheel.rated_speed.key == "rated_speed"
    assert wheel.rated_speed.measure.number == pytest.approx(20_000)


def test_a_rating_in_turns_is_kept_as_turns(reading: Callable[[str], Any]) -> None:
    wheel = reading('[[wheel]]\nid = "a"\ntitle = "A"\nrated_speed = "3600 rpm"\n').wheel
    assert wheel.rated_speed.key == "rated_rotational_speed"
    assert wheel.rated_speed.measure.text == "3600 rpm"


@pytest.mark.parametrize(
    ("old", "new", "line", "needles"),
    [
        ('"2800 rpm"', '"2800"', 7, ["spindle_speeds", "no unit", "3000 rpm"]),
        ('"2800 rpm"', '"2800 mm"', 7, ["a length", "rotational speed"]),
        ("index_ratio = 40", "index_ratio = 40.5", 5, ["whole number"]),
        ("index_ratio = 40", 'index_ratio = "forty"', 5, ["does not begin with a number"]),
        ("[16, 15, 18, 15]", '"16"', 6, ["a list is wanted"]),
        ('throw_per = "tooth"', 'throw_per = "lobe"', 9, ["turn or tooth"]),
        ('low = "-10 deg"', 'low = "20 deg"', 10, ["low", "more than high"]),
        ('low = "-10 deg"', 'lower = "-10 deg"', 10, ["no key 'lower'", "low"]),
        ('division = "0.01 mm"\nper', 'division = "0 mm"\nper', 15, ["'0 mm' is none"]),
        ('division = "0.01 mm"\nper', 'division = "0,01 mm"\nper', 15, ["comma", "0.01"]),
        ('division = "15 min"', 'division = "0.01 mm"', 24, ["wheel_tilt is an angle", "a length"]),
        ('division = "15 min"\n', "", 22, ["no division"]),
        ('"face_offset"', '"face_ofset"', 17, ["'face_ofset'", "face_offset"]),
        ('per_turn = "2.5 mm"', 'per_turn = "0 mm"', 16, ["turn of the handle"]),
        ("x-bought", "bought", 11, ["no key 'bought'"]),
    ],
)
def test_what_is_wrong_is_told_with_its_line_and_the_rest_is_still_read(
    reading: Callable[[str], Any], machine_text: str, old: str, new: str, line: int, needles: list[str]
) -> None:
    assert old in machine_text
    read = reading(machine_text.replace(old, new, 1))
    assert len(read.complaints) == 1, read.complaints
    assert f"machines.toml:{line}:" in read.complaints[0]
    for needle in needles:
        assert needle in read.complaints[0]
    assert read.machine.title == "The grinder by the window"


@pytest.mark.parametrize(
    ("old", "new", "needles"),
    [
        ("2026-11-02", '"last week"', ["a day is wanted", "year-month-day"]),
        ("2026-11-02", "2026", ["a day is wanted"]),
        ('"20 m/s"', '"20 mm"', ["surface speed is wanted"]),
        ('"20 m/s"', '"900 m/s"', ["can be from"]),
        ('"100 mm"', '"0 mm"', ["can be from"]),
        ('"type-6-straight-cup"', '"round"', ["type-1-straight or type-6"]),
        ('"type-6-straight-cup"', "7", ["type-1-straight or type-6"]),
    ],
)
def test_a_wheel_with_a_mistake_loses_that_line_only(
    reading: Callable[[str], Any], wheel_text: str, old: str, new: str, needles: list[str]
) -> None:
    assert old in wheel_text
    read = reading(wheel_text.replace(old, new, 1))
    assert len(read.complaints) == 1, read.complaints
    for needle in needles:
        assert needle in read.complaints[0]
    assert read.wheel.title == "White cup 100"


def test_a_day_may_be_written_in_quotes(reading: Callable[[str], Any], wheel_text: str) -> None:
    assert reading(wheel_text.replace("2026-11-02", '"2026-11-02"')).wheel.dressed == date(2026, 11, 2)
    assert reading(wheel_text.replace("2026-11-02", "2026-11-02T08:00:00")).wheel.dressed == date(2026, 11, 2)
