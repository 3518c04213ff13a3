"""An invented shop's book, to try the program on without touching one's own."""

from __future__ import annotations

from pathlib import Path

from library.book.starting import NotStarted, write_anew
from library.sanitize import sanitize

BOOK = Path(__file__).parent / "ferry-yard"
"""The invented book as it came with the program; it is copied, never opened for writing."""


def lay_out(folder: Path) -> list[Path]:
    """Copy the ferry yard's book, cards and all, into a folder of its own.

    Args:
        folder: to make; it must not hold a book yet.

    Returns:
        The files that were written.

    Raises:
        NotStarted: when a book is there already, or the system refuses.
    """
    shown = sanitize(str(folder))
    try:
        if folder.is_dir() and any(folder.rglob("*.toml")):
            raise NotStarted(
                f"There is a book in {shown} already. Open it with 'heelclear --library {shown}', or name another folder."
            )
        return [_copy(file, folder / file.relative_to(BOOK)) for file in sorted(BOOK.rglob("*.toml"))]
    except OSError as error:
        reason = sanitize(error.strerror or str(error))
        raise NotStarted(
            f"The demonstration could not be laid out in {shown}: {reason}. Name another folder."
        ) from error


def _copy(file: Path, target: Path) -> Path:
    target.parent.mkdir(parents=True, exist_ok=True)
    write_anew(target, file.read_bytes())
    return target
