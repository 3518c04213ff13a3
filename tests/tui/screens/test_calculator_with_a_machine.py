"""A calculation tells settings and readings in the divisions of the machine in hand."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

from library.book.opening import open_book

Program = Callable[..., AbstractAsyncContextManager[Any]]

GRINDER = """
[[machine]]
id = "{name}"
title = "{title}"

[machine.graduations.indicator]
division = "{division}"
reads = ["drop"]
"""


async def test_the_only_machine_is_in_hand_and_of_several_the_one_that_is_marked(
    program: Program, tmp_path: Path
) -> None:
    shop = tmp_path / "with-machines"
    shop.mkdir()
    first = GRINDER.format(name="grey", title="The grey grinder", division="0.01 mm")
    second = GRINDER.format(name="new", title="The new grinder", division="0.002 mm")
    (shop / "machines.toml").write_text(f"schema = 1\n{first}")
    keys = ["adjustable", "<f2>", "<f2>", "margin", "<enter>", "12", "<down>", "2"]
    async with program(other=open_book(shop)) as hands:
        await hands.do(*keys)
        assert "div of The grey grinder" in hands.words()
        # A flat at 5 deg on a radius of 6, 2 mm of arc behind the edge: 6 - 6 cos 5 / cos 14.099 = -.16280; derived.
        assert "heel 19.10 -0.163 -16.3" in hands.words()
    (shop / "machines.toml").write_text(f"schema = 1\n{first}{second}")
    async with program(other=open_book(shop)) as hands:
        await hands.do(*keys)
        assert "div of" not in hands.words()
        await hands.do("<f9>", "<f8>", "machines", "<enter>", "new grinder", "<ctrl+t>", "<f9>", "<f2>")
        assert "div of The new grinder" in hands.words()
        assert "heel 19.10 -0.163 -81.4" in hands.words()
