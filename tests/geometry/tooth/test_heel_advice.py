"""What is said of a heel that stands proud, by a hair or because there is no relief at all."""

from __future__ import annotations

import math

import pytest

from geometry.tooth import flat
from geometry.tooth.heel_advice import no_drop, rubs


def test_a_flat_without_relief_stands_proud_and_does_not_run_on_the_circle() -> None:
    # Derived: the tangent passes the heel at R / cos(theta), here 6 / cos(1/3) = 6.349, so 0.349 mm proud.
    assert flat.drop(1 / 3, 0.0, 12.0) == pytest.approx(6 - 6 / math.cos(1 / 3), rel=1e-12)
    check = no_drop(1 / 3, "flat")
    assert check.state == "stop"
    assert "stands proud" in str(check.sentence)
    assert "runs on the circle" not in str(check.sentence)
    assert dict(check.cure) == {"relief_angle": pytest.approx(1 / 6)}


def test_an_eccentric_relief_of_nothing_runs_on_the_circle() -> None:
    assert "runs on the circle" in str(no_drop(1 / 3).sentence)


@pytest.mark.parametrize(
    ("proud", "said"),
    [(4e-7, "less than 0.001 mm proud"), (9e-4, "less than 0.001 mm proud"), (0.0021, "0.0021 mm proud")],
)
def test_a_heel_is_never_nothing_proud(proud: float, said: str) -> None:
    assert said in str(rubs(-proud, 0.3, 0.1499, 12.0, "arc").sentence)


def test_no_land_of_no_width_and_no_relief_that_no_edge_bears_is_advised() -> None:
    # A relief of 1e-5 clears over 12 * 1e-5 mm of land; the heel asks for more than 45 degrees.
    check = rubs(-1.0, 1.6, 1e-5, 12.0, "arc")
    assert check.cure == ()
    assert str(check.sentence).endswith("Grind a second facet behind it.")
