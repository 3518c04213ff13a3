"""Limits of taps against the tables of their makers and of the standard."""

from __future__ import annotations

import pytest
from screw_thread_lib.data.ASME import ASME_M_6g6H_dict, ASME_UN_2A2B_dict

from geometry.thread.form import thread
from geometry.thread.nut_limits import grade_tolerance, nut_limits
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


# A tap maker's technical page (2020), taps for the classes of unified threads: diameter, threads per inch, pitch diameter, least,
# greatest of 2B, greatest of 3B, in inches.
UNIFIED = [
    (0.164, 32, 0.1437, 0.1475, 0.1465), (0.190, 32, 0.1697, 0.1736, 0.1726), (0.25, 20, 0.2175, 0.2224, 0.2211),
    (0.25, 28, 0.2268, 0.2311, 0.2300), (0.3125, 18, 0.2764, 0.2817, 0.2803), (0.375, 16, 0.3344, 0.3401, 0.3387),
    (0.5, 13, 0.4500, 0.4565, 0.4548), (0.5, 20, 0.4675, 0.4731, 0.4717), (0.625, 11, 0.5660, 0.5732, 0.5714),
    (0.75, 10, 0.6850, 0.6927, 0.6907),
]  # fmt: skip


@pytest.mark.parametrize(("diameter", "count", "least", "second", "third"), UNIFIED)
def test_a_unified_thread_has_the_printed_limits(
    diameter: float, count: int, least: float, second: float, third: float
) -> None:
    made = thread(diameter * INCH, INCH / count, "iso")
    for word, greatest in (("2B", second), ("3B", third)):
        found = nut_limits(made, word)
        assert (found.low / INCH, found.high / INCH) == pytest.approx((least, greatest), abs=1e-9)


@pytest.mark.parametrize("name", sorted(ASME_UN_2A2B_dict))
def test_class_2b_is_that_of_the_package(name: str) -> None:
    """ASME B1.1-2019 in screw-thread-lib, the one special thread with the nine pitches of its series."""
    row = ASME_UN_2A2B_dict[name]
    pitch = INCH / row["n"]
    held = 9 * pitch if row["series"] == "UNS" else None
    found = nut_limits(thread(row["dbsc"] * INCH, pitch, "iso"), "2B", held)
    assert (found.low / INCH, found.high / INCH) == pytest.approx((row["D2min"], row["D2max"]), abs=1.01e-4)
    assert found.high / INCH == pytest.approx(row["D2max"], abs=1e-9)


# Another maker's catalogue (2022), unified fine threads: diameter in inches, threads per inch, greatest pitch diameter of 2B and
# of 3B, in mm.
FINE = [
    (0.060, 80, 1.377, 1.361), (0.073, 72, 1.689, 1.674), (0.086, 64, 1.996, 1.979), (0.099, 56, 2.291, 2.273),
    (0.112, 48, 2.581, 2.560), (0.125, 44, 2.880, 2.860), (0.138, 40, 3.180, 3.157), (0.164, 36, 3.800, 3.777),
    (0.190, 32, 4.409, 4.384), (0.216, 28, 5.004, 4.976), (0.25, 28, 5.870, 5.842), (0.3125, 24, 7.371, 7.341),
    (0.375, 24, 8.961, 8.931), (0.4375, 20, 10.424, 10.391), (0.5, 20, 12.017, 11.981), (0.5625, 18, 13.520, 13.482),
    (0.625, 18, 15.110, 15.072), (0.75, 16, 18.184, 18.143),
]  # fmt: skip


@pytest.mark.parametrize(("diameter", "count", "second", "third"), FINE)
def test_a_fine_thread_has_the_limits_that_are_printed_in_millimetres(
    diameter: float, count: int, second: float, third: float
) -> None:
    made = thread(diameter * INCH, INCH / count, "iso")
    found = [nut_limits(made, word).high for word in ("2B", "3B")]
    # A ten-thousandth of an inch, in which the limits are rounded.
    assert found == pytest.approx([second, third], abs=0.0031)


# The same catalogue, metric threads of class 6H: diameter, pitch, greatest pitch diameter.
@pytest.mark.parametrize(
    ("diameter", "pitch", "greatest"),
    [
        (1.6, 0.35, 1.458), (2, 0.4, 1.830), (2.5, 0.45, 2.303), (3, 0.5, 2.775), (3.5, 0.6, 3.222), (4, 0.7, 3.663),
        (4.5, 0.75, 4.131), (5, 0.8, 4.605), (6, 1, 5.500), (7, 1, 6.500), (8, 1.25, 7.348), (10, 1.5, 9.206),
        (12, 1.75, 11.063), (14, 2, 12.913), (16, 2, 14.913), (18, 2.5, 16.600),
    ],
)  # fmt: skip
def test_a_metric_thread_of_class_6h_has_the_printed_limit(
    diameter: float, pitch: float, greatest: float
) -> None:
    assert nut_limits(thread(diameter, pitch, "iso"), "6H").high == pytest.approx(greatest, abs=1.01e-3)


# The first maker's catalogue (2021), section 9: diameter, pitch, tolerance 5H and 6H in micrometres.
@pytest.mark.parametrize(
    ("diameter", "pitch", "fifth", "sixth"),
    [
        (1.4, 0.3, 60, 75), (1.6, 0.35, 67, 85), (2, 0.4, 71, 90), (2.5, 0.45, 75, 95), (3, 0.5, 80, 100),
        (3.5, 0.6, 90, 112), (4, 0.7, 95, 118), (5, 0.8, 100, 125), (6, 1, 118, 150), (8, 1.25, 125, 160),
    ],
)  # fmt: skip
def test_grades_5_and_6_are_the_printed_ones(
    diameter: float, pitch: float, fifth: float, sixth: float
) -> None:
    found = [grade_tolerance(float(diameter), float(pitch), grade) * 1000 for grade in (5, 6)]
    assert found == pytest.approx([fifth, sixth])


@pytest.mark.parametrize("name", sorted(ASME_M_6g6H_dict))
def test_class_6h_and_position_g_are_those_of_the_package(name: str) -> None:
    """ASME B1.13-2005 in screw-thread-lib. What g takes off the screw, G adds to the nut."""
    row = ASME_M_6g6H_dict[name]
    made = thread(row["dbsc"] * INCH, INCH / row["n"], "iso")
    assert nut_limits(made, "6H").high / INCH == pytest.approx(row["D2max"], abs=3e-5)
    taken_off = made.pitch_diameter - row["d2max"] * INCH
    assert nut_limits(made, "6G").low - made.pitch_diameter == pytest.approx(taken_off, abs=0.0015)
    assert nut_limits(made, "6G").width == pytest.approx(nut_limits(made, "6H").width)
