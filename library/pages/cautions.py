"""The cautions of an entry, an answer or a job, for its page."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace
from itertools import chain

from library.book.grades import LAW, grade
from library.book.model import Book, Caution
from library.calc.cautions import LAST_WORD
from library.calc.citation import cited
from library.pages.page import Block, Cautions, CautionWords, Page, Said, Section, Warned

HEADING = "Before you grind"

DEFERS = (
    "The wheel maker's rating, the machine's manual, the rules of the place and a trained person come before "
    "anything on this page."
)
"""Said where the book has no caution of that name, for no sheet is without it."""


ALL_OF_THEM = "all: F4 on the card"
"""Said at the head of a sheet of those that find no room in two lines."""

WHOSE_LAW = (
    "The laws named here are those of the United States and of its states, of the year that stands with each; anywhere "
    "else they are a good habit. Your own stand with the labour inspectorate or the safety authority of your country: "
    "they come before these, and limits change."
)
"""Said once below all cautions, where one of them rests on a law."""


def _law(found: Iterable[Caution], book: Book | None) -> tuple[Said, ...]:
    """Whose laws they are, where one of the cautions rests on one."""
    known = book is not None and any(grade(one.citation, book.sources) == LAW for one in found)
    return (Said((WHOSE_LAW,), "quiet"),) if known else ()


def in_full(found: Iterable[Caution], book: Book | None) -> Section:
    """Each caution whole, with its source where there is a book to name it, and whose laws they are."""
    found = tuple(found)
    told = tuple(Warned(one.title, one.text, cited(book, one.citation) if book else "") for one in found)
    return Section(HEADING, (Cautions(told), *_law(found, book)))


def at_arms_length(found: Iterable[Caution], more: str = "") -> CautionWords:
    """What each caution asks for in a few words.

    Args:
        found: the cautions, the most dangerous first.
        more: where they stand in full; then they take two lines, and else as many as they need.
    """
    return CautionWords(tuple(one.in_words for one in found), more)


def without_words(page: Page) -> Page:
    """A page without the cautions in a few words, where those stand at the foot of a screen."""
    bare = _in_place_of_words(page, lambda words: ())
    return replace(bare, sections=tuple(one for one in bare.sections if one.blocks or one.heading))


def with_all_cautions(page: Page) -> Page:
    """A page with each of its cautions in words, on as many lines as they need."""
    return _in_place_of_words(page, lambda words: (CautionWords(words.words),))


def _in_place_of_words(page: Page, instead: Callable[[CautionWords], tuple[Block, ...]]) -> Page:
    """A page with something else in place of its cautions in a few words."""

    def changed(one: Section) -> Section:
        found = (instead(block) if isinstance(block, CautionWords) else (block,) for block in one.blocks)
        return replace(one, blocks=tuple(chain.from_iterable(found)))

    return replace(page, sections=tuple(map(changed, page.sections)))


def cautions_page(found: Iterable[Caution], book: Book, about: str) -> Page:
    """The cautions alone, each under its title.

    Args:
        found: the cautions.
        book: names their sources.
        about: what is ground.
    """
    found = tuple(found)
    sections = tuple(
        Section(one.title, (Said((one.text,)), Said((f"Source: {cited(book, one.citation)}",), "quiet")))
        for one in found
    )
    law = _law(found, book)
    return Page(f"{HEADING}: {about}", (*sections, *([Section("", law)] if law else [])))


def on_paper(found: Iterable[Caution]) -> tuple[CautionWords, Said]:
    """Each caution in a few words for the head of a sheet, and in full for its end the one that comes before all."""
    ordered = list(found)
    last = next((one.text for one in ordered if one.id == LAST_WORD), DEFERS)
    words = tuple(one.in_words for one in ordered if one.id != LAST_WORD)
    return CautionWords(words, ALL_OF_THEM, where_cut=True), Said((" ".join(last.split()),), "strong")
