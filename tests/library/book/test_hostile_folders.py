"""A folder may hold anything; the book is read around it, at once, and without a trace."""

from __future__ import annotations

import os
import socket
from pathlib import Path

import pytest

from library.book import fetching, walking
from library.book.fetching import Unreadable, fetch
from library.book.opening import open_book
from library.book.walking import walk

GOOD = 'schema = 1\n[[entry]]\nid = "good"\nfamily = "tap"\ntitle = "Good"\n'


def told(folder: Path) -> list[str]:
    """Findings of a folder, each after the path inside it; and the good entry has been read beside them."""
    (folder / "good.toml").write_text(GOOD)
    book = open_book(folder)
    assert book.entries["good"].title == "Good"
    return [str(finding).removeprefix(f"{folder}") for finding in book.findings]


def test_a_pipe_does_not_hold_the_program(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe.toml")
    assert told(tmp_path) == [
        "/pipe.toml:1:1: This is a pipe or a device, not a file. Give it a name that does not end in .toml."
    ]


def test_a_device_and_a_socket_are_no_files(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "device.toml").symlink_to("/dev/zero")
    with socket.socket(socket.AF_UNIX) as listener:
        monkeypatch.chdir(tmp_path)
        listener.bind("socket.toml")
        found = told(tmp_path)
    assert [line.split(": ")[0] for line in found] == ["/device.toml:1:1", "/socket.toml:1:1"]


def test_a_folder_named_like_a_file_is_looked_into(tmp_path: Path) -> None:
    (tmp_path / "folder.toml").mkdir()
    (tmp_path / "folder.toml" / "more.toml").write_text(GOOD.replace('"good"', '"more"'))
    assert told(tmp_path) == []
    assert "more" in open_book(tmp_path).entries


def test_a_link_to_nothing_is_told_of(tmp_path: Path) -> None:
    (tmp_path / "link.toml").symlink_to(tmp_path / "nothing")
    assert told(tmp_path) == [
        "/link.toml:1:1: This is not there any more, or is a link to nothing. Fix the link or remove it."
    ]


def test_a_link_that_leads_to_itself_is_told_of(tmp_path: Path) -> None:
    (tmp_path / "link.toml").symlink_to("link.toml")
    assert told(tmp_path) == ["/link.toml:1:1: This is a link that leads back to itself. Remove the link."]


def test_a_folder_that_leads_back_to_one_above_it_is_read_once(tmp_path: Path) -> None:
    (tmp_path / "taps").mkdir()
    (tmp_path / "taps" / "again").symlink_to(tmp_path)
    assert told(tmp_path) == [
        "/taps/again:1:1: This link leads back to a folder that it lies in. Remove the link."
    ]


def test_folders_deeper_than_anyone_would_make_them_are_told_of(tmp_path: Path) -> None:
    deep = tmp_path.joinpath(*["d"] * 20)
    deep.mkdir(parents=True)
    assert [line.split(": ")[1] for line in told(tmp_path)] == [
        "Folders lie more than 16 deep. Move the files further up."
    ]


def test_a_file_that_is_too_large_is_told_of_and_not_read(tmp_path: Path) -> None:
    (tmp_path / "large.toml").write_bytes(b"#" * (fetching.LARGEST_FILE + 1))
    assert told(tmp_path) == [
        "/large.toml:1:1: The file is larger than 1 MiB and was not read. Divide it into several files."
    ]


def test_a_file_of_the_largest_size_is_read(tmp_path: Path) -> None:
    text = GOOD + "# remark\n" * 120_000
    (tmp_path / "large.toml").write_text(text[: fetching.LARGEST_FILE])
    assert fetch(tmp_path / "large.toml")[1].size == fetching.LARGEST_FILE
    assert "good" in open_book(tmp_path).entries


def test_a_file_that_grows_while_it_is_read_stays_within_the_limit(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "grows.toml").write_text("schema = 1\n")
    monkeypatch.setattr(os, "read", lambda handle, room: b"#" * min(room, 65_536))
    with pytest.raises(Unreadable, match="larger than 1 MiB"):
        fetch(tmp_path / "grows.toml")


@pytest.mark.parametrize(
    ("error", "words"),
    [
        (
            PermissionError(13, "no"),
            "You have no permission to read this. Ask whoever owns it for the right to read.",
        ),
        (
            OSError(5, "io"),
            "The system could not read this (Input/output error). Look at the disk or the network.",
        ),
        (
            OSError(116, "stale"),
            "The system could not read this (Stale file handle). Look at the disk or the network.",
        ),
    ],
)
def test_what_the_system_refuses_is_told_and_the_rest_is_read(
    error: OSError, words: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "bad.toml").write_text(GOOD)
    (tmp_path / "locked").mkdir()
    opened = os.open

    def refuse(path: Path, flags: int, *rest: int) -> int:
        if Path(path).name in {"bad.toml", "locked"}:
            raise error
        return opened(path, flags, *rest)

    monkeypatch.setattr(os, "open", refuse)
    assert told(tmp_path) == [f"/bad.toml:1:1: {words}", f"/locked:1:1: {words}"]


def test_a_shop_folder_that_is_a_file_is_told_of(tmp_path: Path) -> None:
    (tmp_path / "book").write_text("not a folder")
    assert [finding.place.file.name for finding in open_book(tmp_path / "book").findings] == ["book"]


def test_hidden_files_folders_and_the_cards_are_left_alone(tmp_path: Path) -> None:
    for name in (".git", "cards", ".drafts"):
        (tmp_path / name).mkdir()
        (tmp_path / name / "bad.toml").write_text("not = = toml")
    (tmp_path / ".hidden.toml").write_text("not = = toml")
    (tmp_path / "notes.txt").write_text("not toml")
    assert told(tmp_path) == []


def test_very_many_files_are_read_and_told_of(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(walking, "MOST_FILES", 3)
    monkeypatch.setattr(walking, "MOST_FILES_AT_ALL", 5)
    for number in range(5):
        (tmp_path / f"{number}.toml").write_text("schema = 1\n")
    found = walk(tmp_path)
    assert len(found.files) == 5
    assert [finding.wrong for finding in found.findings] == ["There are 5 files, more than 3."]
    (tmp_path / "5.toml").write_text("schema = 1\n")
    found = walk(tmp_path)
    assert len(found.files) == 5
    assert found.findings[0].wrong == "There are more than 5 files; the rest was not read."


def test_a_folder_that_is_no_book_is_not_looked_through_without_end(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(walking, "MOST_FOLDERS", 4)
    for number in range(6):
        (tmp_path / f"{number}").mkdir()
        (tmp_path / f"{number}" / "a.toml").write_text("schema = 1\n")
    found = walk(tmp_path)
    assert len(found.files) == 3
    assert [finding.wrong for finding in found.findings] == [
        "There are more than 4 folders; the rest was not read."
    ]


def stamps(folder: Path) -> dict[str, tuple[int, int, int, int]]:
    """Mode and all three times of everything in a folder, taken without reading anything."""
    found = {}
    for path in [folder, folder / "good.toml", folder / "taps", folder / "taps" / "bad.toml"]:
        status = path.stat()
        found[str(path)] = (status.st_mode, status.st_atime_ns, status.st_mtime_ns, status.st_ctime_ns)
    return found


def test_reading_changes_no_byte_and_no_time_stamp(tmp_path: Path) -> None:
    (tmp_path / "taps").mkdir()
    names = ("good.toml", "taps/bad.toml")
    for name in names:
        (tmp_path / name).write_text(GOOD + "broken = = 1\n")
    for path in (tmp_path / "good.toml", tmp_path / "taps" / "bad.toml", tmp_path / "taps", tmp_path):
        os.utime(
            path, (1_000_000_000, 1_100_000_000)
        )  # read long before it was changed: any reading would show
    before = stamps(tmp_path)
    assert len(open_book(tmp_path).findings) == 3
    assert stamps(tmp_path) == before
    assert {(tmp_path / name).read_text() for name in names} == {GOOD + "broken = = 1\n"}


def test_a_file_name_cannot_reach_the_terminal_as_a_command(tmp_path: Path) -> None:
    (tmp_path / "evil\x1b[31m.toml").write_text("broken = = 1\n")
    (tmp_path / os.fsdecode(b"latin-\xe9.toml")).write_text("broken = = 1\n")
    lines = "\n".join(told(tmp_path))
    assert "\x1b" not in lines
    assert "evil\N{REPLACEMENT CHARACTER}[31m.toml:1:8" in lines
    lines.encode("utf-8")
