"""Carry what was typed into the calculator over to a job card."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from geometry.calculation import Calculation
from geometry.quantities import quantity
from geometry.surfaces import surface_of_relief
from library.book.model import Book
from library.calc.of_several import is_list
from library.calc.surfaces import RELIEF, SECOND_RELIEF
from library.cards.editing import CardEditRefused, edited
from library.cards.model import Card
from library.cards.thread_names import of_thread
from library.units.read import UnitError, read_many, with_units
from library.units.system import Display
from tui.view.card_quantity_rows import measured_on


def with_typed(
    card: Card,
    kind: str,
    sheet: Calculation,
    texts: Mapping[str, str],
    display: Display,
    book: Book | None = None,
    alone: Mapping[str, str] | None = None,
) -> Card:
    """The card with what was typed into a calculation, each text where it belongs.

    What is measured on the tool was received so; what the entry recommends is now wanted otherwise; a thread is the
    tool's; everything else stays with the calculation.

    Args:
        card: begun from the entry.
        kind: of the tool; empty where none is known.
        sheet: the calculation.
        texts: typed, by quantity; a relief by the key of its surface.
        display: the units that a number without one was typed in; on the card it carries its unit.
        book: whose own threads a diameter may name.
        alone: typed for this calculation where ``texts`` has a list of the tool.
    """
    for key, text in (alone or {}).items():
        card = edited(
            card, f"settings.{sheet.name}.{key}", _with_its_unit(key, text.strip(), display) or text
        )
    for key, text in texts.items():
        try:
            card = _placed(card, kind, sheet, key, text.strip(), display, book)
        except CardEditRefused:
            continue
    return card


def _placed(
    card: Card, kind: str, sheet: Calculation, key: str, text: str, display: Display, book: Book | None
) -> Card:
    named = _with_its_unit(key, text, display)
    if key == "diameter" and not named and of_thread(text, book):
        return replace(card, tool=replace(card.tool, thread=text))
    if key in measured_on(kind):
        return edited(card, f"received.{key}", named or text)
    if key in card.wanted:
        return edited(card, f"wanted.{key}", named or text)
    if key == "flutes":
        return edited(card, "tool.flutes", text)
    field = sheet.field(key)
    if field is not None and not field.many and is_list(text):
        return card  # It was typed for another calculation.
    return edited(card, f"settings.{sheet.name}.{_asked_as(key, sheet)}", text)


def _asked_as(key: str, sheet: Calculation) -> str:
    """The input of a calculation that takes a relief of a surface; any other key as it is."""
    one = surface_of_relief(key)
    if one is None or sheet.field(key) is not None:
        return key
    return RELIEF if key == one.relief_key else SECOND_RELIEF


def _with_its_unit(key: str, text: str, display: Display) -> str:
    """The text with its unit; empty where it cannot be read."""
    row = quantity(key)
    if row.choices:
        return (
            text
            if text in row.choices
            else next((one for one in row.choices if one.startswith(text.lower())), "")
        )
    try:
        read_many(text, row.kind, display)
    except UnitError:
        return ""
    return with_units(text, row.kind, display)
