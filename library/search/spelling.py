"""How a search is spelled before sizes are looked for in it: one sign for each thing, and each thing in its one order."""

from __future__ import annotations

import re

from library.search.size_patterns import FRACTION, MEASURE, SERIES
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
        >>> spelled("reamer H7 10"), spelled("8 mm dia. drill"), spelled("tap drill M6")
        ('reamer 10 h7', '8 mm drill', 'drill m6')
    """
    even = with_points(" ".join(text.casefold().split()))
    even = " ".join(slashes_parted(even).translate(_SIGNS).split())
    even = _OF_DIAMETER.sub("", _BEHIND_UNIT.sub("", even))
    even = TAP_DRILL.sub("", even)
    even = _DIAMETER_BEHIND.sub(r"\g<length>", even)
    even = _SERIES_BEFORE.sub(lambda one: f"{one['of']} {one['series']}{one['pause'] or ''}", even)
    return _CLASS_BEFORE.sub(r"\g<length> \g<hole>", even)


def with_points(text: str) -> str:
    """A text whose decimal commas are points.

    Example:
        >>> with_points("M12 x 1,5"), with_points("step drill 6, 8 mm"), with_points("6,8,10")
        ('M12 x 1.5', 'step drill 6, 8 mm', '6,8,10')
    """
    return _DECIMAL_COMMA.sub(r"\1.\2", text)
