"""The web of a drill that has become short: how thick it is now, and what thinning or splitting the point takes."""

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
    Row,
    note,
    passed,
    watch,
    worst_first,
)
from geometry.complaints import complaint, settled
from geometry.cures import way
from geometry.drill.point import chisel_edge_length
from geometry.drill.web import growth, notch_length, web_at
from geometry.plausible import chisel_plausible
from geometry.preconditions import NotGiven, refuse
from geometry.role import Role
from geometry.sentences import Amount, Kind, Rounding, length
from geometry.side_view import Mark, SideView

TARGETS = {"thinned": 0.10, "split": 0.03}
"""What is left of the web at the point, as a share of the diameter, where nobody says it; common practice, no source."""

WEAKEST = {"thinned": 0.06, "split": 0.01}
"""Under this share of the diameter the point breaks easily; common practice, no source."""

PER = 100.0
"""The growth is told over so many millimetres of length, as books tell it."""


@dataclass(frozen=True)
class _Web:
    """The web at the point of a drill.

    Attributes:
        diameter: of the drill, in mm.
        now: the web at the place of the first measurement, in mm.
        ratio: how much it grows for each unit of length; nothing where it was measured once.
        ground_off: what the drill is shorter, in mm.
        after: the web at the new point, in mm.
        wanted: what thinning shall leave, in mm.
        kind: ``thinned`` or ``split``.
    """

    diameter: float
    now: float
    ratio: float | None
    ground_off: float
    after: float
    wanted: float
    kind: str

    @property
    def stock(self) -> float:
        """What comes off each side at the point, in mm."""
        return max(self.after - self.wanted, 0.0) / 2

    @property
    def left(self) -> float:
        """The web that is left at the point, in mm."""
        return min(self.after, self.wanted)

    @property
    def share(self) -> float:
        """The web at the new point in percent of the diameter."""
        return 100 * self.after / self.diameter


def _web(given: Inputs) -> _Web:
    diameter, now = given.number("diameter"), given.number("web_thickness")
    ratio = None
    if given.has("second_web") != given.has("web_distance"):
        missing = "web_distance" if given.has("second_web") else "second_web"
        raise NotGiven("The second web thickness wants its distance from the point beside it.", missing)
    if given.has("second_web"):
        ratio = growth(now, given.number("second_web"), given.number("web_distance"))
    ground_off = given.number_or("length_ground_off", 0.0)
    if ground_off > 0 and ratio is None:
        raise NotGiven(
            "Measure the web further back as well; without it nobody knows how it grows as the drill becomes shorter.",
            "second_web",
        )
    after = web_at(now, ratio or 0.0, ground_off)
    if now >= diameter:
        raise refuse(
            "web_thickness",
            "A web of {web} leaves no flutes in a drill of {diameter}. Measure both again.",
            {"web": length(now), "diameter": length(diameter)},
        )
    if after >= diameter:
        raise refuse(
            "web_distance",
            "By the two webs measured so far apart the web would be {web} at the new point, which leaves no flutes in a drill "
            "of {diameter}. Measure the second web, its distance, and what is ground off again.",
            {"web": length(after), "diameter": length(diameter)},
        )
    kind = given.choice("thinning")
    wanted = given.number_or("wanted_web", TARGETS[kind] * diameter)
    return _Web(diameter, now, ratio, ground_off, after, wanted, kind)


def _edges(given: Inputs, web: _Web) -> dict[str, float]:
    """The chisel edge before and after, where its angle is known."""
    if not given.has("chisel_edge_angle"):
        return {}
    lies = given.number("chisel_edge_angle")
    before = chisel_edge_length(web.after, lies, web.diameter)
    after = chisel_edge_length(web.left, lies, web.diameter)
    return {
        "chisel_edge_length": before,
        "thinned_edge_length": after,
        "new_lip_length": (before - after) / 2,
    }


def _notch(given: Inputs, web: _Web) -> float | None:
    if not given.has("notch_angle"):
        return None
    return notch_length(web.stock, given.number("notch_angle"), web.ratio or 0.0)


def _checks(given: Inputs) -> Iterator[Check]:
    web = _web(given)
    edges, notch = _edges(given, web), _notch(given, web)
    if web.ratio is not None and web.ratio < 0:
        yield watch(
            "By these measurements the web becomes thinner toward the shank, and webs grow that way. Measure it in both "
            "places again."
        )
    if given.has("chisel_edge_angle"):
        yield from chisel_plausible(given.number("chisel_edge_angle"))
    yield from _of_the_target(given, web)
    yield from _told(web, edges, notch)
    if web.ratio is not None and web.ground_off > 0:
        yield note(
            "The drill is {off} shorter, so its web has grown from {then} to {now}: {growth} over {far}.",
            growth=length(PER * web.ratio),
            far=length(PER),
            off=length(web.ground_off),
            then=length(web.now),
            now=length(web.after),
        )


def _of_the_target(given: Inputs, web: _Web) -> Iterator[Check]:
    """What is odd about the web that is wanted."""
    least = WEAKEST[web.kind] * web.diameter
    if web.wanted < least * (1 - 1e-9):
        yield complaint(
            "watch",
            "So thin a web breaks easily.",
            [way("leave {least} or more", "wanted_web", "least", length(least, Rounding.UP))],
        )
    if not given.has("wanted_web"):
        yield note(
            "The web of {wanted} that is wanted is {share} of the diameter: common practice, no source. Copy a new drill of "
            "the same kind where there is one.",
            wanted=length(web.wanted),
            share=_percent(100 * TARGETS[web.kind]),
        )


def _told(web: _Web, edges: dict[str, float], notch: float | None) -> Iterator[Check]:
    """What thinning takes, and how."""
    if web.stock == 0:
        yield passed(
            "The web of {web}, {share} of the diameter, is no thicker than wanted: nothing has to be thinned.",
            web=length(web.after),
            share=_percent(web.share),
        )
        return
    says = (
        "Take {stock} off the web on each side at the point, the same on both so that it stays in the middle"
    )
    if notch is not None and notch > 0:
        says += ", and let the notch run out {notch} up the flute"
    yield note(says + ".", stock=length(web.stock), **({"notch": length(notch)} if notch else {}))
    if edges:
        both = "each side gains {gain} of new edge"
        yield note(
            "The chisel edge becomes {after} instead of {before} long: " + both + ".",
            after=length(edges["thinned_edge_length"]),
            before=length(edges["chisel_edge_length"]),
            gain=length(edges["new_lip_length"]),
        )
    if web.kind == "split":
        yield note(
            "Both notches meet the chisel edge alike and keep clear of the lips; look at it along the axis under a glass."
        )


def _percent(value: float) -> Amount:
    return Amount(value, Kind.PERCENT)


def _rows(web: _Web, given: Inputs) -> tuple[Row, ...]:
    """The web along the part of the drill that was measured."""
    if web.ratio is None:
        return ()
    whole = given.number("web_distance")
    places = [(f"{part}/4", whole * part / 4) for part in range(5)]
    found = []
    for label, off in places:
        thick = web_at(web.now, web.ratio, off)
        values = {"length_ground_off": off, "web_after": thick, "web_share": 100 * thick / web.diameter}
        if thick < web.diameter:
            found.append(Row(label, values))
    return tuple(found)


def _side(web: _Web, notch: float | None, given: Inputs) -> SideView | None:
    """Half of the web from the side, with what the notch takes off it."""
    reach = max(given.number_or("web_distance", 0.0) - web.ground_off, 2 * (notch or 0.0), web.diameter)
    half, rise = web.after / 2, (web.ratio or 0.0) / 2
    end = half + rise * reach
    if end <= 0:
        return None
    if not notch:
        return SideView(((0.0, half), (reach, end)), (Mark("point", 0.0, half),), one_side=True)
    runs_out = half + rise * notch
    return SideView(
        ((0.0, web.left / 2), (notch, runs_out), (reach, end)),
        (Mark("point", 0.0, web.left / 2), Mark("end of the notch", notch, runs_out)),
        one_side=True,
    )


def _compute(given: Inputs) -> Result:
    web = _web(given)
    edges, notch = _edges(given, web), _notch(given, web)
    outputs = {
        "thinning_stock": web.stock,
        "web_after": web.after,
        "web_share": web.share,
        **({} if web.ratio is None else {"web_growth": web.ratio}),
        **edges,
        **({} if notch is None else {"notch_length": notch}),
    }
    raw = Result(
        outputs, rows=_rows(web, given), checks=worst_first(_checks(given)), side=_side(web, notch, given)
    )
    return settled(raw, given, lambda changed, _: _checks(changed))


CALCULATION = Calculation(
    name="drill-web",
    title="Web of a drill and its thinning",
    question="How thick is the web where the point is now, and what does thinning or splitting the point take off it?",
    wants="The web is measured at the point, and once more further back, with the way between; what was ground away counts "
    "from the first of these places. The diameter is over the margins at the corners.",
    neglects="It takes the web as growing evenly between the two places and the chisel edge as keeping its angle. How thin a web "
    "may be is common practice without a source: copy a new drill where there is one.",
    kinds=("twist-drill", "step-drill", "subland-drill"),
    belongs_on=("lip",),
    beside=True,
    inputs=(
        Field("diameter"),
        Field("web_thickness"),
        Field("second_web", optional=True),
        Field("web_distance", optional=True),
        Field("length_ground_off", optional=True),
        Field("thinning", default="thinned"),
        Field("wanted_web", optional=True),
        Field("chisel_edge_angle", optional=True),
        Field("notch_angle", optional=True),
    ),
    outputs=(
        "thinning_stock",
        "web_after",
        "web_share",
        "web_growth",
        "chisel_edge_length",
        "thinned_edge_length",
        "new_lip_length",
        "notch_length",
    ),
    cautions=(*AT_THE_WHEEL, "grinding-cracks", "sharp-edges"),
    compute=_compute,
    role=Role(place=53, of_course=(), about="second_web", tells=("pass", "note")),
    sample={
        "diameter": 12.0,
        "web_thickness": 1.8,
        "second_web": 2.6,
        "web_distance": 50.0,
        "length_ground_off": 30.0,
        "wanted_web": 1.2,
        "chisel_edge_angle": math.radians(125),
        "notch_angle": math.radians(30),
    },
)
