"""The user's own keys, from ``keys.toml`` in the folder of settings."""

from __future__ import annotations

from pathlib import Path

from library.files.plain_bytes import NoPlainFile, plain_bytes
from tui import later
from tui.keys import Keymap, keymap

LARGEST = 64 * 1024
"""Bytes of the file above which it is not read; the whole registry takes two thousand."""


def read_keys(file: Path) -> Keymap:
    """The keys in force: those of the file in place of the registry's, where there is such a file.

    The file has a line for each action that is to have other keys, such as ``calculate = "f3"`` or
    ``back = ["f9", "escape"]``. Whatever cannot be taken is a problem of the keymap, never an error.

    Args:
        file: its path; it need not be there.
    """
    try:
        raw = plain_bytes(file, LARGEST + 1)
    except FileNotFoundError:
        return Keymap()
    except NoPlainFile as error:
        said = f"{file.name} is {error.kind}, not a file; the usual keys are in force. Remove it, or put a text file there."
        return Keymap(problems=(said,))
    except OSError as error:
        said = f"{file.name} cannot be read ({error.strerror}); the usual keys are in force. See that you may read it."
        return Keymap(problems=(said,))
    if len(raw) > LARGEST:
        return Keymap(problems=(f"{file.name} is larger than 64 KiB; the usual keys are in force.",))
    return _parsed(raw, file.name)


def _parsed(raw: bytes, name: str) -> Keymap:
    try:
        table = later.loads(raw.decode("utf-8"))
    except (ValueError, RecursionError) as error:
        return Keymap(problems=(f"{name} is no TOML ({error}); the usual keys are in force.",))
    own: dict[str, tuple[str, ...]] = {}
    problems: list[str] = []
    for action, value in table.items():
        keys = [value] if isinstance(value, str) else value
        if isinstance(keys, list) and keys and all(isinstance(key, str) and key for key in keys):
            own[action] = tuple(key.casefold() for key in keys)
        else:
            problems.append(f'In {name}, {action} wants a key such as "f3", or a list of them.')
    found = keymap(own)
    return Keymap(found.own, (*problems, *found.problems))
