"""The program in the invented ferry yard."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.model import Card
from library.demo import BOOK, lay_out
from tui.app import Heelclear
from tui.session import Session
from tui.view.card_form import CardForm

SMALL = (80, 24)

AtTheYard = Callable[..., AbstractAsyncContextManager[Any]]


@pytest.fixture(scope="session")
def yard_book() -> Book:
    """The book of the invented ferry yard, as it is shipped."""
    return open_book(BOOK)


def form_at(book: Book, card: Card, way: str) -> CardForm:
    """The form of a card, a line of it in hand."""
    form = CardForm(book, card)
    form.go_to(way)
    return form


@pytest.fixture
def yard(tmp_path: Path) -> Path:
    """The invented book, laid out afresh."""
    folder = tmp_path / "ferry-yard"
    lay_out(folder)
    return folder


@pytest.fixture
def at_the_yard(yard: Path, tmp_path: Path, hands_on: Any) -> AtTheYard:
    """Opens the program on the invented book."""

    def opened(size: tuple[int, int] = SMALL, shop: Path = yard) -> AbstractAsyncContextManager[Any]:
        return hands_on(  # type: ignore[no-any-return]
            Heelclear(Session(), lambda: open_book(shop), shop, tmp_path / "state"), shop, size
        )

    return opened
