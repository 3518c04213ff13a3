"""One program at a time, and no wait without an end."""

from __future__ import annotations

import os
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest

from library.errors import SaveError
from library.files.disk import Disk
from library.files.lock import locked
from library.files.safe_write import ANYTHING, write_safely

OLD = b'schema = 1\ntitle = "old"\n' * 40
NEW = b'schema = 1\ntitle = "new"\n' * 60


def save(file: Path, data: bytes, disk: Disk | None = None, expected: str = ANYTHING) -> str:
    return write_safely(file, data, root=file.parent, expected=expected, disk=disk or Disk()).warning


@pytest.fixture
def somebody_saving(shop: Path) -> Iterator[Path]:
    ready, done = threading.Event(), threading.Event()

    def hold() -> None:
        with locked(shop):
            ready.set()
            done.wait(10)

    thread = threading.Thread(target=hold)
    thread.start()
    ready.wait(10)
    yield shop
    done.set()
    thread.join()


def test_while_somebody_is_saving_the_wait_has_an_end(somebody_saving: Path) -> None:
    file = somebody_saving / "taps.toml"
    with pytest.raises(SaveError, match=r"Another program has been saving .* 0\.05 seconds"):
        write_safely(file, NEW, root=somebody_saving, expected=ANYTHING, patience=0.05)
    assert not file.exists()


def test_the_lock_file_stays_where_it_is(taps: Path) -> None:
    save(taps, NEW)
    inode = (taps.parent / ".lock").stat().st_ino
    save(taps, OLD)
    assert (taps.parent / ".lock").stat().st_ino == inode


def test_a_lock_file_that_somebody_removed_meanwhile_locks_nobody_out_and_lets_no_two_in(shop: Path) -> None:
    with locked(shop):
        (shop / ".lock").unlink()
        with locked(shop), pytest.raises(SaveError, match="Another program"), locked(shop, patience=0.03):
            pass


def test_a_lock_that_is_a_pipe_or_a_link_is_refused(shop: Path) -> None:
    os.mkfifo(shop / ".lock")
    with pytest.raises(SaveError, match="not a plain file"):
        save(shop / "taps.toml", NEW)
    (shop / ".lock").unlink()
    (shop / ".lock").symlink_to("/etc/passwd")
    with pytest.raises(SaveError, match="circle"):
        save(shop / "taps.toml", NEW)
