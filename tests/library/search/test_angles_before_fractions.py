"""An angle before a fraction of an inch is no whole number of inches."""

from __future__ import annotations

import pytest

from library.search.sizes import taken_apart


@pytest.mark.parametrize(
    ("typed", "angle", "size"),
    [
        ("single flute countersink 90 1/2 in", "90", "1/2 in"),
        ("spotting drill 90 1/2", "90", "1/2 in"),
        ("120 3/8 countersink", "120", "3/8 in"),
        ("drill 118 1/4", "118", "1/4 in"),
        ('countersink 82 3/4"', "82", "3/4 in"),
        ("drill 135 1 1/4 in", "135", "1 1/4 in"),
    ],
)
def test_an_angle_of_the_tool_before_a_fraction_stays_an_angle(typed: str, angle: str, size: str) -> None:
    sought = taken_apart(typed)
    assert sought.size is not None
    assert (sought.size.text, sought.numbers) == (size, (angle,))


@pytest.mark.parametrize(
    ("typed", "size"),
    [
        ("1 1/2 in drill", "1 1/2 in"),
        ("drill 1-1/2", "1-1/2 in"),
        ("tap 1 1/2-6 unc", "1 1/2-6 UNC"),
        ("reamer 12 1/2 in", "12 1/2 in"),
    ],
)
def test_a_whole_number_that_a_tool_may_have_goes_with_its_fraction(typed: str, size: str) -> None:
    sought = taken_apart(typed)
    assert sought.size is not None
    assert (sought.size.text, sought.numbers) == (size, ())
