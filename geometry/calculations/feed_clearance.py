"""The relief that the feed leaves along a drill's lip, the weakest place, and the largest feed that clears."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from geometry.calculation import (
    AT_THE_WHEEL,
    Calculation,
    Check,
    Field,
    Inputs,
    Result,
    Row,
    note,
    passed,
)
from geometry.complaints import complaint, settled
from geometry.cures import Step, Way, way
from geometry.drill import feed as feeding
from geometry.drill.point import chisel_edge_length
from geometry.drill.web import USUAL_SHARE
from geometry.edge.surface_input import edge_of, surface_fields
from geometry.preconditions import refuse
from geometry.quantities import quantity
from geometry.role import Role
from geometry.sentences import Rounding, angle, length, ratio
from geometry.surfaces import SURFACES

INNER_SHARE = USUAL_SHARE
"""Where the lip is taken to begin when nobody measured it, as a share of the diameter: about the thickness of a
web, so that no lip is thought to begin further out than it does; common practice, no source."""

NOT_MEASURED = "not-measured"
"""The word for a lip whose relief is known at its outer corner only."""

KEEP = math.radians(0.5)
"""The relief that advice leaves over: half a degree, what a common protractor shows; no source."""

FINEST_FEED = 0.005
"""The feed in mm per turn below which advice to feed slower is no use; no source."""

SERVED = ("lip", "end", "cone", "shoulder")
"""The surfaces that cut along the axis."""

PLACES = ("Outer corner", "A quarter in", "Half way in", "Three quarters in", "Inner end")


@dataclass(frozen=True)
class _Lip:
    """A lip with its relief.

    Attributes:
        outer: the diameter of the tool, in mm.
        inner: the diameter on which the lip begins, in mm.
        runs: how the relief goes inward.
        relief: the relief along the axis (rad) at a diameter (mm).
        as_given: turns a relief along the axis (rad) into the view in which the surface's is given.
    """

    outer: float
    inner: float
    runs: str
    relief: Callable[[float], float]
    as_given: Callable[[float], float]

    @property
    def ends(self) -> tuple[float, ...]:
        """The diameters at which the relief is known and can be judged."""
        return (self.outer,) if self.runs == NOT_MEASURED else (self.inner, self.outer)

    def left(self, diameter: float, feed: float) -> float:
        return self.relief(diameter) - feeding.feed_slope(feed, diameter)

    def weakest(self, feed: float) -> float:
        """The diameter where least is left: at an end, except on an even fall that drags."""
        if self.runs == "cam":
            return feeding.weakest_of_fall(self.largest_feed(), feed, self.inner, self.outer)
        return min(self.ends, key=lambda diameter: self.left(diameter, feed))

    def largest_feed(self, keeping: float = 0.0) -> float:
        """The feed that leaves ``keeping`` (rad) at the weaker end; 0 where there is no such feed."""
        ends = [(end, self.relief(end) - keeping) for end in self.ends]
        return min(feeding.largest_feed(max(left, 0.0), end) for end, left in ends)

    def raises(self, feed: float) -> list[tuple[str, str, float]]:
        """What relief to grind so that the feed leaves ``KEEP`` all along: key, place in words, angle."""
        inner, outer = (feeding.feed_slope(feed, end) + KEEP for end in (self.inner, self.outer))
        if self.runs == NOT_MEASURED:
            return [("relief_angle", "the relief at the outer corner", self.as_given(outer))]
        if self.runs == "constant":
            return [("relief_angle", "the relief", self.as_given(inner))]
        if self.runs == "cam":
            # The even fall loses most of its angle outside, so either end may ask for more.
            even = (
                math.atan(math.tan(inner) * self.inner / self.outer) if inner < math.pi / 2 else math.pi / 2
            )
            return [("relief_angle", "the relief at the outer corner", self.as_given(max(outer, even)))]
        ends = [
            ("relief_angle", "the relief at the outer corner", self.outer, outer),
            ("inner_relief_angle", "the relief at the inner end", self.inner, inner),
        ]
        return [
            (key, words, self.as_given(to) if key == "relief_angle" else to)
            for key, words, end, to in ends
            if self.relief(end) < to
        ]


def _along(given: Inputs) -> tuple[float, Callable[[float], float]]:
    """The relief along the axis (rad), and what turns such a one into the view in which the surface's is given."""
    relief = given.number("relief_angle")
    if SURFACES[given.choice("surface")].view == "axial":
        return relief, lambda found: found
    edge = edge_of(given)
    found = edge.seen(relief, "axial")
    if found is None:
        raise refuse(
            edge.surface.edge_key,
            "An edge along the axis does not cut along the axis, so no feed takes its relief. Measure its angle again.",
        )
    return found, lambda axial: edge.given(axial, "axial")


def _lip(given: Inputs) -> _Lip:
    relief, as_given = _along(given)
    outer, runs = given.number("diameter"), given.choice("lip_relief_runs")
    inner = given.number("inner_diameter") if given.has("inner_diameter") else _begins(given, outer)
    inner_relief = given.number_or("inner_relief_angle", relief)
    known = "constant" if runs == NOT_MEASURED else runs
    along = feeding.relief_along_lip(known, (outer, relief), (inner, inner_relief))
    return _Lip(outer, inner, runs, along, as_given)


def _begins(given: Inputs, outer: float) -> float:
    """The diameter (mm) on which the lip begins where nobody gave it: the chisel edge of the web, else the web itself."""
    if not given.has("web_thickness"):
        return INNER_SHARE * outer
    web = given.number("web_thickness")
    if given.has("chisel_edge_angle"):
        return chisel_edge_length(web, given.number("chisel_edge_angle"), outer)
    if web < outer:
        return web
    raise refuse(
        "web_thickness",
        "A web of {web} leaves no lip on a tool of {outer}. Measure both again.",
        {"web": length(web), "outer": length(outer)},
    )


def _ways(lip: _Lip, feed: float) -> list[Way]:
    """What to set so that ``KEEP`` is left all along the lip."""
    ways, slower, raises = [], lip.largest_feed(KEEP), lip.raises(feed)
    if slower >= FINEST_FEED:
        ways.append(way("feed {slower} per turn or less", "feed", "slower", length(slower, Rounding.DOWN)))
    if all(to <= quantity(key).high for key, _, to in raises):
        says = "raise " + " and ".join(f"{words} to {{{key}}}" for key, words, _ in raises)
        ways.append(Way(says, tuple(Step(key, key, angle(to, Rounding.UP)) for key, _, to in raises)))
    if not ways:
        steeper, finest = angle(2 * KEEP, Rounding.UP), feeding.largest_feed(KEEP, min(lip.ends))
        steps = [
            Step("relief_angle", "steeper", steeper),
            Step("feed", "slower", length(finest, Rounding.DOWN)),
        ]
        says = "raise the relief to {steeper} and feed {slower} per turn or less"
        if lip.runs == "rising":
            steps.append(Step("inner_relief_angle", "inner", steeper))
            says = "raise the relief to {steeper}, at the inner end to {inner}, and feed {slower} per turn or less"
        ways.append(Way(says, tuple(steps)))
    return ways


def _check(lip: _Lip, feed: float) -> Check:
    place = lip.weakest(feed)
    left = lip.left(place, feed)
    say = {
        "place": length(place),
        "slope": angle(feeding.feed_slope(feed, place)),
        "relief": angle(lip.relief(place)),
    }
    if left >= KEEP * (
        1 - 1e-9
    ):  # an advised angle is shown to a hundredth, and a hair above one is shown as that
        template = (
            "At the outer corner the feed climbs {slope} and takes that from {relief} of relief, which leaves {left}. The corner "
            "clears in feeds under {limit} per turn."
            if lip.runs == NOT_MEASURED
            else "Least is left at {place} across: the feed climbs {slope} there and takes that from {relief} of relief, which "
            "leaves {left}. The lip clears in feeds under {limit} per turn."
        )
        return passed(
            template,
            left=angle(left),
            limit=length(lip.largest_feed(), Rounding.DOWN),
            **say,
        )
    ways, keep = _ways(lip, feed), angle(KEEP)
    if left > 0:
        return complaint(
            "watch",
            "At {place} across the feed leaves only {left} of the {relief} of relief, less than the {keep} to be sure of.",
            ways,
            place=say["place"],
            relief=say["relief"],
            left=angle(left),
            keep=keep,
        )
    return complaint(
        "stop",
        "At {place} across the feed climbs {slope} and the relief is only {relief}: the land behind the lip drags. "
        "With {keep} left:",
        ways,
        keep=keep,
        **say,
    )


def _without_feed(lip: _Lip) -> Check:
    if lip.largest_feed() == 0:
        return _check(lip, 0.0)
    where = "outer corner" if lip.runs == NOT_MEASURED else "lip"
    return note(
        "The {where} clears in feeds under {limit} per turn.",
        where=where,
        limit=length(lip.largest_feed(), Rounding.DOWN),
    )


def _inward(lip: _Lip, feed: float) -> Check:
    """What the feed asks of a lip whose relief was measured at its outer corner only."""
    return note(
        "Inward the feed climbs steeper: {slope} at {inner} across. The relief must grow inward to {needed} or more there; "
        "measure it near the chisel edge and say how it runs.",
        slope=angle(feeding.feed_slope(feed, lip.inner)),
        inner=length(lip.inner),
        needed=angle(feeding.feed_slope(feed, lip.inner) + KEEP, Rounding.UP),
    )


def _beginning(given: Inputs, lip: _Lip) -> Check:
    inner = length(lip.inner)
    if given.choice("surface") != "lip":
        return note(
            "No inner diameter was given: the {surface} is taken to begin at {inner} across, {share} of the diameter. Give where "
            "its edge begins, such as at the step or the pilot before it.",
            surface=SURFACES[given.choice("surface")].title,
            inner=inner,
            share=ratio(INNER_SHARE),
        )
    if not given.has("web_thickness"):
        return note(
            "No inner diameter was given: the lip is taken to begin at {inner} across, {share} of the diameter, about the "
            "thickness of a web (common practice). The length of the chisel edge is the true one.",
            inner=inner,
            share=ratio(INNER_SHARE),
        )
    web = length(given.number("web_thickness"))
    if given.has("chisel_edge_angle"):
        return note(
            "The lip is taken to begin at {inner} across, which is the length of the chisel edge over the web of {web}.",
            inner=inner,
            web=web,
        )
    return note(
        "The lip is taken to begin at the web of {web}. The chisel edge is somewhat longer, and its length is the true one.",
        web=web,
    )


def _row(lip: _Lip, feed: float | None, part: int) -> Row:
    place = lip.outer + (lip.inner - lip.outer) * part / (len(PLACES) - 1)
    values = {"diameter": place}
    known = part == 0 or lip.runs != NOT_MEASURED
    if known:
        values["axial_relief_angle"] = lip.relief(place)
    if feed is not None:
        values["feed_slope"] = feeding.feed_slope(feed, place)
    if feed is not None and known:
        values["relief_left"] = lip.left(place, feed)
    return Row(PLACES[part], values)


def _checks(given: Inputs, lip: _Lip, feed: float | None) -> Iterator[Check]:
    yield _check(lip, feed) if feed is not None else _without_feed(lip)
    if lip.runs == NOT_MEASURED and feed:
        yield _inward(lip, feed)
    if not given.has("inner_diameter"):
        yield _beginning(given, lip)


def _feed(given: Inputs) -> float | None:
    return given.number("feed") if given.has("feed") else None


def _compute(given: Inputs) -> Result:
    return settled(_raw(given), given, lambda other, _: _checks(other, _lip(other), _feed(other)))


def _raw(given: Inputs) -> Result:
    lip, feed = _lip(given), _feed(given)
    outputs = {"largest_feed": lip.largest_feed(), "inner_diameter": lip.inner}
    if feed is not None:
        place = lip.weakest(feed)
        outputs |= {"relief_left": lip.left(place, feed), "feed_slope": feeding.feed_slope(feed, place)}
        outputs["weakest_diameter"] = place
    rows = tuple(_row(lip, feed, part) for part in range(len(PLACES)))
    return Result(outputs, rows=rows, checks=tuple(_checks(given, lip, feed)))


CALCULATION = Calculation(
    name="feed-clearance",
    title="Relief left over after the feed",
    question="How much of a drill's lip relief does the feed leave, where is it least, and which feed is too much?",
    wants="The diameter is the drill's over its margins and the relief that of the lip along the axis at the outer corner; "
    "the inner diameter is that of the circle on which the lips begin, which is the length of the chisel edge, and follows from the web where it is not given.",
    neglects="It takes the lip alone, in line with the axis, and a feed that is even; nearer the axis, on the chisel edge, the feed is steeper than any relief. "
    "It tells where the land drags, not how much relief a material wants.",
    kinds=(
        "twist-drill",
        "step-drill",
        "subland-drill",
        "centre-drill",
        "countersink",
        "counterbore",
        "end-mill",
    ),
    surfaces=SERVED,
    inputs=(
        *surface_fields(*SERVED, default="lip", silent=("lip",)),
        Field("diameter"),
        Field("relief_angle"),
        Field("lip_relief_runs", default=NOT_MEASURED),
        Field("inner_relief_angle", when=("lip_relief_runs", "rising")),
        Field("inner_diameter", optional=True),
        Field("web_thickness", optional=True, when=("surface", "lip")),
        Field("chisel_edge_angle", optional=True, when=("surface", "lip")),
        Field("feed", optional=True),
    ),
    outputs=("relief_left", "largest_feed", "feed_slope", "weakest_diameter", "inner_diameter"),
    cautions=(*AT_THE_WHEEL, "sharp-edges"),
    compute=_compute,
    role=Role(
        place=140,
        of_course=("twist-drill", "step-drill", "subland-drill", "centre-drill"),
        about="feed",
        counts=True,
        tells=("pass", "note"),
    ),
    sample={
        "diameter": 6.0,
        "relief_angle": math.radians(8),
        "lip_relief_runs": "rising",
        "inner_relief_angle": math.radians(20),
        "inner_diameter": 1.2,
        "feed": 0.25,
    },
)
