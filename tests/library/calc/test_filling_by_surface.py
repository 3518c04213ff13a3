"""A relief is filled from the surface that is worked on, and from no other."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest

from geometry.calculations import calculation, calculation_names
from library.book.model import Measure, Value
from library.calc.answer import Answer, answer
from library.calc.report import as_data
from library.calc.surfaces import RELIEF, SECOND_RELIEF, has_surface, title_of
from tests.library.calc.samples import BOOK, degrees, relief_sheet, tool

ANY = relief_sheet()
TAP = tool("tap", degrees("chamfer_relief_angle", 5, 7, 9))
CONE = tool("countersink", degrees("cone_relief_angle", 6, 8, 10), degrees("included_angle", usual=82))
DOWN = tool(
    "twist-drill",
    degrees("lip_relief_angle", usual=12),
    degrees("land_relief_angle", 8, 10, 12),
    degrees("second_land_relief_angle", usual=20),
)


def relief(found: Answer) -> Any:
    return math.degrees(found.inputs["relief_angle"].value) if "relief_angle" in found.inputs else None  # type: ignore[arg-type]


def test_the_first_surface_of_the_family_is_taken_and_its_own_relief_fills() -> None:
    found = answer(ANY, {}, entry=CONE, book=BOOK)
    assert (found.surface, relief(found)) == ("cone", pytest.approx(8))
    one = found.inputs["relief_angle"]
    assert (one.surface, one.view, one.origin) == ("cone", "normal", "entry")
    assert one.recommended is not None
    assert one.recommended.key == "cone_relief_angle"
    assert (found.inputs["included_angle"].surface, found.inputs["included_angle"].view) == ("cone", "")


def test_a_typed_surface_wins_and_takes_the_relief_of_that_surface_and_its_second_facet() -> None:
    found = answer(ANY, {"surface": "land"}, entry=DOWN, book=BOOK)
    assert relief(found) == pytest.approx(10)
    assert found.inputs["secondary_relief_angle"].value == pytest.approx(math.radians(20))
    assert relief(answer(ANY, {}, entry=DOWN, book=BOOK)) == pytest.approx(12)


def test_the_chamfer_of_a_tap_never_fills_its_thread_land() -> None:
    found = answer(ANY, {"surface": "thread-land"}, entry=TAP, book=BOOK)
    assert relief(found) is None
    assert [one.key for one in found.issues] == ["relief_angle"]


def test_a_calculation_for_one_surface_alone_is_filled_from_that_one_without_being_told() -> None:
    thread = relief_sheet("thread-land", asks=False)
    assert relief(answer(thread, {}, entry=TAP, book=BOOK)) is None
    both = tool("tap", degrees("chamfer_relief_angle", usual=7), degrees("thread_relief_angle", usual=2))
    found = answer(thread, {}, entry=both, book=BOOK)
    assert (found.surface, found.surfaces, relief(found)) == ("thread-land", (), pytest.approx(2))


@pytest.mark.parametrize("name", calculation_names())
def test_every_relief_that_is_asked_for_has_a_surface_of_the_book_to_come_from(name: str) -> None:
    sheet = calculation(name)
    reliefs = [one for key in (RELIEF, SECOND_RELIEF) if (one := sheet.field(key)) is not None]
    assert all(has_surface(sheet) or one.fill_from for one in reliefs)


def test_the_order_of_the_calculation_wins_over_that_of_the_family() -> None:
    both = tool("reamer", degrees("bevel_relief_angle", usual=7), degrees("land_relief_angle", usual=5))
    assert answer(ANY, {}, entry=both, book=BOOK).surface == "bevel"
    found = answer(relief_sheet("land", "bevel", "cone"), {}, entry=both, book=BOOK)
    assert (found.surface, found.surfaces) == ("land", ("land", "bevel"))


def test_of_the_familys_surfaces_the_first_is_taken_whose_relief_the_entry_gives() -> None:
    hand = tool("reamer", degrees("land_relief_angle", usual=5))
    assert answer(ANY, {}, entry=hand, book=BOOK).surface == "land"
    assert answer(ANY, {}, entry=tool("reamer"), book=BOOK).surface == "bevel"


def test_a_relief_typed_by_the_key_of_its_surface_says_the_surface() -> None:
    found = answer(ANY, {"cone_relief_angle": "8deg", "second_cone_relief_angle": "15"}, entry=TAP, book=BOOK)
    assert not found.issues
    assert (found.surface, relief(found)) == ("cone", pytest.approx(8))
    assert found.inputs["secondary_relief_angle"].value == pytest.approx(math.radians(15))


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        ({"cone_relief_angle": "8", "land_relief_angle": "6"}, "the surface is cone"),
        ({"surface": "land", "cone_relief_angle": "8"}, "the surface is land"),
        ({"relief_angle": "8", "cone_relief_angle": "8"}, "relief_angle says the same"),
    ],
)
def test_two_reliefs_that_do_not_go_together_are_told(typed: dict[str, str], words: str) -> None:
    found = answer(ANY, typed)
    assert any(words in one.text for one in found.issues)
    assert found.result is None


def test_a_surface_that_the_calculation_does_not_work_on_is_refused_with_those_that_it_does() -> None:
    found = answer(relief_sheet("lip", "land"), {"surface": "cone", "relief_angle": "8"})
    assert [one.text for one in found.issues] == [
        "surface: this calculation does not work on the cone; it can be lip or land."
    ]


def test_without_a_family_the_surface_is_asked_for() -> None:
    (issue, *_) = answer(relief_sheet("lip", "land"), {"relief_angle": "8"}).issues
    assert (issue.key, issue.text) == ("surface", "Give surface, lip or land.")


def test_a_relief_of_the_shop_without_a_surface_fills_nothing_and_keeps_the_shipped_one_out() -> None:
    ours = Value("relief_angle", usual=Measure("6 deg", math.radians(6)), layer="shop")
    found = answer(ANY, {}, entry=replace(TAP, values={**TAP.values, "relief_angle": ours}), book=BOOK)
    assert relief(found) is None
    assert found.issues[0].text.endswith("the shop's book has 6 deg, but not of which surface.")


def test_the_data_of_an_input_has_its_surface_and_view_beside_its_source() -> None:
    given = as_data(answer(ANY, {}, entry=CONE, book=BOOK), BOOK)["inputs"]["relief_angle"]
    assert (given["surface"], given["view"], given["source"]) == ("cone", "normal", "from memory")


def test_the_title_says_the_surface_and_the_plane() -> None:
    assert title_of("relief_angle", "cone") == "Relief of the cone, square to the edge"
    assert title_of("relief_angle", "thread-land") == "Relief of the thread land, square to the axis"
    assert title_of("secondary_relief_angle", "lip") == "Second relief of the lip, along the axis"
    assert title_of("relief_angle", "") == "Relief angle"
