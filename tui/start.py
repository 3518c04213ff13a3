"""Start the screens: look at the terminal first, then load what the first frame needs and nothing else."""

from __future__ import annotations

import argparse
import gc
import sys
from collections.abc import Iterator
from contextlib import contextmanager

from tui import terminal


def run(options: argparse.Namespace) -> int:
    """Run the screens; returns the exit code.

    Python's search for cycles of garbage rests until the first frame: what is loaded until then stays
    anyway, and looking through it again and again takes a tenth of the start. Asyncio does without
    encryption where there is none; this program opens no connection, and saves four megabytes.

    Args:
        options: ``library`` (the shop's folder or nothing), ``units``, ``ascii``, ``figures`` and ``mouse``.
    """
    refusal = terminal.refusal()
    if refusal:
        return terminal.refuse(refusal)
    gc.disable()
    with _without("ssl"):
        from tui.app import Heelclear
    from library.book.folders import config_folder, shop_folder, state_folder
    from library.book.opening import open_book, quick_rows
    from library.units.system import Display
    from tui import first_start
    from tui.look import look
    from tui.own_keys import read_keys
    from tui.session import Session
    from tui.view.book_page import BookPage

    shop = shop_folder(options.library)[0]
    session = Session(
        look=look(
            colour=terminal.has_colour(),
            ascii_only=options.ascii or not terminal.has_unicode(),
            drawing=options.figures or terminal.drawing(),
        ),
        display=Display(options.units),
        keymap=read_keys(config_folder() / "keys.toml"),
        page=BookPage(quick_rows(shop)),
        first_start=first_start.is_first(state_folder()),
    )
    if session.first_start:
        first_start.remember(state_folder())
    app = Heelclear(session, lambda: open_book(shop), shop, state_folder())
    app.run(mouse=options.mouse)
    return app.return_code or 0


@contextmanager
def _without(name: str) -> Iterator[None]:
    """While inside, a module that is not loaded yet cannot be imported; whoever can do without it does."""
    if name in sys.modules:
        yield
        return
    sys.modules[name] = None  # type: ignore[assignment]
    try:
        yield
    finally:
        del sys.modules[name]
