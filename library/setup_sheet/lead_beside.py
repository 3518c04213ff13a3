"""The lead of a thread over the land where the drop is read: told in a line, so that the boxes are for one reading alone."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from geometry.calculation import Station
from geometry.edge.readings import POINTS
from geometry.quantities import quantity
from library.calc.wording import STATIONS
from library.cards.job import Job
from library.cards.read_order import steps_read, title_read
from library.pages.page import Said
from library.pages.station_table import OTHER_SIDES
from library.units.show import show, show_bare
from library.units.system import Display

DROP, LEAD = "drop", "lead_over_land"

KIND = quantity(LEAD).kind


def read_here(readings: Mapping[str, float]) -> dict[str, float]:
    """What is read at a place: the drop alone where it is, for there is one row of boxes to write in.

    What the same place shows from another side stands in the calculator.

    Example:
        >>> read_here({"drop": 0.1, "lead_over_land": 0.02}), read_here({"lead_over_land": 0.02})
        ({'drop': 0.1}, {'lead_over_land': 0.02})
    """
    is_told = OTHER_SIDES | {LEAD} if DROP in readings else frozenset()
    return {key: value for key, value in readings.items() if key not in is_told}


def lead_said(job: Job, display: Display) -> Iterator[Said]:
    """The lead at each place where the drop is read there as well; nothing where it has a table of its own.

    Args:
        job: worked out.
        display: the units.
    """
    read = [step.answer.result.stations for step in steps_read(job) if step.answer.result is not None]
    drops = [found for found in read if found and DROP in found[0].readings]
    for step in steps_read(job):
        found = step.answer.result.stations if step.answer.result is not None else ()
        if not found or LEAD not in found[0].readings:
            continue
        turned = [one.angle for one in found]
        if any(_alike(turned, [one.angle for one in other]) for other in drops):
            first, *others = (one for one in found if one.fraction > 0)
            told = [f"{show(first.readings[LEAD], KIND, display)} {_at(first)}"]
            told += [f"{show_bare(one.readings[LEAD], KIND, display)} {_at(one)}" for one in others]
            where = f"indicator {POINTS['axial']}, on the {title_read(job, step)}"
            yield Said((f"Lead, no box, {where}: {', '.join(told)}.",))


def _at(one: Station) -> str:
    place = STATIONS.get(one.fraction, f"{one.fraction:.2f}")
    return f"at the {place}" if place.isalpha() else f"at {place}"


def _alike(one: list[float], other: list[float]) -> bool:
    return len(one) == len(other) and all(abs(a - b) <= 1e-9 for a, b in zip(one, other, strict=True))
