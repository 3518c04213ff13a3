"""What was measured on a new tool, as the shop's book writes it."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from datetime import date

from geometry.surfaces import SURFACES
from geometry.tooth.heel_advice import READABLE
from library.book.model import Value
from library.calc.answer import Answer
from library.calc.surfaces import RELIEF, book_key
from library.cards.bare_numbers import with_its_unit
from library.cards.learn import Lesson
from library.units.system import METRIC, Display

SHEET = "measured-tool"
"""The calculation that measures a tool."""

TOLD = frozenset(
    {"rake_angle", "land_width", "relief_form", "flutes", *(one.relief_key for one in SURFACES.values())}
)
"""What a new tool tells of the values that an entry may have."""

DIGITS = range(2, 6)
"""How many digits a share of the diameter may have behind the point."""

FORMS = ("eccentric", "flat")


def measured_values(
    found: Answer, entry: str, display: Display = METRIC, today: Callable[[], date] = date.today
) -> tuple[Lesson, ...]:
    """What an answer has for an entry of the book; nothing of a calculation that measures no tool.

    Args:
        found: the answer.
        entry: its id.
        display: the units in which it was answered, that of a diameter which was typed without one.
        today: the day that the source names.
    """
    if found.sheet.name != SHEET or found.result is None:
        return ()
    place = f"measured on {today():%Y-%m-%d}"
    note = f"A new tool of {with_its_unit('diameter', found.inputs['diameter'].text, display)}."
    return tuple(Lesson(entry, key, text, note, "", place) for key, text in _values(found) if key)


def is_guess(value: Value) -> bool:
    """Whether a value of the book is one that nobody measured or published, so that a new tool tells a better one."""
    return value.citation.label == "from memory"


def _values(found: Answer) -> Iterator[tuple[str, str]]:
    result = found.result
    assert result is not None
    relief, rake = result.outputs.get(RELIEF), result.outputs.get("rake_angle")
    if relief is not None:
        yield book_key(RELIEF, found.surface), _degrees(relief)
        yield from (
            ("relief_form", form) for form in FORMS if result.outputs.get(f"{form}_relief_angle") == relief
        )
    if rake is not None:
        yield "rake_angle", _degrees(rake)
    land, diameter = found.inputs["land_width"].value, found.inputs["diameter"].value
    if isinstance(land, float) and isinstance(diameter, float):
        yield "land_width", share(land, diameter)
    flutes = found.inputs.get("flutes")
    if flutes is not None and flutes.origin == "given" and isinstance(flutes.value, float):
        yield "flutes", f"{flutes.value:.0f}"


def share(length: float, diameter: float) -> str:
    """A length as a share of the diameter, with as many digits as it takes to read the length off it again.

    Args:
        length: in mm, zero or more.
        diameter: in mm, above zero.

    Example:
        >>> share(0.9, 12.008), share(3.0, 12.0)
        ('0.075 D', '0.25 D')
    """
    of_it = length / diameter
    digits = next((n for n in DIGITS if abs(round(of_it, n) * diameter - length) <= READABLE / 2), DIGITS[-1])
    return f"{of_it:.{digits}f} D"


def _degrees(angle: float) -> str:
    """To a tenth of a degree, which is what a reading by hand is worth."""
    return f"{math.degrees(angle):.1f} deg"
