"""Numbers written on a card without a unit: a length is in the unit of the card, an angle in degrees."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from functools import lru_cache

from geometry.quantities import QUANTITIES
from geometry.sentences import Kind
from library.calc.ranges import read_range
from library.cards.editing import readings_of
from library.cards.model import Card, Inspection, Readings, Setting, Wanted
from library.cards.tolerances import tolerance
from library.units.read import UnitError, in_unit, read, read_many, with_units
from library.units.system import INCH, METRIC, Display

_NOTHING = re.compile(r"[+-]?(?:0+\.?0*|\.0+)(?:\s*\+/-.*)?")
"""A zero without a unit, perhaps with how far off it may be."""

_NO_FRACTION = re.compile(r"\+/-|/(?=\s*[+-])|(?<=\d)/(?=\s*0*\.?0*\s*$)")
"""A slash of no fraction: of both ways, and one that parts the two sides of a tolerance."""


def display_of(card: Card) -> Display:
    """The units of numbers that were written on a card without one."""
    return INCH if card.units == "in" else METRIC


def completed(card: Card) -> Card:
    """The card with its unit behind every number that was written without one; what cannot be read stays as it is.

    Those typed into a calculation take it too: a record and a sheet say them to people who do not see the card's unit.

    Example:
        >>> completed(Card(units="in", received={"diameter": (".623",)})).received["diameter"]
        ('.623 in',)
    """
    display = display_of(card)
    size = _size(card.tool.size, display)
    return replace(
        card,
        tool=card.tool if size == card.tool.size else replace(card.tool, size=size),
        received={key: _readings(key, found, display) for key, found in card.received.items()},
        wanted={key: _wanted(key, one, display) for key, one in card.wanted.items()},
        settings={name: _setting(one, display) for name, one in card.settings.items()},
        after={key: _inspection(key, one, display) for key, one in card.after.items()},
    )


def in_other_units(card: Card) -> Card:
    """The card with the other unit of length; what was typed without a unit keeps its meaning.

    Example:
        >>> from library.cards.model import Setting
        >>> before = Card(units="mm", settings={"relief-drop": Setting({"land_width": "3.2"})})
        >>> in_other_units(before).settings["relief-drop"].typed
        {'land_width': '3.2 mm'}
    """
    return replace(completed(card), units=display_of(card).other().lengths)


def in_the_units_of(card: Card, lengths: str) -> Card:
    """The card in a unit of length; one that is in the other is changed as ``in_other_units`` does it."""
    return card if display_of(card).lengths == ("in" if lengths == "in" else "mm") else in_other_units(card)


def _setting(one: Setting, display: Display) -> Setting:
    typed, filled = (
        {key: _typed(key, text, display) for key, text in part.items()} for part in (one.typed, one.filled)
    )
    return one if (typed, filled) == (one.typed, one.filled) else replace(one, typed=typed, filled=filled)


@lru_cache(maxsize=1024)
def _typed(key: str, text: str, display: Display) -> str:
    return with_units(text, QUANTITIES[key].kind, display) if key in QUANTITIES else text


def _readings(key: str, found: Readings, display: Display) -> Readings:
    return tuple(with_its_unit(key, text, display) for text in found)


def _wanted(key: str, one: Wanted, display: Display) -> Wanted:
    text = with_its_unit(key, one.value, display)
    return one if text == one.value else replace(one, value=text)


def _inspection(key: str, one: Inspection, display: Display) -> Inspection:
    return Inspection(
        _readings(key, one.readings, display),
        _size(one.wanted, display)
        if key == "diameter" and len(readings_of(one.wanted)) > 1
        else with_its_unit(key, one.wanted, display),
        _tolerance(key, one.tolerance, display),
        one.judged_by,
    )


@lru_cache(maxsize=1024)
def with_its_unit(key: str, text: str, display: Display) -> str:
    """A number or a range for a quantity with its unit; any other text as it is.

    Args:
        key: the quantity.
        text: as it was written.
        display: gives the unit.

    Example:
        >>> with_its_unit("rake_angle", "5 to 8", METRIC), with_its_unit("drop", "0.2 mm", INCH)
        ('5 to 8 deg', '0.2 mm')
    """
    kind = QUANTITIES[key].kind if key in QUANTITIES else Kind.CHOICE

    def is_read(one: str) -> bool:
        if read_range(key, one) is not None:
            return True
        read(one, kind, display, of_diameter=kind is Kind.LENGTH, unit_wanted=True)
        return True

    return _if_read(text, kind, display, is_read)


@lru_cache(maxsize=256)
def _tolerance(key: str, text: str, display: Display) -> str:
    kind = QUANTITIES[key].kind if key in QUANTITIES else Kind.CHOICE
    return _if_read(text, kind, display, lambda one: tolerance(one, kind) is not None)


@lru_cache(maxsize=256)
def _size(text: str, display: Display) -> str:
    """The size of a tool with its unit, of a step drill behind the last; a name that is no number stays."""
    if not readings_of(text):
        return text

    def is_read(one: str) -> bool:
        # A bare number would be read in any unit: what is wanted is one behind the last.
        read(readings_of(one)[-1], Kind.LENGTH, display, unit_wanted=True)
        return bool(read_many(one, Kind.LENGTH, display))

    return _if_read(text, Kind.LENGTH, display, is_read)


def _if_read(text: str, kind: Kind, display: Display, is_read: Callable[[str], bool]) -> str:
    """The text with the unit where it is read only with it."""
    unit = display.unit(kind)
    # A nothing is read without a unit as well, and gets it all the same, as every other number that is told.
    if not text.strip() or not unit or (_reads(text, is_read) and not _NOTHING.fullmatch(text.strip())):
        return text
    if kind is Kind.LENGTH and unit == "mm" and "/" in _NO_FRACTION.sub("", text):
        return text  # Whoever writes a fraction means inches, and says so.
    try:
        named = in_unit(text, unit, kind)
    except UnitError:
        named = f"{text.strip()} {unit}"  # a range, a tolerance, several
    return named if _reads(named, is_read) else text


def _reads(text: str, is_read: Callable[[str], bool]) -> bool:
    try:
        return is_read(text)
    except UnitError:
        return False
