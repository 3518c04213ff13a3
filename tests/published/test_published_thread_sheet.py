"""Screw threads and tap drills against printed tables."""

from __future__ import annotations

import pytest

from geometry.calculation import Given
from geometry.calculations import calculation
from geometry.evaluate import run


def thread(diameter: float, pitch: float, form: str = "iso") -> dict[str, float]:
    return dict(
        run(calculation("screw-thread"), {"diameter": diameter, "pitch": pitch, "thread_form": form}).outputs
    )


# ISO 724, basic dimensions of fine-pitch threads as printed: d, P, d2, d3, D1.
ISO_724 = [
    (8, 1, 7.35, 6.773, 6.917),
    (8, 0.75, 7.513, 7.08, 7.188),
    (10, 1.25, 9.188, 8.466, 8.647),
    (10, 1, 9.35, 8.773, 8.917),
    (12, 1.5, 11.026, 10.16, 10.376),
    (16, 1.5, 15.026, 14.16, 14.376),
    (20, 2, 18.701, 17.546, 17.835),
    (20, 1.5, 19.026, 18.16, 18.376),
]


@pytest.mark.parametrize(("d", "pitch", "d2", "d3", "minor"), ISO_724)
def test_metric_diameters_are_those_of_iso_724(
    d: float, pitch: float, d2: float, d3: float, minor: float
) -> None:
    found = thread(d, pitch)
    # The table is printed to three places, with the last one rounded or cut.
    assert found["pitch_diameter"] == pytest.approx(d2, abs=1e-3)
    assert found["external_minor_diameter"] == pytest.approx(d3, abs=1e-3)
    assert found["internal_minor_diameter"] == pytest.approx(minor, abs=1e-3)


# Whitworth form, BS 84, depth of thread in inches for so many threads to the inch.
@pytest.mark.parametrize(("count", "depth"), [(20, 0.0320), (12, 0.0534), (8, 0.0800), (26, 0.0246)])
def test_whitworth_depths_are_those_of_bs_84(count: int, depth: float) -> None:
    found = thread(25.4, 25.4 / count, "whitworth")
    assert found["internal_thread_depth"] / 25.4 == pytest.approx(depth, abs=5e-5)
    assert found["external_thread_depth"] == found["internal_thread_depth"]


# ISO 228-1 (55 degree form): threads per inch, major, pitch and minor diameter, as tabulated in the data of
# the package bd-warehouse 0.4.0 (Apache-2.0), iso_228_1.csv.
ISO_228 = [
    (28, 7.723, 7.142, 6.561),
    (28, 9.728, 9.147, 8.566),
    (19, 13.157, 12.301, 11.445),
    (19, 16.662, 15.806, 14.950),
    (14, 20.955, 19.793, 18.631),
    (14, 22.911, 21.749, 20.587),
    (14, 26.441, 25.279, 24.117),
    (14, 30.201, 29.039, 27.877),
    (11, 33.249, 31.770, 30.291),
    (11, 37.897, 36.418, 34.939),
    (11, 41.910, 40.431, 38.952),
    (11, 47.803, 46.324, 44.845),
    (11, 53.746, 52.267, 50.788),
    (11, 59.614, 58.135, 56.656),
    (11, 113.030, 111.551, 110.072),
    (11, 163.830, 162.351, 160.872),
]


@pytest.mark.parametrize(("count", "major", "pitch_diameter", "minor"), ISO_228)
def test_pipe_threads_are_those_of_iso_228(
    count: int, major: float, pitch_diameter: float, minor: float
) -> None:
    found = thread(major, 25.4 / count, "whitworth")
    assert found["pitch_diameter"] == pytest.approx(pitch_diameter, abs=1e-3)
    assert found["internal_minor_diameter"] == pytest.approx(minor, abs=1e-3)
    assert found["external_minor_diameter"] == pytest.approx(minor, abs=1e-3)


# Metric coarse threads and their tap drills, ISO 2306 and the charts that follow it: d, P, drill.
TAP_DRILLS = [
    (3, 0.5, 2.5), (4, 0.7, 3.3), (4.5, 0.75, 3.7), (5, 0.8, 4.2), (6, 1, 5.0), (8, 1.25, 6.8), (9, 1.25, 7.8),
    (10, 1.5, 8.5), (11, 1.5, 9.5), (12, 1.75, 10.2), (14, 2, 12.0), (16, 2, 14.0), (18, 2.5, 15.5),
    (20, 2.5, 17.5), (22, 2.5, 19.5), (24, 3, 21.0), (27, 3, 24.0), (30, 3.5, 26.5), (33, 3.5, 29.5),
    (36, 4, 32.0), (39, 4, 35.0), (42, 4.5, 37.5), (45, 4.5, 40.5), (48, 5, 43.0), (52, 5, 47.0),
    (56, 5.5, 50.5), (60, 5.5, 54.5), (64, 6, 58.0), (68, 6, 62.0),
]  # fmt: skip


@pytest.mark.parametrize(("d", "pitch", "drill"), TAP_DRILLS)
def test_tap_drills_by_the_rule_are_those_of_the_chart(d: float, pitch: float, drill: float) -> None:
    # The chart takes the nearest drill in tenths, so M8 has 6.8 for 6.75 and M12 has 10.2 for 10.25.
    assert thread(d, pitch)["tap_drill_diameter"] == pytest.approx(drill, abs=0.0501)


@pytest.mark.parametrize(("pitch", "drill"), [(1.0, 6.0), (0.5, 6.5)])
def test_m7_coarse_and_fine_by_the_rule(pitch: float, drill: float) -> None:
    # Worked examples of a drill and tap size chart: M7 x 1 and M7 x 0.5, major diameter less pitch.
    assert thread(7.0, pitch)["tap_drill_diameter"] == drill


# Thread percentage of cut threads, tap maker's technical formulas: (major less minor) x TPI / 0.01299, and the
# same over the pitch in mm. Examples 1/4-20 with 0.201 in and M8 x 1.25 with 6.80 mm; an 8.5 mm drill for M10 x 1.5
# is given as 77 percent by a calculator that uses the same rule.
@pytest.mark.parametrize(
    ("diameter", "pitch", "hole", "percent"),
    [(6.35, 1.27, 0.201 * 25.4, 75.44), (8.0, 1.25, 6.80, 73.90), (10.0, 1.5, 8.5, 77.0)],
)
def test_percentages_by_the_tap_makers_rule(
    diameter: float, pitch: float, hole: float, percent: float
) -> None:
    values: dict[str, Given] = {"diameter": diameter, "pitch": pitch, "drilled_diameter": hole}
    found = run(calculation("screw-thread"), values).outputs["thread_percent"]
    # The rule's 0.01299 has four figures.
    assert found == pytest.approx(percent, abs=0.05)


def test_a_full_thread_by_the_standard_is_1_08253_pitches_deep_on_the_diameter() -> None:
    # Hole size for a percentage of full thread after ASME B1.1 and ISO 68: 1.08253 P stands for 5H/8 a side.
    values: dict[str, Given] = {
        "diameter": 10.0,
        "pitch": 1.5,
        "thread_percent": 100.0,
        "full_thread": "five-eighths",
    }
    found = run(calculation("screw-thread"), values).outputs["drilled_diameter"]
    assert found == pytest.approx(10.0 - 1.08253 * 1.5, abs=1e-5)
