"""The setting of a shop that every save is committed: one line in a file beside its book.

The file is hidden, so that it is no part of the book, and lies in the folder, so that everybody who shares
the book shares the setting.
"""

from __future__ import annotations

import tomllib
from pathlib import Path

from library.errors import SaveError, refusal
from library.files.file_state import fingerprint
from library.files.safe_write import read_for_change, write_safely

FILE = ".heelclear.toml"
KEY = "commit_each_save"


def commits_each_save(folder: Path) -> bool:
    """Whether the shop turned it on; a file that cannot be read counts as off."""
    return _settings(folder).get(KEY) is True


def set_commits_each_save(folder: Path, *, wanted: bool) -> None:
    """Turn it on or off; other keys of the file stay.

    Raises:
        SaveError: when the file cannot be written.
    """
    import tomli_w

    path = folder / FILE
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise refusal(error, path) from error
    old = read_for_change(path, root=folder)
    try:
        settings = tomllib.loads((old or b"").decode())
    except (ValueError, RecursionError):
        raise SaveError(f"{FILE} holds a mistake. Fix it in your editor, then try again.", path) from None
    raw = tomli_w.dumps(settings | {KEY: wanted}).encode()
    write_safely(path, raw, root=folder, expected=fingerprint(old))


def _settings(folder: Path) -> dict[str, object]:
    try:
        return tomllib.loads((read_for_change(folder / FILE, root=folder) or b"").decode())
    except (ValueError, RecursionError, SaveError):
        return {}
