"""How a search is spelled before sizes are looked for in it: one sign for each thing, and each thing in its one order."""

from __future__ import annotations

import re

from library.search.size_patterns import FRACTION, MEASURE, NO_SIZES, SCREWS, SERIES
from library.search.slashed import slashes_parted

_SIGNS = str.maketrans({"\u00d7": "x", "\u201d": '"', "\u2033": '"', "\u2013": "-", "\u2044": "/", ",": " "})

_DECIMAL_COMMA = re.compile(r"(?<![\d,./-])(\d{1,3}),(\d{1,5})(?![\d,])")
"""One comma between digits; several part the diameters of a tool with steps."""

_BEHIND_UNIT = re.compile(r"(?<=[\d ](?:mm|in))\.(?!\S)")
"""The dot of a unit that is written short, or of the sentence that ends with it."""

_OF_DIAMETER = re.compile(r"(?<!\S)(?:\u00f8|\u2300|dia(?:m|meter)?\b\.?) ?(?=\.?\d)")
_DIAMETER_BEHIND = re.compile(
    rf"(?<!\S)(?P<length>{MEASURE} ?(?:mm|in|\")?) (?:dia(?:m|meter)?\.?|\u00f8|\u2300)(?!\S)"
)
"""The word or the sign for a diameter beside its number, which says no more than the number."""

TAP_DRILL = re.compile(r"(?<!\S)tap(?:ping)?(?:[ -]size)?[ -](?=drills?(?!\S))")
"""What a drill is called by that makes the hole for a thread; it is no tap."""

_TAP = re.compile(r"(?<!\S)taps?(?!\S)")
_TRAPEZOIDAL = re.compile(r"(?<!\S)trap(?:ez(?:oidal)?)?(?!\S)")
_PITCH_BEHIND = re.compile(
    r"(?<!\S)(?P<thread>m ?\d{1,3}(?:\.\d{1,2})?) ?[-*] ?(?=\d(?:\.\d{1,3})?(?![^\s-]))"
)
"""A metric thread with another sign than x before its pitch: ``M10-1.5``."""

_BARE_METRIC = re.compile(
    rf"(?<!\S)(?<!m )(?<!tr )(?P<of>\d{{1,3}}) ?x ?(?P<pitch>\d(?:\.\d{{1,3}})?|\.\d{{1,3}}|1\d)(?!\S)(?! *(?:mm|in|{NO_SIZES})(?!\S))"
)
"""A metric thread without its letter, beside the word for a tap: ``tap 10x1.5``."""

_PARTED_INCH = re.compile(
    rf"(?<!\S)(?P<of>{FRACTION}) (?:x )?(?P<tpi>7|8|9|1[0-4]|16|18|20|24|28|32|36|40)(?!\S)(?! *(?:mm|in|{NO_SIZES})(?!\S))"
)
_PARTED_SCREW = re.compile(
    rf"(?<!\S)(?P<of>{'|'.join(one.replace('-', ' ') for one in SCREWS)})(?!\S)(?! *(?:mm|in|{NO_SIZES})(?!\S))"
)
"""Inch threads with a blank between size and threads per inch, beside the word for a tap: ``1/4 20 tap``."""

_STEPS_COUNTED = re.compile(r"(?<!\S)\d{1,2}[ -]?(?=steps?(?!\S))")
_TAPER_OF = re.compile(r"(?<!\S)1 in (?=\d{2,3}(?!\S)(?! *(?:mm|in)(?!\S)))")
"""How much a taper is, ``1 in 50``: one inch is not meant."""

_FLUTES_SHORT = re.compile(r"(?<!\S)(?:(?P<before>\d{1,2})f|z ?(?P<behind>\d{1,2}))(?!\S)")
"""A number of flutes as it stands on a drawing: ``4f``, ``Z4``."""

_COUNTS = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
_FLUTES_IN_WORDS = re.compile(rf"(?<!\S)(?P<count>{'|'.join(_COUNTS)})(?=[ -](?:flute[sd]?|fl)(?!\S))")
"""A number of flutes in words: ``four flutes``."""

_SERIES_BEFORE = re.compile(
    rf"(?<!\S)(?P<series>(?!un |acme tap){SERIES})(?P<pause> taps?)? (?P<of>{FRACTION}(?:-\d{{1,2}})?|\d{{1,2}}-\d{{1,2}})(?!\S)"
)
_CLASS_BEFORE = re.compile(
    rf"(?<!\S)(?<!\d )(?<!mm )(?<!in )(?P<hole>(?:js|[defghjknprs])\d{{1,2}}) (?P<length>{MEASURE}(?: ?(?:mm|in))?)(?!\S)"
)


def spelled(text: str) -> str:
    """A search in small letters, its signs as they are understood here, with one blank between words.

    A comma between two digits is a decimal comma; the series of a thread, or the class of a hole, that stands before
    its size is put behind it.

    Example:
        >>> spelled("Drill 10,5"), spelled("reamer 12 in."), spelled("\u00f812mm drill"), spelled("tap BSP 3/8")
        ('drill 10.5', 'reamer 12 in', '12mm drill', 'tap 3/8 bsp')
        >>> spelled("tap M10-1.5"), spelled("tap 10x1.5"), spelled("1/4 20 tap"), spelled("10 24 tap")
        ('tap m10x1.5', 'tap m10 x 1.5', '1/4-20 tap', '10-24 tap')
        >>> spelled("reamer 1 in 50"), spelled("end mill Z4"), spelled("3 steps"), spelled("drill 20 x 1.5")
        ('reamer 1:50', 'end mill 4 flutes', 'steps', 'drill 20 x 1.5')
        >>> spelled("reamer H7 10"), spelled("8 mm dia. drill"), spelled("tap drill M6"), spelled("end mill four flutes")
        ('reamer 10 h7', '8 mm drill', 'drill m6', 'end mill 4 flutes')
    """
    even = with_points(" ".join(text.casefold().split()))
    even = " ".join(slashes_parted(even).translate(_SIGNS).split())
    even = _OF_DIAMETER.sub("", _BEHIND_UNIT.sub("", even))
    even = TAP_DRILL.sub("", even)
    even = _DIAMETER_BEHIND.sub(r"\g<length>", even)
    even = _STEPS_COUNTED.sub("", _TAPER_OF.sub("1:", even))
    even = _FLUTES_SHORT.sub(lambda one: f"{one['before'] or one['behind']} flutes", even)
    even = _FLUTES_IN_WORDS.sub(lambda one: str(_COUNTS.index(one["count"]) + 1), even)
    even = _PITCH_BEHIND.sub(r"\g<thread>x", even)
    even = _threads_joined(even) if _TAP.search(even) else even
    even = _SERIES_BEFORE.sub(lambda one: f"{one['of']} {one['series']}{one['pause'] or ''}", even)
    return _CLASS_BEFORE.sub(r"\g<length> \g<hole>", even)


def _threads_joined(even: str) -> str:
    """A search for a tap, its threads written as they are called."""
    letter = "tr " if _TRAPEZOIDAL.search(even) else "m"
    even = _BARE_METRIC.sub(rf"{letter}\g<of> x \g<pitch>", even)
    even = _PARTED_INCH.sub(r"\g<of>-\g<tpi>", even)
    return _PARTED_SCREW.sub(lambda one: one["of"].replace(" ", "-"), even)


def with_points(text: str) -> str:
    """A text whose decimal commas are points.

    Example:
        >>> with_points("M12 x 1,5"), with_points("step drill 6, 8 mm"), with_points("6,8,10")
        ('M12 x 1.5', 'step drill 6, 8 mm', '6,8,10')
    """
    return _DECIMAL_COMMA.sub(r"\1.\2", text)
