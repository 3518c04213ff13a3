"""A value of the book in words: its span, where it comes from, and what other sources say.

Screen, command and comparison all say a value with these, so that it reads the same wherever it stands.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from types import MappingProxyType

from geometry.quantities import QUANTITIES
from library.book.grades import GUESS, grade
from library.book.model import Book, Citation, Value
from library.calc.citation import briefly, cited

STATIONS = {0.0: "edge", 0.25: "1/4", 0.5: "1/2", 0.75: "3/4", 1.0: "heel"}
"""What a place behind the edge is called, by its share of the land."""

_KEY = re.compile(r"\b([a-z]+(?:_[a-z]+)+)\b(?: \(([^()]*)\))?")
"""A word with an underscore in it, and what stands behind it in brackets."""


_FIRST = re.compile(r"^[a-z]+(?=:| is | = )")
"""A quantity whose key is one word, which a sentence begins with."""


def by_title(text: str, titles: Mapping[str, str] = MappingProxyType({})) -> str:
    """A sentence that names quantities by key, such as a command takes them, with their titles instead.

    Args:
        text: the sentence.
        titles: what a quantity is called here, where that is not its own title.

    Example:
        >>> by_title("Give included_angle, such as 8 deg.")
        'Give included angle, such as 8 deg.'
        >>> by_title("Give land_measured_as (land measured as), arc or chord.")
        'Give land measured as, arc or chord.'
        >>> by_title("drop: 'wide' is no number.")
        "Indicator drop: 'wide' is no number."
    """
    said = _FIRST.sub(lambda found: _titled_first(found[0], titles), text)
    said = _KEY.sub(lambda found: _titled(found, titles), said)
    return said[:1].upper() + said[1:]


def spoken(word: str) -> str:
    """A word to choose as a person says it.

    Example:
        >>> spoken("type-6-straight-cup")
        'type 6 straight cup'
    """
    return word.replace("-", " ")


def _titled_first(key: str, titles: Mapping[str, str]) -> str:
    return titles.get(key) or (QUANTITIES[key].title if key in QUANTITIES else key)


def _titled(found: re.Match[str], titles: Mapping[str, str]) -> str:
    row = QUANTITIES.get(found[1])
    if row is None:
        return found[0]
    title = titles.get(found[1], row.title).lower()
    behind = "" if found[2] is None or found[2] == title else f" ({found[2]})"
    return f"{title}{behind}"


def span(value: Value) -> str:
    """A value with its range, as typed in the book.

    Example:
        >>> from library.book.model import Measure, Value
        >>> span(Value("rake_angle", low=Measure("3 deg"), usual=Measure("5 deg"), high=Measure("8 deg")))
        '5 deg (3 deg to 8 deg)'
    """
    if value.unread and value.first() is None:
        return "not readable in the shop's file; 'heelclear check' says why"
    usual = value.usual.text if value.usual else ""
    ends = [measure.text for measure in (value.low, value.high) if measure is not None]
    if len(ends) == 2:
        reach = f"{ends[0]} to {ends[1]}"
    elif value.low is not None:
        reach = f"{value.low.text} or more"
    else:
        reach = f"{value.high.text} or less" if value.high is not None else ""
    return f"{usual} ({reach})" if usual and reach else usual or reach


def in_one_paragraph(book: Book, value: Value, *, brief: bool = False) -> str:
    """A value in one paragraph: its range, its note and its source, for where it is worked with.

    Args:
        book: has the documents.
        value: of an entry.
        brief: whether the source is told by its title and the place in it alone, for where there is little room.

    Example:
        >>> from library.book.model import Book, Citation, Measure, Value
        >>> low, note = Measure("4 deg"), "At the chamfer."
        >>> in_one_paragraph(Book({}), Value("relief_angle", low=low, citation=Citation("from memory"), note=note))
        '4 deg or more. At the chamfer. Source: from memory'
    """
    band = f" {value.band}" if value.band else ""
    note = f"{value.note} " if value.note else ""
    rule = f"{_capital(value.by_rule.in_words)}. " if value.by_rule is not None else ""
    source = briefly(book, value.citation) if brief else cited(book, value.citation)
    return f"{span(value)}{band}. {note}{rule}Source: {source}"


def _below(value: Value, spoken_span: Callable[[Value], str]) -> str:
    """What one of the shop's own covers."""
    if value.by_rule is None:
        return f"the shipped book has {spoken_span(value)}"
    return f"{value.by_rule.in_words} it is {spoken_span(value)}"


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


BETTER = "A guess; what a new tool of the same kind has is better, once it is measured."
"""Said of every value that nobody published and that the shop did not measure."""


def remarks(
    book: Book, value: Value, told: set[str] | None = None, spoken_span: Callable[[Value], str] = span
) -> list[str]:
    """What belongs to a value: source, note, what it replaced, and what other sources say.

    Args:
        book: has the documents.
        value: of an entry.
        told: the documents whose caveat the page has told already, and those told here with it; without it each is told.
        spoken_span: how the range of another value is said.
    """

    def source(citation: Citation) -> str:
        is_new = told is None or citation.document not in told
        if told is not None and citation.document:
            told.add(citation.document)
        return cited(book, citation, caveat=is_new)

    found = [f"Source: {source(value.citation)}"] if not value.unread else []
    if value.note:
        found.append(value.note)
    found += [
        f"{_capital(band.in_words)}: {spoken_span(band.value)} [{source(band.value.citation)}] {band.value.note}".rstrip()
        for band in value.bands
    ]
    if value.by_rule is not None:
        found.append(
            f"{_capital(value.by_rule.in_words)} ({value.place.file.name}, line {value.place.line})."
        )
    if value.layer == "shop" and value.replaces is not None:
        found.append(f"The shop's own; {_below(value.replaces, spoken_span)}.")
    elif value.layer == "shop":
        found.append("The shop's own.")
    found += [
        f"Another source: {spoken_span(other)} [{source(other.citation)}] {other.note}".rstrip()
        for other in value.also
    ]
    if value.disagreement:
        found.append(value.disagreement)
    if not value.unread and grade(value.citation, book.sources) == GUESS:
        found.append(BETTER)
    return found
