"""A throw that is typed as a cam of the drawer is told counts as the throw of that cam. Numbers by hand; derived."""

from __future__ import annotations

import math

import pytest

from geometry.calculations import calculation
from library.book.model import Measure
from library.calc.answer import Answer, answer
from library.equipment.model import Machine
from library.units.system import INCH, METRIC, Display

CAMS = tuple(Measure(f"{throw} mm", throw) for throw in (1.0, 2.5, 5.0))
GREY = Machine("grey", "The grey grinder", cam_throws=CAMS, throw_per="tooth")


def by_cam(throw: str, display: Display, machine: Machine | None = GREY, **more: str) -> Answer:
    typed = {"diameter": "16 mm", "land_width": "3 mm", "relief_angle": "8 deg", "relief_form": "eccentric",
             "throw_per": "tooth", "flutes": "4", "chosen_throw": throw}  # fmt: skip
    return answer(calculation("relief-drop"), typed | more, display=display, machine=machine)


def relief(found: Answer) -> float:
    assert found.result is not None
    return found.result.outputs["relief_angle"]


# From tooth to tooth a quarter turn: the cam falls 2.5 mm over pi/2, on a radius of 8.
OF_THE_CAM = math.atan(2.5 / (math.pi / 2) / 8)


@pytest.mark.parametrize("typed", [".0984", ".0984 in", ".09843", "98.4 thou", "2.5 mm"])
def test_a_throw_typed_as_the_cam_is_told_in_inches_is_that_cam(typed: str) -> None:
    found = by_cam(typed, INCH)
    assert relief(found) == pytest.approx(OF_THE_CAM, abs=1e-12)
    assert found.inputs["chosen_throw"].value == 2.5
    assert found.inputs["chosen_throw"].text == "2.5 mm"


@pytest.mark.parametrize(
    ("typed", "display", "throw"),
    [(".0983", INCH, 2.49682), (".098", INCH, 2.4892), ("2.499", METRIC, 2.499)],
)
def test_a_throw_that_no_cam_is_told_as_counts_as_it_was_typed(
    typed: str, display: Display, throw: float
) -> None:
    assert by_cam(typed, display).inputs["chosen_throw"].value == pytest.approx(throw, abs=1e-12)


def test_without_a_machine_in_hand_a_throw_counts_as_it_was_typed() -> None:
    # .0984 in is 2.49936 mm.
    assert by_cam(".0984", INCH, None).inputs["chosen_throw"].value == pytest.approx(2.49936, abs=1e-12)


def test_where_the_calculation_counts_per_turn_the_throw_of_a_cam_counted_per_tooth_is_that_of_all_teeth() -> (
    None
):
    # Four times 2.5 mm is 0.39370 in.
    found = by_cam(".3937", INCH, throw_per="turn")
    assert found.inputs["chosen_throw"].value == 10.0
    assert relief(found) == pytest.approx(OF_THE_CAM, abs=1e-12)
