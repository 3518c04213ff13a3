"""The small drawings: every terminal can show them, each belongs to a quantity, and the main ones have one."""

from __future__ import annotations

import pytest

from geometry.quantities import QUANTITIES
from tui.figure.quantity_figures import FIGURES, HIGHEST, WIDEST


@pytest.mark.parametrize("key", FIGURES)
def test_a_drawing_is_small_plain_and_of_a_quantity_of_the_book(key: str) -> None:
    assert key in QUANTITIES
    lines = FIGURES[key]
    assert len(lines) <= HIGHEST
    assert all(len(line) <= WIDEST and line.isascii() and line.isprintable() for line in lines)
    assert all(line == line.rstrip() for line in lines)


@pytest.mark.parametrize(
    "key",
    [
        *(
            "diameter",
            "land_width",
            "land_measured_as",
            "relief_angle",
            "relief_form",
            "rake_angle",
            "heel_drop",
        ),
        *("chamfer_angle", "point_angle", "helix_angle", "included_angle", "primary_land", "margin_width"),
        *(
            "lip_relief_angle",
            "radial_throw",
            "axial_throw",
            "face_offset",
            "web_thickness",
            "back_taper",
            "pitch",
        ),
    ],
)
def test_the_main_quantities_have_a_drawing(key: str) -> None:
    assert FIGURES[key]
