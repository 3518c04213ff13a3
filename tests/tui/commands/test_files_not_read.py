"""An entry that is not in the book may stand in a file that was not read: then that is said, which file, and why."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from tui.main import main

GOOD = '[[entry]]\nid = "good-tap"\nfamily = "tap"\ntitle = "Good tap"\n'


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    folder = tmp_path / "shop"
    folder.mkdir()
    (folder / "good.toml").write_text(f"schema = 1\n{GOOD}")
    return folder


def _spoil(folder: Path, how: str) -> None:
    path = folder / "mine.toml"
    match how:
        case "too large":
            path.write_bytes(b"#" * (1 << 20) + b"\n" + GOOD.encode())
        case "a link to nothing":
            os.symlink(folder / "gone", path)
        case "a pipe":
            os.mkfifo(path)
        case "UTF-16":
            path.write_bytes(GOOD.replace("good", "mine").encode("utf-16"))
        case "no id to be read":
            path.write_text('schema = 1\n[[entry]]\nid = "mine-tap\ntitle = "Mine\n')


@pytest.mark.parametrize(
    ("how", "why"),
    [
        ("too large", "The file is larger than 1 MiB and was not read. Divide it into several files."),
        ("a link to nothing", "This is not there any more, or is a link to nothing."),
        ("a pipe", "This is a pipe or a device, not a file."),
        ("UTF-16", "The file is saved as UTF-16. Save it as UTF-8."),
        ("no id to be read", ":3:6: entry.id: A quote is missing where the text ends."),
    ],
)
@pytest.mark.parametrize("words", [["show", "mine-tap"], ["calc", "relief-drop", "--entry", "mine-tap"],
                                   ["compare", "good-tap", "mine-tap"], ["card-new", "--entry", "mine-tap"]],
                         ids=lambda words: words[0])  # fmt: skip
def test_the_file_that_was_not_read_is_named_with_the_reason(
    shop: Path, capsys: pytest.CaptureFixture[str], words: list[str], how: str, why: str
) -> None:
    _spoil(shop, how)
    assert main([*words, "--library", str(shop)]) == 2
    told = capsys.readouterr().err.splitlines()
    assert "The book has no entry called 'mine-tap'" in told[0]
    (unread,) = [one for one in told if "mine.toml" in one]
    assert unread.startswith("It may stand in what was not read: ")
    assert why in unread


def test_nothing_is_said_of_files_where_all_were_read(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (shop / "odd.toml").write_text(
        'schema = 1\n[[entry]]\nid = "odd"\nfamily = "tap"\ntitle = "Odd"\nrake_angle = "5"\n'
    )
    assert main(["show", "mine-tap", "--library", str(shop)]) == 2
    assert "not read" not in capsys.readouterr().err


def test_of_many_files_a_few_are_told_and_the_rest_are_counted(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    for number in range(9):
        os.symlink(shop / "gone", shop / f"lost-{number}.toml")
    assert main(["show", "mine-tap", "--library", str(shop)]) == 2
    told = capsys.readouterr().err
    assert told.count("It may stand in what was not read: ") == 5
    assert "4 more could not be read; 'heelclear check' tells of all." in told
