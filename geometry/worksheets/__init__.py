"""One file for each worksheet; a new file here is found by the calculator, the command line and the card.

The file ``relief_drop.py`` holds ``WORKSHEET``, whose name is ``relief-drop``.
"""

from __future__ import annotations

import pkgutil
from functools import cache
from importlib import import_module

from geometry.worksheet import Worksheet


@cache
def worksheet_names() -> tuple[str, ...]:
    """The names of all worksheets, in alphabetical order.

    Example:
        >>> "relief-drop" in worksheet_names()
        True
    """
    return tuple(sorted(module.name.replace("_", "-") for module in pkgutil.iter_modules(__path__)))


@cache
def worksheet(name: str) -> Worksheet:
    """Return the worksheet called ``name``; raises ``KeyError`` when there is none."""
    if name not in worksheet_names():
        raise KeyError(name)
    found: Worksheet = import_module(f"{__name__}.{name.replace('-', '_')}").WORKSHEET
    return found


def worksheets_for(family: str) -> tuple[Worksheet, ...]:
    """The worksheets that serve a family of tools, in alphabetical order.

    Example:
        >>> [sheet.name for sheet in worksheets_for("no such family")]
        []
    """
    return tuple(sheet for sheet in map(worksheet, worksheet_names()) if family in sheet.families)
