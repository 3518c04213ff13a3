"""Putting the program together for one run: folders, terminal, keys, book, and whether it is the first one here."""

from __future__ import annotations

import os
from typing import TYPE_CHECKING

from library.book.folders import config_folder, shop_folder, state_folder
from library.book.opening import open_book, quick_rows
from library.units.system import Display
from tui import terminal
from tui.app import Heelclear
from tui.own_keys import read_keys
from tui.own_units import remember_units, remembered_units
from tui.private_textual import know_function_keys
from tui.session import Session
from tui.theme import theme
from tui.view.book_page import BookPage

if TYPE_CHECKING:
    import argparse
    from pathlib import Path

STARTED = "started"
"""The file in the state folder that says the program was started here before, so that a new hand is told what to do, once."""

_STARTED_TEXT = "Heelclear was started here before. Without this file it shows its first five lines again.\n"


def run_program(options: argparse.Namespace) -> int:
    """Run the screens until they are left; returns the exit code.

    Args:
        options: ``library`` (the shop's folder or nothing), ``units``, ``ascii``, ``figures`` and ``mouse``.
    """
    know_function_keys(os.environ.get("TERM", ""))
    shop = shop_folder(options.library)[0]
    session = Session(
        theme=theme(
            colour=terminal.has_colour(),
            ascii_only=options.ascii or not terminal.has_unicode(),
            drawing=options.figures or terminal.drawing(),
        ),
        display=Display(options.units or remembered_units(state_folder())),
        keep_units=lambda lengths: remember_units(state_folder(), lengths),
        keymap=read_keys(config_folder() / "keys.toml"),
        page=BookPage(quick_rows(shop)),
        first_start=is_first_start(state_folder()),
    )
    if session.first_start:
        remember_start(state_folder())
    app = Heelclear(session, lambda: open_book(shop), shop, state_folder())
    app.run(mouse=options.mouse)
    return app.return_code or 0


def is_first_start(state: Path) -> bool:
    """Whether nothing in the state folder tells of an earlier start.

    Args:
        state: the state folder, which need not be there.
    """
    return not (state / STARTED).exists()


def remember_start(state: Path) -> None:
    """Leave word of this start; where that cannot be written, the next one is a first start again."""
    try:
        state.mkdir(parents=True, exist_ok=True)
        (state / STARTED).write_text(_STARTED_TEXT, encoding="utf-8")
    except OSError:
        return
