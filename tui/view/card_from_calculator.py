"""Carry what was typed into the calculator over to a job card."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import TYPE_CHECKING

from geometry.calculation import Calculation
from geometry.quantities import quantity
from geometry.role import FOUND, MEASURED_TOO
from geometry.sentences import Kind
from geometry.surfaces import SURFACES, surface_of_relief
from library.book.model import Book
from library.calc.of_several import is_list
from library.calc.surfaces import FIELD, RELIEF, SECOND_RELIEF
from library.cards.chosen import surfaces_of
from library.cards.editing import CardEditRefused, edited
from library.cards.model import Card, Tool
from library.cards.shall_be import DROPS
from library.cards.starting import for_its_size
from library.cards.thread_names import of_thread
from library.search.along import Along
from library.search.by_angle import KEYS as ANGLES
from library.search.sizes import Size
from library.units.read import UnitError, read, read_many, with_units
from library.units.system import Display
from tui.view.card_quantity_rows import measured_on
from tui.view.form import SIZES

if TYPE_CHECKING:
    from tui.view.form import Form

NOMINAL, FLUTES, CLASS_OF_HOLE, BODY = "nominal_diameter", "flutes", "hole_tolerance", "body_diameter"

_MEASURED = {measured: key for key, measured in MEASURED_TOO.items()}
"""What a card calls a size as measured, of which a calculation asks for the nominal one too."""


def found_with(form: Form, book: Book | None) -> Along:
    """What the tool of a calculation was found with and nobody has typed over: its size, its flutes, its angle, the class of its hole.

    Args:
        form: whose texts all calculations of the tool share, asked for in this one or not.
        book: whose own threads a size may name.
    """
    sought = {key: one.text for key, one in form.typed.items() if form.whence.is_sought(key, one.text)}
    text = next((sought[key] for key in reversed(SIZES) if key in sought), "")
    size = Size(text, _is_thread(text, book), sought.get(CLASS_OF_HOLE, "")) if text else None
    angle_of = next((key for key in ANGLES if key in sought), "")
    return Along(size, _count(sought.get(FLUTES, "")), angle=sought.get(angle_of, ""), angle_of=angle_of)


def typed_in(form: Form, kind: str) -> dict[str, str]:
    """What a person typed for the tool of a calculation and a card takes: what is asked here, and what was measured on it.

    What the tool was only found with is not; what is kept from a tool before and not asked here is not either.

    Args:
        form: whose texts all calculations of the tool share.
        kind: of the tool; empty where none is known.
    """
    texts = {key: text for key, text in form.told().items() if not form.whence.is_sought(key, text)}
    for key in (FLUTES, *_of_the_tool(kind)):
        text = form.typed[key].text.strip() if key in form.typed else ""
        if text and not (form.whence.is_sought(key, text) or form.whence.is_kept(key, text)):
            texts.setdefault(key, text)
    return texts


def _of_the_tool(kind: str) -> Iterator[str]:
    """What is measured on a tool and is the same in every calculation of it.

    A drop is that of one surface, an angle may be one that is wanted, and a diameter the one that a tool is ground to.
    """
    for key in measured_on(kind):
        if key in MEASURED_TOO:
            yield MEASURED_TOO[key]
        elif key not in DROPS and quantity(key).kind is not Kind.ANGLE:
            yield key


def _is_thread(text: str, book: Book | None) -> bool:
    return bool(of_thread(text, book)) and not _with_its_unit(NOMINAL, text, Display())


def _count(text: str) -> int | None:
    try:
        return int(read(text, quantity(FLUTES).kind, whole=True).number) if text else None
    except UnitError:
        return None


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

    What is measured on the tool was received so; what the entry recommends, angles of the shape among it, is now wanted
    otherwise; a thread, a nominal
    size, the flutes, and the new diameter of a tool that is ground down are the tool's; a surface is the one that the card
    grinds, with its relief and the angle of its edge; everything else stays with the calculation.

    Args:
        card: begun from the entry.
        kind: of the tool; empty where none is known.
        sheet: the calculation.
        texts: typed, by quantity; a relief by the key of its surface.
        display: the units that a number without one was typed in; on the card it carries its unit.
        book: whose own threads a diameter may name.
        alone: typed for this calculation where ``texts`` has a list of the tool.
    """
    begun, surface = card, _ground(card, sheet, texts, book)
    for key, text in (alone or {}).items():
        card = edited(
            card, f"settings.{sheet.name}.{key}", _with_its_unit(key, text.strip(), display) or text
        )
    for key, text in texts.items():
        try:
            if key in surface:
                card = edited(card, f"wanted.{key}", _with_its_unit(key, text.strip(), display) or text)
            else:
                card = _placed(card, kind, sheet, key, text.strip(), display, book)
        except CardEditRefused:
            continue
    return for_its_size(card, begun, book) if book is not None else card


def _ground(card: Card, sheet: Calculation, texts: Mapping[str, str], book: Book | None) -> frozenset[str]:
    """What the card is to grind by a surface that was typed: the surface, its reliefs, and the angle of its edge.

    Nothing where the tool has no such surface, where the calculation looks at the size of the tool, and of what a
    calculation that finds a relief was told, which says how the tool is now.
    """
    one = SURFACES.get(_with_its_unit(FIELD, texts.get(FIELD, "").strip(), Display()))
    if one is None or sheet.role.sizes or sheet.role.does == FOUND:
        return frozenset()
    if book is not None and one.key not in surfaces_of(card, book):
        return frozenset()
    return frozenset({FIELD, one.relief_key, one.second_key, one.edge_key} & texts.keys())


def _placed(
    card: Card, kind: str, sheet: Calculation, key: str, text: str, display: Display, book: Book | None
) -> Card:
    named = _with_its_unit(key, text, display)
    if (tool := _of_tool(card.tool, sheet, key, text, named, book)) is not None:
        return replace(card, tool=tool)
    called = _MEASURED.get(key, key)
    if called in measured_on(kind) and not _is_to_be_ground(card, sheet, key, text):
        return edited(card, f"received.{called}", named or text)
    if key in card.wanted:
        return edited(card, f"wanted.{key}", named or text)
    field = sheet.field(key)
    if field is not None and not field.many and is_list(text):
        return card  # It was typed for another calculation.
    return edited(card, f"settings.{sheet.name}.{_asked_as(key, sheet)}", text)


def _is_to_be_ground(card: Card, sheet: Calculation, key: str, text: str) -> bool:
    """Whether a text is an angle that the tool shall have, though it can be measured on it as well.

    Only what finds a relief from readings asks how the tool is now; the angle of a cone typed anywhere else is ground.
    """
    is_shape = key in card.wanted and quantity(key).kind is Kind.ANGLE
    return is_shape and sheet.role.does != FOUND and not is_list(text)


def _of_tool(
    tool: Tool, sheet: Calculation, key: str, text: str, named: str, book: Book | None
) -> Tool | None:
    """The tool with what a text says of it, its unit behind it where it can be read; nothing where it says something else."""
    if key == FLUTES:
        return replace(tool, flutes=text)
    if key in SIZES and not named and of_thread(text, book):
        return replace(tool, thread=text)
    return replace(tool, size=named) if named and _is_size(key, sheet) and not is_list(text) else None


def _is_size(key: str, sheet: Calculation) -> bool:
    """Whether a text says the size of the tool and nothing that was measured: of one ground down it is that which it is to have."""
    return key == NOMINAL or (key == "diameter" and sheet.field(BODY) is not None)


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
