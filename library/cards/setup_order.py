"""Which calculations a job goes through, in the order in which the machine is set up."""

from __future__ import annotations

from collections.abc import Collection
from functools import lru_cache

from geometry.calculation import Calculation
from geometry.calculations import calculation, calculation_names
from library.book.model import Family
from library.calc.answer import Answer
from library.calc.by_family import sheets_for


def rests(sheet: Calculation, kind: str, measured: Collection[str], wanted: Collection[str] = ()) -> bool:
    """Whether a calculation rests on a job into which nobody has typed anything for it.

    Args:
        sheet: the calculation.
        kind: of the tool; empty where none is known.
        measured: the quantities that were measured.
        wanted: the quantities that the card wants.

    Example:
        >>> tilt = calculation("wheel-tilt")
        >>> rests(tilt, "reamer", ["diameter"]), rests(tilt, "reamer", ["helix_angle"])
        (True, False)
    """
    of_course = sheet.role.of_course
    if of_course is None or kind in of_course:
        return False
    field = sheet.field(sheet.role.about)
    about = {sheet.role.about} | {
        one.key
        for one in sheet.inputs
        if field is not None and field.one_of and one.measured and one.one_of == field.one_of
    }
    called_for = sheet.role.by_wanted in wanted and kind in (sheet.role.wanted_on or (kind,))
    return about.isdisjoint(measured) and not called_for


def meant(sheet: Calculation, found: Answer) -> bool:
    """Whether a calculation is meant for a tool, by the words of the input that decides it, or by how many it has.

    Args:
        sheet: the calculation.
        found: as it is answered, with its inputs.
    """
    several = found.inputs.get(sheet.role.only_several)
    if several is not None and isinstance(several.value, tuple) and len(several.value) == 1:
        return False
    if not sheet.role.only:
        return True
    key, *words = sheet.role.only
    decides = found.inputs.get(key)
    return decides is not None and decides.value in words


def calculations_of(family: Family | None) -> tuple[Calculation, ...]:
    """The calculations that a job on this family of tools goes through, in the order of the set-up.

    Example:
        >>> names = [sheet.name for sheet in calculations_of(Family("hob", "Hobs", surfaces=("end",)))]
        >>> names[0], names.index("index-moves") < names.index("relief-drop")
        ('wheel-speed', True)
    """
    return _in_order(sheets_for(family))


@lru_cache(maxsize=64)
def _in_order(own: tuple[Calculation, ...]) -> tuple[Calculation, ...]:
    of_every_job = (sheet for sheet in map(calculation, calculation_names()) if sheet.role.every_job)
    served = {sheet.name: sheet for sheet in (*of_every_job, *own)}
    placed = [(sheet.role.place, sheet) for sheet in served.values() if sheet.role.place is not None]
    return tuple(sheet for _, sheet in sorted(placed, key=lambda one: one[0]))


def brought_in_by_measuring(kind: str) -> tuple[str, ...]:
    """What the calculations are about that not every kind of tool goes through, but this one does.

    Example:
        >>> brought_in_by_measuring("reamer")
        ('corner_wear', 'margin_width', 'back_diameter')
    """
    sheets = [
        sheet for sheet in map(calculation, calculation_names()) if kind in (sheet.role.of_course or ())
    ]
    return tuple(sheet.role.about for sheet in sorted(sheets, key=lambda one: one.role.place or 0))
