"""The rows of the list: one light record for each entry, kept as text so that ten thousand of them cost little memory.

A row is made when somebody looks at it. It is for finding and choosing; the numbers that a person works with always come
from the entry itself.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from functools import cached_property
from typing import NamedTuple, overload

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
        family: the id of its family; of a family that of the one that it is like.
        work_material: what it cuts.
        layer: the highest layer that has a part of it.
        state: ``unread`` where some lines of it could not be read, ``broken`` where none could; else empty.
        ranges: the numbers and words of its values, as ``library.book.value_ranges`` writes them.
        search: everything that a search looks at, casefolded.
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


def extents_of(row: Row) -> list[Extent]:
    """Where the parts of a row's table stand, lowest layer first.

    Example:
        >>> extents_of(Row("entry", "a", "A", parts="0:11:80:3|2:0:40:1"))[1]
        Extent(file=2, start=0, end=40, line=1)
    """
    return [Extent(*map(int, part.split(":"))) for part in row.parts.split("|")]


class Rows(Sequence[Row]):
    """The rows of a list, each made when it is asked for.

    Args:
        lines: the fields of each row with tabs between them, as they come out of the cache; what is shown of
            them is cleaned first.
        fresh: whether they are known to be what the files hold now.
    """

    def __init__(self, lines: Sequence[str], *, fresh: bool = True) -> None:
        self.lines = lines
        self.fresh = fresh
        self._values: dict[str, dict[int, str]] = {}

    @classmethod
    def of(cls, rows: Iterable[Row], *, fresh: bool = True) -> Rows:
        """Keep rows as text."""
        return cls(["\t".join(row) for row in rows], fresh=fresh)

    def __len__(self) -> int:
        return len(self.lines)

    @overload
    def __getitem__(self, number: int) -> Row: ...
    @overload
    def __getitem__(self, number: slice) -> Sequence[Row]: ...
    def __getitem__(self, number: int | slice) -> Row | Sequence[Row]:
        """The row of a number, or several; raises ``IndexError`` as a list does."""
        if isinstance(number, slice):
            return [self[one] for one in range(*number.indices(len(self)))]
        return Row(*map(sanitize, self.lines[number].split("\t")))

    def find(self, name: str) -> Row | None:
        """The row with an id, or nothing."""
        number = self._numbers.get(name)
        return None if number is None else self[number]

    @cached_property
    def _numbers(self) -> dict[str, int]:
        return {name: number for number, name in reversed([*enumerate(self.ids())])}

    def ids(self) -> list[str]:
        """Every id, in the order of the list."""
        return self._column("id")

    def _column(self, field: str) -> list[str]:
        number = Row._fields.index(field)
        return [line.split("\t", number + 1)[number] for line in self.lines]

    @cached_property
    def searches(self) -> list[str]:
        """What a search looks at in each row, casefolded."""
        return self._column("search")

    def values_of(self, key: str) -> Mapping[int, str]:
        """What each row says of one quantity, by the number of the row; rows that say nothing of it are left out.

        Args:
            key: the quantity.
        """
        if key not in self._values:
            sought = f" {key}="
            self._values[key] = {
                number: ranges[at + len(sought) :].split(" ", 1)[0]
                for number, told in enumerate(self._column("ranges"))
                if (at := (ranges := f" {told}").find(sought)) >= 0
            }
        return self._values[key]

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
