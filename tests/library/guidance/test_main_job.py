"""The calculation that opens for a tool is the one for what its own set-up grinds."""

from __future__ import annotations

import pytest

from library.book.opening import open_book
from library.calc.by_family import sheets_for
from library.cards.job import work_out
from library.cards.starting import from_entry
from library.guidance.main_job import main_job_first


@pytest.mark.parametrize(
    ("entry", "first"),
    [
        # The set-ups of the book: a machine reamer is ground on its bevel, a hand reamer behind its land.
        ("reamer-machine-plain-steel", "bevel-lead"),
        ("reamer-rose", "bevel-lead"),
        ("reamer-hand-plain-steel", "reamer-land"),
        ("reamer-hand-adjustable", "reamer-land"),
        ("reamer-taper-pin", "reamer-land"),
        # The cone outside is the relief of a countersink with a hole through it, and stays as it is.
        ("countersink-zero-flute-90-wood", "cross-hole"),
        ("countersink-multi-flute-90-plain-steel", "cone-relief"),
        # Each step falls away behind its edge by itself, so that the faces alone are ground.
        ("step-drill-straight-flute-sheet-metal", "face-offset"),
        # Ground round to another size first, then flat behind the edge, facet by facet.
        ("twist-drill-ground-down", "relief-facets"),
        ("twist-drill-type-n", "drill-point"),
        # Of a centre drill the lips are ground and never the cone, of a protecting cone alone that cone.
        ("centre-drill-type-a", "drill-point"),
        ("centre-drill-work-4-to-6", "drill-point"),
        ("countersink-protecting-cone", "cone-relief"),
        ("tap-hand-plain-steel", "lead-over-land"),
    ],
)
def test_what_is_ground_on_the_tool_comes_first_and_nothing_is_lost(entry: str, first: str) -> None:
    book = open_book()
    tool = book.entries[entry]
    of_the_family = sheets_for(book.families[tool.family])
    found = main_job_first(book, tool, of_the_family)
    assert found[0].name == first
    assert [one for one in found if one is not found[0]] == [
        one for one in of_the_family if one is not found[0]
    ]


@pytest.mark.parametrize(
    ("entry", "surface"),
    [
        ("twist-drill-ground-down", "land"),
        ("reamer-hand-plain-steel", "land"),
        # The shank is round: nothing is relieved on it, and the point is what is left to be ground.
        ("twist-drill-ground-down-shank", "lip"),
        ("twist-drill-jobber-plain-steel", "lip"),
        ("reamer-machine-plain-steel", "bevel"),
    ],
)
def test_a_card_begins_with_the_surface_that_the_tool_s_own_set_up_grinds(entry: str, surface: str) -> None:
    book = open_book()
    assert work_out(from_entry(book, book.entries[entry]), book).choice.surface == surface
