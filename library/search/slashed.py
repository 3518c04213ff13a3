"""Diameters of a tool with steps that slashes, x or commas alone part in a search: ``step drill 8/12 mm``, ``6x8x10``, ``6,8,10``."""

from __future__ import annotations

import re
from itertools import pairwise

from library.search.size_patterns import NO_SIZES, STEPS

_NUMBER = r"\d{1,3}(?:\.\d{1,5})?"
_SLASHED = re.compile(
    rf"(?<![^\s,])(?P<listed>{_NUMBER}(?:/{_NUMBER})+)(?P<unit> ?mm)?(?!\S)"
    rf"(?! *(?:{NO_SIZES}|inch|in|thou|\")(?!\S))"
)
_CROSSED = re.compile(
    rf"(?<!\S)(?<!m )(?<!tr ){_NUMBER}(?: ?x ?(?!(?:60|82|90|100|110|118|120|135|140|142)(?!\S)){_NUMBER})+(?=(?: ?mm)?(?!\S))"
)
"""Diameters with the sign x between them, of a tool with steps alone; a usual angle behind it is none."""

_CLOSE_COMMAS = re.compile(rf"(?<!\S){_NUMBER}(?:,{_NUMBER}){{2,}}(?=(?: ?(?:mm|in|inch))?(?!\S))")
"""Three numbers or more with nothing but commas between them: a decimal comma stands once."""

_OF_AN_INCH = frozenset(["2", "4", "8", "16", "32", "64"])
"""What an inch is parted into on a drawing; a number over any other is no fraction of it."""


def _listed(text: str) -> str:
    """Numbers with commas and no blanks between them as a list, where each is larger than the one before."""
    numbers = [float(one) for one in text.split(",")]
    return text.replace(",", ", ") if all(one < other for one, other in pairwise(numbers)) else text


def slashes_parted(spelled: str) -> str:
    """A search with commas and blanks where slashes, x, or commas alone part the diameters of a tool; a fraction of an inch stays.

    Two numbers of which neither has a unit are a list only where a tool with steps is sought, for they may be words such as two materials.

    Args:
        spelled: in small letters, with one blank between words.

    Example:
        >>> slashes_parted("step drill 8/12 mm"), slashes_parted("step drill 6/8/10"), slashes_parted("step drill 8/12")
        ('step drill 8, 12 mm', 'step drill 6, 8, 10', 'step drill 8, 12')
        >>> slashes_parted("subland 6.6 x 11"), slashes_parted("subland 5 x 90"), slashes_parted("drill 20 x 100")
        ('subland 6.6, 11', 'subland 5 x 90', 'drill 20 x 100')
        >>> slashes_parted("step drill 6,8,10 mm"), slashes_parted("step drill 10,8,6"), slashes_parted("drill 8,5")
        ('step drill 6, 8, 10 mm', 'step drill 10,8,6', 'drill 8,5')
        >>> slashes_parted("drill 3 1/2 mm")
        'drill 3 1/2 mm'
        >>> slashes_parted("step drill 3/8"), slashes_parted("reamer 5/16 in"), slashes_parted("stainless 304/316")
        ('step drill 3/8', 'reamer 5/16 in', 'stainless 304/316')
    """
    spelled = _CLOSE_COMMAS.sub(lambda one: _listed(one[0]), spelled)
    is_stepped = not STEPS.isdisjoint(spelled.split()) or "subland" in spelled
    if is_stepped:
        spelled = _CROSSED.sub(lambda one: re.sub(" ?x ?", ", ", one[0]), spelled)
    if "/" not in spelled:
        return spelled

    def parted(found: re.Match[str]) -> str:
        numbers, unit = found["listed"].split("/"), found["unit"] or ""
        is_fraction = len(numbers) == 2 and numbers[1] in _OF_AN_INCH and "." not in numbers[0]
        is_behind_whole = is_fraction and spelled[: found.start()][-2:-1].isdigit()
        if is_behind_whole or (not unit and (is_fraction or (len(numbers) == 2 and not is_stepped))):
            return found[0]
        return ", ".join(numbers) + unit

    return _SLASHED.sub(parted, spelled)
