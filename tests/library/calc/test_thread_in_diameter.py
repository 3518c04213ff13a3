"""A thread named in the diameter field fills what a thread gives."""

from __future__ import annotations

import pytest

from geometry.calculations import calculation
from library.calc.answer import answer

AXIAL = calculation("lead-over-land")


@pytest.mark.parametrize(
    ("name", "diameter", "pitch"),
    [("M12", 12.0, 1.75), ("m12x1.5", 12.0, 1.5), ("M12 x 1.25", 12.0, 1.25), ("3/4-10 UNC", 19.05, 2.54)],
)
def test_a_thread_fills_diameter_and_pitch(name: str, diameter: float, pitch: float) -> None:
    # ISO 261 coarse M12 has 1.75 mm; UNC 3/4 has 10 threads to the inch (ASME B1.1).
    found = answer(AXIAL, {"diameter": name, "land_width": "3.2 mm"})
    assert not found.issues
    assert found.inputs["diameter"].value == pytest.approx(diameter)
    assert found.result is not None
    assert found.result.outputs["lead"] == pytest.approx(pitch)


def test_a_pitch_that_was_typed_stays() -> None:
    found = answer(AXIAL, {"diameter": "M12", "pitch": "1 mm", "land_width": "3.2 mm"})
    assert found.inputs["pitch"].value == 1.0


def test_a_calculation_without_a_pitch_takes_the_diameter_alone() -> None:
    found = answer(calculation("relief-drop"), {"diameter": "M12", "relief_angle": "8", "land_width": "2"})
    assert found.inputs["diameter"].value == 12.0


def test_a_name_that_several_threads_share_asks_which() -> None:
    (issue, *_) = [
        t for t in answer(AXIAL, {"diameter": "1/4-20", "land_width": "2"}).issues if not t.missing
    ]
    assert issue.key == "diameter"
    assert "UNC" in issue.text
    assert "Write which" in issue.text


def test_what_is_no_thread_says_so_and_a_number_is_never_taken_for_one() -> None:
    (issue, *_) = answer(AXIAL, {"diameter": "M13.7", "land_width": "2"}).issues
    assert "no thread" in issue.text
    assert answer(AXIAL, {"diameter": "12", "pitch": "1", "land_width": "2"}).inputs["diameter"].value == 12.0
    (spoiled, *_) = answer(AXIAL, {"diameter": "12,5", "pitch": "1", "land_width": "2"}).issues
    assert "comma" in spoiled.text


@pytest.mark.parametrize(
    ("name", "measured", "form", "hole"),
    [("Tr 16x4", "16.5 mm", "trapezoidal", 12.0), ("M10", "10.1 mm", "iso", 8.5),
     ("1/4-20 UNC", "0.252 in", "iso", 5.08), ("2 BA", "4.8 mm", "ba", 3.89)],
)  # fmt: skip
def test_a_thread_that_is_named_beside_a_measured_diameter_gives_all_else(
    name: str, measured: str, form: str, hole: float
) -> None:
    typed = {"diameter": measured, "nominal_diameter": name, "chamfer_threads": "4"}
    found = answer(calculation("tap-chamfer"), typed)
    assert not found.issues
    assert found.inputs["thread_form"].value == form
    assert found.result is not None
    check = found.result.checks[0]
    told = check.sentence.parts["hole"]
    assert not isinstance(told, str)
    assert told.value == pytest.approx(hole)


def test_a_calculation_that_asks_for_no_nominal_size_takes_pitch_and_starts_of_the_thread() -> None:
    found = answer(AXIAL, {"diameter": "20.5 mm", "nominal_diameter": "Tr 20 x 8 P4", "land_width": "3 mm"})
    assert not found.issues
    assert (found.inputs["pitch"].value, found.inputs["starts"].value) == (4.0, 2.0)
    assert found.inputs["diameter"].value == 20.5


def test_two_threads_named_for_one_tap_are_asked_about() -> None:
    typed = {"diameter": "M10", "nominal_diameter": "M12", "chamfer_threads": "4"}
    (issue,) = answer(calculation("tap-chamfer"), typed).issues
    assert issue.key == "nominal_diameter"
    assert "Name the thread once" in issue.text
