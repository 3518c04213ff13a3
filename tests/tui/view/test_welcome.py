"""The first steps stand in the book, each until it was done once, or until they are put away."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

import pytest

from tui.first_steps import FILE, STEPS, FirstSteps, first_steps
from tui.keys import Keymap, keymap
from tui.session import Session
from tui.view.lines import text_of, width_of
from tui.view.welcome import welcome

Program = Callable[..., AbstractAsyncContextManager[Any]]

HEADING = "First steps; F8 puts them away"


@pytest.mark.parametrize("width", [60, 80, 200])
def test_five_lines_under_a_heading_are_told_whole(width: int) -> None:
    lines = welcome(Keymap(), width, STEPS)
    assert len(lines) == 6
    assert all(width_of(line) <= width for line in lines)
    text = "\n".join(map(text_of, lines))
    assert "…" not in text
    for words in (
        HEADING,
        "Type a part",
        "Enter opens",
        "F2 gives",
        "Ctrl+F begins",
        "F3 lists",
        "F8 is all",
        "? help",
    ):
        assert words in text
    assert "heelclear demo" in text


def test_the_keys_told_are_the_reader_s_own() -> None:
    text = "\n".join(map(text_of, welcome(keymap({"calculate": ("f5",), "units": ("ctrl+y",)}), 80, STEPS)))
    assert "F5 gives settings and readings" in text


def test_a_step_that_was_done_is_told_no_more_and_that_is_kept(tmp_path: Path) -> None:
    state = tmp_path / "state" / "heelclear"
    steps = first_steps(state)
    assert tuple(steps.left) == STEPS
    assert not state.exists()
    steps.did("book", "calculate")
    steps.did("book", "cautions")
    assert tuple(steps.left) == ("open", "card", "menu", "demo")
    assert tuple(first_steps(state).left) == ("open", "card", "menu", "demo")
    first_steps(state).put_away()
    assert tuple(first_steps(state).left) == ()


def test_a_state_folder_that_cannot_be_written_is_no_fault_and_they_are_told_again(tmp_path: Path) -> None:
    (tmp_path / "state").write_text("a file where the folder should be")
    steps = first_steps(tmp_path / "state")
    steps.put_away()
    assert tuple(steps.left) == ()
    assert tuple(first_steps(tmp_path / "state").left) == STEPS


def test_a_file_of_nonsense_is_no_fault(tmp_path: Path) -> None:
    (tmp_path / FILE).write_bytes(b"\xff\x00 open\n")
    assert tuple(first_steps(tmp_path).left) == STEPS[1:]


@pytest.mark.parametrize(
    ("first", "size"), [(True, (80, 24)), (True, (60, 20)), (False, (80, 24)), (True, (80, 12))]
)
async def test_they_stand_under_the_list_where_the_list_keeps_room(
    program: Program, first: bool, size: tuple[int, int]
) -> None:
    async with program(size, session=Session(first_steps=FirstSteps(STEPS if first else ()))) as hands:
        text = hands.shown()
        assert (HEADING in text) is (first and size[1] >= 20)
        assert "Hand tap, brass" in text
        await hands.press(*"sink")
        assert "Countersink 90 degrees" in hands.shown()


async def test_what_each_line_says_is_true_and_done_once_it_is_gone(program: Program, tmp_path: Path) -> None:
    steps = first_steps(tmp_path / "kept")
    async with program(session=Session(first_steps=steps)) as hands:
        for words, keys, where in (
            ("Enter opens the entry", ["enter"], "entry"),
            ("F2 gives settings", ["f2"], "calculator"),
            ("F3 lists all cards", ["f3"], "cards"),
            ("F8 is all that can be done", ["f8"], "menu"),
        ):
            assert words in hands.shown()
            await hands.press(*keys)
            assert where == hands.app.screen.WHERE
            await hands.press("f9")
            assert words not in hands.shown()
        assert "heelclear demo" in hands.shown()
        await hands.menu("first steps")
        assert "put away" in hands.shown()
        assert "heelclear demo" not in hands.shown()
    assert tuple(first_steps(tmp_path / "kept").left) == ()


@pytest.mark.parametrize("has_shop", [True, False])
async def test_the_demo_is_told_of_where_there_is_no_shop_to_try_it_on(
    program: Program, tmp_path: Path, has_shop: bool
) -> None:
    if has_shop:
        (tmp_path / "shop").mkdir()
        (tmp_path / "shop" / "taps.toml").write_text("schema = 1\n")
    async with program(session=Session(first_steps=FirstSteps(STEPS))) as hands:
        assert HEADING in hands.shown()
        assert ("heelclear demo" in hands.shown()) is not has_shop
