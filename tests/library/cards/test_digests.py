"""What lists of many cards show comes from a cache that may go at any time, and is never older than the cards."""

from __future__ import annotations

import os
import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from library.book.opening import open_book
from library.cards import digests as module
from library.cards.digests import Digests
from library.cards.history import history
from library.cards.index import card_rows
from library.cards.store import card_path, load, save
from library.cards.tables import records
from library.demo import BOOK

LIFE = "T-12-3"


@pytest.fixture
def yard(tmp_path: Path) -> Path:
    """The cards of the ferry yard, written long enough ago for a time stamp to show a change."""
    folder = tmp_path / "yard"
    shutil.copytree(BOOK, folder)
    for path in folder.rglob("*.toml"):
        os.utime(path, (1_700_000_000, 1_700_000_000))
    return folder


@pytest.fixture
def settled(monkeypatch: pytest.MonkeyPatch) -> None:
    """Files are taken as old enough for their time stamps to be believed."""
    monkeypatch.setattr("library.book.fetching.SETTLED", 0.0)


@pytest.fixture
def reads(settled: None, monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The ids of the cards that were read from their files."""
    found: list[str] = []

    def counted(book: Path, card_id: str) -> object:
        found.append(card_id)
        return load(book, card_id)

    monkeypatch.setattr(module, "load", counted)
    return found


def _ids(yard: Path) -> list[str]:
    return [row.id for row in card_rows(yard)]


def _csv(yard: Path, cache: Path | None) -> str:
    return Digests(yard, _ids(yard), cache).records(_ids(yard))


def test_records_are_the_same_from_the_cards_and_from_the_cache_and_read_once(
    yard: Path, tmp_path: Path, reads: list[str]
) -> None:
    wanted = records([load(yard, one).card for one in _ids(yard)])
    assert _csv(yard, None) == wanted
    reads.clear()
    assert _csv(yard, tmp_path / "cache") == wanted
    assert sorted(reads) == sorted(_ids(yard))
    reads.clear()
    assert _csv(yard, tmp_path / "cache") == wanted
    assert reads == []


def test_a_changed_card_is_read_again_and_no_other(yard: Path, tmp_path: Path, reads: list[str]) -> None:
    _csv(yard, tmp_path / "cache")
    changed = _ids(yard)[0]
    path = card_path(yard, changed)
    before = path.stat()
    text = path.read_text()
    assert "minutes" in text or "notes" in text
    # The same length and the same time stamp as before: only the time of the change itself tells it.
    path.write_text(text.replace("bronze", "BRONZE").replace("steel", "STEEL"))
    os.utime(path, ns=(before.st_atime_ns, before.st_mtime_ns))
    assert path.stat().st_size == before.st_size
    reads.clear()
    assert _csv(yard, tmp_path / "cache") == records([load(yard, one).card for one in _ids(yard)])
    assert reads == [changed]


def test_a_card_that_changed_a_moment_ago_is_not_believed_to_be_the_same(
    yard: Path, tmp_path: Path, reads: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("library.book.fetching.SETTLED", 1e9)
    _csv(yard, tmp_path / "cache")
    reads.clear()
    _csv(yard, tmp_path / "cache")
    assert sorted(reads) == sorted(_ids(yard))


@pytest.mark.usefixtures("settled")
@pytest.mark.parametrize("spoil", ["cut", "a bit", "another", "gone", "a folder"])
def test_a_cache_that_is_spoilt_is_not_believed(yard: Path, tmp_path: Path, spoil: str) -> None:
    wanted, cache = _csv(yard, tmp_path / "cache"), tmp_path / "cache"
    (file,) = cache.glob("card-digests-*")
    raw = file.read_bytes()
    match spoil:
        case "cut":
            file.write_bytes(raw[:-40])
        case "a bit":
            file.write_bytes(raw.replace(b"draft", b"drafs").replace(b"good", b"gooe"))
        case "another":
            file.write_bytes(b"[" * 100_000)
        case "gone":
            file.unlink()
        case "a folder":
            file.unlink()
            file.mkdir()
    assert _csv(yard, cache) == wanted


def test_the_life_of_a_tool_is_the_same_as_from_its_cards(
    yard: Path, tmp_path: Path, reads: list[str]
) -> None:
    ids = [row.id for row in card_rows(yard) if row.tool == LIFE]
    wanted = history(LIFE, [load(yard, one).card for one in ids], open_book(yard))
    assert len(wanted.visits) > 1
    assert wanted.left is not None
    for _ in range(2):
        found = Digests(yard, _ids(yard), tmp_path / "cache").life(LIFE, ids)
        assert (found.size, found.left, found.left_as_of) == (wanted.size, wanted.left, wanted.left_as_of)
        assert [
            (one.card.id, one.card.done, one.card.minutes, one.card.result, one.before, one.after)
            for one in found.visits
        ] == [
            (one.card.id, one.card.done, one.card.minutes, one.card.result, one.before, one.after)
            for one in wanted.visits
        ]
        reads.clear()
    Digests(yard, _ids(yard), tmp_path / "cache").life(LIFE, ids)
    assert reads == []


def test_sharpenings_left_follow_the_book_when_it_changes(
    yard: Path, tmp_path: Path, reads: list[str]
) -> None:
    ids = [row.id for row in card_rows(yard) if row.tool == LIFE]
    before = Digests(yard, _ids(yard), tmp_path / "cache").life(LIFE, ids)
    opened = load(yard, before.left_as_of)
    family = opened.card.family
    (yard / "own.toml").write_text(
        f'schema = 1\n\n[[family]]\nid = "{family}"\ntitle = "Nothing is ground on it"\nsurfaces = []\n'
    )
    reads.clear()
    after = Digests(yard, _ids(yard), tmp_path / "cache").life(LIFE, ids)
    wanted = history(LIFE, [load(yard, one).card for one in ids], open_book(yard))
    assert (after.left, after.left_as_of) == (wanted.left, wanted.left_as_of)
    assert reads != []


def test_cards_that_say_nothing_of_the_stock_are_not_worked_out(
    yard: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    ids = _ids(yard)
    for one in ids:
        path = card_path(yard, one)
        lines = [line for line in path.read_text().splitlines() if "stock_per_sharpening" not in line]
        path.write_text("\n".join(lines) + "\n")
    monkeypatch.setattr("library.cards.history.work_out", lambda *args: pytest.fail("a card was worked out"))
    assert Digests(yard, ids, tmp_path / "cache").life("T", ids).left is None


def test_a_card_that_cannot_be_read_is_told_of_and_hides_no_other(yard: Path, tmp_path: Path) -> None:
    ids = _ids(yard)
    card_path(yard, ids[0]).unlink()
    found = Digests(yard, ids, tmp_path / "cache")
    assert len(found.records(ids).splitlines()) == len(
        records([load(yard, one).card for one in ids[1:]]).splitlines()
    )
    assert [ids[0] in one for one in found.troubles] == [True]


@pytest.mark.usefixtures("settled")
def test_what_was_just_saved_is_shown(yard: Path, tmp_path: Path) -> None:
    ids = _ids(yard)
    _csv(yard, tmp_path / "cache")
    opened = load(yard, ids[0])
    save(yard, opened, replace(opened.card, remarks="Seen again."))
    assert "Seen again." in _csv(yard, tmp_path / "cache")
