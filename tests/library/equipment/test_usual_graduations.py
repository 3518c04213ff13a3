"""What a movement sets of which only the division was typed, in a form of today and in a file that one wrote before."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any

import pytest

from library.editing.typed_tables import as_written
from library.editing.writing import table

HEAD = {"title": "Grey", "division of the work-head": "30 min"}

BEFORE = [
    "chamfer_angle",
    "half_point_angle",
    "half_included_angle",
    "axis_to_wheel_angle",
    "second_axis_to_wheel_angle",
    "workhead_swivel",
    "second_workhead_swivel",
]
"""What a form wrote before a bevel was among it."""


def of_a_file(sets: list[str]) -> str:
    listed = ", ".join(f'"{one}"' for one in sets)
    return (
        '[[machine]]\nid = "grey"\ntitle = "Grey"\n\n[machine.graduations.work-head]\n'
        f'division = "30 min"\nsets = [{listed}]\n'
    )


@pytest.mark.parametrize(
    "text", [table("machine", {"id": "grey", **as_written("machine", HEAD)}), of_a_file(BEFORE)]
)
def test_a_bevel_is_set_in_whole_divisions_of_the_work_head(reading: Callable[[str], Any], text: str) -> None:
    machine = reading(text).machine
    graduation = machine.setting_graduation("bevel_angle")
    assert graduation is not None
    assert graduation.division.number == pytest.approx(math.radians(0.5))


def test_a_list_of_the_shop_that_is_another_stays_as_it_is(reading: Callable[[str], Any]) -> None:
    machine = reading(of_a_file(BEFORE[:3])).machine
    assert machine.setting_graduation("bevel_angle") is None
    assert machine.setting_graduation("chamfer_angle") is not None
