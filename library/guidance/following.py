"""Lines of a table of the book with those of the tables that it is like, in the order of the work."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Protocol

from library.book.likeness import ancestors
from library.guidance.told import Told


class Follows(Protocol):
    """A table that may follow another one of its kind."""

    @property
    def id(self) -> str:
        """Its name in the files."""

    @property
    def like(self) -> str:
        """The id of the one that it follows; empty for none."""

    @property
    def lines(self) -> Mapping[str, Told]:
        """Its own lines."""


def lines_with_others(one: Follows, known: Mapping[str, Follows], order: Iterable[str]) -> dict[str, Told]:
    """The lines of a table, and where it has none those of the tables that it follows.

    Args:
        one: the table.
        known: all of its kind by id.
        order: the keys of lines as they are read.
    """

    def like(name: str) -> str:
        return known[name].like if name in known else ""

    lines = dict(one.lines)
    for name in ancestors(one.id, like):
        if name in known:
            lines = {**known[name].lines, **lines}
    return {key: lines[key] for key in order if key in lines}
