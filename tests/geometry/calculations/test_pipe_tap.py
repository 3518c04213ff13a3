"""The small end of a taper pipe tap, found again on a cone that is drawn point by point."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Given, Result
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run

HALF: dict[str, Given] = {"diameter": 21.336, "threads_per_inch": 14 / 25.4, "thread_taper": "npt"}
PITCH = 25.4 / 14
DEPTH = 0.8 * PITCH  # ASME B1.20.1, h = 0.800 P
E0 = 21.336 - (0.05 * 0.84 + 1.1) * PITCH  # the same, D - (0.05 D + 1.1) p


def tap(**values: Given) -> Result:
    return run(calculation("pipe-tap"), {**HALF, **values})


def said(result: Result) -> str:
    return " ".join(f"{check.state}: {check.sentence}" for check in result.checks)


@given(st.floats(1.0, 3.5), st.floats(8.0, 16.0), st.floats(0.0, 3.0))
def test_the_chamfer_is_the_line_between_the_point_and_the_first_full_crest(
    threads: float, projection: float, cut: float
) -> None:
    # Independent: crests of the cone as places along the axis, the gauge's small face at zero and the end ahead of it.
    def crest(behind_gauge: float) -> float:
        return (E0 + DEPTH + behind_gauge / 16) / 2

    end = -(projection - cut)
    root = crest(end) - DEPTH
    first_full = (end + threads * PITCH, crest(end + threads * PITCH))
    slope = math.atan2(first_full[1] - root, first_full[0] - end)
    found = tap(chamfer_threads=threads, gauge_projection=projection, cut_back=cut).outputs
    assert found["chamfer_angle"] == pytest.approx(slope, rel=1e-9)
    assert found["point_diameter_after"] == pytest.approx(2 * root, rel=1e-9)
    assert found["full_threads_beyond"] == pytest.approx((0 - first_full[0]) / PITCH, abs=1e-9)
    # The plane whose pitch diameter is E1 comes to the mouth when so much of the tap is in the hole.
    mouth = found["tap_depth"] + end
    assert E0 + mouth / 16 == pytest.approx(found["pitch_diameter"], rel=1e-12)
    back = tap(chamfer_angle=slope, gauge_projection=projection, cut_back=cut).outputs
    assert back["chamfer_threads"] == pytest.approx(threads, rel=1e-9)


def test_a_point_that_was_measured_makes_the_chamfer_flatter() -> None:
    end = E0 + DEPTH - 14.5 / 16
    found = tap(chamfer_threads=2.5, gauge_projection=14.5, point_diameter=end - DEPTH).outputs
    # Derived: half the depth on each side, over 2.5 threads, and the half taper of 1 in 32.
    assert math.tan(found["chamfer_angle"]) == pytest.approx(DEPTH / 2 / (2.5 * PITCH) + 1 / 32)
    with pytest.raises(Refusal, match="Measure the point"):
        tap(chamfer_threads=2.5, gauge_projection=14.5, point_diameter=25.0)


def test_shortening_takes_turns_and_leaves_too_few_full_threads_in_the_end() -> None:
    fine = tap(chamfer_threads=2.5, gauge_projection=14.5, cut_back=PITCH)
    assert fine.outputs["turns_lost"] == pytest.approx(1.0)
    assert "Cutting 1.814 mm off takes 1 turns" in said(fine)
    # Derived: 14.5 mm less 2.5 threads of chamfer and 3 of make-up leave 4.5214 mm.
    assert fine.outputs["usable_length"] == pytest.approx(14.5 - 5.5 * PITCH - PITCH)
    short = tap(chamfer_threads=2.5, gauge_projection=14.5, cut_back=6.0)
    assert short.checks[0].state == "stop"
    assert "Cut back 4.521 mm or less" in said(short)


def test_a_parallel_tap_and_a_chamfer_flatter_than_its_thread_are_refused() -> None:
    with pytest.raises(Refusal, match="like any other"):
        tap(thread_taper="parallel", chamfer_threads=2.5)
    with pytest.raises(Refusal, match="steeper than that"):
        tap(chamfer_angle=math.radians(1.5))


def test_a_tap_that_stands_out_further_than_a_new_one_is_doubted() -> None:
    assert "watch: The small end stands 17 mm" in said(tap(chamfer_threads=2.5, gauge_projection=17.0))
    assert "has been shortened before" in said(tap(chamfer_threads=2.5, gauge_projection=12.0))


def test_a_measured_diameter_does_not_move_the_planes_of_a_pipe_thread() -> None:
    values: dict[str, Given] = {"threads_per_inch": 14 / 25.4, "thread_taper": "npt", "chamfer_threads": 2.5}
    named = run(calculation("pipe-tap"), {**values, "diameter": 21.336}).outputs
    measured = run(calculation("pipe-tap"), {**values, "diameter": 20.9, "nominal_diameter": 21.336}).outputs
    assert measured == named
