"""Putting the program together for one run: folders, terminal, keys, book."""

from __future__ import annotations

from typing import TYPE_CHECKING

from library.book.folders import config_folder, shop_folder, state_folder
from library.book.opening import open_book, quick_rows
from library.units.system import Display
from tui import first_start, terminal
from tui.app import Heelclear
from tui.own_keys import read_keys
from tui.session import Session
from tui.theme import theme
from tui.view.book_page import BookPage

if TYPE_CHECKING:
    import argparse


def run_program(options: argparse.Namespace) -> int:
    """Run the screens until they are left; returns the exit code.

    Args:
        options: ``library`` (the shop's folder or nothing), ``units``, ``ascii``, ``figures`` and ``mouse``.
    """
    shop = shop_folder(options.library)[0]
    session = Session(
        theme=theme(
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
