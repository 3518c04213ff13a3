"""A book that is begun and a demonstration that is laid out: all of it or nothing, and the next try works."""

from __future__ import annotations

import errno
import fcntl
import itertools
import os
import subprocess
import sys
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path
from typing import Any

import pytest

from library.book.starting import NotStarted, new_book
from library.demo import BOOK, lay_out
from library.files.disk import Disk
from library.files.lay_folder import clear_unfinished, lay_folder
from library.files.staging import is_staging

FILES = {"ours.toml": b"schema = 1\n" * 3, "cards/2026/one.toml": b"schema = 1\n", ".gitignore": b".lock\n"}
TEXTS = {name: data.decode() for name, data in FILES.items()}


def held(folder: Path) -> dict[str, str] | None:
    """Every name in a folder and in those below, with the text of the files; nothing where there is no folder."""
    if not folder.exists():
        return None
    return {
        str(path.relative_to(folder)): path.read_text() for path in folder.rglob("*") if path.is_file()
    } | {str(path.relative_to(folder)): "" for path in folder.rglob("*") if not path.is_file()}


WHOLE = TEXTS | {"cards": "", "cards/2026": ""}


def prepared(top: Path, state: str) -> Path:
    """A folder to lay into, in one of the states that it may be in."""
    folder = top / "deep" / "book" if state == "absent, with the one above it" else top / "book"
    if state in ("empty", "with something in it"):
        folder.mkdir()
    if state == "with something in it":
        (folder / "read-me.txt").write_text("mine\n")
    return folder


def left_over(top: Path) -> list[str]:
    return [path.name for path in top.rglob("*") if is_staging(path.name)]


@pytest.fixture(autouse=True)
def _a_disk_that_is_not_waited_for(monkeypatch: pytest.MonkeyPatch) -> None:
    """Hundreds of folders need not last."""
    monkeypatch.setattr(os, "fsync", lambda descriptor: None)


STATES = ("absent", "absent, with the one above it", "empty", "with something in it")


@pytest.mark.parametrize(
    ("state", "number", "every"),
    [("absent", errno.ENOSPC, 1), ("with something in it", errno.ENOSPC, 5)]
    + [
        pytest.param(state, number, 1, marks=pytest.mark.depth)
        for state in STATES
        for number in (errno.ENOSPC, errno.EACCES)
    ],
)
def test_when_any_operation_fails_all_is_there_or_nothing_is_changed(
    tmp_path: Path, failing_disk: Callable[[int, int], Any], state: str, number: int, every: int
) -> None:
    refused = set()
    for failing in itertools.count(1, every):
        top = tmp_path / str(failing)
        top.mkdir()
        folder = prepared(top, state)
        before, above = held(folder), sorted(path.name for path in top.iterdir())
        disk = failing_disk(failing, number)
        try:
            lay_folder(folder, FILES, disk)
        except OSError:
            refused.add(disk.steps[failing - 1])
            assert held(folder) == before
            assert sorted(path.name for path in top.iterdir()) == above
        else:
            clear_unfinished(folder)
            assert held(folder) == WHOLE | (before or {})
            assert left_over(top) == []
        if len(disk.steps) < failing:
            break
    if (state, number) == ("empty", errno.EACCES):
        assert refused == set(), "what is not allowed beside the folder is done in it"
    elif every == 1:
        assert refused >= {"mkdir", "open", "write", "fsync", "close"}
    else:
        assert len(refused) > 1


class Killed(BaseException):
    """No operation works any more, not even those that clear up: the disk is left as ``kill -9`` leaves it."""


def killed_at(watched_disk: Any, step: int) -> Any:
    def killing(count: int, name: str) -> None:
        # What a killed program had open is closed by the system.
        if count >= step and name != "close":
            raise Killed

    return watched_disk(killing, chunk=20)


def lay_until(folder: Path, disk: Any) -> bool:
    """Lay the files; says whether it came to its end."""
    try:
        lay_folder(folder, FILES, disk)
    except Killed:
        return False
    return True


@pytest.mark.parametrize(
    ("state", "every"),
    [("absent, with the one above it", 3), ("empty", 5)]
    + [pytest.param(state, 1, marks=pytest.mark.depth) for state in STATES[:3]],
)
def test_killed_at_any_step_the_folder_is_as_it_was_or_whole_and_the_next_try_clears_up(
    tmp_path: Path, watched_disk: Any, state: str, every: int
) -> None:
    seen = []
    for step in itertools.count(1, every):
        top = tmp_path / str(step)
        top.mkdir()
        folder = prepared(top, state)
        before = held(folder)
        ended = lay_until(folder, killed_at(watched_disk, step))
        found = held(folder)
        assert found in (before, WHOLE)
        seen.append(found)
        if found == before:
            assert {path.name for path in new_book(folder)} == {"ours.toml", ".gitignore", ".gitattributes"}
            assert left_over(top) == []
        if ended:
            break
    assert before in seen
    assert WHOLE in seen


@pytest.mark.parametrize("every", [7, pytest.param(1, marks=pytest.mark.depth)])
def test_killed_at_any_step_in_a_folder_that_cannot_be_moved_the_next_try_takes_back_what_was_laid(
    tmp_path: Path, watched_disk: Any, every: int
) -> None:
    half = 0
    for step in itertools.count(1, every):
        folder = prepared(tmp_path / str(step), "absent")
        folder.mkdir(parents=True)
        (folder / "read-me.txt").write_text("mine\n")
        if lay_until(folder, killed_at(watched_disk, step)):
            break
        there = {path: (folder / path).read_bytes() for path in FILES if (folder / path).exists()}
        half += bool(there) and there != FILES
        with suppress(NotStarted):
            new_book(folder)
        assert left_over(folder) == []
        assert (folder / "read-me.txt").read_text() == "mine\n"
        if there == FILES:
            assert held(folder) == WHOLE | {"read-me.txt": "mine\n"}
        else:
            assert not (folder / "cards").exists()
            assert (folder / "ours.toml").read_text().startswith("# This shop's own book")
    assert half > 0


def test_what_a_person_wrote_into_a_half_laid_folder_is_never_taken_away(tmp_path: Path) -> None:
    folder = tmp_path / "book"
    ready = folder / ".heelclear-0011223344556677.placing"
    ready.mkdir(parents=True)
    (ready / "ours.toml").write_text("schema = 1\n# a remark\n")
    (ready / "more.toml").write_text("schema = 1\n")
    (folder / "ours.toml").write_text("schema = 1\n# changed\n")
    with pytest.raises(NotStarted, match="There is a book"):
        new_book(folder)
    assert held(folder) == {"ours.toml": "schema = 1\n# changed\n"}


def test_a_folder_that_another_program_is_filling_stays(tmp_path: Path) -> None:
    busy, left = (tmp_path / f".heelclear-{digit * 16}.laying" for digit in "ab")
    for path in (busy, left):
        path.mkdir()
        (path / "ours.toml").write_text("schema = 1\n")
    held_open = os.open(busy, os.O_RDONLY)
    fcntl.flock(held_open, fcntl.LOCK_EX)
    try:
        new_book(tmp_path / "book")
        assert left_over(tmp_path) == [busy.name]
    finally:
        os.close(held_open)


def test_a_left_over_that_is_a_link_is_not_followed(tmp_path: Path) -> None:
    (tmp_path / "mine").mkdir()
    (tmp_path / "mine" / "work.toml").write_text("schema = 1\n")
    (tmp_path / ".heelclear-0011223344556677.laying").symlink_to(tmp_path / "mine")
    new_book(tmp_path / "book")
    assert (tmp_path / "mine" / "work.toml").exists()


def test_in_the_folder_where_one_stands_the_files_are_seen(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    new_book(Path())
    assert sorted(os.listdir()) == [".gitattributes", ".gitignore", "ours.toml"]


def test_an_empty_folder_keeps_its_rights_and_a_link_to_it_stays_a_link(tmp_path: Path) -> None:
    (tmp_path / "book").mkdir(mode=0o750)
    (tmp_path / "link").symlink_to("book")
    new_book(tmp_path / "link")
    assert (tmp_path / "link").is_symlink()
    assert (tmp_path / "book").stat().st_mode & 0o7777 == 0o750
    assert (tmp_path / "book" / "ours.toml").exists()


def test_a_folder_that_the_system_does_not_let_move_gets_its_files_all_the_same(tmp_path: Path) -> None:
    class NoMoving(Disk):
        """A disk on which a folder is the top of another disk."""

        def replace(self, new: Path, old: Path) -> None:
            if old == tmp_path / "book":
                raise OSError(errno.EBUSY, os.strerror(errno.EBUSY))
            super().replace(new, old)

    (tmp_path / "book").mkdir()
    lay_folder(tmp_path / "book", FILES, NoMoving())
    assert held(tmp_path / "book") == WHOLE
    assert left_over(tmp_path) == []


def test_the_demonstration_is_whole_or_not_there_when_the_disk_is_full(
    tmp_path: Path, failing_disk: Callable[[int, int], Any]
) -> None:
    whole = {path.relative_to(BOOK) for path in BOOK.rglob("*.toml")}
    refused = 0
    for failing in range(3, 60, 7):
        folder = tmp_path / str(failing) / "yard"
        try:
            lay_out(folder, failing_disk(failing, errno.ENOSPC))
        except NotStarted as error:
            assert "is full. Make room on it" in str(error)
            assert not folder.parent.exists()
            refused += 1
        else:
            assert {path.relative_to(folder) for path in folder.rglob("*.toml")} == whole
        assert left_over(tmp_path) == []
    assert refused > 3


@pytest.mark.depth
def test_kills_at_random_moments_leave_no_half_laid_book() -> None:
    script = Path(__file__).with_name("laying_killed.py")
    done = subprocess.run(
        [sys.executable, str(script), "200"], capture_output=True, text=True, timeout=600, check=False
    )
    print(done.stdout)
    assert done.returncode == 0, done.stdout + done.stderr
    assert done.stdout.startswith("200 rounds")
