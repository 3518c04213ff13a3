"""Limits of taps against the tables of their makers and of the standard."""

from __future__ import annotations

import pytest
from screw_thread_lib.data.ASME import ASME_M_6g6H_dict

from geometry.thread.form import thread
from geometry.thread.tap_limits import fifth_grade, tap_limits

INCH = 25.4

# A tap maker's catalogue (2021), comparison of pitch diameter tolerance: diameter, pitch, 5H in micrometres.
FIFTH = [(1, 0.25, 56), (1.2, 0.25, 56), (1.4, 0.3, 60), (1.6, 0.35, 67), (1.8, 0.35, 67), (2, 0.4, 71), (2.2, 0.45, 75),
         (2.5, 0.45, 75), (3, 0.5, 80), (3.5, 0.6, 90), (4, 0.7, 95), (4.5, 0.75, 95), (5, 0.8, 100), (6, 1, 118),
         (7, 1, 118), (8, 1.25, 125), (9, 1.25, 125)]  # fmt: skip


@pytest.mark.parametrize(("diameter", "pitch", "wide"), FIFTH)
def test_the_tolerance_of_grade_5_is_the_printed_one(diameter: float, pitch: float, wide: float) -> None:
    assert fifth_grade(float(diameter), float(pitch)) * 1000 == pytest.approx(wide)


@pytest.mark.parametrize("name", sorted(ASME_M_6g6H_dict))
def test_grade_6_is_about_a_quarter_wider_than_grade_5(name: str) -> None:
    """ASME B1.13-2005 in screw-thread-lib; ISO 965-1 has 1.32 and 1.06 times one number, each rounded."""
    row = ASME_M_6g6H_dict[name]
    sixth = (row["D2max"] - row["D2min"]) * INCH
    assert fifth_grade(row["dbsc"] * INCH, INCH / row["n"]) == pytest.approx(sixth / 1.25, rel=0.03)


# Another maker's catalogue (2022), taps for a 6H nut, coarse pitches: diameter, pitch, least and greatest pitch diameter.
SECOND_CLASS = [
    (1.6, 0.35, 1.393, 1.407), (2, 0.4, 1.761, 1.776), (2.5, 0.45, 2.231, 2.246), (3, 0.5, 2.699, 2.715),
    (3.5, 0.6, 3.137, 3.155), (4, 0.7, 3.574, 3.593), (4.5, 0.75, 4.042, 4.061), (5, 0.8, 4.510, 4.530),
    (6, 1, 5.385, 5.409), (8, 1.25, 7.226, 7.251), (10, 1.5, 9.068, 9.096), (12, 1.75, 10.911, 10.943),
    (14, 2, 12.752, 12.786), (16, 2, 14.752, 14.786), (18, 2.5, 16.430, 16.466),
]  # fmt: skip


@pytest.mark.parametrize(("diameter", "pitch", "least", "greatest"), SECOND_CLASS)
def test_a_tap_of_class_2_has_the_printed_limits(
    diameter: float, pitch: float, least: float, greatest: float
) -> None:
    found = tap_limits(thread(diameter, pitch, "iso"), "ISO2-6H")
    assert (found.low, found.high) == pytest.approx((least, greatest), abs=1.1e-3)


# The first maker's catalogue (2016), tap thread limits: mark, diameter, pitch, upper and lower limit over basic in micrometres.
OVER_BASIC = [
    ("ISO2-6H", 5, 0.8, 50, 30), ("ISO2-6H", 6, 0.75, 53, 32), ("ISO2-6H", 7, 1, 59, 35), ("ISO2-6H", 8, 1.25, 63, 38),
    ("ISO2-6H", 10, 1.5, 70, 42), ("ISO2-6H", 10, 1.25, 63, 38), ("ISO2-6H", 10, 1, 59, 35),
    ("D4", 5, 0.8, 52, 32), ("D5", 6, 1, 65, 40), ("D5", 8, 1.25, 65, 34), ("D6", 10, 1.5, 78, 47),
]  # fmt: skip


@pytest.mark.parametrize(("mark", "diameter", "pitch", "upper", "lower"), OVER_BASIC)
def test_a_metric_tap_lies_so_far_over_basic(
    mark: str, diameter: float, pitch: float, upper: float, lower: float
) -> None:
    made = thread(diameter, pitch, "iso")
    found = tap_limits(made, mark)
    assert (found.high - made.pitch_diameter) * 1000 == pytest.approx(upper, abs=0.51)
    assert (found.low - made.pitch_diameter) * 1000 == pytest.approx(lower, abs=0.51)


# ANSI/ASME B94.9-2008 (R2018), tap thread limits, fractional sizes, ground thread, as a reference book prints them in its 31st
# edition, table 21: diameter and threads per inch, mark, least and greatest pitch diameter in inches.
GROUND = [
    (0.875, 14, "H2", 0.8291, 0.8296), (0.875, 14, "H4", 0.8301, 0.8306), (1.0, 8, "H4", 0.9203, 0.9208),
    (1.0, 8, "H6", 0.9213, 0.9218), (1.0, 12, "H4", 0.9474, 0.9479), (1.125, 7, "H4", 1.0337, 1.0342),
    (1.25, 12, "H4", 1.1974, 1.1979), (1.5, 6, "H4", 1.3932, 1.3937),
]  # fmt: skip


@pytest.mark.parametrize(("diameter", "count", "mark", "least", "greatest"), GROUND)
def test_an_inch_tap_has_the_printed_limits(
    diameter: float, count: float, mark: str, least: float, greatest: float
) -> None:
    found = tap_limits(thread(diameter * INCH, INCH / count, "iso"), mark)
    assert (found.low / INCH, found.high / INCH) == pytest.approx((least, greatest), abs=6e-5)


# A tap maker's technical page (2017), figure 2, for 1/4-20: basic .2175, H1 to .2180, H2 to .2185, H3 to .2190, H5 to .2200,
# L1 down to .2170. Read off the axis of the figure.
@pytest.mark.parametrize(
    ("mark", "least", "greatest"),
    [("L1", 0.2170, 0.2175), ("H1", 0.2175, 0.2180), ("H2", 0.2180, 0.2185), ("H3", 0.2185, 0.2190), ("H5", 0.2195, 0.2200)],
)  # fmt: skip
def test_the_numbers_of_a_quarter_inch_tap_follow_each_other(
    mark: str, least: float, greatest: float
) -> None:
    found = tap_limits(thread(INCH / 4, INCH / 20, "iso"), mark)
    assert (found.low / INCH, found.high / INCH) == pytest.approx((least, greatest), abs=6e-5)
