"""The form of a relief that was read, flat or eccentric: as the tool came, and as it left."""

from __future__ import annotations

from collections.abc import Mapping

from library.cards.chosen import END, INCLINED, METHOD
from library.cards.job import Job
from library.cards.provenance import joined


def form_as_it_came(job: Job) -> str:
    """The form of the relief that a tool came with: as found on it, else the usual one; empty where nobody can tell.

    What is wanted now says nothing of it. The usual form is what the book has, and of the same job again what was wanted,
    where that is no other; what the book has is the form of the land, and an end is made as the machine makes it.

    Args:
        job: the card worked out.
    """
    found = joined(job.card.received.get("relief_form", ()))
    if found:
        return found
    wanted = job.card.wanted.get("relief_form")
    if job.choice.surface == END:
        is_decided = METHOD in job.choice.by_person or (wanted is not None and wanted.changed)
        return "" if is_decided else job.choice.form
    if wanted is not None:
        return "" if job.card.again and wanted.changed else wanted.book.strip()
    return _usual_form(job)


def form_as_it_left(job: Job) -> str:
    """The form of the relief after grinding: as it was made, or as it is wanted where that is not the book's; else as found or wanted.

    Args:
        job: the card worked out.
    """
    by_person = METHOD in job.choice.by_person
    if by_person or job.choice.method == INCLINED:
        return job.choice.form
    wanted = job.card.wanted.get("relief_form")
    found = joined(job.card.received.get("relief_form", ()))
    if found and not (wanted is not None and wanted.changed):
        return found
    return job.choice.form if job.choice.surface == END else _usual_form(job)


def _usual_form(job: Job) -> str:
    """The form of what the tool shall have; empty where nobody says it."""
    usual = job.entry.values.get("relief_form")
    return usual.usual.word if usual is not None and usual.usual is not None else ""


def by_form(outputs: Mapping[str, float], form: str) -> dict[str, float]:
    """The relief in radians by its form: one where the form is known, else what it would be for each.

    Args:
        outputs: of the calculation that finds a relief from a reading, angles in radians.
        form: of the relief; empty where nobody can tell it.

    Example:
        >>> by_form({"relief_angle": 0.1}, "flat"), by_form({"flat_relief_angle": 0.1, "drop": 0.2}, "")
        ({'flat': 0.1}, {'flat': 0.1})
    """
    if "relief_angle" in outputs:
        return {form or "relief": outputs["relief_angle"]}
    names = {f"{one}_relief_angle": one for one in ("eccentric", "flat")}
    return {names[key]: value for key, value in outputs.items() if key in names}
