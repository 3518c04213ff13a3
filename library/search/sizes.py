"""Sizes in a search: ``tap m12``, ``1/2-13 stainless``, ``reamer 12``, ``reamer 12 h7``.

A size need not stand in the entry, for most entries serve every size. What is surely a size, by its form or its unit,
is taken out of the words; a number alone may be one.
"""

from __future__ import annotations

import re
from typing import NamedTuple

from geometry.fit.hole import CLASSES
from library.book.search_text import plain, words_of
from library.search.drill_numbers import CALLED, inches_of, is_alone
from library.search.size_patterns import (
    CLASS,
    ENDING,
    FROM_TO,
    LENGTH,
    MEASURE,
    NO_SIZES,
    SCREWS,
    STEPS,
    THREADS,
)
from library.search.slashed import slashes_parted

_SIZE = re.compile(
    rf"(?<!\S)(?:(?P<thread>(?:{'|'.join(THREADS)}){ENDING})|(?P<length>{LENGTH}){CLASS})(?!\S)"
)
_ALONE = re.compile(rf"(?<!\S)(?P<number>{MEASURE})-?{CLASS}(?!\S)(?! *(?:{NO_SIZES})\b)")
_FLUTES = re.compile(r"(?<!\S)(?P<count>\d{1,2})[ -]?(?:flute[sd]?|fl)(?!\S)")
"""How many flutes the tool has: ``4 flutes``, ``4-flute``."""

_SPELLING = str.maketrans(
    {"\u00d7": "x", "\u201d": '"', "\u2033": '"', "\u2013": "-", "\u2044": "/", ",": " "}
)
_BEGUN = re.compile(r" ?x$")
"""A pitch of which nothing but the sign before it is typed yet."""

_OF_A_POINT = re.compile(
    r"(?<!\S)(?P<angle>118|130|135|140)(?:[- ]?(?:deg|degrees?|\u00b0))?(?:[- ]point)?(?!\S)"
)
"""The angle of a drill's point with its unit and what it is of, which says no more than the number."""

_OF_INCHES = re.compile(r"0?\.\d{3,}")
"""Part of an inch as it is written to a thousandth or finer, which in millimetres nobody needs of a tool's size."""

LARGEST = 500
"""The largest diameter, in mm, that a number alone is taken for."""


class Size(NamedTuple):
    """A size that stood in a search.

    Attributes:
        text: as typed, with a unit where the form says which.
        is_thread: whether it is the name of a thread.
        tolerance: the class of the hole that stood behind it, such as ``H7``.
    """

    text: str
    is_thread: bool = False
    tolerance: str = ""

    @property
    def told(self) -> str:
        """As a person says it, the class of the hole behind it."""
        return f"{self.text} {self.tolerance}".rstrip()

    def written(self, unit: str) -> str:
        """As it is typed where a size is asked for.

        A number with the class of a hole behind it is in millimetres, as the classes of ISO 286 are; but for a part of
        an inch, such as .5.

        Args:
            unit: of a length that has none.

        Example:
            >>> Size("12").written("mm"), Size("1/2 in").written("mm"), Size("M12", True).written("in")
            ('12 mm', '1/2 in', 'M12')
            >>> Size("6", tolerance="H7").written("in"), Size(".5", tolerance="H7").written("in")
            ('6 mm', '.5 in')
        """
        if self.is_thread or not self.text[-1].isdigit():
            return self.text
        is_part = self.text.lstrip("0").startswith(".") or "/" in self.text
        return f"{self.text} {'mm' if self.tolerance and not is_part else unit}"


class Along(NamedTuple):
    """What of a search goes along with an entry, into its calculations and onto its card.

    Attributes:
        size: of the tool, where it stood there and the entry is not called by it.
        flutes: how many the tool has, where that stood there.
        instead: the numbers of flutes that the book has for the tool, where that is none of them.
    """

    size: Size | None = None
    flutes: int | None = None
    instead: str = ""

    @property
    def told(self) -> str:
        """What is said of it beside the search; empty where nothing goes along.

        Example:
            >>> Along(Size("12", tolerance="H7")).told, Along(None, 4, "3").told, Along(Size("M12", True), 1).told
            ('12 H7 goes along', '4 flutes go along, the book has 3', 'M12 and 1 flute go along')
            >>> Along(Size("6, 10, 14 mm"), 2).told
            '6, 10, 14 mm and 2 flutes go along'
        """
        parts = self.size.told.split(", ") if self.size is not None else []
        if self.flutes is not None:
            parts.append(f"{self.flutes} flute{'s' if self.flutes > 1 else ''}")
        several = len(parts) > 1 or (self.size is None and (self.flutes or 0) > 1)
        listed = " and ".join(one for one in (", ".join(parts[:-1]), *parts[-1:]) if one)
        instead = f", {self.instead_told}" if self.instead else ""
        return f"{listed} go{'' if several else 'es'} along{instead}" if parts else ""

    @property
    def instead_told(self) -> str:
        """That the book has another number of flutes, where there is no room for more; empty where it has not."""
        return f"the book has {self.instead}" if self.instead else ""


def flutes_in(text: str) -> int | None:
    """How many flutes the tool has, where a search says it; a tool without any is none.

    Example:
        >>> flutes_in("countersink 4 flutes"), flutes_in("4-flute countersink m12"), flutes_in("4 mm drill")
        (4, 4, None)
    """
    found = _FLUTES.search(_spelled(text))
    return int(found["count"]) or None if found is not None else None


def _spelled(text: str) -> str:
    """A search in small letters, its signs as they are understood here, with one blank between words."""
    return " ".join(slashes_parted(" ".join(text.casefold().split())).translate(_SPELLING).split())


def with_its_unit(text: str, size: Size, unit: str) -> str:
    """What is searched for, the unit written behind a size that stands there as a number alone.

    Args:
        text: as typed.
        size: as it was understood.
        unit: in which it was meant.

    Example:
        >>> with_its_unit("reamer 10h8", Size("10", tolerance="H8"), "mm"), with_its_unit("tap m12", Size("M12", True), "mm")
        ('reamer 10 mm h8', 'tap m12')
    """
    if size.written(unit) == size.text:
        return text
    alone = re.compile(rf"(?<!\S){re.escape(size.text)}-?(?![\d./])(?= *(?P<more>\S?))")
    return alone.sub(lambda found: f"{size.text} {unit}{' ' * bool(found['more'])}", text, count=1).replace(
        "  ", " "
    )


class Sought(NamedTuple):
    """A text that is searched for, taken apart.

    Attributes:
        words: to be found, each in an entry or in what it belongs to.
        size: what is surely a size, where there is one.
        numbers: numbers alone, each a word where entries have it, and else a size.
        phrase: all of it, as titles are searched.
        flutes: how many the tool has, where that is said.
        steps: the first and the last step of a stepped tool, as typed.
    """

    words: tuple[str, ...]
    size: Size | None
    numbers: tuple[str, ...]
    phrase: str
    flutes: int | None = None
    steps: str = ""


def may_widen(text: str) -> bool:
    """Whether a text may have in it what is a size and no word, and was taken for a word before it was typed to its end.

    Args:
        text: as far as it is typed.

    Example:
        >>> [may_widen(one) for one in ("hand tap", "m12", "letter f")]
        [False, True, True]
        >>> may_widen("q drill"), may_widen("a drill")
        (True, False)
    """
    return any(sign.isdigit() for sign in text) or CALLED.search(_spelled(text)) is not None


def taken_apart(text: str) -> Sought:
    """Take the sizes out of what is searched for.

    Args:
        text: words and sizes, in any order, as far as they are typed.

    Example:
        >>> taken_apart("step drill 4-20")[:3], taken_apart("#30")[:2]
        ((('step', 'drill'), None, ()), (('drill',), Size(text='.1285 in', is_thread=False, tolerance='')))
        >>> taken_apart("Tap M12 x 1.5").size
        Size(text='M12 x 1.5', is_thread=True, tolerance='')
        >>> taken_apart("reamer 12 stainless")[:3]
        (('reamer', 'stainless'), None, ('12',))
        >>> taken_apart("reamer 12 h7").size
        Size(text='12', is_thread=False, tolerance='H7')
    """
    rest = _spelled(text)
    if not may_widen(rest):
        return Sought(words_of(rest), None, (), plain(text))
    rest = _OF_A_POINT.sub(r"\g<angle>", rest)
    steps = FROM_TO.search(rest) if not STEPS.isdisjoint(rest.split()) else None
    if steps is not None:
        rest = FROM_TO.sub(" ", rest)
    counted = _FLUTES.search(rest)
    rest = _FLUTES.sub(" ", rest, count=1)
    sizes: list[Size] = []
    numbers: list[str] = []

    def take_size(found: re.Match[str]) -> str:
        tolerance = _tolerance(found)
        sizes.append(
            _thread(found[0]) if found["thread"] else Size(_spaced(found["length"]), tolerance=tolerance)
        )
        return _left(found, tolerance)

    def take_number(found: re.Match[str]) -> str:
        number = found["number"].rstrip(".")
        if not _may_be_a_size(number):
            return found[0]
        tolerance = _tolerance(found)
        if "/" in number or _OF_INCHES.fullmatch(number):
            sizes.append(Size(f"{number} in", tolerance=tolerance))
        elif tolerance:
            sizes.append(Size(number, tolerance=tolerance))
        else:
            numbers.append(number)
        return _left(found, tolerance)

    rest = _SIZE.sub(take_size, rest)
    whole = rest

    def take_called(found: re.Match[str]) -> str:
        if inches := inches_of(found, whole):
            sizes.append(Size(f"{inches} in"))
        return " "

    rest = _ALONE.sub(take_number, CALLED.sub(take_called, rest))
    if sizes and (alone := CALLED.fullmatch(whole.strip())) is not None and is_alone(alone, whole):
        rest = "drill"
    size = next((one for one in sizes if one.is_thread), sizes[0] if sizes else None)
    flutes = int(counted["count"]) if counted is not None else None
    return Sought(words_of(rest), size, tuple(numbers), plain(text), flutes, steps[0] if steps else "")


def _tolerance(found: re.Match[str]) -> str:
    """The class of a reamed hole that stands behind a size, where there is such a class."""
    written = (found["tolerance"] or "").upper()
    return written if written in CLASSES else ""


def _left(found: re.Match[str], tolerance: str) -> str:
    """What of a match is still a word: what looks like a class and is none."""
    return " " if tolerance or not found["tolerance"] else f" {found['tolerance']} "


def _thread(text: str) -> Size:
    """The name of a thread, in the spelling of the trade."""
    words = _BEGUN.sub("", text).split()
    if words[0] in SCREWS:
        words[0] = f"#{words[0]}"
    return Size(" ".join(word if word in {"x", "no", "no."} else _capital(word) for word in words), True)


def _capital(word: str) -> str:
    """A word of a thread's name with its letters large, but for the x before a pitch and the r of Tr."""
    large = word.upper().replace("X", "x")
    return large.replace("TR", "Tr") if large.startswith("TR") else large


def _spaced(text: str) -> str:
    """A length with one blank before its unit."""
    return re.sub(r"(?<=[\d.]) ?(?=[a-z\"])", " ", text, count=1).replace(' "', " in")


def _may_be_a_size(number: str) -> bool:
    """Whether a number alone may be a diameter: a proper fraction of an inch, or not above the largest."""
    if "/" in number:
        top, below = number.replace("-", " ").split()[-1].split("/")
        return int(top) < int(below) and int(below).bit_count() == 1
    return bool(number) and 0 < float(number) <= LARGEST
