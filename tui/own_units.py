"""Remember in the state folder whether a person works in millimetres or inches, from one start to the next."""

from __future__ import annotations

import os
from contextlib import suppress
from pathlib import Path

from library.units.system import Lengths

FILE = "units"
"""The file in the state folder; it holds one word."""

_WORDS: dict[bytes, Lengths] = {b"mm": "mm", b"in": "in"}


def remembered_units(state: Path) -> Lengths:
    """The unit of the last run; millimetres where nothing of use is remembered.

    Args:
        state: the state folder, which need not be there; whatever else lies there under the name is passed over.
    """
    try:
        file = os.open(state / FILE, os.O_RDONLY | os.O_NOFOLLOW | os.O_NONBLOCK)
    except (OSError, ValueError):
        return "mm"
    try:
        return _WORDS.get(os.read(file, 8).strip(), "mm")
    except OSError:
        return "mm"
    finally:
        os.close(file)


def remember_units(state: Path, lengths: Lengths) -> None:
    """Leave the unit for the next start; where that cannot be written, the next one begins as this one did."""
    new = state / f"{FILE}.{os.getpid()}.new"
    try:
        state.mkdir(parents=True, exist_ok=True)
        file = os.open(new, os.O_WRONLY | os.O_CREAT | os.O_EXCL | os.O_NOFOLLOW, 0o600)
        try:
            os.write(file, f"{lengths}\n".encode())
        finally:
            os.close(file)
        new.replace(state / FILE)
    except OSError:
        with suppress(OSError):
            new.unlink(missing_ok=True)
