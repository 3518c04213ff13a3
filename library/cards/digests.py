"""Digests of cards: what lists of very many show of each, kept in a cache that may be deleted or spoilt at any time.

A digest is only believed while its file has the same times and size as when it was read, the times are old enough to
have shown another change, and the program is the same. How many sharpenings are left hangs on the book too, so that is
forgotten when any file of the book has changed. A sum over the whole cache tells where a byte of it is not as written.
"""

from __future__ import annotations

import hashlib
import json
import os
import zlib
from collections.abc import Collection, Iterable, Iterator
from contextlib import suppress
from dataclasses import dataclass
from functools import cache, cached_property
from pathlib import Path

from library.book.fetching import Signature
from library.book.file_slice import open_plainly
from library.book.model import Book
from library.book.opening import book_stamp, open_book
from library.cards.history import History, Visit, left_as_of, left_of, life_of, may_last, visit_of
from library.cards.model import Card
from library.cards.store import FOLDER, NoCard, card_path, load
from library.cards.tables import RECORD, record, written_records
from library.files.own_file import put_whole

_NUMBER = (float, int, type(None))
_Kept = dict[str, tuple[Signature, "Digest"]]
_Left = dict[str, int | None]


@dataclass(frozen=True)
class Digest:
    """What lists show of a card.

    Attributes:
        record: its row among the records.
        before: the diameter of the tool as it came, in mm; nothing where it was not measured.
        after: its diameter after grinding, in mm.
        may_last: whether it may say how many sharpenings are left.
    """

    record: tuple[str, ...]
    before: float | None
    after: float | None
    may_last: bool

    @staticmethod
    def of(card: Card) -> Digest:
        """The digest of a card."""
        visit = visit_of(card)
        return Digest(tuple(record(card)), visit.before, visit.after, may_last(card))

    @property
    def visit(self) -> Visit:
        """The sharpening, with as much of its card as a life shows."""
        told = dict(zip(RECORD, self.record, strict=True))
        card = Card(id=told["card"], status=told["status"], minutes=told["minutes"], result=told["result"])
        return Visit(card, self.before, self.after)


class Digests:
    """The digests of a book's cards.

    Args:
        shop: the shop's folder.
        known: the ids of all its cards; what the cache has of others is dropped.
        cache: the folder for the cache; without one every card is read.

    Attributes:
        troubles: a sentence for each card that could not be read.
    """

    def __init__(self, shop: Path, known: Collection[str], cache: Path | None = None) -> None:
        self.troubles: list[str] = []
        self._shop = shop
        self._file = _cache_file(shop, cache)
        self._stamp = _code_stamp()
        kept, (book, left) = _read_cache(self._file, self._stamp)
        ids = set(known)
        self._kept = {name: one for name, one in kept.items() if name in ids}
        self._changed = False
        self._left, self._left_with = left, book

    def records(self, ids: Iterable[str]) -> str:
        """The records of some cards, as comma-separated text."""
        text = written_records([one.record for _, one in self._found(ids)])
        self._save()
        return text

    def life(self, tool: str, ids: Iterable[str]) -> History:
        """The life of a tool.

        Args:
            tool: its own name in the shop.
            ids: of all its cards.
        """
        found = sorted(self._found(ids))
        lasting = [name for name, digest in reversed(found) if digest.may_last]
        left = left_as_of(lasting, self._left_after)
        self._save()
        return life_of(tool, [digest.visit for _, digest in found], left)

    def _found(self, ids: Iterable[str]) -> list[tuple[str, Digest]]:
        return [(name, digest) for name in ids if (digest := self._digest(name)) is not None]

    def _digest(self, name: str) -> Digest | None:
        try:
            path = card_path(self._shop, name)
            signature = _signature(path)
            kept = self._kept.get(name)
            if kept is not None and kept[0] == signature:
                return kept[1]
            digest = Digest.of(load(self._shop, name).card)
        except NoCard as error:
            self.troubles.append(str(error))
            return None
        self._changed |= name in self._kept
        self._kept.pop(name, None)
        self._left.pop(name, None)
        if signature is not None:
            self._kept[name] = signature, digest
            self._changed = True
        return digest

    def _left_after(self, name: str) -> int | None:
        """How often a tool can still be sharpened after a card, by the book as it is now."""
        if self._left_with != self._book_stamp:
            self._left, self._left_with = {}, self._book_stamp
        if name in self._left:
            return self._left[name]
        try:
            left = left_of(load(self._shop, name).card, self._book)
        except NoCard as error:
            self.troubles.append(str(error))
            return None
        if name in self._kept and self._book_stamp:
            self._left[name] = left
            self._changed = True
        return left

    @cached_property
    def _book_stamp(self) -> int:
        return book_stamp(self._shop)

    @cached_property
    def _book(self) -> Book:
        return open_book(self._shop)

    def _save(self) -> None:
        if self._changed and self._file is not None:
            _write_cache(self._file, self._stamp, self._kept, self._left_with, self._left)
            self._changed = False


def _signature(path: Path) -> Signature | None:
    """What tells whether a file is still the same; nothing where it changed so lately that it would not show."""
    try:
        signature = Signature.of(path.stat())
    except OSError:
        return None
    return None if signature.is_fresh else signature


def _cache_file(shop: Path, cache: Path | None) -> Path | None:
    if cache is None:
        return None
    name = hashlib.sha256(os.fsencode(os.path.realpath(shop / FOLDER))).hexdigest()[:16]
    return cache / f"card-digests-{name}"


@cache
def _code_stamp() -> int:
    """A number that changes with the program, so that another version's cache is not trusted."""
    here, stamp = Path(__file__).parents[2], 1
    for top in (here / "geometry", here / "library"):
        for folder, folders, files in os.walk(top):
            folders[:] = sorted(one for one in folders if one != "__pycache__")
            for name in sorted(one for one in files if one.endswith(".py")):
                with suppress(OSError):
                    status = os.stat(os.path.join(folder, name))
                    told = f"{folder} {name} {status.st_mtime_ns} {status.st_size}"
                    stamp = zlib.crc32(told.encode("utf-8", "surrogateescape"), stamp)
    return stamp


def _read_cache(file: Path | None, stamp: int) -> tuple[_Kept, tuple[int, _Left]]:
    nothing: tuple[_Kept, tuple[int, _Left]] = {}, (0, {})
    if file is None:
        return nothing
    try:
        with open_plainly(file) as stream:
            first, _, rest = stream.read().partition(b"\n")
        if int(first) != zlib.crc32(rest):
            return nothing
        held = json.loads(rest)
        if held["stamp"] != stamp:
            return nothing
        kept = dict(_cards_in(held["cards"]))
        left = {str(name): None if one is None else int(one) for name, one in held["left"].items()}
        return kept, (int(held["book"]), left)
    except (OSError, ValueError, KeyError, TypeError, AttributeError, RecursionError):
        return nothing


def _cards_in(held: dict[str, list[object]]) -> Iterator[tuple[str, tuple[Signature, Digest]]]:
    for name, (times, told, before, after, lasts) in held.items():
        if not (isinstance(times, list) and isinstance(told, list) and len(told) == len(RECORD)):
            raise ValueError("not a digest")
        if not (isinstance(before, _NUMBER) and isinstance(after, _NUMBER)):
            raise ValueError("not a digest")
        digest = Digest(tuple(map(str, told)), before, after, lasts is True)
        yield name, (Signature(*map(int, times)), digest)


def _write_cache(file: Path, stamp: int, kept: _Kept, book: int, left: _Left) -> None:
    cards = {
        name: [
            [one.mtime_ns, one.ctime_ns, one.size],
            digest.record,
            digest.before,
            digest.after,
            digest.may_last,
        ]
        for name, (one, digest) in kept.items()
    }
    body = json.dumps({"stamp": stamp, "cards": cards, "book": book, "left": left}).encode()
    # Without a cache everything works, only slower.
    with suppress(OSError):
        put_whole(file, [b"%d\n" % zlib.crc32(body), body], lasting=False)
