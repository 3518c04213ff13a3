"""Drills that are called by a number or by a letter: ``#7 drill``, ``letter f drill``.

The diameters are those of the wire gauge and of the letters as drills have had them for a century; from memory.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

_NUMBERS = """
2280 2210 2130 2090 2055 2040 2010 1990 1960 1935 1910 1890 1850 1820 1800 1770 1730 1695 1660 1610
1590 1570 1540 1520 1495 1470 1440 1405 1360 1285 1200 1160 1130 1110 1100 1065 1040 1015 0995 0980
0960 0935 0890 0860 0820 0810 0785 0760 0730 0700 0670 0635 0595 0550 0520 0465 0430 0420 0410 0400
0390 0380 0370 0360 0350 0330 0320 0310 0292 0280 0260 0250 0240 0225 0210 0200 0180 0160 0145 0135
"""
"""From 1 to 80, in ten-thousandths of an inch."""

_LETTERS = """
234 238 242 246 250 257 261 266 272 277 281 290 295 302 316 323 332 339 348 358 368 377 386 397 404 413
"""
"""From A to Z, in thousandths of an inch."""

DIAMETERS: Mapping[str, str] = {
    **{str(number): f".{digits}" for number, digits in enumerate(_NUMBERS.split(), 1)},
    **{chr(ord("a") + place): f".{digits}" for place, digits in enumerate(_LETTERS.split())},
}
"""The diameter of each in inches."""

CALLED = re.compile(
    r"(?<!\S)(?:(?:#|no\.? ?|number |wire (?:size|gauge) )(?P<number>\d{1,2})|letter (?P<letter>[a-z])|(?P<alone>[b-z])(?= drills?\b))(?!\S)"
)
"""A number behind its sign, or a letter, alone right before the drill: of a drill, or of a screw."""

SCREWS = frozenset(["0", "1", "2", "3", "4", "5", "6", "8", "10", "12"])
"""The numbers that screws have too."""

_OTHERS = frozenset(["centre", "center", "tap", "taps", "countersink"])
"""Words for tools that count their numbers otherwise than drills do."""


def inches_of(called: re.Match[str], text: str) -> str:
    """The diameter in inches of the drill that a text names by number or letter; nothing where it names another tool.

    Args:
        called: where the number or letter stands.
        text: all of it.

    Example:
        >>> inches_of(CALLED.search("#7 drill"), "#7 drill"), inches_of(CALLED.search("no 10 tap"), "no 10 tap")
        ('.2010', '')
        >>> inches_of(CALLED.search("q drill"), "q drill"), inches_of(CALLED.search("#30"), "#30"), inches_of(CALLED.search("#8"), "#8")
        ('.332', '.1285', '')
    """
    words = text.split()
    is_a_drill = any(word.startswith("drill") for word in words) and _OTHERS.isdisjoint(words)
    named = called["number"] or called["letter"] or called["alone"]
    return DIAMETERS.get(named, "") if is_a_drill or is_alone(called, text) else ""


def is_alone(called: re.Match[str], text: str) -> bool:
    """Whether nothing but a drill's number or letter is sought, which no screw has."""
    return called[0] == text.strip() and called["number"] not in SCREWS
