"""The rule on primary lands of the US Navy's training manual, held against the flat facet.

NAVEDTRA Machinery Repairman, chapter 10, on grinding milling cutters: the primary land is never over
1/16 inch, because the heel may drag; a land that has grown too wide is cut down by a secondary land ground
at double the clearance angle.
"""

from __future__ import annotations

import math

import pytest

from geometry.calculation import Given
from geometry.calculations import calculation
from geometry.evaluate import run

INCH = 25.4
SIXTEENTH = INCH / 16


def heel(land: float, relief: float, diameter: float) -> float:
    values: dict[str, Given] = {
        "diameter": diameter,
        "relief_angle": relief,
        "land_width": land,
        "relief_form": "flat",
    }
    return run(calculation("relief-drop"), values).outputs["heel_drop"]


@pytest.mark.parametrize("diameter", [0.75 * INCH, INCH, 1.5 * INCH, 2 * INCH, 3 * INCH])
def test_a_sixteenth_clears_at_the_clearance_of_a_small_cutter(diameter: float) -> None:
    # TC 9-524, chapter 5: cutters under 3 inches have 7 degrees for hard materials.
    assert heel(SIXTEENTH, math.radians(7), diameter) > 0


def test_on_a_cutter_of_one_inch_twice_that_land_drags() -> None:
    assert heel(2 * SIXTEENTH, math.radians(7), INCH) < 0


@pytest.mark.parametrize("diameter", [INCH, 1.5 * INCH, 2 * INCH])
def test_a_second_land_at_double_the_angle_lets_a_wider_land_clear(diameter: float) -> None:
    relief = math.radians(7)
    wide = 1.3 * diameter * relief
    assert heel(wide, relief, diameter) < 0
    compared = run(
        calculation("relief-forms"),
        {
            "diameter": diameter,
            "relief_angle": relief,
            "land_width": wide,
            "primary_land": SIXTEENTH,
            "secondary_relief_angle": 2 * relief,
        },
    )
    assert compared.rows[2].values["heel_drop"] > 0
