"""Several files at once: all new or all old, and a sentence for each that stands in the way."""

from __future__ import annotations

import errno
import itertools
import os
from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import Any

import pytest

from library.files.disk import Disk
from library.files.file_state import fingerprint
from library.files.write_together import NotTogether, ToWrite, write_together

NAMES = ("a.toml", "b.toml", "deep/c.toml")
OLD = {name: f"old = {name!r}\n".encode() for name in NAMES}
NEW = {name: f"new = {name!r}\n".encode() * 3 for name in NAMES}


@pytest.fixture(autouse=True)
def _a_disk_that_is_not_waited_for(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "fsync", lambda descriptor: None)


@pytest.fixture
def book(tmp_path: Path) -> Path:
    (tmp_path / "deep").mkdir()
    fill(tmp_path)
    return tmp_path


def fill(book: Path) -> None:
    for name, data in OLD.items():
        (book / name).write_bytes(data)


def held(book: Path) -> dict[str, bytes]:
    return {
        path.relative_to(book).as_posix(): path.read_bytes()
        for path in book.rglob("*")
        if path.is_file() and path.name != ".lock"
    }


def write(book: Path, disk: Disk | None = None) -> tuple[str, ...]:
    files = [ToWrite(book / name, NEW[name], fingerprint(OLD[name])) for name in NAMES]
    return write_together(files, root=book, disk=disk or Disk())


def test_all_are_saved_and_nothing_is_left_beside_them(book: Path) -> None:
    assert write(book) == ()
    assert held(book) == NEW


@pytest.mark.parametrize(
    ("number", "every"),
    [(errno.ENOSPC, 4)]
    + [pytest.param(number, 1, marks=pytest.mark.depth) for number in (errno.ENOSPC, errno.EACCES)],
)
def test_when_any_operation_fails_all_are_new_or_all_are_old(
    book: Path, failing_disk: Callable[[int, int], Any], number: int, every: int
) -> None:
    refused = set()
    for failing in itertools.count(1, every):
        fill(book)
        disk = failing_disk(failing, number)
        try:
            write(book, disk)
        except NotTogether as error:
            assert not error.half_done
            assert held(book) == OLD
            assert all("Nothing was saved" in one.sentence for one in error.errors)
            refused.add(disk.steps[failing - 1])
        else:
            found = held(book)
            assert {name: found[name] for name in NAMES} == NEW
        for left in book.rglob("*.saving"):
            left.unlink()
        if len(disk.steps) < failing:
            break
    if every == 1:
        assert refused >= {"open", "write", "fsync", "close", "replace", "lock"}
    assert len(refused) > 2


def test_every_file_that_cannot_be_saved_is_named_before_one_is_touched(book: Path) -> None:
    (book / "a.toml").chmod(0o444)
    (book / "deep" / "c.toml").write_bytes(b"theirs\n")
    with pytest.raises(NotTogether) as caught:
        write(book)
    first, second = (error.sentence for error in caught.value.errors)
    assert "a.toml may only be read" in first
    assert "c.toml was changed meanwhile" in second
    assert held(book) == OLD | {"deep/c.toml": b"theirs\n"}


def test_a_disk_that_lets_nothing_be_put_back_is_told_of_with_the_files(
    book: Path, watched_disk: Any
) -> None:
    moved: list[str] = []

    def dies_at_the_second(count: int, name: str) -> None:
        if name == "replace":
            moved.append(name)
            if len(moved) > 1:
                raise OSError(errno.EIO, os.strerror(errno.EIO))

    with pytest.raises(NotTogether) as caught:
        write(book, watched_disk(dies_at_the_second))
    assert caught.value.half_done
    assert "a.toml may hold the new text" in caught.value.sentence
    assert held(book) == OLD | {"a.toml": NEW["a.toml"]}


def test_a_file_that_another_program_saved_last_is_not_put_back(book: Path, watched_disk: Any) -> None:
    moved: list[str] = []

    def somebody_saves(count: int, name: str) -> None:
        if name == "replace":
            moved.append(name)
            if len(moved) == 2:
                (book / "a.toml").write_bytes(b"theirs\n")
                raise OSError(errno.EIO, os.strerror(errno.EIO))

    with pytest.raises(NotTogether):
        write(book, watched_disk(somebody_saves))
    assert held(book) == OLD | {"a.toml": b"theirs\n"}


@pytest.mark.parametrize("every", [15, pytest.param(1, marks=pytest.mark.depth)])
def test_killed_at_any_step_each_file_is_whole_and_the_same_again_does_the_rest(
    book: Path,
    watched_disk: Any,
    in_a_child: Callable[[Callable[[], object]], int],
    kill_me: Callable[[], None],
    every: int,
) -> None:
    for step in itertools.count(1, every):
        fill(book)

        def killing(count: int, name: str, step: int = step) -> None:
            if count == step:
                kill_me()

        code = in_a_child(partial(write, book, watched_disk(killing, chunk=20)))
        found = held(book)
        for name in NAMES:
            assert found[name] in (OLD[name], NEW[name])
        write_together(
            [ToWrite(book / name, NEW[name], fingerprint(found[name])) for name in NAMES], root=book
        )
        assert held(book) == NEW
        if code == 0:
            break
