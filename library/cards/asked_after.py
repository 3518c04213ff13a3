"""What the page After asks for: what is measured on every tool, but for a reading that nothing could be held against."""

from __future__ import annotations

from library.cards.job import Job
from library.cards.last_facet import last_facet
from library.cards.model import Inspection
from library.cards.read_order import reads_facets
from library.cards.shall_be import DROPS, wanted_limits, wanted_number
from library.cards.still_to_measure import inspected


def asked_after(job: Job) -> tuple[str, ...]:
    """The quantities that are asked for after grinding, in their order.

    The drop at the heel is none of them where the heel lies on a second facet whose reading nobody can tell: its own relief
    is set, and how deep it lies hangs on how wide the first one was left.

    Args:
        job: the card worked out.
    """
    return tuple(key for key in inspected(job) if not (key in DROPS and _is_untold(job, key)))


def _is_untold(job: Job, key: str) -> bool:
    """Whether nothing tells what a drop at the heel shall be, as it lies on another facet than the one that is read."""
    if job.card.after.get(key, Inspection()) != Inspection():
        return False
    is_told = wanted_number(job, key) is not None or wanted_limits(job, key) is not None
    return not is_told and reads_facets(job) and last_facet(job) is not None
