"""The next number of several, counted from one that need not be among them."""

from __future__ import annotations

import pytest

from geometry.sentences import Kind
from library.units.beside import beside
from library.units.system import Display

DRAWER = ("5 mm", "0.5 mm", "1 mm", "1.6 mm", "0.1 in")


@pytest.mark.parametrize(
    ("now", "step", "found"),
    [
        ("1.6 mm", 1, "0.1 in"),
        ("1.6 mm", -1, "1 mm"),
        ("1.43 mm", 1, "1.6 mm"),
        ("1.43 mm", -1, "1 mm"),
        ("2.54 mm", 1, "5 mm"),
        ("1.6", 1, "0.1 in"),
        ("5 mm", 1, "0.5 mm"),
        ("0.5 mm", -1, "5 mm"),
        ("", 1, "0.5 mm"),
        ("", -1, "5 mm"),
        ("wide", 1, "0.5 mm"),
    ],
)
def test_the_next_one_is_counted_from_what_stands_there_and_goes_round_the_ends(
    now: str, step: int, found: str
) -> None:
    assert beside(DRAWER, now, Kind.LENGTH, step) == found


def test_a_number_without_a_unit_has_that_which_is_worked_in() -> None:
    assert beside(DRAWER, "0.06", Kind.LENGTH, 1, Display("in")) == "1.6 mm"  # 0.06 in is 1.524 mm.
