"""Text broken into lines, and text for a printer that knows ASCII only."""

from __future__ import annotations

import textwrap
import unicodedata
from collections.abc import Callable
from functools import lru_cache

from library.sanitize import sanitize

_TWINS = str.maketrans(
    {
        "\u00b0": " deg",
        "\u00b1": "+/-",
        "\u00d7": "x",
        "\u2013": "-",
        "\u2014": "-",
        "\u2018": "'",
        "\u2019": "'",
        "\u201c": '"',
        "\u201d": '"',
        "\u2026": "...",
        "\u00b5": "u",
        "\u00df": "ss",
        "\u00f8": "o",
        "\u00e6": "ae",
    }
)
"""What common signs become; letters with accents lose them, and what is left becomes a question mark."""


def in_ascii(text: str) -> str:
    r"""Text that any printer prints.

    Example:
        >>> in_ascii("Gro\u00dfe M\u00fchle \u00b1 0.02 mm")
        'Grosse Muhle +/- 0.02 mm'
    """
    plain = sanitize(text)
    if plain.isascii():
        return plain
    parts = unicodedata.normalize("NFKD", plain.translate(_TWINS))
    return (
        "".join(sign for sign in parts if not unicodedata.combining(sign)).encode("ascii", "replace").decode()
    )


@lru_cache(maxsize=1024)
def wrapped(
    text: str, width: int, first: str = "", rest: str = "", clean: Callable[[str], str] = sanitize
) -> tuple[str, ...]:
    """Text in lines no wider than ``width``; its own line ends are kept.

    A page is laid out anew at every key, and most of its texts are the same then: they are remembered.

    Args:
        text: foreign text is welcome; it is cleaned here.
        width: in characters, and 8 at least.
        first: stands before the first line.
        rest: stands before every other line.
        clean: makes a text harmless where it is shown.

    Example:
        >>> wrapped("Stand out of the plane of the wheel.", 20, rest="  ")
        ('Stand out of the', '  plane of the', '  wheel.')
    """
    found: list[str] = []
    for paragraph in text.splitlines() or [""]:
        start = rest if found else first
        found += textwrap.wrap(
            clean(paragraph), max(width, 8), initial_indent=start, subsequent_indent=rest, break_on_hyphens=False
        ) or [start]  # fmt: skip
    return tuple(found)
