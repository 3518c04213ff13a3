"""Who may read and write a file stays as it was, and nobody writes where he may not."""

from __future__ import annotations

import os
import stat
from collections.abc import Callable
from pathlib import Path

import pytest

from library.errors import SaveError
from library.files.disk import Disk
from library.files.file_state import fingerprint
from library.files.safe_write import ANYTHING, write_safely

OLD = b'schema = 1\ntitle = "old"\n' * 40
NEW = b'schema = 1\ntitle = "new"\n' * 60
needs_root = pytest.mark.skipif(os.getuid() != 0, reason="only root can be two people, or make a device")


def save(file: Path, data: bytes, disk: Disk | None = None, expected: str = ANYTHING) -> str:
    return write_safely(file, data, root=file.parent, expected=expected, disk=disk or Disk()).warning


def test_a_new_file_gets_the_rights_that_any_new_file_gets(shop: Path) -> None:
    was = os.umask(0o027)
    try:
        save(shop / "new.toml", NEW, expected=fingerprint(None))
    finally:
        os.umask(was)
    assert stat.S_IMODE((shop / "new.toml").stat().st_mode) == 0o640


@pytest.mark.parametrize("mode", [0o600, 0o640, 0o664, 0o666, 0o755])
def test_the_mode_is_kept(taps: Path, mode: int) -> None:
    taps.chmod(mode)
    save(taps, NEW)
    assert stat.S_IMODE(taps.stat().st_mode) == mode


@needs_root
def test_the_group_and_the_owner_are_kept(taps: Path) -> None:
    os.chown(taps, 1234, 2345)
    taps.chmod(0o664)
    save(taps, NEW)
    now = taps.stat()
    assert (now.st_uid, now.st_gid, stat.S_IMODE(now.st_mode)) == (1234, 2345, 0o664)


@needs_root
def test_a_group_that_cannot_be_kept_is_a_refusal_where_it_matters(
    shop: Path, taps: Path, as_nobody: Callable[[Callable[[], object]], int]
) -> None:
    shop.chmod(0o777)
    os.chown(taps, 65534, 2345)
    taps.chmod(0o664)

    def work() -> None:
        with pytest.raises(SaveError, match="group of users"):
            save(taps, NEW)

    assert as_nobody(work) == 0
    assert taps.read_bytes() == OLD
    taps.chmod(0o644)
    assert as_nobody(lambda: save(taps, NEW)) == 0
    assert taps.read_bytes() == NEW


def test_a_file_that_may_only_be_read_is_refused_even_for_root(taps: Path) -> None:
    taps.chmod(0o444)
    with pytest.raises(SaveError, match="may only be read"):
        save(taps, NEW)
    assert taps.read_bytes() == OLD
    assert stat.S_IMODE(taps.stat().st_mode) == 0o444


@needs_root
def test_a_colleagues_file_without_leave_to_write_is_refused(
    shop: Path, taps: Path, as_nobody: Callable[[Callable[[], object]], int]
) -> None:
    shop.chmod(0o777)
    taps.chmod(0o644)

    def work() -> None:
        with pytest.raises(SaveError, match="may only be read"):
            save(taps, NEW)

    assert as_nobody(work) == 0
    assert taps.read_bytes() == OLD


def test_a_folder_without_leave_to_write_gets_a_sentence(
    shop: Path, taps: Path, as_nobody: Callable[[Callable[[], object]], int]
) -> None:
    taps.chmod(0o666)
    shop.chmod(0o555)

    def work() -> None:
        with pytest.raises(SaveError, match="may not write in the folder"):
            save(taps, NEW)

    assert as_nobody(work) == 0
    shop.chmod(0o755)
    assert taps.read_bytes() == OLD


@needs_root
def test_two_users_of_one_group_both_save(
    shop: Path, taps: Path, as_nobody: Callable[[Callable[[], object]], int]
) -> None:
    os.chown(shop, 0, 65534)
    shop.chmod(0o770)
    os.chown(taps, 0, 65534)
    taps.chmod(0o660)
    save(taps, NEW)
    (shop / ".lock").chmod(0o644)
    assert as_nobody(lambda: save(taps, OLD)) == 0
    assert taps.read_bytes() == OLD
    now = taps.stat()
    assert (now.st_gid, stat.S_IMODE(now.st_mode)) == (65534, 0o660)
