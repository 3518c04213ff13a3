"""Curves for a figure: where they begin, where they end and what lies between."""

from __future__ import annotations

import math
from collections.abc import Mapping
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Given
from geometry.calculations import calculation
from geometry.evaluate import run
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
    assert curve("eccentric", 0.4, lambda angle: angle).corners == ()


@pytest.mark.parametrize(
    ("name", "curve_name", "wanted"),
    [("relief-facets", "facets", None), ("relief-forms", "two facets", 1), ("reamer-land", "facets", None)],
)
def test_every_calculation_of_facets_tells_where_they_meet(
    name: str, curve_name: str, wanted: int | None, samples: Mapping[str, Mapping[str, Given]]
) -> None:
    result = run(calculation(name), samples[name])
    assert result.figure is not None
    drawn = next(one for one in result.figure.curves if one.name == curve_name)
    assert len(drawn.corners) == (wanted or len(drawn.corners)) > 0
    assert all(0 < corner < result.figure.land_angle for corner in drawn.corners)
