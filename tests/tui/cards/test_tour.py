"""The README's tour, played key by key in one sitting: what it tells a newcomer to press does what it says."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

import pytest

from library.cards.store import load

AtTheYard = Callable[..., AbstractAsyncContextManager[Any]]

README = Path(__file__).parents[3] / "README.md"
HEADING = "## A tour: the ferry yard's five jobs"

NAMED = {"⏎": "<enter>", "→": "<right>", "←": "<left>", "↑": "<up>", "↓": "<down>"}
_TOKEN = re.compile(r"`([^`]+)`|(Ctrl\+[A-Z]|F[1-9]|[⏎→←↑↓])")
_JOB = re.compile(r"\*\*(?P<name>[^*(]+) \((?P<keys>\d+) keys\)\*\*")

BEFORE_THE_JOB_IS_DONE = ("Back", "The reason")
"""Lines of a job that come after its card is closed begin so; they count as all others do."""


def tour() -> str:
    return README.read_text(encoding="utf-8").partition(HEADING)[2].partition("\n## ")[0]


def jobs() -> list[tuple[str, int, list[str]]]:
    """Name, number of keys told, and the lines of each job."""
    heads = list(_JOB.finditer(tour()))
    ends = [*(head.start() for head in heads[1:]), len(tour())]
    return [
        (
            head["name"],
            int(head["keys"]),
            [line for line in tour()[head.end() : end].splitlines() if line[:2] == "- "],
        )
        for head, end in zip(heads, ends, strict=True)
    ]


def keys_of(line: str) -> list[str]:
    """The keys of a line, as the hands press them."""
    return [
        typed or NAMED.get(name) or f"<{name.lower()}>"
        for typed, name in _TOKEN.findall(line.partition(":")[2])
    ]


def is_after(line: str) -> bool:
    return line[2:].startswith(BEFORE_THE_JOB_IS_DONE)


@pytest.mark.depth
async def test_all_five_jobs_in_one_sitting_end_as_records_with_as_many_keys_as_told(
    at_the_yard: AtTheYard,
) -> None:
    found = jobs()
    assert len(found) == 5
    async with at_the_yard() as hands:
        before = {path.stem for path in (hands.shop / "cards").rglob("*.toml")}
        for name, told, lines in found:
            hands.keys = 0
            for line in lines:
                if not is_after(line):
                    shown = await hands.do(*keys_of(line))
            assert "is done" in shown, name
            for line in filter(is_after, lines):
                await hands.do(*keys_of(line))
            assert hands.keys == told, name
        new = {path.stem for path in (hands.shop / "cards").rglob("*.toml")} - before
        assert len(new) == 5
        assert all(load(hands.shop, one).card.done for one in new)


async def test_the_end_of_the_tour_has_taught_the_book(at_the_yard: AtTheYard) -> None:
    *_, (_, _, lines) = jobs()
    async with at_the_yard() as hands:
        for line in lines:
            await hands.do(*keys_of(line))
        await hands.settle()
        book = tomllib.loads((hands.shop / "ferry-yard.toml").read_text())
        entry = next(one for one in book["entry"] if one["id"] == "ferry-hatch-dowel-drill")
        assert entry["land_relief_angle"]["usual"] == "12 deg"
        assert entry["land_relief_angle"]["note"].startswith("9 polished; card ")
