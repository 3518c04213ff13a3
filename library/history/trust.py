"""Which books a person trusts, so that git may run the programs that their own git folders name.

It is asked once for each book and kept by the path of its work tree in the state folder, where no book reaches.
"""

from __future__ import annotations

import json
import os
import stat
from pathlib import Path

from library.book import folders
from library.files.own_file import put_whole

FILE = "trusted-books"
"""The file in the state folder: a JSON list of paths."""

_LARGEST = 1_000_000


def is_trusted(top: Path) -> bool:
    """Whether the person said that he trusts the book of that work tree.

    Args:
        top: its top folder.
    """
    return os.path.realpath(top) in _trusted()


def trust(top: Path) -> None:
    """Remember that the book of that work tree is trusted.

    Raises:
        OSError: when it cannot be written.
    """
    _write([*_kept(), os.path.realpath(top)])


def withdraw(top: Path) -> bool:
    """Trust the book of that work tree no more; returns whether it was trusted.

    Raises:
        OSError: when it cannot be written.
    """
    path, kept = os.path.realpath(top), _kept()
    if path in kept:
        _write([one for one in kept if one != path])
    return path in kept


def _trusted() -> list[str]:
    """The paths; none where nothing of use is kept."""
    return [one for one in _kept() if isinstance(one, str)]


def _kept() -> list[object]:
    """What is kept, also what another version wrote; nothing where it is of no use, whatever lies there."""
    try:
        file = os.open(folders.state_folder() / FILE, os.O_RDONLY | os.O_NOFOLLOW | os.O_NONBLOCK)
    except OSError:
        return []
    try:
        if not stat.S_ISREG(os.fstat(file).st_mode):
            return []
        held = json.loads(os.read(file, _LARGEST))
    except (OSError, ValueError, RecursionError):
        return []
    finally:
        os.close(file)
    return held if isinstance(held, list) else []


def _write(kept: list[object]) -> None:
    once = dict.fromkeys(json.dumps(one) for one in kept)
    put_whole(folders.state_folder() / FILE, [f"[{', '.join(once)}]".encode()])
