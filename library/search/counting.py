"""Statistics of the book: entries by family, values by quantity, by kind of source and by its grade."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator

from library.book.grades import ELSEWHERE, GRADES, OF_ANOTHER, grade
from library.book.model import LABELS, Book, Entry, Value


def counts(book: Book, entries: Iterable[Entry]) -> dict[str, dict[str, int]]:
    """Count entries by family, values by quantity, by kind of source and by how much the source carries.

    A value is one recommended value or range of one quantity in one entry; another source's value for
    the same thing counts as a value of its own.

    Args:
        book: gives the titles of the families.
        entries: the entries to count.

    Example:
        >>> counts(Book({}), [])["values by kind of source"]["published"]
        0
    """
    chosen = list(entries)
    values = [value for entry in chosen for own in entry.values.values() for value in _with_others(own)]
    families = Counter(entry.family for entry in chosen)
    labels = Counter(value.citation.label for value in values)
    grades = Counter(letter for value in values for letter in grade(value.citation, book.sources))
    return {
        "entries by family": {name: families[name] for name in [*book.families, *(set(families) - set(book.families))]},
        "values by quantity": dict(Counter(value.key for value in values).most_common()),
        "values by kind of source": {label: labels[label] for label in (*LABELS, "missing")},
        "values by grade of source": {
            f"{letter} {words}": grades[letter]
            for letter, words in {**GRADES, ELSEWHERE: OF_ANOTHER}.items()
        },
        "in all": {
            "entries": len(chosen),
            "values": len(values),
            "values on which sources disagree": sum(bool(value.disagreement) for value in values),
            "families": len(book.families),
            "work materials": len(book.materials),
            "cautions": len(book.cautions),
            "published sources": len(book.sources),
        },
    }  # fmt: skip


def _with_others(value: Value) -> Iterator[Value]:
    yield value
    yield from value.also
    yield from (band.value for band in value.bands)
