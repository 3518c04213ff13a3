"""A tool that came smaller than it shall be after grinding: told as it is measured, before anybody grinds it."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.fit.reamer import READ
from geometry.sentences import Kind
from library.cards.each_step import each_step
from library.cards.inspecting import verdicts
from library.cards.job import Job
from library.cards.reading_issues import card_issue
from library.cards.reading_units import shown_in, unit_read_in
from library.cards.shall_be import greatest_number, wanted_limits
from library.issue import Issue

DIAMETER = "diameter"


def came_under_size(job: Job) -> Iterator[Issue]:
    """A watch on a diameter that is less already than it may be after grinding; of a tool with steps nothing is said.

    Args:
        job: the card worked out.
    """
    readings = job.card.received.get(DIAMETER, ())
    came, least = greatest_number(job, DIAMETER, readings), _least(job)
    if came is None or least is None or came >= least - READ or each_step(job) is not None:
        return
    unit = unit_read_in(readings, Kind.LENGTH, job.display)
    came_with, asked = (shown_in(one, Kind.LENGTH, unit) for one in (came, least))
    # Nobody typed on this card what was brought along from the one that it repeats.
    by = f", as card {job.card.again} had it" if job.card.again else ""
    yield card_issue(
        f"received.{DIAMETER}",
        f"Diameter: it came under size: {came_with} is less than the {asked} that it must have after grinding{by}. Measure it "
        "again; if it is so, say on After what it shall be now, or in the result what becomes of it.",
        "warning",
    )


def _least(job: Job) -> float | None:
    """The least that the diameter may be after grinding, in mm; nothing where no limit is set."""
    judged = next((one for one in verdicts(job) if one.key == DIAMETER), None)
    limits = wanted_limits(job, DIAMETER)
    may_be = judged.may_be if judged is not None else limits.served if limits is not None else None
    return may_be.low if may_be is not None else None
