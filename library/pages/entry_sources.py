"""The sources of an entry: a tag behind each value, and once at the foot what each tag stands for.

A tag is the letter of the source's grade, and behind it the number of the document where there is one.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from library.book.grades import ELSEWHERE, IN_SHORT, OTHER, explained, grade
from library.book.model import Book, Citation, Entry, Value
from library.calc.citation import briefly, cited
from library.pages.page import Sources

OWN = "P"
"""Stands before the tag of a value that is the shop's own, whatever source it names."""

GRADES_ARE = "Letters:"
"""Begins the line that says what the letters of the grades stand for."""

RULED = "r"
"""Stands behind the tag of a value that a rule of the book gives, and not the entry itself."""

MORE = "+"
"""Stands behind the tag of a value of which more is told than its source."""


def tags(book: Book, entry: Entry) -> dict[str, str]:
    """The tag of each value by its key: how much its source carries, and the number of the document.

    Example:
        >>> from library.book.model import Value
        >>> flutes = Value("flutes", citation=Citation("from memory"), note="Count them.")
        >>> tags(Book({}), Entry("one", "tap", "One", values={"flutes": flutes}))
        {'flutes': '?+'}
    """
    numbers = _numbers(entry)
    return {key: _tag(book, value, numbers) for key, value in entry.values.items()}


def band_tags(book: Book, entry: Entry, value: Value) -> list[str]:
    """The tag of each band of one of its values."""
    numbers = _numbers(entry)
    return [_tag(book, band.value, numbers) for band in value.bands]


def _tag(book: Book, value: Value, numbers: dict[str, int]) -> str:
    if value.unread:
        return ""
    tag = _short(book, value.citation, numbers)
    own = f"{OWN} " if value.layer == "shop" and tag != OWN else ""
    told = value.note or value.also or value.disagreement or value.replaces or value.bands
    return f"{own}{tag}{RULED if value.by_rule else ''}{MORE if told else ''}"


def _short(book: Book, citation: Citation, numbers: dict[str, int]) -> str:
    """The letter of a source, and the number of its document where it has one."""
    is_numbered = citation.label == "published" and citation.document in numbers
    number = f"[{numbers[citation.document]}]" if is_numbered else ""
    return f"{grade(citation, book.sources)}{number}"


def tag_of(book: Book, citation: Citation, entry: Entry, besides: Sequence[Citation]) -> str:
    """The tag of a text that stands beside the values, such as a line of a set-up.

    Args:
        book: has the documents.
        citation: where the text came from.
        entry: whose values are tagged.
        besides: the sources of all such texts, in their order.

    Example:
        >>> tag_of(Book({}), Citation("published", "a"), Entry("one", "tap", "One"), [Citation("published", "a")])
        '-[1]'
    """
    return _short(book, citation, _numbers(entry, besides))


def _numbers(entry: Entry, besides: Sequence[Citation] = ()) -> dict[str, int]:
    """The documents that its values cite, numbered in the order of the values, then those of the texts beside them."""
    citations = [*_of_values(entry.values.values()), *besides]
    cited_here = [one.document for one in citations if one.label == "published"]
    return {document: number for number, document in enumerate(dict.fromkeys(cited_here), 1)}


def _of_values(values: Iterable[Value]) -> Iterator[Citation]:
    """The sources of values, each with those of its bands behind it."""
    for value in values:
        yield value.citation
        yield from (band.value.citation for band in value.bands if not band.value.unread)


def letters(book: Book, value: Value) -> str:
    """The tag of a value without the number of its document, where values of several entries stand side by side.

    Example:
        >>> letters(Book({}), Value("flutes", citation=Citation("published", "a", "table 2"), note="Count them."))
        '-+'
    """
    return _tag(book, value, {})


def in_short(book: Book, entry: Entry) -> tuple[str, ...]:
    """What each letter and sign behind the values of an entry means, in a word or two, for one line beside them.

    Example:
        >>> from library.book.model import Value
        >>> flutes = Value("flutes", citation=Citation("published", "a", speaks_of="drills"), note="Count them.")
        >>> in_short(Book({}), Entry("one", "tap", "One", values={"flutes": flutes}))
        ('- no grade', 'x other tool', '+ more', '[1] named at the end')
    """
    values = [one for one in entry.values.values() if not one.unread]
    numbers = sorted({one.citation.document for one in values if one.citation.label == "published"})
    several = f" to [{len(numbers)}]" if len(numbers) > 1 else ""
    return (*signs_in_short(book, values), *([f"[1]{several} named at the end"] if numbers else []))


def signs_in_short(book: Book, shown: Iterable[Value]) -> tuple[str, ...]:
    """What each letter and sign behind some values means, in a word or two."""
    values = [one for one in shown if not one.unread]
    told = [letters(book, one) for one in values]
    used = set("".join(grade(one.citation, book.sources) for one in values))
    used |= {OWN} if any(one.layer == "shop" for one in values) else set()
    said = [f"{letter} {word}" for letter, word in IN_SHORT.items() if letter in used]
    signs = {ELSEWHERE: OTHER, RULED: "rule", MORE: "more"}
    is_there = {ELSEWHERE: ELSEWHERE in used, RULED: any(one.by_rule for one in values),
                MORE: any(MORE in one for one in told)}  # fmt: skip
    return (*said, *(f"{sign} {word}" for sign, word in signs.items() if is_there[sign]))


def legend(
    book: Book, entry: Entry, *, full: bool = False, more: str = "", besides: Sequence[Citation] = ()
) -> Sources:
    """What each tag stands for, each once.

    Args:
        book: has the documents.
        entry: whose values are tagged.
        full: tells publisher, year, place and caveat of a document too, and not its title alone.
        more: where the rest is told that a value has beside its source.
        besides: the sources of texts that stand beside the values.
    """
    values = [one for one in entry.values.values() if not one.unread]
    citations = [*_of_values(values), *besides]
    marks = {}
    for document, number in _numbers(entry, besides).items():
        places = dict.fromkeys(
            one.place for one in citations if one.document == document and one.label == "published"
        )
        place = "; ".join(filter(None, places)) if full else ""
        name = cited if full else briefly
        marks[f"[{number}]"] = name(book, Citation("published", document, place))
    own = [OWN] if any(one.layer == "shop" for one in values) else []
    used = explained([*own, *(grade(one, book.sources) for one in citations)])
    if used:
        marks[GRADES_ARE] = used
    ruled = dict.fromkeys(one.by_rule.title for one in values if one.by_rule)
    if ruled:
        of = "" if len(ruled) == 1 else "s"
        marks[RULED] = f"by the rule{of} for {', '.join(ruled)}" if full or not of else "by a rule"
    if any(MORE in tag for tag in tags(book, entry).values()):
        marks[MORE] = f"more told{more}"
    return Sources(marks)
