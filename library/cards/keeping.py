"""Save a card into a file that a person has written in: edited in place, so that comments and order stay."""

from __future__ import annotations

import re
import tomllib
from collections import Counter
from collections.abc import Mapping, MutableMapping
from typing import Any

from library.toml.patterns import LONG_STRING, SHORT_STRING

_TOKEN = re.compile(rf"{LONG_STRING}|{SHORT_STRING}|\#[^\n]*+", re.DOTALL)
"""A text in any of the four kinds of quotes, or a comment."""


def kept(text: str, table: Mapping[str, object]) -> str | None:
    """The text of a card's file with its card changed to ``table``, everything else as it was.

    The outcome is proved: it must read back as exactly that table, and hold every comment of before.

    Args:
        text: of the file as it is.
        table: the whole card as it shall be.

    Returns:
        The new text, or nothing when it could not be proved; the caller then leaves the file alone.
    """
    import tomlkit
    from tomlkit.exceptions import TOMLKitError

    try:
        wanted = tomllib.loads(text)
        wanted["card"] = [dict(table)]
        document = tomlkit.parse(text)
        _change(document["card"][0], table)
        changed = tomlkit.dumps(document)
        good = tomllib.loads(changed) == wanted and not _lost(text, changed)
    except (TOMLKitError, ValueError, KeyError, TypeError, IndexError):
        return None
    return changed if good else None


def _change(here: MutableMapping[str, Any], wanted: Mapping[str, object]) -> None:
    for key in [key for key in here if key not in wanted]:
        del here[key]
    for key, value in wanted.items():
        if key in here and isinstance(value, Mapping) and isinstance(here[key], MutableMapping):
            _change(here[key], value)
        elif key not in here or here[key] != value:
            here[key] = value


def comments(text: str) -> list[str]:
    r"""The comments of a TOML text, without the space behind them; a ``#`` inside a text is none.

    Example:
        >>> comments("# top\nid = 'a'  # beside\nnotes = 'a # b'")
        ['# top', '# beside']
    """
    return [found[0].rstrip() for found in _TOKEN.finditer(text) if found[0].startswith("#")]


def _lost(before: str, after: str) -> bool:
    left = Counter(comments(after))
    return any(left[one] < count for one, count in Counter(comments(before)).items())
