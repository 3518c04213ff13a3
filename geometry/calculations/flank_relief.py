"""What relief the flanks of a thread get from the fall of the thread land, con-eccentric or eccentric."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from geometry.calculation import (
    AT_THE_WHEEL,
    Calculation,
    Check,
    Field,
    Inputs,
    Result,
    note,
    passed,
    stations,
    watch,
    worst_first,
)
from geometry.complaints import complaint, settled
from geometry.cures import way
from geometry.figure import Figure, curve
from geometry.plausible import land_plausible
from geometry.preconditions import refuse
from geometry.quantities import quantity
from geometry.role import Role
from geometry.sentences import Rounding, angle, length, ratio
from geometry.thread.flank import flank_gap, flank_relief, radial_of_flank, side_relief
from geometry.thread.form import form, thread
from geometry.thread.lead import lead, lead_angle
from geometry.thread.pitch_input import NOMINAL, basic_diameter, pitch_checks, pitch_of
from geometry.tooth.heel_advice import HAIR, READABLE
from geometry.tooth.land import land_angle


@dataclass(frozen=True)
class _Thread:
    """A thread land with its flanks.

    Attributes:
        radius: of the crests, in mm.
        flank: how far a flank leans from the plane square to the axis, in radians.
        pitch_radius: where the flanks are looked at, in mm.
        climbs: the lead angle there, in radians.
        turned: from edge to heel, in radians.
        margin: how far the land runs on the circle behind the edge, in radians.
        fall: toward the axis, in mm for each radian behind the margin.
    """

    radius: float
    flank: float
    pitch_radius: float
    climbs: float
    turned: float
    margin: float
    fall: float

    @property
    def relief(self) -> float:
        """Of the thread land at its crests, in radians."""
        return math.atan2(self.fall, self.radius)

    @property
    def at_pitch_line(self) -> float:
        """The relief square to the axis where the flanks are looked at, in radians."""
        return math.atan2(self.fall, self.pitch_radius)

    def drop(self, turned: float) -> float:
        """How far the crest has fallen, ``turned`` (rad) behind the edge, in mm."""
        return self.fall * max(0.0, turned - self.margin)

    def gap(self, turned: float) -> float:
        """How far a flank stands off, square to itself, in mm."""
        return flank_gap(self.drop(turned), self.flank, self.climbs)


def _flank(given: Inputs) -> float:
    if given.has("flank_angle"):
        return given.number("flank_angle")
    return form(given.choice("thread_form")).flank_angle / 2


def _has_pitch(given: Inputs) -> bool:
    return given.has("pitch") or given.has("threads_per_inch")


def _thread(given: Inputs) -> _Thread:
    diameter, flank = given.number("diameter"), _flank(given)
    pitch_radius, climbs = diameter / 2, 0.0
    if _has_pitch(given):
        pitch = pitch_of(given)
        pitch_radius = thread(basic_diameter(given), pitch, given.choice("thread_form")).pitch_diameter / 2
        climbs = lead_angle(lead(pitch, given.number("starts")), 2 * pitch_radius)
    turned = land_angle(given.number("land_width"), diameter, given.choice("land_measured_as"))
    margin = land_angle(given.number("margin_width"), diameter, "arc")
    if 0 < turned <= margin:
        raise refuse(
            "margin_width",
            "The part of the land on the circle, {margin}, takes up all of the land, which is {land} round the circle. Make it "
            "narrower than {land}.",
            {
                "margin": length(given.number("margin_width")),
                "land": length(turned * diameter / 2, Rounding.DOWN),
            },
        )
    fall = _fall(given, (flank, climbs), (diameter / 2, pitch_radius), turned - margin)
    # As if the flanks stood at the crests, so that no pitch brings what is refused here back.
    steepest = fall * diameter / 2 / (pitch_radius if given.has("flank_relief_angle") else diameter / 2)
    if steepest * (turned - margin) >= diameter / 2:
        raise refuse(
            _asked(given),
            "The relief is so steep that the heel would pass the centre of the tap. Choose less of it.",
        )
    return _Thread(diameter / 2, flank, pitch_radius, climbs, turned, margin, fall)


def _fall(given: Inputs, lies: tuple[float, float], radii: tuple[float, float], relieved: float) -> float:
    """The fall toward the axis for each radian (mm), from whichever way the relief was stated."""
    if given.has("relief_angle"):
        return radii[0] * math.tan(given.number("relief_angle"))
    if given.has("flank_relief_angle"):
        return radii[1] * math.tan(radial_of_flank(given.number("flank_relief_angle"), *lies))
    drop = given.number("crest_drop")
    if drop < 0:
        raise refuse(
            "crest_drop", "A heel that stands proud has no relief: the thread land rubs. Measure it again."
        )
    if relieved <= 0:
        raise refuse("land_width", "A land of no width has no heel to read. Measure the land.")
    return drop / relieved


def _asked(given: Inputs) -> str:
    return next(key for key in ("relief_angle", "flank_relief_angle", "crest_drop") if given.has(key))


def _lies(found: _Thread) -> Check:
    """Which angle it is, and what part of the fall reaches the flank."""
    return note(
        "The flank leans {flank} from the plane square to the axis, so {share} of what the crest falls comes square to the "
        "flank: that is the sine of this angle, not of the angle to the axis.",
        flank=angle(found.flank),
        share=ratio(flank_gap(1.0, found.flank, found.climbs)),
    )


def _more(given: Inputs, found: _Thread) -> Check:
    """The complaint about a fall that no indicator shows, with the relief that one would show."""
    enough = math.atan2(READABLE * (1 + HAIR) / (found.turned - found.margin), found.radius)
    ways = []
    if given.has("relief_angle") and enough <= quantity("relief_angle").high:
        says = "raise the relief to {enough} for a drop that can be read"
        ways.append(way(says, "relief_angle", "enough", angle(enough, Rounding.UP)))
    if given.has("flank_relief_angle"):
        there = math.atan(math.tan(enough) * found.radius / found.pitch_radius)
        flank = flank_relief(there, found.flank, found.climbs)
        says = "raise the flank relief to {flank} for a drop that can be read"
        ways.append(way(says, "flank_relief_angle", "flank", angle(flank, Rounding.UP)))
    return complaint(
        "watch",
        "The crest falls only {drop} to the heel, less than an indicator shows well.",
        ways,
        ["compare it with a new tap"],
        drop=length(found.drop(found.turned)),
    )


def _form(found: _Thread) -> Check:
    if found.fall == 0:
        return note(
            "Without relief the thread land is concentric: it guides the tap and does not lose its size, but the flanks rub in "
            "tough work."
        )
    if found.margin > 0:
        return note(
            "The land is con-eccentric: {margin} of {land} from the edge runs on the circle and guides; the flanks fall away "
            "behind that.",
            margin=angle(found.margin),
            land=angle(found.turned),
        )
    return note(
        "The land is eccentric from the edge on: it guides little, and every grinding of the face takes a little off the size."
    )


def _verdict(given: Inputs, found: _Thread) -> Iterator[Check]:
    if found.turned == 0:
        yield watch("The land has no width, so there is nothing to fall away. Measure the land.")
        return
    yield from land_plausible(found.turned)
    if found.fall > 0 and found.drop(found.turned) < READABLE * (1 - HAIR):
        yield _more(given, found)
    elif found.fall > 0 and found.gap(found.turned) > 0:
        yield passed(
            "At the heel the crest has fallen {drop} and each flank stands {gap} off the thread, square to itself.",
            drop=length(found.drop(found.turned)),
            gap=length(found.gap(found.turned)),
        )
    elif found.fall > 0:
        yield watch("The flank stands square to the axis and gets no relief from a fall toward it: it rubs.")
    yield _form(found)


def _checks(given: Inputs) -> tuple[Check, ...]:
    found = _thread(given)
    doubts = pitch_checks(given) if _has_pitch(given) else ()
    return worst_first((*doubts, *_verdict(given, found), _lies(found)))


def _compute(given: Inputs) -> Result:
    found = _thread(given)
    outputs = {
        "flank_relief_angle": flank_relief(found.at_pitch_line, found.flank, found.climbs),
        "relief_angle": found.relief,
        "flank_side_angle": side_relief(found.at_pitch_line, found.flank),
        "crest_drop": found.drop(found.turned),
        "flank_gap": found.gap(found.turned),
        "land_angle": found.turned,
    }
    corners = (found.margin,) if found.margin > 0 else ()
    name = "con-eccentric" if found.margin > 0 else "eccentric"
    figure = Figure(found.radius, found.turned, (curve(name, found.turned, found.drop, corners),))
    result = Result(
        outputs,
        stations(found.turned, {"drop": found.drop, "flank_gap": found.gap}),
        checks=_checks(given),
        figure=figure if found.turned > 0 else None,
    )
    return settled(result, given, lambda other, _: _checks(other))


CALCULATION = Calculation(
    name="flank-relief",
    title="Flank relief of a thread land",
    question="How much relief do the flanks of the thread get from the thread land, and what does the indicator show of it?",
    wants="The diameter is the tap's over its crests, and the land and the part of it on the circle are measured there. The "
    "relief is that of the thread land square to the axis, that of the flank square to itself, or what the indicator on the "
    "crest reads at the heel. With the pitch, the flanks are looked at on the pitch diameter and along the lead.",
    neglects="It takes the whole profile as falling evenly toward the axis behind the part on the circle, and both flanks as "
    "leaning alike; what the flanks need by work material is in no source that was read.",
    kinds=("tap",),
    surfaces=("thread-land",),
    beside=True,
    inputs=(
        Field("diameter"),
        Field("pitch", one_of="pitch", optional=True),
        Field("threads_per_inch", one_of="pitch", optional=True),
        Field("starts", default=1.0),
        Field("thread_form", default="iso"),
        NOMINAL,
        Field("flank_angle", optional=True),
        Field("land_width"),
        Field("land_measured_as", default="arc"),
        Field("margin_width", default=0.0),
        Field("relief_angle", one_of="relief"),
        Field("flank_relief_angle", one_of="relief"),
        Field("crest_drop", one_of="relief", measured=True),
    ),
    outputs=(
        "flank_relief_angle",
        "relief_angle",
        "flank_side_angle",
        "crest_drop",
        "flank_gap",
        "land_angle",
    ),
    cautions=(*AT_THE_WHEEL, "sharp-edges"),
    compute=_compute,
    role=Role(place=122, of_course=(), about="flank_relief_angle", tells=("pass", "note")),
    sample={
        "diameter": 12.0,
        "pitch": 1.75,
        "land_width": 3.2,
        "margin_width": 1.0,
        "relief_angle": math.radians(2),
    },
)
