"""Which calculations a job goes through, in the order in which the machine is set up."""

from __future__ import annotations

from collections.abc import Collection

from geometry.calculation import Calculation
from geometry.calculations import calculation, calculation_names, calculations_for


def rests(sheet: Calculation, family: str, measured: Collection[str]) -> bool:
    """Whether a calculation rests on a job into which nobody has typed anything for it.

    Args:
        sheet: the calculation.
        family: of the tool.
        measured: the quantities that were measured.

    Example:
        >>> tilt = calculation("wheel-tilt")
        >>> rests(tilt, "reamer", ["diameter"]), rests(tilt, "reamer", ["helix_angle"])
        (True, False)
    """
    of_course = sheet.role.of_course
    return of_course is not None and family not in of_course and sheet.role.about not in measured


def calculations_of(family: str) -> tuple[Calculation, ...]:
    """The calculations that a job on this family of tools goes through, in the order of the set-up.

    Example:
        >>> [sheet.name for sheet in calculations_of("tap")][:2]
        ['wheel-speed', 'index-moves']
    """
    of_every_job = (sheet for sheet in map(calculation, calculation_names()) if sheet.role.every_job)
    served = {sheet.name: sheet for sheet in (*of_every_job, *calculations_for(family))}
    placed = [(sheet.role.place, sheet) for sheet in served.values() if sheet.role.place is not None]
    return tuple(sheet for _, sheet in sorted(placed, key=lambda one: one[0]))


def brought_in_by_measuring(family: str) -> tuple[str, ...]:
    """What the calculations are about that not every family goes through, but this one does.

    Example:
        >>> brought_in_by_measuring("reamer")
        ('margin_width', 'back_diameter')
    """
    return tuple(
        sheet.role.about for sheet in calculations_of(family) if family in (sheet.role.of_course or ())
    )
