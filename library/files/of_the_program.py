"""What came with the program: its own data are never written, whatever folder is taken as the book."""

from __future__ import annotations

import os
from pathlib import Path

from library.errors import SaveError, named

PROGRAM = Path(os.path.realpath(__file__)).parent.parent
"""The folder of the program that holds the data it brought."""


def require_own(path: Path) -> None:
    """Raise where a file or folder is one of the program's own.

    Args:
        path: without links; there need not be anything.

    Raises:
        SaveError: with a sentence; nothing was written.
    """
    if path.is_relative_to(PROGRAM):
        raise SaveError(
            f"{named(path)} came with the program and is never changed. Nothing was saved; begin a book of your own "
            "with 'heelclear new-book FOLDER', and name that folder.",
            path,
        )
