"""Cards on a machine whose clock was set back, or on a disk whose clock goes in steps."""

from __future__ import annotations

import os
import time
from datetime import date, timedelta
from pathlib import Path

import pytest

from library.book.fetching import Signature
from library.cards.digests import Digests
from library.cards.index import card_rows
from library.cards.model import Card, Tool
from library.cards.store import card_path, create, load
from library.files import watching

TODAY = date(2026, 11, 26)


def named(name: str) -> Card:
    return Card(family="tap", tool=Tool(name=name))


def test_a_clock_that_goes_back_by_a_day_gives_no_card_the_number_of_another(tmp_path: Path) -> None:
    days = (TODAY, TODAY - timedelta(days=1), TODAY, TODAY - timedelta(days=1), TODAY)
    made = {create(tmp_path, named(f"T-{number}"), day).card.id: number for number, day in enumerate(days)}
    assert sorted(made) == [
        "2026-11-25-01",
        "2026-11-25-02",
        "2026-11-26-01",
        "2026-11-26-02",
        "2026-11-26-03",
    ]
    assert all(load(tmp_path, card).card.tool.name == f"T-{number}" for card, number in made.items())


def test_a_year_that_begins_twice_numbers_its_cards_on(tmp_path: Path) -> None:
    ids = [
        create(tmp_path, named("T"), day).card.id
        for day in (date(2027, 1, 1), date(2026, 12, 31), date(2027, 1, 1))
    ]
    assert ids == ["2027-01-01-01", "2026-12-31-01", "2027-01-01-02"]


def rewrite(book: Path, card: str, old: str, new: str) -> None:
    """Change a card in place, the same in length."""
    path = card_path(book, card)
    path.write_text(path.read_text().replace(old, new))


def shown(book: Path, cache: Path) -> tuple[str, str]:
    """The name of the tool in the list of cards, and in the records."""
    rows = card_rows(book, cache)
    return rows[0].tool, Digests(book, [rows[0].id], cache).records([rows[0].id])


@pytest.mark.parametrize("days", [-1, 0, 1])
def test_a_changed_card_is_shown_as_it_is_whichever_way_the_clock_was_set(tmp_path: Path, days: int) -> None:
    book, cache = tmp_path / "book", tmp_path / "cache"
    card = create(book, named("T-1"), TODAY).card.id
    stamp = card_path(book, card).stat().st_mtime_ns
    for old, new in (("T-1", "T-2"), ("T-2", "T-3")):
        shown(book, cache)
        rewrite(book, card, old, new)
        moved = stamp + days * 86_400 * 10**9
        os.utime(card_path(book, card), ns=(moved, moved))
        tool, told = shown(book, cache)
        assert tool == new
        assert new in told


def test_two_changes_within_one_step_of_the_disks_clock_are_both_shown(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    book, cache = tmp_path / "book", tmp_path / "cache"
    card = create(book, named("T-1"), TODAY).card.id
    # A disk that counts in steps of two seconds, as those of memory cards do.
    step = time.time_ns() // 10**9 * 10**9
    monkeypatch.setattr(Signature, "of", lambda status: Signature(step, step, status.st_size))
    monkeypatch.setattr(watching, "_stamp", lambda path: (step, step, path.stat().st_size, 1))
    for old, new in (("T-1", "T-2"), ("T-2", "T-3")):
        shown(book, cache)
        rewrite(book, card, old, new)
        tool, told = shown(book, cache)
        assert tool == new
        assert new in told
