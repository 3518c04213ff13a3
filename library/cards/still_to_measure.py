"""What is measured after grinding, and whether any of it was: a card without a reading says nothing of the tool."""

from __future__ import annotations

from collections.abc import Iterator

from library.cards.job import Job
from library.cards.model import Card
from library.cards.provenance import SET_RIGHT, joined

INSPECTED = ("drop", "diameter")
"""What is measured on every tool after it was ground."""

NOT_MEASURED = "not measured"
"""What stands where one flute or step of several has no reading."""


def still_to_measure(card: Card) -> tuple[str, ...]:
    """What is measured on every tool after grinding, while nothing at all was; empty as soon as there is a reading.

    Example:
        >>> still_to_measure(Card())
        ('drop', 'diameter')
    """
    is_measured = any(text.strip() for one in card.after.values() for text in one.readings)
    return () if is_measured else INSPECTED


def inspected(job: Job) -> tuple[str, ...]:
    """What is measured after this job, in its order: on every tool, what it shall be rid of, what its calculations make."""
    faults = (key for key in SET_RIGHT if joined(job.card.received.get(key, ())))
    return (*INSPECTED, *faults, *dict(given_to_make(job)))


def given_to_make(job: Job) -> Iterator[tuple[str, float]]:
    """What the calculations of a job were given that is measured after grinding, such as the dish of an end, in mm or radians."""
    for step in job.steps:
        for key in step.sheet.role.inspects if step.works else ():
            given = step.answer.inputs.get(key)
            if given is not None and isinstance(given.value, float) and given.value:
                yield key, given.value
