"""Read one table key by key, merge its layers, and build its object."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from geometry.quantities import QUANTITIES
from library.book.diagnostics import Diagnostics, KeyPositions, Location, shown
from library.book.fields import identifier
from library.book.model import Value
from library.book.raw_table import RawTable
from library.book.retired import OF_NO_SURFACE, fix_for, no_surface
from library.book.shapes import Merged, Shape
from library.book.values import citation, unread, value
from library.toml.limits import beyond_limits


@dataclass(frozen=True)
class Part:
    """What one layer says of one table.

    Attributes:
        location: of the table.
        fields: what was read of its known keys.
        values: recommended values by quantity.
        extra: the shop's own keys.
        lost: keys of which nothing was taken, as they are beyond the limits.
    """

    location: Location
    fields: dict[str, object]
    values: dict[str, Value]
    extra: dict[str, object]
    lost: set[str] = field(default_factory=set)

    def unread(self) -> set[str]:
        """The keys that could not be read, and ``*`` where none could."""
        table = self.location.table
        return {*table.unread, *self.lost, *("*" if table.broken else "")}


def read_part(table: RawTable, shape: Shape, diagnostics: Diagnostics) -> Part:
    """Read every key of a table, and complain of each that is wrong."""
    location = Location(diagnostics, KeyPositions(table))
    part = Part(location, {}, {}, {})
    for key, raw in table.content.items():
        wrong = beyond_limits(raw)
        if wrong:
            location.at(key).complain(*wrong)
            part.lost.add(key)
        else:
            _read_key(key, raw, shape, part)
    if shape.is_cited and {"source", "place"} & set(table.content):
        part.fields["citation"] = citation(table.content, location)
    if shape.has_values:
        part.values.update({key: unread(key, location.at(key)) for key in table.unread if key in QUANTITIES})
    return part


def _read_key(key: str, raw: object, shape: Shape, part: Part) -> None:
    location = part.location.at(key)
    if key == "id":
        part.fields["id"] = identifier(raw, location)
    elif key in shape.fields:
        found = shape.fields[key](raw, location)
        if found is not None:
            part.fields[key] = found
    elif key.startswith("x-"):
        part.extra[key] = raw
    elif shape.has_values and key in QUANTITIES:
        if key not in part.location.table.unread:
            part.values[key] = value(raw, location, QUANTITIES[key])
        if key in OF_NO_SURFACE:
            location.complain(*no_surface(key), "warning")
    elif not (shape.is_cited and key in {"source", "place"}):
        _complain_of_key(key, shape, part.location)


def _complain_of_key(key: str, shape: Shape, location: Location) -> None:
    known = [*shape.keys(), *(QUANTITIES if shape.has_values else ())]
    near = location.near(key, known)
    fix = fix_for(key, near, "Remove it, or begin its name with x- to keep it as your own.")
    if near in OF_NO_SURFACE:
        fix = no_surface(near)[1]
    location.at(key).complain(f"[[{shape.array}]] has no key {shown(key)}.", fix, "warning")


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
        hidden = {key: unread(key, part.location) for key in values} if part.location.table.broken else {}
        for key, found in (hidden | part.values).items():
            below = values.get(key)
            values[key] = replace(found, replaces=below) if below else found
    top = parts[-1].location
    lost = frozenset(key for part in parts for key in part.unread())
    return Merged(fields, values, extra, top.table.layer, top.place(), lost)


def build(parts: list[Part], shape: Shape) -> object:
    """Make the object of a table, complaining of what is missing.

    A missing title is replaced by the id, so that the table can still be found and fixed.
    """
    merged = merge(parts)
    location = parts[-1].location
    fields = dict(merged.fields)
    for key in shape.required:
        if key not in fields:
            if (
                not location.table.broken
                and key not in location.table.unread
                and key not in location.table.content
            ):
                location.complain(f"This [[{shape.array}]] has no {key}.", f'Add {key} = "...".')
            fields[key] = fields["id"] if key == "title" else ""
    if shape.is_cited and "citation" not in fields and not location.table.broken:
        fields["citation"] = citation({}, location)
    if shape.tells_unread:
        fields["unread"] = any(part.location.table.broken or part.location.table.unread for part in parts)
    return shape.build(replace(merged, fields=fields))
