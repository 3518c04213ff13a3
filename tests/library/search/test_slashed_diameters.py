"""Two numbers with a slash, or with x, are steps of a tool where they can be no fraction of an inch."""

from __future__ import annotations

import pytest

from library.search.sizes import taken_apart
from library.search.step_sizes import diameters_in, with_unit_behind


@pytest.mark.parametrize(
    ("sought", "found"),
    [
        ("step drill 8/12 mm", "8, 12 mm"),
        ("step drill 8/12mm", "8, 12 mm"),
        ("step drill 8/12", "8, 12"),
        ("step drill 6/8 mm", "6, 8 mm"),
        ("step drill 6/8/10", "6, 8, 10"),
        ("step drill 6,8,10,12", "6, 8, 10, 12"),
        ("step drill 6,8,10,12 mm", "6, 8, 10, 12 mm"),
        ("step drill 6.5,8,10.5mm", "6.5, 8, 10.5 mm"),
        ("step drill 6.5/9/12.5 mm aluminium", "6.5, 9, 12.5 mm"),
        ("step drill 5/8", ""),
        ("step drill 5/16 in", ""),
        ("step drill 1/4, 3/8 in", "1/4, 3/8 in"),
        ("step drill 90/118 deg", ""),
        ("step drill 1 1/2 in", ""),
        ("step drill 6x8x10", "6, 8, 10"),
        ("subland 6.6 x 11 mm", "6.6, 11 mm"),
        ("subland 5 x 90", ""),
        ("subland m6 x 1", ""),
        ("counterbore 11 x 6.6", ""),
    ],
)
def test_a_slash_parts_steps_where_it_makes_no_fraction_of_an_inch(sought: str, found: str) -> None:
    assert diameters_in(sought) == found


def test_a_fraction_of_an_inch_stays_the_size_that_it_is() -> None:
    size = taken_apart("step drill 5/16 in").size
    assert size is not None
    assert size.text == "5/16 in"


def test_no_search_takes_two_steps_for_a_fraction_of_a_millimetre() -> None:
    found = taken_apart("step drill 8/12 mm")
    assert found.words == ("step", "drill")
    assert found.size is not None
    assert found.size.text == "12 mm"


def test_two_materials_with_a_slash_are_words() -> None:
    assert taken_apart("reamer 304/316").size is None
    assert not taken_apart("reamer 304/316").numbers


def test_the_unit_is_written_behind_steps_that_have_none() -> None:
    assert with_unit_behind("step drill 8/12", "mm") == "step drill 8, 12 mm"
