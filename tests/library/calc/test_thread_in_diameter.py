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
