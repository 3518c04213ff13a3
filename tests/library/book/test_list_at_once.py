"""The list at once is the kept one, taken from the cache piece by piece, over the whole shipped book."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from library.book.opening import open_book, quick_rows
from tests.examples import every_third_at_once
from tests.library.book.small_books import the_index


def test_the_list_at_once_is_the_list_of_the_book(shop: Path) -> None:
    book = open_book(shop)
    rows = quick_rows(shop)
    assert rows.fresh
    assert [row._replace(search="") for row in rows] == list(book.rows)
    assert rows.matching("tap b1") == [number for number, row in enumerate(rows) if row.id == "b1"]
    assert rows.ids() == [row.id for row in book.rows]


def test_the_list_at_once_reads_no_more_of_the_cache_than_is_shown(shop: Path) -> None:
    open_book(shop)
    rows = quick_rows(shop)
    (shown, *_), count = rows[:1], len(rows)
    file = the_index()
    raw = file.read_bytes()
    file.unlink()
    file.write_bytes(raw.replace(b"Tap", b"Tip"))
    assert len(rows) == count
    assert rows[0].id == ""
    assert shown.id != ""


@pytest.mark.parametrize("seed", every_third_at_once(range(20)))
def test_the_list_at_once_of_a_spoilt_cache_is_no_crash(seed: int, shop: Path) -> None:
    open_book(shop)
    file = the_index()
    raw = bytearray(file.read_bytes())
    chance = random.Random(seed)
    for _ in range(50):
        raw[chance.randrange(len(raw) // 2, len(raw))] = chance.randrange(256)
    file.write_bytes(raw)
    rows = quick_rows(shop)
    file.write_bytes(raw[: len(raw) // 2] if seed % 2 else b"")
    assert len(list(rows)) == len(rows)
    assert isinstance(rows.matching("tap"), list)
    assert rows.find("a1") is None
