"""Text from a file, a file name or an error, made safe to show.

A terminal obeys control characters, and a reader's eye is misled by characters that turn the line round
or take no room. Each of them is shown as one mark, so that the text keeps its length.
"""

from __future__ import annotations

import re
import unicodedata

MARK = "\N{REPLACEMENT CHARACTER}"
"""What stands for a character that must not be shown."""

_UNSEEN = re.compile(
    "[\u034f\u115f\u1160\u17b4\u17b5\u180b-\u180f\u3164\ufe00-\ufe0f\uffa0\U000e0100-\U000e01ef]"
)
"""Fillers and selectors that count as printable and yet take no room."""

_OF_NO_SURE_WIDTH = re.compile("[\U0001f1e6-\U0001f1ff\U0001f3fb-\U0001f3ff]")
"""Halves of flags and tints of skin: terminals do not agree on how many cells they take with what stands before them."""

_STACKED = re.compile("[\u0300-\u036f\u0483-\u0489\u1ab0-\u1aff\u1dc0-\u1dff\u20d0-\u20ff\ufe20-\ufe2f]{4,}")
"""Accents heaped on one letter, which would climb over the lines above."""

_MARKED = (_UNSEEN, _OF_NO_SURE_WIDTH, _STACKED)


def sanitize(text: str, *, lines: bool = False) -> str:
    """The text with every dangerous or unseen character shown as one mark.

    Args:
        text: anything.
        lines: whether line ends are kept; else they become a mark too. A tab and the spaces of other
            widths become a plain space.

    Returns:
        Text of the same length (a carriage return before a line end is dropped where ``lines``).

    Example:
        >>> sanitize("tap" + chr(27) + "[31m")
        'tap\ufffd[31m'
        >>> sanitize(chr(0x1F44D) + chr(0x1F3FD)) == chr(0x1F44D) + MARK
        True
    """
    seen = text.replace("\n", "") if lines else text
    if seen.isprintable() and (text.isascii() or not any(one.search(text) for one in _MARKED)):
        return text
    if lines:
        return "\n".join(sanitize(line) for line in text.replace("\r\n", "\n").split("\n"))
    plain = _STACKED.sub(lambda found: MARK * len(found[0]), text)
    return "".join(_shown(character) for character in plain)


def _shown(character: str) -> str:
    if character == "\t" or unicodedata.category(character) == "Zs":
        return " "
    return MARK if is_hidden(character) or _OF_NO_SURE_WIDTH.match(character) else character


def is_hidden(character: str) -> bool:
    """Whether a character controls the terminal, turns the line round or takes no room.

    Example:
        >>> is_hidden("a"), is_hidden(chr(0x202E)), is_hidden(chr(0x200B))
        (False, True, True)
    """
    if _UNSEEN.match(character):
        return True
    return not character.isprintable() and unicodedata.category(character) != "Zs"


def first_hidden(text: str) -> str:
    """The first character of the text that is hidden, or nothing.

    Example:
        >>> name_of(first_hidden("a" + chr(0x202E)))
        'U+202E (right-to-left override)'
    """
    if text.isprintable() and not _UNSEEN.search(text):
        return ""
    return next((character for character in text if is_hidden(character)), "")


def name_of(character: str) -> str:
    """A character by its code point, and by its name where it has one."""
    name = unicodedata.name(character, "").lower() or _CONTROLS.get(character, "a control character")
    return f"U+{ord(character):04X} ({name})"


_CONTROLS = {
    "\0": "null",
    "\a": "bell",
    "\b": "backspace",
    "\t": "tab",
    "\n": "line end",
    "\r": "carriage return",
    "\x1b": "escape",
    "\x7f": "delete",
    "\x9b": "control sequence introducer",
}
