"""The recommended values of an entry packed into one short text, so that a search by number parses no entry."""

from __future__ import annotations

from collections.abc import Iterable

from library.book.model import Value

ValueRange = tuple[float, float] | str
"""From the least to the greatest number of a value, in mm, radians or as a count; for a choice, its word."""


def ranges_text(values: Iterable[Value]) -> str:
    """The values in one text; other sources' values for the same thing, and its bands, stand beside the first.

    A share of the diameter is left out: it is no length before there is a tool.

    Example:
        >>> from library.book.model import Measure
        >>> flutes = Value("flutes", low=Measure("3", 3), high=Measure("4", 4), also=(Value("flutes", usual=Measure("6", 6)),))
        >>> ranges_text([flutes, Value("relief_form", usual=Measure("flat", word="flat"))])
        'flutes=3:4|6:6 relief_form=flat'
    """
    told = []
    for value in values:
        of_bands = (band.value for band in value.bands)
        parts = [part for one in (value, *value.also, *of_bands) if (part := _told(one))]
        if parts:
            told.append(f"{value.key}={'|'.join(parts)}")
    return " ".join(told)


def _told(value: Value) -> str:
    measures = [
        one for one in (value.low, value.usual, value.high) if one is not None and not one.per_diameter
    ]
    word = next((one.word for one in measures if one.word), "")
    if word or not measures:
        return word
    numbers = [one.number for one in measures]
    return f"{min(numbers):.10g}:{max(numbers):.10g}"


def ranges_of(text: str) -> tuple[ValueRange, ...]:
    """What stands behind the equals sign of one value; a part that means nothing is passed over.

    Example:
        >>> ranges_of("3:4|6:6"), ranges_of("flat"), ranges_of("3:x|7:8")
        (((3.0, 4.0), (6.0, 6.0)), ('flat',), ((7.0, 8.0),))
    """
    found: list[ValueRange] = []
    for part in text.split("|"):
        low, colon, high = part.partition(":")
        if not colon:
            found.append(part)
            continue
        try:
            found.append((float(low), float(high)))
        except ValueError:
            continue
    return tuple(found)
