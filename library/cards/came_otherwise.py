"""A tool that came with another angle of its shape than it shall have: what has to be ground away for it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from geometry.quantities import quantity
from geometry.sentences import Kind
from library.cards.edge_set import NEAR
from library.cards.job import Job
from library.cards.reading_issues import card_issue
from library.cards.shall_be import number_of
from library.issue import Issue
from library.units.show import show

SHAPES: Mapping[str, str] = {"included_angle": "cone", "point_angle": "point", "bevel_angle": "bevel lead"}
"""The angles of the shape of a tool, each with what is ground anew where it shall be another."""


def came_otherwise(job: Job) -> Iterator[Issue]:
    """A watch in the line of each wanted angle of the shape that the tool did not come with.

    Of several readings the nearest counts, for a tool with steps has more than one cone.

    Args:
        job: the card worked out.
    """
    for key, what in SHAPES.items():
        value = job.entry.values.get(key)
        wanted = value.usual.number if value is not None and value.usual is not None else None
        readings = [number_of(text, key, job) for text in job.card.received.get(key, ())]
        found = [one for one in readings if one is not None]
        if wanted is None or not found:
            continue
        came = min(found, key=lambda one: abs(one - wanted))
        if abs(came - wanted) > NEAR + 1e-9:
            was, shall = (show(one, Kind.ANGLE, job.display) for one in (came, wanted))
            yield card_issue(
                f"wanted.{key}",
                f"{quantity(key).title}: it came with {was}, {shall} is wanted: the whole {what} is ground anew. "
                f"If it keeps its shape, want {was}.",
                "warning",
            )
