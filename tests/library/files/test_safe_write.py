"""Old or new, never half; and never over somebody else's text."""

from __future__ import annotations

import errno
import itertools
import os
import re
import subprocess
import sys
from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from library.errors import ChangedMeanwhile, SaveError
from library.files.disk import Disk
from library.files.file_state import fingerprint
from library.files.safe_write import ANYTHING, read_for_change, remove_safely, write_safely
from library.files.write_together import ToWrite, write_together
from tests.examples import every_third_at_once

OLD = b'schema = 1\ntitle = "old"\n' * 40
NEW = b'schema = 1\ntitle = "new"\n' * 60
FAILURES = (errno.ENOSPC, errno.EIO, errno.EACCES, errno.EROFS, errno.EDQUOT)


def names(folder: Path) -> set[str]:
    return {path.name for path in folder.iterdir()} - {".lock"}


def save(file: Path, data: bytes, disk: Disk | None = None, expected: str = ANYTHING) -> str:
    return write_safely(file, data, root=file.parent, expected=expected, disk=disk or Disk()).warning


def test_a_file_is_saved_whole_and_nothing_else_is_left(taps: Path) -> None:
    assert save(taps, NEW, expected=fingerprint(OLD)) == ""
    assert taps.read_bytes() == NEW
    assert names(taps.parent) == {"taps.toml"}


@pytest.mark.parametrize("number", FAILURES, ids=errno.errorcode.get)
@pytest.mark.parametrize("exists", [True, False], ids=["over an old file", "as a new file"])
def test_when_any_operation_fails_the_file_is_old_or_new_and_the_sentence_is_true(
    shop: Path, failing_disk: Callable[[int, int], Any], number: int, exists: bool
) -> None:
    file = shop / "taps.toml"
    saved = warned = 0
    refused = set()
    for failing in itertools.count(1):
        before = None
        file.unlink(missing_ok=True)
        if exists:
            file.write_bytes(before := OLD)
        disk = failing_disk(failing, number)
        try:
            warning = save(file, NEW, disk, fingerprint(before))
        except SaveError as error:
            refused.add(disk.steps[failing - 1])
            assert (file.read_bytes() if file.exists() else None) == before
            assert "taps.toml" in error.sentence
            assert ".saving" not in error.sentence
            assert error.sentence.endswith((".", ")."))
        else:
            saved += 1
            warned += bool(warning)
            assert file.read_bytes() == NEW
            assert not warning or "is saved" in warning
        assert names(shop) <= {"taps.toml"}
        if len(disk.steps) < failing:
            break
    assert refused >= {"open", "fstat", "write", "fsync", "close", "replace", "lock"}
    assert warned == 3, "opening, syncing and closing the folder each give a warning, not a refusal"
    assert saved > warned


@pytest.mark.parametrize("number", FAILURES, ids=errno.errorcode.get)
def test_when_every_later_operation_fails_too_the_file_is_still_whole(
    taps: Path, watched_disk: Any, number: int
) -> None:
    for failing in range(1, 40):
        taps.write_bytes(OLD)

        def before(count: int, name: str, failing: int = failing) -> None:
            if count >= failing and name not in {"close", "may_write"}:
                raise OSError(number, os.strerror(number))

        try:
            warning = save(taps, NEW, watched_disk(before))
        except SaveError:
            assert taps.read_bytes() == OLD
        else:
            assert taps.read_bytes() == NEW
            assert warning or failing > 20
    save(taps, NEW + b"#")
    assert names(taps.parent) == {"taps.toml"}, "what was left behind goes with the next save"


@pytest.mark.parametrize("after", every_third_at_once([False, True]), ids=["before", "after"])
def test_killed_at_any_step_the_file_is_old_or_new(
    taps: Path,
    watched_disk: Any,
    in_a_child: Callable[[Callable[[], object]], int],
    kill_me: Callable[[], None],
    after: bool,
) -> None:
    seen = set()
    for step in itertools.count(1):
        taps.write_bytes(OLD)

        def killing(count: int, name: str, step: int = step) -> None:
            if count == step:
                kill_me()

        disk = watched_disk(after=killing, chunk=500) if after else watched_disk(killing, chunk=500)
        code = in_a_child(partial(save, taps, NEW, disk))
        seen.add(taps.read_bytes())
        assert seen <= {OLD, NEW}
        if code == 0:
            break
        assert code == -9
    assert seen == {OLD, NEW}
    assert step > 15
    save(taps, OLD)
    assert names(taps.parent) == {"taps.toml"}


def test_the_text_is_on_the_disk_before_it_takes_the_old_ones_place_and_the_folder_after(
    taps: Path, watched_disk: Any
) -> None:
    disk = watched_disk()
    save(taps, NEW, disk)
    steps = [step for step in disk.steps if step in {"write", "fsync", "replace"}]
    assert steps == ["write", "fsync", "replace", "fsync"]


class Noted(Disk):
    """A disk that notes what it is told to wait for, how much of it there is by then, and when names change."""

    def __init__(self) -> None:
        self.told: list[tuple[str, Path, int]] = []

    def fsync(self, descriptor: int) -> None:
        path = Path(os.readlink(f"/proc/self/fd/{descriptor}"))
        self.told.append(("on the disk", path, 0 if path.is_dir() else path.stat().st_size))
        super().fsync(descriptor)

    def replace(self, source: Path, target: Path) -> None:
        self.told.append(("in place", source, source.stat().st_size))
        super().replace(source, target)


def test_what_is_waited_for_is_the_whole_new_text_and_then_the_folder_with_its_new_name(taps: Path) -> None:
    disk = Noted()
    save(taps, NEW, disk)
    beside = disk.told[0][1]
    assert beside.parent == taps.parent
    assert beside != taps
    assert disk.told == [
        ("on the disk", beside, len(NEW)),
        ("in place", beside, len(NEW)),
        ("on the disk", taps.parent, 0),
    ]


def test_of_files_saved_together_each_is_on_the_disk_before_the_first_is_in_place(taps: Path) -> None:
    other = taps.with_name("drills.toml")
    other.write_bytes(OLD)
    disk = Noted()
    files = [ToWrite(path, NEW, fingerprint(OLD)) for path in (taps, other)]
    assert write_together(files, root=taps.parent, disk=disk) == ()
    steps = [step for step, _, _ in disk.told]
    first = steps.index("in place")
    waited = [(path, size) for step, path, size in disk.told[:first] if step == "on the disk"]
    moved = [(path, size) for step, path, size in disk.told if step == "in place"]
    assert [size for _, size in moved] == [len(NEW)] * 2
    assert set(moved) <= set(waited)
    assert disk.told[-1] == ("on the disk", taps.parent, 0)


def test_a_disk_that_takes_seven_bytes_at_a_time_gets_all_of_them(taps: Path, watched_disk: Any) -> None:
    save(taps, NEW, watched_disk(chunk=7))
    assert taps.read_bytes() == NEW


def test_a_disk_that_takes_nothing_is_a_fault_and_not_an_endless_loop(taps: Path, watched_disk: Any) -> None:
    with pytest.raises(SaveError, match="fault"):
        save(taps, NEW, watched_disk(chunk=0))
    assert taps.read_bytes() == OLD


def test_a_file_that_changed_meanwhile_is_not_touched(taps: Path) -> None:
    with pytest.raises(ChangedMeanwhile) as caught:
        save(taps, NEW, expected=fingerprint(b"something else"))
    assert caught.value.theirs == OLD
    assert taps.read_bytes() == OLD


def test_a_file_that_appeared_meanwhile_is_not_touched(taps: Path) -> None:
    with pytest.raises(ChangedMeanwhile):
        save(taps, NEW, expected=fingerprint(None))
    assert taps.read_bytes() == OLD


def test_a_file_that_vanished_meanwhile_is_not_made_again(taps: Path) -> None:
    taps.unlink()
    with pytest.raises(ChangedMeanwhile) as caught:
        save(taps, NEW, expected=fingerprint(OLD))
    assert caught.value.theirs is None
    assert not taps.exists()


def test_an_editor_that_saves_while_the_new_text_is_being_written_wins(taps: Path, watched_disk: Any) -> None:
    theirs = b"by hand"

    def somebody_saves(count: int, name: str) -> None:
        if name == "write":
            taps.write_bytes(theirs)

    with pytest.raises(ChangedMeanwhile) as caught:
        save(taps, NEW, watched_disk(somebody_saves), fingerprint(OLD))
    assert caught.value.theirs == theirs
    assert taps.read_bytes() == theirs
    assert names(taps.parent) == {"taps.toml"}


def test_saving_the_same_text_touches_nothing(taps: Path) -> None:
    before = taps.stat()
    save(taps, OLD, expected=fingerprint(OLD))
    assert (taps.stat().st_ino, taps.stat().st_mtime_ns) == (before.st_ino, before.st_mtime_ns)


FULL_DISK = """
import sys
from pathlib import Path
from library.errors import SaveError
from library.files.safe_write import ANYTHING, write_safely
file = Path(sys.argv[1]) / "taps.toml"
file.write_bytes(b"old")
try:
    write_safely(file, b"x" * 200_000, root=file.parent, expected=ANYTHING)
except SaveError as refused:
    print(refused.sentence)
print(file.read_bytes(), sorted(path.name for path in file.parent.iterdir()))
"""


def test_a_really_full_disk_keeps_the_old_text(tmp_path: Path) -> None:
    mounted = 'mount -t tmpfs -o size=64k none "$0" && exec "$@"'
    command = [
        "unshare",
        "-m",
        "sh",
        "-c",
        mounted,
        str(tmp_path),
        sys.executable,
        "-c",
        FULL_DISK,
        str(tmp_path),
    ]
    try:
        done = subprocess.run(command, capture_output=True, text=True, check=False)
    except FileNotFoundError:
        pytest.skip("there is no unshare here")
    if not done.stdout:
        pytest.skip(f"no small disk can be mounted here: {done.stderr}")
    told, left = done.stdout.splitlines()
    assert re.fullmatch(r"The disk that holds .*taps\.toml is full\. Make room .*", told)
    assert left == "b'old' ['.lock', 'taps.toml']"


def test_removing_asks_the_same_questions(taps: Path) -> None:
    with pytest.raises(ChangedMeanwhile):
        remove_safely(taps, root=taps.parent, expected=fingerprint(NEW))
    assert taps.exists()
    assert remove_safely(taps, root=taps.parent, expected=fingerprint(OLD)).data is None
    assert not taps.exists()
    assert remove_safely(taps, root=taps.parent, expected=ANYTHING).data is None


def test_what_a_killed_program_left_goes_and_other_hidden_files_stay(taps: Path) -> None:
    folder = taps.parent
    (folder / ".heelclear-0011223344556677.saving").write_bytes(b"half")
    (folder / ".mine.saving").write_bytes(b"mine")
    save(taps, NEW)
    assert names(folder) == {"taps.toml", ".mine.saving"}


@given(data=st.binary(max_size=3000), chunk=st.integers(1, 4000))
def test_any_bytes_come_back_as_they_were(
    tmp_path_factory: pytest.TempPathFactory, data: bytes, chunk: int
) -> None:
    folder = tmp_path_factory.getbasetemp() / "any-bytes"
    folder.mkdir(exist_ok=True)
    file = folder / "file.toml"

    class Slow(Disk):
        def write(self, descriptor: int, data: bytes | memoryview) -> int:
            return super().write(descriptor, memoryview(data)[:chunk])

        def fsync(self, descriptor: int) -> None:
            """Not waited for: two hundred files need not last."""

    save(file, data, Slow())
    assert read_for_change(file, root=folder) == data
