"""Disks that fail, and a way to be somebody who is not root."""

from __future__ import annotations

import os
import signal
import tempfile
import traceback
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from library.files.disk import Disk

STEPS = (
    "open", "close", "read", "write", "fsync", "fstat", "may_write", "chown", "chmod",
    "replace", "unlink", "names", "lock", "mkdir", "rmdir",
)  # fmt: skip


class WatchedDisk(Disk):
    """The real disk, with a look before each of its operations.

    Args:
        before: called with the number of the operation, from 1, and its name; it may raise.
        after: called likewise when the operation is done.
        chunk: how many bytes a write takes at most.
    """

    def __init__(
        self,
        before: Callable[[int, str], None] = lambda number, name: None,
        after: Callable[[int, str], None] = lambda number, name: None,
        chunk: int = 1 << 30,
    ) -> None:
        self.steps: list[str] = []
        self._before = before
        self._after = after
        self._chunk = chunk

    def __getattribute__(self, name: str) -> Any:
        found = super().__getattribute__(name)
        if name not in STEPS:
            return found

        def watched(*given: Any, **named: Any) -> Any:
            self.steps.append(name)
            number = len(self.steps)
            self._before(number, name)
            if name == "write":
                given = (given[0], memoryview(given[1])[: self._chunk])
            result = found(*given, **named)
            self._after(number, name)
            return result

        return watched


@pytest.fixture
def watched_disk() -> type[WatchedDisk]:
    return WatchedDisk


@pytest.fixture
def failing_disk() -> Callable[[int, int], Disk]:
    """A disk whose n-th operation fails with a number of ``errno``, and the following ones work."""

    def make(failing: int, number: int) -> Disk:
        def fail(count: int) -> None:
            if count == failing:
                raise OSError(number, os.strerror(number))

        # A close that fails has closed all the same.
        return WatchedDisk(
            before=lambda count, name: None if name == "close" else fail(count),
            after=lambda count, name: fail(count) if name == "close" else None,
        )

    return make


def _in_a_child(work: Callable[[], object]) -> int:
    child = os.fork()
    if child == 0:
        code = 70
        try:
            work()
            code = 0
        except BaseException:
            traceback.print_exc()
        finally:
            os._exit(code)
    status = os.waitpid(child, 0)[1]
    return os.waitstatus_to_exitcode(status)


@pytest.fixture
def in_a_child() -> Callable[[Callable[[], object]], int]:
    """Runs a function in a child process and gives its exit code, or minus the signal that killed it."""
    return _in_a_child


@pytest.fixture
def as_nobody() -> Callable[[Callable[[], object]], int]:
    """Runs a function in a child that may do only what an ordinary user may; gives its exit code."""

    def run(work: Callable[[], object]) -> int:
        def drop_and_work() -> None:
            if os.getuid() == 0:
                os.setgroups([])
                os.setgid(65534)
                os.setuid(65534)
            work()

        return _in_a_child(drop_and_work)

    return run


@pytest.fixture
def kill_me() -> Callable[[], None]:
    """Ends this process as ``kill -9`` does."""
    return lambda: os.kill(os.getpid(), signal.SIGKILL)


@pytest.fixture
def shop() -> Iterator[Path]:
    """A folder that other users can come to: pytest shuts its own to them each time that it is started anywhere."""
    with tempfile.TemporaryDirectory() as folder:
        Path(folder).chmod(0o711)
        shop = Path(folder) / "shop"
        shop.mkdir()
        yield shop


@pytest.fixture
def taps(shop: Path) -> Path:
    file = shop / "taps.toml"
    file.write_bytes(b'schema = 1\ntitle = "old"\n' * 40)
    return file
