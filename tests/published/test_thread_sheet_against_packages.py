"""Screw threads against the tables of two packages that other people keep."""

from __future__ import annotations

import math

import pytest
from pybosl2.parts.screws import ScrewSpec
from pybosl2.parts.threading import iso_threaded_rod
from screw_thread_lib import Assembly
from screw_thread_lib.data import ASME_M_6g6H_dict, ASME_UN_2A2B_dict

from geometry.calculations import calculation
from geometry.evaluate import run


def thread(diameter: float, count: float) -> dict[str, float]:
    """The basic sizes of a 60 degree thread with so many threads in one unit of length."""
    return dict(run(calculation("screw-thread"), {"diameter": diameter, "pitch": 1 / count}).outputs)


@pytest.mark.parametrize("name", sorted(ASME_UN_2A2B_dict))
def test_unified_threads_have_the_limits_of_asme_b1_1(name: str) -> None:
    row = ASME_UN_2A2B_dict[name]
    found = thread(row["dbsc"] * 25.4, row["n"] / 25.4)
    # Basic sizes are the least material limits of the nut: ASME B1.1 prints D2 to 0.0001 and D1 to 0.001 in.
    assert found["pitch_diameter"] / 25.4 == pytest.approx(row["D2min"], abs=1.0e-4)
    assert found["internal_minor_diameter"] / 25.4 == pytest.approx(row["D1min"], abs=1.0e-3)


@pytest.mark.parametrize("name", sorted(ASME_M_6g6H_dict))
def test_metric_threads_have_the_limits_of_asme_b1_13(name: str) -> None:
    row = ASME_M_6g6H_dict[name]
    found = thread(row["dbsc"] * 25.4, row["n"] / 25.4)
    # ASME B1.13M, appendix in inches, to five places.
    assert found["pitch_diameter"] / 25.4 == pytest.approx(row["D2min"], abs=2.0e-5)
    assert found["internal_minor_diameter"] / 25.4 == pytest.approx(row["D1min"], abs=2.0e-5)


@pytest.mark.parametrize(
    ("database", "name"),
    [("ASME_UN_2A2B", name) for name in sorted(ASME_UN_2A2B_dict)]
    + [("ASME_M_6g6H", name) for name in sorted(ASME_M_6g6H_dict)],
)
def test_heights_and_diameters_are_those_that_the_strength_package_works_with(
    database: str, name: str
) -> None:
    theirs = Assembly.from_database(database, name)
    found = thread(theirs.dbsc * 25.4, theirs.n / 25.4)
    assert found["sharp_height"] / 25.4 == pytest.approx(theirs.H, rel=1e-12)
    assert found["pitch_diameter"] / 25.4 == pytest.approx(theirs.d2bsc, rel=1e-12)
    assert found["internal_minor_diameter"] / 25.4 == pytest.approx(theirs.D1bsc, rel=1e-12)


COARSE = {
    3: 2.5, 4: 3.3, 5: 4.2, 6: 5.0, 8: 6.8, 10: 8.5, 12: 10.2, 14: 12.0, 16: 14.0, 18: 15.5, 20: 17.5, 22: 19.5,
    24: 21.0, 27: 24.0, 30: 26.5, 33: 29.5, 36: 32.0, 39: 35.0, 42: 37.5, 48: 43.0,
}  # fmt: skip
"""Tap drills of the metric coarse series, ISO 2306, by diameter alone."""


@pytest.mark.parametrize("diameter", sorted(COARSE))
def test_the_coarse_pitches_of_the_package_give_the_printed_tap_drills(diameter: int) -> None:
    found = thread(diameter, 1 / ScrewSpec(f"M{diameter}").pitch)
    assert found["tap_drill_diameter"] == pytest.approx(COARSE[diameter], abs=0.0501)


@pytest.mark.parametrize("diameter", sorted(COARSE))
def test_the_thread_that_the_package_draws_is_as_deep_as_ours(diameter: int) -> None:
    pitch = ScrewSpec(f"M{diameter}").pitch
    profile = iso_threaded_rod(d=diameter, l=4 * pitch, pitch=pitch).__dict__["_profile"]
    depth = profile.depth_abs(pitch)
    found = thread(diameter, 1 / pitch)
    # The package draws the basic profile, which is the internal thread: 5/8 H deep.
    assert found["internal_thread_depth"] == pytest.approx(depth, rel=1e-12)
    assert found["internal_minor_diameter"] == pytest.approx(diameter - 2 * depth, rel=1e-12)
    assert depth == pytest.approx(5 / 8 * math.sqrt(3) / 2 * pitch)
