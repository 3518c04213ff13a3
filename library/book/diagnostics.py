"""Diagnostics of a read: the issues found so far, the position of each key, and the ids that a key may name."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches
from functools import cached_property

from library.book.raw_table import RawTable
from library.issue import Issue, Place, Severity
from library.sanitize import sanitize
from library.toml.scanner import KeyPath, positions

MOST_FINDINGS = 20_000
"""Problems that are told of one file; those beyond are counted."""

MOST_HINTS = 1000
"""Problems for which a like word is looked for, which takes longer than all the rest."""


@dataclass
class Diagnostics:
    """Shared by everything that is read in one go.

    Attributes:
        known: the ids that may be named, by kind of table.
        findings: every problem so far.
        untold: how many there are beyond those.
        is_deaf: true where problems have been told before and are not wanted again.
        has_places: whether values are given their line; it is only wanted of what is shown.
    """

    known: Mapping[str, frozenset[str]] = field(default_factory=dict)
    findings: list[Issue] = field(default_factory=list)
    untold: int = 0
    is_deaf: bool = False
    has_places: bool = True


class KeyPositions:
    """The places of one table's keys, looked up only when somebody asks."""

    def __init__(self, table: RawTable) -> None:
        self.table = table

    @cached_property
    def _found(self) -> dict[KeyPath, tuple[int, int]]:
        return positions(self.table.text)

    @property
    def _top(self) -> KeyPath:
        if not self.table.array:
            return ()
        return (self.table.array,) if self.table.brackets == "single" else (self.table.array, 0)

    def place(self, keys: KeyPath) -> Place:
        """The place of a key, or of the nearest table that holds it."""
        way = (*self._top, *keys)
        while way not in self._found and way:
            way = way[:-1]
        line, column = self._found.get(way, (1, 1))
        return Place(self.table.file, self.table.line + line - 1, column)


def nearest(word: str, words: Iterable[str]) -> str:
    """The known word that is most like the one typed, or nothing.

    Example:
        >>> nearest("releif_angle", ["rake_angle", "relief_angle"])
        'relief_angle'
    """
    found = get_close_matches(word[:60], sorted(words), n=1, cutoff=0.6)
    return found[0] if found else ""


@dataclass(frozen=True)
class Location:
    """One key of one table.

    Attributes:
        diagnostics: shared by everything that is read.
        key_positions: of the table.
        keys: the way to the key.
    """

    diagnostics: Diagnostics
    key_positions: KeyPositions
    keys: KeyPath = ()

    @property
    def table(self) -> RawTable:
        """The table that the key stands in."""
        return self.key_positions.table

    def at(self, *keys: str | int) -> Location:
        """The location of a key below this one."""
        return Location(self.diagnostics, self.key_positions, (*self.keys, *keys))

    def place(self) -> Place:
        """Where in the file it is; only the table's line where exact places are not wanted."""
        return (
            self.key_positions.place(self.keys)
            if self.diagnostics.has_places
            else Place(self.table.file, self.table.line)
        )

    @property
    def owner(self) -> str:
        """The table as an issue names it: by its id, else by its kind."""
        return self.table.id or self.table.array

    @property
    def key(self) -> str:
        """The key as an issue names it, such as ``rake_angle.low``."""
        return ".".join(str(part) for part in self.keys if part != "")

    @property
    def name(self) -> str:
        """Table and key, such as ``spiral-tap.rake_angle.low``."""
        return ".".join(part for part in (self.owner, self.key) if part)

    def near(self, word: str, words: Iterable[str]) -> str:
        """The known word that is most like the one typed, where somebody will hear of it; else nothing."""
        if self.diagnostics.is_deaf or len(self.diagnostics.findings) >= MOST_HINTS:
            return ""
        return nearest(word, words)

    def complain(self, wrong: str, fix: str, severity: Severity = "error") -> None:
        """Note a problem with this key."""
        if len(self.diagnostics.findings) >= MOST_FINDINGS:
            self.diagnostics.untold += 1
        elif not self.diagnostics.is_deaf:
            place = self.key_positions.place(self.keys)
            issue = Issue(
                sanitize(self.owner), sanitize(self.key), severity, sanitize(wrong), sanitize(fix), place
            )
            self.diagnostics.findings.append(issue)


def shown(value: object) -> str:
    """Something from a file inside a sentence, in quotes and not too long.

    Example:
        >>> shown("3 deg")
        "'3 deg'"
    """
    text = sanitize(value) if isinstance(value, str) else sanitize(str(value))
    short = text if len(text) <= 40 else text[:39] + "..."
    return f"'{short}'" if isinstance(value, str) else short
