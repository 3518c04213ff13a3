"""New cards that are begun at the same second of the clock are two, and so are their drafts."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

import pytest

from library.book.model import Book
from library.drafts.draft import Draft
from tui.services import card_service
from tui.services.card_service import CardService


class Stopped(datetime):
    """A clock that was set back to the same second again and again."""

    @classmethod
    def now(cls, tz: object = None) -> datetime:  # type: ignore[override]
        return datetime(2026, 10, 25, 2, 30)


def test_each_new_card_has_a_name_of_its_own_also_beside_one_brought_back(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, book: Book
) -> None:
    monkeypatch.setattr(card_service, "datetime", Stopped)
    cards = CardService(tmp_path)
    left = "new card, begun 2026-10-25 02:30:00"
    brought = cards.brought_back(Draft("job-card", left, {"notes": "half"}), book)
    begun = [cards.begin(book, None, "mm") for _ in range(2)]
    names = [brought.about, *(one.about for one in begun)]
    assert names[0] == left
    assert len(set(names)) == 3
