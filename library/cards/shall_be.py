"""What a quantity shall be after grinding: as written for the inspection, as on the day it was closed, as wanted, or as found."""

from __future__ import annotations

import math
from dataclasses import replace

from geometry.calculation import Field
from geometry.edge.readings import POINTS
from geometry.edge.surface_input import READ_IN, READING_KEYS
from geometry.quantities import quantity
from geometry.quantities.limits import LIMITS
from geometry.role import HEEL
from geometry.sentences import Kind
from geometry.surfaces import SURFACES
from library.calc.ranges import read_range
from library.cards.at_machine import worked_of
from library.cards.each_step import STEP, EachStep, each_step, place_of
from library.cards.editing import readings_of
from library.cards.heels import heels, widest_of
from library.cards.job import Job
from library.cards.model import Inspection, Readings
from library.cards.of_that_day import heel_then
from library.cards.provenance import greatest, joined
from library.cards.read_order import steps_read, surface_read
from library.cards.still_to_measure import given_to_make
from library.cards.wanted_limits import Limits, limits_of
from library.once import once
from library.units.read import Reading, UnitError, read
from library.units.show import show

DROPS = frozenset({"drop", "heel_drop"})
"""What is read at the heel after grinding."""


OF_THE_HOLE = "limits of the reamer, hole "
"""Begins whose limits those of a reamer are; behind it stands the class of the hole."""


def relief_key(job: Job) -> str:
    """The key of the relief of the surface that is ground; empty where nobody can tell it."""
    surface = SURFACES.get(job.choice.surface)
    return surface.relief_key if surface is not None else ""


@once
def wanted_number(job: Job, key: str) -> float | None:
    """What a quantity shall be after grinding: as written for the inspection, as wanted, or as worked out.

    Args:
        job: the card worked out.
        key: the quantity; the drop is that of the heel, as it was found for the job, by the widest land.

    Returns:
        In mm or radians, or nothing where no limit is set, or where a range is wanted.
    """
    each = wanted_each(job, key)
    steps = each_step(job, key)
    if steps is not None:
        return _of_largest(job, steps, each)
    if not each:
        return _for_all(job, key)
    found = heels(job)
    place = widest_of(found).flute - 1 if found else 0
    return each[place] if place < len(each) else max(each)


@once
def wanted_each(job: Job, key: str) -> tuple[float, ...]:
    """What the heel of each flute shall read by its own land, flute by flute; of a tool with steps the diameter of each.

    Args:
        job: the card worked out.
        key: the quantity; any but the drop at the heel and the diameter of steps has one number for all.

    Returns:
        In mm; nothing where one number serves all.
    """
    steps = each_step(job, key)
    if steps is not None:
        readings = job.card.after.get(key, Inspection()).readings
        return steps.shall_be if not readings or place_of(job, key, readings) == STEP else ()
    if key not in DROPS:
        return ()
    then = _wanted_then(job, key)
    if then:
        found = readings_of(then)
        return tuple(read(one, Kind.LENGTH, job.display).number for one in found) if len(found) > 1 else ()
    if _is_said(job.card.after.get(key)) or _is_decided(job, key):
        return ()
    found_heels = heels(job)
    if any(one.drop < 0 for one in found_heels):
        return ()
    # To the digits that are shown: what stands on the sheet is what a reading is held against.
    return tuple(_as_shown(job, one.drop) for one in found_heels) if len(found_heels) > 1 else ()


def _of_largest(job: Job, steps: EachStep, each: tuple[float, ...]) -> float | None:
    """What the largest step shall measure; nothing where so many diameters were written that nobody knows whose they are."""
    if each:
        return max(each)
    if len(job.card.after.get("diameter", Inspection()).readings) > 1:
        return None
    return max(steps.shall_be) if steps.shall_be else _for_all(job, "diameter")


def wanted_of_flute(job: Job, key: str, flute: int) -> float | None:
    """What a quantity shall be on a flute, counted from 1; that of all where it has none of its own."""
    each = wanted_each(job, key)
    return each[flute - 1] if 0 < flute <= len(each) else wanted_number(job, key)


def _is_decided(job: Job, key: str) -> bool:
    """Whether the card wants a number or a range of the quantity itself."""
    decided = job.card.wanted.get(key)
    text = decided.value if decided else ""
    return read_range(key, text) is not None or _number_written(job, key, text) is not None


def _as_shown(job: Job, number: float) -> float:
    return read(show(number, Kind.LENGTH, job.display), Kind.LENGTH, job.display).number


def _for_all(job: Job, key: str) -> float | None:
    kind, then = quantity(key).kind, _wanted_then(job, key)
    if then:
        return None if read_range(key, then) is not None else read(then, kind, job.display).number
    inspection, decided = job.card.after.get(key), job.card.wanted.get(key)
    of_cam = job.by_cam if key == relief_key(job) else None
    if of_cam is not None and not _is_said(inspection):
        return of_cam.given
    for text in (inspection.wanted if inspection else "", decided.value if decided else ""):
        if read_range(key, text) is not None:
            return None
        found = _number_written(job, key, text)
        if found is not None:
            return found.number if not found.per_diameter else _share(job, found.number)
    if key == "diameter" and job.to_be is not None and _of_reamer(job) is None:
        return job.to_be.number
    heel = heel_reading(job) if key in DROPS else None
    return dict(given_to_make(job)).get(key) if heel is None else _as_shown(job, heel)


def heel_reading(job: Job) -> float | None:
    """What the indicator reads at the heel by what is set, in mm; nothing where no calculation of the job tells it.

    Of a heel that would stand proud nothing is told: nobody grinds to it. On a work head that is the reading of the calculation that sets the head for the surface that is ground.
    """
    step = job.doing(HEEL)
    if step is not None:
        of_all = heels(job)
        found = step.answer.result.outputs if step.works and step.answer.result is not None else {}
        drop = of_all[0].drop if of_all else found.get("heel_drop")
        return None if drop is None or min((drop, *(one.drop for one in of_all))) < 0 else drop
    read_in = READ_IN[indicator_points(job)]
    for one in steps_read(job):
        if surface_read(job, one) == job.choice.surface and one.answer.result is not None:
            return one.answer.result.stations[-1].readings.get(READING_KEYS[read_in])
    return None


def indicator_points(job: Job) -> str:
    """Where the indicator points in this job: as chosen, else along the axis for a lip or an end, else at the axis.

    A cone of 180 degrees is a face, and is read as an end is.
    """
    surface = SURFACES.get(job.choice.surface)
    is_axial = surface is not None and surface.view == "axial"
    if surface is not None and surface.edge_key == "included_angle" and not is_axial:
        whole = number_of(job.edge_text(surface.edge_key), surface.edge_key, job)
        is_axial = whole is not None and math.isclose(whole, math.pi)
    return job.choice.points or ("along-the-axis" if is_axial else "at-the-axis")


def indicator_said(job: Job) -> str:
    """Where the indicator points in this job, in words, such as `along the axis`."""
    return POINTS[READ_IN[indicator_points(job)]]


def _number_written(job: Job, key: str, text: str) -> Reading | None:
    """What a text says that a quantity shall be, which may be a share of the diameter; nothing where it says no number."""
    kind = quantity(key).kind
    try:
        return read(text, kind, job.display, of_diameter=kind is Kind.LENGTH, unit_wanted=True)
    except UnitError:
        return None


def _share(job: Job, share: float) -> float | None:
    """A share of the diameter, in mm; nothing where that is not known."""
    diameter = number_of(job.known_text("diameter"), "diameter", job)
    return None if diameter is None else share * diameter


def _is_said(inspection: Inspection | None) -> bool:
    """Whether a person wrote for the inspection what the quantity shall be."""
    return inspection is not None and bool(inspection.wanted.strip())


def _wanted_then(job: Job, key: str) -> str:
    """What a quantity of a closed card was held against on its day; empty on a draft, or where nothing is recorded."""
    inspection = job.card.after.get(key)
    if not job.card.done or _is_said(inspection):
        return ""
    text = inspection.judged_by if inspection is not None else ""
    text = text or (heel_then(job) if key in DROPS else "")
    kind = quantity(key).kind
    try:
        if read_range(key, text) is None:
            read_then = [
                read(one, kind, job.display) for one in (readings_of(text) if key in DROPS else (text,))
            ]
            if key in DROPS and any(one.number < 0 for one in read_then):
                return ""
        return text
    except UnitError:
        return ""


@once
def wanted_limits(job: Job, key: str) -> Limits | None:
    """The range that a quantity shall be in after grinding: as written for the inspection, else as wanted.

    Args:
        job: the card worked out.
        key: the quantity.

    Returns:
        Nothing where a number is wanted, or no limit is set.
    """
    if wanted_number(job, key) is not None:
        return None
    inspection, decided = job.card.after.get(key), job.card.wanted.get(key)
    if each_step(job, key) is not None and inspection is not None and len(inspection.readings) > 1:
        return None
    texts = (
        inspection.wanted if inspection else "",
        _wanted_then(job, key),
        decided.value if decided else "",
    )
    diameter = number_of(job.known_text("diameter"), "diameter", job)
    found = next((found for text in texts if (found := limits_of(key, text, diameter)) is not None), None)
    return found or (_of_reamer(job) if key == "diameter" else None)


def _of_reamer(job: Job) -> Limits | None:
    """The limits of a reamer for the hole that somebody named; nothing where none was named, for then they are assumed."""
    limits, is_named = _for_a_hole(job)
    return limits if is_named else None


def presumed_limits(job: Job) -> Limits | None:
    """The limits of a reamer for a hole that nobody named, under the name of that; they judge nothing.

    Nothing where a hole was named, or where it is wanted otherwise what the reamer shall measure.
    """
    limits, is_named = _for_a_hole(job)
    is_wanted = wanted_number(job, "diameter") is not None or wanted_limits(job, "diameter") is not None
    if limits is None or is_named or is_wanted:
        return None
    return replace(limits, whose=limits.whose.removeprefix(OF_THE_HOLE))


def _for_a_hole(job: Job) -> tuple[Limits | None, bool]:
    """The limits of a reamer for its hole, where they are worked out, and whether somebody named that hole."""
    step = job.answering("reamer_upper_limit")
    if step is None or not step.works or step.answer.result is None:
        return None, False
    hole = step.answer.inputs["hole_tolerance"]
    numbers = worked_of(step.answer)
    least = numbers.outputs.get("hole_lower_limit", numbers.values.get("hole_lower_limit"))
    named = hole.text if hole.value != LIMITS else "in numbers"
    found = Limits(numbers.outputs["reamer_lower_limit"], numbers.outputs["reamer_upper_limit"],
                   least if isinstance(least, float) else None, f"{OF_THE_HOLE}{named}", fine=True)  # fmt: skip
    return found, hole.origin != "default"


def greatest_number(job: Job, key: str, readings: Readings) -> float | None:
    """The greatest of several readings of a quantity, in mm or radians; nothing where none can be read."""
    return number_of(greatest(joined(readings), Field(key), job.display), key, job)


def number_of(text: str, key: str, job: Job) -> float | None:
    """The first number of a text for a quantity, in mm or radians; nothing where it cannot be read."""
    try:
        value = read((readings_of(text) or ("",))[0], quantity(key).kind, job.display).number
    except UnitError:
        return None
    return value if math.isfinite(value) else None
