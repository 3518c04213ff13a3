"""The step of a job card on which the tool is measured after grinding."""

from __future__ import annotations

from geometry.quantities import quantity
from geometry.sentences import Kind
from library.cards.asked_after import asked_after
from library.cards.each_step import each_step
from library.cards.job import Job
from library.cards.last_facet import last_facet, title_after
from library.cards.model import Inspection
from library.cards.read_order import reads_facets
from library.cards.reading_units import each_in
from library.cards.rubbing_heel import heel_rubs
from library.cards.shall_be import presumed_limits, wanted_each, wanted_limits, wanted_number
from library.units.grammar import example
from library.units.over_a_hundred import title_over
from library.units.show import show
from tui.view.card_quantity_rows import below_diameter, choice_row, known_keys, readings_hint
from tui.view.card_readings import in_short
from tui.view.card_row import Opened, Row

ALLOWED = {
    (Kind.LENGTH, "mm"): "0.02 mm, or +0 -0.03 mm",
    (Kind.LENGTH, "in"): "0.001 in, or +0 -0.001 in",
    (Kind.ANGLE, "mm"): "0.5 deg, or +1 -0 deg",
    (Kind.ANGLE, "in"): "0.5 deg, or +1 -0 deg",
}
"""How a tolerance may be written, as an example in the units that somebody works in."""

UNTOLD = "There are facets, and no reading is told for the heel. "
"""Begins what is said of the drop at a heel of which no calculation knows how deep its facet lies."""

RUBS = "The heel would rub, so that no reading is told for it: see the STOP on the page Set. "
"""Begins what is said of the drop at a heel that stands proud by what is set."""


def after_rows(job: Job, opened: Opened) -> list[Row]:
    """What is measured after grinding, each with its tolerance."""
    card = job.card
    return [
        row
        for key in known_keys(opened.of("after"), asked_after(job), card.after)
        for row in _inspected(job, key)
    ]


def _inspected(job: Job, key: str) -> list[Row]:
    row, one = quantity(key), job.card.after.get(key, Inspection())
    way, title = f"after.{key}", title_over(title_after(key, job), job.display)
    if row.kind is Kind.CHOICE:
        return [choice_row(way, title, one.readings[0] if one.readings else "")]
    wanted, limits = wanted_number(job, key), wanted_limits(job, key)
    said = limits.said(row.kind, job.display) if limits is not None else ""
    each = wanted_each(job, key)
    said = show(wanted, row.kind, job.display) if wanted is not None else said
    said = each_in(each, row.kind, job.display.unit(row.kind)) if each else said
    whose = f", the {limits.whose}" if limits is not None and limits.whose else ""
    shall = f"It shall be {said}{whose}. " if said else _untold(job, key)
    rows = [
        Row(
            way,
            title,
            in_short(key, one.readings),
            hint=shall + readings_hint(job, key),
            wants=not one.readings,
            below=below_diameter(job, key, one.readings),
        )
    ]
    shall_be = []
    steps = each_step(job, key)
    if not said or one.wanted or steps is not None:
        listed = (
            " One for each step, the smallest first, the unit after the last." if steps is not None else ""
        )
        shall_be.append(Row(f"{way}.wanted", "  shall be", one.wanted, hint=f"Such as {example(row.kind)}.{listed}",
                        wants=not said and bool(one.readings) and not (key == "drop" and heel_rubs(job))))  # fmt: skip
    without = "nothing is said to pass" if limits is None else "the range is the limit"
    such = ALLOWED.get((row.kind, job.display.lengths), "0.02 mm, or +0 -0.03 mm")
    within = f"How far off it may be: {such}. Without it {without}."
    if limits is not None and limits.whose:
        within = f"Leave it empty: the {limits.whose} hold. What stands here is allowed beyond them, such as {such}."
    rows.append(Row(f"{way}.tolerance", "  within", one.tolerance, hint=within,
                    wants=not one.tolerance and limits is None and bool(one.readings or wanted is not None)))  # fmt: skip
    # First how far off it may be, as after every drop: what is typed by habit must not become the wanted one.
    return [*rows, *shall_be]


def _untold(job: Job, key: str) -> str:
    """Why nothing is told that a quantity shall be: of the heel, and of a reamer whose hole nobody named; else empty."""
    presumed = presumed_limits(job) if key == "diameter" else None
    if presumed is not None:
        by = presumed.said(Kind.LENGTH, job.display)
        return f"Not judged: {presumed.whose} ({by}) is presumed; name the hole on Set. "
    if key != "drop":
        return ""
    if (facet := last_facet(job)) is not None and reads_facets(job):
        return f"The heel lies on {facet.said}; no reading is told there. "
    return UNTOLD if reads_facets(job) else RUBS if heel_rubs(job) else ""
