"""Whether a tool is under size after grinding, and the least diameter at which it is still of use."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.calculations import calculation_doing
from geometry.role import LASTING
from geometry.sentences import Kind
from library.cards.each_step import each_step
from library.cards.inspecting import SLACK
from library.cards.job import Job
from library.cards.reading_issues import card_issue
from library.cards.reading_units import shown_in, unit_read_in
from library.cards.shall_be import greatest_number, number_of, wanted_number
from library.cards.tolerances import tolerance
from library.issue import Issue, Severity
from library.units.read import UnitError


def under_size_issues(job: Job, severity: Severity) -> Iterator[Issue]:
    """That a diameter after grinding is less than the tool must have, for each reading.

    Args:
        job: the card worked out.
        severity: how heavy a fault after grinding weighs.
    """
    found = job.card.after.get("diameter")
    least = least_diameter(job)
    if found is None or least is None:
        return
    unit = unit_read_in(found.readings, Kind.LENGTH, job.display)
    # What is asked of a tool with steps as a whole is asked of the largest of them.
    largest = greatest_number(job, "diameter", found.readings) if each_step(job) is not None else None
    for flute, text in enumerate(found.readings, 1):
        size = number_of(text, "diameter", job)
        if size is not None and size < least * (1 - SLACK) and (largest is None or size == largest):
            yield card_issue(
                "after.diameter",
                f"The tool is now under size: {text} is less than the {shown_in(least, Kind.LENGTH, unit)} it "
                "must have. Measure it again; if it is so, grind it down to another size or scrap it, and say so in the result.",
                severity,
                flute if len(found.readings) > 1 else 0,
            )


def least_diameter(job: Job) -> float | None:
    """The smallest diameter at which the tool is still of use, in mm: as given, or by the tolerance of its size."""
    setting = job.card.settings.get(calculation_doing(LASTING).name)
    texts = [setting.typed.get("least_diameter", "") if setting else "", job.known_text("least_diameter")]
    if "least_diameter" in job.card.wanted:
        texts.append(job.card.wanted["least_diameter"].value)
    for text in texts:
        found = number_of(text, "least_diameter", job)
        if found is not None:
            return found
    inspection = job.card.after.get("diameter")
    wanted = wanted_number(job, "diameter")
    if inspection is None or wanted is None or not inspection.tolerance.strip():
        return None
    try:
        return wanted - tolerance(inspection.tolerance, Kind.LENGTH).minus
    except UnitError:
        return None
