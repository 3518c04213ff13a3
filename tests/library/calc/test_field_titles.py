"""A relief that is asked for is told with its surface and its view in every calculation, for either may make another tool."""

from __future__ import annotations

import pytest

from geometry.calculations import calculation, calculation_names
from geometry.quantities import quantity
from geometry.sentences import Kind
from library.calc.field_titles import title_in

VIEWS = ("square to", "along the axis", "along the chord")

ASKED = [
    (name, field.key, surface)
    for name in calculation_names()
    for field in calculation(name).inputs
    if quantity(field.key).kind is Kind.ANGLE and "relief" in field.key
    for surface in (calculation(name).surfaces if calculation(name).field("surface") else ("",))
    # Of a calculation that serves any surface nothing is known before it is chosen.
    if surface or calculation(name).field("surface") is None
]


@pytest.mark.parametrize(("name", "key", "surface"), ASKED)
def test_the_title_of_a_relief_has_its_view(name: str, key: str, surface: str) -> None:
    assert any(view in title_in(calculation(name), key, surface) for view in VIEWS)


def test_the_least_relief_of_steps_says_which_surface_and_which_way() -> None:
    assert (
        title_in(calculation("step-relief"), "least_relief_angle") == "Min. step relief, square to the axis"
    )
    assert title_in(calculation("step-relief"), "shoulder_relief_angle") == (
        "Wanted relief of the shoulder, square to the edge"
    )


def test_a_calculation_without_a_surface_names_that_whose_relief_fills_it() -> None:
    assert title_in(calculation("corner-radius"), "relief_angle") == "Relief of the land, square to the axis"
    assert title_in(calculation("wheel-tilt"), "relief_angle") == "Relief of the land, square to the axis"
