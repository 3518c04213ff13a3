"""The outputs of a calculation as lines: each named with its surface, and none told twice."""

from __future__ import annotations

from geometry.calculations import calculation
from library.calc.answer import answer
from library.pages.answer import outputs
from library.pages.lines import block_lines
from library.pages.reader import Reader, text_of
from library.units.system import METRIC

CONE = {
    "surface": "cone",
    "included_angle": "82",
    "diameter": "25.4",
    "land_width": "6.35",
    "relief_form": "eccentric",
}


def told(name: str, **typed: str) -> str:
    found = answer(calculation(name), CONE | typed)
    assert found.result is not None, found.issues
    block = outputs(found, found.result.outputs, METRIC)
    assert block is not None
    return "\n".join(map(text_of, block_lines(block, Reader(60))))


def test_a_relief_that_was_given_is_told_in_the_other_views_only() -> None:
    text = told("relief-drop", relief_angle="8")
    assert "Relief square to the axis" in text
    assert "Relief along the axis" in text
    assert "square to the edge" not in text


def test_a_relief_that_is_found_is_named_with_its_surface_and_told_once() -> None:
    text = told("relief-from-reading", drop="1.1825")  # 6.35 mm x tan 8 deg / cos 41 deg is 1.1825; derived
    assert text.count("square to the edge") == 1
    assert "Relief of the cone, square to the edge" in text
    assert "8.00 deg" in text


def test_what_a_cam_gives_stands_beside_what_was_wanted() -> None:
    text = told("relief-drop", relief_angle="8", chosen_throw="12", throw_per="turn")
    # atan(12 / (pi x 25.4)) at the axis, times cos 41 deg square to the edge: 6.48 deg; derived
    assert text.count("6.48 deg") == 1
