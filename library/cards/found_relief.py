"""The relief that the chosen cams give on a surface, handed from the calculation that found it to later ones.

A later calculation on the same surface counts with that relief and not with the wanted one, for the tool will have
what the cams give.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from geometry.calculation import Check, Row, note, watch
from geometry.calculations import calculation
from geometry.edge.views import PLANES
from geometry.evaluate import Refusal, run
from geometry.role import HEEL
from geometry.sentences import Amount, angle
from geometry.surfaces import SURFACES
from library.book.model import Value
from library.calc.answer import Answer
from library.calc.past_the_range import past, within
from library.cards.cams import ByCam, show_angle

THROWS = {"chosen_throw": "", "radial_throw": " toward the axis", "axial_throw": " along the axis"}
"""The inputs that say how far a cam moves, with the words for where to."""

NEAR = 1e-6
"""A diameter this near (mm) to another is the same place: far finer than any caliper; no source."""


@dataclass(frozen=True)
class FoundRelief:
    """A relief that an earlier calculation found for chosen cams.

    Attributes:
        surface: the word of the surface.
        relief: in radians, in the view in which the relief of that surface is given; not above zero where it rubs.
        diameter: of the place that it holds for, in mm.
        source: the name of the calculation.
        throws: of the cams, in words.
        wanted: the relief that was wanted there, in radians, for the readings that are judged by it; else nothing.
        where: the one of several shoulders that it is counted at, in words; else empty.
    """

    surface: str
    relief: float
    diameter: float
    source: str
    throws: str
    wanted: float | None = None
    where: str = ""

    def at(self, diameter: float) -> float:
        """The relief (rad) at another diameter (mm) of the surface: its tangent goes down as the diameter grows. Derived.

        Example:
            >>> found = FoundRelief("cone", math.atan(0.1), 20.0, "", "")
            >>> round(math.tan(found.at(10.0)), 6)
            0.2
        """
        return math.atan(math.tan(max(self.relief, 0.0)) * self.diameter / diameter)


def found_relief(found: Answer, before: Sequence[Answer]) -> FoundRelief | None:
    """The relief that a calculation shall count with, instead of the wanted one.

    Args:
        found: the calculation as it is answered with what is wanted.
        before: the earlier calculations of the job that have an answer, in their order.

    Returns:
        That of the nearest earlier calculation that was given a cam for the same surface, at the diameter of this one;
        nothing where there is none, where a person typed the relief or a cam into this one, or where it is flat.
    """
    given, place = found.inputs.get("relief_angle"), found.inputs.get("diameter")
    form = found.inputs.get("relief_form")
    if not found.sheet.role.counts or place is None or not isinstance(place.value, float):
        return None
    if place.value <= 0:  # a size that is only half typed: "0" on the way to "0.5"
        return None
    if (given is not None and given.origin == "given") or "chosen_throw" in found.inputs:
        return None
    if form is not None and form.value != "eccentric":
        return None
    for one in reversed(before):
        for source in _found(one, place.value, _edge(found)):
            if source.surface == found.surface:
                wanted = given.value if given is not None and found.sheet.role.does == HEEL else None
                return replace(
                    source,
                    relief=source.at(place.value),
                    diameter=place.value,
                    wanted=wanted if isinstance(wanted, float) else None,
                )
    return None


def _edge(found: Answer) -> float | None:
    """The included angle at which the surface of a calculation lies; nothing where it was not given."""
    one = found.inputs.get("included_angle")
    return one.value if one is not None and isinstance(one.value, float) else None


def _found(one: Answer, diameter: float, edge: float | None) -> Iterator[FoundRelief]:
    """What an earlier calculation found for the cams that it was given, surface by surface."""
    throws = throws_of(one)
    if one.result is None or not throws:
        return
    cam, name = one.sheet.role.cam, one.sheet.name
    if cam is None:
        return
    for surface, key in cam.gives:
        row = _nearest([row for row in one.result.rows if key in row.values], diameter, edge)
        if row is not None:
            yield FoundRelief(surface or one.surface, row.values[key], row.values["diameter"], name, throws)
    place, relief = one.inputs["diameter"].value, one.result.outputs.get("relief_angle")
    # Where it was made flat after all, the cam gave it nothing.
    if not cam.gives and isinstance(place, float) and relief is not None:
        yield FoundRelief(one.surface, relief, place, name, throws)


def _nearest(rows: Sequence[Row], diameter: float, edge: float | None) -> Row | None:
    """The row of a diameter, else the nearest; of several shoulders that which lies at the angle, then the weakest."""
    fitting = [
        row for row in rows
        if edge is None or "included_angle" not in row.values or abs(row.values["included_angle"] - edge) < NEAR
    ]  # fmt: skip
    return min(
        fitting,
        key=lambda row: (
            round(abs(row.values["diameter"] - diameter) / NEAR),
            row.values.get("shoulder_relief_angle", 0.0),
        ),
        default=None,
    )


def throws_of(found: Answer) -> str:
    """The throws of the cams that a calculation was given, in words; empty where it was given none."""
    said = [
        f"{one.text}{where}"
        for key, where in THROWS.items()
        if (one := found.inputs.get(key)) is not None and one.value != 0
    ]
    return " and ".join(said)


def told(relief: FoundRelief, value: Value | None = None) -> Check:
    """Which relief is counted with, in which view, and where it was found; a watch where another was wanted than it is.

    Args:
        relief: that is counted with.
        value: what the book says of the wanted one: within its range no other relief is a watch.
    """
    surface = SURFACES[relief.surface]
    says = "Counted with {found} on {surface}, {plane}: what the cam of {throws} gives by {source}"
    parts: dict[str, Amount | str] = {
        "found": angle(max(relief.relief, 0.0)),
        "surface": relief.where or f"the {surface.title}",
        "plane": PLANES[surface.view],
        "throws": relief.throws,
        "source": _spoken(relief.source),
    }
    if relief.wanted is None or show_angle(relief.wanted) == show_angle(relief.relief):
        return note(says + ".", **parts)
    parts["wanted"] = angle(relief.wanted)
    if allowed := within(value, relief.relief):
        return note(says + "; {wanted} was wanted: {range}.", **parts, range=allowed)
    if end := past(value, relief.relief):
        says, parts["past"] = says + ", {past}", end
    return watch(
        says + "; {wanted} was wanted. Change its throws there, or grind and inspect by it.", **parts
    )


def _spoken(name: str) -> str:
    """A calculation in the words of its title, as a part of a sentence."""
    title = calculation(name).title
    return f"'{title[:1].lower()}{title[1:]}'"


def by_found(found: Answer, relief: FoundRelief) -> ByCam | None:
    """What the chosen cams give beside what is wanted, where the readings are counted with a relief found before."""
    if found.result is None or relief.wanted is None:
        return None
    values = {key: one.value for key, one in found.inputs.items()} | {"relief_angle": relief.wanted}
    try:
        heel = run(found.sheet, values).outputs.get("heel_drop")
    except Refusal:
        heel = None
    return ByCam(relief.throws, relief.relief, relief.wanted, found.result.outputs["heel_drop"], heel)
