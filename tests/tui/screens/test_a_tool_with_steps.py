"""The lists of a tool with steps, on the way from one calculation to the next and onto a card."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

import pytest

from library.book.opening import open_book

Program = Callable[..., AbstractAsyncContextManager[Any]]

Shop = Callable[..., AbstractAsyncContextManager[Any]]

GRINDER = """
schema = 1

[[machine]]
id = "grey"
title = "The grey grinder"
throw_per = "turn"
cam_throws = ["1 mm", "1.6 mm"]
"""

STEPS = ("step spiral plain", "<f2>", "<f2>", "all steps", "<enter>", "6, 8, 10", "<enter>", "90, 118 deg")


def to(words: str) -> tuple[str, ...]:
    """To another calculation by words of its title."""
    return ("<f2>", words, "<enter>")


@pytest.fixture
def shop(program: Program, tmp_path: Path) -> Shop:
    """The program with the shipped book and a machine that has two cams."""
    (tmp_path / "shop").mkdir()
    (tmp_path / "shop" / "machines.toml").write_text(GRINDER)
    return lambda **at: program(other=open_book(tmp_path / "shop"), **at)


async def test_a_list_of_angles_that_is_too_long_is_told_before_there_is_a_throw(shop: Shop) -> None:
    async with shop() as hands:
        await hands.do(*STEPS)
        assert "Included angle: One or several, parted by commas." in hands.words()
        assert "FIX" not in hands.shown()
        await hands.do(", 90")
        assert (
            "There are 3 included angles for 2 shoulders; give one for all, or one for each." in hands.words()
        )
        in_hand = next(one for one in hands.shown().splitlines() if one.startswith("> "))
        assert in_hand.startswith("> Included angle")
        assert in_hand.split()[-1] == "fix"


async def test_the_point_takes_the_first_step_and_all_else_the_largest_and_the_list_stays(shop: Shop) -> None:
    async with shop() as hands:
        await hands.do(*STEPS, *to("point of a drill"))
        assert "Diameter 6 mm of list" in hands.words()
        assert "The point stands on the first of 6, 8, 10." in hands.words()
        assert "FIX" not in hands.shown()
        await hands.do(*to("cam out"))
        assert "Diameter 10 mm of list" in hands.words()
        assert "The list 90, 118 deg stays where it was typed; one value is wanted here." in hands.words()
        assert "is not known here" not in hands.words()
        assert "FIX" not in hands.shown()
        await hands.do(*to("all steps"))
        assert "Diameter 6, 8, 10 typed" in hands.words()
        assert "Included angle 90, 118 deg typed" in hands.words()


async def test_one_value_typed_over_a_list_stays_at_the_point_and_the_list_with_the_steps(shop: Shop) -> None:
    async with shop() as hands:
        await hands.do(*STEPS, *to("point of a drill"), "<up>")
        while "> Diameter" not in hands.shown():
            await hands.press("up")
        await hands.do("6.02")
        assert "Diameter 6.02 typed" in hands.words()
        await hands.do(*to("cam out"))
        assert "Diameter 10 mm of list" in hands.words()
        await hands.do(*to("point of a drill"))
        assert "Diameter 6.02 typed" in hands.words()
        await hands.press("f5")
        assert "Diameter 6.02 mm typed" in hands.words()
        await hands.do("<f5>", "<ctrl+u>")
        assert "Diameter 6 mm of list" in hands.words()
        await hands.do(*to("all steps"))
        assert "Diameter 6, 8, 10 mm typed" in hands.words()


async def test_a_list_where_one_value_is_wanted_is_called_a_list(shop: Shop) -> None:
    async with shop() as hands:
        await hands.do("step spiral plain", "<f2>", *to("point of a drill"))
        while "> Diameter" not in hands.shown():
            await hands.press("up")
        await hands.do("6, 8")
        assert "'6, 8' is a list of 2; one value is wanted here" in hands.words()
        await hands.do(*to("all steps"))
        assert "Diameter 6, 8 typed" in hands.words()
        await hands.do(*to("point of a drill"))
        assert "Diameter 6 mm of list" in hands.words()


async def test_right_on_a_throw_brings_the_cams_of_the_machine_in_hand(shop: Shop) -> None:
    async with shop() as hands:
        await hands.do(*STEPS)
        for name in ("Radial throw", "Axial throw"):
            while f"> {name}" not in hands.shown():
                await hands.press("down")
            assert f"{name}: Left and Right bring what the machine has." in hands.words()
            await hands.press("right")
            assert f"{name} 1 mm machine" in hands.words()
            await hands.press("right")
            assert f"{name} 1.6 mm machine" in hands.words()


async def test_a_tool_that_was_found_with_one_size_is_asked_for_all_its_steps(shop: Shop) -> None:
    async with shop() as hands:
        await hands.do("step spiral plain 10 mm", "<f2>")
        assert "> Diameter 10 mm nominal" in hands.words()
        assert "Diameter: Those of all steps from the point up, parted by commas." in hands.words()
        await hands.do("6, 8, 10", "<enter>", "90, 118")
        assert "Diameter 6, 8, 10 typed" in hands.words()
        assert "FIX" not in hands.shown()


async def test_back_at_the_list_what_was_typed_stands_in_the_calculation_beside_it(shop: Shop) -> None:
    async with shop(size=(160, 48)) as hands:
        await hands.do("step spiral plain", "<f2>", "6, 8, 10", "<f2>", "point of a drill", "<enter>", "<f9>")
        assert "Point of a drill" in hands.shown()
        assert "Diameter 6 mm of list" in " ".join(hands.shown().split())


async def test_a_card_begun_at_the_point_has_all_steps_and_the_point_what_was_typed_for_it(
    shop: Shop,
) -> None:
    async with shop() as hands:
        await hands.do(*STEPS, *to("point of a drill"))
        while "> Diameter" not in hands.shown():
            await hands.press("up")
        await hands.do("6.02", "<ctrl+f>", "<ctrl+n>")
        assert "Diameter 6, 8, 10 mm" in hands.words()
        await hands.do("<ctrl+n>", "<ctrl+n>")
        while "Diameter 6.02 mm" not in hands.words():
            before = hands.shown()
            await hands.press("down")
            assert hands.shown() != before
        # The list of angles was typed for the steps and is no angle of the point.
        assert "is a list of" not in hands.words()
