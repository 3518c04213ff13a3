"""The rows of the list: one light record for each entry, kept as text so that ten thousand of them cost little memory.

A row is made when somebody looks at it. It is for finding and choosing; the numbers that a person works with always come
from the entry itself.
"""

from __future__ import annotations

from array import array
from collections.abc import Iterable, Mapping, Sequence
from functools import cached_property
from itertools import accumulate
from typing import NamedTuple, overload

from library.book.file_slice import Kept
from library.book.search_text import SearchWords, Shared, words_of
from library.sanitize import sanitize


class Extent(NamedTuple):
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
        family: the id of its family; of a family that of the one that it is like; of a trouble those that it is seen on.
        work_material: what it cuts; of a family its kind.
        layer: the highest layer that has a part of it.
        state: ``unread`` where some lines of it could not be read, ``broken`` where none could; else empty.
        ranges: the numbers and words of its values, as ``library.book.value_ranges`` writes them; of a family how the
            troubles of its tools are called; of a trouble the words of the entries that it is seen on alone.
        search: everything that a search looks at in it alone, as ``library.book.search_text`` writes it.
        parts: where its parts stand, lowest layer first, as ``extents_of`` reads them.
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

FEW = 100
"""Rows found by their ids without keeping a table of the places of all ids."""
_RANGES = Row._fields.index("ranges")
_FAMILY = Row._fields.index("family")


def extents_of(row: Row) -> list[Extent]:
    """Where the parts of a row's table stand, lowest layer first.

    Example:
        >>> extents_of(Row("entry", "a", "A", parts="0:11:80:3|2:0:40:1"))[1]
        Extent(file=2, start=0, end=40, line=1)
    """
    return [Extent(*map(int, part.split(":"))) for part in row.parts.split("|")]


class Rows(Sequence[Row]):
    """The rows of a list, each made when it is asked for.

    Attributes:
        fresh: whether they are known to be what the files hold now.
    """

    def __init__(
        self,
        lines: bytes | Kept,
        ends: array[int],
        searches: bytes | Kept,
        shared: Shared | None = None,
        *,
        fresh: bool = True,
    ) -> None:
        self._lines = lines
        self._ends = ends
        self._searches = searches
        self._shared = shared or Shared()
        self._values: dict[str, dict[int, str]] = {}
        self._sought = 0
        self.fresh = fresh

    @classmethod
    def of(cls, rows: Iterable[Row], shared: Shared | None = None, *, fresh: bool = True) -> Rows:
        """Keep rows as text.

        Args:
            rows: of the list.
            shared: what they are found by besides their own words.
            fresh: whether they are known to be what the files hold now.
        """
        lines, searches = [], []
        for row in rows:
            lines.append("\t".join(row._replace(search="")).encode("utf-8", "replace") + b"\n")
            searches.append(row.search.encode("utf-8", "replace"))
        ends = array("Q", accumulate(map(len, lines)))
        return cls(b"".join(lines), ends, b"\n".join(searches), shared, fresh=fresh)

    def parts(self) -> tuple[bytes, bytes, bytes]:
        """What is kept, for a file: the lines, where each ends, and what a search looks at."""
        return bytes(self._lines), self._ends.tobytes(), bytes(self._searches)

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
        fields = sanitize(line.decode("utf-8", "replace").replace("\t", "\n"), lines=True).split("\n")
        return Row(*fields[:FIELDS]) if len(fields) >= FIELDS else Row("", "", "")

    def find(self, name: str) -> Row | None:
        """The row with an id, or nothing."""
        self._sought += 1
        if self._sought > FEW:
            number = self._places.get(name)
            return None if number is None else self[number]
        lines = bytes(self._lines)
        wanted = f"entry\t{name}\t".encode("utf-8", "replace")
        at = 0 if lines.startswith(wanted) else lines.find(b"\n" + wanted) + 1
        if at == 0 and not lines.startswith(wanted):
            return None
        return self._row(lines[at : lines.find(b"\n", at)])

    @cached_property
    def _places(self) -> dict[str, int]:
        places: dict[str, int] = {}
        for number, name in enumerate(self.ids()):
            places.setdefault(name, number)
        return places

    def ids(self) -> list[str]:
        """Every id, in the order of the list."""
        return [
            line.split(b"\t", 2)[1].decode("utf-8", "replace") for line in bytes(self._lines).splitlines()
        ]

    @cached_property
    def words(self) -> SearchWords:
        """What a search looks at in each row."""
        lines = sanitize(bytes(self._searches).decode("utf-8", "replace"), lines=True).split("\n")
        pairs = [_family_and_material(line) for line in bytes(self._lines).splitlines()]
        count = len(self)
        return SearchWords(
            lines if len(lines) == count else [""] * count,
            pairs if len(pairs) == count else [("", "")] * count,
            self._shared,
        )

    @cached_property
    def _ranges(self) -> list[bytes]:
        """What each row says of its values, with a blank before each of them."""
        lines = (line.split(b"\t", _RANGES + 1) for line in bytes(self._lines).splitlines())
        return [b" " + fields[_RANGES] if len(fields) > _RANGES else b"" for fields in lines]

    def values_of(self, key: str) -> Mapping[int, str]:
        """What each row says of one quantity, by the number of the row; rows that say nothing of it are left out.

        Args:
            key: the quantity.
        """
        if key not in self._values:
            sought = f" {key}=".encode()
            self._values[key] = {
                number: ranges[at + len(sought) :].split(b" ", 1)[0].decode("utf-8", "replace")
                for number, ranges in enumerate(self._ranges)
                if (at := ranges.find(sought)) >= 0
            }
        return self._values[key]

    def matching(self, words: str, among: Iterable[int] | None = None) -> list[int]:
        """The numbers of the rows that hold all of the words.

        Args:
            words: with spaces between them; a part of a word is enough.
            among: where it is known that only these can match.
        """
        searched = self.words
        found: Iterable[int] = range(len(self)) if among is None else among
        for word in words_of(words):
            found = searched.holding(word, found)
        return list(found)


def _family_and_material(line: bytes) -> tuple[str, str]:
    fields = line.split(b"\t", _FAMILY + 2)[_FAMILY : _FAMILY + 2]
    family, material = fields if len(fields) == 2 else (b"", b"")
    return family.decode("utf-8", "replace"), material.decode("utf-8", "replace")
