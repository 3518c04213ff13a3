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
    BY,
    CLASS,
    DEGREES,
    ENDING,
    FROM_TO,
    LENGTH,
    MEASURE,
    NO_SIZES,
    OF_A_POINT,
    OF_ELSE,
    PILOT,
    SCREWS,
    STEPS,
    TAPER,
    THREADS,
)
from library.search.spelling import TAP_DRILL, spelled, with_points

_SIZE = re.compile(
    rf"(?<!\S)(?:(?P<thread>(?:{'|'.join(THREADS)}){ENDING})|(?P<length>{LENGTH}){CLASS})(?!\S)"
)
_ALONE = re.compile(rf"(?<!\S)(?P<number>{MEASURE})-?{CLASS}(?!\S)(?! *(?:{NO_SIZES})\b)")
_FLUTES = re.compile(r"(?<!\S)(?P<count>\d{1,2})[ -]?(?:flute[sd]?|fl)(?!\S)")
"""How many flutes the tool has: ``4 flutes``, ``4-flute``."""

_BEGUN = re.compile(r" ?x$")
"""A pitch of which nothing but the sign before it is typed yet."""

_OF_INCHES = re.compile(r"0?\.\d{3,}")
"""Part of an inch as it is written to a thousandth or finer, which in millimetres nobody needs of a tool's size."""

LARGEST = 500
"""The largest diameter, in mm, that a number alone is taken for."""


LEAST = 0.1
"""The smallest number alone that is taken for a diameter, in mm or in inches; below it is how much too large a hole is."""

MORSE_TAPERS = frozenset("01234567")
"""Numbers beside the word Morse that are those of a taper."""


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


def flutes_in(text: str) -> int | None:
    """How many flutes the tool has, where a search says it; a tool without any is none.

    Example:
        >>> flutes_in("countersink 4 flutes"), flutes_in("4-flute countersink m12"), flutes_in("4 mm drill")
        (4, 4, None)
    """
    found = _FLUTES.search(spelled(text))
    return int(found["count"]) or None if found is not None else None


def with_its_unit(text: str, size: Size, unit: str) -> str:
    """What is searched for, the unit written behind a size that stands there as a number alone.

    Args:
        text: as typed.
        size: as it was understood.
        unit: in which it was meant.

    Example:
        >>> with_its_unit("reamer 10h8", Size("10", tolerance="H8"), "mm"), with_its_unit("tap m12", Size("M12", True), "mm")
        ('reamer 10 mm h8', 'tap m12')
        >>> with_its_unit("drill 10,5 brass", Size("10.5"), "mm")
        'drill 10.5 mm brass'
    """
    if size.written(unit) == size.text:
        return text
    alone = re.compile(rf"(?<![^\s\u00f8\u2300]){re.escape(size.text)}-?(?![\d./])(?= *(?P<more>\S?))")
    behind = with_points(text)
    return alone.sub(lambda found: f"{size.text} {unit}{' ' * bool(found['more'])}", behind, count=1).replace(
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
        degrees: numbers with the unit of an angle behind them.
        others: further sizes.
        numbered: what counts its tools otherwise than by a diameter, such as ``#30`` of a pilot, as typed.
    """

    words: tuple[str, ...]
    size: Size | None
    numbers: tuple[str, ...]
    phrase: str
    flutes: int | None = None
    steps: str = ""
    degrees: tuple[str, ...] = ()
    others: tuple[Size, ...] = ()
    numbered: tuple[str, ...] = ()


def may_widen(text: str) -> bool:
    """Whether a text may have in it what is a size and no word, and was taken for a word before it was typed to its end.

    Args:
        text: as far as it is typed.

    Example:
        >>> [may_widen(one) for one in ("hand tap", "m12", "letter f")]
        [False, True, True]
        >>> may_widen("q drill"), may_widen("a drill"), may_widen("tap drill")
        (True, False, True)
    """
    if any(sign.isdigit() for sign in text) or TAP_DRILL.search(text.casefold()) is not None:
        return True
    return CALLED.search(spelled(text)) is not None


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
        >>> taken_apart("counterbore pilot 9 15")[2:3], taken_apart("counterbore 15 x 9").numbered
        ((('15',),), ('9',))
    """
    rest = spelled(text)
    if not may_widen(rest):
        return Sought(words_of(rest), None, (), plain(text))
    rest, beside = _without_tapers(OF_A_POINT.sub(r"\g<angle>", rest))
    steps = FROM_TO.search(rest) if not STEPS.isdisjoint(rest.split()) else None
    if steps is not None:
        rest = FROM_TO.sub(" ", rest)
    counted = _FLUTES.search(rest)
    rest = _FLUTES.sub(" ", rest, count=1)
    beside += [one["pilot"] for one in PILOT.finditer(rest)]
    rest = PILOT.sub("pilot", rest)
    beside += [one["other"] for one in BY.finditer(rest)]
    rest = BY.sub(r"\g<one>", rest)
    beside += [f"{one['angle'] or one['behind']} deg" for one in OF_ELSE.finditer(rest)]
    rest = OF_ELSE.sub(lambda one: one["of"] or one["word"] or one["before"], rest)
    degrees = tuple(one["angle"] for one in DEGREES.finditer(rest))
    rest = DEGREES.sub(" ", rest)
    sizes: list[Size] = []
    numbers: list[str] = []
    numbered = beside
    has_morse = "morse" in rest.split()

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
        elif float(number) < LEAST or (has_morse and number in MORSE_TAPERS):
            numbered.append(number)
        else:
            numbers.append(number)
        return _left(found, tolerance)

    rest = _SIZE.sub(take_size, rest)
    whole = rest

    def take_called(found: re.Match[str]) -> str:
        if inches := inches_of(found, whole):
            sizes.append(Size(f"{inches} in"))
        else:
            numbered.append(found[0])
        return " "

    rest = _ALONE.sub(take_number, CALLED.sub(take_called, rest))
    if sizes and (alone := CALLED.fullmatch(whole.strip())) is not None and is_alone(alone, whole):
        rest = "drill"
    size = next((one for one in sizes if one.is_thread), sizes[0] if sizes else None)
    flutes = int(counted["count"]) if counted is not None else None
    others = tuple(one for one in sizes if one is not size)
    return Sought(
        words_of(rest), size, tuple(numbers), plain(text), flutes, steps[0] if steps else "",
        degrees, others, tuple(numbered),
    )  # fmt: skip


def _without_tapers(text: str) -> tuple[str, list[str]]:
    """A search without how much the tool tapers, and that by itself."""
    return TAPER.sub(" ", text), [one[0] for one in TAPER.finditer(text)]


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
