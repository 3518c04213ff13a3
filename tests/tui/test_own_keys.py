"""The user's key file: what it changes, and that no mistake in it stops the program."""

from __future__ import annotations

import os
import socket
from collections.abc import Callable
from pathlib import Path

import pytest

from tui.own_keys import read_keys


def written(folder: Path, text: str) -> Path:
    file = folder / "keys.toml"
    file.write_text(text, encoding="utf-8")
    return file


def test_without_a_file_the_registry_is_in_force(tmp_path: Path) -> None:
    found = read_keys(tmp_path / "keys.toml")
    assert found.problems == ()
    assert found.keys("calculate") == ("f2",)


def test_one_key_and_a_list_of_keys_are_taken(tmp_path: Path) -> None:
    found = read_keys(written(tmp_path, 'glossary = "ctrl+y"\nback = ["f9", "ctrl+x"]\n'))
    assert found.problems == ()
    assert found.keys("glossary") == ("ctrl+y",)
    assert found.keys("back") == ("f9", "ctrl+x")


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("calculate = f3\n", "is no TOML"),
        ("calculate = 3\n", "calculate wants a key"),
        ("calculate = []\n", "calculate wants a key"),
        ('calculate = [""]\n', "calculate wants a key"),
        ("x = " + "[" * 5000, "is no TOML"),
        ("# " + "x" * 70_000, "larger than 64 KiB"),
    ],
)
def test_what_cannot_be_taken_is_a_problem_and_the_usual_keys_stay(
    tmp_path: Path, text: str, said: str
) -> None:
    found = read_keys(written(tmp_path, text))
    assert len(found.problems) == 1
    assert said in found.problems[0]
    assert found.keys("calculate") == ("f2",)


def device(path: Path) -> None:
    path.symlink_to("/dev/zero")


def socket_at(path: Path) -> None:
    with socket.socket(socket.AF_UNIX) as listener:
        listener.bind(str(path))


@pytest.mark.parametrize(
    ("make", "kind"),
    [(os.mkfifo, "a pipe"), (os.mkdir, "a folder"), (device, "a device"), (socket_at, "a socket")],
    ids=["pipe", "folder", "device", "socket"],
)
def test_what_is_no_file_is_said_at_once_and_the_usual_keys_stay(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, make: Callable[[Path], None], kind: str
) -> None:
    monkeypatch.chdir(tmp_path)
    make(Path("keys.toml"))
    found = read_keys(Path("keys.toml"))
    assert found.problems == (
        f"keys.toml is {kind}, not a file; the usual keys are in force. Remove it, or put a text file there.",
    )
    assert found.keys("calculate") == ("f2",)


def test_a_file_that_may_not_be_read_is_a_problem(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    file = written(tmp_path, 'calculate = "f3"\n')

    def refuse(*given: object, **named: object) -> int:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(os, "open", refuse)
    found = read_keys(file)
    monkeypatch.undo()
    assert "keys.toml cannot be read (Permission denied); the usual keys are in force." in found.problems[0]
    assert found.keys("calculate") == ("f2",)


def test_a_link_to_a_file_of_keys_is_followed(tmp_path: Path) -> None:
    (tmp_path / "link.toml").symlink_to(written(tmp_path, 'glossary = "ctrl+y"\n'))
    assert read_keys(tmp_path / "link.toml").keys("glossary") == ("ctrl+y",)
