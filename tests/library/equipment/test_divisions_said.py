"""Divisions of a reading in digits."""

from __future__ import annotations

import pytest

from library.equipment.settings import divisions_said


@pytest.mark.parametrize("almost_nothing", [0.0, -0.0, -1e-17, -0.04, 0.04])
def test_no_minus_stands_before_no_divisions(almost_nothing: float) -> None:
    assert divisions_said(almost_nothing) == "0.0"


def test_a_minus_stays_before_divisions_that_are_some() -> None:
    assert divisions_said(-0.06) == "-0.1"
    assert divisions_said(12.34) == "12.3"
