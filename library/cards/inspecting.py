"""Inspection: the relief behind each reading, and whether each flute passes after grinding."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import zip_longest
from typing import Literal

from geometry.calculation import Field, State
from geometry.calculations import calculation_doing
from geometry.complaints import untried
from geometry.figure import undrawn
from geometry.quantities import QUANTITIES, quantity
from geometry.role import FOUND, HEEL
from geometry.sentences import Kind
from geometry.surfaces import SURFACES
from library.calc.of_several import AT_THE_POINT
from library.calc.wording import by_title
from library.cards.chosen import POINTS, SURFACE
from library.cards.each_step import FLUTE, place_of
from library.cards.edge_wanted import edge_wanted
from library.cards.first_step import diameter_at_point
from library.cards.heels import heels, widest_of
from library.cards.job import Job
from library.cards.model import Inspection, Readings
from library.cards.provenance import greatest, joined, of_all_steps
from library.cards.read_order import is_broken, reads_facets
from library.cards.reading_units import shown_in, unit_read_in
from library.cards.relief_form import by_form, form_as_it_came, form_as_it_left
from library.cards.shall_be import DROPS, relief_key, wanted_each, wanted_limits, wanted_number
from library.cards.tolerances import Tolerance, tolerance
from library.cards.untold_relief import barred
from library.cards.wanted_limits import Limits
from library.cards.wide_tolerances import judges_nothing
from library.once import once
from library.units.read import UnitError, read
from library.units.several import bare_commas

PER_FLUTE = frozenset({"drop", "second_drop", "heel_drop", "land_width", "relief_angle", "secondary_relief_angle",
                       "rake_angle", "hook_angle", "margin_width", "primary_land",
                       *(one.relief_key for one in SURFACES.values()),
                       *(one.second_key for one in SURFACES.values())})  # fmt: skip
"""Quantities of which every flute has its own, so that a missing reading is missed."""

SLACK = 1e-9
"""The share by which a reading may pass its limit: two texts for one number differ in their last bit."""


@dataclass(frozen=True)
class Relief:
    """The relief of one flute, from its reading.

    Attributes:
        flute: counted from 1.
        text: the drop as typed.
        angles: in radians, by form: one where the form is known, else what it would be for each.
        trouble: why there is no angle, a sentence; else empty.
    """

    flute: int
    text: str
    angles: dict[str, float]
    trouble: str = ""


@dataclass(frozen=True)
class Mark:
    """One reading after grinding, held against what is wanted.

    Attributes:
        flute: counted from 1.
        text: as typed.
        value: in mm or radians; nothing where it could not be read.
        state: pass, stop, or watch where it was not measured, or there is nothing to hold it against.
        text_off: how far it is outside the tolerance, in words; else empty.
        side: whether it is under or over what it may be; empty where it is neither.
    """

    flute: int
    text: str
    value: float | None
    state: State
    text_off: str = ""
    side: Literal["", "under", "over"] = ""


@dataclass(frozen=True)
class Verdict:
    """One quantity after grinding.

    Attributes:
        key: the quantity.
        wanted: what it shall be, in mm or radians; nothing where no limit is set.
        allowed: the tolerance; nothing where no limit is set, or one as large as the number beside it.
        marks: for each reading.
        spread: the greatest reading less the least, each less what it shall be where that is another for each flute;
            nothing with fewer than two.
        first_wanted: what it should have been, where it is judged by the cam that was chosen; else nothing.
        limits: the range that it shall be in, where one is wanted and no number; else nothing.
        each: what it shall be on each flute by its own land; nothing where one number serves all.
        first_each: the same of what it should have been.
        place: what each of several readings is one of: a flute, or a step of a tool with steps.
    """

    key: str
    wanted: float | None
    allowed: Tolerance | None
    marks: tuple[Mark, ...]
    spread: float | None = None
    first_wanted: float | None = None
    limits: Limits | None = None
    each: tuple[float, ...] = ()
    first_each: tuple[float, ...] = ()
    place: str = FLUTE

    @property
    def may_be(self) -> Limits | None:
        """From where to where it passes, of the widest land where each flute has its own limits."""
        return self._round(self.wanted)

    def wanted_of(self, flute: int) -> float | None:
        """What it shall be on a flute, counted from 1."""
        return self.each[flute - 1] if 0 < flute <= len(self.each) else self.wanted

    def may_be_of(self, flute: int) -> Limits | None:
        """From where to where it passes on a flute, counted from 1."""
        return self._round(self.wanted_of(flute))

    def _round(self, wanted: float | None) -> Limits | None:
        """The limits round a number; nothing where it is not judged. A range is a limit without a tolerance too."""
        allowed = self.allowed
        if wanted is not None:
            return Limits(wanted, wanted).widened(allowed.minus, allowed.plus) if allowed else None
        if self.limits is None:
            return None
        served = self.limits.served
        return served.widened(allowed.minus, allowed.plus) if allowed else served

    @property
    def state(self) -> State:
        """The worst of its marks."""
        states = {mark.state for mark in self.marks}
        return "stop" if "stop" in states else "watch" if "watch" in states or not states else "pass"


def reliefs(job: Job, drops: Readings, lands: Readings, diameter: str, form: str) -> tuple[Relief, ...]:
    """The relief angle of each flute from its drop, by the calculation that finds it from a reading.

    It is the relief of the surface of the job in the view in which that is given, read where the indicator points.

    Args:
        job: gives the surface with the angle of its edge, and how the land was measured.
        drops: the indicator readings, one for each flute.
        lands: how far behind the edge the indicator was read: one text for all flutes, or one for each.
        diameter: over the edges.
        form: of the relief; empty where nobody can tell it.
    """
    sheet = calculation_doing(FOUND)
    common = _common(job) | ({"relief_form": form} if form else {})
    if common.get(SURFACE) == AT_THE_POINT:
        diameter = diameter_at_point(job.card, job.entry, job.display) or diameter
    found = []
    for flute, (drop, land) in enumerate(zip_longest(drops, lands[: len(drops)], fillvalue=""), 1):
        behind = land or (lands[0] if len(lands) == 1 else "")
        typed = {"diameter": diameter, "drop": drop, "land_width": behind, **common}
        texts = {key: text for key, text in typed.items() if text}
        # Only the angles are told.
        with untried(), undrawn():
            known = job.answers.ask(sheet, texts)
        if known.result is None:
            # What cannot be read is the cause of what is missing, too: an angle of the edge follows from it.
            wrong = [one for one in known.issues if not one.missing]
            said = "" if wrong else edge_wanted(job, known.issues)
            said = said or parts_asked_for("drop", drops) or parts_asked_for("land_width", lands)
            said = said or " ".join(by_title(one.text) for one in wrong or known.issues)
            found.append(Relief(flute, drop, {}, said))
        else:
            found.append(Relief(flute, drop, by_form(known.result.outputs, form)))
    return tuple(found)


def parts_asked_for(key: str, readings: Readings) -> str:
    """What is asked where all that was measured stands in one text with bare commas; empty where nothing is.

    Args:
        key: of a quantity of which there are several readings.
        readings: as written.

    Example:
        >>> parts_asked_for("drop", ("26,26,25 thou",))[:41], parts_asked_for("drop", ("0,25 mm",))
        ("'26,26,25 thou' has commas without a blan", '')
    """
    only = readings[0].strip() if len(readings) == 1 else ""
    # Nothing that is measured on each flute is a whole 0: behind that a comma is a decimal one.
    return "" if only.startswith("0,") else bare_commas(quantity(key).kind, only)


def _common(job: Job) -> dict[str, str]:
    """What holds for every reading of a job: surface, angle of its edge, where the indicator points."""
    found = {key: text for key in ("land_measured_as", POINTS) if (text := job.known_text(key))}
    surface = SURFACES.get(job.choice.surface)
    if surface is not None:
        found[SURFACE] = surface.key
        edge = job.edge_text(surface.edge_key)
        found |= {surface.edge_key: edge} if edge else {}
    return found


@once
def received_reliefs(job: Job) -> tuple[Relief, ...]:
    """The relief that was on the tool as it came; none of a land with a margin, nor of one in facets, unless it is known to have fallen evenly."""
    received = job.card.received
    if barred(job):
        return ()
    came = received.get("diameter", ())
    came = of_all_steps(job.card, came) or came
    diameter = _greatest(job, came) or _greatest(job, (job.known_text("diameter"),))
    drops = received.get("drop") or received.get("heel_drop", ())
    return reliefs(job, drops, received.get("land_width", ()), diameter, form_as_it_came(job))


@once
def reliefs_after(job: Job) -> tuple[Relief, ...]:
    """The relief that is on the tool now, by land and diameter of now, or else as it came; none where several flats are read."""
    after, received = job.card.after, job.card.received
    drops = after.get("drop") or after.get("heel_drop")
    judged = job.doing(HEEL)
    in_facets = reads_facets(job) or (judged is not None and judged.sheet.role.replaces)
    if drops is None or in_facets or is_broken(job, is_even=True):
        return ()
    lands = after["land_width"].readings if "land_width" in after else received.get("land_width", ())
    decided = job.card.wanted.get("diameter")
    choices = (after["diameter"].readings if "diameter" in after else (), (decided.value if decided else "",),
               (job.to_be.text if job.to_be else "",), received.get("diameter", ()), (job.known_text("diameter"),))  # fmt: skip
    diameter = next((text for one in choices if (text := _greatest(job, one))), "")
    return reliefs(job, drops.readings, lands, diameter, form_as_it_left(job))


def _greatest(job: Job, readings: Readings) -> str:
    return greatest(joined(readings), Field("diameter"), job.display)


@once
def verdicts(job: Job) -> tuple[Verdict, ...]:
    """Every quantity that was measured after grinding, held against what is wanted."""
    return tuple(_verdict(job, key, one) for key, one in job.card.after.items() if key in QUANTITIES)


def _verdict(job: Job, key: str, found: Inspection) -> Verdict:
    kind = quantity(key).kind
    if kind is Kind.CHOICE:
        return Verdict(
            key, None, None, tuple(Mark(n, text, None, "pass") for n, text in enumerate(found.readings, 1))
        )
    judged = Verdict(key, wanted_number(job, key), _tolerance(found.tolerance, kind), (), None,
                     _first_wanted(job, key), wanted_limits(job, key), wanted_each(job, key),
                     place=place_of(job, key, found.readings))  # fmt: skip
    if judges_nothing(key, judged.wanted, judged.limits, judged.allowed):
        judged = replace(judged, allowed=None)
    if judged.each and judged.first_wanted is not None:
        found_heels = [one.first_wanted for one in heels(job)]
        judged = replace(judged, first_each=tuple(one for one in found_heels if one is not None))
    marks = tuple(_mark(number, text, judged, job) for number, text in enumerate(found.readings, 1))
    values = [
        # Of lands that are not alike the readings differ as the lands do; what the grinding did is beside their own.
        mark.value - (judged.wanted_of(mark.flute) or 0.0 if judged.each else 0.0)
        for mark in marks
        if mark.value is not None
    ]
    # The steps of a tool differ by intent.
    has_spread = len(values) > 1 and judged.place == FLUTE
    return replace(judged, marks=marks, spread=max(values) - min(values) if has_spread else None)


def _first_wanted(job: Job, key: str) -> float | None:
    """What was wanted of a quantity before the cam was chosen by which it is judged; nothing where it is that."""
    cam, inspection = job.by_cam, job.card.after.get(key)
    if cam is None or not cam.differs or (inspection is not None and inspection.wanted.strip()):
        return None
    if key in DROPS:
        found = heels(job)
        return widest_of(found).first_wanted if found else cam.wanted_heel
    return cam.wanted if key == relief_key(job) else None


def _tolerance(text: str, kind: Kind) -> Tolerance | None:
    try:
        return tolerance(text, kind) if text.strip() else None
    except UnitError:
        return None


def _mark(flute: int, text: str, judged: Verdict, job: Job) -> Mark:
    if not text.strip():
        return Mark(flute, text, None, "watch")
    kind, may_be = quantity(judged.key).kind, judged.may_be_of(flute)
    try:
        whole = quantity(judged.key).whole
        value = read(text, kind, job.display, unit_wanted=True, whole=whole).number
    except UnitError:
        return Mark(flute, text, None, "stop")
    if may_be is None:
        return Mark(flute, text, value, "watch")
    whose = judged.limits.whose if judged.limits is not None else ""
    limit = "the tolerance" if judged.allowed else f"the {whose}" if whose else "what is wanted"
    if may_be.low is not None and value < may_be.low - _slack(may_be.low):
        off = _size(may_be.low - value, kind, text, job)
        return Mark(flute, text, value, "stop", f"{off} under {limit}", "under")
    if may_be.high is not None and value > may_be.high + _slack(may_be.high):
        off = _size(value - may_be.high, kind, text, job)
        return Mark(flute, text, value, "stop", f"{off} over {limit}", "over")
    return Mark(flute, text, value, "pass")


def _slack(limit: float) -> float:
    return SLACK * max(abs(limit), 1e-3)


def _size(off: float, kind: Kind, text: str, job: Job) -> str:
    """How far off, in the unit of the reading, or only that it is, where that is less than can be shown."""
    shown = shown_in(off, kind, unit_read_in((text,), kind, job.display))
    return shown if any(sign in "123456789" for sign in shown) else "just"
