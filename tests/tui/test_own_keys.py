"""The user's key file: what it changes, and that no mistake in it stops the program."""

from __future__ import annotations

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


def test_a_file_that_cannot_be_read_is_a_problem(tmp_path: Path) -> None:
    (tmp_path / "keys.toml").mkdir()
    assert "cannot be read" in read_keys(tmp_path / "keys.toml").problems[0]
