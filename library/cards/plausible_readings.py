"""Plausibility of readings: a diameter or a pitch against the nominal size of the tool."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from geometry.calculation import Check
from geometry.plausible import back_plausible, diameter_plausible, pitch_plausible
from geometry.quantities import quantity
from geometry.sentences import Kind
from library.book.model import Entry
from library.calc.taper_reamers import cuts_a_taper
from library.cards.job import Job
from library.cards.model import Readings
from library.cards.sizes import each_size
from library.cards.thread_names import by_its_name
from library.units.read import UnitError, read

BACK = "back_diameter"
"""What is held against the diameter at the front, as it was measured."""

JUDGED = frozenset({"diameter", "pitch", BACK})
"""What is held against the size of the tool."""


@dataclass(frozen=True)
class Implausible:
    """One reading that is hardly to be believed.

    Attributes:
        reading: which one, counted from 1.
        check: a watch or a stop, with what to do.
    """

    reading: int
    check: Check


def implausible(job: Job, key: str, readings: Readings) -> Iterator[Implausible]:
    """The readings of a quantity that do not go with the size of the tool; none where its size is not known.

    Of a step drill the step that is nearest counts. On a cone any circle may have been measured, so that a diameter
    is only held against the largest.

    Args:
        job: the card worked out.
        key: the quantity.
        readings: as typed; those that cannot be read are told elsewhere.
    """
    if key == BACK and _cuts_a_taper(job):
        return
    sizes = (tuple(_front(job)) if key == BACK else tuple(_sizes(job))) if key in JUDGED else ()
    for place, text in enumerate(readings, 1):
        value = _number(job, text, quantity(key).kind) if sizes else None
        if value is None or value <= 0:
            continue
        nearest = min(sizes, key=lambda size: abs(size - value) / size)
        if key == "diameter" and job.choice.surface == "cone" and value < nearest:
            continue
        if key == BACK:
            found = back_plausible(value, nearest)
        elif key == "diameter":
            found = diameter_plausible(value, nearest)
        else:
            found = pitch_plausible(value, max(sizes))
        yield from (Implausible(place, check) for check in found)


def _cuts_a_taper(job: Job) -> bool:
    """Whether the tool is as large at the back as its taper makes it; what a person calls his own tool decides nothing."""
    named = job.book.entries.get(job.card.entry) or Entry(job.card.entry, job.card.family, "")
    return cuts_a_taper(replace(named, values=job.entry.values), job.family)


def _front(job: Job) -> Iterator[float]:
    """The diameter at the front in mm, as it was measured, else what the tool is called by."""
    measured = [_number(job, text, Kind.LENGTH) for text in job.card.received.get("diameter", ())]
    found = [one for one in measured if one is not None and one > 0]
    yield from found or _sizes(job)


def _sizes(job: Job) -> Iterator[float]:
    """What the tool is called by, in mm: the sizes written of it, and the diameter that its thread's name says."""
    tool = job.card.tool
    named = [one.get("diameter", "") for one in by_its_name(job.card, job.book)]
    for text in (*each_size(tool.size), *named):
        size = _number(job, text, Kind.LENGTH)
        if size is not None and size > 0:
            yield size


def _number(job: Job, text: str, kind: Kind) -> float | None:
    try:
        return read(text, kind, job.display).number
    except UnitError:
        return None
