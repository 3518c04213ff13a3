"""With what a tool was left by an earlier card of it, beside what is measured on it now."""

from __future__ import annotations

from collections.abc import Iterable

from geometry.quantities import QUANTITIES, quantity
from geometry.surfaces import SURFACES
from library.calc.surfaces import title_of
from library.cards.chosen import SURFACE
from library.cards.model import Card, Inspection
from library.cards.provenance import joined
from library.pages.page import Block, Labelled, Said
from library.units.several import in_short


def left_with(earlier: Iterable[Card], now: str = "") -> tuple[Block, ...]:
    """What was measured after the last grinding before a card; nothing where nothing was.

    Args:
        earlier: the cards of the tool, the oldest first.
        now: the id of the card in hand, behind which none of them counts; empty for one that is not saved yet.
    """
    before = [one for one in earlier if (not now or one.id < now) and _measured(one)]
    if not before:
        return ()
    last = before[-1]
    surface = last.chosen.get(SURFACE, "")
    ground = f", {SURFACES[surface].title} ground" if surface in SURFACES else ""
    told = tuple(
        (title_of(key, surface), in_short(quantity(key).kind, one.readings)) for key, one in _measured(last)
    )
    return Said((f"Left with last time, {last.id}{ground}",), "strong"), Labelled(told)


def _measured(card: Card) -> list[tuple[str, Inspection]]:
    return [(key, one) for key, one in card.after.items() if key in QUANTITIES and joined(one.readings)]
