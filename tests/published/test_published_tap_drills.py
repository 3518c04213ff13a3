"""Tap drills of the metric coarse threads against a second table."""

from __future__ import annotations

import pytest

from geometry.sentences import Kind
from library.threads import all_threads, find_threads
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


# BS 84 as a public document of thread data quotes it: the internal minor diameter may be 0.2 p larger than basic, and 0.004,
# 0.005 or 0.007 in beside for 26, 24 to 22, and 20 and fewer threads to the inch. ISO 228-1, by a thread gauge maker's wall
# chart: 11 threads to the inch, least and greatest minor diameter 0.640 mm apart.
@pytest.mark.parametrize("series", ["whitworth", "british-fine", "british-pipe-parallel"])
def test_every_british_tap_drill_lies_within_the_limits_of_its_minor_diameter(series: str) -> None:
    rows = [row for row in all_threads().values() if row.series.id == series]
    assert all(row.tap_drill for row in rows)
    for row in rows:
        count = float(row.threads_per_inch.split()[0])
        basic = read(row.minor_diameter, Kind.LENGTH).number
        beside = 0.004 if count >= 26 else 0.005 if count >= 22 else 0.007
        wide = 0.640 if (series, count) == ("british-pipe-parallel", 11.0) else (0.2 / count + beside) * 25.4
        drill = read(row.tap_drill, Kind.LENGTH).number
        # A page prints 45.5 mm for G 1-1/2, a hundredth over the greatest.
        assert basic - 0.015 <= drill <= basic + wide + 0.02, row.id


# ISO 7-1: below the gauge plane the thread is the smaller by a sixteenth of how deep it goes, so that a straight hole of the minor
# diameter there, or a few tenths of a millimetre less, leaves all of it. Common practice, no source, for how far.
def test_every_british_taper_thread_has_a_drill_at_the_minor_diameter_of_its_gauge_plane() -> None:
    rows = [row for row in all_threads().values() if row.series.id == "british-pipe-taper"]
    assert len(rows) == 15
    for row in rows:
        over = read(row.tap_drill, Kind.LENGTH).number - read(row.minor_diameter, Kind.LENGTH).number
        assert -0.4 <= over <= 0.3, (row.id, over)


# A thread gauge maker's wall chart, unified threads, 8 TPI: nominal size in inches, and least minor diameter.
UN_8 = [(1.125, 0.9900), (1.25, 1.1150), (1.375, 1.2400), (1.5, 1.3650), (1.625, 1.4900), (1.75, 1.6150), (1.875, 1.7400),
        (2, 1.8650), (2.25, 2.1150), (2.5, 2.3650), (2.75, 2.6150), (3, 2.8650), (3.5, 3.3650), (4, 3.8650), (4.5, 4.3650)]  # fmt: skip


def test_the_series_of_eight_threads_is_that_of_the_wall_chart() -> None:
    rows = [row for row in all_threads().values() if row.series.id == "unified-8"]
    for row, (size, minor) in zip(rows, UN_8, strict=True):
        assert read(row.diameter, Kind.LENGTH).number / 25.4 == pytest.approx(size)
        assert read(row.minor_diameter, Kind.LENGTH).number / 25.4 == pytest.approx(minor, abs=6e-4)
        assert read(row.tap_drill, Kind.LENGTH).number / 25.4 == pytest.approx(size - 0.125)
    assert [one.title for one in find_threads("1-1/2 8-UN")] == ["1-1/2-8 UN"]


# ASME B1.1, as engineering pages give it: from 1/4 in on, and from 4 to 32 threads to the inch, the minor diameter of a 2B
# thread may be 0.25 p - 0.4 p^2 over the least one, in inches.
@pytest.mark.parametrize(("count", "rows"), [(12, 34), (16, 41)])
def test_the_drills_of_the_constant_pitch_series_lie_within_the_minor_diameter_of_2b(
    count: int, rows: int
) -> None:
    found = [row for row in all_threads().values() if row.series.id == f"unified-{count}"]
    assert len(found) == rows
    wide = 25.4 * (0.25 / count - 0.4 / count**2)
    for row in found:
        basic = read(row.minor_diameter, Kind.LENGTH).number
        assert basic < read(row.tap_drill, Kind.LENGTH).number < basic + wide, row.id


# The tap drills that an open table of holes has for fine threads of the same pitch: 12 and 16 threads to the inch.
@pytest.mark.parametrize(
    "name", ["1-12 UNF", "1-1/8-12 UNF", "1-1/4-12 UNF", "1-3/8-12 UNF", "1-1/2-12 UNF", "3/4-16 UNF"]
)
def test_a_fine_thread_of_the_same_pitch_is_drilled_alike(name: str) -> None:
    (row,) = find_threads(name)
    less = read(row.diameter, Kind.LENGTH).number - read(row.tap_drill, Kind.LENGTH).number
    constant = next(
        one
        for one in all_threads().values()
        if one.threads_per_inch == row.threads_per_inch and one.series.id.startswith("unified-1")
    )
    ours = read(constant.diameter, Kind.LENGTH).number - read(constant.tap_drill, Kind.LENGTH).number
    assert less == pytest.approx(ours, abs=0.3)
