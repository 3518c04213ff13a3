"""One program at a time, and no wait without an end."""

from __future__ import annotations

import errno
import fcntl
import os
import threading
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from library.errors import SaveError
from library.files.disk import Disk
from library.files.file_state import fingerprint
from library.files.lock import locked
from library.files.safe_write import ANYTHING, remove_safely, write_safely
from library.files.write_together import NotTogether, ToWrite, write_together

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


class DeadMachine(Disk):
    """A network disk whose lock is in the hand of a machine that stopped, and which may be slow besides.

    Args:
        number: what it answers who asks for the lock.
        slow: seconds of the clock that each asking takes.
    """

    def __init__(self, number: int, slow: float = 0.0) -> None:
        self.number, self.slow = number, slow
        self.asked = self.waited = 0.0
        self.wrote: list[str] = []

    def lock(self, descriptor: int) -> None:
        self.asked += 1
        time.sleep(self.slow)
        raise OSError(self.number, os.strerror(self.number))

    def pause(self, seconds: float) -> None:
        self.waited += seconds

    def write(self, descriptor: int, data: bytes | memoryview) -> int:
        self.wrote.append("write")
        return super().write(descriptor, data)


def test_a_lock_of_a_machine_that_stopped_is_told_of_after_five_seconds_and_nothing_is_written(
    taps: Path,
) -> None:
    disk = DeadMachine(errno.EAGAIN)
    with pytest.raises(
        SaveError, match=r"for 5 seconds.* has stopped with the lock in hand: start that machine"
    ):
        save(taps, NEW, disk)
    assert disk.waited == pytest.approx(5, abs=0.1)
    assert not disk.wrote
    assert taps.read_bytes() == OLD


def test_a_disk_that_is_slow_to_say_so_is_not_asked_without_an_end(taps: Path) -> None:
    disk = DeadMachine(errno.EAGAIN, slow=0.02)
    with pytest.raises(SaveError, match="Another program"):
        write_safely(taps, NEW, root=taps.parent, expected=ANYTHING, disk=disk, patience=0.06)
    assert disk.asked < 6, "the time that asking takes counts too"


@pytest.mark.parametrize("number", [errno.ENOLCK, errno.EOPNOTSUPP, errno.ENOSYS])
def test_a_disk_without_locks_is_refused_at_once_and_nothing_is_written(taps: Path, number: int) -> None:
    disk = DeadMachine(number)
    with pytest.raises(SaveError, match=r"cannot keep two programs from saving at once. Move the book"):
        save(taps, NEW, disk)
    with pytest.raises(SaveError, match="cannot keep two programs"):
        remove_safely(taps, root=taps.parent, expected=ANYTHING, disk=disk)
    with pytest.raises(NotTogether, match="cannot keep two programs"):
        write_together([ToWrite(taps, NEW, fingerprint(OLD))], root=taps.parent, disk=disk)
    assert (disk.waited, disk.asked, disk.wrote) == (0, 3, [])
    assert taps.read_bytes() == OLD


def test_a_network_disk_that_lets_a_lock_be_taken_only_by_who_may_write_it_says_so(taps: Path) -> None:
    with pytest.raises(SaveError, match=r"may only be read by you. Ask whoever owns the file \.lock"):
        save(taps, NEW, DeadMachine(errno.EBADF))
    assert taps.read_bytes() == OLD


def test_a_refusal_of_the_lock_for_want_of_leave_means_that_another_machine_has_it(
    taps: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    # POSIX, fcntl(): F_SETLK of a lock that is held may fail with EACCES as well as with EAGAIN.
    def held(descriptor: int, how: int) -> None:
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES))

    monkeypatch.setattr(fcntl, "flock", held)
    with pytest.raises(SaveError, match="Another program has been saving"):
        write_safely(taps, NEW, root=taps.parent, expected=ANYTHING, patience=0.02)
    assert taps.read_bytes() == OLD


def test_a_lock_file_that_nobody_holds_is_taken_at_once_whatever_it_says(shop: Path) -> None:
    lock = shop / ".lock"
    lock.write_text("4711 held by another machine since last year\n", encoding="utf-8")
    os.utime(lock, (0, 4e9))
    disk = Disk()
    disk.pause = lambda seconds: pytest.fail("nobody is waited for")  # type: ignore[method-assign]
    assert save(shop / "taps.toml", NEW, disk) == ""
    assert (shop / "taps.toml").read_bytes() == NEW


def test_a_lock_that_is_a_pipe_or_a_link_is_refused(shop: Path) -> None:
    os.mkfifo(shop / ".lock")
    with pytest.raises(SaveError, match="not a plain file"):
        save(shop / "taps.toml", NEW)
    (shop / ".lock").unlink()
    (shop / ".lock").symlink_to("/etc/passwd")
    with pytest.raises(SaveError, match="circle"):
        save(shop / "taps.toml", NEW)
