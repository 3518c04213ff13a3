"""Reamers that cut a taper, told by their taper or name: the hole has no class, and they grow toward the shank."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache

from geometry.quantities.limits import TAPER
from geometry.quantities.reamer import LARGER
from geometry.setting.taper import STEEP, taper_of_angle
from library.book.model import Citation, Entry, Family, Measure, Value
from library.book.search_text import plain
from library.calc.inputs import Input

HOLE, BY_TAPER = "hole_tolerance", ("taper_ratio", "taper_angle")
"""What is asked of a hole, and what an entry says of a tool that cuts a taper."""

DIRECTION, WANTED = "taper_direction", "wanted_taper"
"""Which way a tool tapers toward its back, and by how much."""

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
    """An entry with what follows where the tool cuts a taper: the hole is one, and the tool is larger toward its back.

    Args:
        entry: of the tool; what it says itself stays, so that a class of its hole makes it a parallel tool.
        family: of the tool; nothing where it is not known.
        called: the entry by whose names the tool is called; the same one where nothing is given.

    Example:
        >>> told = with_taper_told(Entry("a", "reamer", "Taper pin reamer"), None).values
        >>> told["hole_tolerance"].usual.word, told["taper_direction"].usual.word
        ('taper', 'larger')
        >>> with_taper_told(Entry("a", "reamer", "Machine reamer, Morse taper shank"), None).values
        {}
    """
    hole = entry.values.get(HOLE)
    if hole is not None:
        is_taper = hole.usual is not None and hole.usual.word == TAPER
    else:
        named = entry if called is None else replace(called, values=entry.values)
        is_taper = cuts_a_taper(named, family)
    if not is_taper:
        return entry
    told = {key: _told(key, word) for key, word in ((HOLE, TAPER), (DIRECTION, LARGER))}
    return replace(entry, values={**told, **_of_angle(entry), **entry.values})


def grows(inputs: Mapping[str, Input]) -> bool:
    """Whether a calculation counts with a tool that is larger toward its back, as one that cuts a taper is.

    Args:
        inputs: what it counts with.
    """
    way = inputs.get(DIRECTION)
    return way is not None and way.value == LARGER


def _told(key: str, word: str) -> Value:
    return Value(key, usual=Measure(word, word=word), citation=Citation("common practice"))


def _of_angle(entry: Entry) -> dict[str, Value]:
    """The taper that an entry wants by its whole angle alone; the one that it has as a taper is taken as it is."""
    whole = entry.values.get("taper_angle")
    if whole is None or whole.usual is None or "taper_ratio" in entry.values:
        return {}
    taper = taper_of_angle(whole.usual.number)
    return {WANTED: replace(whole, key=WANTED, low=None, usual=Measure(f"{taper:.5g}", taper), high=None)}


def cuts_a_taper(entry: Entry, family: Family | None) -> bool:
    """Whether a reamer cuts a taper: by the taper that its entry has, or as it or its family is called."""
    if any(_is_steep(entry.values[key]) for key in BY_TAPER if key in entry.values):
        return True
    of_family = (family.title, family.id, *family.synonyms) if family is not None else ()
    return _is_called_so((entry.title, entry.id, *entry.synonyms, *of_family))


@lru_cache(maxsize=256)
def _is_called_so(names: tuple[str, ...]) -> bool:
    """Whether one of the names is that of a reamer that cuts a taper; a card asks it for every calculation at every key."""
    told = [f" {plain(name)} " for name in names]
    return any(f" {word} " in name for name in told for word in CALLED)


def _is_steep(value: Value) -> bool:
    """Whether a taper is more than what a tool has toward its back."""
    found = value.first()
    # So slight an angle, in radians, and its taper are one number to the fifth digit.
    return found is not None and found.number >= STEEP
