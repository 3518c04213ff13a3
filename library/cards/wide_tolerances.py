"""A tolerance that is too wide for what it stands beside, such as the wanted number itself typed once more in its line."""

from __future__ import annotations

from geometry.quantities import quantity
from geometry.surfaces import SURFACES
from library.cards.job import Job
from library.cards.model import Inspection
from library.cards.reading_units import shown_in, unit_read_in
from library.cards.shall_be import DROPS, wanted_each, wanted_limits, wanted_number
from library.cards.tolerances import Tolerance, tolerance
from library.cards.wanted_limits import Limits
from library.units.read import UnitError

OF_A_DIAMETER = 0.1
"""More of a diameter than this is no tolerance of one; common practice, no source."""

HALF = 0.5
"""So much of a drop or of a relief is hardly a tolerance of it; common practice, no source."""

WHOLE = 0.9
"""From so much of the number on it is that number once more, a little off perhaps, and nothing is judged by it; no source."""

DOUBTED = {
    "diameter": OF_A_DIAMETER,
    **dict.fromkeys(
        [*sorted(DROPS), "relief_angle", *(one.relief_key for one in SURFACES.values())], HALF - 1e-9
    ),
}
"""The share of the wanted number above which a tolerance is doubted, by quantity; of others, such as a rake that may be
wanted as 1 degree within 2, any may be meant. Nothing is doubted beside a number that is not above zero."""


def judges_nothing(key: str, wanted: float | None, limits: Limits | None, allowed: Tolerance | None) -> bool:
    """Whether a tolerance is about as large as the number that it stands beside, so that no reading passes by it.

    Args:
        key: the quantity.
        wanted: what it shall be, in mm or radians; nothing where a range is wanted or no number.
        limits: the range that it shall be in, where one is wanted.
        allowed: the tolerance; nothing where none was written.

    Example:
        >>> judges_nothing("drop", 0.65, None, Tolerance(0.66, 0.66))
        True
        >>> judges_nothing("drop", 0.65, None, Tolerance(0.05, 0.05))
        False
    """
    number = _number(wanted, limits)
    return key in DOUBTED and allowed is not None and number > 0 and _wider(allowed) >= WHOLE * number


def wide_tolerance(job: Job, key: str, found: Inspection) -> str:
    """What is said of a tolerance that hardly is one; empty where it may be meant.

    Args:
        job: the card worked out.
        key: the quantity.
        found: its readings, and the tolerance as written.
    """
    if key not in DOUBTED or not found.tolerance.strip():
        return ""
    kind = quantity(key).kind
    try:
        allowed = tolerance(found.tolerance, kind)
    except UnitError:
        return ""
    number = _number(min(wanted_each(job, key), default=wanted_number(job, key)), wanted_limits(job, key))
    if number <= 0 or _wider(allowed) <= DOUBTED[key] * number:
        return ""
    shown = shown_in(number, kind, unit_read_in((found.tolerance,), kind, job.display))
    if judges_nothing(key, number, None, allowed):
        much = f"is about as much as the {shown} wanted, or more: by it nothing is judged"
    elif key == "diameter":
        much = f"is more than a tenth of the {shown} wanted"
    else:
        much = f"is half of the {shown} wanted, or more"
    return (
        f"Tolerance of the {quantity(key).title.lower()}: {found.tolerance.strip()} {much}. The line within says how "
        "far off a reading may be; what it shall be has a line of its own."
    )


def _number(wanted: float | None, limits: Limits | None) -> float:
    """What a tolerance is held against: the wanted number, else the upper end of the range, else its lower one; else nothing."""
    if wanted is not None:
        return wanted
    return (limits.high or limits.low or 0.0) if limits is not None else 0.0


def _wider(allowed: Tolerance) -> float:
    """The wider side."""
    return max(allowed.minus, allowed.plus)
