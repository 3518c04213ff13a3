"""The program's own small files: whole wherever it is stopped, and nothing left beside them."""

from __future__ import annotations

import errno
import os
import stat
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from library.files.disk import Disk
from library.files.own_file import put_new, put_whole

OLD, NEW = b"old\n" * 20, b"new\n" * 30


def names(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def test_it_is_made_with_its_folder_for_the_person_alone(tmp_path: Path) -> None:
    file = tmp_path / "state" / "units"
    put_whole(file, [b"mm", b"\n"])
    assert file.read_bytes() == b"mm\n"
    assert stat.S_IMODE(file.stat().st_mode) == 0o600
    assert names(file.parent) == ["units"]


@pytest.mark.parametrize("number", [errno.ENOSPC, errno.EDQUOT, errno.EIO])
def test_whatever_call_fails_it_is_the_old_one_or_the_new_and_nothing_is_left(
    tmp_path: Path, failing_disk: Callable[[int, int], Any], number: int
) -> None:
    file, refused = tmp_path / "units", 0
    for failing in range(1, 12):
        file.write_bytes(OLD)
        try:
            put_whole(file, [NEW], failing_disk(failing, number))
        except OSError:
            refused += 1
            assert file.read_bytes() == OLD
        else:
            assert file.read_bytes() == NEW
    put_whole(file, [NEW])
    assert refused >= 4, "opening, writing, waiting and replacing are told of"
    assert names(tmp_path) == ["units"]


def test_wherever_it_is_killed_it_is_the_old_one_or_the_new_and_the_rest_goes_with_the_next(
    tmp_path: Path,
    watched_disk: Callable[..., Any],
    in_a_child: Callable[[Callable[[], object]], int],
    kill_me: Callable[[], None],
) -> None:
    file, found = tmp_path / "units", []
    for killed in range(1, 9):
        file.write_bytes(OLD)
        disk = watched_disk(
            before=lambda number, name, at=killed: kill_me() if number == at else None, chunk=50
        )
        if in_a_child(lambda disk=disk: put_whole(file, [NEW], disk)) == 0:  # type: ignore[misc]
            break
        found.append(file.read_bytes())
        assert found[-1] in (OLD, NEW)
    assert len(found) >= 6
    put_whole(file, [NEW])
    assert names(tmp_path) == ["units"]


def test_what_another_program_is_writing_at_this_moment_stays(tmp_path: Path) -> None:
    other = tmp_path / ".heelclear-00112233445566ff.writing"
    other.write_bytes(b"half")
    descriptor = os.open(other, os.O_RDWR)
    try:
        Disk().lock(descriptor)
        put_whole(tmp_path / "units", [NEW])
        assert other.read_bytes() == b"half"
    finally:
        os.close(descriptor)
    put_whole(tmp_path / "units", [NEW])
    assert names(tmp_path) == ["units"]


def test_a_link_or_a_pipe_under_its_name_is_replaced_and_not_followed(tmp_path: Path) -> None:
    (tmp_path / "elsewhere").write_bytes(OLD)
    (tmp_path / "units").symlink_to(tmp_path / "elsewhere")
    os.mkfifo(tmp_path / "steps")
    for name in ("units", "steps"):
        put_whole(tmp_path / name, [NEW])
        assert (tmp_path / name).lstat().st_size == len(NEW)
    assert (tmp_path / "elsewhere").read_bytes() == OLD


def test_a_new_file_is_there_whole_or_not_at_all(
    tmp_path: Path, failing_disk: Callable[[int, int], Any]
) -> None:
    refused = 0
    for failing in range(1, 12):
        file = tmp_path / f"{failing}.txt"
        try:
            put_new(file, NEW, failing_disk(failing, errno.ENOSPC))
        except OSError:
            refused += 1
            assert not file.exists()
        else:
            assert file.read_bytes() == NEW
            file.unlink()
    assert refused >= 3
    assert names(tmp_path) == []


def test_a_new_file_takes_the_place_of_none(tmp_path: Path) -> None:
    (tmp_path / "a.txt").write_bytes(OLD)
    with pytest.raises(FileExistsError):
        put_new(tmp_path / "a.txt", NEW)
    assert (tmp_path / "a.txt").read_bytes() == OLD
    assert names(tmp_path) == ["a.txt"]


def test_a_new_file_is_also_written_where_a_file_can_have_one_name_only(tmp_path: Path) -> None:
    class NoLinks(Disk):
        def link(self, old: Path, new: Path) -> None:
            raise PermissionError(errno.EPERM, os.strerror(errno.EPERM))

    put_new(tmp_path / "a.txt", NEW, NoLinks())
    assert (tmp_path / "a.txt").read_bytes() == NEW
    assert names(tmp_path) == ["a.txt"]
