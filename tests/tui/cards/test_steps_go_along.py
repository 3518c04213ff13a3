"""The diameters of a stepped tool go along from the find line into the calculator and onto a card."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from typing import Any

import pytest

AtTheYard = Callable[..., AbstractAsyncContextManager[Any]]

STEPS = "step drill steel 6, 10, 14"


async def test_all_diameters_of_a_step_drill_go_along_as_the_line_says(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        assert "6, 10 and 14 mm go along" in await hands.type(f"{STEPS} mm")
        await hands.press("f2")
        form = hands.app.screen.page.form
        assert form.texts()["diameter"] == "6, 10, 14 mm"
        assert form.whose("diameter") == "nominal"
        await hands.press("f9", "ctrl+f")
        assert hands.app.screen.form.card.tool.size == "6, 10, 14 mm"


async def test_they_count_for_nothing_where_the_tool_is_measured(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do(f"{STEPS} mm", "<f2>", "<f2>", "a new tool measured", "<enter>")
        form = hands.app.screen.page.form
        assert form.sheet.name == "measured-tool"
        assert form.is_nominal("diameter")
        assert "diameter" not in form.given()


async def test_a_list_without_a_unit_is_as_large_in_the_other_unit(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        assert f"Find: {STEPS} mm" in await hands.do(STEPS, "<f5>")
        await hands.press("ctrl+f")
        assert hands.app.screen.form.card.tool.size == "6, 10, 14 mm"


@pytest.mark.parametrize("found", ["counterbore 6, 10 mm", "hand tap plain steel 6, 10 mm"])
async def test_a_tool_without_steps_takes_one_size_as_before(at_the_yard: AtTheYard, found: str) -> None:
    async with at_the_yard() as hands:
        assert "  10 mm goes along" in await hands.type(found)


@pytest.mark.parametrize("sought", [f"{STEPS} mm", "reamer steel 12 mm"])
async def test_the_pane_beside_calls_a_size_that_was_only_sought_nominal_and_not_typed(
    at_the_yard: AtTheYard, sought: str
) -> None:
    async with at_the_yard((160, 48)) as hands:
        await hands.type(sought)
        await hands.until(lambda: not hands.app.screen.is_behind)
        beside = [
            line for line in hands.lines() if " mm   " in line and ("Diameter" in line or "size" in line)
        ]
        assert any(line.rstrip().endswith("nominal") for line in beside), beside
        assert not any(line.rstrip().endswith("typed") for line in beside)
