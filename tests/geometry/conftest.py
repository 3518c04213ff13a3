"""The ordinary values of every calculation, and amounts as a person at the bench reads them off a sentence."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping

import pytest

from geometry.calculation import Given
from geometry.calculations import calculation, calculation_names
from geometry.sentences import Amount, Kind, Rounding

Samples = Mapping[str, Mapping[str, Given]]


@pytest.fixture(scope="session")
def samples() -> Samples:
    """The ordinary values of each calculation, by its name."""
    return {name: calculation(name).sample for name in calculation_names()}


def _as_shown(part: Amount | str) -> float:
    assert isinstance(part, Amount)
    step = {Kind.LENGTH: 1e-3, Kind.ANGLE: math.radians(0.01)}.get(part.kind, 0.0)
    if step == 0:
        return part.value
    # A value that is on the step already must not be pushed to the next one by its last digit.
    steps = round(part.value / step, 6)
    if part.rounding is Rounding.UP:
        return math.ceil(steps) * step
    if part.rounding is Rounding.DOWN:
        return math.floor(steps) * step
    return round(steps) * step


@pytest.fixture(scope="session")
def as_shown() -> Callable[[Amount | str], float]:
    """The number that is left of an amount when it is shown to a thousandth of a mm or a hundredth of a degree."""
    return _as_shown
