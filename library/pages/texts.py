"""Text broken into lines, and text for a printer that knows ASCII only."""

from __future__ import annotations

import re
import textwrap
import unicodedata
from collections.abc import Callable
from functools import lru_cache

from library.sanitize import sanitize

_SIGNS = {
    "\u00b0": " deg",
    "\u2103": " degC",
    "\u2109": " degF",
    "\u00b1": "+/-",
    "\u2213": "-/+",
    "\u00d7": "x",
    "\u00f7": "/",
    "\u2044": "/",
    "\u2215": "/",
    "\u2212": "-",
    "\u2010": "-",
    "\u2011": "-",
    "\u2013": "-",
    "\u2014": "-",
    "\u2264": "<=",
    "\u2265": ">=",
    "\u2260": "!=",
    "\u2248": "~",
    "\u2300": "dia ",
    "\u2192": "->",
    "\u2190": "<-",
    "\u2018": "'",
    "\u2019": "'",
    "\u201a": "'",
    "\u2032": "'",
    "\u00b4": "'",
    "\u201c": '"',
    "\u201d": '"',
    "\u201e": '"',
    "\u2033": '"',
    "\u00ab": '"',
    "\u00bb": '"',
    "\u2022": "-",
    "\u00b7": ".",
    "\u00b5": "u",
    "\u03bc": "u",
    "\u20ac": "EUR",
}
_LETTERS = {
    "\u00df": "ss",
    "\u00e6": "ae",
    "\u00c6": "AE",
    "\u0153": "oe",
    "\u0152": "OE",
    "\u00f8": "o",
    "\u00d8": "O",
    "\u0142": "l",
    "\u0141": "L",
    "\u0111": "d",
    "\u0110": "D",
    "\u0131": "i",
}
_TWINS = {**_SIGNS, **_LETTERS}
"""What signs and letters become that are no letters with accents."""

_DEGREES = re.compile("(?<=\\d) ?[\u00b0\u00ba]")
_DIAMETER = re.compile("[\u00d8\u00f8\u2300] ?(?=[.\\d])")
_BEHIND_DIGIT = re.compile("(?<=\\d)[\u00bc-\u00be\u2150-\u215e\u2189\u00b2\u00b3\u00b9\u2070-\u2079]+")


def in_ascii(text: str) -> str:
    r"""Text that any printer prints.

    Letters lose their accents; a sign for which ASCII has nothing becomes one question mark.

    Example:
        >>> in_ascii("Gro\u00dfe M\u00fchle \u00b1 0.02 mm")
        'Grosse Muhle +/- 0.02 mm'
        >>> in_ascii("1\u00bd in, 10\u00b3 turns")
        '1 1/2 in, 10^3 turns'
    """
    plain = sanitize(text)
    if plain.isascii():
        return plain
    parted = _BEHIND_DIGIT.sub(_parted, _DIAMETER.sub("dia ", _DEGREES.sub(" deg", plain)))
    return "".join(map(_plain, unicodedata.normalize("NFC", parted)))


def _parted(found: re.Match[str]) -> str:
    """A fraction or a power parted from the digit before it, which it would be a part of."""
    signs = "".join(map(_plain, found[0]))
    return f" {signs}" if "/" in signs else f"^{signs}"


def _plain(sign: str) -> str:
    """What one sign becomes: its twin, what it is made of without accents, or a question mark."""
    if sign.isascii():
        return sign
    parts = (one for one in unicodedata.normalize("NFKD", sign) if not unicodedata.combining(one))
    plain = _TWINS.get(sign) or "".join(_TWINS.get(one, one) for one in parts)
    return plain if plain.isascii() else "?"


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
