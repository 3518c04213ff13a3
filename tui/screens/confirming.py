"""Asking before something is thrown away or written over."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from tui import screens

if TYPE_CHECKING:
    from tui.screens.base_screen import BaseScreen


def ask(screen: BaseScreen, question: str, deed: str, what: str, then: Callable[[], None]) -> None:
    """Ask on a screen, by name, whether to do something that cannot be undone.

    Args:
        screen: asks, and is in front again when it is done.
        question: with the name of the thing.
        deed: what doing it is called, such as ``Discard it``.
        what: what comes of it, in a sentence.
        then: does it.
    """
    screen.app.push_screen(screens.ConfirmScreen(screen.session, question, deed, what, then))
