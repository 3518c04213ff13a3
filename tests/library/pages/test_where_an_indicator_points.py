"""Every reading between edge and heel says where the indicator points, so that a grinder can set it up."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from geometry.calculation import Given
from geometry.calculations import calculation, calculation_names
from geometry.evaluate import run
from geometry.quantities import quantity
from library.calc.answer import Answer, answer
from library.pages.answer import answer_page
from library.pages.as_text import as_text
from library.pages.brief_answer import brief_answer
from library.pages.reader import Reader
from library.pages.station_table import read_points, read_where, stations
from library.units.show import show
from library.units.system import METRIC
from tests.each import each

CONE = {"surface": "cone", "included_angle": "82", "diameter": "31.75", "land_width": "5"}

WAYS = {"at the axis", "square to surface", "along the axis"}

NO_INDICATOR = frozenset({"contact_length", "flank_gap"})
"""What is worked out beside a reading: how far the contact wanders, and how far a flank stands off."""


def typed(inputs: Mapping[str, Given]) -> dict[str, str]:
    """A sample of a calculation as a person types it."""
    kinds = {key: quantity(key).kind for key in inputs}
    return {
        key: one
        if isinstance(one, str)
        else ", ".join(
            show(number, kinds[key], METRIC) for number in (one if isinstance(one, tuple) else (one,))
        )
        for key, one in inputs.items()
        if one is not None
    }


def answered(name: str, **texts: str) -> Answer:
    found = answer(calculation(name), texts)
    assert found.result is not None, found.issues
    return found


def with_readings() -> list[str]:
    return [name for name in calculation_names() if run(calculation(name), calculation(name).sample).stations]


@each("name", with_readings())
def test_each_column_of_readings_says_its_way_at_its_head_or_over_all(name: str) -> None:
    found = answered(name, **typed(calculation(name).sample))
    assert found.result is not None
    table = stations(found.result.stations, METRIC, name=read_where(found), points=read_points(found))
    assert table is not None
    over, _, *heads = table.heading
    keys = list(found.result.stations[0].readings)
    for key, head in zip(keys, heads, strict=True):
        assert key in NO_INDICATOR or any(way in head for way in WAYS) or any(way in over for way in WAYS)
    if len({way for way in WAYS for head in heads if way in head}) > 1:
        assert not over, "one way over readings that have several"


def test_the_readings_of_a_cone_stand_by_their_ways_and_that_at_the_axis_comes_first() -> None:
    # Derived: 5 mm of arc x tan 8 deg is .703 square to the cone; over cos 41 at the axis, over sin 41 along it.
    found = answered("cone-relief", **CONE, relief_angle="8")
    for page in (answer_page(found, None, METRIC), brief_answer(found, None, METRIC, Reader(80))):
        text = as_text(page, Reader(80))
        head = next(line for line in text.splitlines() if "drop at the" in line)
        assert head.split() == ["turned", "drop", "at", "the", "drop", "square", "drop", "along"]
        assert "18.05 0.931 0.703 1.071" in " ".join(text.split())
    assert "Indicator drop at the heel, at the axis" in as_text(answer_page(found, None, METRIC), Reader(80))


@pytest.mark.parametrize(
    ("chosen", "first"), [("square", "drop square to the surface"), ("along-the-axis", "drop along the axis")]
)
def test_an_indicator_that_points_otherwise_is_told_at_the_head_of_its_own_readings(
    chosen: str, first: str
) -> None:
    found = answered(
        "relief-drop", **CONE, relief_angle="8", relief_form="eccentric", indicator_points=chosen
    )
    assert found.result is not None
    table = stations(found.result.stations, METRIC, points=read_points(found))
    assert table is not None
    assert table.heading[2] == f"{first} mm"
