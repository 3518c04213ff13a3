"""Whether a tool is meant for a size, by the range of sizes that stands in its name."""

from __future__ import annotations

import re

from library.search.size_patterns import MEASURE
from library.search.sizes import Size

_RANGE = re.compile(
    rf" (?:(?P<above>over|above|from) )?(?P<low>{MEASURE})(?: (?P<to>to) (?P<high>{MEASURE}))? (?P<unit>mm|in) "
    rf"| (?:up )?(?:to|under) (?P<most>{MEASURE}) (?P<of>mm|in) "
)
"""From which to which size a tool is for, as its name says it between blanks: over 1 in, up to 3 mm, 25 to 63 mm."""

_MM = {"mm": 1.0, "in": 25.4, "inch": 25.4, "inches": 25.4, "thou": 0.0254, '"': 25.4}
_AMOUNT = re.compile(r'(?P<number>.*?) ?(?P<unit>mm|in|inch|inches|thou|")?')

MAY_BE_INCHES = 4
"""Below this a number without a unit may be one of inches."""


def is_meant_for(named: str, size: Size) -> bool | None:
    """Whether a tool is meant for a size, by the range that stands in its name; nothing where none does.

    Args:
        named: the name of the tool, in small letters between blanks.
        size: a length, of millimetres where it has no unit and is no small number of inches; of a thread nothing is known.

    Example:
        >>> sizes = Size("12"), Size("1 1/4 in"), Size("2.5 mm")
        >>> [is_meant_for(" hand reamer over 1 in ", one) for one in sizes]
        [False, True, False]
        >>> [is_meant_for(" small drill up to 3 mm ", one) for one in sizes]
        [False, False, True]
        >>> is_meant_for(" hand reamer ", sizes[0]) is None
        True
    """
    if size.is_thread or (found := _RANGE.search(named)) is None:
        return None
    amount = _AMOUNT.fullmatch(size.text)
    assert amount is not None
    number = _number(amount["number"])
    if amount["unit"] is not None:
        return _is_in(found, number * _MM[amount["unit"]])
    is_in = _is_in(found, number)
    return None if is_in is False and number < MAY_BE_INCHES and _is_in(found, number * _MM["in"]) else is_in


def _is_in(found: re.Match[str], wanted: float) -> bool | None:
    """Whether a length in mm lies in the range of a name."""
    of_range = _MM[found["unit"] or found["of"]]
    if found["most"]:
        return wanted <= _number(found["most"]) * of_range
    low = _number(found["low"]) * of_range
    if found["to"]:
        return low < wanted <= _number(found["high"]) * of_range
    return wanted > low if found["above"] else None


def _number(text: str) -> float:
    """A number as it is typed, with a fraction or without."""
    total = 0.0
    for part in text.replace("-", " ").split():
        top, _, below = part.partition("/")
        total += float(top or 0) / (float(below or 1) or 1)
    return total
