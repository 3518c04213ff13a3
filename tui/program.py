"""Putting the program together for one run: folders, terminal, keys, book, and which first steps are left."""

from __future__ import annotations

import os
import sys
from typing import TYPE_CHECKING

from library.book.folders import config_folder, shop_folder, state_folder
from library.book.opening import open_book, quick_rows
from library.units.system import Display
from tui import terminal
from tui.app import Heelclear
from tui.first_steps import first_steps
from tui.own_keys import read_keys
from tui.own_units import remember_units, remembered_units, units_not_read
from tui.private_textual import know_function_keys, take_pastes_as_text
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
    terminal.give_size(sys.__stdout__.fileno() if sys.__stdout__ is not None else 1)
    know_function_keys(os.environ.get("TERM", ""))
    take_pastes_as_text()
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
        own_problems=units_not_read(state_folder()),
        page=BookPage(quick_rows(shop)),
        first_steps=first_steps(state_folder()),
    )
    app = Heelclear(session, lambda: open_book(shop), shop, state_folder())
    app.run(mouse=options.mouse)
    return app.return_code or 0
