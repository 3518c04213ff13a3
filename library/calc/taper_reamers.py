"""Reamers whose hole is a taper, and so has no class: told by their taper, or by how they are called."""

from __future__ import annotations

from dataclasses import replace

from geometry.quantities.limits import TAPER
from library.book.model import Citation, Entry, Family, Measure, Value
from library.book.search_text import plain

HOLE, BY_TAPER = "hole_tolerance", ("taper_ratio", "taper_angle")
"""What is asked of a hole, and what an entry says of a tool that cuts a taper."""

LEAST_TAPER = 0.005
"""The taper from which on a reamer cuts a taper: 1 in 200, where a back taper takes 1 in 1000. Common practice, no source."""

CALLED = (
    "taper reamer",
    "taper reamers",
    "tapered reamer",
    "tapered reamers",
    "taper pin",
    "taper pins",
    "taper finishing reamer",
    "taper roughing reamer",
    "morse reamer",
    "morse taper reamer",
    "socket reamer",
    "socket reamers",
)
"""How a reamer is called that cuts a taper, as words of its title, its id, or what it or its family is called too; a taper shank
makes none. Common practice, no source."""


def with_taper_told(entry: Entry, family: Family | None, called: Entry | None = None) -> Entry:
    """An entry of which nothing is said of its hole, with that this is a taper where the tool cuts one.

    Args:
        entry: of the tool; what it says of the hole itself stays.
        family: of the tool; nothing where it is not known.
        called: the entry by whose names the tool is called; the same one where nothing is given.

    Example:
        >>> with_taper_told(Entry("a", "reamer", "Taper pin reamer"), None).values["hole_tolerance"].usual.word
        'taper'
        >>> with_taper_told(Entry("a", "reamer", "Machine reamer, Morse taper shank"), None).values
        {}
    """
    if HOLE in entry.values or not cuts_a_taper(replace(called or entry, values=entry.values), family):
        return entry
    told = Value(HOLE, usual=Measure(TAPER, word=TAPER), citation=Citation("common practice"))
    return replace(entry, values={**entry.values, HOLE: told})


def cuts_a_taper(entry: Entry, family: Family | None) -> bool:
    """Whether a reamer cuts a taper: by the taper that its entry has, or as it or its family is called."""
    if any(_is_steep(entry.values[key]) for key in BY_TAPER if key in entry.values):
        return True
    names = [entry.title, entry.id, *entry.synonyms]
    if family is not None:
        names += [family.title, family.id, *family.synonyms]
    return any(f" {word} " in f" {plain(name)} " for name in names for word in CALLED)


def _is_steep(value: Value) -> bool:
    """Whether a taper is more than what a tool has toward its back."""
    found = value.first()
    # So slight an angle, in radians, and its taper are one number to the fifth digit.
    return found is not None and found.number >= LEAST_TAPER
