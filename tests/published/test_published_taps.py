"""Faces and chamfers of taps against what is printed of them."""

from __future__ import annotations

import math

import pytest

from geometry.calculations import calculation
from geometry.evaluate import run


def test_offset_of_the_flute_face_for_a_rake() -> None:
    # Rotating-tool catalogue 2017, user guide, regrinding of taps: 10 x 1.5, rake 15 degrees, X = 1.29 mm.
    found = run(calculation("face-offset"), {"diameter": 10.0, "rake_angle": math.radians(15)})
    assert found.outputs["face_offset"] == pytest.approx(1.29, abs=0.005)


def chamfer(threads: float, diameter: float = 10.0, pitch: float = 1.5) -> dict[str, float]:
    values = {"diameter": diameter, "pitch": pitch, "chamfer_threads": threads}
    return dict(run(calculation("tap-chamfer"), values).outputs)


def test_length_of_a_chamfer_is_its_threads_times_the_pitch() -> None:
    # Tap maker's answers to frequent questions, length of the chamfer: M10 x 1.5, 5 threads, 7.5 mm.
    assert chamfer(5)["chamfer_length"] == 7.5


@pytest.mark.parametrize(
    ("fewest", "most", "degrees"),
    # Threading-tool table of tap chamfers: taper 7 to 10 threads 5 degrees, second 3 to 5 threads 8 degrees,
    # bottoming 1 to 2 threads about 18 degrees. The ranges of threads are those of US Army TM 9-254, 4-27.
    [(7, 10, 5), (3, 5, 8), (1, 2, 18)],
)
def test_printed_angles_lie_between_those_of_the_printed_threads(
    fewest: float, most: float, degrees: float
) -> None:
    steep, flat = (math.degrees(chamfer(threads)["chamfer_angle"]) for threads in (fewest, most))
    # The table is in whole degrees.
    assert flat - 0.5 <= degrees <= steep + 0.5


def test_a_nut_tap_of_twenty_threads_has_a_chamfer_of_two_degrees() -> None:
    # IS 6171: 20 threads, 2 degrees. Its hand-tap sets are steeper than the depth of thread gives, as if they
    # were chamfered deeper than that, so only this row is a check.
    assert round(math.degrees(chamfer(20)["chamfer_angle"])) == 2
