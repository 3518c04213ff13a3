"""From a problem of the book to its line in the file."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

import pytest

from library.issue import Place

Program = Callable[[], AbstractAsyncContextManager[Any]]


@pytest.fixture
def wrong(shop: Path) -> Path:
    """A shop's file with twelve problems."""
    lines = "".join(
        f'\n[[entry]]\nid = "odd-{number}"\nfamily = "tap"\ntitle = "Odd {number}"\nrake_angle = "5"\n'
        for number in range(12)
    )
    (shop / "odd.toml").write_text(f"schema = 1\n{lines}")
    return shop / "odd.toml"


async def test_up_and_down_go_from_problem_to_problem_and_bring_each_into_sight(
    program: Program, wrong: Path
) -> None:
    async with program() as hands:
        shown = await hands.menu("problems")
        assert "Problems: 12" in shown
        for number in range(12):
            lines = hands.shown().splitlines()
            (at,) = [place for place, line in enumerate(lines) if line.startswith("> ")]
            assert lines[at] == f"> ERROR  odd-{number}.rake_angle"
            assert "no unit" in lines[at + 1]
            assert any(f"line {7 + 6 * number}, column" in line for line in lines[at + 2 : at + 5])
            await hands.press("down")
        await hands.press("home")
        assert "> ERROR  odd-0.rake_angle" in hands.shown()
        await hands.press("end")
        assert "> ERROR  odd-11.rake_angle" in hands.shown()


async def test_enter_opens_the_file_at_the_line_of_the_chosen_problem(
    program: Program, wrong: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    opened: list[Place] = []
    async with program() as hands:
        monkeypatch.setattr("tui.screens.findings.open_file", lambda app, place: opened.append(place))
        await hands.menu("problems")
        await hands.press("down", "enter")
    assert [(place.file, place.line) for place in opened] == [(wrong, 13)]


async def test_a_problem_of_what_was_shipped_is_reported_and_not_opened(
    program: Program, shipped: Path
) -> None:
    file = shipped / "all.toml"
    file.write_text(file.read_text().replace('usual = "5 deg"', 'usual = "5"'))
    async with program() as hands:
        await hands.menu("problems")
        assert "came with the program and is never changed here" in await hands.press("enter")


async def test_without_a_problem_there_is_nothing_to_open(program: Program) -> None:
    async with program() as hands:
        assert "Nothing is wrong in the files of the book." in await hands.menu("problems")
        await hands.press("down", "up", "end")
        assert "nothing to open" in await hands.press("enter")
