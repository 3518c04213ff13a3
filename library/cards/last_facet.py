"""On which facet the heel of a job lies, where the surface that is ground has several."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.quantities import quantity
from geometry.role import FACETS, HEEL, HEIGHTS
from geometry.sentences import Kind
from library.cards.heels import heels
from library.cards.job import Job
from library.cards.read_order import surface_read
from library.cards.shall_be import DROPS
from library.units.show import show


@dataclass(frozen=True)
class LastFacet:
    """The facet behind all others.

    Attributes:
        number: counted from the edge.
        angle: in radians, as it is set.
    """

    number: int
    angle: float

    @property
    def said(self) -> str:
        """In words.

        Example:
            >>> LastFacet(2, 0.2443461).said
            'facet 2 (14.00 deg)'
        """
        return f"facet {self.number} ({show(self.angle, Kind.ANGLE)})"


def last_facet(job: Job) -> LastFacet | None:
    """The facet on which the heel lies; nothing with a single one, or where lands that are not alike end on several.

    Args:
        job: the card worked out.
    """
    step = job.doing(HEEL)
    if step is not None and step.works and step.sheet.role.rows in {FACETS, HEIGHTS}:
        rows = step.answer.result.rows if step.answer.result is not None else ()
        several = len(rows) > 1 and not heels(job)
        return LastFacet(len(rows), rows[-1].values["facet_angle"]) if several else None
    for one in job.steps:
        second = one.answer.inputs.get(one.sheet.role.facets_by)
        if one.works and second is not None and surface_read(job, one) == job.choice.surface:
            return LastFacet(2, second.value) if isinstance(second.value, float) else None
    return None


def title_after(key: str, job: Job) -> str:
    """What a quantity is called after grinding; the drop at the heel with its facet, where there are several.

    Args:
        key: the quantity.
        job: the card worked out.
    """
    facet = last_facet(job) if key in DROPS else None
    return f"{heel_or_title(key)}, facet {facet.number}" if facet is not None else heel_or_title(key)


def heel_or_title(key: str) -> str:
    """The title of a quantity on the page After, where the drop is that at the heel.

    Example:
        >>> heel_or_title("drop"), heel_or_title("diameter")
        ('Indicator drop at the heel', 'Diameter')
    """
    return quantity("heel_drop" if key == "drop" else key).title
