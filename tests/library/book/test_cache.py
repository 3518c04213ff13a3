"""The cache makes the second start fast, and nothing else: deleted, spoilt or poisoned, the book stays the same."""

from __future__ import annotations

import json
import os
import random
import re
import stat
import time
import zlib
from pathlib import Path

import pytest

from library.book import book_reader, fetching, index, opening
from library.book.fetching import Signature
from library.book.model import Book, Layer
from library.book.opening import open_book, quick_rows
from library.book.parsing import Parsed, parse
from tests.examples import every_third_at_once
from tests.library.book.small_books import cache_files, the_index, write

pytestmark = pytest.mark.usefixtures("three_tables")


def content(book: Book) -> dict[str, object]:
    """Everything that a book says."""
    kinds = (book.entries, book.families, book.materials, book.cautions, book.sources, *book.more.values())
    made = {f"{number} {name}": thing for number, kind in enumerate(kinds) for name, thing in kind.items()}
    return {**made, "findings": book.findings, "rows": list(book.rows)}


def files_read(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The names of the files that are read and checked from now on."""
    names: list[str] = []

    def noted(raw: bytes, file: Path, layer: Layer) -> Parsed:
        names.append(file.name)
        return parse(raw, file, layer)

    monkeypatch.setattr(book_reader, "parse", noted)
    return names


def test_a_second_start_reads_no_file_and_says_the_same(shop: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    first = content(open_book(shop))
    names = files_read(monkeypatch)
    assert content(open_book(shop)) == first
    assert names == []
    assert len([key for key in first if key.startswith("0 ")]) > 6


def test_only_a_file_that_changed_is_read_again(shop: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    open_book(shop)
    write(shop / "b.toml", "b1", "b3")
    names = files_read(monkeypatch)
    book = open_book(shop)
    assert names == ["b.toml"]
    assert "b3" in book.entries
    assert "b2" not in book.entries
    assert content(book) == content(open_book(shop, afresh=True))


def test_a_new_source_makes_every_file_be_checked_again(shop: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (shop / "a.toml").write_text(
        'schema = 1\n[[entry]]\nid = "a"\nfamily = "tap"\ntitle = "A"\n'
        'rake_angle = { usual = "5 deg", source = "notebook", place = "page 1" }\n'
    )
    before = [finding.wrong for finding in open_book(shop).findings]
    assert "There is no source 'notebook' in the book." in before
    (shop / "sources.toml").write_text('schema = 1\n[[source]]\nid = "notebook"\ntitle = "Notebook"\n')
    names = files_read(monkeypatch)
    after = [finding.wrong for finding in open_book(shop).findings]
    assert "a.toml" in names
    assert "There is no source 'notebook' in the book." not in after


def test_a_file_that_goes_takes_its_entries_and_problems_along(shop: Path) -> None:
    assert {finding.place.file.name for finding in open_book(shop).findings} == {"a.toml", "b.toml", "c.toml"}
    (shop / "b.toml").unlink()
    book = open_book(shop)
    assert "b1" not in book.entries
    assert {finding.place.file.name for finding in book.findings} == {"a.toml", "c.toml"}


def test_a_change_that_keeps_size_and_time_of_change_is_seen(shop: Path) -> None:
    open_book(shop)
    before = (shop / "a.toml").stat()
    (shop / "a.toml").write_text((shop / "a.toml").read_text().replace("Tap a1", "Tip a1"))
    os.utime(shop / "a.toml", ns=(before.st_atime_ns, before.st_mtime_ns))
    assert open_book(shop).entries["a1"].title == "Tip a1"


def test_a_file_that_was_changed_a_moment_ago_is_not_trusted_to_be_settled(
    shop: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(fetching, "SETTLED", 3600.0)
    open_book(shop)
    names = files_read(monkeypatch)
    open_book(shop)
    assert names[-3:] == ["a.toml", "b.toml", "c.toml"]


@pytest.mark.parametrize("days", [-1, 1])
def test_a_change_is_seen_whichever_way_the_clock_was_set(shop: Path, days: int) -> None:
    open_book(shop)
    file = shop / "a.toml"
    for title in ("Tip a1", "Top a1"):
        file.write_text(re.sub("T.p a1", title, file.read_text()))
        moved = time.time_ns() + days * 86_400 * 10**9
        os.utime(file, ns=(moved, moved))
        assert open_book(shop).entries["a1"].title == title


def test_two_changes_within_one_step_of_the_disks_clock_are_both_seen(
    shop: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    # A disk that counts in steps of two seconds, as those of memory cards do.
    step = time.time_ns() // 10**9 * 10**9
    monkeypatch.setattr(Signature, "of", lambda status: Signature(step, step, status.st_size))
    file = shop / "a.toml"
    for title in ("Tip a1", "Top a1"):
        file.write_text(re.sub("T.p a1", title, file.read_text()))
        assert open_book(shop).entries["a1"].title == title


def test_stamps_that_lie_ahead_are_believed_like_old_ones(
    shop: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    # The clock was set back by a day after the files were written: they need not be read at every start.
    ahead = time.time_ns() + 86_400 * 10**9 + 1
    monkeypatch.setattr(Signature, "of", lambda status: Signature(ahead, ahead, status.st_size))
    monkeypatch.setattr(fetching, "SETTLED", 0.1)
    open_book(shop)
    names = files_read(monkeypatch)
    open_book(shop)
    assert names == []


def test_deleting_the_cache_changes_nothing(shop: Path) -> None:
    before = content(open_book(shop))
    for file in cache_files():
        file.unlink()
    assert content(open_book(shop)) == before


@pytest.mark.parametrize("seed", every_third_at_once(range(40)))
def test_a_spoilt_cache_changes_nothing(seed: int, shop: Path) -> None:
    before = content(open_book(shop))
    chance = random.Random(seed)
    for file in cache_files():
        raw = bytearray(file.read_bytes())
        match seed % 4:
            case 0:
                raw = raw[: chance.randrange(len(raw))]
            case 1:
                raw[chance.randrange(len(raw))] ^= 1 << chance.randrange(8)
            case 2:
                raw = bytearray(chance.randbytes(chance.randrange(2000)))
            case _:
                raw += b"more"
        file.write_bytes(raw)
    assert content(open_book(shop)) == before
    assert content(open_book(shop)) == before


def test_another_version_of_the_program_does_not_trust_the_cache(
    shop: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    open_book(shop)
    monkeypatch.setattr(index, "FORMAT", index.FORMAT + 1)
    names = files_read(monkeypatch)
    open_book(shop)
    assert {"a.toml", "b.toml", "c.toml"} <= set(names)


def parts_of(file: Path) -> list[bytes]:
    beginning, rest = file.read_bytes().split(b"\n", 1)
    parts = []
    for size in (int(word.split(b":")[1]) for word in beginning.split()[1:]):
        parts.append(rest[:size])
        rest = rest[size:]
    return parts


def poison(file: Path, parts: list[bytes]) -> None:
    """Write a cache file whose first line fits what follows."""
    words = " ".join(f"{zlib.crc32(part)}:{len(part)}" for part in parts)
    file.write_bytes(f"heelclear {words}\n".encode() + b"".join(parts))


@pytest.mark.parametrize(
    "change",
    [
        {"notes": 7},
        {"notes": [["/etc/passwd", "shop", 1, 2, 3]]},
        {"notes": [[7, "shop", 1, 2, 3]]},
        {"others": {"family": [["family"]]}},
        {"others": {"family": [[7] * 10]}},
        {"findings": [[1, 2, 3, 4, 5, 6, 7, 8]]},
        {"stamp": None},
    ],
)
def test_a_poisoned_cache_is_not_used(change: dict[str, object], shop: Path) -> None:
    before = content(open_book(shop))
    head, *rest = parts_of(the_index())
    poison(the_index(), [json.dumps({**json.loads(head), **change}).encode(), *rest])
    assert content(open_book(shop)) == before


@pytest.mark.parametrize(
    "sizes", ["1 2", "0:-5 0:1 0:1 0:1", f"0:{10**30} 0:0 0:0 0:0", "many", "", "0:0 " * 5]
)
def test_a_cache_with_wrong_lengths_is_not_used(sizes: str, shop: Path) -> None:
    before = content(open_book(shop))
    rest = the_index().read_bytes().split(b"\n", 1)[1]
    the_index().write_bytes(f"heelclear {sizes}\n".encode() + rest)
    assert content(open_book(shop)) == before


def test_no_number_and_no_command_comes_out_of_a_poisoned_cache(shop: Path) -> None:
    open_book(shop)
    parts = parts_of(the_index())
    change = {b"Tap a1": b"T\x1b[1m1", b"rake_angle=0": b"rake_angle=9"}
    for old, new in change.items():
        assert any(old in part for part in parts)
        parts = [part.replace(old, new) for part in parts]
    poison(the_index(), parts)
    book = open_book(shop)
    poisoned = next(row for row in book.rows if row.id == "a1")
    assert poisoned.title == "T\N{REPLACEMENT CHARACTER}[1m1"
    assert book.entries["a1"].title == "Tap a1"
    usual = book.entries["a1"].values["rake_angle"].usual
    assert usual is not None
    assert usual.number == pytest.approx(0.0872664626)


@pytest.mark.parametrize(
    "parts", ["zzz", "", "0:1", "0:5:99999999:1", "99:0:40:1", "-1:0:40:1", "0:-7:-3:-1"]
)
def test_wrong_places_in_the_cache_lead_to_no_other_table(parts: str, shop: Path) -> None:
    (shop / "a.toml").write_text('schema = 1\n[[family]]\nid = "tap"\ntitle = "Our taps"\n')
    open_book(shop)
    (reads,) = (file for file in cache_files() if file.name == "reads")
    head = json.loads(parts_of(reads)[0])
    for _, rows, _ in head["reads"]:
        for row in rows:
            row[-1] = parts
    poison(reads, [json.dumps(head).encode()])
    the_index().unlink()
    write(shop / "b.toml", "b1", "b7")
    book = open_book(shop)
    assert book.entries["b7"].title == "Tap b7"
    assert {entry.id for entry in map(book.entries.get, book.entries) if entry} >= {"b1", "b7"}


def test_a_deeply_nested_cache_is_not_used(shop: Path) -> None:
    before = content(open_book(shop))
    for file in cache_files():
        poison(file, [b"[" * 1_000_000, *parts_of(file)[1:]])
    assert content(open_book(shop)) == before


def test_a_cache_that_cannot_be_written_is_done_without(shop: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    before = content(open_book(shop))
    monkeypatch.setattr(opening, "cache_folder", lambda: shop / "a.toml")
    assert content(open_book(shop)) == before
    assert quick_rows(shop).find("a1") is not None


def test_a_full_disk_leaves_no_half_cache(shop: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(index.os, "replace", full)  # type: ignore[attr-defined]
    assert "a1" in open_book(shop).entries
    assert cache_files() == []


def test_a_cache_that_is_a_pipe_does_not_hold_the_program(shop: Path) -> None:
    open_book(shop)
    for file in cache_files():
        file.unlink()
        os.mkfifo(file)
    assert "a1" in open_book(shop).entries
    assert all(stat.S_ISREG(file.stat().st_mode) for file in cache_files())
