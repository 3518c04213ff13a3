"""A card whose tool cuts another material than the entry that it was begun from: whose values it still wants."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.quantities import QUANTITIES
from geometry.sentences import Kind
from geometry.surfaces import SURFACES
from library.book.model import Book, Entry
from library.cards.job import Job
from library.cards.reading_issues import card_issue
from library.issue import Issue

ANY = "any"
"""The work material of an entry that is for every one."""

OF_THE_SEAT = "included_angle"
"""The angle that hangs on the work's drawing and on no material."""


def other_material(job: Job) -> Iterator[Issue]:
    """That values which nobody changed are for the material of the entry, and which entry the book has for that of the card.

    A material that the book does not know is judged by nobody.
    """
    card, book = job.card, job.book
    entry = book.entries.get(card.entry) if card.entry else None
    word = card.tool.work_material.strip()
    if entry is None or entry.work_material in {"", ANY} or word in {"", entry.work_material}:
        return
    meant, kept = materials_called(book, word), _kept(job)
    if not meant or entry.work_material in meant or not kept:
        return
    better = _nearest(book, entry, meant)
    has = (
        f"for that the book has '{better}'. Begin the card from it, or"
        if better
        else "for that the book has no such tool:"
    )
    yield card_issue(
        f"wanted.{kept[0]}",
        f"This is of '{entry.title}'{_told_for(book, entry)}, and the work material is "
        f"{' or '.join(book.materials[one].title for one in meant)}: {has} type what it shall be.",
        "warning",
    )


def _told_for(book: Book, entry: Entry) -> str:
    """For which material an entry is, where its title does not say so."""
    own = [book.materials[one].title.lower() for one in materials_called(book, entry.work_material)]
    return "".join(f", for {one}" for one in own[:1] if one not in entry.title.lower())


def materials_called(book: Book, word: str) -> list[str]:
    """The ids of the materials of a book that a word may mean: those called so, else those that have it in a name.

    Args:
        book: with its materials.
        word: an id, a title, a synonym, or a part of them.

    Example:
        >>> from library.book.model import Material
        >>> steels = [Material("plain-steel", "Plain steel", synonyms=("mild steel",)), Material("inox", "Stainless steel")]
        >>> book = Book({}, materials={one.id: one for one in steels})
        >>> materials_called(book, "Mild steel"), materials_called(book, "stainless"), materials_called(book, "unheard-of")
        (['plain-steel'], ['inox'], [])
    """
    sought = word.casefold()
    names = {
        key: [one.casefold() for one in (key, each.title, *each.synonyms)]
        for key, each in book.materials.items()
    }
    called = [key for key, own in names.items() if sought in own]
    return called or [key for key, own in names.items() if any(f" {sought} " in f" {one} " for one in own)]


def _kept(job: Job) -> list[str]:
    """The angles that are wanted as the book has them and hang on the material, the relief that is ground first."""
    wanted = job.card.wanted
    surface = SURFACES.get(job.choice.surface)
    first = surface.relief_key if surface is not None else ""
    kept = [
        key
        for key, one in wanted.items()
        if one.book
        and not one.changed
        and key != OF_THE_SEAT
        and key in QUANTITIES
        and QUANTITIES[key].kind is Kind.ANGLE
    ]
    return sorted(kept, key=lambda key: key != first)


def _nearest(book: Book, entry: Entry, materials: list[str]) -> str:
    """The title of the entry for a material that is called most like another; empty where there is none of its family."""
    words = {*entry.title.casefold().replace(",", "").split()}
    found = [one.title for one in book.rows if one.family == entry.family and one.work_material in materials]
    return max(found, key=lambda one: len(words & {*one.casefold().replace(",", "").split()}), default="")
