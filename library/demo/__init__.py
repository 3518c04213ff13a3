"""An invented shop's book, to try the program on without touching one's own."""

from __future__ import annotations

from pathlib import Path

from library.book.starting import NotStarted, holds_a_book, why_not
from library.files.disk import DISK, Disk
from library.files.lay_folder import clear_unfinished, lay_folder
from library.sanitize import sanitize

BOOK = Path(__file__).parent / "ferry-yard"
"""The invented book as it came with the program; it is copied, never opened for writing."""


def lay_out(folder: Path, disk: Disk = DISK) -> list[Path]:
    """Copy the ferry yard's book, cards and all, into a folder of its own: all of it, or nothing.

    Args:
        folder: to make; it must not hold a book yet.
        disk: the calls to use.

    Returns:
        The files that were written.

    Raises:
        NotStarted: when a book is there already, or the system refuses.
    """
    shown = sanitize(str(folder))
    try:
        clear_unfinished(folder, disk)
        if holds_a_book(folder):
            raise NotStarted(
                f"There is a book in {shown} already. Open it with 'heelclear --library {shown}', or name another folder."
            )
        files = {
            file.relative_to(BOOK).as_posix(): file.read_bytes() for file in sorted(BOOK.rglob("*.toml"))
        }
        return lay_folder(folder, files, disk)
    except OSError as error:
        told = f"The demonstration could not be laid out in {shown}{why_not(error, folder)}"
        raise NotStarted(told) from error
