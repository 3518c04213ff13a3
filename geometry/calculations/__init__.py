"""One file for each calculation; a new file here is found by the calculator, the command line and the card.

The file ``relief_drop.py`` holds ``CALCULATION``, whose name is ``relief-drop``.
"""

from __future__ import annotations

import pkgutil
from functools import cache
from importlib import import_module

from geometry.calculation import Calculation


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


def calculations_for(family: str) -> tuple[Calculation, ...]:
    """The calculations that serve a family of tools, in alphabetical order.

    Example:
        >>> [sheet.name for sheet in calculations_for("no such family")]
        []
    """
    return tuple(sheet for sheet in map(calculation, calculation_names()) if family in sheet.families)
