"""A word for a work material finds what is called so before what only carries it, and then what is for any."""

from __future__ import annotations

import pytest

from library.search.ranking import ranked
from tests.library.search.finding_in_it import found, shipped


def test_tools_for_any_material_come_behind_those_that_name_it_and_before_other_tools() -> None:
    rows = found("spot drill steel 10")
    own = [row.family == "spotting-drill" for row in rows]
    assert own.index(False) == sum(own)
    assert [row.title for row in rows[:3]] == [
        "Spotting drill, 142 degrees, carbide",
        "Spotting drill, 90 degrees",
        "Spotting drill, 120 degrees",
    ]


def test_tools_for_any_material_are_found_however_the_words_were_typed_one_after_another() -> None:
    before = ranked(shipped(), "steel spot dril").numbers
    assert [*ranked(shipped(), "steel spot drill", before).numbers] == [
        *ranked(shipped(), "steel spot drill").numbers
    ]


@pytest.mark.parametrize(
    ("text", "own", "behind"),
    [
        ("tap alu", "aluminium-wrought", "aluminium-bronze"),
        ("tap alum", "aluminium-wrought", "aluminium-bronze"),
        ("drill alumini", "aluminium-cast", "aluminium-bronze"),
        ("drill bronz", "bronze", "aluminium-bronze"),
        ("drill copp", "copper", "beryllium-copper"),
        ("drill copper", "beryllium-copper", "nickel-alloy"),
        ("drill nick", "nickel-alloy", "aluminium-bronze"),
        ("drill glass", "glass-tile", "composite"),
    ],
)
def test_a_material_comes_before_those_that_only_carry_its_name_in_front(
    text: str, own: str, behind: str
) -> None:
    materials = [row.work_material for row in found(text)]
    assert behind in materials
    assert materials.index(own) < materials.index(behind)
