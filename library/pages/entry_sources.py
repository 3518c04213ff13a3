"""The sources of an entry: a short tag behind each value, and once at the foot what each tag stands for."""

from __future__ import annotations

from library.book.model import Book, Citation, Entry, Value
from library.calc.citation import briefly, cited
from library.pages.page import Sources

TAGS = {"shop": "S", "common practice": "prac", "from memory": "mem", "missing": "none"}
"""The tag of each kind of source without a document."""

OWN = "S"
MORE = "+"
"""Stands behind the tag of a value of which more is told than its source."""


def tags(book: Book, entry: Entry) -> dict[str, str]:
    """The tag of each value by its key: of which kind its source is, or the number of the document.

    Example:
        >>> from library.book.model import Value
        >>> flutes = Value("flutes", citation=Citation("from memory"), note="Count them.")
        >>> tags(Book({}), Entry("one", "tap", "One", values={"flutes": flutes}))
        {'flutes': 'mem+'}
    """
    numbers = _numbers(entry)
    return {key: _tag(value, numbers) for key, value in entry.values.items()}


def _tag(value: Value, numbers: dict[str, int]) -> str:
    if value.unread:
        return ""
    tag = TAGS.get(value.citation.label) or f"[{numbers[value.citation.document]}]"
    own = f"{OWN} " if value.layer == "shop" and tag != OWN else ""
    told = value.note or value.also or value.disagreement or value.replaces
    return f"{own}{tag}{MORE if told else ''}"


def _numbers(entry: Entry) -> dict[str, int]:
    """The documents that its values cite, numbered in the order of the values."""
    cited_here = [one.citation.document for one in entry.values.values() if one.citation.label == "published"]
    return {document: number for number, document in enumerate(dict.fromkeys(cited_here), 1)}


def legend(book: Book, entry: Entry, *, full: bool = False, more: str = "") -> Sources:
    """What each tag stands for, each once.

    Args:
        book: has the documents.
        entry: whose values are tagged.
        full: tells publisher, year, place and caveat of a document too, and not its title alone.
        more: where the rest is told that a value has beside its source.
    """
    values = [one for one in entry.values.values() if not one.unread]
    marks = {}
    for document, number in _numbers(entry).items():
        places = dict.fromkeys(
            one.citation.place
            for one in values
            if one.citation.document == document and one.citation.label == "published"
        )
        place = "; ".join(filter(None, places)) if full else ""
        name = cited if full else briefly
        marks[f"[{number}]"] = name(book, Citation("published", document, place))
    for label, tag in TAGS.items():
        if any(one.citation.label == label or (tag == OWN and one.layer == "shop") for one in values):
            marks[tag] = cited(book, Citation(label))  # type: ignore[arg-type]
    if any(MORE in tag for tag in tags(book, entry).values()):
        marks[MORE] = f"more is told of it{more}"
    return Sources(marks)
