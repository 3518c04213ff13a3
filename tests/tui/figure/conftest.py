"""Results of worksheets to draw, each an ordinary job."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest

from geometry.running import run
from geometry.worksheet import Given, Result
from geometry.worksheets import worksheet

Heel = Callable[[str], Result]


@pytest.fixture
def heel() -> Heel:
    """A 12 mm tool, land 2 mm, relief 8 degrees: progressive its heel clears, flat it stands 0.055 mm proud."""

    def of(style: str) -> Result:
        values: dict[str, Given] = {
            "diameter": 12.0,
            "relief_angle": math.radians(8),
            "land_width": 2.0,
            "land_measured_as": "arc",
            "relief_style": style,
        }
        return run(worksheet("relief-drop"), values)

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
    return run(worksheet("relief-facets"), values)


@pytest.fixture
def countersink() -> Result:
    """An 82 degree countersink looked at in three places."""
    values: dict[str, Given] = {
        "diameter": (20.0, 12.0, 6.0),
        "included_angle": math.radians(82),
        "radial_cam": 0.5,
        "cam_per": "turn",
        "land_measured_as": "arc",
    }
    return run(worksheet("cone-relief"), values)
