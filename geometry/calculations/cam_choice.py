"""Which cam of a drawer to take for a relief, what relief each of them gives, and what the indicator reads then."""

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
    Station,
    note,
    passed,
    stations,
    worst_first,
)
from geometry.complaints import complaint, settled
from geometry.cures import way
from geometry.edge.cam import (
    NEAR_ENOUGH,
    READS_ALIKE,
    TOWARD_THE_AXIS,
    Wanted,
    out_of_drawer,
    relief_by_cam,
    throws_for,
    turn_of_throw,
)
from geometry.edge.readings import POINTS
from geometry.edge.surface_input import READING_KEYS, Edge, edge_of, pointed, surface_fields
from geometry.edge.views import View
from geometry.figure import Figure, curve
from geometry.kinds import EVERY_KIND
from geometry.plausible import land_plausible, relief_plausible
from geometry.preconditions import refuse
from geometry.role import Role
from geometry.sentences import Amount, angle, length
from geometry.tooth import eccentric
from geometry.tooth.land import land_angle

WANTED = {"throw_per_tooth": "Wanted, throw per tooth", "throw_per_turn": "Wanted, throw per turn"}
"""What the throws are called that would just give the relief, where a cam with another throw is taken."""


@dataclass(frozen=True)
class _Job:
    """A relief that is wanted, and the cams there are.

    Attributes:
        edge: the surface, and how its edge lies.
        diameter: of the circle of the edges, in mm.
        wish: the relief in the surface's own view, and the limits that were given for it.
        radial: the same square to the axis.
        turn: that the tool makes while a cam makes its throw, in radians.
        throws: the drawer, the smallest first, in mm.
        turned: from edge to heel, in radians; nothing where no land was given.
        view: in which the indicator reads.
    """

    edge: Edge
    diameter: float
    wish: Wanted
    radial: float
    turn: float
    throws: tuple[float, ...]
    turned: float | None
    view: View

    @property
    def wanted(self) -> float:
        """The relief that is wanted, in radians."""
        return self.wish.relief

    @property
    def needed(self) -> float:
        """The throw that would just give the relief, counted as those of the drawer, in mm."""
        return throws_for(self.radial, self.diameter)["throw_per_turn"] * self.turn / (2 * math.pi)

    def gives(self, throw: float) -> float:
        """The relief by a cam, in radians, in the surface's own view."""
        return relief_by_cam(self.edge, throw, self.turn, self.diameter)

    @property
    def chosen(self) -> float | None:
        """The cam that is taken; nothing where the drawer is not known."""
        if not self.throws:
            return None
        return out_of_drawer(self.throws, self.gives, self.wish)[0]

    @property
    def relief(self) -> float:
        """What is ground: by the chosen cam, else as it is wanted."""
        return self.wanted if self.chosen is None else self.gives(self.chosen)

    def heel(self, relief: float) -> float | None:
        """What the indicator reads at the heel; nothing without a land, or past the centre of the tool."""
        if self.turned is None:
            return None
        radial = self.edge.seen(relief, "radial")
        if radial is None or math.tan(radial) * self.turned >= 1:
            return None
        return self.edge.readings(relief, "eccentric", self.diameter)[self.view](self.turned)


def _job(given: Inputs) -> _Job:
    edge, diameter, wanted = edge_of(given), given.number("diameter"), given.number("relief_angle")
    radial = edge.seen(wanted, "radial")
    if radial is None:
        raise refuse(
            edge.surface.edge_key,
            "At that angle the {surface} faces along the axis, where a cam toward the axis gives no relief.",
            {"surface": edge.surface.title},
        )
    turned = (
        land_angle(given.number("land_width"), diameter, given.choice("land_measured_as"))
        if given.has("land_width")
        else None
    )
    throws = tuple(sorted(set(given.numbers("cam_throws")))) if given.has("cam_throws") else ()
    view = pointed(given, edge)
    ends = [
        given.number(key) if given.has(key) else None for key in ("relief_lower_limit", "relief_upper_limit")
    ]
    if ends[0] is not None and ends[1] is not None and ends[0] > ends[1]:
        raise refuse(
            "relief_upper_limit",
            "The upper limit of the relief, {high}, is under its lower limit, {low}; give them the other way round.",
            {"high": angle(ends[1]), "low": angle(ends[0])},
        )
    return _Job(edge, diameter, Wanted(wanted, *ends), radial, turn_of_throw(given), throws, turned, view)


def _of_the_drawer(job: _Job, per: str) -> Iterator[Check]:
    """What the chosen cam gives, held against what is wanted, and what the next smaller one would give."""
    chosen = job.chosen
    if chosen is None:
        yield note(
            f"A cam of {{needed}} per {per} gives the relief wanted. With the throws of the drawer the nearest of them is "
            "found.",
            needed=length(job.needed),
        )
        return
    found = job.gives(chosen)
    parts: dict[str, Amount | str] = {
        "cam": length(chosen),
        "found": angle(found),
        "wanted": angle(job.wanted),
        "surface": job.edge.surface.title,
    }
    if abs(found - job.wanted) <= NEAR_ENOUGH:
        yield passed(
            "The cam of {cam} gives {found} on the {surface}, near the {wanted} wanted.",
            **parts,
        )
        return
    if job.wish.has_limits and job.wish.keeps(found):
        yield _within(job, parts)
    else:
        yield _outside(job, per, found, parts)
    yield from _next_one(job, chosen, found)


def _within(job: _Job, parts: dict[str, Amount | str]) -> Check:
    """That what the cam gives keeps the limits, though it is not what is wanted."""
    says = "The cam of {cam} gives {found} on the {surface} where {wanted} is wanted: within the limits, "
    low = angle(job.wish.low or 0.0)
    if job.wish.high is None:
        return passed(says + "{low} or more.", low=low, **parts)
    return passed(says + "{low} to {high}.", low=low, high=angle(job.wish.high), **parts)


def _outside(job: _Job, per: str, found: float, parts: dict[str, Amount | str]) -> Check:
    """That no cam gives what is wanted, and what to do about it."""
    which = "largest cam of the drawer" if found < job.wanted - READS_ALIKE else "nearest cam above the need"
    parts["needed"] = length(job.needed)
    return complaint(
        "watch",
        f"The {which}, {{cam}}, gives {{found}} on the {{surface}}, not the {{wanted}} wanted.",
        [
            way(
                "put what it gives, {given}, in place of the relief wanted",
                "relief_angle",
                "given",
                angle(found),
            )
        ],
        [f"get one with a throw of {{needed}} per {per}"],
        **parts,
    )


def _next_one(job: _Job, chosen: float, found: float) -> Iterator[Check]:
    """What the next cam on the other side of what is wanted gives."""
    if found > job.wanted:
        word, others = "smaller", [throw for throw in reversed(job.throws) if throw < chosen]
    else:
        word, others = "larger", [throw for throw in job.throws if throw > chosen]
    if others:
        yield note(
            f"The next {word} one, {{other}}, gives {{gives}}.",
            other=length(others[0]),
            gives=angle(job.gives(others[0])),
        )


def _of_the_land(given: Inputs, job: _Job) -> Iterator[Check]:
    if job.turned is None:
        return
    yield from land_plausible(job.turned, given.number("flutes") if given.has("flutes") else None)
    if job.turned > 0 and job.heel(job.relief) is None:
        yield complaint("stop", "So wide a land falls past the centre of the tool. Measure it again.")
    elif not job.edge.is_cylinder:
        yield note(
            "The indicator points {points}; the edge of the {surface} lies at {kappa} to the axis.",
            points=POINTS[job.view],
            surface=job.edge.surface.title,
            kappa=angle(job.edge.kappa),
        )


def _checks(given: Inputs) -> Iterator[Check]:
    job = _job(given)
    yield from relief_plausible(job.wanted, job.edge.surface.key, key="relief_angle")
    yield from _of_the_drawer(job, given.choice("throw_per"))
    yield from _of_the_land(given, job)


def _rows(job: _Job) -> tuple[Row, ...]:
    """A line for each cam of the drawer."""
    found = []
    for place, throw in enumerate(job.throws, 1):
        relief = job.gives(throw)
        heel = job.heel(relief)
        values = {"chosen_throw": throw, "relief_angle": relief}
        mark = " (taken)" if throw == job.chosen else ""
        found.append(Row(f"Cam {place}{mark}", values | ({} if heel is None else {"heel_drop": heel})))
    return tuple(found)


def _readings(job: _Job) -> tuple[Station, ...]:
    """What the indicator reads from edge to heel, as it points and, on a cone, as it would otherwise."""
    if job.turned is None or job.heel(job.relief) is None:
        return ()
    readings = job.edge.readings(job.relief, "eccentric", job.diameter)
    others = (
        {}
        if job.edge.is_cylinder
        else {READING_KEYS[one]: readings[one] for one in readings if one != job.view}
    )
    return stations(job.turned, {"drop": readings[job.view], **others})


def _figure(job: _Job) -> Figure | None:
    radial = job.edge.seen(job.relief, "radial")
    if not job.turned or radial is None or job.heel(job.relief) is None:
        return None
    profile = eccentric.profile(radial, job.diameter)
    return Figure(job.diameter / 2, job.turned, (curve("eccentric", job.turned, profile),))


def _compute(given: Inputs) -> Result:
    job = _job(given)
    heel = job.heel(job.relief)
    flutes = given.number("flutes") if given.has("flutes") else None
    outputs = {
        **({} if job.chosen is None else {"chosen_throw": job.chosen, "relief_angle": job.relief}),
        **({} if heel is None else {"heel_drop": heel}),
        **dict(sorted(throws_for(job.radial, job.diameter, flutes).items())),
        **({} if job.turned is None else {"land_angle": job.turned}),
        **job.edge.reliefs(job.relief),
    }
    raw = Result(
        outputs,
        _readings(job),
        _rows(job),
        worst_first(_checks(given)),
        _figure(job),
        # Beside the cam that is taken, that they are not its throw has to be said.
        named={} if job.chosen is None else WANTED,
    )
    return settled(raw, given, lambda changed, _: _checks(changed))


CALCULATION = Calculation(
    name="cam-choice",
    title="Cam out of the drawer",
    question="Which cam of the drawer gives this relief on this diameter, what does each of them give, and what is read then?",
    wants="The relief is that of the surface, in its own view, at the diameter that is given. The throws are those of the cams at "
    "hand, all counted per turn or all per tooth; the land is that behind one edge.",
    neglects="It holds for even cams that draw the tool toward its axis. Taken is the cam that comes nearest within the limits of "
    "the relief; where none keeps them, or none are given, the nearest that gives the relief or more, because too little rubs. A cam along the axis beside it, and a tool with steps, have sheets of their own.",
    kinds=EVERY_KIND,
    surfaces=TOWARD_THE_AXIS,
    inputs=(
        *surface_fields(*TOWARD_THE_AXIS, default="land"),
        Field("diameter"),
        Field("relief_angle"),
        Field("relief_lower_limit", optional=True, end_of=("relief_angle", "low")),
        Field("relief_upper_limit", optional=True, end_of=("relief_angle", "high")),
        Field("cam_throws", many=True, optional=True),
        Field("throw_per", default="turn"),
        Field("flutes", optional=True),
        Field("land_width", optional=True),
        Field("land_measured_as", default="arc"),
        Field("indicator_points", optional=True),
    ),
    outputs=(
        "chosen_throw",
        "relief_angle",
        "heel_drop",
        "throw_per_tooth",
        "throw_per_turn",
        "land_angle",
        "normal_relief_angle",
        "radial_relief_angle",
        "axial_relief_angle",
    ),
    cautions=AT_THE_WHEEL,
    compute=_compute,
    methods=("cam",),
    role=Role(place=79, of_course=(), about="cam_throws", tells=("pass",), tabled=True),
    sample={
        "surface": "land",
        "diameter": 16.0,
        "relief_angle": math.radians(7),
        "cam_throws": (1.0, 1.6, 2.5, 4.0),
        "throw_per": "tooth",
        "flutes": 4.0,
        "land_width": 3.2,
    },
)
