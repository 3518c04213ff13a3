"""What was written down as wanted after grinding, far from what the setting gives or from every reading."""

from __future__ import annotations

from geometry.quantities import QUANTITIES, quantity
from geometry.sentences import Kind
from library.calc.ranges import read_range
from library.cards.job import Job
from library.cards.model import Inspection
from library.cards.plausible_readings import implausible
from library.cards.shall_be import DROPS, heel_reading, number_of
from library.units.read import UnitError, read
from library.units.show import say, show

FAR = 0.25
"""The share by which a wanted drop may lie off what the setting gives, and any other number off every reading, before it
is asked about: no indicator and no grinder errs by so much; no source."""

MUCH = 4.0
"""How many times a wanted drop may be larger or smaller than the readings before it is asked about; no source."""


def far_from_set(job: Job, key: str, found: Inspection) -> str:
    """What is said of a number that was written down as wanted and cannot be meant so; empty where it can.

    A drop is held against what the setting gives. Any other number is held against what was read, and the diameter first
    against the size of the tool; where a tolerance stands beside it, each reading is judged by that.

    Args:
        job: the card worked out.
        key: the quantity.
        found: its readings, and what a person wrote that it shall be.
    """
    if key in QUANTITIES and found.wanted.strip():
        if key in DROPS:
            return _far_from_heel(job, key, found)
        return "" if found.tolerance.strip() else _far_from_read(job, key, found)
    return ""


def _far_from_heel(job: Job, key: str, found: Inspection) -> str:
    """The same of a drop at the heel, by what the setting gives there."""
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


def _far_from_read(job: Job, key: str, found: Inspection) -> str:
    """The same of a number that nothing is set for, such as a diameter."""
    kind = quantity(key).kind
    wanted = number_of(found.wanted, key, job) if read_range(key, found.wanted) is None else None
    if wanted is None or kind not in {Kind.LENGTH, Kind.ANGLE}:
        return ""
    for one in implausible(job, key, (found.wanted,)):
        return f"The {quantity(key).title.lower()} shall be {found.wanted} by this line. {say(one.check.sentence, job.display)}"
    readings = [number for text in found.readings if (number := number_of(text, key, job)) is not None]
    if not readings or any(abs(one - wanted) <= FAR * max(abs(one), abs(wanted)) for one in readings):
        return ""
    return (
        f"The {quantity(key).title.lower()} shall be {show(wanted, kind, job.display)} by this line, and "
        f"{found.readings[0]} was read. Correct the one or the other, or say in the line within how far off it may be."
    )


def _length(text: str, job: Job) -> float | None:
    try:
        return read(text, quantity("drop").kind, job.display).number
    except UnitError:
        return None
