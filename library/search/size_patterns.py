"""How sizes are written in a search: patterns of threads, lengths, classes and of the steps of a tool."""

from __future__ import annotations

import re

from library.units.tapers import BEHIND

SERIES = r"(?:un[cfs]|unef|un|bsw|bsf|nptf?|bsp[pt]?|acme)"
WHOLE = r"(?:\d{1,2}-|1?\d )"
"""What stands before a fraction of an inch; behind a blank no more than a tool may have, else it is an angle, as in ``90 1/2``."""
FRACTION = rf"(?:{WHOLE})?\d{{1,3}}/\d{{1,3}}"
MEASURE = rf"(?:{FRACTION}|\d{{1,3}}(?:\.\d{{0,5}})?|\.\d{{1,5}})"

NO_SIZES = r"deg|degrees?|flute[sd]?|fl|steps?|lips?|threads?|tpi|teeth"
"""What stands behind a number that is an angle or counts something, and no size."""

SCREWS = [
    "0-80",
    "1-64",
    "1-72",
    "2-56",
    "2-64",
    "3-48",
    "3-56",
    "4-40",
    "4-48",
    "5-40",
    "5-44",
    "6-32",
    "6-40",
    "8-32",
    "8-36",
    "10-24",
    "10-32",
    "12-24",
    "12-28",
]
"""Numbered screws with their threads per inch, which nobody says a sign before."""

LEAD = r"\d{1,2}(?:\.\d{0,3})?|\.\d{1,3}"

THREADS = (
    rf"tr ?\d{{1,3}}(?: ?x(?: ?(?:{LEAD})(?: ?\(?p ?(?:(?:{LEAD})\)?)?)?)?)?",
    rf"m ?\d{{1,3}} ?x ?(?:ph)? ?(?:{LEAD}) ?p ?(?:{LEAD})",
    r"m ?\d{1,3}(?:\.\d{1,2})?(?: ?x(?: ?(?:\d{1,2}(?:\.\d{0,3})?|\.\d{1,3}))?)?",
    r"(?:g|rc?|rp) ?(?:\d{1,2}[- ])?\d{1,2}/\d{1,2}",
    rf"(?:#|no\.? ?)\d{{1,2}} ?- ?\d{{2,3}}(?: {SERIES})?",
    rf"(?:{'|'.join(SCREWS)})(?: {SERIES})?",
    r"\d{1,2} ?ba",
    rf"(?:{FRACTION}|\.\d{{1,4}})\"? ?- ?\d{{1,2}}(?:\.\d)?(?: {SERIES})?",
    rf"\d{{1,2}}\"? ?- ?\d{{1,2}}(?:\.\d)? {SERIES}",
    rf"(?:{FRACTION}|\d)\"? ?{SERIES}",
)
LENGTH = rf"{MEASURE} ?(?:mm|inch(?:es)?|in|thou|\")"
CLASS = r"(?: ?(?P<tolerance>(?:js|[defghjknprs])\d{1,2}))?"
"""The class of a hole behind its size. Not M6 to M8, which are threads."""

ENDING = r"(?:[ -]+(?:[4-8][gh]|[123]b))?(?:[ -]+lh)?"
"""The class of a nut's thread behind its size, and its hand."""

STEPS = frozenset(["step", "stepped", "steps"])
FROM_TO = re.compile(
    rf"(?<!\S){MEASURE}(?: ?(?:mm|in|inch|\"))? ?(?:-|to) ?{MEASURE}(?: ?(?:mm|in|inch|\"))?(?!\S)"
)
"""The first and the last step of a stepped tool, which are neither words nor the size of any one step."""

DEGREES = re.compile(
    r"(?<!\S)(?P<angle>\d{1,3}(?:\.\d{1,4})?)(?: |-)?(?:deg|degrees?|\u00b0)(?:[- ]point)?(?!\S)"
)
"""An angle with its unit."""

_OF_UNIT = r"(?: ?(?:mm|in|\"))?"
BY = re.compile(
    rf"(?<!\S)(?<!m )(?<!tr )(?P<one>{MEASURE}{_OF_UNIT}) ?x ?(?P<other>{MEASURE}{_OF_UNIT})(?!\S)"
)
"""Two sizes with the sign between them, as of a counterbore and its pilot, or a diameter and a length; no thread."""

PILOT = re.compile(rf"(?<!\S)(?P<pilot>pilot (?P<other>{MEASURE}{_OF_UNIT}))(?!\S)")
"""The size of a pilot."""

OF_A_POINT = re.compile(
    r"(?<!\S)(?P<angle>118|130|135|140)(?:[- ]?(?:deg|degrees?|\u00b0))?(?:[- ]point)?(?!\S)"
)
"""The angle of a drill's point with its unit and what it is of, which says no more than the number."""

TAPER = re.compile(rf"(?<!\S)(?!{MEASURE} ?(?:/ ?|per +)(?:in|mm)){MEASURE} ?{BEHIND.pattern}(?!\S)")
"""How much a tool tapers, ``1/4 in per foot``, which is no size of it; so many to the inch are threads."""

_RELIEFS = r"helix|spiral|rake|hook|relief|clearance"
_ITS_UNIT = r"[ -]?(?:deg|degrees?|\u00b0)"
OF_ELSE = re.compile(
    rf"(?<!\S)(?P<angle>\d{{1,2}}(?:\.\d)?)(?:{_ITS_UNIT} ?(?P<of>{_RELIEFS})| (?P<word>{_RELIEFS})(?! (?:1[5-9]|[2-6]\d)))(?!\S)"
    rf"|(?<!\S)(?P<before>{_RELIEFS}) (?P<behind>\d{{1,2}}(?:\.\d)?)(?:{_ITS_UNIT})?(?!\S)(?! *(?:mm|in|x|{NO_SIZES})(?!\S))"
)
"""An angle by which no tool is called, and what it is of."""
