"""The small drawings: every terminal can show them, each belongs to a quantity, and the main ones have one."""

from __future__ import annotations

import math

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


def place(key: str, word: str) -> tuple[int, int]:
    """Row and column of a word in a drawing, the first row uppermost."""
    return next((row, line.index(word)) for row, line in enumerate(FIGURES[key]) if word in line)


def test_behind_the_edge_the_land_lies_on_the_side_on_which_it_has_relief() -> None:
    # Derived. The wheel is on the left of the tool, whose edge is its leftmost place, at (-R, 0). A straight wheel whose
    # axis stands above has a tangent there that leans to the tool going up: above the edge the land is inside the circle,
    # below it the metal would stand out. A cup is an upright line; with the edge below the axis the same holds.
    radius, relief, step = 6.0, math.radians(8), 0.5
    head_up = (-radius + step * math.sin(relief), step * math.cos(relief))
    head_down = (-radius - step * math.sin(relief), -step * math.cos(relief))
    assert math.hypot(*head_up) < radius < math.hypot(*head_down)
    x, y = -radius * math.cos(relief), -radius * math.sin(relief)
    assert math.hypot(x, y + step) < radius < math.hypot(x, y - step)
    for key in ("wheel_head_height", "tooth_rest_height"):
        edge, land, heel, rest, cuts = (
            place(key, word) for word in ("edge", "land", "heel", "rest", "cuts v")
        )
        assert heel[0] < land[0] < edge[0] < rest[0]
        assert cuts[0] > land[0]


def test_the_pictures_of_the_two_heights_show_the_sides_that_the_words_say() -> None:
    assert "above" in QUANTITIES["wheel_head_height"].definition
    wheel_axis, tool_axis, edge = (place("wheel_head_height", word) for word in ("+- -", "axis", "edge"))
    assert wheel_axis[0] < tool_axis[0] == edge[0]
    assert wheel_axis[1] < edge[1] < tool_axis[1]
    # The height runs from the wheel's axis down to the tool's.
    assert place("wheel_head_height", "-^")[0] == wheel_axis[0]
    assert place("wheel_head_height", "- v")[0] == tool_axis[0]
    assert "below" in QUANTITIES["tooth_rest_height"].definition
    tool_axis, edge = place("tooth_rest_height", "axis"), place("tooth_rest_height", "edge")
    assert tool_axis[0] < edge[0]
    assert place("tooth_rest_height", "- ^")[0] == tool_axis[0]
    assert place("tooth_rest_height", "- v")[0] == edge[0]
    assert FIGURES["wheel_head_height"] != FIGURES["tooth_rest_height"]
