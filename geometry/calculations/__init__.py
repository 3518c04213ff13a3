"""One file for each calculation; a new file here is found by the calculator, the command line and the card.

The file ``relief_drop.py`` holds ``CALCULATION``, whose name is ``relief-drop``.
"""

from __future__ import annotations

import pkgutil
from collections.abc import Sequence
from functools import cache
from importlib import import_module

from geometry.calculation import Calculation
from geometry.kinds import EVERY_KIND


@cache
def calculation_names() -> tuple[str, ...]:
    """The names of all calculations, in alphabetical order.

    Example:
        >>> "relief-drop" in calculation_names()
        True
    """
    return tuple(sorted(module.name.replace("_", "-") for module in pkgutil.iter_modules(__path__)))


@cache
def calculation(name: str) -> Calculation:
    """Return the calculation called ``name``; raises ``KeyError`` when there is none."""
    if name not in calculation_names():
        raise KeyError(name)
    found: Calculation = import_module(f"{__name__}.{name.replace('-', '_')}").CALCULATION
    return found


@cache
def calculation_doing(what: str) -> Calculation:
    """The calculation that answers one of the questions of every job: HEEL, FOUND or LASTING of ``geometry.role``.

    Example:
        >>> calculation_doing("lasting").name
        'size-loss'
    """
    return next(sheet for sheet in map(calculation, calculation_names()) if sheet.role.does == what)


@cache
def calculations_for(kind: str, surfaces: tuple[str, ...] = ()) -> tuple[Calculation, ...]:
    """The calculations that serve a kind of tool, those whose main job it is first.

    Args:
        kind: one of ``geometry.kinds``; empty where none is known.
        surfaces: those of the tool, the one that is mostly ground first. They decide where no kind is known: then
            come the calculations of the first surface, of the next one, and at last those that serve any tool.

    Example:
        >>> calculations_for("tap")[0].name, calculations_for("", ("lip",))[0].name
        ('lead-over-land', 'drill-point')
        >>> "drill-point" in [sheet.name for sheet in calculations_for("", ("cone",))]
        False
    """
    rank = _by_kind if kind in EVERY_KIND else _by_surface
    sheets = [(rank(sheet, kind, surfaces), sheet) for sheet in map(calculation, calculation_names())]
    ranked = sorted(
        ((place, sheet) for place, sheet in sheets if place),
        # Of equals, one that rests until something calls for it comes after those that every such tool goes through,
        # and what belongs on fewer surfaces comes before what belongs on more.
        key=lambda one: (
            *one[0],
            kind in EVERY_KIND and one[1].role.of_course == (),
            len(one[1].belongs_on),
            one[1].name,
        ),
    )
    return tuple(sheet for _, sheet in ranked)


def _by_kind(sheet: Calculation, kind: str, _: Sequence[str]) -> tuple[int, ...]:
    """How near a kind is to the main job of a calculation; nothing where it does not serve it."""
    return (sheet.kinds.index(kind) + sheet.beside, len(sheet.kinds)) if kind in sheet.kinds else ()


def _by_surface(sheet: Calculation, _: str, surfaces: Sequence[str]) -> tuple[int, ...]:
    """How near the surfaces of a tool are to those of a calculation; nothing where they share none."""
    served = sheet.belongs_on or sheet.surfaces
    if not served:
        return (len(surfaces), 0, 0)
    shared = [
        (at, served.index(one) + len(EVERY_KIND) * sheet.beside, len(served))
        for at, one in enumerate(surfaces)
        if one in served
    ]
    return min(shared, default=())
