"""BA, trapezoidal and Acme threads against tables that others print."""

from __future__ import annotations

import math

import pytest

from geometry.thread.form import thread
from library.threads import all_threads

TRAPEZOIDAL = [
    # An engineering site's table of external metric trapezoidal threads, quoting ISO 2904: minor diameter at most.
    (8, 1.5, 6.2), (9, 1.5, 7.2), (9, 2, 6.5), (10, 1.5, 8.2), (10, 2, 7.5), (11, 2, 8.5), (11, 3, 7.5), (12, 2, 9.5),
    (12, 3, 8.5), (14, 2, 11.5), (14, 3, 10.5), (16, 2, 13.5), (16, 3, 12.5), (16, 4, 11.5),
]  # fmt: skip

BA_IN_INCHES = {
    # A British fastener dealer's page: diameter over the thread, pitch, diameter at the bottom of the thread, in inches.
    10: (0.067, 0.0138, 0.0504), 9: (0.075, 0.0154, 0.0565), 8: (0.086, 0.0169, 0.0657), 7: (0.0982, 0.0189, 0.0753),
    6: (0.11, 0.0209, 0.0849), 5: (0.126, 0.0232, 0.0981), 4: (0.1420, 0.0260, 0.1108),
}  # fmt: skip


@pytest.mark.parametrize(("diameter", "pitch", "minor"), TRAPEZOIDAL)
def test_the_screw_of_a_trapezoidal_thread_has_the_printed_minor_diameter(
    diameter: float, pitch: float, minor: float
) -> None:
    assert thread(diameter, pitch, "trapezoidal").external_minor_diameter == pytest.approx(minor, abs=1e-9)


@pytest.mark.parametrize("number", BA_IN_INCHES)
def test_a_ba_thread_is_that_of_the_page(number: int) -> None:
    over, pitch, bottom = BA_IN_INCHES[number]
    row = all_threads()[f"{number}-ba"]
    assert float(row.diameter.removesuffix(" mm")) / 25.4 == pytest.approx(over, abs=1e-3)
    assert float(row.pitch.removesuffix(" mm")) / 25.4 == pytest.approx(pitch, abs=6e-5)
    assert float(row.minor_diameter.removesuffix(" mm")) / 25.4 == pytest.approx(bottom, abs=7e-4)


@pytest.mark.parametrize("number", range(11))
def test_ba_sizes_are_the_powers_that_they_were_defined_by(number: int) -> None:
    # An encyclopedia's page on these threads: pitch 0.9 to the power of the number, diameter 6 p to the power of 1.2,
    # both rounded to two significant figures.
    row, pitch = all_threads()[f"{number}-ba"], 0.9**number
    assert float(row.pitch.removesuffix(" mm")) == float(f"{pitch:.2g}")
    assert float(row.diameter.removesuffix(" mm")) == float(f"{6 * pitch**1.2:.2g}")


def test_an_acme_thread_of_one_inch_is_that_of_its_standard() -> None:
    # From memory of ASME B1.5: 1-5 Acme has a pitch diameter of 0.9000 in and minor diameters of 0.8000 in (nut) and
    # 0.7800 in (screw).
    made = thread(25.4, 25.4 / 5, "acme")
    found = (made.pitch_diameter, made.internal_minor_diameter, made.external_minor_diameter)
    assert [one / 25.4 for one in found] == pytest.approx([0.9, 0.8, 0.78], abs=1e-12)


@pytest.mark.parametrize(("name", "degrees"), [("ba", 47.5), ("trapezoidal", 30.0), ("acme", 29.0)])
def test_thread_and_groove_are_equally_wide_at_the_pitch_line(name: str, degrees: float) -> None:
    # Derived: the sharp triangle is half a pitch wide at half its height.
    made = thread(20.0, 4.0, name)
    assert made.sharp_height * math.tan(math.radians(degrees / 2)) == pytest.approx(4.0 / 2, rel=1e-12)
