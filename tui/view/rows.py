"""The book as rows of a list, and finding among them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from library.book.model import Book, Entry


class Row(NamedTuple):
    """One entry as the list shows it.

    Attributes:
        id: of the entry.
        family: the family's title.
        title: of the entry.
        material: what it cuts.
        mark: ``shop`` where the shop's own book has a part of it.
        words: everything that a search looks at, casefolded.
    """

    id: str
    family: str
    title: str
    material: str
    mark: str
    words: str


def rows_of(book: Book) -> list[Row]:
    """The rows of a book, in its order."""
    return [_row(book, entry) for entry in book.entries.values()]


def _row(book: Book, entry: Entry) -> Row:
    family, material = book.families.get(entry.family), book.materials.get(entry.work_material)
    family_title = family.title if family else entry.family
    material_title = material.title if material else entry.work_material
    words = [entry.title, family_title, entry.family, material_title, entry.work_material, entry.id]
    words += [*entry.synonyms, *(family.synonyms if family else ()), *(material.synonyms if material else ())]
    mark = "shop" if entry.layer == "shop" else ""
    return Row(entry.id, family_title, entry.title, material_title, mark, " ".join(words).casefold())


def search(rows: Sequence[Row], sought: str, among: Iterable[int] | None = None) -> Sequence[int]:
    """Indices of the rows that have every sought word somewhere in them, in the order of the book.

    Args:
        rows: the whole list.
        sought: words, in any order and any case; parts of words are enough.
        among: where it is known that only these can match.

    Example:
        >>> tap = Row("t1", "Taps", "Hand tap, brass", "brass", "", "hand tap, brass taps")
        >>> list(search([tap], "BRA tap")), list(search([tap], "drill"))
        ([0], [])
    """
    found: Iterable[int] = range(len(rows)) if among is None else among
    for word in sought.casefold().split():
        found = [index for index in found if word in rows[index].words]
    return found if isinstance(found, Sequence) else list(found)


def nearest_first(rows: Sequence[Row], sought: str, found: Sequence[int]) -> Sequence[int]:
    """The same rows, those first that have what was typed as it stands.

    Example:
        >>> reamer = Row("r", "", "Taper reamer, left hand", "", "", "taper reamer, left hand")
        >>> tap = Row("t", "", "Hand tap", "", "", "hand tap")
        >>> nearest_first([reamer, tap], "hand tap", [0, 1])
        [1, 0]
    """
    phrase = " ".join(sought.casefold().split())
    if " " not in phrase:
        return found
    near = [index for index in found if phrase in rows[index].words]
    known = set(near)
    return near + [index for index in found if index not in known]
