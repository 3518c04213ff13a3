"""The program in the invented ferry yard."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

import pytest

from library.book.opening import open_book
from library.demo import lay_out
from tui.app import Heelclear
from tui.session import Session

SMALL = (80, 24)

AtTheYard = Callable[..., AbstractAsyncContextManager[Any]]


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
