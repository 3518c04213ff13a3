"""Curves for a figure: where they begin, where they end and what lies between."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.figure import SAMPLES, Figure, curve


@given(st.floats(1e-6, 6.0))
def test_a_curve_runs_from_the_edge_to_the_heel_in_even_steps(reach: float) -> None:
    points = curve("sine", reach, math.sin).points
    assert len(points) == SAMPLES + 1
    assert points[0] == (0.0, 0.0)
    assert points[-1] == (reach, math.sin(reach))
    steps = [after[0] - before[0] for before, after in pairwise(points)]
    assert steps == pytest.approx([reach / SAMPLES] * SAMPLES, rel=1e-9)
    assert all(drop == math.sin(angle) for angle, drop in points)


def test_a_figure_keeps_its_curves_in_the_order_given() -> None:
    curves = (curve("chosen", 0.5, math.sin), curve("other", 0.5, math.tan))
    figure = Figure(6.0, 0.5, curves)
    assert [one.name for one in figure.curves] == ["chosen", "other"]
    assert figure.rake_angle == 0.0


def test_corners_are_kept_where_facets_meet() -> None:
    assert curve("facets", 0.4, lambda angle: angle, (0.1, 0.2)).corners == (0.1, 0.2)
    assert curve("progressive", 0.4, lambda angle: angle).corners == ()
