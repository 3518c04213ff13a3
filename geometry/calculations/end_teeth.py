"""How end teeth are set to the wheel for their dish and their relief, and what relief their corner wants."""

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
    stations,
    worst_first,
)
from geometry.complaints import complaint, settled
from geometry.cures import way
from geometry.edge.end_teeth import (
    corner_relief,
    dish_depth,
    dish_of_depth,
    end_drop,
    head_swivel,
)
from geometry.plausible import land_plausible, relief_plausible
from geometry.preconditions import refuse
from geometry.role import Role
from geometry.sentences import Rounding, angle, length
from geometry.tooth.land import land_angle

MOST_DISH = math.radians(5)
"""One maker's data for regrinding mills go from 1.5 to 4 degrees; a dish beyond this weakens the corner. No source."""

HAIR = 1e-9
"""The share by which a limit may be passed in the last digits."""


@dataclass(frozen=True)
class _End:
    """The end teeth of a tool.

    Attributes:
        diameter: over the corners, in mm.
        inner: where the edges begin, in mm.
        dish: from the plane square to the axis, in radians; below zero the middle stands ahead.
        relief: along the axis, in radians.
    """

    diameter: float
    inner: float
    dish: float
    relief: float

    @property
    def swivel(self) -> float:
        """Of the base of the work head for the dish, in radians."""
        return self.swivel_at(self.relief)

    def swivel_at(self, tilt: float) -> float:
        """Of the base for the dish at the tilt of one facet, both in radians."""
        return head_swivel(max(self.dish, 0.0), tilt)

    @property
    def depth(self) -> float:
        """How far the inner ends lie behind the corners, in mm."""
        return dish_depth(self.dish, self.diameter, self.inner)

    def drop(self, turned: float) -> float:
        """How far the land has fallen along the axis behind the corner, in mm."""
        return end_drop(turned, self.relief, self.dish, self.diameter)


def _end(given: Inputs) -> _End:
    diameter, inner = given.number("diameter"), given.number_or("inner_diameter", 0.0)
    if inner >= diameter * (1 - HAIR):
        raise refuse(
            "inner_diameter",
            "The end edges cannot begin on {inner}, outside the corners on {diameter}. Measure where they begin again.",
            {"inner": length(inner), "diameter": length(diameter)},
        )
    if given.has("dish_depth"):
        dish = dish_of_depth(given.number("dish_depth"), diameter, inner)
    else:
        dish = given.number("dish_angle")
    return _End(diameter, inner, dish, given.number("relief_angle"))


def _turned(given: Inputs) -> float | None:
    """From edge to heel along the outside, in radians; nothing where the land is not known."""
    if not given.has("land_width"):
        return None
    turned = land_angle(
        given.number("land_width"), given.number("diameter"), given.choice("land_measured_as")
    )
    if turned > math.pi:
        raise refuse(
            "land_width", "An end tooth does not go more than half round the tool. Measure the land again."
        )
    return turned


def _dish(given: Inputs, end: _End) -> Check:
    """Whether the corner cuts first, and by how much."""
    if end.dish < 0:
        return complaint(
            "stop",
            "The middle of the end stands {depth} ahead of the corners: it bears there, and the corners do not cut.",
            [
                way(
                    "grind until the inner ends lie more than {zero} behind the corners",
                    "dish_depth",
                    "zero",
                    length(0.0),
                )
            ],
            depth=length(-end.depth),
        )
    if end.dish == 0:
        return note(
            "The end is square to the axis, so that all of the edge cuts at once: right for a flat seat. A mill that is fed "
            "sideways drags in the middle without a dish."
        )
    if end.dish > MOST_DISH * (1 + HAIR):
        key, most = "dish_angle", angle(MOST_DISH, Rounding.DOWN)
        if given.has("dish_depth"):
            deepest = dish_depth(MOST_DISH, end.diameter, end.inner)
            key, most = "dish_depth", length(deepest, Rounding.DOWN)
        return complaint(
            "watch",
            "A dish of {dish} leaves the corners weak, and the bottom far from flat.",
            [way("dish it to {most} or less", key, "most", most)],
            dish=angle(end.dish),
        )
    return passed(
        "The corners cut first: the inner ends of the edges lie {depth} behind them. Where the tool is sunk without going "
        "sideways, it leaves the floor as much higher there.",
        depth=length(end.depth),
    )


def _reach(given: Inputs) -> Iterator[Check]:
    """That edges whose inner ends nobody gave are taken as long as they can be: the depth and the dish hang on it."""
    if not given.has("inner_diameter"):
        yield note(
            "As no inner diameter is given, the end edges are taken as reaching the middle; give it where they begin at a "
            "hole or a pilot."
        )


def _relief(end: _End) -> Iterator[Check]:
    yield from relief_plausible(end.relief, "end", key="relief_angle")
    if end.relief == 0:
        zero = way("choose a relief above {zero}", "relief_angle", "zero", angle(0.0))
        yield complaint("stop", "There is no relief behind the end edges: they rub.", [zero])


def _setting(end: _End) -> Check:
    level = "Lay one edge level and square to the axis of the work head."
    tilted = "Tilt the work head {tilt} so that the heel goes away from the wheel"
    tilt, swivel = angle(end.relief), end.swivel
    if swivel == 0:
        return note(f"{level} {tilted}; its base is not swivelled.", tilt=tilt)
    return note(
        f"{level} {tilted}, and swivel its base {{swivel}} so that the corner comes to the wheel first.",
        tilt=tilt,
        swivel=angle(swivel),
    )


def _corner(given: Inputs, end: _End) -> Iterator[Check]:
    if given.has("corner_angle"):
        yield note(
            "A corner relief of {corner} square to the chamfer keeps it as wide at the heel as at the edge; with less it "
            "grows wider there, with more it runs out.",
            corner=angle(_corner_relief(given, end)),
        )


def _corner_relief(given: Inputs, end: _End) -> float:
    land = given.number_or("land_relief_angle", 0.0)
    return corner_relief(land, end.relief, given.number("corner_angle"))


def _second_facet(given: Inputs, end: _End) -> float | None:
    """The relief of a facet behind the first one, in radians; nothing where there is none, or it takes nothing off."""
    second = given.number_or("secondary_relief_angle", 0.0)
    return second if second > end.relief else None


def _second(given: Inputs, end: _End) -> Iterator[Check]:
    if not given.has("secondary_relief_angle"):
        return
    yield from relief_plausible(given.number("secondary_relief_angle"), "end", key="secondary_relief_angle")
    if _second_facet(given, end) is not None:
        yield note(
            "The heel lies on the second facet, and how deep hangs on how wide the first one is left: no reading is told "
            "there. The first is read from the edge to the line between the two, not at the heel."
        )
    else:
        steeper = angle(end.relief, Rounding.UP)
        yield complaint(
            "watch",
            "The second relief of the end is no steeper than the first, so it takes nothing off behind it.",
            [way("raise it above {steeper}", "secondary_relief_angle", "steeper", steeper)],
        )


def _checks(given: Inputs) -> tuple[Check, ...]:
    end, turned = _end(given), _turned(given)
    found = [
        _dish(given, end),
        *_relief(end),
        *_second(given, end),
        _setting(end),
        *_reach(given),
        *_corner(given, end),
    ]
    return worst_first((*found, *(land_plausible(turned) if turned is not None else ())))


def _rows(given: Inputs, end: _End) -> tuple[Row, ...]:
    """The settings for the two facets of the end, where it has two."""
    if not given.has("secondary_relief_angle"):
        return ()
    reliefs = (("primary", end.relief), ("secondary", given.number("secondary_relief_angle")))
    return tuple(
        Row(name, {"workhead_tilt": tilt, "workhead_swivel": end.swivel_at(tilt)}) for name, tilt in reliefs
    )


def _compute(given: Inputs) -> Result:
    end, turned = _end(given), _turned(given)
    second = _second_facet(given, end)
    outputs = {"workhead_tilt": end.relief, "workhead_swivel": end.swivel}
    if second is not None:
        outputs |= {"second_workhead_tilt": second, "second_workhead_swivel": end.swivel_at(second)}
    if given.has("dish_depth"):
        outputs["dish_angle"] = end.dish
    else:
        outputs["dish_depth"] = end.depth
    if given.has("corner_angle"):
        outputs["corner_chamfer_relief"] = _corner_relief(given, end)
    read = turned if second is None else None
    if read is not None:
        outputs["axial_drop"] = end.drop(read)
    result = Result(
        outputs,
        stations(read, {"axial_drop": end.drop}) if read else (),
        rows=_rows(given, end),
        checks=_checks(given),
    )
    return settled(result, given, lambda other, _: _checks(other))


CALCULATION = Calculation(
    name="end-teeth",
    title="End teeth: dish, relief and corner",
    question="How is the work head tilted and swivelled for the end teeth, how deep is their dish, and what relief does the corner want?",
    wants="The diameter is that over the corners, and the inner diameter that on which the end edges begin, such as the pilot's; "
    "without it they reach the middle; a flat seat has a dish of 0; the relief is that along the axis at the corner; the corner lies at its angle to the axis.",
    neglects="It takes each end edge as straight and in line with the axis, each facet as one flat, and a work head that tilts on "
    "a swivelled base; on another one the two angles differ a little. What the feed takes off the relief is another question.",
    kinds=("counterbore", "end-mill", "reamer"),
    surfaces=("end",),
    inputs=(
        Field("diameter"),
        Field("inner_diameter", optional=True, fill_from=("pilot_diameter",)),
        Field("dish_angle", one_of="dish"),
        Field("dish_depth", one_of="dish"),
        Field("relief_angle"),
        Field("secondary_relief_angle", optional=True),
        Field("corner_angle", optional=True),
        Field("land_relief_angle", optional=True),
        Field("land_width", optional=True),
        Field("land_measured_as", default="arc"),
    ),
    outputs=(
        "workhead_tilt",
        "workhead_swivel",
        "second_workhead_tilt",
        "second_workhead_swivel",
        "dish_depth",
        "dish_angle",
        "corner_chamfer_relief",
        "axial_drop",
    ),
    cautions=(*AT_THE_WHEEL, "side-grinding", "sharp-edges"),
    compute=_compute,
    role=Role(
        place=52,
        of_course=(),
        about="dish_angle",
        by_method="work-head",
        sets=("workhead_tilt", "workhead_swivel", "second_workhead_tilt", "second_workhead_swivel"),
        facets_by="secondary_relief_angle",
        inspects=("dish_angle", "dish_depth"),
        tells=("pass", "note"),
        tabled=True,
    ),
    sample={
        "diameter": 20.0,
        "inner_diameter": 4.0,
        "dish_angle": math.radians(2),
        "relief_angle": math.radians(7),
        "secondary_relief_angle": math.radians(16),
        "corner_angle": math.radians(45),
        "land_relief_angle": math.radians(10),
        "land_width": 2.0,
    },
)
