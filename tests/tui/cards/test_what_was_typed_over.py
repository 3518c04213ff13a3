"""What stood in a line of a card before it was typed over is told there and comes back."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from typing import Any

import pytest

AtTheYard = Callable[..., AbstractAsyncContextManager[Any]]

WAY = "wanted.chamfer_relief_angle"


def row(shown: str, label: str) -> str:
    return next(one[2:48] for one in shown.splitlines() if one[2:].startswith(label))


async def test_a_value_that_is_typed_over_is_named_and_the_empty_key_brings_it_back(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        await hands.do("bronze spi", "<ctrl+f>")
        hands.app.screen.form.go_to(WAY)
        shown = await hands.do("9")
        assert "6 deg 30 min stood here; Ctrl+U brings it back." in shown
        assert hands.app.screen.form.card.wanted["chamfer_relief_angle"].value.startswith("9")
        shown = await hands.do("<ctrl+u>")
        assert "stood here" not in shown
        assert hands.app.screen.form.card.wanted["chamfer_relief_angle"].value == "6 deg 30 min"
        assert hands.app.screen.form.in_hand.text == "6 deg 30 min"
        await hands.do("<ctrl+u>")
        assert hands.app.screen.form.in_hand.text == ""


async def test_it_is_still_there_for_whoever_went_on_and_comes_back(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do("bronze spi", "<ctrl+f>")
        hands.app.screen.form.go_to(WAY)
        shown = await hands.do("9", "<down>")
        assert "stood here" not in shown
        assert "6 deg 30 min stood here; Ctrl+U brings it back." in await hands.do("<up>")
        assert "6 deg 30 min" in row(await hands.do("<ctrl+u>"), "Chamfer relief")


async def test_an_empty_line_and_one_that_is_added_to_tell_of_nothing(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        assert "stood here" not in await hands.do("bronze spi", "<ctrl+f>", "T-1", "<down>", "<up>", "2")
        assert hands.app.screen.form.card.tool.name == "T-12"


async def test_after_a_change_of_units_no_number_comes_back_as_another_length(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do("bronze spi", "<ctrl+f>")
        form = hands.app.screen.form
        form.go_to("tool.size")
        await hands.do("12", "<down>", "<up>", "13")
        assert "12 mm stood here" in hands.shown()
        assert "stood here" not in await hands.do("<f5>")


async def test_the_class_of_the_hole_stands_behind_the_size_of_a_reamer(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        shown = await hands.do("reamer 12 h7", "<ctrl+f>")
        assert row(shown, "Size").split() == ["Size", "12", "mm", "H7"]
        hands.app.screen.form.go_to("tool.size")
        shown = await hands.do("<left>")
        assert "The class of its hole, H7, stands in the step Set; typed behind the size" in hands.words()
        assert hands.app.screen.form.card.tool.size == "12 mm"
        assert "mm H" not in row(await hands.do("<ctrl+u>"), "Size")


async def test_the_key_that_ends_the_program_says_so_in_the_row_of_keys(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        assert hands.lines()[-1].rstrip().endswith("F9 End")
        assert (await hands.do("bronze")).rstrip().endswith("F9 Back")
        assert (await hands.do("<f9>")).rstrip().endswith("F9 End")
        assert (await hands.do("<enter>")).rstrip().endswith("F9 Back")


async def test_a_class_that_is_typed_behind_the_size_goes_where_it_is_counted_with(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        await hands.do("reamer steel", "<ctrl+f>")
        form = hands.app.screen.form
        form.go_to("tool.size")
        shown = await hands.do("12 h8", "<down>")
        assert row(shown, "Size").split() == ["Size", "12", "mm", "H8"]
        assert form.card.tool.size == "12 mm"
        assert form.card.settings["reamer-size"].typed == {"hole_tolerance": "H8"}
        inputs = form.job.step("reamer-size").answer.inputs
        assert inputs["nominal_diameter"].value == pytest.approx(12)


async def test_a_size_of_a_tool_that_is_for_no_hole_is_left_as_it_was_typed(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do("jobber drill plain", "<ctrl+f>")
        form = hands.app.screen.form
        form.go_to("tool.size")
        await hands.do("12 h8", "<down>")
        assert form.card.settings == {}


@pytest.mark.parametrize(
    ("find", "measured", "hole", "pitch", "form"),
    [
        ("trapezoidal tap tr 16x4 bronze", "16.5 mm", 12.0, 4.0, "trapezoidal"),
        ("tap m10", "10.1", 8.5, 1.5, "iso"),
    ],
)
async def test_a_tap_that_is_measured_keeps_the_thread_that_it_was_found_with(
    at_the_yard: Any, find: str, measured: str, hole: float, pitch: float, form: str
) -> None:
    async with at_the_yard() as hands:
        await hands.type(find)
        await hands.press("f2")
        hands.app.screen.open_sheet("tap-chamfer")
        hands.app.screen.page.form.focus = "diameter"
        await hands.type(measured)
        await hands.until(lambda: hands.app.screen.page.form.answer.result is not None)
        found = hands.app.screen.page.form.answer
        assert (found.inputs["pitch"].value, found.inputs["thread_form"].value) == (pitch, form)
        assert found.result.checks[0].sentence.parts["hole"].value == pytest.approx(hole)
        hands.app.screen.open_sheet("lead-over-land")
        assert hands.app.screen.page.form.answer.inputs["pitch"].value == pitch
        await hands.press("ctrl+f")
        card = hands.app.screen.form.card
        assert card.received["diameter"][0].startswith(measured)
        step = next(one for one in hands.app.screen.form.job.steps if one.sheet.name == "tap-chamfer")
        assert step.answer.result.checks[0].sentence.parts["hole"].value == pytest.approx(hole)


async def test_another_thread_typed_over_the_one_of_the_find_line_takes_its_place(at_the_yard: Any) -> None:
    async with at_the_yard() as hands:
        await hands.type("tap m10")
        await hands.press("f2")
        hands.app.screen.open_sheet("tap-chamfer")
        hands.app.screen.page.form.focus = "diameter"
        await hands.type("m16")
        await hands.until(lambda: hands.app.screen.page.form.answer.result is not None)
        found = hands.app.screen.page.form.answer
        assert (found.inputs["nominal_diameter"].value, found.inputs["pitch"].value) == (16.0, 2.0)
