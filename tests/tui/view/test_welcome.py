"""The first start tells in five lines what to do, and no later one does."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

import pytest

from tui.keys import Keymap, keymap
from tui.program import is_first_start, remember_start
from tui.session import Session
from tui.view.lines import text_of, width_of
from tui.view.welcome import HEIGHT, welcome

Program = Callable[..., AbstractAsyncContextManager[Any]]


@pytest.mark.parametrize("width", [60, 80, 200])
def test_five_lines_under_a_heading_are_told_whole(width: int) -> None:
    lines = welcome(Keymap(), width)
    assert len(lines) == HEIGHT == 6
    assert all(width_of(line) <= width for line in lines)
    text = "\n".join(map(text_of, lines))
    assert "…" not in text
    for words in ("Type a part", "Enter", "F2", "F6", "? explains", "F9 leaves"):
        assert words in text


def test_the_keys_told_are_the_reader_s_own() -> None:
    text = "\n".join(map(text_of, welcome(keymap({"calculate": ("f5",), "units": ("ctrl+y",)}), 80)))
    assert "F5 gives settings and readings" in text


def test_a_start_is_the_first_until_it_is_remembered(tmp_path: Path) -> None:
    state = tmp_path / "state" / "heelclear"
    assert is_first_start(state)
    assert not state.exists()
    remember_start(state)
    assert not is_first_start(state)


def test_a_state_folder_that_cannot_be_written_is_no_fault(tmp_path: Path) -> None:
    (tmp_path / "state").write_text("a file where the folder should be")
    remember_start(tmp_path / "state")
    assert is_first_start(tmp_path / "state")


@pytest.mark.parametrize(
    ("first", "size"), [(True, (80, 24)), (True, (60, 20)), (False, (80, 24)), (True, (80, 12))]
)
async def test_they_stand_under_the_list_on_a_first_start_where_the_list_keeps_room(
    program: Program, first: bool, size: tuple[int, int]
) -> None:
    async with program(size, session=Session(first_start=first)) as hands:
        text = hands.shown()
        assert ("Your first time here" in text) is (first and size[1] >= 20)
        assert "Hand tap, brass" in text
        await hands.press(*"sink")
        assert "Countersink 90 degrees" in hands.shown()
