"""One table read key by key, and the shop's laid over the shipped one."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from geometry.quantities import QUANTITIES
from library.book.desk import Desk, Spot, Spots, nearest, shown
from library.book.fields import identifier
from library.book.model import Value
from library.book.parsing import Sheet
from library.book.shapes import Merged, Shape
from library.book.values import citation, unread, value


@dataclass(frozen=True)
class Part:
    """What one layer says of one table.

    Attributes:
        spot: of the table.
        fields: what was read of its known keys.
        values: recommended values by quantity.
        extra: the shop's own keys.
    """

    spot: Spot
    fields: Mapping[str, object]
    values: Mapping[str, Value]
    extra: Mapping[str, object]


def read_part(sheet: Sheet, shape: Shape, desk: Desk) -> Part:
    """Read every key of a table, and complain of each that is wrong."""
    spot = Spot(desk, Spots(sheet))
    fields: dict[str, object] = {}
    values: dict[str, Value] = {}
    extra: dict[str, object] = {}
    for key, raw in sheet.table.items():
        if key == "id":
            fields["id"] = identifier(raw, spot.at("id"))
        elif key in shape.fields:
            found = shape.fields[key](raw, spot.at(key))
            if found is not None:
                fields[key] = found
        elif key.startswith("x-"):
            extra[key] = raw
        elif shape.has_values and key in QUANTITIES:
            values[key] = value(raw, spot.at(key), QUANTITIES[key])
        elif not (shape.is_cited and key in {"source", "place"}):
            _complain_of_key(key, shape, spot)
    if shape.is_cited and (sheet.layer == "shipped" or {"source", "place"} & set(sheet.table)):
        fields["citation"] = citation(sheet.table, spot)
    if shape.has_values:
        values |= {key: unread(key, spot.at(key)) for key in sheet.unread if key in QUANTITIES}
    return Part(spot, fields, values, extra)


def _complain_of_key(key: str, shape: Shape, spot: Spot) -> None:
    known = [*shape.keys(), *(QUANTITIES if shape.has_values else ())]
    near = nearest(key, known)
    kind = "entry" if shape.array == "entry" else shape.array
    mend = f"Did you mean {near}?" if near else "Remove it, or begin its name with x- to keep it as your own."
    spot.at(key).complain(f"A [[{kind}]] has no key {shown(key)}.", mend, "watch")


def merge(parts: list[Part]) -> Merged:
    """Lay the parts of one table over each other, lowest layer first.

    A value keeps the one that it covers; one that could not be read covers it all the same, so that no
    other number is taken for the shop's.
    """
    fields: dict[str, object] = {}
    values: dict[str, Value] = {}
    extra: dict[str, object] = {}
    for part in parts:
        fields |= part.fields
        extra |= part.extra
        for key, found in part.values.items():
            below = values.get(key)
            values[key] = replace(found, replaces=below) if below else found
    top = parts[-1].spot
    return Merged(fields, values, extra, top.sheet.layer, top.place())


def build(parts: list[Part], shape: Shape) -> object:
    """Make the object of a table, complaining of what is missing.

    A missing title is replaced by the id, so that the table can still be found and mended.
    """
    merged = merge(parts)
    spot = parts[-1].spot
    fields = dict(merged.fields)
    for key in shape.required:
        if key not in fields:
            if key not in spot.sheet.unread and key not in spot.sheet.table:
                spot.complain(f"This [[{shape.array}]] has no {key}.", f'Add {key} = "...".')
            fields[key] = fields["id"] if key == "title" else ""
    return shape.build(replace(merged, fields=fields))
