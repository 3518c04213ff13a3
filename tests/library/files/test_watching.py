"""Noticing a change on disk."""

from __future__ import annotations

import os
import time
from pathlib import Path

import pytest

from library.book import fetching
from library.files import watching
from library.files.safe_write import ANYTHING, write_safely
from library.files.watching import Watch


def test_a_quiet_folder_has_no_news(tmp_path: Path) -> None:
    (tmp_path / "taps.toml").write_text("schema = 1\n")
    watch = Watch(tmp_path)
    assert watch.changed() == ()


def test_what_is_changed_added_and_removed_is_told_once(tmp_path: Path) -> None:
    for name in ("a.toml", "b.toml", "c.toml"):
        (tmp_path / name).write_text("schema = 1\n")
    watch = Watch(tmp_path)
    (tmp_path / "a.toml").write_text("schema = 1 # more\n")
    (tmp_path / "b.toml").unlink()
    (tmp_path / "deep").mkdir()
    (tmp_path / "deep" / "d.toml").write_text("")
    assert watch.changed() == (tmp_path / "a.toml", tmp_path / "b.toml", tmp_path / "deep" / "d.toml")
    assert watch.changed() == ()


def test_a_change_that_keeps_size_and_time_is_seen_by_its_inode(tmp_path: Path) -> None:
    file = tmp_path / "a.toml"
    file.write_bytes(b"number = 1\n")
    before = file.stat()
    watch = Watch(tmp_path)
    write_safely(file, b"number = 2\n", root=tmp_path, expected=ANYTHING)
    os.utime(file, ns=(before.st_atime_ns, before.st_mtime_ns))
    assert watch.changed() == (file,)


def test_a_change_in_place_that_keeps_size_and_time_of_change_is_seen(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(fetching, "SETTLED", 0.0)
    file = tmp_path / "a.toml"
    file.write_bytes(b"number = 1\n")
    before = file.stat()
    watch = Watch(tmp_path)
    file.write_bytes(b"number = 2\n")
    os.utime(file, ns=(before.st_atime_ns, before.st_mtime_ns))
    assert watch.changed() == (file,)
    assert watch.changed() == ()


@pytest.mark.parametrize("days", [-1, 1])
def test_a_change_is_seen_once_whichever_way_the_clock_was_set(tmp_path: Path, days: int) -> None:
    file = tmp_path / "a.toml"
    file.write_bytes(b"number = 1\n")
    watch = Watch(tmp_path)
    file.write_bytes(b"number = 2\n")
    moved = file.stat().st_mtime_ns + days * 86_400 * 10**9
    os.utime(file, ns=(moved, moved))
    assert watch.changed() == (file,)
    assert watch.changed() == ()


def test_two_changes_within_one_step_of_the_disks_clock_are_both_seen(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    # A disk that counts in steps of two seconds, as those of memory cards do.
    step = time.time_ns() // 10**9 * 10**9
    monkeypatch.setattr(watching, "_stamp", lambda path: (step, step, path.stat().st_size, 1))
    file = tmp_path / "a.toml"
    file.write_bytes(b"number = 1\n")
    watch = Watch(tmp_path)
    for number in (b"2", b"3"):
        file.write_bytes(b"number = %b\n" % number)
        assert watch.changed() == (file,)
        assert watch.changed() == ()


def test_hidden_files_and_other_files_are_no_news(tmp_path: Path) -> None:
    watch = Watch(tmp_path)
    (tmp_path / ".lock").write_text("")
    (tmp_path / ".git").mkdir()
    (tmp_path / ".git" / "x.toml").write_text("")
    (tmp_path / "readme.txt").write_text("")
    os.mkfifo(tmp_path / "pipe")
    assert watch.changed() == ()


def test_a_change_behind_a_link_to_a_folder_is_news_too(tmp_path: Path) -> None:
    shared, shop = tmp_path / "shared", tmp_path / "shop"
    shared.mkdir()
    shop.mkdir()
    (shop / "ours").symlink_to(shared)
    (shared / "round").symlink_to(shared)
    (shop / "itself.toml").symlink_to("itself.toml")
    watch = Watch(shop)
    (shared / "a.toml").write_text("schema = 1\n")
    assert watch.changed() == (shop / "ours" / "a.toml",)
    assert watch.changed() == ()


def test_a_folder_that_is_no_book_is_not_looked_through_without_end(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(watching, "MOST_FOLDERS", 3)
    for number in range(6):
        (tmp_path / str(number)).mkdir()
        (tmp_path / str(number) / "a.toml").write_text("schema = 1\n")
    assert len(watching.stamps(tmp_path)) == 2


def test_a_folder_that_comes_and_goes_is_no_crash(tmp_path: Path) -> None:
    folder = tmp_path / "shop"
    watch = Watch(folder)
    folder.mkdir()
    (folder / "a.toml").write_text("")
    assert watch.changed() == (folder / "a.toml",)
    (folder / "a.toml").unlink()
    folder.rmdir()
    assert watch.changed() == (folder / "a.toml",)


def test_five_hundred_files_are_looked_at_once_each_and_none_is_opened(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    for number in range(500):
        (tmp_path / f"{number}.toml").write_text("")
    monkeypatch.setattr(fetching, "SETTLED", 0.0)
    watch = Watch(tmp_path)
    looked: list[Path] = []
    stat = Path.stat

    def noted(path: Path) -> os.stat_result:
        looked.append(path)
        return stat(path)

    monkeypatch.setattr(Path, "stat", noted)
    monkeypatch.setattr("builtins.open", None)
    monkeypatch.setattr(os, "open", None)
    assert watch.changed() == ()
    monkeypatch.undo()
    assert sorted(looked) == sorted([tmp_path, *tmp_path.iterdir()])
