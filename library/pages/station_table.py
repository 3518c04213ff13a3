"""What an indicator reads from edge to heel, as a table: at whose head or over which stands where the indicator points."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from geometry.calculation import Station
from geometry.edge.readings import POINTS
from geometry.edge.surface_input import READ_IN
from geometry.quantities import quantity
from geometry.sentences import Kind
from geometry.surfaces import SURFACES
from library.calc.answer import Answer
from library.calc.wording import STATIONS
from library.equipment.model import Machine
from library.equipment.settings import divisions_said, in_divisions
from library.pages.page import Table
from library.units.show import show_bare
from library.units.system import Display

OTHER_SIDES = frozenset({"radial_drop", "square_drop", "axial_drop"})
"""The drop of a place as an indicator shows it that points in each of three ways; ``drop`` is the one that is read."""

LEAD = "lead_over_land"
"""The reading of a thread, for which the indicator stands along the axis against a flank."""

DROPS = frozenset({"drop", "eccentric_drop", "flat_drop", "two_facet_drop"})
"""Readings whose heads do not say where the indicator points."""

IN_HEADS = {
    "drop": "drop",
    "eccentric_drop": "if eccentric",
    "flat_drop": "if flat",
    "two_facet_drop": "two facets",
    "radial_drop": "drop at the axis",
    "square_drop": "drop square to surface",
    "axial_drop": "drop along the axis",
}
"""What stands over a column for the drop, which is that below the cutting circle, set to zero at the edge."""

DIVISIONS = "div "
"""Begins the head of a column of divisions."""


def read_where(found: Answer) -> str:
    """Where the indicator points for the readings of an answer; empty where the heads of their columns say it."""
    points = read_points(found)
    if found.result is not None and found.result.stations and LEAD in found.result.stations[0].readings:
        return f"indicator {POINTS['axial']}"
    if found.result is None or not points or not OTHER_SIDES.isdisjoint(found.result.stations[0].readings):
        return ""
    return f"indicator {points}"


def read_points(found: Answer) -> str:
    """Where the indicator points for the drop of an answer, in words; empty where no drop is read on the way.

    It is what was chosen, else what is common practice on the surface; a calculation that does not ask counts square
    to the axis of the tool.
    """
    result = found.result
    if result is None or not result.stations or DROPS.isdisjoint(result.stations[0].readings):
        return ""
    chosen, surface = found.inputs.get("indicator_points"), SURFACES.get(found.surface)
    if chosen is not None and isinstance(chosen.value, str):
        return POINTS[READ_IN[chosen.value]]
    asks = any(field.key == "indicator_points" for field in found.sheet.inputs)
    is_axial = asks and surface is not None and surface.view == "axial"
    return POINTS["axial" if is_axial else "radial"]


def stations(
    found: Sequence[Station],
    display: Display,
    machine: Machine | None = None,
    name: str = "",
    points: str = "",
) -> Table | None:
    """The indicator readings at the edge, on the way, and at the heel; the unit stands once, at the head of a column.

    Args:
        found: the places; nothing comes of none.
        display: the units.
        machine: gives the graduations, so that a reading is told in divisions too.
        name: of the table, where there are several.
        points: where the indicator points for the drop, told at its head where another side stands beside it.

    What the same place shows from another side, and then the divisions, give way where there is no room for all.
    """
    if not found:
        return None
    keys = list(found[0].readings)
    heads = IN_HEADS if OTHER_SIDES.isdisjoint(keys) else IN_HEADS | {"drop": f"drop {points}".strip()}
    heading = [name, _head("turned", Kind.ANGLE, display)]
    sides: list[int] = []
    divisions: list[int] = []
    for key in keys:
        row = quantity(key)
        if key in OTHER_SIDES:
            sides.append(len(heading))
        title = heads.get(key) or row.title.lower()
        heading.append(_head(title, row.kind, display))
        graduation = machine.reading_graduation(key) if machine is not None else None
        if graduation is not None:
            if key in OTHER_SIDES:
                sides.insert(-1, len(heading))  # never without the reading that it belongs to
            else:
                divisions.append(len(heading))
            heading.append(
                f"{DIVISIONS}{graduation.division.text.removesuffix(display.unit(row.kind)).strip()}"
            )
    told = tuple(tuple(_station(one, keys, display, machine)) for one in found)
    return Table(tuple(heading), told, (*sides, *divisions))


def _head(title: str, kind: Kind, display: Display) -> str:
    return f"{title} {display.unit(kind)}".rstrip()


def _station(one: Station, keys: Iterable[str], display: Display, machine: Machine | None) -> Iterator[str]:
    yield STATIONS.get(one.fraction, f"{one.fraction:.2f}")
    yield show_bare(one.angle, Kind.ANGLE, display)
    for key in keys:
        value = one.readings[key]
        yield show_bare(value, quantity(key).kind, display)
        divisions = in_divisions(machine, key, value) if machine is not None else None
        if divisions is not None:
            yield divisions_said(divisions)
