"""Lay a shop's threads over the standard ones."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any, cast

from library.book.model import Book
from library.shop_threads.model import OwnThread
from library.threads.finding import find_threads
from library.threads.model import Series, Thread
from library.threads.reading import all_series, all_threads

OWN = Series("own", "the shop's own", "iso")
"""The series of a thread that belongs to no standard one."""

FOLLOWING: Mapping[str, object] = {
    "pitch_diameter": "",
    "minor_diameter": "",
    "screw_minor_diameter": "",
    "front_pitch_diameter": "",
    "tap_drill": "",
    "other_tap_drills": (),
}
"""What follows from diameter and pitch, so that the standard ones hold no longer where one of these is another."""


def own_threads(book: Book | None) -> tuple[Thread, ...]:
    """The threads that a book has of its own, each laid over the standard thread of its id.

    One of which a part cannot be read is among them without its numbers, so that nobody takes the standard ones for it.

    Args:
        book: where threads may stand; none has none.
    """
    tables = cast(Mapping[str, OwnThread], book.more.get("thread", {})) if book is not None else {}
    return tuple(laid(tables[name]) for name in tables)


def threads_called(name: str, book: Book | None) -> tuple[str, ...]:
    """The titles of all threads that go by a name, those of a book before the standard ones.

    Args:
        name: as typed.
        book: where threads may stand; none has none.

    Example:
        >>> threads_called("1/4-20", None), threads_called("M12", None)
        (('1/4-20 UNC', '1/4-20 BSW'), ('M12 x 1.75',))
    """
    return tuple(one.title for one in find_threads(name, own_threads(book)))


def laid(own: OwnThread) -> Thread:
    """One thread of a book with what it does not say itself from the standard thread of its id.

    Example:
        >>> laid(OwnThread("m12", said={"tap_drill": "10.4 mm"})).tap_drill, laid(OwnThread("m12")).pitch
        ('10.4 mm', '1.75 mm')
    """
    below = all_threads().get(own.id) or Thread(own.id, own.title or own.id, OWN)
    if own.unread:
        return Thread(
            own.id, own.title or below.title, _series(own, below.series), below.synonyms, unread=True
        )
    said = dict(own.said)
    if "pitch" in said or "threads_per_inch" in said:
        said = {"pitch": "", "threads_per_inch": "", **FOLLOWING, **said}
    if "diameter" in said:
        said = {**FOLLOWING, **said}
    made = replace(below, **cast(dict[str, Any], said))
    made = replace(made, title=own.title or below.title, series=_series(own, below.series), is_own=True)
    return replace(made, unread=not (made.diameter and (made.pitch or made.threads_per_inch)))


def _series(own: OwnThread, below: Series) -> Series:
    found = all_series().get(own.series, below)
    if own.series or not (own.thread_form or own.thread_taper):
        return found
    taper = own.thread_taper or found.thread_taper
    form = own.thread_form or {"npt": "iso", "bspt": "whitworth"}.get(taper, found.thread_form)
    return replace(OWN, thread_form=form, taper="" if taper == "parallel" else "1 in 16")
