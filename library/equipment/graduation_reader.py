"""Parse and validate the graduations of a machine."""

from __future__ import annotations

from collections.abc import Mapping

from geometry.quantities import QUANTITIES
from geometry.sentences import Kind
from library.book.diagnostics import Location, nearest, shown
from library.book.fields import one_line, words
from library.book.model import Measure
from library.book.retired import fix_for
from library.equipment.model import Graduation
from library.equipment.readers import end, ends, reading, want_keys
from library.equipment.usual_graduations import with_what_came_later
from library.units.read import UnitError, read

GRADUATION_KEYS = ("title", "division", "sets", "reads", "more", "less", "per_turn", "low", "high")
"""What the table of a graduation may hold."""

_A = {kind: f"an {kind}" if kind[0] in "aeiou" else f"a {kind}" for kind in Kind}
"""Each kind with its article."""


def graduations(raw: object, location: Location) -> Mapping[str, Graduation] | None:
    """Read the graduations of a machine, each a table below ``graduations``."""
    if not isinstance(raw, Mapping):
        location.complain(
            f"This is {shown(raw)}; graduations are tables.", "Write [machine.graduations.NAME] above each."
        )
        return None
    found = {
        name: _graduation(name, one, location.at(name))
        for name, one in raw.items()
        if not name.startswith("x-")
    }
    return {name: graduation for name, graduation in found.items() if graduation is not None}


def _graduation(name: str, raw: object, location: Location) -> Graduation | None:
    if not isinstance(raw, Mapping):
        location.complain(
            f"This is {shown(raw)}; graduations are a table.", f"Write [machine.graduations.{name}] above it."
        )
        return None
    want_keys(raw, GRADUATION_KEYS, location, "graduation")
    if "division" not in raw:
        location.complain("These graduations have no division.", 'Add division = "0.01 mm".')
        return None
    kind, other = kinds_of(raw["division"])
    division = reading(raw["division"], location.at("division"), kind, other)
    if division is None:
        return None
    if division.number <= 0:
        location.at("division").complain(f"A division of {shown(division.text)} is none.",
                                     "Write what one line is worth.")  # fmt: skip
        return None
    return Graduation(
        name,
        _text(raw, "title", location) or name.replace("-", " "),
        Measure(division.text, division.number),
        division.kind,
        with_what_came_later(name, _keys(raw, "sets", location, division.kind)),
        _keys(raw, "reads", location, division.kind),
        _text(raw, "more", location),
        _text(raw, "less", location),
        _per_turn(raw, location, division.kind),
        ends(raw, location, division.kind),
    )


def kinds_of(division: object) -> tuple[Kind, Kind]:
    """What a division is read as, and what besides: an angle first where only an angle is written so, such as 0 deg 15 min.

    Example:
        >>> kinds_of("0 deg 15 min")[0].value, kinds_of("0.01 mm")[0].value
        ('angle', 'length')
    """
    try:
        read(str(division), Kind.ANGLE, unit_wanted=True)
    except UnitError:
        return Kind.LENGTH, Kind.ANGLE
    try:
        read(str(division), Kind.LENGTH, unit_wanted=True)
    except UnitError:
        return Kind.ANGLE, Kind.LENGTH
    return Kind.LENGTH, Kind.ANGLE


def _keys(raw: Mapping[str, object], name: str, location: Location, kind: Kind) -> tuple[str, ...]:
    """The quantities of a graduation; one that it cannot move is told and left out."""
    found = words(raw[name], location.at(name)) if name in raw else ()
    fitting = []
    for number, key in enumerate(found or ()):
        row = QUANTITIES.get(key)
        if row is None:
            near = nearest(key, list(QUANTITIES))
            fix = fix_for(key, near, "'heelclear glossary' lists the quantities.")
            location.at(name, number).complain(f"There is no quantity {shown(key)}.", fix, "warning")
        elif row.kind is not kind:
            location.at(name, number).complain(
                f"{key} is {_A[row.kind]}, but the division of it is {_A[kind]}.",
                "Name it with another, or correct the division.",
            )
        else:
            fitting.append(key)
    return tuple(fitting)


def _per_turn(raw: Mapping[str, object], location: Location, kind: Kind) -> Measure | None:
    found = end(raw, "per_turn", location, kind)
    if found is not None and found.number <= 0:
        location.at("per_turn").complain("A turn of the handle moves something.", "Write how much.")
        return None
    return found


def _text(raw: Mapping[str, object], key: str, location: Location) -> str:
    return (one_line(raw[key], location.at(key)) or "") if key in raw else ""
