"""What is said where the book has no entry of a name: the nearest one, and every file that it may stand in unread."""

from __future__ import annotations

from difflib import get_close_matches

from library.book.model import Book
from library.issue import Issue

MOST_TOLD = 5
"""Files and tables that are told of; the rest is counted."""


def no_entry(book: Book, wanted: str) -> list[str]:
    """The sentences for an entry that is not in the book.

    Args:
        book: that has no such entry.
        wanted: its id, as typed.

    Example:
        >>> no_entry(Book({}), "gun-tap")
        ["The book has no entry called 'gun-tap'. 'heelclear list' lists them all."]
    """
    near = get_close_matches(wanted, list(book.entries), n=1, cutoff=0.4)
    hint = f" Did you mean {near[0]}?" if near else ""
    unread = [one for one in book.findings if _hides_an_entry(one)]
    more = len(unread) - MOST_TOLD
    return [
        f"The book has no entry called {wanted!r}.{hint} 'heelclear list' lists them all.",
        *(f"It may stand in what was not read: {one}" for one in unread[:MOST_TOLD]),
        *([f"{more} more could not be read; 'heelclear check' tells of all."] if more > 0 else []),
    ]


def _hides_an_entry(one: Issue) -> bool:
    """Whether it is told of a whole file that was not read, or of an entry whose id was not."""
    return one.severity == "error" and one.where in {"", "entry"} and one.key in {"", "id"}
