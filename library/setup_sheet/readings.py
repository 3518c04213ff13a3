"""The readings on the setup sheet: found on the tool, the indicator from edge to heel, tables, and boxes to fill in."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from geometry.calculation import Station
from geometry.edge.views import PLANES
from geometry.quantities import QUANTITIES, quantity
from geometry.role import HEEL
from geometry.sentences import Kind, Rounding
from geometry.surfaces import SURFACES
from library.cards.asked_after import asked_after
from library.cards.each_step import STEP, each_step, place_of
from library.cards.flute_count import flute_count
from library.cards.heels import OtherHeel, other_heels, read_at
from library.cards.inspecting import PER_FLUTE, Mark, received_reliefs, reliefs_after, verdicts
from library.cards.job import Job
from library.cards.last_facet import title_after
from library.cards.model import Inspection
from library.cards.provenance import joined
from library.cards.read_order import steps_read
from library.cards.reading_units import each_in
from library.cards.shall_be import DROPS, indicator_said, wanted_each, wanted_limits, wanted_number
from library.cards.step import Step
from library.cards.still_to_measure import NOT_MEASURED
from library.cards.untold_relief import barred, is_untold
from library.cards.wanted_limits import Limits
from library.pages.answer import rows
from library.pages.page import Block, Boxes, BoxRow, Facts, Said, Table
from library.pages.station_table import DIVISIONS, stations
from library.pages.unit_in_head import shorter
from library.setup_sheet.across import fitting
from library.setup_sheet.lead_beside import read_here
from library.setup_sheet.where_read import surfaces_read
from library.units.over_a_hundred import title_over
from library.units.show import show, show_end
from library.units.system import Display

MOST_BOXES = 12
"""Boxes in one row; a tool with more flutes is read at the ones that matter."""

ON_THE_WAY, UNCOUNTED = 6, 3
"""Boxes at each place on the way from the edge to the heel: at most so many, which fit across; so many where nobody counted the flutes."""

DROPS_READ = frozenset({"drop", "radial_drop", "square_drop", "axial_drop"})
"""What is read on a surface that is ground, flute by flute."""


def received_angles(job: Job, display: Display) -> list[tuple[str, str]]:
    """The relief that was on the tool, flute by flute; where nobody knows its form, for each in one line, as paper is short."""
    if is_untold(job):
        return [("Relief found", f"not told, {barred(job)}")]
    found = received_reliefs(job)
    forms = list(dict.fromkeys(form for one in found for form in one.angles))
    told = {form: ", ".join(_angle(one.angles.get(form), display) for one in found) for form in forms}
    if len(told) > 1:
        return [
            (f"Relief found{_of_surface(job)}", "; ".join(f"{form} {text}" for form, text in told.items()))
        ]
    return [(f"Relief found{_of_surface(job)} ({form})", text) for form, text in told.items()]


def _of_surface(job: Job) -> str:
    """Of which surface a relief is, in which view; empty where nobody can tell."""
    surface = SURFACES.get(job.choice.surface)
    return f", {surface.title}, {PLANES[surface.view]}" if surface is not None else ""


def _angle(angle: float | None, display: Display) -> str:
    return "-" if angle is None else show(angle, Kind.ANGLE, display)


def on_the_way(job: Job, display: Display) -> Iterator[Table]:
    """The indicator readings, side by side where calculations turn the tool over the same land; else one table below another.

    Behind each place stand boxes for what is read there, one where that is the lead of a thread alone. At the edge nothing is read: there the indicator is set to zero.
    """
    # What is read on the surface that is ground comes first; of another one reading is enough.
    merged = sorted(_merged(job), key=lambda one: "drop" not in one.stations[0].readings)
    few = min(_flutes(job) or UNCOUNTED, ON_THE_WAY)
    for one in merged:
        found = one.stations
        name = surfaces_read(job, one.steps, read_here(found[0].readings), display)
        others = [] if "drop" not in found[0].readings else list(_others(job, one))
        table = stations(
            _read([*found, *(at for _, at in others)]), display, job.machine, name, indicator_said(job)
        )
        if table is not None:
            table = _titled(table, [other.title for other, _ in others])
            table = _with_divisions_once(table) if len(merged) > 1 else table
            boxes = few if len(merged) == 1 or not DROPS_READ.isdisjoint(found[0].readings) else 1
            closed = _closed(table, [one for one, _ in others], boxes)
            yield fitting(replace(shorter(table), boxes=boxes, closed=closed))


def more_flutes(job: Job) -> Iterator[Block]:
    """Where the flutes are written for which there are no boxes on the way; nothing where all have theirs."""
    flutes, first = _flutes(job) or 0, ON_THE_WAY + 1
    if flutes >= first:
        those = f"Flute {flutes}" if flutes == first else f"Flutes {first} to {flutes}"
        yield Said((f"{those}: as 1 to {ON_THE_WAY}; write them in the notes.",))


def _closed(table: Table, others: Sequence[OtherHeel], boxes: int) -> frozenset[tuple[int, int]]:
    """Where nothing is written: at the heel of the widest land by flutes with another, and the other way round."""
    first = len(table.rows) - len(others)
    elsewhere = {flute for one in others for flute in one.flutes}
    if boxes < 2 or not others or len(elsewhere) == boxes:
        return frozenset()
    own = {first - 1: {*range(1, boxes + 1)} - elsewhere} | {
        first + place: {*one.flutes} for place, one in enumerate(others)
    }
    return frozenset(
        (row, box - 1) for row, flutes in own.items() for box in range(1, boxes + 1) if box not in flutes
    )


def _with_divisions_once(table: Table) -> Table:
    """The table with the divisions of its first reading alone, so that it stands beside another."""
    divisions = [place for place, head in enumerate(table.heading) if head.startswith(DIVISIONS)]
    kept = [place for place in range(len(table.heading)) if place not in divisions[1:]]
    rows = tuple(tuple(row[place] for place in kept) for row in table.rows)
    spare = tuple(kept.index(place) for place in table.spare if place in kept)
    return Table(tuple(table.heading[place] for place in kept), rows, spare)


def _read(found: Sequence[Station]) -> list[Station]:
    """What is read on the way; at the edge nothing is."""
    return [replace(one, readings=read_here(one.readings)) for one in found if one.fraction > 0]


def _flutes(job: Job) -> int | None:
    """How many flutes the tool is indexed by; nothing where nobody can tell."""
    count = flute_count(job)
    return count.number if count is not None else None


def _titled(table: Table, titles: Sequence[str]) -> Table:
    """The table with its last rows under their own titles."""
    if not titles:
        return table
    own = zip(titles, table.rows[-len(titles) :], strict=True)
    return replace(table, rows=(*table.rows[: -len(titles)], *((title, *row[1:]) for title, row in own)))


def _others(job: Job, one: _Alike) -> Iterator[tuple[OtherHeel, Station]]:
    """The heels of flutes with another land, each with all that is read in this table."""
    for other in other_heels(job):
        found = [at for step in one.steps if (at := read_at(job, step, other)) is not None]
        readings = {key: value for at in reversed(found) for key, value in at.readings.items()}
        if found and one.stations[0].readings.keys() <= readings.keys():
            yield other, Station(found[0].fraction, found[0].angle, readings)


@dataclass
class _Alike:
    """Calculations that turn the tool over the same land, with what they read at each place together."""

    stations: list[Station]
    steps: list[Step]


def _merged(job: Job) -> list[_Alike]:
    """The stations of all calculations; those with the same turning are laid side by side."""
    tables: list[_Alike] = []
    for step in steps_read(job):
        if step.answer.result is None:
            continue
        own = list(step.answer.result.stations)
        same = next((one for one in tables if _fit(one.stations, own)), None)
        if same is None:
            tables.append(_Alike(own, [step]))
            continue
        same.steps.append(step)
        same.stations = [
            Station(a.fraction, a.angle, {**a.readings, **b.readings})
            for a, b in zip(same.stations, own, strict=True)
        ]
    return tables


def _fit(one: list[Station], other: list[Station]) -> bool:
    if len(one) != len(other) or any(abs(a.angle - b.angle) > 1e-9 for a, b in zip(one, other, strict=True)):
        return False
    both = set(one[0].readings) & set(other[0].readings)
    return all(
        abs(a.readings[key] - b.readings[key]) <= 1e-9
        for a, b in zip(one, other, strict=True)
        for key in both
    )


def tables(job: Job, display: Display) -> Iterator[Block]:
    """The tables of those calculations whose answer is one, such as the steps of a step drill."""
    for step in job.steps:
        if (
            step.works
            and not step.stopped
            and step.answer.result
            and step.answer.result.rows
            and step.sheet.role.tabled
        ):
            table = rows(step.answer.result, display, f"{step.sheet.title}{_from_body(step, display)}")
            if table is not None:
                yield table


def _from_body(step: Step, display: Display) -> str:
    """From which body a tool is ground down, where it is."""
    body = step.answer.inputs.get("body_diameter")
    return (
        f", from {show(body.value, Kind.LENGTH, display)}"
        if body is not None and isinstance(body.value, float)
        else ""
    )


def boxes(job: Job, display: Display) -> Boxes | None:
    """A row of boxes for everything that is measured after grinding; at least the drop, where one was worked out."""
    flutes = min(_flutes(job) or 1, MOST_BOXES)
    rows = [_inspected(job, key, flutes, display) for key in boxed(job)]
    return Boxes(tuple(rows)) if rows else None


def boxed(job: Job) -> list[str]:
    """The quantities that are measured after grinding, the drop first where the card does not name it yet."""
    keys = [key for key in job.card.after if key in QUANTITIES]
    if DROPS.isdisjoint(keys) and wanted_number(job, "drop") is not None:
        keys.insert(0, "drop")
    return [*keys, *(one for one in asked_after(job) if keys and one not in {*keys, *DROPS})]


def _filled(job: Job, mark: Mark) -> str:
    """What stands in the box of a reading; where there is none a draft leaves it to the pencil, and a record says so."""
    if not mark.text.strip():
        return NOT_MEASURED if job.card.done else ""
    return f"{mark.text} {'ok' if mark.state == 'pass' else 'OFF' if mark.state == 'stop' else ''}".strip()


def _inspected(job: Job, key: str, flutes: int, display: Display) -> BoxRow:
    inspection = job.card.after.get(key, Inspection())
    marks = next((one.marks for one in verdicts(job) if one.key == key), ())
    filled = [_filled(job, mark) for mark in marks]
    wanted = _number(job, key, display)
    tolerance = inspection.tolerance.strip()
    sign = "" if not tolerance or tolerance[0] in "+-\u00b1" else "+/- "
    said = f"{wanted} {sign}{tolerance}".strip() if tolerance else wanted
    steps = each_step(job, key)
    each = flutes if key in PER_FLUTE else len(steps.sizes) if steps is not None and not filled else 1
    count = max(len(filled), each)
    came = joined(job.card.received.get(key, ()))
    readings = inspection.readings or ("",) * count
    place = STEP if steps is not None and place_of(job, key, readings) == STEP else ""
    return BoxRow(
        title_over(title_after(key, job), display), said, tuple([*filled, *[""] * count][:count]), came, place
    )


def _number(job: Job, key: str, display: Display) -> str:
    step = job.doing(HEEL)
    if key in DROPS and step is not None and step.stopped:
        return ""
    if each := wanted_each(job, key):
        return each_in(each, quantity(key).kind, display.unit(quantity(key).kind))
    number, limits, kind = wanted_number(job, key), wanted_limits(job, key), quantity(key).kind
    if number is None:
        return _limits_said(limits, kind, display) if limits is not None else ""
    return show(number, kind, display)


def _limits_said(limits: Limits, kind: Kind, display: Display) -> str:
    """A range, and whose it is where nobody wrote it."""
    worn = (
        f", worn down to {show_end(limits.worn, kind, display.unit(kind), Rounding.UP, fine=limits.fine)}"
        if limits.worn is not None
        else ""
    )
    whose = f" ({limits.whose}{worn})" if limits.whose else ""
    return f"{limits.said(kind, display)}{whose}"


def found_now(job: Job, display: Display) -> Iterator[Block]:
    """The relief that the readings after grinding stand for, and how far the flutes differ."""
    pairs = []
    found = reliefs_after(job)
    for form in dict.fromkeys(form for one in found for form in one.angles):
        told = ", ".join(_angle(one.angles.get(form), display) for one in found)
        pairs.append((f"Relief now{_of_surface(job)} ({form})", told))
    for verdict in verdicts(job):
        if verdict.spread is not None:
            spread = show(verdict.spread, quantity(verdict.key).kind, display)
            own = " by land" if verdict.each else ""
            pairs.append((f"Spread, {quantity(verdict.key).title.lower()}{own}", spread))
    if pairs:
        yield Facts(tuple(pairs))
