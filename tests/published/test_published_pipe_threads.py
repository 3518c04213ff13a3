"""Taper pipe threads against printed tables, by what their names fill into the thread sheet."""

from __future__ import annotations

import pytest

from geometry.calculation import Given
from geometry.calculations import calculation
from geometry.evaluate import run
from geometry.thread.pipe import pipe_thread
from library.calc.answer import answer
from library.threads import Thread, all_threads, find_threads
from tests.each import each

INCH = 25.4

# ASME B1.20.1, basic dimensions of NPT, as a pipe dealer prints them (inches): size, pipe, threads to the inch, pitch
# diameter at the hand-tight plane E1, and its distance L1 from the end. The pipe sizes are those of a second table.
NPT = [
    ("1/8", 0.405, 27, 0.37360, 0.162), ("1/4", 0.540, 18, 0.49163, 0.228), ("3/8", 0.675, 18, 0.62701, 0.240),
    ("1/2", 0.840, 14, 0.77843, 0.320), ("3/4", 1.050, 14, 0.98887, 0.339), ("1", 1.315, 11.5, 1.23863, 0.400),
    ("1-1/4", 1.660, 11.5, 1.58338, 0.420), ("2", 2.375, 11.5, 2.29627, 0.436), ("2-1/2", 2.875, 8, 2.76215, 0.682),
    ("1-1/2", 1.900, 11.5, 1.82234, 0.420), ("3", 3.500, 8, 3.38850, 0.766), ("3-1/2", 4.000, 8, 3.88881, 0.821),
    ("4", 4.500, 8, 4.38712, 0.844), ("5", 5.563, 8, 5.44929, 0.937), ("6", 6.625, 8, 6.50597, 0.958),
]  # fmt: skip


@pytest.mark.parametrize(("size", "pipe", "count", "tight", "length"), NPT)
def test_npt_at_the_hand_tight_plane_is_that_of_b1_20_1(
    size: str, pipe: float, count: float, tight: float, length: float
) -> None:
    made = pipe_thread("npt", pipe * INCH, INCH / count)
    assert made.size == size
    assert made.pitch_diameter / INCH == pytest.approx(tight, abs=2e-5)
    assert made.gauge_length / INCH == pytest.approx(length, abs=6e-4)


# E0 = D - (0.05 D + 1.1) p of B1.20.1 worked by hand, inches.
@pytest.mark.parametrize(
    ("size", "front"),
    [("1/8", 0.36351), ("1/4", 0.47739), ("3/8", 0.61201), ("1/2", 0.75843), ("3/4", 0.96768), ("1", 1.21363),
     ("2", 2.26902)],
)  # fmt: skip
def test_npt_at_the_small_end_is_that_of_b1_20_1(size: str, front: float) -> None:
    found = answer(calculation("screw-thread"), {"diameter": f"{size} NPT"})
    assert found.result is not None
    assert found.result.outputs["front_pitch_diameter"] / INCH == pytest.approx(front, abs=1e-5)


# ISO 7-1 at the gauge plane (Mechanical Engineer's Pocket Book, 4.1.38), mm: pitch diameter and minor diameter; the
# gauge length from a page on pipe thread sizes.
@pytest.mark.parametrize(
    ("size", "pitch_diameter", "minor", "gauge_length"),
    [("1/8", 9.147, 8.566, 4.0), ("1/4", 12.301, 11.445, 6.0), ("3/8", 15.806, 14.950, 6.4)],
)
def test_bspt_at_the_gauge_plane_is_that_of_iso_7(
    size: str, pitch_diameter: float, minor: float, gauge_length: float
) -> None:
    found = answer(calculation("screw-thread"), {"diameter": f"R {size}"})
    assert found.result is not None
    outputs = found.result.outputs
    assert outputs["pitch_diameter"] == pytest.approx(pitch_diameter, abs=1.1e-3)
    assert outputs["internal_minor_diameter"] == pytest.approx(minor, abs=1.1e-3)
    small = outputs["pitch_diameter"] - outputs["front_pitch_diameter"]
    assert small == pytest.approx(gauge_length / 16, abs=1e-9)


# Gauge lengths of R threads as a second page lists them, mm; 4 in is 25.4 in one and 25.5 in the other.
@pytest.mark.parametrize(
    ("size", "gauge_length"),
    [("1/16", 4), ("1/2", 8.2), ("3/4", 9.5), ("1", 10.4), ("1-1/4", 12.7), ("1-1/2", 12.7), ("2", 15.9),
     ("2-1/2", 17.5), ("3", 20.6), ("4", 25.5), ("5", 28.6), ("6", 28.6)],
)  # fmt: skip
def test_gauge_lengths_of_bspt_are_those_of_the_list(size: str, gauge_length: float) -> None:
    (row,) = find_threads(f"R {size}")
    diameter, count = (
        float(row.diameter.removesuffix(" mm")),
        float(row.threads_per_inch.removesuffix(" tpi")),
    )
    made = pipe_thread("bspt", diameter, INCH / count)
    assert made.gauge_length == pytest.approx(gauge_length, abs=0.11)


TAPERS = [row for row in all_threads().values() if row.series.taper]


@each("row", TAPERS, lambda row: row.id)
def test_the_drill_of_every_taper_thread_is_no_complaint(row: Thread) -> None:
    # Tables of a tool dealer and of a page on pipe drills.
    if not row.tap_drill:
        return
    found = answer(calculation("screw-thread"), {"diameter": row.title, "drilled_diameter": row.tap_drill})
    assert found.result is not None
    assert found.result.checks[0].state == "pass"


WEAK_BY_ITS_TABLE = {"no-2-56-unc"}
"""1.85 mm leaves 57 percent, while the other table names No. 50, 1.778 mm."""

PARALLEL = [row for row in all_threads().values() if not row.series.taper and row.tap_drill]


@each("row", PARALLEL, lambda row: row.id)
def test_the_drill_of_every_parallel_thread_is_no_complaint(row: Thread) -> None:
    found = answer(calculation("screw-thread"), {"diameter": row.id, "drilled_diameter": row.tap_drill})
    assert found.result is not None
    assert found.result.checks[0].state == ("watch" if row.id in WEAK_BY_ITS_TABLE else "pass")


def test_a_quarter_npt_typed_by_its_name_takes_its_own_drill() -> None:
    values: dict[str, Given] = {"diameter": 0.54 * INCH, "threads_per_inch": 18 / INCH, "thread_taper": "npt"}
    typed = answer(calculation("screw-thread"), {"diameter": "1/4 NPT"})
    assert typed.result is not None
    assert typed.result.outputs == pytest.approx(dict(run(calculation("screw-thread"), values).outputs))
