"""A tool with steps after grinding: its diameters are read step by step, the smallest first, and each is held against its own.

Derived from how such tools are made: a step drill, a subland drill and a counterbore have one circle for each step. What
is asked of the tool as a whole, such as the least diameter at which it still serves, is asked of its largest step.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from geometry.sentences import Kind
from library.cards.first_step import ALIKE
from library.cards.job import Job
from library.cards.model import Inspection, Readings
from library.cards.reading_units import each_in
from library.cards.setup_order import calculations_of
from library.cards.sizes import each_size, with_the_marked
from library.once import once
from library.units.read import UnitError, read, read_many
from library.units.system import Display

DIAMETER = "diameter"

STEP, FLUTE, READING = "step", "flute", "reading"
"""What a reading is one of, in words."""


@dataclass(frozen=True)
class EachStep:
    """The steps of a tool and what each of them shall measure.

    Attributes:
        sizes: as they are marked on the tool or were measured on it, in mm, the smallest first.
        shall_be: after grinding, in mm, in the same order; empty where nobody says it.
    """

    sizes: tuple[float, ...]
    shall_be: tuple[float, ...]

    def fits(self, readings: Readings) -> bool:
        """Whether as many readings were written as there are steps."""
        return len(readings) == len(self.sizes)


@once
def each_step(job: Job, key: str = DIAMETER) -> EachStep | None:
    """The steps of the tool of a card; nothing where it is known to have none, or of another quantity than its diameter.

    Args:
        job: the card worked out.
        key: the quantity that is asked about.
    """
    if key != DIAMETER:
        return None
    marked = _numbers(each_size(job.card.tool.size), job.display)
    sizes = marked if len(marked) > 1 else _measured(job)
    return EachStep(tuple(sorted(sizes)), _shall_be(job, sorted(marked), len(sizes))) if sizes else None


def place_of(job: Job, key: str, readings: Readings) -> str:
    """What each of some readings is one of: a flute; of the diameters of a tool with steps a step, where there are as many."""
    found = each_step(job, key)
    if found is None:
        return FLUTE
    return STEP if found.fits(readings) and not _falls(job, readings) else READING


def said_of(found: EachStep, display: Display) -> str:
    """The steps of a tool in words, such as `3 steps (6.000, 9.000, 12.000 mm)`."""
    return f"{len(found.sizes)} steps ({each_in(found.sizes, Kind.LENGTH, display.unit(Kind.LENGTH))})"


def wrong_with_steps(job: Job, readings: Readings) -> Iterator[str]:
    """What is wrong with the diameters of a tool with steps, in sentences without their subject: another number of them, or not rising.

    Args:
        job: the card worked out.
        readings: after grinding, as written.
    """
    found = each_step(job)
    if found is None or len(readings) < 2:
        return
    if not found.fits(readings):
        yield (
            f"there are {len(readings)} readings, and the tool has {said_of(found, job.display)}. Give one for each step, "
            "the smallest first, or the largest alone."
        )
        return
    if _falls(job, readings):
        yield "each step is larger than the one before. Write the smallest step first, or measure again."


def too_few_received(job: Job, readings: Readings) -> str:
    """What is said of a tool with steps that came with another number of diameters, without its subject; empty where each has its own.

    Args:
        job: the card worked out.
        readings: as received, as written.
    """
    found = each_step(job)
    given = len([one for one in readings if one.strip()])
    if found is None or given in {0, len(found.sizes)}:
        return ""
    has = "is 1 reading" if given == 1 else f"are {given} readings"
    serves = with_the_marked(readings, each_size(job.card.tool.size), job.display)
    follows = (
        f" Until then {'it counts for the step' if given == 1 else 'each counts for the step'} nearest to it, and the others count "
        "as they are marked."
        if serves
        else ""
    )
    return f"there {has}, and the tool has {said_of(found, job.display)}. Give one for each step, the smallest first.{follows}"


def wrong_with_shall_be(job: Job, inspection: Inspection) -> str | None:
    """What is wrong with a text that says what the steps shall measure, a sentence; empty where nothing is, nothing where it says no list and none is wanted."""
    found = each_step(job)
    if found is None or not inspection.wanted.strip():
        return None
    listed = listed_in(inspection.wanted, job.display)
    several = len(inspection.readings) > 1
    if len(listed) == len(found.sizes):
        rises = all(one < other for one, other in pairwise(listed))
        return "" if rises else "each step is larger than the one before. Write the smallest step first."
    if len(listed) < 2 and not several:
        return None
    has = "one number stands" if len(listed) < 2 else f"{len(listed)} numbers stand"
    return f"{has} there, and the tool has {said_of(found, job.display)}. Give one for each step, the smallest first."


def listed_in(text: str, display: Display) -> tuple[float, ...]:
    """The lengths that stand in a list, in mm; empty where a text is none, or one of them cannot be read.

    Example:
        >>> listed_in("5.95, 8.94, 11.93 mm", Display()), listed_in("at most 12 mm", Display())
        ((5.95, 8.94, 11.93), ())
    """
    try:
        return tuple(one.number for one in read_many(text, Kind.LENGTH, display)) if text.strip() else ()
    except UnitError:
        return ()


def _falls(job: Job, readings: Readings) -> bool:
    """Whether some step is no larger than the one before, as far as all of them can be read."""
    numbers = _numbers(readings, job.display)
    return len(numbers) == len(readings) and any(one >= other for one, other in pairwise(numbers))


def _shall_be(job: Job, marked: Sequence[float], count: int) -> tuple[float, ...]:
    """What each step shall measure: as written for the inspection, as on the day of a record, else as marked on the tool."""
    inspection = job.card.after.get(DIAMETER, Inspection())
    if inspection.wanted.strip() or job.card.done:
        said = inspection.wanted.strip() or inspection.judged_by
        listed = listed_in(said, job.display)
        return listed if len(listed) == count else ()
    decided = job.card.wanted.get(DIAMETER)
    largest = listed_in(decided.value, job.display) if decided is not None else ()
    if len(largest) == count:
        return largest
    return (*marked[:-1], largest[0]) if len(largest) == 1 and marked else tuple(marked)


def _measured(job: Job) -> list[float]:
    """The diameters that were measured on a tool as it came, where they are those of steps; none of a tool of one diameter."""
    if job.family is None or not any(
        one.role.only_several == DIAMETER for one in calculations_of(job.family)
    ):
        return []
    found = _numbers(job.card.received.get(DIAMETER, ()), job.display)
    return found if len(found) > 1 and min(found) < ALIKE * max(found) else []


def _numbers(texts: Sequence[str], display: Display) -> list[float]:
    """The lengths among some texts, in mm; none where one of them cannot be read."""
    try:
        return [read(text, Kind.LENGTH, display).number for text in texts if text.strip()]
    except UnitError:
        return []
