"""Line and column of every key of a TOML text that ``tomllib`` has accepted.

``tomllib`` does not say where a value stood, and a finding has to. This walks over the same text once more,
looks only at keys, brackets and strings, and trusts that the text is right.
"""

from __future__ import annotations

import re
import tomllib
from bisect import bisect_right

from library.toml.patterns import KEY, LONG_STRING, SHORT_STRING

Keys = tuple[str | int, ...]
"""A way into a document: keys of tables, and numbers (from 0) in arrays."""

DEEPEST = 40
"""Keys within each other that are told apart; a book has less than half of that."""

_SPACE = re.compile(r"[ \t]*")
_BLANK = re.compile(r"(?:[ \t\r\n]|#[^\n]*)*")
_KEY = re.compile(KEY)
_STRING = re.compile(f"{LONG_STRING}|{SHORT_STRING}", re.DOTALL)
_BARE = re.compile(r"[^\s,\]}#]+(?: [0-9][^\s,\]}#]*)?")


def positions(text: str) -> dict[Keys, tuple[int, int]]:
    r"""Find where every key, and every element of an array, begins.

    Args:
        text: a document that ``tomllib`` accepts.

    Returns:
        Line and column, both from 1, by the way into the document.

    Raises:
        ValueError: for another text.

    Example:
        >>> positions("[[entry]]\nrake = { low = 1 }\n")[("entry", 0, "rake", "low")]
        (2, 10)
    """
    walker = _Walker(text)
    walker.document()
    lines = [0, *(found.end() for found in re.finditer("\n", text))]

    def spot(offset: int) -> tuple[int, int]:
        line = bisect_right(lines, offset)
        return line, offset - lines[line - 1] + 1

    return {keys: spot(offset) for keys, offset in walker.found.items()}


class _Walker:
    def __init__(self, text: str) -> None:
        self.text = text
        self.at = 0
        self.found: dict[Keys, int] = {}
        self.counts: dict[Keys, int] = {}

    def document(self) -> None:
        base: Keys = ()
        while self._skip(_BLANK) < len(self.text):
            if self.text[self.at] == "[":
                base = self._header()
            else:
                self._pair(base)

    def _skip(self, pattern: re.Pattern[str]) -> int:
        found = pattern.match(self.text, self.at)
        self.at = found.end() if found else self.at
        return self.at

    def _header(self) -> Keys:
        double = self.text.startswith("[[", self.at)
        start = self.at
        self.at += 2 if double else 1
        keys = [key for key, _ in self._keys()]
        base: Keys = ()
        for key in keys[:-1]:
            base = self._inside((*base, key), start)
        base = (*base, keys[-1])
        if double:
            self.counts[base] = self.counts.get(base, -1) + 1
        base = self._inside(base, start)
        self.at += 2 if double else 1
        return base

    def _inside(self, keys: Keys, offset: int) -> Keys:
        """The table that a key of a header means: for an array, its last one so far."""
        self.found.setdefault(keys, offset)
        if keys in self.counts:
            keys = (*keys, self.counts[keys])
            self.found.setdefault(keys, offset)
        return keys

    def _keys(self) -> list[tuple[str, int]]:
        keys = []
        while True:
            start = self._skip(_SPACE)
            self._skip(_KEY)
            raw = self.text[start : self.at]
            keys.append((tomllib.loads(f"k = {raw}")["k"] if raw[:1] in {'"', "'"} else raw, start))
            self._skip(_SPACE)
            if not self.text.startswith(".", self.at):
                return keys
            self.at += 1

    def _pair(self, base: Keys) -> None:
        for key, start in self._keys()[: DEEPEST - len(base)]:
            base = (*base, key)
            self.found.setdefault(base, start)
        self.at += 1
        self._skip(_SPACE)
        self._value(base)

    def _value(self, base: Keys) -> None:
        character = self.text[self.at]
        if character == "[":
            self._listed(base, "]")
        elif character == "{":
            self._listed(base, "}")
        else:
            self._skip(_STRING if character in {'"', "'"} else _BARE)

    def _listed(self, base: Keys, close: str) -> None:
        self.at += 1
        count = 0
        while self.text[self._skip(_BLANK)] != close:
            if close == "}":
                self._pair(base)
            else:
                start = self.found[(*base, count)] = self.at
                self._value((*base, count))
                count += 1
                if self.at == start:
                    raise ValueError("this is not a document that tomllib accepts")
            self._skip(_BLANK)
            if self.text[self.at] == ",":
                self.at += 1
        self.at += 1
