"""Results of calculations to draw, each an ordinary job."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest

from geometry.calculation import Given, Result
from geometry.calculations import calculation
from geometry.evaluate import run

Heel = Callable[[str], Result]


@pytest.fixture
def heel() -> Heel:
    """A 12 mm tool, land 2 mm, relief 8 degrees: eccentric its heel clears, flat it stands 0.055 mm proud."""

    def of(form: str) -> Result:
        values: dict[str, Given] = {
            "diameter": 12.0,
            "relief_angle": math.radians(8),
            "land_width": 2.0,
            "land_measured_as": "arc",
            "relief_form": form,
        }
        return run(calculation("relief-drop"), values)

    return of


@pytest.fixture
def facets() -> Result:
    """A 12 mm drill ground down to 10 mm, with three facets behind the edge."""
    values: dict[str, Given] = {
        "diameter": 10.0,
        "body_diameter": 12.0,
        "land_width": 7.0,
        "land_measured_as": "arc",
        "relief_angle": math.radians(10),
        "primary_land": 0.8,
        "least_gap": 0.1,
        "deepest_gap": 0.5,
    }
    return run(calculation("relief-facets"), values)


@pytest.fixture
def countersink() -> Result:
    """An 82 degree countersink looked at in three places."""
    values: dict[str, Given] = {
        "diameter": (20.0, 12.0, 6.0),
        "included_angle": math.radians(82),
        "radial_throw": 0.5,
        "throw_per": "turn",
        "land_measured_as": "arc",
    }
    return run(calculation("cone-relief"), values)
