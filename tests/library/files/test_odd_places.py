"""Links, pipes, devices and folders where a file should be: a sentence each, and nothing lost."""

from __future__ import annotations

import os
import stat
from pathlib import Path

import pytest

from library.errors import SaveError
from library.files.disk import Disk
from library.files.safe_write import ANYTHING, read_for_change, write_safely

OLD = b'schema = 1\ntitle = "old"\n' * 40
NEW = b'schema = 1\ntitle = "new"\n' * 60
needs_root = pytest.mark.skipif(os.getuid() != 0, reason="only root can be two people, or make a device")


def save(file: Path, data: bytes, disk: Disk | None = None, expected: str = ANYTHING) -> str:
    return write_safely(file, data, root=file.parent, expected=expected, disk=disk or Disk()).warning


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
    with pytest.raises(SaveError, match=r"leads to .*outside\.toml, which is outside"):
        save(link, NEW)
    with pytest.raises(SaveError, match="outside"):
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
    with pytest.raises(SaveError, match="circle"):
        save(shop / "a.toml", NEW)


def test_a_second_hard_link_is_refused_and_stays_one_file(tmp_path: Path, taps: Path) -> None:
    second = tmp_path / "second.toml"
    second.hardlink_to(taps)
    with pytest.raises(SaveError, match="second name"):
        save(taps, NEW)
    assert taps.samefile(second)
    assert taps.read_bytes() == OLD


def test_a_pipe_does_not_hang(shop: Path) -> None:
    os.mkfifo(shop / "pipe.toml")
    with pytest.raises(SaveError, match="a pipe"):
        save(shop / "pipe.toml", NEW)
    with pytest.raises(SaveError, match="a pipe"):
        read_for_change(shop / "pipe.toml", root=shop)


def test_a_folder_under_the_files_name_is_refused(shop: Path) -> None:
    (shop / "taps.toml").mkdir()
    with pytest.raises(SaveError, match="a folder"):
        save(shop / "taps.toml", NEW)


@needs_root
def test_a_device_is_refused(shop: Path) -> None:
    try:
        os.mknod(shop / "null.toml", stat.S_IFCHR | 0o666, os.makedev(1, 3))
    except OSError:
        pytest.skip("no devices can be made here")
    with pytest.raises(SaveError, match="device"):
        save(shop / "null.toml", NEW)


def test_a_file_of_more_than_a_mebibyte_is_not_read(taps: Path) -> None:
    taps.write_bytes(b"#" * ((1 << 20) + 1))
    with pytest.raises(SaveError, match="larger than 1 MiB"):
        read_for_change(taps, root=taps.parent)


def test_a_folder_that_is_gone_gets_a_sentence(tmp_path: Path) -> None:
    with pytest.raises(SaveError, match=r"folder .*gone is no longer there"):
        save(tmp_path / "gone" / "taps.toml", NEW)
