"""What a thread's name says of the tool: ``M16``, ``5/8-11 UNC``, ``M20 x 2 LH``, ``Tr 20 x 8 P4``."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence

from library.book.model import Book
from library.calc.by_family import is_threaded
from library.cards.model import Card
from library.drills import drill_size
from library.shop_threads.laying import own_threads
from library.threads import Thread, find_threads
from library.threads.designation import taken_apart

_METRIC = re.compile(r"MF?\s*(?P<size>[0-9]+(?:\.[0-9]+)?)\s*x\s*(?P<pitch>[0-9]*\.?[0-9]+)", re.IGNORECASE)
_INCH = re.compile(
    r"(?P<size>[0-9]+(?:[ -][0-9]+/[0-9]+)?|[0-9]+/[0-9]+|[0-9]*\.[0-9]+)\s*(?:in\b|\")?\s*-\s*"
    r"(?P<tpi>[0-9]+(?:\.[0-9]+)?)(?:\s+[A-Za-z]+)?"
)


def of_thread(name: str, book: Book | None = None) -> Mapping[str, str]:
    """The quantities of a thread by its name, as a person would type them.

    A standard thread is looked up; of any other one the name itself says diameter and pitch.

    Args:
        name: as marked on the tool, perhaps with its class, its lead before its pitch, and ``LH`` for a left-hand thread.
        book: whose own threads go before the standard ones.

    Returns:
        Texts for ``diameter``, ``pitch`` or ``threads_per_inch``, ``hand`` for a left-hand thread, and what else is
        known of a standard one; empty where the name is not understood.

    Example:
        >>> of_thread("M13 x 1.1 LH")
        {'hand': 'left', 'diameter': '13 mm', 'pitch': '1.1 mm'}
        >>> of_thread("M12-6H")["pitch"]
        '1.75 mm'
    """
    own, more = own_threads(book), taken_apart(name)
    said = {"hand": more.hand} if more.hand else {}
    threads = find_threads(name, own)
    if any(thread.unread for thread in threads):
        return said
    if threads or more.wrong:
        return said | _in_common(threads) | said
    known = _by_its_words(more.size)
    return said | known | ({"starts": str(more.starts)} if known and more.starts else {}) | said


def by_its_name(card: Card, book: Book | None = None) -> Iterator[Mapping[str, str]]:
    """The quantities that a tool has by the names that it is called by, of its thread and of its size.

    A tool that has no thread itself is called by that of a screw or a hole, which says nothing of its own diameter: a
    counterbore for M8 screws has that of their heads. A numbered or lettered drill has the diameter of its name.

    Args:
        card: with the tool.
        book: with its family, and with its own threads.
    """
    threaded = book is None or is_threaded(book.families.get(card.family))
    for name in (card.tool.thread, card.tool.size):
        if threaded or drill_size(name):
            yield of_thread(name, book)


def of_its_screw(card: Card, book: Book) -> str:
    """The thread that a tool without one is called by, as it stands on its card; empty where it is called by none."""
    if is_threaded(book.families.get(card.family)):
        return ""
    names = (one.strip() for one in (card.tool.thread, card.tool.size))
    return next((one for one in names if {"pitch", "threads_per_inch"} & of_thread(one, book).keys()), "")


def _in_common(threads: Sequence[Thread]) -> dict[str, str]:
    """What every thread of that name has in common; nothing where two differ in it."""
    found = [thread.fills() for thread in threads] or [{}]
    return {
        key: value for key, value in found[0].items() if value and all(one.get(key) == value for one in found)
    }


def _by_its_words(text: str) -> dict[str, str]:
    if metric := _METRIC.fullmatch(text):
        return {"diameter": f"{metric['size']} mm", "pitch": f"{metric['pitch']} mm"}
    if inch := _INCH.fullmatch(text):
        return {"diameter": f"{inch['size']} in", "threads_per_inch": inch["tpi"]}
    if size := drill_size(text):
        return {"diameter": size}
    return {}
