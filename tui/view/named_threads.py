"""Whether a size that is typed to find a tool names one thread of the tables, several, or none.

The tables are read late and only for names of which they can tell something: most go on to a pitch that is not yet typed.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from library.search.sizes import Size

ThreadsCalled = Callable[[str], tuple[str, ...]]
"""Gives the titles of all threads that go by a name."""

BETWEEN_TWO = re.compile(r"M[0-9]+\.[0-9]+")
"""The name of a metric thread, as far as its diameter, that is no whole number."""


def is_no_thread(size: Size | None, called: ThreadsCalled | None) -> bool:
    """Whether a size is that of a metric thread between two whole ones, as M12.5 is, of which the tables have none.

    Args:
        size: of the find line; nothing where it has none.
        called: gives the threads of a name; nothing before the book is read.

    Example:
        >>> is_no_thread(Size("M12.5", True), lambda name: ()), is_no_thread(Size("M12", True), lambda name: ())
        (True, False)
    """
    if called is None or size is None or not BETWEEN_TWO.fullmatch(size.text):
        return False
    return size.is_thread and not called(size.text)


def shared_by(size: Size | None, called: ThreadsCalled | None) -> tuple[str, ...]:
    """The threads of which a size is the name, where several share it, as 1/4-20 does; else none.

    Only names that begin with a number are shared.

    Args:
        size: of the find line; nothing where it has none.
        called: gives the threads of a name; nothing before the book is read.

    Example:
        >>> shared_by(Size("1/4-20", True), lambda name: ("1/4-20 UNC", "1/4-20 BSW"))
        ('1/4-20 UNC', '1/4-20 BSW')
    """
    if called is None or size is None or not (size.is_thread and size.text[0].isdigit()):
        return ()
    shared = called(size.text)
    return shared if len(shared) > 1 else ()
