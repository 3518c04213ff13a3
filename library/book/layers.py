"""One table read key by key, and the shop's laid over the shipped one."""

from __future__ import annotations

from dataclasses import dataclass, replace

from geometry.quantities import QUANTITIES
from library.book.desk import Desk, Spot, Spots, shown
from library.book.fields import identifier
from library.book.model import Value
from library.book.retired import fix_for
from library.book.shapes import Merged, Shape
from library.book.sheet import Sheet
from library.book.sound import unsound
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
    fields: dict[str, object]
    values: dict[str, Value]
    extra: dict[str, object]


def read_part(sheet: Sheet, shape: Shape, desk: Desk) -> Part:
    """Read every key of a table, and complain of each that is wrong."""
    spot = Spot(desk, Spots(sheet))
    part = Part(spot, {}, {}, {})
    for key, raw in sheet.table.items():
        wrong = unsound(raw)
        if wrong:
            spot.at(key).complain(*wrong)
        else:
            _read_key(key, raw, shape, part)
    if shape.is_cited and {"source", "place"} & set(sheet.table):
        part.fields["citation"] = citation(sheet.table, spot)
    if shape.has_values:
        part.values.update({key: unread(key, spot.at(key)) for key in sheet.unread if key in QUANTITIES})
    return part


def _read_key(key: str, raw: object, shape: Shape, part: Part) -> None:
    spot = part.spot.at(key)
    if key == "id":
        part.fields["id"] = identifier(raw, spot)
    elif key in shape.fields:
        found = shape.fields[key](raw, spot)
        if found is not None:
            part.fields[key] = found
    elif key.startswith("x-"):
        part.extra[key] = raw
    elif shape.has_values and key in QUANTITIES:
        if key not in part.spot.sheet.unread:
            part.values[key] = value(raw, spot, QUANTITIES[key])
    elif not (shape.is_cited and key in {"source", "place"}):
        _complain_of_key(key, shape, part.spot)


def _complain_of_key(key: str, shape: Shape, spot: Spot) -> None:
    known = [*shape.keys(), *(QUANTITIES if shape.has_values else ())]
    near = spot.near(key, known)
    fix = fix_for(key, near, "Remove it, or begin its name with x- to keep it as your own.")
    spot.at(key).complain(f"[[{shape.array}]] has no key {shown(key)}.", fix, "warning")


def merge(parts: list[Part]) -> Merged:
    """Lay the parts of one table over each other, lowest layer first.

    A value keeps the one that it covers. One that could not be read covers it all the same, and so does a
    table that could not be read: no other number is taken for the shop's.
    """
    fields: dict[str, object] = {}
    values: dict[str, Value] = {}
    extra: dict[str, object] = {}
    for part in parts:
        fields |= part.fields
        extra |= part.extra
        hidden = {key: unread(key, part.spot) for key in values} if part.spot.sheet.broken else {}
        for key, found in (hidden | part.values).items():
            below = values.get(key)
            values[key] = replace(found, replaces=below) if below else found
    top = parts[-1].spot
    return Merged(fields, values, extra, top.sheet.layer, top.place())


def build(parts: list[Part], shape: Shape) -> object:
    """Make the object of a table, complaining of what is missing.

    A missing title is replaced by the id, so that the table can still be found and fixed.
    """
    merged = merge(parts)
    spot = parts[-1].spot
    fields = dict(merged.fields)
    for key in shape.required:
        if key not in fields:
            if not spot.sheet.broken and key not in spot.sheet.unread and key not in spot.sheet.table:
                spot.complain(f"This [[{shape.array}]] has no {key}.", f'Add {key} = "...".')
            fields[key] = fields["id"] if key == "title" else ""
    if shape.is_cited and "citation" not in fields and not spot.sheet.broken:
        fields["citation"] = citation({}, spot)
    if shape.has_values:
        fields["unread"] = any(part.spot.sheet.broken or part.spot.sheet.unread for part in parts)
    return shape.build(replace(merged, fields=fields))
