"""One table of a file as it was read, before any of its keys is understood."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from library.book.model import Layer
from library.sanitize import sanitize


@dataclass(frozen=True)
class RawTable:
    """One table of a file.

    Attributes:
        array: its kind, such as ``entry``; empty for what stands above the first table.
        content: its keys and what stands at each.
        layer: of the file.
        file: it stands in.
        text: of the table, from its own line to the next table, with unreadable lines left empty.
        line: it begins on.
        unread: keys whose line could not be read.
        brackets: what is wrong with its brackets, as in ``library.toml.pieces.Piece``.
        broken: true when nothing but its id could be read.
        start: its first character in the text of the file.
        end: the first character after it; zero where it cannot be read by itself.
    """

    array: str
    content: Mapping[str, object]
    layer: Layer
    file: Path
    text: str
    line: int
    unread: frozenset[str] = frozenset()
    brackets: str = ""
    broken: bool = False
    start: int = 0
    end: int = 0

    @property
    def id(self) -> str:
        """What the table calls itself, safe to show; empty when it does not."""
        found = self.content.get("id")
        return sanitize(found) if isinstance(found, str) else ""
