"""Every way of writing, stopped at each call that changes the disk: killed there, or refused for want of room.

Ways, what is looked at and the table are in ``every_call_run.py``.
"""

from __future__ import annotations

import os
import re
import signal
import subprocess
import sys
import tempfile
from collections.abc import Mapping
from pathlib import Path

import pytest

from library.files.staging import is_staging
from tests.tui.commands.every_call_run import in_a_child
from tests.tui.commands.stopping import Stopping
from tests.tui.commands.ways_of_writing import WAYS
from tui.commands.arguments import COMMANDS
from tui.main import main

ROW = re.compile(r"(?P<name>.+): \d+ calls, stopped at (?P<times>\d+) of (?P<tried>\d+), 0 wrong")

EVERY = os.environ.get("HEELCLEAR_EVERY", "13")
"""Calls from one at which a way is stopped to the next; all of them take a quarter of an hour."""


READING: Mapping[str, list[str]] = {
    "glossary": ["land"],
    "paths": [],
    "doctor": [],
    "completion": ["bash"],
}
"""The commands that are in no way of writing, each with what stands behind it."""


def stopped(how: str, *names: str, at_most: int = 570) -> list[tuple[str, int, int]]:
    """Run them; gives name, how often it was to be stopped and how often it was, of each way; nothing may be wrong."""
    script = Path(__file__).with_name("every_call_run.py")
    done = subprocess.run(
        [sys.executable, str(script), how, *names],
        capture_output=True,
        text=True,
        timeout=at_most,
        check=False,
        env={"PATH": "/usr/bin:/bin", "PYTHONPATH": str(Path(__file__).parents[3]), "HEELCLEAR_EVERY": EVERY},
    )
    print(done.stdout)
    assert done.returncode == 0, done.stdout + done.stderr
    return [
        (row["name"], int(row["tried"]), int(row["times"]))
        for row in map(ROW.fullmatch, done.stdout.splitlines())
        if row
    ]


@pytest.mark.parametrize("words", [["demo", "yard"], ["demo"], ["new-book", "yard"]], ids=" ".join)
def test_a_full_disk_is_told_of_as_that_by_what_makes_a_folder_and_nothing_is_left(
    words: list[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))
    for number in (1, 2, 4, 7):

        def work(number: int = number) -> int:
            Stopping(number, kill=False).begin()
            return main(words)

        code, said = in_a_child(work)
        assert code == 2
        assert "is full. Make room on it, then try again." in said
        assert "other folder" not in said
        assert list(tmp_path.iterdir()) == []


def test_what_a_killed_demonstration_left_among_the_temporary_folders_goes_with_the_next(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))

    def work() -> int:
        Stopping(12, kill=True).begin()
        return main(["demo"])

    assert in_a_child(work)[0] == -signal.SIGKILL
    assert any(is_staging(path.name) for path in tmp_path.rglob("*"))
    assert in_a_child(lambda: main(["demo"]))[0] == 0
    assert not any(is_staging(path.name) for path in tmp_path.rglob("*"))


def test_every_command_is_stopped_as_it_writes_or_is_known_to_write_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    assert COMMANDS.keys() - {name.split()[0] for name in WAYS} == READING.keys()
    for name, words in READING.items():

        def work(name: str = name, words: list[str] = words) -> int:
            counter = Stopping(0, kill=False)
            counter.begin()
            main([name, *words])
            return len(counter.steps)

        code, said = in_a_child(work)
        assert code == 0, f"{name} writes: it belongs into ways_of_writing.py. {said[-300:]}"


@pytest.mark.depth
@pytest.mark.parametrize("how", ["kill", "full", "once"])
def test_every_way_of_writing_is_old_or_new_wherever_it_is_stopped(how: str) -> None:
    told = stopped(how)
    assert {name for name, _, _ in told} == set(WAYS)
    assert all(tried for _, tried, _ in told)
    if how == "kill":
        assert all(tried == times for _, tried, times in told), "it was killed at each call"
