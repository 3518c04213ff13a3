"""Tap drills of the metric coarse threads against a second table."""

from __future__ import annotations

import pytest

from geometry.sentences import Kind
from library.threads import find_threads
from library.units.read import read


# Metric tap drills as a supplier's guide after ISO 261 and ISO 724 lists them, mm.
@pytest.mark.parametrize(
    ("size", "drill"),
    [
        ("M1.6", 1.25),
        ("M2", 1.6),
        ("M2.5", 2.05),
        ("M3", 2.5),
        ("M4", 3.3),
        ("M5", 4.2),
        ("M6", 5.0),
        ("M8", 6.8),
        ("M10", 8.5),
        ("M12", 10.2),
        ("M14", 12.0),
        ("M16", 14.0),
        ("M18", 15.5),
        ("M20", 17.5),
        ("M22", 19.5),
        ("M24", 21.0),
        ("M27", 24.0),
        ("M30", 26.5),
        ("M36", 32.0),
        ("M42", 37.5),
        ("M48", 43.0),
        ("M56", 50.5),
        ("M64", 58.0),
    ],
)
def test_metric_tap_drills_are_those_of_a_second_table(size: str, drill: float) -> None:
    (row,) = find_threads(size)
    assert read(row.tap_drill, Kind.LENGTH, unit_wanted=True).number == pytest.approx(drill, abs=1e-9)
