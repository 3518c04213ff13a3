"""Taper pipe taps against a printed table, and against the pipe thread that they cut."""

from __future__ import annotations

import pytest

from geometry.calculations import calculation
from geometry.thread.pipe import pipe_thread
from geometry.thread.pipe_tap import projection_of_standard
from library.calc.answer import Answer, answer

INCH = 25.4

# A tool dealer's catalogue of the American tap makers' table 338, taper pipe taps (inches): how far the small end stands
# out of an L1 ring gauge, and either way. The program has it from Machinery's Handbook 31st ed., p. 1005, table 24a.
PROJECTIONS = [
    ("1/16", 0.312, 1 / 16), ("1/8", 0.312, 1 / 16), ("1/4", 0.459, 1 / 16), ("3/8", 0.454, 1 / 16),
    ("1/2", 0.579, 1 / 16), ("3/4", 0.565, 1 / 16), ("1", 0.678, 3 / 32), ("1-1/4", 0.686, 3 / 32),
    ("1-1/2", 0.699, 3 / 32), ("2", 0.667, 3 / 32), ("2-1/2", 0.925, 3 / 32), ("3", 0.925, 3 / 32),
]  # fmt: skip


def tap(size: str, **typed: str) -> Answer:
    return answer(calculation("pipe-tap"), {"diameter": size, "chamfer_threads": "2.5", **typed})


@pytest.mark.parametrize(("size", "projection", "tolerance"), PROJECTIONS)
def test_the_small_end_of_a_new_tap_stands_out_as_printed(
    size: str, projection: float, tolerance: float
) -> None:
    found = tap(f"{size} NPT").result
    assert found is not None
    assert found.outputs["projection_after"] / INCH == pytest.approx(projection, abs=1e-9)
    said = " ".join(str(check.sentence) for check in found.checks)
    assert "taken as new" in said
    made = pipe_thread("npt", _outside(size) * INCH, found.outputs["chamfer_length"] / 2.5)
    standard = projection_of_standard(made)
    assert standard is not None
    assert standard[1] / INCH == pytest.approx(tolerance)
    # Every size of the table has the three (two, from 2-1/2) full threads that its make-up wants, ASME B1.20.1 L3.
    assert found.outputs["full_threads_beyond"] >= (2 if size in {"2-1/2", "3"} else 3)


def _outside(size: str) -> float:
    outside = {"1/16": 0.3125, "1/8": 0.405, "1/4": 0.540, "3/8": 0.675, "1/2": 0.840, "3/4": 1.050}
    outside |= {"1": 1.315, "1-1/4": 1.660, "1-1/2": 1.900, "2": 2.375, "2-1/2": 2.875, "3": 3.500}
    return outside[size]


# ASME B1.20.1 as printed (inches): E0 and E1; the sizes are those of tests on the thread itself.
@pytest.mark.parametrize(
    ("size", "front", "tight"),
    [
        ("1/8", 0.36351, 0.37360),
        ("1/4", 0.47739, 0.49163),
        ("1/2", 0.75843, 0.77843),
        ("1", 1.21363, 1.23863),
    ],
)
def test_the_tap_has_the_diameters_of_the_standard_at_its_planes(
    size: str, front: float, tight: float
) -> None:
    found = tap(f"{size} NPT").result
    assert found is not None
    assert found.outputs["front_pitch_diameter"] / INCH == pytest.approx(front, abs=1e-5)
    assert found.outputs["pitch_diameter"] / INCH == pytest.approx(tight, abs=2e-5)


def test_a_british_tap_without_a_table_asks_for_its_projection() -> None:
    found = tap("1/4 BSPT").result
    assert found is not None
    assert "tap_depth" not in found.outputs
    # ISO 7-1 at the gauge plane (Mechanical Engineer's Pocket Book, 4.1.38): 12.301 mm, and 6 mm of 1 in 16 before it.
    assert found.outputs["pitch_diameter"] == pytest.approx(12.301, abs=5e-4)
    assert found.outputs["front_pitch_diameter"] == pytest.approx(12.301 - 6.0 / 16, abs=1e-3)
    measured = tap("1/4 BSPT", gauge_projection="9 mm").result
    assert measured is not None
    assert measured.outputs["tap_depth"] == pytest.approx(15.0, abs=1e-3)
