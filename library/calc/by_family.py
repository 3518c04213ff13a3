"""Which calculations serve a family of tools: those of its kind, else those of its surfaces."""

from __future__ import annotations

from geometry.calculation import Calculation
from geometry.calculations import calculations_for
from library.book.model import Family


def sheets_for(family: Family | None) -> tuple[Calculation, ...]:
    """The calculations that serve a family, those whose main job it is first; none where the family is not known.

    Example:
        >>> sheets_for(Family("flat-drill", "Flat drills", kind="twist-drill"))[0].name
        'drill-point'
        >>> sheets_for(Family("burr", "Burrs", surfaces=("cone",)))[0].name, sheets_for(None)
        ('cone-relief', ())
    """
    return calculations_for(family.kind, family.surfaces) if family is not None else ()


def is_threaded(family: Family | None) -> bool:
    """Whether a tool is called by its own thread: its thread leads over its land; of a family that is not known it may be.

    Of any other tool the name of a thread says which screw or hole it is for, and its diameter is another one.

    Example:
        >>> [is_threaded(Family("f", "F", kind=kind)) for kind in ("tap", "counterbore", "twist-drill")], is_threaded(None)
        ([True, False, False], True)
    """
    return family is None or any(
        sheet.field("starts") and sheet.field("land_width") for sheet in sheets_for(family)
    )
