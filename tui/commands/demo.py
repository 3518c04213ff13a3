"""``heelclear demo``: open an invented shop's book, to try everything on without touching one's own."""

from __future__ import annotations

import argparse
import os
import stat
import sys
import tempfile
from contextlib import suppress
from pathlib import Path

from library.book.folders import state_folder
from library.book.starting import NotStarted, why_not
from library.demo import lay_out
from library.files.lay_folder import clear_unfinished
from tui.commands import printing
from tui.commands.parser import open_screens
from tui.first_steps import first_steps

_BEGIN = "heelclear-demo-"
_NAME = "ferry-yard"


def run(options: argparse.Namespace) -> int:
    """Lay the book out in a folder of its own and, on a terminal, open it; returns the exit code."""
    own = None
    try:
        if not options.folder:
            own = _folder_of_its_own()
        folder = options.folder if own is None else own / _NAME
        lay_out(folder)
    except NotStarted as error:
        if own is not None:
            with suppress(OSError):
                own.rmdir()
        printing.error(str(error))
        return 2
    printing.line(f"An invented book, the ferry yard's, lies in {folder}. Do what you like with it.")
    printing.line(
        "In it F3 lists its job cards, F8 is the menu of all that can be done, and ? explains what is shown."
    )
    printing.line(
        "Its file a-slip.toml has three mistakes on purpose, so that you see how the program tells of them."
    )
    if not (sys.stdin.isatty() and sys.stdout.isatty()):
        printing.line(f"Open it with: heelclear --library {folder}")
        return 0
    first_steps(state_folder()).take("demo")
    options.library = folder
    return open_screens(options)


def _folder_of_its_own() -> Path:
    """A new folder among the temporary ones, where nothing half-made of this person's stays from a killed program."""
    top = Path(tempfile.gettempdir())
    for left in top.glob(f"{_BEGIN}*"):
        with suppress(OSError):
            status = left.lstat()
            if stat.S_ISDIR(status.st_mode) and status.st_uid == os.getuid():
                clear_unfinished(left / _NAME)
    try:
        return Path(tempfile.mkdtemp(prefix=_BEGIN))
    except OSError as error:
        raise NotStarted(f"No folder could be made in {top}{why_not(error, top)}") from error
