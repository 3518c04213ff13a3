"""The diameters of a tool with steps, out of its size as a person says it."""

from __future__ import annotations

import re
from collections.abc import Sequence

from geometry.sentences import Kind
from library.cards.editing import readings_of
from library.units.read import UnitError, read, with_units
from library.units.several import with_the_last_unit
from library.units.system import Display

_NUMBER = r"\d+(?:\.\d+)?"

_STEPS = re.compile(
    rf"(?P<steps>{_NUMBER}(?:\s*,\s*{_NUMBER})*(?:(?:\s*,)?\s+and\s+{_NUMBER})"
    rf"|{_NUMBER}(?:(?:\s*,\s*{_NUMBER}){{2,}}|(?:\s*/\s*{_NUMBER}){{2,}}|(?:\s*-\s*{_NUMBER}){{2,}}|(?:\s+{_NUMBER})+))"
    r"\s*(?P<unit>mm|in)?\s*"
)
"""Numbers that can only be meant one beside the other: a fraction, a range and a decimal comma have two."""


def sizes_of(text: str) -> tuple[str, ...]:
    """The diameters that a size says, from the point up as they were written.

    Args:
        text: as it stands in the line Size of a card.

    Example:
        >>> sizes_of("6, 8, 10 mm"), sizes_of("6/8/10 mm"), sizes_of("1 1/2 in")
        (('6', '8', '10 mm'), ('6 mm', '8 mm', '10 mm'), ('1 1/2 in',))
    """
    found = _STEPS.fullmatch(text.strip())
    if found is None or _is_read_already(text):
        return readings_of(text)
    unit = f" {found['unit']}" if found["unit"] else ""
    return tuple(f"{number}{unit}" for number in re.findall(_NUMBER, found["steps"]))


def each_size(text: str) -> tuple[str, ...]:
    """The same diameters, each with the unit that stands behind the last, so that each can be read by itself.

    Example:
        >>> each_size("0.25, 0.375 in"), each_size("6/8/10 mm"), each_size("6, 8")
        (('0.25 in', '0.375 in'), ('6 mm', '8 mm', '10 mm'), ('6', '8'))
    """
    sizes = sizes_of(text)
    return with_the_last_unit(Kind.LENGTH, sizes) or sizes


def with_the_marked(readings: Sequence[str], marked: Sequence[str], display: Display) -> tuple[str, ...]:
    """The diameters of a tool with steps of which some were measured: each reading in place of the step nearest to it.

    Args:
        readings: fewer than there are steps, as written.
        marked: the diameters on the tool, as ``each_size`` gives them.
        display: gives the unit of a number without one.

    Returns:
        A diameter for each step, each with its unit; nothing where none is left to fill in, where a text cannot be
        read, or where two readings are nearest to one step.

    Example:
        >>> with_the_marked(["8.9 mm"], ["6 mm", "9 mm"], Display()), with_the_marked(["6", "9"], ["6 mm", "9 mm"], Display())
        (('6 mm', '8.9 mm'), ())
    """
    given = [one.strip() for one in readings if one.strip()]
    if not given or len(given) >= len(marked):
        return ()
    try:
        steps = [read(one, Kind.LENGTH, display).number for one in marked]
        found = {text: read(text, Kind.LENGTH, display).number for text in given}
    except UnitError:
        return ()
    placed = {
        min(range(len(steps)), key=lambda at: abs(steps[at] - size)): text for text, size in found.items()
    }
    if len(placed) < len(given):
        return ()
    return tuple(with_units(placed.get(at, text), Kind.LENGTH, display) for at, text in enumerate(marked))


def _is_read_already(text: str) -> bool:
    """Whether commas with a space part all the numbers, as they do in every line of a card."""
    return all(re.fullmatch(rf"{_NUMBER}\s*(?:mm|in)?", one) for one in readings_of(text))
