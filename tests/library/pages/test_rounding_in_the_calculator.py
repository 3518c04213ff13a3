"""A calculation beside a machine tells what the rounding to its divisions costs, as a card and a sheet do."""

from __future__ import annotations

import math

import pytest

from geometry.calculations import calculation
from geometry.sentences import Kind
from library.book.model import Measure
from library.calc.answer import answer
from library.equipment.model import Graduation, Machine
from library.pages.answer import settings
from library.units.system import METRIC

TABLE = Graduation(
    "table", "table", Measure("1 deg", math.radians(1)), Kind.ANGLE, sets=("swivel_angle", "chamfer_angle")
)
MACHINE = Machine("old", "The old one", graduations={"table": TABLE})


def test_the_threads_of_a_chamfer_that_is_set_by_whole_degrees_stand_below_its_angle() -> None:
    # 2.25 mm over 48 mm is 2.68 degrees; at 3 degrees it takes 10.73 threads of 4 mm. Derived.
    found = answer(calculation("tap-chamfer"), {"diameter": "Tr 16x4", "chamfer_threads": "12"})
    below = settings(found, METRIC, MACHINE)["chamfer_angle"].below
    assert below == (
        "3 divisions of 1 deg, table",
        "rounding adds 0.32 deg to the chamfer angle, which makes the threads in the chamfer 10.73 in place of 12",
    )


def test_a_graduation_that_is_too_coarse_for_a_setting_is_to_be_watched() -> None:
    # 0.1 mm smaller over 5 mm, 0.05 mm on one side: atan 0.01 is 0.573 degrees, and 1 degree is 75 percent more. Derived.
    typed = {"diameter": "10", "back_diameter": "9.9", "taper_length": "5"}
    found = answer(calculation("back-taper"), typed)
    assert found.result is not None, found.issues
    division, cost = settings(found, METRIC, MACHINE)["swivel_angle"].below
    assert found.result.outputs["swivel_angle"] == pytest.approx(math.atan(0.01), rel=1e-3)
    assert division == "1 division of 1 deg, table"
    assert cost.startswith("WATCH rounding adds 0.43 deg to the")
    assert "75 percent of it" in cost
