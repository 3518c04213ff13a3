"""A machine and its wheels as a shop would write them, read the way a book is read."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import pytest

from library.book.diagnostics import Diagnostics
from library.book.layers import build, read_part
from library.book.parsing import parse
from library.equipment.model import Machine, Wheel
from library.equipment.shapes import SHAPES

MACHINE = """
[[machine]]
id = "window-grinder"
title = "The grinder by the window"
index_ratio = 40
plate_holes = [16, 15, 18, 15]
spindle_speeds = ["4200 rpm", "2800 rpm"]
cam_throws = ["1.2 mm", "0.04 in"]
throw_per = "tooth"
head_tilt = { low = "-10 deg", high = "15 deg" }
x-bought = "long ago"

[machine.graduations.wheel-head]
title = "wheel head"
division = "0.01 mm"
per_turn = "2.5 mm"
sets = ["wheel_head_height", "tooth_rest_height", "face_offset"]
more = "up"
less = "down"
high = "20 mm"

[machine.graduations.tilt]
division = "15 min"
sets = ["wheel_tilt"]

[machine.graduations.indicator]
division = "0.01 mm"
reads = ["drop"]
"""

WHEEL = """
[[wheel]]
id = "cup-60"
title = "White cup 100"
shape = "type-6-straight-cup"
diameter = "100 mm"
grit = "60"
bond = "vitrified, J"
rated_speed = "20 m/s"
dressed = 2026-11-02
"""


@dataclass(frozen=True)
class Read:
    """What was read of one table, and every complaint about it."""

    made: object
    complaints: tuple[str, ...]

    @property
    def machine(self) -> Machine:
        assert isinstance(self.made, Machine)
        return self.made

    @property
    def wheel(self) -> Wheel:
        assert isinstance(self.made, Wheel)
        return self.made


Reading = Callable[[str], Read]


@pytest.fixture
def reading() -> Reading:
    def read(text: str) -> Read:
        parsed = parse(text.encode(), Path("machines.toml"), "shop")
        diagnostics = Diagnostics(findings=list(parsed.findings))
        sheet = next(one for one in parsed.tables if one.array)
        shape = next(one for one in SHAPES if one.array == sheet.array)
        made = build([read_part(sheet, shape, diagnostics)], shape)
        return Read(made, tuple(str(one) for one in diagnostics.findings))

    return read


@pytest.fixture
def machine(reading: Reading) -> Machine:
    read = reading(MACHINE)
    assert read.complaints == ()
    return read.machine


@pytest.fixture
def wheel(reading: Reading) -> Wheel:
    read = reading(WHEEL)
    assert read.complaints == ()
    return read.wheel


@pytest.fixture
def machine_text() -> str:
    return MACHINE


@pytest.fixture
def wheel_text() -> str:
    return WHEEL
