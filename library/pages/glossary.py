"""The page of words: terms of the trade, and every quantity with what it is, how it is measured and how it is typed."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from geometry.quantities import QUANTITIES, Quantity
from geometry.quantities.terms import Term, names_of, terms_with
from library.pages.page import Page, Section, Word, Words
from library.units.grammar import example

Drawings = Mapping[str, Sequence[str]]
"""Small drawings in characters, by quantity key."""


def sought(text: str) -> list[str]:
    """The words that are looked for; a key stands for its words.

    Example:
        >>> sought("Land_width arc")
        ['land', 'width', 'arc']
    """
    return text.casefold().replace("_", " ").split()


def quantities_with(words: Iterable[str]) -> tuple[Quantity, ...]:
    """The quantities that have all of some words in their name, other names, definition or measuring."""
    asked = list(words)
    return tuple(row for row in QUANTITIES.values() if all(word in _searched(row) for word in asked))


def _searched(row: Quantity) -> str:
    names = " ".join(names_of(row.key))
    text = f"{row.title} {row.key} {names} {row.definition} {row.measured}"
    return text.casefold().replace("_", " ")


def glossary_page(text: str, drawings: Drawings) -> Page:
    """The terms and quantities that have what is sought; a page without sections where there are none.

    Args:
        text: what is sought; nothing for all of them.
        drawings: of quantities; left out where there are none.
    """
    asked = sought(text)
    words = (
        *map(of_term, terms_with(asked)),
        *(of_quantity(row, drawings) for row in quantities_with(asked)),
    )
    title = f"Glossary, with {text!r} in it" if text else "Glossary"
    return Page(title, (Section("", (Words(words),)),) if words else ())


def of_term(term: Term) -> Word:
    """A word of the trade: what it is, and what else it is called."""
    also = (f"Also: {', '.join(term.also)}.",) if term.also else ()
    return Word(term.title, "", (term.definition, *also))


def of_quantity(row: Quantity, drawings: Drawings) -> Word:
    """A quantity: its key, what it is, how it is measured, how it is typed."""
    typed = f"One of: {', '.join(row.choices)}." if row.choices else f"Typed: {example(row.kind)}."
    drawn = tuple(drawings.get(row.key, ()))
    return Word(row.title, row.key, (row.definition, f"How: {row.measured}", typed), drawn)
