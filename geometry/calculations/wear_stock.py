"""How much has to come off a worn or too large tool, in how many passes, and what size is left."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from geometry.calculation import (
    AT_THE_WHEEL,
    Calculation,
    Check,
    Field,
    Inputs,
    Result,
    worst_first,
)
from geometry.complaints import settled
from geometry.edge.surface_input import Edge, edge_of, surface_fields
from geometry.figure import Figure, curve
from geometry.kinds import EVERY_KIND
from geometry.preconditions import refuse
from geometry.role import Role
from geometry.sentences import length
from geometry.surfaces import SURFACES
from geometry.tooth import eccentric, flat
from geometry.tooth.land import land_angle, land_width
from geometry.upkeep import wear_advice
from geometry.upkeep.sharpening import stock_along, taper_from_book
from geometry.upkeep.wear import depth_of_wear, face_stock, flank_stock, flank_stock_for, passes_for

ON_THE_CIRCLE = ("land", "thread-land", "cone", "shoulder")
"""Surfaces of which every edge lies on a circle of its own: as it goes back, that circle grows smaller."""

HOLD_THE_SIZE = ("land", "thread-land")
"""Surfaces that a tool can be brought to a size on."""

ON_THE_FACE = ("land", "thread-land", "cone", "shoulder")
"""Surfaces that are sharpened on the face as a rule, so that their relief stays; common practice, no source."""

OF_THE_SIZE = {"chamfer": "thread_relief_angle", "bevel": "land_relief_angle"}
"""The relief by which the size falls when the face goes back, where it is not that of the worn surface."""


@dataclass(frozen=True)
class Job:
    """A worn or too large tool.

    Attributes:
        given: the inputs.
        edge: of the surface that is worn or has to become smaller.
        on: ``face`` or ``flank``, what is ground.
        rake: in the plane square to the axis, in radians.
    """

    given: Inputs
    edge: Edge
    on: str
    rake: float

    @property
    def diameter(self) -> float:
        """Of the tool where it is not worn, in mm."""
        return self.given.number("diameter")

    @property
    def relief(self) -> float:
        """In the surface's own view, in radians."""
        return self.given.number("relief_angle")

    @cached_property
    def radial(self) -> float | None:
        """The relief square to the axis, in radians; nothing on an end."""
        return self.edge.seen(self.relief, "radial")

    @property
    def on_circle(self) -> bool:
        """Whether the circle of the edge grows smaller as it goes back."""
        return self.edge.surface.key in ON_THE_CIRCLE and not self.edge.is_end

    @cached_property
    def to_size(self) -> float | None:
        """How much smaller the radius shall be, in mm; nothing where the wear says how much comes off."""
        if not self.given.has("wanted_diameter"):
            return None
        wanted = self.given.number("wanted_diameter")
        if self.edge.surface.key not in HOLD_THE_SIZE:
            raise refuse(
                "wanted_diameter",
                "A tool is brought to a size on its land, not on the {surface}. Choose the land, or give the wear.",
                {"surface": self.edge.surface.title},
            )
        if wanted > self.diameter:
            raise refuse(
                "wanted_diameter",
                "Grinding makes a tool smaller: the size wanted, {wanted}, must not be above the {diameter} that it has.",
                {"wanted": length(wanted), "diameter": length(self.diameter)},
            )
        return (self.diameter - wanted) / 2

    @property
    def has_margin(self) -> bool:
        """Whether the land begins with a margin on the circle."""
        is_land = self.edge.surface.key == "land"
        return is_land and self.given.number_or("margin_width", 0.0) > 0

    @property
    def within_margin(self) -> bool:
        """Whether the face goes back over the margin alone, which lies on the circle, so that the edge stays on it."""
        margin = self.given.number_or("margin_width", 0.0)
        wears = self.has_margin and self.on == "face" and self.to_size is None
        return wears and self.given.number("wear_land") < margin

    @cached_property
    def depth(self) -> float:
        """How far the edge goes back: along the radius, on an end along the axis, in mm."""
        if self.to_size is not None:
            return self.to_size
        if self.within_margin:
            return 0.0
        wear = self.given.number("wear_land")
        if self.radial is None:
            return depth_of_wear(wear, self.edge.normal(self.relief), 0.0)
        return depth_of_wear(wear, self.radial, self.rake)

    @cached_property
    def flank(self) -> float:
        """What comes off the flank, square to it, in mm."""
        square = self.edge.normal(self.relief)
        if self.to_size is not None:
            return flank_stock_for(self.to_size, square, self.rake)
        return flank_stock(self.given.number("wear_land"), square)

    @cached_property
    def along(self) -> float | None:
        """How far round the tool the edge goes back when the face is ground, in mm; nothing where no face would do."""
        if self.radial is None:
            return None if self.to_size is not None else self.given.number("wear_land")
        if self.within_margin:
            return self.given.number("wear_land")
        if self.to_size is None:
            return stock_along(face_stock(self.given.number("wear_land"), self.rake), self.rake, self.radial)
        if self.radial == 0:
            return None
        if self.form == "eccentric":
            along = self.to_size / math.tan(self.radial)
            return along if along <= math.pi * self.diameter else None  # no tooth goes once round the tool
        lowest = (self.diameter / 2) * math.cos(self.radial)
        left = self.diameter / 2 - self.to_size
        return (self.radial - math.acos(lowest / left)) * self.diameter / 2 if left >= lowest else None

    @property
    def face(self) -> float | None:
        """What comes off the face, square to it, in mm; nothing where no stock there would do."""
        if self.to_size is None:
            return face_stock(self.given.number("wear_land"), self.rake)
        if self.along is None or self.radial is None:
            return None
        return self.along / stock_along(1.0, self.rake, self.radial)

    @property
    def form(self) -> str:
        """``eccentric`` or ``flat``."""
        return self.given.choice("relief_form")

    @property
    def stock(self) -> float:
        """What comes off where it is ground, in mm."""
        if self.on == "flank":
            return self.flank
        if self.face is None:
            raise refuse(
                "sharpened_on",
                "No stock off the face brings the tool to that size: the surface behind the edge does not fall so far. "
                "Grind the flank.",
            )
        return self.face

    @property
    def back(self) -> float | None:
        """How far an edge across the axis moves back along it, in mm; nothing for one on a circle of its own."""
        if self.on_circle or self.edge.is_cylinder:
            return None
        axial = self.edge.seen(self.relief, "axial")
        assert axial is not None
        return self.given.number("wear_land") * math.tan(axial)

    @property
    def lost(self) -> float | None:
        """How much smaller the tool becomes, in mm; nothing where that was not told."""
        if self.on_circle:
            if self.within_margin:
                return 0.0
            if self.on == "face" and self.form == "flat" and self.to_size is None and self.radial is not None:
                assert self.along is not None
                return 2 * flat.drop(2 * self.along / self.diameter, self.radial, self.diameter)
            return 2 * self.depth
        lost = 0.0
        key = OF_THE_SIZE.get(self.edge.surface.key, "")
        if self.on == "face":
            if not self.given.has(key):
                return None
            relief = self.given.number(key)
            lost = 2 * stock_along(self.stock, self.rake, relief) * math.tan(relief)
        elif not self.given.has("back_taper"):
            return None
        taper = taper_from_book(self.given.number("back_taper")) if self.given.has("back_taper") else 0.0
        return lost + taper * (self.back or 0.0)


def _job(given: Inputs) -> Job:
    edge = edge_of(given)
    usual = "face" if edge.surface.key in ON_THE_FACE else "flank"
    on = given.choice("sharpened_on") if given.has("sharpened_on") else usual
    job = Job(given, edge, on, given.number_or("rake_angle", 0.0))
    key = "wear_land" if job.to_size is None else "wanted_diameter"
    if job.lost is not None and job.lost >= job.diameter:
        raise refuse(
            key,
            "So much stock leaves nothing of a tool of {diameter}; measure again.",
            {"diameter": length(job.diameter)},
        )
    return job


def _checks(given: Inputs) -> Iterator[Check]:
    job = _job(given)
    yield from wear_advice.doubts(given, job.edge, job.rake)
    yield from wear_advice.of_the_land(given, job.on, job.along)
    if not job.within_margin:
        yield from wear_advice.of_a_flat(job.on, job.form, job.radial, job.along, job.diameter)
    if job.has_margin:
        yield wear_advice.of_the_margin(given, within=job.within_margin)
    yield from wear_advice.of_the_infeed(given.number("infeed"), job.stock)
    yield from wear_advice.of_the_size(given, job.lost)
    yield wear_advice.told(given, job.on, job.stock)
    if job.edge.surface.key != "lip":  # the flute of a drill is no face to grind back
        yield from wear_advice.other_way(job.on, job.face, job.flank)
    yield from wear_advice.where_the_size_is_missing(job.lost, job.on, OF_THE_SIZE.get(job.edge.surface.key))


def _land_after(given: Inputs, job: Job) -> dict[str, float]:
    """The land that is left where the face is ground; none where it is gone."""
    if job.on != "face" or job.along is None or not given.has("land_width"):
        return {}
    measured_as = given.choice("land_measured_as")
    turned = land_angle(given.number("land_width"), job.diameter, measured_as)
    left = turned - 2 * job.along / job.diameter
    size = job.diameter - (job.lost or 0.0)
    return {"land_after": land_width(left, size, measured_as)} if left >= 0 else {}


def _figure(given: Inputs, job: Job) -> Figure | None:
    """The tooth as it was when sharp, where its land is known."""
    if job.radial is None or not given.has("land_width"):
        return None
    turned = land_angle(given.number("land_width"), job.diameter, given.choice("land_measured_as"))
    if not 0 < turned < min(math.pi, job.radial + math.radians(80)):
        return None
    shape = eccentric if job.form == "eccentric" else flat
    profile = shape.profile(job.radial, job.diameter)
    return Figure(job.diameter / 2, turned, (curve(job.form, turned, profile),), job.rake)


def _compute(given: Inputs) -> Result:
    job = _job(given)
    count, last = passes_for(job.stock, given.number("infeed"))
    stocks = {"face_stock": job.face, "flank_stock": job.flank}
    first = f"{job.on}_stock"
    other = next(key for key in stocks if key != first)
    found: dict[str, float | None] = {
        first: job.stock,
        "passes": float(count),
        "last_infeed": last,
        "diameter_after": None if job.lost is None else job.diameter - job.lost,
        "size_lost": job.lost,
        other: stocks[other],
        "wear_depth": None if job.to_size is not None else job.depth,
        "shortened_by": job.back,
    }
    raw = Result(
        {key: value for key, value in found.items() if value is not None} | _land_after(given, job),
        checks=worst_first(_checks(given)),
        figure=_figure(given, job),
    )
    return settled(raw, given, lambda changed, _: _checks(changed))


CALCULATION = Calculation(
    name="wear-stock",
    title="Stock for wear or size",
    question="How much has to come off until the wear is gone or the size is reached, in how many passes, and what is left?",
    wants="The wear is the widest strip behind any edge, for all are ground alike. The diameter is that of the tool where it is "
    "not worn; relief and rake are those that it has, the relief in the view of the surface that is worn.",
    neglects="It takes the wear as a strip on the circle of the cut, narrow beside the tool, the face as sound and the flute as "
    "along the axis; the hook of a tap along its chord is taken for the rake; a chipped edge or a worn corner needs what is seen there. The wheel wears too: measure before the last pass.",
    kinds=EVERY_KIND,
    inputs=(
        *surface_fields(*SURFACES, default="land"),
        Field("diameter"),
        Field("wear_land", one_of="goal"),
        Field("wanted_diameter", one_of="goal"),
        Field("relief_angle"),
        Field("relief_form", default="eccentric"),
        Field("rake_angle", optional=True, fill_from=("hook_angle",)),
        Field("sharpened_on", optional=True),
        Field("infeed", default=0.02),
        Field("spark_out_passes", default=2.0),
        Field("land_width", optional=True),
        Field("land_measured_as", default="arc"),
        Field("thread_relief_angle", optional=True, when=("surface", "chamfer")),
        Field("land_relief_angle", optional=True, when=("surface", "bevel")),
        Field("back_taper", optional=True, when=("surface", "chamfer", "bevel", "lip", "end")),
        Field("least_diameter", optional=True),
        Field("margin_width", optional=True, when=("surface", "land")),
    ),
    outputs=(
        "face_stock",
        "flank_stock",
        "passes",
        "last_infeed",
        "diameter_after",
        "size_lost",
        "wear_depth",
        "shortened_by",
        "land_after",
    ),
    cautions=(*AT_THE_WHEEL, "grinding-cracks", "sharp-edges"),
    compute=_compute,
    role=Role(place=25, of_course=(), about="wear_land", tells=("pass", "note")),
    sample={
        "surface": "land",
        "diameter": 20.0,
        "wear_land": 0.3,
        "relief_angle": math.radians(8),
        "rake_angle": math.radians(5),
        "infeed": 0.02,
        "land_width": 2.5,
        "least_diameter": 19.8,
    },
)
