"""Remember in the state folder whether a person works in millimetres or inches, from one start to the next."""

from __future__ import annotations

import os
from contextlib import suppress
from pathlib import Path

from library.files.own_file import put_whole
from library.files.plain_bytes import NoPlainFile, plain_bytes
from library.issue import Issue, Place
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
        return _WORDS.get(plain_bytes(state / FILE, 8, os.O_NOFOLLOW).strip(), "mm")
    except (OSError, ValueError):
        return "mm"


def units_not_read(state: Path) -> tuple[Issue, ...]:
    """What keeps the unit of the last run from being read, where it is something that a person can put right."""
    try:
        plain_bytes(state / FILE, 0, os.O_NOFOLLOW)
    except (FileNotFoundError, NotADirectoryError, ValueError):
        return ()
    except NoPlainFile as error:
        wrong = f"This is {error.kind}, not a file, so your unit of the last time is not known."
        return (
            _issue(state, wrong, "Remove it; F5 changes the unit, and the program makes the file again."),
        )
    except OSError as error:
        wrong = f"This cannot be read ({error.strerror}), so your unit of the last time is not known."
        return (_issue(state, wrong, "See that you may read it, or remove it."),)
    return ()


def _issue(state: Path, wrong: str, fix: str) -> Issue:
    return Issue("your own units", "", "warning", wrong, fix, Place(state / FILE))


def remember_units(state: Path, lengths: Lengths) -> None:
    """Leave the unit for the next start; where that cannot be written, the next one begins as this one did."""
    with suppress(OSError):
        put_whole(state / FILE, [f"{lengths}\n".encode()], lasting=False)
