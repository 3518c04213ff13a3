"""What a card's file calls by a name that is not known: each is kept, and told of with the name that is most like it."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import fields
from typing import TYPE_CHECKING

from geometry.calculations import calculation_names
from geometry.quantities import QUANTITIES
from library.book.diagnostics import Diagnostics, KeyPositions, Location, shown
from library.book.retired import OF_NO_SURFACE, RETIRED, fix_for, no_surface
from library.cards.model import Card, Inspection, Setting, Tool, Wanted

if TYPE_CHECKING:
    from library.book.parsing import Parsed
    from library.cards.reading import Taken

_OF_QUANTITIES = frozenset({"received", "wanted", "after", "chosen"})
_KEPT = "It is kept; begin its name with x- to have it so on purpose."
_WORDS = "'heelclear glossary' lists the quantities."
_SHEETS = "'heelclear calc' lists the calculations."


def complain_of_unknown(top: Taken) -> None:
    """Complain of every key, quantity, calculation and word of a card that this program does not know.

    Args:
        top: the card's table, with what nobody understood left in it.
    """
    _keys(top, "A card", _names(Card, but=("extra", "schema")))
    for section, taken in top.below.items():
        if section in _OF_QUANTITIES:
            _quantities(taken)
        match section:
            case "tool":
                _keys(taken, "A tool", _names(Tool))
            case "wanted":
                _each(taken, "What is wanted", _names(Wanted))
                _old_words(taken)
            case "after":
                _each(taken, "An inspection", _names(Inspection))
            case "settings":
                _of_settings(taken)


def _names(kind: type[Card | Tool | Wanted | Inspection | Setting], but: Collection[str] = ()) -> list[str]:
    return [one.name for one in fields(kind) if one.name not in but]


def _unknown(names: Iterable[str], known: Collection[str]) -> list[str]:
    return [name for name in names if name not in known and not name.startswith("x-")]


def _keys(taken: Taken, whose: str, known: Collection[str]) -> None:
    for key in _unknown(taken.left, known):
        near = taken.location.near(key, known)
        fix = f"Did you mean {near}?" if near else _KEPT
        taken.location.at(key).complain(f"{whose} has no key {shown(key)}.", fix, "warning")


def _each(taken: Taken, whose: str, known: Collection[str]) -> None:
    for one in taken.below.values():
        _keys(one, whose, known)


def _quantities(taken: Taken) -> None:
    for key in _unknown(taken.table, QUANTITIES):
        fix = fix_for(key, taken.location.near(key, QUANTITIES), _WORDS)
        taken.location.at(key).complain(f"There is no quantity {shown(key)}.", fix, "warning")


def _of_settings(taken: Taken) -> None:
    for name in _unknown(taken.table, calculation_names()):
        fix = fix_for(name, taken.location.near(name, calculation_names()), _SHEETS)
        taken.location.at(name).complain(f"There is no calculation {shown(name)}.", fix, "warning")
    _each(taken, "A calculation of a card", _names(Setting))
    for one in taken.below.values():
        for part in one.below.values():
            _quantities(part)


def _old_words(taken: Taken) -> None:
    """Complain of reliefs of no surface, and of words that have another name now."""
    for key, one in taken.below.items():
        if key in OF_NO_SURFACE:
            taken.location.at(key).complain(*no_surface(key), "warning")
        value = one.table.get("value")
        if isinstance(value, str) and value in RETIRED:
            one.location.at("value").complain(f"This is {shown(value)}.", fix_for(value, "", ""), "warning")


def complain_of_keys_above(content: Iterable[str], location: Location) -> None:
    """Complain of keys above the first table of a card's file; only ``schema`` stands there."""
    for key in _unknown(content, ("schema",)):
        near = location.near(key, ("schema",))
        fix = f"Did you mean {near}?" if near else "Move it below [[card]]."
        location.at(key).complain(f"{shown(key)} stands above the card.", fix, "warning")


def complain_of_other_table(array: str, location: Location) -> None:
    """Complain of a table in a card's file that is not the card and not the shop's own."""
    for name in _unknown((array,), ("card",)):
        fix = "Did you mean [[card]]?" if location.near(name, ("card",)) else _KEPT
        location.complain(f"The file of a card has no table {shown(name)}.", fix, "warning")


def complain_of_the_rest(parsed: Parsed, diagnostics: Diagnostics) -> None:
    """Complain of what is in the file beside the card and is not known."""
    for table in parsed.tables:
        location = Location(diagnostics, KeyPositions(table))
        if table.array:
            complain_of_other_table(table.array, location)
        else:
            complain_of_keys_above(table.content, location)
