"""The diameters of a stepped tool in a search: ``step drill 6, 10, 14 mm``."""

from __future__ import annotations

import re

from library.search.size_patterns import MEASURE, NO_SIZES
from library.search.slashed import slashes_parted

IS_STEPPED = "shoulder_relief_angle"
"""The value that an entry has where its tools have steps."""

_UNIT = r"(?: ?(?:mm|inch(?:es)?|in|thou|\"))?"
_LIST = re.compile(  # A comma between two digits is a decimal comma, so that a blank follows each of these.
    rf"(?<![^\s,]){MEASURE}{_UNIT}(?: ?, {MEASURE}{_UNIT})+(?![^\s])"
    rf"(?! *(?:{NO_SIZES})\b)"
)
_SPELLING = str.maketrans("\u201d\u2033", '""')
_OF_INCHES = re.compile(r"\d*/\d+|0?\.\d{3,}")
"""A number alone that is of inches: a fraction, or a part of an inch to a thousandth."""


def diameters_in(text: str) -> str:
    """The diameters of the steps that stand in a search one behind the other; empty where no such list does.

    Args:
        text: as typed.

    Returns:
        The list, with its unit where the form says which.

    Example:
        >>> diameters_in("step drill steel 6, 10, 14 mm"), diameters_in("step drill 6,5 mm")
        ('6, 10, 14 mm', '')
        >>> diameters_in("step drill 8/12 mm"), diameters_in("step drill 6/8/10")
        ('8, 12 mm', '6, 8, 10')
        >>> diameters_in("subland 1/4, 3/8"), diameters_in("step drill 90, 118 deg")
        ('1/4, 3/8 in', '')
    """
    found = _LIST.search(_spelled(text))
    if found is None:
        return ""
    listed = re.sub(r" ?, ?", ", ", found[0]).replace('"', " in").replace("  ", " ")
    listed = re.sub(r"(\d)(mm|in|thou)", r"\1 \2", listed)
    return f"{listed} in" if not _has_unit(listed) and _OF_INCHES.search(listed) else listed


def with_unit_behind(text: str, unit: str) -> str:
    """What is searched for, the unit written behind a list of diameters that has none.

    Args:
        text: as typed, with a list.
        unit: in which it was meant.

    Example:
        >>> with_unit_behind("step drill 6, 10, 14 steel", "mm"), with_unit_behind("step drill 6, 10 mm", "in")
        ('step drill 6, 10, 14 mm steel', 'step drill 6, 10 mm')
    """
    spelled, listed = _spelled(text), diameters_in(text)
    found = _LIST.search(spelled)
    if found is None or _has_unit(listed):
        return text
    return f"{spelled[: found.end()]} {unit}{spelled[found.end() :]}"


def _spelled(text: str) -> str:
    return slashes_parted(" ".join(text.casefold().translate(_SPELLING).split()))


def _has_unit(listed: str) -> bool:
    return re.search(r"[a-z\"]", listed) is not None
