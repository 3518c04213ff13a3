"""Open the book: both layers read and merged, or taken from the cache, with every issue found on the way."""

from __future__ import annotations

import os
import zlib
from collections import OrderedDict
from collections.abc import Callable, ItemsView, Iterator, Mapping, ValuesView
from contextlib import suppress
from functools import cache, cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Generic, TypeVar, cast

from library.book.folders import cache_folder, shipped_folder
from library.book.index import Index, load_index, load_reads, save_index, save_reads
from library.book.model import Book, Caution, Entry, Family, Layer, Material, Source
from library.book.rows import Row, Rows
from library.book.walking import Walk, walk
from library.issue import Issue

if TYPE_CHECKING:
    from library.book.loader import Loader
    from library.book.rules import Rules

SHIPPED = shipped_folder()
"""The folder of the data that came with the program."""

LARGE = 1 << 20
"""Bytes in the shop's files from which reading all of them makes a person wait."""

MOST_MADE = 512
"""Objects of one kind that are kept once they were made."""

Thing = TypeVar("Thing")


class LazyTables(Mapping[str, Thing], Generic[Thing]):
    """Tables of one kind by id, each made when it is asked for.

    Its files may be changed or removed by anybody at any time. What was there when the book was read and is gone from
    its file since is passed over in ``items`` and ``values``, and is not ``in`` it; its id is still counted and told.
    """

    def __init__(
        self, find: Callable[[str], Row | None], ids: Callable[[], list[str]], make: Callable[[Row], object]
    ):
        self._find = find
        self._list_ids = ids
        self._make = make
        self._made: OrderedDict[str, Thing] = OrderedDict()

    def __getitem__(self, name: str) -> Thing:
        """The thing of an id; raises ``KeyError`` where there is none, or where it is gone from its file."""
        made = self._made.get(name)
        if made is not None:
            return made
        row = self._find(name)
        if row is None:
            raise KeyError(name)
        thing = self._made[name] = cast(Thing, self._make(row))
        while len(self._made) > MOST_MADE:
            self._made.popitem(last=False)
        return thing

    def __contains__(self, name: object) -> bool:
        return isinstance(name, str) and self.get(name) is not None

    def items(self) -> ItemsView[str, Thing]:
        """Every id with its thing, without those that are gone from their files."""
        return _ItemsThere(self)

    def values(self) -> ValuesView[Thing]:
        """Every thing, without those that are gone from their files."""
        return _ValuesThere(self)

    def __iter__(self) -> Iterator[str]:
        return iter(self._ids)

    def __len__(self) -> int:
        return len(self._ids)

    @cached_property
    def _ids(self) -> list[str]:
        return self._list_ids()


class _ItemsThere(ItemsView[str, Thing]):
    """The pairs that can be had at the moment."""

    _mapping: LazyTables[Thing]

    def __iter__(self) -> Iterator[tuple[str, Thing]]:
        for name in self._mapping:
            with suppress(KeyError):
                yield name, self._mapping[name]


class _ValuesThere(ValuesView[Thing]):
    """The things that can be had at the moment."""

    _mapping: LazyTables[Thing]

    def __iter__(self) -> Iterator[Thing]:
        return (thing for _, thing in self._mapping.items())


def open_book(shop: Path | None = None, *, afresh: bool = False) -> Book:
    """Read the shipped data and a shop's own folder over it.

    What has not changed since the last time comes from the cache folder, where there is one.

    Args:
        shop: the shop's folder; one that is not there is empty.
        afresh: whether to read and check every file, whatever the cache says.

    Returns:
        The book, with every problem of every file. Its entries are read from their files when they are asked for.
    """
    walks = _walks(shop)
    files = [(path, layer, signature) for layer, found in walks for path, signature in found.files]
    folder = _cache(shop)
    index = None if afresh else load_index(folder / "index")
    if index is None or not index.is_of(files):
        from library.book.book_reader import gather

        index, reads, context = gather(files, {} if afresh else load_reads(folder / "reads"))
        save_reads(reads, context, folder / "reads")
        save_index(index, folder / "index")
    return _book(index, [finding for _, found in walks for finding in found.findings])


def open_for_list(shop: Path | None = None) -> Book:
    """The book with its rows as a list shows them, and without the problems of its files.

    Where nothing is kept of a large book that still holds, plain files of the shop are not parsed, which is several times
    as quick; the rows are the same.

    Args:
        shop: the shop's folder; one that is not there is empty.
    """
    files = [(path, layer, signature) for layer, found in _walks(shop) for path, signature in found.files]
    if sum(max(signature.size, 0) for _, layer, signature in files if layer == "shop") < LARGE:
        return open_book(shop)
    folder = _cache(shop)
    for name in ("index", "list"):
        index = load_index(folder / name)
        if index is not None and index.is_of(files):
            return _book(index, [])
    from library.book.book_reader import gather

    index, _, _ = gather(files, load_reads(folder / "reads"), for_list=True)
    save_index(index, folder / "list")
    return _book(index, [])


def quick_rows(shop: Path | None = None) -> Rows:
    """The rows of the list at once, as they were when the book was opened last.

    Args:
        shop: the shop's folder.

    Returns:
        The rows. Where they are not ``fresh``, files have changed since, and ``open_book`` gives better ones; where
        nothing was kept, they are what a quick look at the files shows.
    """
    files = [(path, layer, signature) for layer, found in _walks(shop) for path, signature in found.files]
    index = load_index(_cache(shop) / "index", at_once=True)
    if index is None:
        from library.book.quick_scan import quick_scan

        return quick_scan(files)
    index.entries.fresh = index.is_of(files)
    return index.entries


def book_stamp(shop: Path | None = None) -> int:
    """A number that changes with any file of the book, found without reading them; 0 where one changed a moment ago.

    Args:
        shop: the shop's folder.
    """
    files = [
        (str(path), layer, signature) for layer, found in _walks(shop) for path, signature in found.files
    ]
    if any(signature.is_fresh for _, _, signature in files):
        return 0
    return zlib.crc32(repr(files).encode("utf-8", "replace")) or 1


def _walks(shop: Path | None) -> list[tuple[Layer, Walk]]:
    walks: list[tuple[Layer, Walk]] = [("shipped", walk(SHIPPED, links_out=True))]
    if shop is not None:
        walks.append(("shop", walk(shop)))
    return walks


def _cache(shop: Path | None) -> Path:
    """A folder in the cache that belongs to this book alone."""
    name = f"{os.path.abspath(SHIPPED)} {os.path.abspath(shop) if shop else ''}"
    return cache_folder() / f"book-{zlib.crc32(os.fsencode(name)):08x}"


def _book(index: Index, findings: list[Issue]) -> Book:
    make = _maker(index)
    ruled = _ruled(index, make)

    def lazy_tables(kind: str) -> Mapping[str, object]:
        rows = {row.id: row for row in index.others.get(kind, ())}
        return LazyTables(rows.get, lambda: list(rows), make)

    own = ("family", "material", "caution", "source")
    return Book(
        cast(Mapping[str, Entry], LazyTables(index.entries.find, index.entries.ids, ruled)),
        _families({row.id: row for row in index.others.get("family", ())}, make),
        cast(Mapping[str, Material], lazy_tables("material")),
        cast(Mapping[str, Caution], lazy_tables("caution")),
        cast(Mapping[str, Source], lazy_tables("source")),
        tuple(sorted((*index.findings, *findings), key=_order)),
        {kind: lazy_tables(kind) for kind in index.others if kind not in own},
        index.entries,
    )


def _ruled(index: Index, make: Callable[[Row], object]) -> Callable[[Row], object]:
    """What makes an entry with what the rules give it."""

    @cache
    def rules() -> Rules:
        from library.book.rules import rules_from

        rows = {row.id: row for row in index.others.get("rule", ())}
        groups = {row.id: row.work_material for row in index.others.get("material", ())}
        kept = cache(lambda name: make(rows[name]))
        return rules_from([(row.id, row.ranges) for row in rows.values()], groups, kept)

    return lambda row: rules().over(cast(Entry, make(row)))


def _families(rows: Mapping[str, Row], make: Callable[[Row], object]) -> Mapping[str, Family]:
    """The families, each with what it takes from those that it is like."""

    def alone(name: str) -> Family | None:
        with suppress(KeyError):
            return cast(Family, make(rows[name]))
        return None

    def whole(row: Row) -> Family:
        from library.book.likeness import followed

        return followed(cast(Family, make(row)), alone)

    return LazyTables(rows.get, lambda: list(rows), whole)


def _maker(index: Index) -> Callable[[Row], object]:
    """What makes the object of a row; the code that reads files is not loaded before somebody asks for one."""

    @cache
    def loader() -> Loader:
        from library.book.loader import Loader

        return Loader(index.notes)

    return lambda row: loader().make(row)


def _order(finding: Issue) -> tuple[str, int, int]:
    return str(finding.place.file), finding.place.line, finding.place.column
