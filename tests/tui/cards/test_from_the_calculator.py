"""A card that is begun from the calculator: what the tool was found with is the tool's, and was measured by nobody."""

from __future__ import annotations

from typing import Any

import pytest

from geometry.calculations import calculation
from library.book.model import Book, Family
from library.cards.job import work_out
from library.cards.model import Card, Tool, Wanted
from library.units.system import METRIC
from tui.view.card_from_calculator import with_typed


@pytest.mark.parametrize(
    ("find", "tool", "thread"),
    [
        ("end mill 12 mm 4 flutes", ("12 mm", "4"), ""),
        ("reamer 1/2 in", ("1/2 in", ""), ""),
        ("drill odd size 9.7 mm", ("9.7 mm", ""), ""),
        ("tap m12", ("", ""), "M12"),
    ],
)
async def test_size_and_flutes_of_the_find_line_are_those_of_the_tool(
    at_the_yard: Any, find: str, tool: tuple[str, str], thread: str
) -> None:
    async with at_the_yard() as hands:
        await hands.type(find)
        await hands.press("f2", "ctrl+f")
        card = hands.app.screen.form.card
        assert (card.tool.size, card.tool.flutes, card.tool.thread) == (*tool, thread)
        assert card.received == {}
        assert all("diameter" not in one.typed for one in card.settings.values())


async def test_a_class_of_the_hole_goes_along_and_is_typed_once(at_the_yard: Any) -> None:
    async with at_the_yard() as hands:
        await hands.type("reamer 12 h7")
        await hands.press("f2", "ctrl+f")
        card = hands.app.screen.form.card
        assert card.tool.size == "12 mm"
        assert card.settings["reamer-size"].typed == {"hole_tolerance": "H7"}


async def test_what_was_typed_over_the_nominal_size_was_measured_and_the_size_stays(at_the_yard: Any) -> None:
    async with at_the_yard() as hands:
        await hands.type("reamer 12 mm")
        await hands.press("f2")
        screen = hands.app.screen
        screen.open_sheet("relief-drop")
        screen.page.form.focus = "diameter"
        await hands.type("11.98")
        await hands.press("ctrl+f")
        card = hands.app.screen.form.card
        assert (card.tool.size, card.received["diameter"]) == ("12 mm", ("11.98 mm",))


async def test_flutes_that_were_typed_in_any_calculation_of_the_tool_are_its_flutes(at_the_yard: Any) -> None:
    async with at_the_yard() as hands:
        await hands.type("end mill 12 mm")
        await hands.press("f2")
        screen = hands.app.screen
        screen.open_sheet("index-moves")
        screen.page.form.focus = "flutes"
        await hands.type("4")
        screen.open_sheet("end-teeth")
        assert screen.page.form.sheet.field("flutes") is None
        await hands.press("ctrl+f")
        assert hands.app.screen.form.card.tool.flutes == "4"


@pytest.mark.parametrize(
    ("name", "wanted", "received"),
    [("cone-relief", "82 deg", ()), ("relief-from-reading", "90 deg", ("82 deg",))],
)
def test_the_angle_of_a_cone_is_what_is_ground_unless_it_was_typed_with_readings(
    name: str, wanted: str, received: tuple[str, ...]
) -> None:
    card = Card(family="countersink", wanted={"included_angle": Wanted("90 deg", "90 deg")})
    found = with_typed(card, "countersink", calculation(name), {"included_angle": "82"}, METRIC)
    assert found.wanted["included_angle"].value == wanted
    assert found.received.get("included_angle", ()) == received


def test_the_new_diameter_of_a_tool_that_is_ground_down_was_measured_by_nobody() -> None:
    texts = {"diameter": "9.7", "body_diameter": "10", "land_width": "3.2"}
    card = with_typed(Card(family="twist-drill"), "twist-drill", calculation("relief-facets"), texts, METRIC)
    assert card.tool == Tool(size="9.7 mm")
    assert card.received == {"land_width": ("3.2 mm",)}
    assert card.settings["relief-facets"].typed == {"body_diameter": "10"}


def test_a_nominal_size_is_the_size_of_the_tool() -> None:
    texts = {"nominal_diameter": "12", "measured_diameter": "12.006"}
    card = with_typed(Card(family="reamer"), "reamer", calculation("reamer-size"), texts, METRIC)
    assert card.tool.size == "12 mm"
    assert card.received == {"diameter": ("12.006 mm",)}


TYPED_OF_A_BEVEL = {
    "surface": "bevel",
    "bevel_angle": "45",
    "bevel_relief_angle": "8 deg",
    "land_width": "4",
    "land_measured_as": "chord",
}


def test_what_was_typed_of_a_surface_goes_along_with_it_and_the_card_grinds_that_one() -> None:
    book = Book({}, {"d-bit": Family("d-bit", "D-bits", kind="reamer", surfaces=("end", "bevel", "land"))})
    begun = Card(family="d-bit", wanted={"end_relief_angle": Wanted("6 deg", "6 deg", "the shop")})
    card = with_typed(begun, "reamer", calculation("relief-drop"), TYPED_OF_A_BEVEL, METRIC, book)
    assert {key: one.value for key, one in card.wanted.items()} == {
        "end_relief_angle": "6 deg",
        "surface": "bevel",
        "bevel_angle": "45 deg",
        "bevel_relief_angle": "8 deg",
    }
    assert card.received == {"land_width": ("4 mm",), "land_measured_as": ("chord",)}
    assert card.settings == {}
    job = work_out(card, book)
    assert job.choice.surface == "bevel"
    inputs = next(one for one in job.steps if one.sheet.name == "relief-drop").answer.inputs
    assert (inputs["surface"].value, inputs["relief_angle"].text) == ("bevel", "8 deg")


def test_a_surface_that_the_tool_has_not_stays_with_its_calculation() -> None:
    book = Book({}, {"reamer": Family("reamer", "Reamers", kind="reamer", surfaces=("bevel", "land"))})
    card = with_typed(
        Card(family="reamer"), "reamer", calculation("relief-drop"), {"surface": "cone"}, METRIC, book
    )
    assert card.wanted == {}
    assert card.settings["relief-drop"].typed == {"surface": "cone"}


@pytest.mark.parametrize("way", [("<ctrl+f>",), ("<f2>", "<ctrl+f>")])
async def test_an_angle_that_no_tool_of_the_book_has_is_wanted_on_the_card_beside_that_of_the_book(
    at_the_yard: Any, way: tuple[str, ...]
) -> None:
    async with at_the_yard() as hands:
        await hands.do("countersink 82 stainless 1/2 in")
        assert "1/2 in and 82 deg go along" in hands.words()
        assert "the first is of 90 deg" in hands.words()
        await hands.do(*way)
        one = hands.app.screen.form.card.wanted["included_angle"]
        assert (one.value, one.book) == ("82 deg", "90 deg")
        await hands.do("<ctrl+n>", "<ctrl+n>")
        assert "Included angle 82 deg" in hands.words()
        assert "why sought with this angle" in hands.words()


async def test_an_angle_that_was_sought_fills_the_calculator_until_it_is_typed_over_or_sought_no_more(
    at_the_yard: Any,
) -> None:
    async with at_the_yard() as hands:
        await hands.do("countersink 82 stainless 1/2 in", "<f2>", "<down>")
        assert "Included angle 82 deg sought" in hands.words()
        assert "sought with this angle; the book has 90 deg" in hands.words()
        await hands.do("<f9>", "<ctrl+u>", "countersink stainless", "<f2>")
        assert "Included angle 90 deg book" in hands.words()
        await hands.do("<f9>", "<ctrl+u>", "countersink 82 stainless", "<f2>")
        while not any(line.startswith("> Included angle") for line in hands.lines()):
            await hands.do("<down>")
        await hands.do("100")
        assert "Included angle 100 typed" in hands.words()
        await hands.do("<f9>", "<f2>")
        assert "Included angle 100 typed" in hands.words()


async def test_what_was_measured_in_any_calculation_of_the_tool_was_received_so(at_the_yard: Any) -> None:
    async with at_the_yard() as hands:
        await hands.do("machine reamer plain steel 20 h7", "<f2>")
        screen = hands.app.screen
        screen.page.form.focus = "measured_diameter"
        await hands.type("20.02")
        screen.open_sheet("reamer-land")
        screen.page.form.focus = "land_width"
        await hands.type(".9")
        screen.open_sheet("wheel-speed")
        await hands.press("ctrl+f")
        card = hands.app.screen.form.card
        assert card.tool.size == "20 mm"
        assert card.received == {"diameter": ("20.02 mm",), "land_width": (".9 mm",)}


async def test_the_nominal_size_comes_back_where_what_was_typed_over_it_is_emptied(at_the_yard: Any) -> None:
    async with at_the_yard() as hands:
        await hands.do("<f5>", "machine reamer plain steel 3/4", "<f2>")
        form = hands.app.screen.page.form
        form.focus = "diameter"
        await hands.type(".7945")
        assert (form.in_hand.text, form.whose("diameter")) == (".7945", "")
        await hands.press("ctrl+u")
        assert (form.in_hand.text, form.whose("diameter")) == ("3/4 in", "nominal")
        await hands.press("ctrl+u")
        assert form.in_hand.text == ""


async def test_it_comes_back_as_nominal_too_where_the_tool_is_measured(at_the_yard: Any) -> None:
    async with at_the_yard() as hands:
        await hands.do("reamer 12 mm", "<f2>")
        hands.app.screen.open_sheet("measured-tool")
        form = hands.app.screen.page.form
        form.focus = "diameter"
        await hands.type("11.98")
        assert form.given()["diameter"] == "11.98"
        await hands.press("ctrl+u")
        assert form.is_nominal("diameter")
        assert "diameter" not in form.given()
