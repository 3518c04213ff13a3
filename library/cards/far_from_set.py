"""A drop at the heel that was written down as wanted, far from what the setting gives or from every reading."""

from __future__ import annotations

from geometry.quantities import quantity
from geometry.sentences import Kind
from library.cards.job import Job
from library.cards.model import Inspection
from library.cards.shall_be import heel_reading, number_of
from library.units.read import UnitError, read
from library.units.show import show

FAR = 0.25
"""The share by which a wanted drop may lie off what the setting gives before it is asked about: no indicator and no
grinder errs by so much; no source."""

MUCH = 4.0
"""How many times a wanted drop may be larger or smaller than the readings before it is asked about; no source."""


def far_from_set(job: Job, key: str, found: Inspection) -> str:
    """What is said of a drop that was written down as wanted and cannot be meant so; empty where it can.

    Args:
        job: the card worked out.
        key: the quantity.
        found: its readings, and what a person wrote that it shall be.
    """
    if key not in {"drop", "heel_drop"} or not found.wanted.strip():
        return ""
    wanted = _length(found.wanted, job)
    if wanted is None:
        return ""
    said = show(wanted, Kind.LENGTH, job.display)
    within = "A length that only says how far off it may be goes into the line within; empty this line then."
    heel = heel_reading(job)
    if heel is not None:
        if abs(wanted - heel) <= FAR * abs(heel):
            return ""
        given = show(heel, Kind.LENGTH, job.display)
        return f"The drop shall be {said} by this line, and what is set gives {given}. {within}"
    readings = [number for text in found.readings if (number := number_of(text, key, job)) is not None]
    if not readings or (min(readings) <= MUCH * abs(wanted) and abs(wanted) <= MUCH * max(readings)):
        return ""
    return f"The drop shall be {said} by this line, and {found.readings[0]} was read. {within}"


def _length(text: str, job: Job) -> float | None:
    try:
        return read(text, quantity("drop").kind, job.display).number
    except UnitError:
        return None
