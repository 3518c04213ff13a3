"""A disk that is full in earnest: a small one in memory, filled but for a few blocks, and each command run on it."""

from __future__ import annotations

import os
import subprocess
import sys
import tomllib
from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest

from tests.tui.commands.ways_of_writing import BEGUN_FROM, CLOSED, DRAFT, TABLE

pytestmark = pytest.mark.depth

COMMANDS: Mapping[str, list[str]] = {
    "demo": ["demo", "other"],
    "new-book": ["new-book", "other"],
    "card-new": ["card-new", "--entry", BEGUN_FROM, "tool.size=12 mm"],
    "card-set": ["card-set", DRAFT, "tool.size=9 mm"],
    "card-import": ["card-import", "table.csv"],
    "card-learn": ["card-learn", CLOSED, "land_relief_angle"],
    "trust": ["trust", "yard"],
    "cards": ["cards", "--csv"],
    "show": ["show", BEGUN_FROM],
}
FREE = (0, 1, 2, 3, 5, 8, 12)
"""Blocks of the disk that are left."""


class SmallDisk:
    """A disk of six megabytes with the ferry yard's book on it, in git.

    Args:
        top: the folder it is at.
    """

    def __init__(self, top: Path) -> None:
        self.top = top
        names = ("AUTHOR", "COMMITTER")
        git = {f"GIT_{one}_{what}": "yard@here" for one in names for what in ("NAME", "EMAIL")}
        source = str(Path(__file__).parents[3])
        self.env = {"PATH": os.environ["PATH"], "HOME": str(top), "PYTHONPATH": source, **git}
        assert self.run("demo", "yard").returncode == 0
        assert self.run("--library", "yard", "card-set", CLOSED, "--reopen").returncode == 0
        (top / "table.csv").write_text(TABLE, encoding="utf-8")
        for words in (["init", "-q"], ["add", "-A"], ["commit", "-qm", "begun"]):
            subprocess.run(["git", "-C", str(top / "yard"), *words], check=True, env=self.env)

    def run(self, *words: str) -> subprocess.CompletedProcess[str]:
        command = [sys.executable, "-m", "tui", *words]
        return subprocess.run(
            command, capture_output=True, text=True, check=False, cwd=self.top, env=self.env
        )

    def fill(self, free: int) -> None:
        status = os.statvfs(self.top)
        with (self.top / "fill").open("wb", buffering=0) as file:
            for _ in range(status.f_bavail - free):
                file.write(bytes(status.f_bsize))
        assert os.statvfs(self.top).f_bavail <= free

    def held(self) -> dict[str, bytes]:
        files = (path for path in (self.top / "yard").rglob("*.toml") if path.is_file())
        return {str(path): path.read_bytes() for path in files}

    def left(self) -> list[str]:
        return [
            path.name
            for path in self.top.rglob(".heelclear-*")
            if path.suffix in {".saving", ".laying", ".writing"}
        ]


@pytest.fixture
def small_disk(tmp_path: Path) -> Iterator[SmallDisk]:
    top = tmp_path / "disk"
    top.mkdir()
    mounted = subprocess.run(
        ["mount", "-t", "tmpfs", "-o", "size=6m", "tmpfs", str(top)], capture_output=True, check=False
    )
    if mounted.returncode:
        pytest.skip("a disk can only be mounted by root, and not everywhere")
    try:
        yield SmallDisk(top)
    finally:
        subprocess.run(["umount", "-l", str(top)], check=True)


@pytest.mark.parametrize("name", COMMANDS)
def test_on_a_full_disk_nothing_is_torn_or_lost_and_it_is_done_when_there_is_room(
    name: str, small_disk: SmallDisk
) -> None:
    words = ["--library", "yard", *COMMANDS[name]]
    for free in FREE:
        before = small_disk.held()
        small_disk.fill(free)
        done = small_disk.run(*words)
        print(name, free, done.returncode, done.stderr.strip()[-150:])
        assert "Traceback" not in done.stderr
        assert small_disk.left() == []
        if done.returncode:
            assert "Make room" in done.stderr
            assert "other folder" not in done.stderr
            assert small_disk.held() == before
            assert not (small_disk.top / "other").exists()
        else:
            assert before.keys() <= small_disk.held().keys()
            for raw in small_disk.held().values():
                tomllib.loads(raw.decode())
        (small_disk.top / "fill").unlink()
        if done.returncode == 0:
            break
    assert done.returncode or small_disk.left() == []
    if done.returncode:
        assert small_disk.run(*words).returncode == 0
