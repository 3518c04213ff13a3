"""Folders that may not be looked into, or not be passed through: said of book and cards, and never taken for empty."""

from __future__ import annotations

import os
from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest

from library.book.opening import SHIPPED, open_book
from library.cards.check_files import card_findings
from library.cards.folders_not_read import folders_not_read
from library.cards.model import Card
from library.cards.store import NoCard, create, load
from library.errors import SaveError
from library.files.reach import is_missing
from library.history.work_tree import find_work_tree

DAY = date(2026, 11, 25)
ID = "2026-11-25-01"
AsNobody = Callable[[Callable[[], object]], int]
UNREAD = "You have no permission to read this."


@pytest.fixture
def book(shop: Path) -> Path:
    """A book with an entry and a card, opened once, so that all of the program is loaded."""
    (shop / "taps.toml").write_text('schema = 1\n[[entry]]\nid = "a"\nfamily = "tap"\ntitle = "A"\n')
    create(shop, Card(), DAY)
    assert "a" in open_book(shop).entries
    assert load(shop, ID).card.id == ID
    assert folders_not_read(shop) == card_findings(shop) == ()
    assert find_work_tree(shop / "none") is None
    return shop


def shut(folder: Path, mode: int) -> None:
    if os.getuid() != 0:
        folder.chmod(mode)
    else:
        os.chown(folder, 65534, 65534)
        folder.chmod(mode)


@pytest.mark.parametrize("mode", [0o000, 0o600, 0o200])
def test_a_book_behind_a_shut_folder_is_told_of(book: Path, mode: int, as_nobody: AsNobody) -> None:
    shut(book.parent, mode)

    def work() -> None:
        told = open_book(book, afresh=True)
        # The checkout itself may lie where nobody else may look.
        own = [one for one in told.findings if one.place.file != SHIPPED]
        assert [(one.place.file, one.wrong) for one in own] == [(book, UNREAD)]
        assert "tap-hand-plain-steel" in told.entries or not os.access(SHIPPED, os.R_OK | os.X_OK)
        (cards,) = card_findings(book)
        assert cards.place.file == book / "cards"
        assert UNREAD in cards.wrong
        with pytest.raises(NoCard, match=f"card .*{ID}.toml cannot be read: {UNREAD}"):
            load(book, ID)
        with pytest.raises(SaveError):
            create(book, Card(), DAY)
        assert not is_missing(book)
        assert find_work_tree(book) is None

    try:
        assert as_nobody(work) == 0
    finally:
        book.parent.chmod(0o711)


@pytest.mark.parametrize("mode", [0o000, 0o600, 0o300])
@pytest.mark.parametrize("place", ["cards", "cards/2026"])
def test_a_shut_folder_of_cards_is_told_of_once(
    book: Path, place: str, mode: int, as_nobody: AsNobody
) -> None:
    shut(book / place, mode)

    def work() -> None:
        (told,) = folders_not_read(book)
        assert str(told.place.file).startswith(str(book / "cards"))
        assert told.wrong == f"Cards in this folder were not read. {UNREAD}"

    try:
        assert as_nobody(work) == 0
    finally:
        (book / place).chmod(0o755)


def test_no_folder_of_cards_and_no_book_are_nothing_to_tell(tmp_path: Path) -> None:
    assert folders_not_read(tmp_path / "none") == ()
    (tmp_path / "file").write_text("x")
    assert folders_not_read(tmp_path / "file") == ()
    assert is_missing(tmp_path / "file" / "x")
