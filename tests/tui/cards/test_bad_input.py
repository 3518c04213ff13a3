"""What a bench brings that does not add up: each gets its sentence under its line, and the card is kept as a draft."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from math import pi
from typing import Any

import pytest

from library.cards.store import load

AtTheYard = Callable[..., AbstractAsyncContextManager[Any]]

BEGUN = ("bronze spi", "<ctrl+f>", "T-9", "<enter>", "M12", "<enter>", "4", "<ctrl+n>")
"""A tap of four flutes, at what was received."""

ACROSS_A_FLUTE = f"{pi * 12 / 4:.2f}"
"""From edge to edge along the circle of 12 with four flutes; derived."""


async def kept_as_a_draft(hands: Any, sentence: str, step: str) -> None:
    """The sentence stands at the foot while the line is in hand, and under it afterwards; the card is saved all the same."""
    shown = " ".join(hands.shown().split())
    assert sentence in shown
    assert f"{step}!" in shown
    assert (
        sentence in " ".join((await hands.do("<down>")).replace("│", " ").split())
        or f"[{step}" not in hands.shown()
    )
    assert "stays a draft" in await hands.menu("close")
    await hands.do("<ctrl+r>")
    card = hands.app.screen.form.card
    assert not load(hands.shop, card.id).card.done


@pytest.mark.parametrize(
    ("way", "typed", "sentence"),
    [
        ("received.drop", "0.2, 0.2, 0.2", "flute 4 of 4 has no reading"),
        ("received.drop", "0.2, 0.2, , 0.2 mm", "flute 3 of 4 has no reading"),
        pytest.param(
            "received.drop", "0,2 mm", "write the decimal with a point: 0.2 mm", marks=pytest.mark.depth
        ),
        pytest.param("received.land_width", "9.5 mm", "does not fit", marks=pytest.mark.depth),
        pytest.param("received.diameter", "12 furlongs", "unit that is not known", marks=pytest.mark.depth),
        ("wanted.chamfer_relief_angle", "80 deg", "it can be from"),
        pytest.param("after.drop.tolerance", "-0.02 mm", "goes only below", marks=pytest.mark.depth),
        pytest.param("minutes", "a while", "is no time spent", marks=pytest.mark.depth),
        pytest.param("tool.flutes", "four", "is no number of flutes", marks=pytest.mark.depth),
    ],
)
async def test_each_slip_gets_its_sentence(
    at_the_yard: AtTheYard, way: str, typed: str, sentence: str
) -> None:
    async with at_the_yard() as hands:
        await hands.do(*BEGUN)
        form = hands.app.screen.form
        form.go_to("received.diameter")
        await hands.do("12 mm")
        form.go_to(way)
        await hands.do("<ctrl+u>", typed)
        await kept_as_a_draft(hands, sentence, form_step(way))


def form_step(way: str) -> str:
    return {"received": "Received", "wanted": "Wanted", "after": "After", "tool": "Tool"}.get(
        way.split(".", maxsplit=1)[0], "End"
    )


async def test_a_land_wider_than_the_way_from_edge_to_edge_names_that_way(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do(*BEGUN)
        hands.app.screen.form.go_to("received.diameter")
        await hands.do("12 mm", "<down>", "9.5 mm")
        assert f"stand {ACROSS_A_FLUTE} mm apart" in " ".join(hands.shown().split())


async def test_an_angle_beyond_what_the_machine_can_tilt_is_a_stop(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do(*BEGUN, "<f6>", "helix angle", "<enter>", "75 deg")
        form = hands.app.screen.form
        form.go_to("wanted.relief_method")
        await hands.do("i")
        form.go_to("wanted.surface")
        await hands.do("t")
        form.open("wanted", "land_relief_angle")
        await hands.do("6 deg 30 min")
        form.go_to("settings.wheel-tilt")
        shown = " ".join((await hands.do("<f2>")).replace("│", " ").split())
        # tan(tilt) = tan(6.5 deg) tan(75 deg) is a tilt of 23 degrees; the head of the yard's grinder goes to 15.
        assert "STOP" in shown
        assert "goes only to 15.00 deg" in shown
        assert "stays a draft" in await hands.menu("close")


async def test_a_tool_that_is_now_under_size_is_told_until_the_result_says_what_becomes_of_it(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        await hands.do(*BEGUN)
        form = hands.app.screen.form
        form.go_to("settings.size-loss.stock_per_sharpening")
        await hands.do(".3", "<enter>", "11.85")
        form.go_to("after.diameter")
        shown = await hands.do("11.8 mm")
        assert "The tool is now under size: 11.8 mm" in shown
        assert "stays a draft" in await hands.menu("close")
        form.go_to("result")
        await hands.do("scrapped")
        await hands.menu("close")
        assert "is done" in await hands.sure()


async def test_a_wheel_that_must_not_run_so_fast_is_a_stop(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do(*BEGUN)
        form = hands.app.screen.form
        form.go_to("wheel")
        await hands.do("w")
        form.go_to("settings.wheel-speed.rotational_speed")
        shown = await hands.do("<left>")
        assert "5600 rpm" in shown
        assert "STOP" in shown
        assert "stays a draft" in await hands.menu("close")
