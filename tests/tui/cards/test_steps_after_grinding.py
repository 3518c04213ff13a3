"""A step drill on a card at 80 columns: its steps after grinding, and the cam that the card takes for them."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from typing import Any

AtTheYard = Callable[..., AbstractAsyncContextManager[Any]]

BEGUN = ("step drill 6, 9, 12 mm sheet", "<ctrl+f>")
"""The size goes along from the find line; nothing was calculated before."""

AFTER = ("<ctrl+n>",) * 4
"""From the first step to the one after grinding."""


async def test_a_list_of_diameters_is_named_step_by_step_and_has_no_spread(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do(*BEGUN, *AFTER)
        hands.app.screen.form.go_to("after.diameter")
        await hands.do("5.95, 8.94, 11.93", "<enter>", "0.1")
        await hands.until(lambda: "step 3 11.93 mm" in hands.words())
        for number, text in enumerate(("5.95 mm", "8.94 mm", "11.93 mm"), 1):
            assert f"step {number} {text} PASS" in hands.words()
        assert "spread" not in hands.words()
        assert "under size" not in hands.words()


async def test_another_number_of_diameters_is_asked_about(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do(*BEGUN, *AFTER)
        hands.app.screen.form.go_to("after.diameter")
        await hands.do("5.95, 8.94", "<enter>", "<up>")
        await hands.until(lambda: "there are 2 readings, and the tool has 3 steps" in hands.words())


async def test_a_card_that_was_begun_at_once_watches_the_shoulders_under_the_cam_it_takes(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        await hands.do(*BEGUN)
        form = hands.app.screen.form
        assert form.card.machine
        step = form.job.step("step-relief")
        assert step.provenance["radial_throw"] == "machine"
        assert any(check.state == "watch" for check in step.checks)
        await hands.do("<ctrl+n>", "<ctrl+n>", "<ctrl+n>")
        await hands.until(lambda: "Radial throw" in hands.words())
        assert "Shoulder 1 has" in hands.words()


async def test_each_of_two_shoulders_has_its_swivel_and_no_one_angle_is_asked_for(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        await hands.do("step drill 6, 9, 12 mm spiral", "<ctrl+f>", "<ctrl+n>", "<ctrl+n>", "<ctrl+n>")
        hands.app.screen.form.go_to("settings.step-relief.included_angle")
        await hands.do("118, 90", "<enter>")
        await hands.until(lambda: "Half angle, shoulder 1 59.00 deg" in hands.words())
        assert "Half angle, shoulder 2 45.00 deg" in hands.words()
        labels = [row.label.strip() for row in hands.app.screen.form.rows]
        assert "Included angle" not in labels


async def test_a_step_without_a_reading_is_called_not_measured(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do(*BEGUN, *AFTER)
        hands.app.screen.form.go_to("after.diameter")
        await hands.do("5.95, , 11.93", "<enter>", "0.1")
        await hands.until(lambda: "step 2 not measured" in hands.words())
        assert "OFF" not in hands.words()
