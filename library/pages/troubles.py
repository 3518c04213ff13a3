"""Symptoms as parts of a page: what is seen, what to measure, which value to change which way, and where it is from."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from geometry.quantities import QUANTITIES
from library.book.model import Book, Citation
from library.calc.citation import briefly, cited
from library.guidance.model import WAYS, Symptom
from library.guidance.told import Convert
from library.guidance.troubles import Recognised, by_trouble
from library.pages.page import Block, Said, Section

Cite = Callable[[Book, Citation], str]
"""Says where something came from, in short or in full."""


def families_said(book: Book, one: Symptom) -> str:
    """The tools that a symptom is seen on."""
    known = {name: book.families.get(name) for name in one.families}
    titles = [family.title if family is not None else name for name, family in known.items()]
    return ", ".join(titles) or "Every tool"


def sentences(
    book: Book, one: Symptom, convert: Convert | None, *, cite: Cite = briefly, with_family: bool = False
) -> str:
    """A symptom in one paragraph.

    Args:
        book: has the families and the sources.
        one: what to tell.
        convert: writes lengths in the unit that is worked in.
        cite: says where the change came from.
        with_family: tells on which tools it is seen.
    """
    row = QUANTITIES.get(one.value)
    value = f"{row.title}: {WAYS.get(one.way, one.way)}." if row is not None and one.way else ""
    parts = (
        f"{families_said(book, one)}." if with_family else "",
        f"Look at {_begun(one.measure.said(_none, convert))}" if one.measure is not None else "",
        f"Then: {one.change.said(_none, convert)}" if one.change is not None else "",
        value,
        f"[{cite(book, one.change.citation)}]" if one.change is not None else "",
    )
    return " ".join(part for part in parts if part)


def _begun(text: str) -> str:
    """A sentence as it goes on behind other words."""
    return f"{text[:1].lower()}{text[1:]}"


def _none(key: str) -> str:
    """The number of a quantity where there is no job."""
    return ""


def troubles(book: Book, found: Iterable[Symptom], convert: Convert | None) -> Iterator[Section]:
    """Every trouble with what to measure and to change, the sources in full."""
    for title, rows in by_trouble(found).items():
        told = tuple(sentences(book, one, convert, cite=cited) for one in rows)
        yield Section(title, (Said(told),), part=True)


def beside_card(book: Book, found: Iterable[Recognised], convert: Convert) -> Iterator[Block]:
    """The troubles that a card tells of, each with what to measure and to change, and by which words it was recognised."""
    for one in found:
        said = " ".join(one.words)
        head = one.title if one.is_named else f'{_capital(said)}: taken for "{one.title}"'
        yield Said((head,), "strong")
        yield Said(tuple(sentences(book, symptom, convert) for symptom in one.symptoms))


def _capital(text: str) -> str:
    return f"{text[:1].upper()}{text[1:]}"
