"""What is read between edge and heel as a small table: the places side by side, each unit once."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from geometry.calculation import Station
from geometry.quantities import quantity
from geometry.role import HEEL
from geometry.sentences import Kind
from library.calc.wording import STATIONS
from library.cards.heels import OtherHeel, land_read, other_heels, read_at
from library.cards.inspecting import Verdict, verdicts
from library.cards.job import Job
from library.cards.read_order import step_read, steps_read, surface_read, title_read
from library.cards.reading_units import each_in, unit_read_in
from library.cards.shall_be import DROPS, indicator_said
from library.cards.step import Step
from library.equipment.settings import divisions_said, in_divisions
from library.pages.station_table import LEAD
from library.units.show import show

SAME_TURN = 1e-9
"""Angles (rad) nearer than this are one place of the indicator."""

LEAD_READ = "lead along the axis"
"""What the reading of a thread is called beside a drop, for which the indicator points elsewhere."""

FLAT_RISES = "The drop gets less again before the heel: on a flat facet that is right."
"""Told under the readings of a flat that is wide."""

SHOWN = 0.0005
"""Drops (mm) that differ by less are shown alike."""

SPARE = frozenset({"axial_drop", "radial_drop", "square_drop"})
"""Readings that are told only where no drop is, for they are the same thing seen otherwise."""


@dataclass(frozen=True)
class OnTheWay:
    """The readings of a job.

    Attributes:
        points: where the indicator points, in words.
        places: edge, quarters, heel.
        rows: a title, the unit of its numbers, and a number for each place.
        may_be: from where to where the last drop may be, without its unit; empty where it is not judged.
        read: what was read there, flute by flute.
        land: of which land they are, where the lands are not alike; else empty.
        at: the diameter of the step on which they are read, of a tool with steps; else empty.
        rises: why the drop gets less again before a heel that clears, where it does; else empty.
    """

    points: str
    places: tuple[str, ...]
    rows: tuple[tuple[str, str, tuple[str, ...]], ...]
    may_be: str = ""
    read: tuple[str, ...] = ()
    land: str = ""
    at: str = ""
    rises: str = ""


def on_the_way(job: Job) -> OnTheWay | None:
    """The readings of the calculation that a reading is held against, and of those that turn the tool alike.

    Returns:
        Nothing where nothing is read, or where it must not be ground as it stands.
    """
    step = job.doing(HEEL)
    if step is not None and step.in_use and step.stopped:
        return None
    read = steps_read(job)
    if not read or read[0].answer.result is None:
        return None
    own, at = read[0].answer.result.stations, step_read(job, read[0], job.display)
    rows = [("turned", *_turned(job, own))]
    told: set[tuple[str, str]] = set()
    apart: list[Step] = []
    alike: list[Step] = []
    for step in read:
        found = step.answer.result.stations if step.answer.result is not None else ()
        if _fits(own, found):
            rows += _rows(job, found, told, surface_read(job, step), _named(job, step, at))
            alike.append(step)
        elif [one.fraction for one in found] == [one.fraction for one in own]:
            apart.append(step)
    for step in apart:
        # Another land is turned further; its places are the same shares of it.
        found = step.answer.result.stations if step.answer.result is not None else ()
        name = _named(job, step, at)
        rows += [(f"{name}: turned", *_turned(job, found)), *_rows(job, found, set(), "", name)]
    rows += [row for one in other_heels(job) for row in _other_rows(job, one, alike, len(own) - 1)]
    may_be, seen = _judged(job)
    places = tuple(STATIONS.get(one.fraction, f"{one.fraction:.2f}") for one in own)
    return OnTheWay(indicator_said(job), places, tuple(rows), may_be, seen, land_read(job), at, _rises(own))


def _rises(own: Sequence[Station]) -> str:
    """Why the drop gets less again toward the heel: every flat does so where it is wide, and an even relief nowhere."""
    drops = [
        found
        for one in own
        if (
            found := next(
                (one.readings[key] for key in ("drop", *sorted(SPARE)) if key in one.readings), None
            )
        )
        is not None
    ]
    if not drops or drops[-1] <= 0 or max(drops) - drops[-1] < SHOWN:
        return ""
    return FLAT_RISES


def _named(job: Job, step: Step, first: str) -> str:
    """What is read by a calculation, and on which step, where that is another than the first one that is read."""
    at = step_read(job, step, job.display)
    return f"{title_read(job, step)} at {at}" if at != first else title_read(job, step)


def _other_rows(
    job: Job, other: OtherHeel, alike: Sequence[Step], before: int
) -> list[tuple[str, str, tuple[str, ...]]]:
    """What is read at the heel of other flutes, under that of the widest: every place before it is the same turn for all."""
    found = [at for step in alike if (at := read_at(job, step, other)) is not None]
    told: set[tuple[str, str]] = set()
    rows = [("turned", *_turned(job, found[:1]))] if found else []
    for at in found:
        rows += _rows(job, (at,), told, "", "")
    blank = ("",) * before
    titled = ((f"{other.title}: {title}" if title else "", unit, numbers) for title, unit, numbers in rows)
    return [(title, unit, (*blank, *numbers)) for title, unit, numbers in titled]


def _turned(job: Job, stations: Sequence[Station]) -> tuple[str, tuple[str, ...]]:
    return _column([show(one.angle, Kind.ANGLE, job.display) for one in stations])


def _fits(own: Sequence[Station], other: Sequence[Station]) -> bool:
    return len(own) == len(other) and all(
        abs(a.angle - b.angle) <= SAME_TURN for a, b in zip(own, other, strict=True)
    )


def _rows(
    job: Job, stations: Sequence[Station], told: set[tuple[str, str]], surface: str, name: str
) -> list[tuple[str, str, tuple[str, ...]]]:
    """What is read on one surface, each reading once, behind the name of that surface."""
    keys = [key for key in stations[0].readings if (surface, key) not in told]
    if "drop" in keys or (surface, "drop") in told:
        keys = [key for key in keys if key not in SPARE]
    rows = []
    for key in keys:
        told.add((surface, key))
        row = quantity(key)
        shown = [show(one.readings[key], row.kind, job.display) for one in stations]
        title = LEAD_READ if key == LEAD else row.title.lower().removeprefix("indicator ")
        title = f"{name}: {title.removeprefix('drop ')}" if name else title
        rows.append((title, *_column(shown)))
        graduation = job.machine.reading_graduation(key) if job.machine is not None else None
        if job.machine is not None and graduation is not None:
            divisions = [in_divisions(job.machine, key, one.readings[key]) or 0.0 for one in stations]
            rows.append(
                ("", f"x {graduation.division.text}", tuple(divisions_said(one) for one in divisions))
            )
    return rows


def _column(shown: Sequence[str]) -> tuple[str, tuple[str, ...]]:
    """The unit once, and the numbers without it."""
    units = {one.rpartition(" ")[2] for one in shown}
    if len(units) != 1 or not all(" " in one for one in shown):
        return "", tuple(shown)
    return units.pop(), tuple(one.rpartition(" ")[0] for one in shown)


def _judged(job: Job) -> tuple[str, tuple[str, ...]]:
    """From where to where the drop at the heel may be, and what was read there."""
    if DROPS.isdisjoint(job.card.after):
        return "", ()
    found = next((one for one in verdicts(job) if one.key in DROPS), None)
    if found is None:
        return "", ()
    may_be = found.may_be
    texts = tuple(mark.text for mark in found.marks)
    if may_be is None:
        return "", texts
    said, read_in = may_be.said(Kind.LENGTH, job.display), unit_read_in(texts, Kind.LENGTH, job.display)
    if found.each:
        return _each_may_be(found, read_in), texts
    if said and read_in != job.display.unit(Kind.LENGTH):
        said = f"{said} ({may_be.said_in(Kind.LENGTH, read_in)})"
    return said, texts


def _each_may_be(found: Verdict, unit: str) -> str:
    """From where to where the drop may be on each flute, in the unit of the readings; those that are alike together."""
    ends: dict[str, list[int]] = {}
    for flute in range(1, len(found.each) + 1):
        may_be = found.may_be_of(flute)
        low, high = (may_be.low or 0.0, may_be.high or 0.0) if may_be is not None else (0.0, 0.0)
        said = " to ".join(each_in((one,), Kind.LENGTH, unit).removesuffix(f" {unit}") for one in (low, high))
        ends.setdefault(said, []).append(flute)
    *others, (last, flutes) = ends.items()
    told = [f"{said} ({', '.join(map(str, of))})" for said, of in others]
    return ", ".join([*told, f"{last} {unit} ({', '.join(map(str, flutes))})"])
