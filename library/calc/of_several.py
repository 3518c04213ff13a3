"""What of a list counts in a calculation that asks for one value: of the steps of a tool the first at its point, else the largest.

Derived from how such tools are made: a step drill and a subland drill drill with their first step, a centre drill with
its pilot, and lip, chisel edge and web have that diameter. Everything else of such a tool goes by its largest one.
"""

from __future__ import annotations

from geometry.calculation import Calculation
from geometry.quantities import quantity
from geometry.sentences import Kind
from library.units.read import UnitError, in_unit, read_many
from library.units.several import parted
from library.units.system import Display

AT_THE_POINT = "lip"
"""The surface that stands at the point of a tool."""

DIAMETER = "diameter"


def is_at_point(sheet: Calculation, surface: str) -> bool:
    """Whether a calculation is about the point of a tool.

    Args:
        sheet: the calculation.
        surface: the word of the surface that is worked on; empty where there is none.
    """
    return surface == AT_THE_POINT or sheet.belongs_on == (AT_THE_POINT,)


def is_list(text: str) -> bool:
    """Whether several values were typed.

    Example:
        >>> is_list("6, 8, 10 mm"), is_list("6 mm,"), is_list("6,5 mm")
        (True, False, False)
    """
    return len([part for part in parted(text) if part]) > 1


def one_of(key: str, text: str, display: Display, *, at_point: bool) -> str:
    """The value of a list that counts where one is asked for.

    Args:
        key: the quantity.
        text: the list, as typed.
        display: the units of numbers typed without one.
        at_point: whether it is asked for at the point of the tool.

    Returns:
        The value with its unit where that was typed; empty where no value of the list is the one that is meant.

    Example:
        >>> from library.units.system import METRIC
        >>> [one_of("diameter", "6, 8, 10 mm", METRIC, at_point=at) for at in (True, False)]
        ['6 mm', '10 mm']
        >>> [one_of("included_angle", text, METRIC, at_point=False) for text in ("90, 90 deg", "90, 118 deg")]
        ['90 deg', '']
    """
    row = quantity(key)
    if row.kind is Kind.CHOICE or not is_list(text):
        return ""
    try:
        found = read_many(text, row.kind, display, whole=row.whole)
    except UnitError:
        return ""
    if len({one.number for one in found}) > 1 and key != DIAMETER:
        return ""
    meant = (min if at_point else max)(found, key=lambda one: one.number)
    return in_unit(meant.text.strip(), meant.unit, row.kind)
