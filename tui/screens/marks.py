"""Taking all marks of a list away: nobody typed them, so that it is done at once and nothing is asked."""

from __future__ import annotations

from typing import Protocol


class Marks(Protocol):
    """Whatever keeps marks."""

    def __len__(self) -> int: ...

    def clear(self) -> None:
        """Take all of them away."""


def take_away(marks: Marks, one: str, several: str, key: str) -> str:
    """Take all marks away, and tell that and how something is marked again.

    Args:
        marks: of a list.
        one: what is marked, such as ``entry``.
        several: the same of more than one.
        key: marks.

    Example:
        >>> marks = ["reamer-a", "reamer-b"]
        >>> take_away(marks, "entry", "entries", "Ctrl+T"), marks
        ('The marks of 2 entries are taken away; Ctrl+T marks the chosen one again.', [])
        >>> take_away([], "entry", "entries", "Ctrl+T")
        'No entry is marked.'
    """
    count = len(marks)
    marks.clear()
    if not count:
        return f"No {one} is marked."
    taken = f"The marks of {count} {several} are" if count > 1 else f"The mark of one {one} is"
    return f"{taken} taken away; {key} marks the chosen one again."
