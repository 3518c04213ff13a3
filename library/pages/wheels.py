"""Recommended wheels as parts of a page: one beside the other, or each whole with its sources."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from library.book.model import Book
from library.calc.citation import briefly
from library.equipment.abrasives import ABRASIVES
from library.guidance.model import WHEEL_LINES, RecommendedWheel
from library.guidance.told import Convert, Told
from library.pages.page import Labelled, Named, Section, Values

MARKS = ("abrasive", "grit", "grade", "bond")
"""What is marked on a wheel, in the order in which it is marked."""


def number(key: str) -> str:
    """The number of a quantity where there is no job."""
    return ""


def side_by_side(found: Sequence[RecommendedWheel]) -> Values:
    """A line for each wheel: for what, what cuts in it, its types by ISO 525."""
    return Values(tuple(Named(one.title, _in_words(one), role="plain") for one in found))


def _in_words(wheel: RecommendedWheel) -> str:
    grains = " or ".join(ABRASIVES[word] for word in wheel.abrasives)
    types = ", ".join(shape.split("-")[1] for shape in wheel.shapes)
    return f"{grains}, type {types}" if types else grains


def in_a_line(wheel: RecommendedWheel) -> str:
    """What to look for on a wheel, in one line."""
    told = [wheel.lines[key].in_short().removesuffix(".") for key in MARKS if key in wheel.lines]
    return "; ".join(told)


def in_full(book: Book, found: Sequence[RecommendedWheel], convert: Convert | None) -> Iterator[Section]:
    """Each wheel whole, each line with its source in short."""
    for one in found:
        told = tuple((WHEEL_LINES[key], sourced(book, line, convert)) for key, line in one.lines.items())
        yield Section(
            f"{one.title} ({one.id})", (Labelled(tuple((word.upper(), text) for word, text in told)),)
        )


def sourced(book: Book, line: Told, convert: Convert | None) -> str:
    """A line with its source in short."""
    return f"{line.said(number, convert)} [{briefly(book, line.citation)}]"
