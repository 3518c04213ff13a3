"""Where a value or a text came from, in words."""

from __future__ import annotations

from library.book.model import Book, Citation

_LABELS = {
    "shop": "this shop",
    "common practice": "common practice, no source",
    "from memory": "from memory",
    "missing": "no source given",
}
"""How each kind of source without a document is written."""


def cited(book: Book, citation: Citation, *, caveat: bool = True) -> str:
    """A source in words: the document, its publisher and year, and the place in it.

    Args:
        book: has the documents.
        citation: where a value or a text came from.
        caveat: tells why to take the document with care, where that is so; a page says it once.

    Example:
        >>> cited(Book({}), Citation("common practice"))
        'common practice, no source'
        >>> cited(Book({}), Citation("shop", place="measured on 2026-11-27"))
        'this shop, measured on 2026-11-27'
    """
    if citation.label != "published":
        return ", ".join(part for part in (_LABELS[citation.label], citation.place) if part)
    source = book.sources.get(citation.document)
    if source is None:
        return ", ".join(part for part in (citation.document, citation.place) if part)
    named = ", ".join(part for part in (source.title, source.by, source.year, citation.place) if part)
    if citation.speaks_of:
        named += f" (speaks of {citation.speaks_of})"
    return f"{named}. {source.caveat}" if source.caveat and caveat else named


def briefly(book: Book, citation: Citation) -> str:
    """A source short enough for a card or a sentence: the title of the document and the place in it.

    Example:
        >>> briefly(Book({}), Citation("from memory"))
        'from memory'
    """
    source = book.sources.get(citation.document)
    if citation.label != "published" or source is None:
        return cited(book, citation)
    return ", ".join(part for part in (source.title, citation.place) if part)
