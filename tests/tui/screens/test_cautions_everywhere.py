"""Two lines of cautions on every screen that shows something to grind or set, and one key to all of them in full."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

import pytest

from library.book.opening import open_book
from library.cards.job import Job
from library.demo import lay_out
from tests.examples import every_third_at_once
from tui.app import Heelclear
from tui.session import Session

AtTheYard = Callable[..., AbstractAsyncContextManager[Any]]

WAYS = {
    "entry": ["bronze spi", "<enter>"],
    "calculator": ["bronze spi", "<f2>"],
    "card": ["<f3>", "T-12-3", "<enter>"],
    "sheet": ["<f3>", "T-12-3", "<f7>", "<enter>"],
    "batch": ["<f3>", "<ctrl+t>", "<ctrl+t>", "<f8>", "plan", "<enter>"],
    "compare": ["bronze", "<ctrl+t>", "<ctrl+t>", "<ctrl+k>"],
}
"""How to get to each of them from the book."""

CARRIED_TO_IT = {"sheet", "batch"}
"""What is read while grinding, so that it begins with what belongs there."""

AT_THE_WHEEL = "goggles | no gloves | guard on"

SIZES = ((60, 20), (120, 36))


@pytest.fixture
def at_the_yard(tmp_path: Path, hands_on: Any) -> AtTheYard:
    """Opens the program on the invented book."""
    shop = tmp_path / "ferry-yard"
    lay_out(shop)

    def opened(size: tuple[int, int]) -> AbstractAsyncContextManager[Any]:
        return hands_on(  # type: ignore[no-any-return]
            Heelclear(Session(), lambda: open_book(shop), shop, tmp_path / "state"), shop, size
        )

    return opened


@pytest.mark.parametrize("where", every_third_at_once(WAYS))
async def test_the_most_dangerous_comes_first_and_f4_has_all_in_full(
    where: str, at_the_yard: AtTheYard
) -> None:
    async with at_the_yard((80, 24)) as hands:
        await hands.do(*WAYS[where])
        assert where == hands.app.screen.WHERE
        for size in SIZES:
            await hands.resize(*size)
            first = AT_THE_WHEEL if where in CARRIED_TO_IT else "under marked speed | ring wheel"
            assert f"CAUTION  {first}" in hands.shown(), size
        await hands.resize(80, 200)
        await hands.do("<f4>")
        assert hands.app.screen.WHERE == "cautions"
        shown = " ".join(hands.shown().split())
        assert "Never run a wheel faster than the speed marked on it." in shown
        assert "Before a wheel is mounted, look for cracks and chips" in shown


async def test_a_card_tells_the_cautions_of_all_its_calculations(at_the_yard: AtTheYard) -> None:
    async with at_the_yard((80, 200)) as hands:
        await hands.do(*WAYS["card"])
        job: Job = hands.app.screen.form.job
        # Mounting is a caution of the speed of the wheel alone; no family and no entry has it.
        assert "mounting" in {one.id for one in job.cautions}
        shown = await hands.do("<f4>")
        assert "Flanges, blotters and fit" in shown


async def test_each_step_of_a_card_shows_the_cautions_of_what_is_done_there(at_the_yard: AtTheYard) -> None:
    at_the_wheel = ("goggles", "no gloves", "guard on", "stand aside", "draw dust off", "no blue edge")
    first = {
        "Tool": ("under marked speed", "ring wheel", "fit blotters", "isolate first"),
        "Received": ("goggles", "no gloves", "mind edges"),
        "Wanted": ("goggles", "no gloves", "mind edges"),
        "Set": at_the_wheel,
        "After": at_the_wheel,
    }
    async with at_the_yard((80, 24)) as hands:
        await hands.do("jobber plain", "<ctrl+f>")
        for step, words in first.items():
            assert f"[{step}" in hands.shown()
            above, below = _warned(hands)
            assert " | ".join((above, below)).startswith(f"CAUTION  {' | '.join(words)}"), step
            await hands.do("<down>", "<down>")
            assert _warned(hands) == [above, below], step
            await hands.do("<ctrl+n>")


def _warned(hands: Any) -> list[str]:
    """The two lines of cautions, without the blanks before and behind their words."""
    lines = hands.shown().splitlines()
    first = next(at for at, line in enumerate(lines) if line.startswith("CAUTION"))
    return [line.strip() for line in lines[first : first + 2]]


@pytest.mark.parametrize("where", ["sheet", "batch"])
async def test_the_cautions_of_what_is_carried_to_the_machine_stay_while_it_scrolls(
    where: str, at_the_yard: AtTheYard
) -> None:
    async with at_the_yard((80, 24)) as hands:
        await hands.do(*WAYS[where])
        above = _warned(hands)
        assert "".join(hands.shown()).count("CAUTION") == 1
        await hands.do("<pagedown>")
        assert "above: PgUp" in hands.shown()
        assert _warned(hands) == above


@pytest.mark.parametrize(("of", "typed", "title"), [
    ("set-ups", "drill", "HOLD"),
    ("troubles", "squeals", "CURE"),
    ("troubles", "how they fail: reamers", "FAILS"),
])  # fmt: skip
async def test_what_tells_how_to_grind_has_cautions_and_f4_has_them_in_full(
    of: str, typed: str, title: str, at_the_yard: AtTheYard
) -> None:
    async with at_the_yard((80, 24)) as hands:
        await hands.do("<f8>", of, "<enter>", typed, "<enter>")
        assert title in hands.shown()
        assert f"CAUTION  {AT_THE_WHEEL}" in hands.shown()
        await hands.resize(80, 200)
        await hands.do("<f4>")
        assert "Before you grind" in hands.shown()
        assert "Eyes" in hands.shown()


async def test_a_thread_has_no_cautions_of_grinding(at_the_yard: AtTheYard) -> None:
    async with at_the_yard((80, 24)) as hands:
        await hands.do("<f8>", "threads of the shop", "<enter>", "m12", "<enter>")
        assert hands.app.screen.WHERE == "own-table"
        assert "CAUTION" not in hands.shown()
