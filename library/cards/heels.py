"""The heel of each flute, where lands were measured flute by flute: what it reads by its own land.

A cam falls evenly, so that a narrow land ends before the indicator has fallen as far as on a wide one; neither is a
fault. What is set and read on the way is that of the widest land, for it rubs first.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from geometry.calculation import Given, Station
from geometry.complaints import untried
from geometry.evaluate import Refusal, run
from geometry.figure import undrawn
from geometry.preconditions import GeometryError
from geometry.quantities import quantity
from geometry.role import FACETS, HEEL
from geometry.sentences import Kind
from geometry.tooth.land import land_angle
from library.cards.cams import ByCam
from library.cards.job import Job
from library.cards.model import Readings
from library.cards.reading_units import each_in
from library.cards.step import Step
from library.units.read import UnitError, read
from library.units.system import Display

LAND = "land_width"
"""How far the heel lies behind the edge."""

OWN = (LAND, "margin_width", "primary_land")
"""What of a land every flute has its own of, and what its heel reads hangs on."""

SAME = 1e-9
"""Heels (mm, rad) nearer than this are one."""


@dataclass(frozen=True)
class Heel:
    """The heel of one flute by its own land.

    Attributes:
        flute: counted from 1.
        at: how far the tool is turned to it, and what is read there.
        first_wanted: the drop there for the wanted relief, where another is ground by a cam; else nothing.
    """

    flute: int
    at: Station
    first_wanted: float | None = None

    @property
    def drop(self) -> float:
        """What the indicator reads, in mm."""
        return self.at.readings["drop"]

    def same_as(self, other: Station) -> bool:
        """Whether it lies where another does, and reads the same there."""
        return abs(self.at.angle - other.angle) <= SAME and abs(self.drop - other.readings["drop"]) <= SAME


def heels(job: Job) -> tuple[Heel, ...]:
    """The heel of every flute of which something was measured that is its own.

    Lands that were measured again after grinding hold from then on. A flute whose land was left open counts as the widest.

    Args:
        job: the card worked out.

    Returns:
        One for each, in their order; nothing where one number serves all, as it stands in the calculation.
    """
    step = job.doing(HEEL)
    if step is None or not step.works or step.answer.result is None or not step.answer.result.stations:
        return ()
    own = own_lands(job, step)
    if not own:
        return ()
    found = job.answers.remembered_of(step.answer, ("heels", own), lambda: _heels(job, step, own))
    widest = step.answer.result.stations[-1]
    return () if all(one.same_as(widest) for one in found) else found


def own_lands(job: Job, step: Step) -> tuple[tuple[tuple[str, float], ...], ...]:
    """What each flute has its own of, as a calculation takes it: flute by flute, pairs of quantity and number (mm).

    Nothing where every flute has what the calculation counts with.
    """
    texts = {key: found for key in OWN if (found := _measured(job, step, key))}
    count = max((len(one) for one in texts.values()), default=0)
    numbers = [
        tuple(
            (key, value) for key, one in texts.items() if (value := _number(job, key, one, place)) is not None
        )
        for place in range(count)
    ]
    return tuple(numbers) if any(numbers) else ()


def _measured(job: Job, step: Step, key: str) -> Readings:
    """The readings of a quantity that a calculation counts with: of after grinding, else those before it where it took them."""
    if key not in step.answer.inputs:
        return ()
    after = job.card.after.get(key)
    if after is not None and any(one.strip() for one in after.readings):
        return after.readings
    found = job.card.received.get(key, ())
    return found if step.provenance.get(key) == "measured" and len(found) > 1 else ()


def _number(job: Job, key: str, texts: Readings, place: int) -> float | None:
    """The reading of a flute in mm, of one for all that one; nothing where it has none, or it cannot be read."""
    text = texts[0] if len(texts) == 1 else texts[place] if place < len(texts) else ""
    try:
        return read(text, quantity(key).kind, job.display).number
    except UnitError:
        return None


def _heels(job: Job, step: Step, own: tuple[tuple[tuple[str, float], ...], ...]) -> tuple[Heel, ...]:
    assert step.answer.result is not None
    widest, cam = step.answer.result.stations[-1], job.by_cam
    found = []
    for flute, lands in enumerate(own, 1):
        at = heel_by(step, dict(lands)) or widest
        found.append(Heel(flute, at, _first_wanted(step, dict(lands), cam) if cam is not None else None))
    return tuple(found)


def heel_by(step: Step, lands: Mapping[str, float]) -> Station | None:
    """What is read at the heel of another land than that which a calculation counts with; nothing where it has no answer.

    Args:
        step: a calculation that reads over a land.
        lands: what is other, in mm.
    """
    result = step.answer.result
    values = _values(step)
    if result is not None and result.profile is not None and step.sheet.role.rows == FACETS:
        # The facets are planned once, for the widest land, and set for all: a narrow one ends on them before.
        diameter, across = values["diameter"], values["land_measured_as"]
        if LAND not in lands or not isinstance(diameter, float) or not isinstance(across, str):
            return None
        try:
            turned = land_angle(lands[LAND], diameter, across)
        except GeometryError:
            return None
        return Station(1.0, turned, {"drop": result.profile(turned)})
    return _last(step, values | {key: value for key, value in lands.items() if key in values})


def _first_wanted(step: Step, lands: Mapping[str, float], cam: ByCam) -> float | None:
    """The drop at the heel of such a land for the relief that was wanted before the cam was chosen."""
    values: dict[str, Given] = {key: one for key, one in _values(step).items() if key != "chosen_throw"}
    found = _last(step, values | dict(lands) | {"relief_angle": cam.wanted})
    return found.readings.get("drop") if found is not None else None


def _values(step: Step) -> dict[str, Given]:
    return {key: one.value for key, one in step.answer.inputs.items()}


def _last(step: Step, values: Mapping[str, Given]) -> Station | None:
    try:
        with untried(), undrawn():
            found = run(step.sheet, values)
    except Refusal:
        return None
    return found.stations[-1] if found.stations else None


def at_each_heel(job: Job, display: Display, *, first: bool = False) -> str:
    """What is read at the heel of each flute, the unit once; empty where one number serves all.

    Args:
        job: the card worked out.
        display: the units of lengths.
        first: what the wanted relief would have read there, where another is ground by a cam.
    """
    numbers = [one.first_wanted if first else one.drop for one in heels(job)]
    known = [one for one in numbers if one is not None]
    return each_in(known, Kind.LENGTH, display.unit(Kind.LENGTH)) if len(known) == len(numbers) else ""


def widest_of(found: tuple[Heel, ...]) -> Heel:
    """The heel of the widest land, the first of several."""
    return max(found, key=lambda one: (one.at.angle, -one.flute))


@dataclass(frozen=True)
class OtherHeel:
    """The heel of flutes whose land is another than that of the readings on the way.

    Attributes:
        flutes: their numbers.
        of: any one of them.
        title: in a few words, such as ``heel of 1, 2``.
    """

    flutes: tuple[int, ...]
    of: Heel
    title: str


MOST_TOLD = 3
"""Other heels that stand below the readings on the way; of more, each has what it shall read after grinding alone."""


def land_read(job: Job) -> str:
    """Of which flute the land is that the readings on the way are of; empty where all are alike.

    Example: ``widest land, flute 3``.
    """
    found = heels(job)
    if not found:
        return ""
    step = job.doing(HEEL)
    counted = step.answer.result.stations[-1] if step is not None and step.answer.result is not None else None
    flute = next((one.flute for one in found if counted is not None and one.same_as(counted)), 0)
    return f"widest land, flute {flute}" if flute else "land before grinding"


def other_heels(job: Job) -> tuple[OtherHeel, ...]:
    """The heels that lie elsewhere than that of the readings on the way, like ones together; nothing of very many."""
    step, found = job.doing(HEEL), heels(job)
    if step is None or step.answer.result is None:
        return ()
    groups: list[list[Heel]] = []
    for one in found:
        if not one.same_as(step.answer.result.stations[-1]):
            same = next((group for group in groups if one.same_as(group[0].at)), None)
            same.append(one) if same is not None else groups.append([one])
    return tuple(_other(group, len(found)) for group in groups) if len(groups) <= MOST_TOLD else ()


def _other(group: list[Heel], count: int) -> OtherHeel:
    flutes = tuple(one.flute for one in group)
    title = f"heel of {', '.join(map(str, flutes))}" if count > 1 else "heel now"
    return OtherHeel(flutes, group[0], title)


def read_at(job: Job, step: Step, other: OtherHeel) -> Station | None:
    """What another calculation over the same land reads at the heel of other flutes; nothing where it does not hang on it."""
    own = own_lands(job, step)
    flute = other.flutes[0]
    return heel_by(step, dict(own[flute - 1])) if flute <= len(own) else None
