"""The sizes of numbered and lettered drills, by what is stamped on them."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path

TABLE = Path(__file__).parent / "sizes.toml"
"""The file of the sizes, with where they came from."""

_NUMBER = re.compile(r"(?:#|no\.?|number|nr\.?)\s*(?P<name>[1-9]\d?)(?:\s+drill)?", re.IGNORECASE)
_LETTER = re.compile(r"(?:letter\s+|drill\s+)(?P<name>[a-z])|(?P<first>[a-z])\s+drill", re.IGNORECASE)


def drill_size(name: str) -> str:
    """The diameter of a numbered or lettered drill as text with its unit; empty where the name is none.

    Args:
        name: as typed: ``#7``, ``No. 7``, ``letter F`` or ``F drill``. A letter or a number alone is no drill.

    Example:
        >>> drill_size("#7"), drill_size("letter f"), drill_size("#10-32"), drill_size("7")
        ('0.2010 in', '0.257 in', '', '')
    """
    text = " ".join(name.split())
    if number := _NUMBER.fullmatch(text):
        return _sizes()["number"].get(number["name"], "")
    if letter := _LETTER.fullmatch(text):
        return _sizes()["letter"][(letter["name"] or letter["first"]).upper()]
    return ""


@lru_cache(maxsize=1)
def _sizes() -> Mapping[str, Mapping[str, str]]:
    table = tomllib.loads(TABLE.read_text(encoding="utf-8"))
    return {kind: table[kind] for kind in ("number", "letter")}
