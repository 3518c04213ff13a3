"""Old or new, never half; and never over somebody else's text."""

from __future__ import annotations

import errno
import itertools
import os
import stat
import threading
from collections.abc import Callable, Iterator
from functools import partial
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from library.files.disk import Disk
from library.files.lock import locked
from library.files.refusals import ChangedMeanwhile, SaveRefused
from library.files.safe_write import ANYTHING, read_for_change, remove_safely, write_safely
from library.files.standing import fingerprint

OLD = b'schema = 1\ntitle = "old"\n' * 40
NEW = b'schema = 1\ntitle = "new"\n' * 60
FAILURES = (errno.ENOSPC, errno.EIO, errno.EACCES, errno.EROFS, errno.EDQUOT)

needs_root = pytest.mark.skipif(os.getuid() != 0, reason="only root can be two people, or make a device")


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    folder = tmp_path / "shop"
    folder.mkdir()
    return folder


@pytest.fixture
def taps(shop: Path) -> Path:
    file = shop / "taps.toml"
    file.write_bytes(OLD)
    return file


def names(folder: Path) -> set[str]:
    return {path.name for path in folder.iterdir()} - {".lock"}


def save(file: Path, data: bytes, disk: Disk | None = None, expected: str = ANYTHING) -> str:
    return write_safely(file, data, root=file.parent, expected=expected, disk=disk or Disk()).warning


def test_a_file_is_saved_whole_and_nothing_else_is_left(taps: Path) -> None:
    assert save(taps, NEW, expected=fingerprint(OLD)) == ""
    assert taps.read_bytes() == NEW
    assert names(taps.parent) == {"taps.toml"}


def test_a_new_file_gets_the_rights_that_any_new_file_gets(shop: Path) -> None:
    was = os.umask(0o027)
    try:
        save(shop / "new.toml", NEW, expected=fingerprint(None))
    finally:
        os.umask(was)
    assert stat.S_IMODE((shop / "new.toml").stat().st_mode) == 0o640


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
        except SaveRefused as error:
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
        except SaveRefused:
            assert taps.read_bytes() == OLD
        else:
            assert taps.read_bytes() == NEW
            assert warning or failing > 20
    save(taps, NEW + b"#")
    assert names(taps.parent) == {"taps.toml"}, "what was left behind goes with the next save"


@pytest.mark.parametrize("after", [False, True], ids=["before", "after"])
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


def test_a_disk_that_takes_seven_bytes_at_a_time_gets_all_of_them(taps: Path, watched_disk: Any) -> None:
    save(taps, NEW, watched_disk(chunk=7))
    assert taps.read_bytes() == NEW


def test_a_disk_that_takes_nothing_is_a_fault_and_not_an_endless_loop(taps: Path, watched_disk: Any) -> None:
    with pytest.raises(SaveRefused, match="fault"):
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
        with pytest.raises(SaveRefused, match="group of users"):
            save(taps, NEW)

    assert as_nobody(work) == 0
    assert taps.read_bytes() == OLD
    taps.chmod(0o644)
    assert as_nobody(lambda: save(taps, NEW)) == 0
    assert taps.read_bytes() == NEW


def test_a_file_that_may_only_be_read_is_refused_even_for_root(taps: Path) -> None:
    taps.chmod(0o444)
    with pytest.raises(SaveRefused, match="may only be read"):
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
        with pytest.raises(SaveRefused, match="may only be read"):
            save(taps, NEW)

    assert as_nobody(work) == 0
    assert taps.read_bytes() == OLD


def test_a_folder_without_leave_to_write_gets_a_sentence(
    shop: Path, taps: Path, as_nobody: Callable[[Callable[[], object]], int]
) -> None:
    taps.chmod(0o666)
    shop.chmod(0o555)

    def work() -> None:
        with pytest.raises(SaveRefused, match="may not write in the folder"):
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


def test_a_link_inside_the_library_is_followed_and_stays_a_link(shop: Path, taps: Path) -> None:
    link = shop / "link.toml"
    link.symlink_to("taps.toml")
    save(link, NEW)
    assert link.is_symlink()
    assert taps.read_bytes() == NEW


def test_a_link_out_of_the_library_is_refused_by_name(tmp_path: Path, shop: Path) -> None:
    outside = tmp_path / "outside.toml"
    outside.write_bytes(OLD)
    link = shop / "link.toml"
    link.symlink_to(outside)
    with pytest.raises(SaveRefused, match=r"leads to .*outside\.toml, which is outside"):
        save(link, NEW)
    with pytest.raises(SaveRefused, match="outside"):
        read_for_change(link, root=shop)
    assert outside.read_bytes() == OLD


def test_a_library_that_is_itself_reached_by_a_link_works(tmp_path: Path, shop: Path, taps: Path) -> None:
    alias = tmp_path / "alias"
    alias.symlink_to(shop)
    save(alias / "taps.toml", NEW)
    assert taps.read_bytes() == NEW


def test_links_in_a_circle_get_a_sentence(shop: Path) -> None:
    (shop / "a.toml").symlink_to("b.toml")
    (shop / "b.toml").symlink_to("a.toml")
    with pytest.raises(SaveRefused, match="circle"):
        save(shop / "a.toml", NEW)


def test_a_second_hard_link_is_refused_and_stays_one_file(tmp_path: Path, taps: Path) -> None:
    second = tmp_path / "second.toml"
    second.hardlink_to(taps)
    with pytest.raises(SaveRefused, match="second name"):
        save(taps, NEW)
    assert taps.samefile(second)
    assert taps.read_bytes() == OLD


def test_a_pipe_does_not_hang(shop: Path) -> None:
    os.mkfifo(shop / "pipe.toml")
    with pytest.raises(SaveRefused, match="a pipe"):
        save(shop / "pipe.toml", NEW)
    with pytest.raises(SaveRefused, match="a pipe"):
        read_for_change(shop / "pipe.toml", root=shop)


def test_a_folder_under_the_files_name_is_refused(shop: Path) -> None:
    (shop / "taps.toml").mkdir()
    with pytest.raises(SaveRefused, match="a folder"):
        save(shop / "taps.toml", NEW)


@needs_root
def test_a_device_is_refused(shop: Path) -> None:
    try:
        os.mknod(shop / "null.toml", stat.S_IFCHR | 0o666, os.makedev(1, 3))
    except OSError:
        pytest.skip("no devices can be made here")
    with pytest.raises(SaveRefused, match="device"):
        save(shop / "null.toml", NEW)


def test_a_file_of_more_than_a_mebibyte_is_not_read(taps: Path) -> None:
    taps.write_bytes(b"#" * ((1 << 20) + 1))
    with pytest.raises(SaveRefused, match="larger than 1 MiB"):
        read_for_change(taps, root=taps.parent)


def test_a_folder_that_is_gone_gets_a_sentence(tmp_path: Path) -> None:
    with pytest.raises(SaveRefused, match=r"folder .*gone is no longer there"):
        save(tmp_path / "gone" / "taps.toml", NEW)


def test_a_really_full_disk_keeps_the_old_text(tmp_path: Path) -> None:
    if os.getuid() != 0 or os.system(f"mount -t tmpfs -o size=64k none {tmp_path} 2>/dev/null") != 0:
        pytest.skip("no small disk can be mounted here")
    try:
        file = tmp_path / "taps.toml"
        file.write_bytes(OLD)
        with pytest.raises(SaveRefused, match=r"disk that holds .*taps\.toml is full"):
            save(file, b"x" * 200_000)
        assert file.read_bytes() == OLD
        assert names(tmp_path) == {"taps.toml"}
    finally:
        os.system(f"umount {tmp_path}")


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
    with pytest.raises(SaveRefused, match=r"Another program has been saving .* 0\.05 seconds"):
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
        with locked(shop), pytest.raises(SaveRefused, match="Another program"), locked(shop, patience=0.03):
            pass


def test_a_lock_that_is_a_pipe_or_a_link_is_refused(shop: Path) -> None:
    os.mkfifo(shop / ".lock")
    with pytest.raises(SaveRefused, match="not a plain file"):
        save(shop / "taps.toml", NEW)
    (shop / ".lock").unlink()
    (shop / ".lock").symlink_to("/etc/passwd")
    with pytest.raises(SaveRefused, match="circle"):
        save(shop / "taps.toml", NEW)


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
