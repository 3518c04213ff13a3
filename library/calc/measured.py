"""What was measured on a new tool, as the shop's book writes it."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from datetime import date

from geometry.surfaces import SURFACES
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
        yield "land_width", f"{land / diameter:.2f} D"
    flutes = found.inputs.get("flutes")
    if flutes is not None and isinstance(flutes.value, float):
        yield "flutes", f"{flutes.value:.0f}"


def _degrees(angle: float) -> str:
    """To a tenth of a degree, which is what a reading by hand is worth."""
    return f"{math.degrees(angle):.1f} deg"
