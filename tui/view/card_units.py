"""Convert a job card to the other unit of length: what was typed without a unit keeps its meaning."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from geometry.quantities import quantity
from library.cards.bare_numbers import completed, display_of
from library.cards.model import Card
from library.units.read import UnitError, read_many
from library.units.system import Display
from tui.view.form import in_other_unit


def in_other_units(card: Card) -> Card:
    """The card with the other unit of length.

    Example:
        >>> from library.cards.model import Setting
        >>> before = Card(units="mm", settings={"relief-drop": Setting({"land_width": "3.2"})})
        >>> in_other_units(before).settings["relief-drop"].typed
        {'land_width': '3.2 mm'}
    """
    old, card = display_of(card), completed(card)
    settings = {
        name: replace(one, typed=_kept(one.typed, old, old.other())) for name, one in card.settings.items()
    }
    return replace(card, units=old.other().lengths, settings=settings)


def _kept(typed: Mapping[str, str], old: Display, new: Display) -> dict[str, str]:
    return {key: in_other_unit(text, key, old, new, _meaning) for key, text in typed.items()}


def _meaning(text: str, key: str, display: Display) -> tuple[float, ...] | None:
    try:
        return tuple(one.number for one in read_many(text, quantity(key).kind, display))
    except UnitError:
        return None
