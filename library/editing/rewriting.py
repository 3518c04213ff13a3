"""Rewrite a value that is there already, keeping the spelling of all that is not changed in it."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from typing import Any

from library.editing.steps import same
from library.editing.writing import dotted, literal
from library.toml.scanner import remarks


class _Unsuited(Exception):
    """The old writing cannot be kept for this change."""


def rewritten(text: str, old: object, new: object) -> str | None:
    """The text of a value after a change.

    Numbers, quotes and spaces of what stays are kept as typed where that can be done; each way is tried
    by reading it back, and the last is to write the value anew.

    Args:
        text: as it stands in the file, without the key.
        old: what it means.
        new: what it shall mean.

    Returns:
        The new text, or nothing when each way would lose a remark that stands inside.

    Example:
        >>> rewritten("{low=1,   high = 2.50}", {"low": 1, "high": 2.5}, {"low": 2, "high": 2.5})
        '{low=2,   high = 2.50}'
    """
    text = text.replace("\r\n", "\n")
    kept = remarks(text)
    for way in (_kept, _anew):
        try:
            candidate = way(text, old, new)
        except _Unsuited:
            continue
        if remarks(candidate) == kept and _means(candidate, new):
            return candidate
    return None


def _means(candidate: str, new: object) -> bool:
    try:
        return same(tomllib.loads(f"x = {candidate}\n"), {"x": new})
    except (ValueError, RecursionError):
        return False


def _anew(text: str, old: object, new: object) -> str:
    return literal(new, lines=True)


def _kept(text: str, old: object, new: object) -> str:
    import tomlkit

    if not isinstance(old, dict | list):
        raise _Unsuited
    try:
        document = tomlkit.parse(f"x = {text}\n")
        if isinstance(old, dict) and isinstance(new, Mapping) and old.keys() != new.keys():
            return _other_keys(document["x"], text, old, new)
        _change(document, "x", old, new)
        return document.as_string().removeprefix("x = ").removesuffix("\n")
    except _Unsuited:
        raise
    except (
        Exception
    ) as error:  # A library that stumbles over an odd layout must not keep the change from being made.
        raise _Unsuited from error


def _change(holder: Any, key: Any, old: object, new: object) -> None:
    """Change ``holder[key]`` from ``old`` to ``new``, as deep inside as can be."""
    if same(old, new):
        return
    if isinstance(old, dict) and isinstance(new, Mapping) and old.keys() == new.keys():
        for name in old:
            _change(holder[key], name, old[name], new[name])
    elif isinstance(old, list) and isinstance(new, list | tuple):
        _change_list(holder[key], old, list(new))
    elif isinstance(old, dict | list):
        raise _Unsuited
    else:
        import tomlkit

        written = tomlkit.parse(f"x = {literal(new)}\n")["x"]
        holder[key] = written


def _change_list(array: Any, old: list[object], new: list[object]) -> None:
    if len(old) == len(new):
        for number, (one, other) in enumerate(zip(old, new, strict=True)):
            _change(array, number, one, other)
    elif same(new[: len(old)], old):
        for item in new[len(old) :]:
            array.append(item)
    else:
        for number in reversed(_left_out(old, new)):
            del array[number]


def _left_out(old: list[object], new: list[object]) -> list[int]:
    """Which items of ``old`` are missing in ``new``, where nothing else differs."""
    missing = []
    rest = list(new)
    for number, item in enumerate(old):
        if rest and same(item, rest[0]):
            rest.pop(0)
        else:
            missing.append(number)
    if rest:
        raise _Unsuited
    return missing


def _other_keys(table: Any, text: str, old: Mapping[str, object], new: Mapping[str, object]) -> str:
    """An inline table with keys added or taken out, in the order of ``new``."""
    pad = text[1:2] if text[1:2] in {" ", "\t"} else ""
    parts = []
    for key, item in new.items():
        written = table[key].as_string() if key in old and same(old[key], item) else literal(item)
        parts.append(f"{dotted([key])} = {written}")
    return f"{{{pad}{', '.join(parts)}{pad}}}"
