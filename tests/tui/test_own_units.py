"""Millimetres or inches from one start to the next; nothing that lies in the way keeps the program from starting."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from library.units.system import Display
from tui import first_steps as first_steps_module
from tui.own_units import FILE, remember_units, remembered_units, units_not_read
from tui.screens.findings import FindingsScreen
from tui.session import Session


def test_what_was_left_last_is_there_at_the_next_start(tmp_path: Path) -> None:
    state = tmp_path / "not" / "there"
    assert remembered_units(state) == "mm"
    remember_units(state, "in")
    assert remembered_units(state) == "in"
    remember_units(state, "mm")
    assert remembered_units(state) == "mm"
    assert [one.name for one in state.iterdir()] == [FILE]


@pytest.mark.parametrize("raw", [b"", b"inches", b"\xff\xfe", b"in" * 100_000, b"IN\n"])
def test_whatever_else_stands_in_the_file_is_millimetres(tmp_path: Path, raw: bytes) -> None:
    (tmp_path / FILE).write_bytes(raw)
    assert remembered_units(tmp_path) == "mm"


def test_a_folder_a_pipe_and_a_link_in_its_place_are_passed_over(tmp_path: Path) -> None:
    def link(path: Path) -> None:
        path.symlink_to("/dev/zero")

    made: tuple[Callable[[Path], None], ...] = (os.mkdir, os.mkfifo, link)
    for number, make in enumerate(made):
        state = tmp_path / str(number)
        state.mkdir()
        make(state / FILE)
        assert remembered_units(state) == "mm"
        remember_units(state, "in")
        assert not [one for one in state.iterdir() if one.name != FILE]


@pytest.mark.parametrize(
    ("make", "kind"), [(os.mkdir, "a folder"), (os.mkfifo, "a pipe")], ids=["folder", "pipe"]
)
def test_what_is_no_file_is_told_among_the_problems(
    tmp_path: Path, make: Callable[[Path], None], kind: str
) -> None:
    assert units_not_read(tmp_path) == ()
    make(tmp_path / FILE)
    (told,) = units_not_read(tmp_path)
    assert f"This is {kind}, not a file" in told.wrong
    assert told.place.file == tmp_path / FILE
    session = Session(own_problems=(told,))
    assert session.problem_count() == 1
    assert FindingsScreen(session).issues() == [told]


def test_a_unit_that_was_left_is_no_problem(tmp_path: Path) -> None:
    remember_units(tmp_path, "in")
    assert units_not_read(tmp_path) == ()
    assert units_not_read(tmp_path / FILE / "below a file") == ()


def test_steps_that_cannot_be_read_or_written_down_keep_nobody_waiting(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / first_steps_module.FILE)
    steps = first_steps_module.first_steps(tmp_path)
    assert tuple(steps.left) == first_steps_module.STEPS
    steps.put_away()
    assert steps.left == ()


def test_the_key_for_the_units_leaves_them_for_the_next_start() -> None:
    kept: list[str] = []
    session = Session(display=Display("in"), keep_units=kept.append)
    session.switch_units()
    session.switch_units()
    assert kept == ["mm", "in"]
