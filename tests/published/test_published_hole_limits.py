"""Holes by ISO 286 and reamers for them, against printed tables."""

from __future__ import annotations

import pytest

from geometry.calculations import calculation
from geometry.evaluate import run
from geometry.fit.hole import Limits, hole_limits
from geometry.fit.reamer import reamer_limits

# A maker's technical reference, "Tables for determining metric tolerances" (2020), table 6, tolerances for inside dimensions,
# in micrometres: a size of the step, and upper and lower deviation of each class.
HEADS = "D9 D10 E8 E9 F6 F7 F8 G6 G7 H6 H7 H8 H9 H10"
LOOSE = {
    2: "45/20 60/20 28/14 39/14 12/6 16/6 20/6 8/2 12/2 6/0 10/0 14/0 25/0 40/0",
    5: "60/30 78/30 38/20 50/20 18/10 22/10 28/10 12/4 16/4 8/0 12/0 18/0 30/0 48/0",
    8: "76/40 98/40 47/25 61/25 22/13 28/13 35/13 14/5 20/5 9/0 15/0 22/0 36/0 58/0",
    16: "93/50 120/50 59/32 75/32 27/16 34/16 43/16 17/6 24/6 11/0 18/0 27/0 43/0 70/0",
    25: "117/65 149/65 73/40 92/40 33/20 41/20 53/20 20/7 28/7 13/0 21/0 33/0 52/0 84/0",
    45: "142/80 180/80 89/50 112/50 41/25 50/25 64/25 25/9 34/9 16/0 25/0 39/0 62/0 100/0",
    70: "174/100 220/100 106/60 134/60 49/30 60/30 76/30 29/10 40/10 19/0 30/0 46/0 74/0 120/0",
}
# The same table, continued.
TIGHT_HEADS = "J6 J7 J8 K6 K7 K8 M6 M7 N6 N7 N8 R7"
TIGHT = {
    2: "2/-4 4/-6 6/-8 0/-6 0/-10 0/-14 -2/-8 -2/-12 -4/-10 -4/-14 -4/-18 -10/-20",
    5: "5/-3 6/-6 10/-8 2/-6 3/-9 5/-13 -1/-9 0/-12 -5/-13 -4/-16 -2/-20 -11/-23",
    8: "5/-4 8/-7 12/-10 2/-7 5/-10 6/-16 -3/-12 0/-15 -7/-16 -4/-19 -3/-25 -13/-28",
    25: "8/-5 12/-9 20/-13 2/-11 6/-15 10/-23 -4/-17 0/-21 -11/-24 -7/-28 -3/-36 -20/-41",
    45: "10/-6 14/-11 24/-15 3/-13 7/-18 12/-27 -4/-20 0/-25 -12/-28 -8/-33 -3/-42 -25/-50",
    65: "13/-6 18/-12 28/-18 4/-15 9/-21 14/-32 -5/-24 0/-30 -14/-33 -9/-39 -4/-50 -30/-60",
    80: "13/-6 18/-12 28/-18 4/-15 9/-21 14/-32 -5/-24 0/-30 -14/-33 -9/-39 -4/-50 -32/-62",
    100: "16/-6 22/-13 34/-20 4/-18 10/-25 16/-38 -6/-28 0/-35 -16/-38 -10/-45 -4/-58 -38/-73",
    160: "18/-7 26/-14 41/-22 4/-21 12/-28 20/-43 -8/-33 0/-40 -20/-45 -12/-52 -4/-67 -50/-90",
}


@pytest.mark.parametrize(("heads", "table"), [(HEADS, LOOSE), (TIGHT_HEADS, TIGHT)])
def test_a_hole_has_the_limits_of_the_printed_table(heads: str, table: dict[int, str]) -> None:
    for size, row in table.items():
        for name, text in zip(heads.split(), row.split(), strict=True):
            high, low = map(float, text.split("/"))
            found = hole_limits(float(size), name)
            assert (found.low - size) * 1000 == pytest.approx(low, abs=1e-6), (size, name)
            assert (found.high - size) * 1000 == pytest.approx(high, abs=1e-6), (size, name)


# The same reference, table 8, after ANSI B4.2: preferred sizes and S7.
@pytest.mark.parametrize(
    ("size", "high", "low"),
    [(3, -14, -24), (6, -15, -27), (10, -17, -32), (16, -21, -39), (25, -27, -48), (40, -34, -59), (60, -42, -72),
     (100, -58, -93), (120, -66, -101), (160, -85, -125), (200, -105, -151), (300, -150, -202), (500, -229, -292)],
)  # fmt: skip
def test_a_pressed_fit_has_the_limits_of_the_printed_table(size: int, high: float, low: float) -> None:
    found = hole_limits(float(size), "S7")
    assert (found.low - size) * 1000 == pytest.approx(low, abs=1e-6)
    assert (found.high - size) * 1000 == pytest.approx(high, abs=1e-6)


# A reamer maker's page, tolerance limits: reamers to DIN 1420 for H7 holes, in mm above the nominal size.
@pytest.mark.parametrize(
    ("size", "high", "low"),
    [(3, 0.008, 0.004), (6, 0.010, 0.005), (10, 0.012, 0.006), (18, 0.015, 0.008), (30, 0.017, 0.009),
     (50, 0.021, 0.012), (80, 0.025, 0.014)],
)  # fmt: skip
def test_a_reamer_for_an_h7_hole_is_that_of_din_1420(size: int, high: float, low: float) -> None:
    found = run(calculation("reamer-size"), {"nominal_diameter": float(size)}).outputs
    assert found["reamer_upper_limit"] - size == pytest.approx(high)
    assert found["reamer_lower_limit"] - size == pytest.approx(low)


def test_a_reamer_for_a_d8_hole_is_that_of_the_worked_example() -> None:
    # The same page, its worked example: hole 10.040 to 10.062, reamer 10.050 to 10.058.
    found = run(calculation("reamer-size"), {"nominal_diameter": 10.0, "hole_tolerance": "D8"}).outputs
    assert (found["hole_lower_limit"], found["hole_upper_limit"]) == pytest.approx((10.040, 10.062))
    assert (found["reamer_lower_limit"], found["reamer_upper_limit"]) == pytest.approx((10.050, 10.058))
    limits = reamer_limits(Limits(10.040, 10.062))
    assert (limits.low, limits.high) == pytest.approx((10.050, 10.058))
