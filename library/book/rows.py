"""The book as a list: one light row for each entry, kept as text so that ten thousand of them cost little.

A row is made when somebody looks at it. It is for finding and choosing; the numbers that a person works with always come
from the entry itself.
"""

from __future__ import annotations

from array import array
from collections.abc import Iterable, Sequence
from functools import cached_property
from itertools import accumulate
from typing import NamedTuple, overload

from library.book.harmless import harmless


class Location(NamedTuple):
    """Where a table stands: the number of its file, its first and last character, its line."""

    file: int
    start: int
    end: int
    line: int


class Row(NamedTuple):
    """One table of the book, as a list shows and finds it.

    Attributes:
        array: its kind, such as ``entry``.
        id: its id.
        title: as shown.
        family: the id of its family.
        work_material: what it cuts.
        layer: the highest layer that has a part of it.
        state: ``unread`` where some lines of it could not be read, ``broken`` where none could; else empty.
        ranges: the numbers of its values, as ``ranges_of`` reads them.
        search: everything that a search looks at, casefolded.
        parts: where its parts stand, lowest layer first, as ``locations_of`` reads them.
    """

    array: str
    id: str
    title: str
    family: str = ""
    work_material: str = ""
    layer: str = ""
    state: str = ""
    ranges: str = ""
    search: str = ""
    parts: str = ""


FIELDS = len(Row._fields)


def locations_of(row: Row) -> list[Location]:
    """Where the parts of a row's table stand, lowest layer first.

    Example:
        >>> locations_of(Row("entry", "a", "A", parts="0:11:80:3|2:0:40:1"))[1]
        Location(file=2, start=0, end=40, line=1)
    """
    return [Location(*map(int, part.split(":"))) for part in row.parts.split("|")]


def ranges_of(row: Row) -> dict[str, tuple[float, float]]:
    """The least and greatest number of each value, in mm, radians or as a count, for finding by number.

    A share of the diameter is left out: it is no length before there is a tool.

    Example:
        >>> ranges_of(Row("entry", "a", "A", ranges="flutes=3:4 starts=1:1"))
        {'flutes': (3.0, 4.0), 'starts': (1.0, 1.0)}
    """
    found = {}
    for part in row.ranges.split():
        key, _, numbers = part.partition("=")
        low, _, high = numbers.partition(":")
        found[key] = (float(low), float(high))
    return found


class Rows(Sequence[Row]):
    """The rows of a list, each made when it is asked for.

    Attributes:
        fresh: whether they are known to be what the files hold now.
    """

    def __init__(self, lines: bytes, ends: array[int], searches: bytes, *, fresh: bool = True) -> None:
        self._lines = lines
        self._ends = ends
        self._searches = searches
        self.fresh = fresh

    @classmethod
    def of(cls, rows: Iterable[Row], *, fresh: bool = True) -> Rows:
        """Keep rows as text."""
        lines, searches = [], []
        for row in rows:
            lines.append("\t".join(row._replace(search="")).encode("utf-8", "replace") + b"\n")
            searches.append(row.search.encode("utf-8", "replace"))
        ends = array("Q", accumulate(map(len, lines)))
        return cls(b"".join(lines), ends, b"\n".join(searches), fresh=fresh)

    def parts(self) -> tuple[bytes, bytes, bytes]:
        """What is kept, for a file: the lines, where each ends, and what a search looks at."""
        return self._lines, self._ends.tobytes(), self._searches

    def __len__(self) -> int:
        return len(self._ends)

    @overload
    def __getitem__(self, number: int) -> Row: ...
    @overload
    def __getitem__(self, number: slice) -> Sequence[Row]: ...
    def __getitem__(self, number: int | slice) -> Row | Sequence[Row]:
        """The row of a number, or several; raises ``IndexError`` as a list does."""
        if isinstance(number, slice):
            return [self[one] for one in range(*number.indices(len(self)))]
        if number < 0:
            number += len(self)
        if not 0 <= number < len(self):
            raise IndexError(number)
        start = self._ends[number - 1] if number else 0
        return self._row(self._lines[start : self._ends[number] - 1])

    def _row(self, line: bytes) -> Row:
        fields = harmless(line.decode("utf-8", "replace").replace("\t", "\n"), lines=True).split("\n")
        return Row(*fields[:FIELDS]) if len(fields) >= FIELDS else Row("", "", "")

    def find(self, name: str) -> Row | None:
        """The row with an id, or nothing."""
        wanted = f"entry\t{name}\t".encode("utf-8", "replace")
        at = 0 if self._lines.startswith(wanted) else self._lines.find(b"\n" + wanted) + 1
        if at == 0 and not self._lines.startswith(wanted):
            return None
        return self._row(self._lines[at : self._lines.find(b"\n", at)])

    def ids(self) -> list[str]:
        """Every id, in the order of the list."""
        return [line.split(b"\t", 2)[1].decode("utf-8", "replace") for line in self._lines.splitlines()]

    @cached_property
    def searches(self) -> list[str]:
        """What a search looks at in each row, casefolded."""
        return (
            harmless(self._searches.decode("utf-8", "replace"), lines=True).split("\n") if len(self) else []
        )

    def matching(self, words: str, among: Iterable[int] | None = None) -> list[int]:
        """The numbers of the rows that hold all of the words.

        Args:
            words: with spaces between them; a part of a word is enough.
            among: where it is known that only these can match.
        """
        texts = self.searches
        found: Iterable[int] = range(len(self)) if among is None else among
        for word in words.casefold().split():
            found = [number for number in found if word in texts[number]]
        return list(found)
