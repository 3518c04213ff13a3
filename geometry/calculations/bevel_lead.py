"""The bevel lead of a reamer: angle, length and relief, and what a worn corner takes off it."""

from __future__ import annotations

import math
from collections.abc import Iterator

from geometry.calculation import (
    AT_THE_WHEEL,
    Calculation,
    Check,
    Field,
    Inputs,
    Result,
    note,
    passed,
    worst_first,
)
from geometry.complaints import complaint, settled
from geometry.cone import bevel
from geometry.cures import Way, way
from geometry.edge.surface_input import RELIEF_KEYS
from geometry.edge.views import VIEWS, seen
from geometry.plausible import LEAST_RELIEF, relief_plausible
from geometry.preconditions import refuse
from geometry.role import Role
from geometry.sentences import Rounding, angle, length
from geometry.setting.swivel_notes import swivel_of_lead
from geometry.setting.taper import STEEP
from geometry.side_view import lead_view
from geometry.upkeep.sharpening import size_lost_on_end, taper_from_book

SEEN = 0.001
"""A loss of size under this (mm) is not spoken of: no micrometer of a tool room shows it; no source."""

EXAMPLE_LEAD = 0.1
"""How long a lead is drawn where nobody measured it, as a share of the diameter."""


def _lead(given: Inputs) -> dict[str, float]:
    """Length and start of the lead, where one of them was measured."""
    diameter, slope = given.number("diameter"), bevel.require_bevel(given.number("bevel_angle"))
    if given.has("bevel_length"):
        long = given.number("bevel_length")
        return {"bevel_length": long, "bevel_start_diameter": bevel.start_diameter(long, diameter, slope)}
    if given.has("bevel_start_diameter"):
        start = given.number("bevel_start_diameter")
        return {
            "bevel_length": bevel.bevel_length(start, diameter, slope),
            "bevel_start_diameter": start,
        }
    return {}


def _hole(given: Inputs) -> float | None:
    """The hole before reaming, in mm, where its stock is known."""
    if not given.has("reaming_stock"):
        return None
    diameter, stock = given.number("diameter"), given.number("reaming_stock")
    if stock >= diameter:
        raise refuse(
            "reaming_stock",
            "The stock for reaming must be less than the reamer itself, {diameter}.",
            {"diameter": length(diameter)},
        )
    return diameter - stock


def _ground(given: Inputs, lead: dict[str, float]) -> dict[str, float]:
    """What is ground off a worn lead, and what is left of it."""
    if not given.has("corner_wear") and not given.has("corner_wear_length"):
        return {}
    slope = given.number("bevel_angle")
    by_radius = bevel.stock_for_wear(given.number_or("corner_wear", 0.0), slope)
    by_land = given.number_or("corner_wear_length", 0.0)
    stock = max(by_radius, by_land)
    found = {"axial_stock": stock, "square_stock": bevel.square_stock(stock, slope)}
    if lead:
        after = lead["bevel_start_diameter"] - 2 * stock * math.tan(slope)
        if after <= 0:
            raise refuse(
                "corner_wear" if by_radius >= by_land else "corner_wear_length",
                "So much off the lead grinds the reamer to a point. Cut the end back first, and give the lead as it is "
                "then.",
            )
        found |= {"bevel_length_after": lead["bevel_length"] + stock, "bevel_start_after": after}
    if (given.has("taper_ratio") or given.has("back_taper")) and _taper(given) < STEEP:
        lost = size_lost_on_end(stock, _taper(given))
        if lost < given.number("diameter"):
            found |= {"size_lost": lost, "diameter_after": given.number("diameter") - lost}
    return found


def _taper(given: Inputs) -> float:
    """The taper on diameter, for each unit of length; a steep one is no back taper, but that which the tool cuts."""
    if given.has("taper_ratio"):
        return given.number("taper_ratio")
    return taper_from_book(given.number("back_taper"))


def _reliefs(given: Inputs) -> dict[str, float]:
    """The relief of the lead in its three views."""
    if not given.has("relief_angle"):
        return {}
    square, slope = given.number("relief_angle"), given.number("bevel_angle")
    return {RELIEF_KEYS[view]: found for view in VIEWS if (found := seen(square, slope, view)) is not None}


def _relief_checks(given: Inputs, found: dict[str, float]) -> Iterator[Check]:
    if not found:
        return
    relief = given.number("relief_angle")
    if relief == 0:
        yield complaint(
            "stop",
            "There is no relief behind the lead: it rubs and will not cut.",
            [
                way(
                    "grind a relief of {least} or more",
                    "relief_angle",
                    "least",
                    angle(LEAST_RELIEF, Rounding.UP),
                )
            ],
        )
        return
    yield from relief_plausible(relief, "bevel", key="relief_angle")
    if len(found) == len(VIEWS):
        yield note(
            "A relief of {normal} square to the lead is {radial} square to the axis, which an indicator reads that points "
            "at the axis, and {axial} along the axis.",
            normal=angle(found["normal_relief_angle"]),
            radial=angle(found["radial_relief_angle"]),
            axial=angle(found["axial_relief_angle"]),
        )


def _enters(given: Inputs, lead: dict[str, float]) -> Iterator[Check]:
    """Whether the lead starts inside the hole before reaming."""
    hole = _hole(given)
    if hole is None:
        return
    stock, slope = given.number("reaming_stock"), math.tan(given.number("bevel_angle"))
    needed = length(stock / 2 / slope, Rounding.UP)
    if not lead:
        yield note(
            "To enter a hole of {hole} the lead must be more than {needed} long.",
            hole=length(hole),
            needed=needed,
        )
        return
    start = lead["bevel_start_diameter"]
    if start < hole:
        yield passed(
            "The lead starts at {start}, inside the hole of {hole}: the reamer enters.",
            start=length(start),
            hole=length(hole),
        )
        return
    yield complaint(
        "watch",
        "The lead starts at {start}, and the hole before reaming has {hole}: the reamer does not enter.",
        _ways_in(given, start, hole, needed.value),
        start=length(start),
        hole=length(hole),
    )


def _ways_in(given: Inputs, start: float, hole: float, needed: float) -> list[Way]:
    if given.has("bevel_length"):
        longer = length(needed, Rounding.UP)
        ways = [way("make the lead more than {needed} long", "bevel_length", "needed", longer)]
    else:
        inside = length(hole, Rounding.DOWN)
        ways = [way("let the lead start under {inside}", "bevel_start_diameter", "inside", inside)]
    less = length(given.number("diameter") - start, Rounding.DOWN)
    return [*ways, way("leave less than {less} for reaming", "reaming_stock", "less", less)]


def _stock_notes(given: Inputs, ground: dict[str, float]) -> Iterator[Check]:
    if not ground:
        return
    if ground["axial_stock"] == 0:
        yield passed("The corner is not worn: nothing has to be ground off the lead.")
        return
    yield note(
        "Take {axial} along the axis off every tooth, which is {square} square to the lead: then the corner stands behind "
        "the wear.",
        axial=length(ground["axial_stock"]),
        square=length(ground["square_stock"]),
    )
    if "bevel_length_after" in ground:
        yield note(
            "The lead is then {long} long and starts at {start}; cut {axial} off the end to keep it as long as it is.",
            long=length(ground["bevel_length_after"]),
            start=length(ground["bevel_start_after"]),
            axial=length(ground["axial_stock"]),
        )
    if ground.get("size_lost", 0.0) >= SEEN:
        yield note(
            "By the back taper the corner then stands on a circle that is {lost} smaller, {after}.",
            lost=length(ground["size_lost"]),
            after=length(ground["diameter_after"]),
        )


def _checks(given: Inputs, lead: dict[str, float], ground: dict[str, float]) -> tuple[Check, ...]:
    reliefs = _reliefs(given)
    return worst_first(
        (
            *_relief_checks(given, reliefs),
            *_enters(given, lead),
            swivel_of_lead(given.number("bevel_angle"), reliefs.get(RELIEF_KEYS["radial"], 0.0)),
            *_stock_notes(given, ground),
        )
    )


def _trial(given: Inputs, _: Check) -> tuple[Check, ...]:
    lead = _lead(given)
    return _checks(given, lead, _ground(given, lead))


def _compute(given: Inputs) -> Result:
    lead = _lead(given)
    ground = _ground(given, lead)
    diameter, slope = given.number("diameter"), given.number("bevel_angle")
    outputs = {"bevel_angle": slope, **lead, **ground, **_reliefs(given)}
    if given.has("reaming_stock"):
        outputs["least_bevel_length"] = given.number("reaming_stock") / 2 / math.tan(slope)
    found = Result(
        outputs,
        checks=_checks(given, lead, ground),
        side=lead_view(diameter, slope, lead.get("bevel_length"), EXAMPLE_LEAD * diameter),
    )
    return settled(found, given, _trial)


CALCULATION = Calculation(
    name="bevel-lead",
    title="Bevel lead of a reamer",
    question="How long is the bevel lead, where does it start, what is its relief in each view, and what does a worn corner take?",
    wants="The diameter is that of the lands, the bevel that of one side to the axis, and the relief is given square to the "
    "lead. Wear is what is gone where the corner was: on the radius, or along the land behind it.",
    neglects="It takes the lead as a straight cone and the worn edge as it was measured on the worst tooth. After grinding, "
    "the end is as it was until you cut it back.",
    kinds=("reamer",),
    surfaces=("bevel",),
    inputs=(
        Field("diameter"),
        Field("bevel_angle"),
        Field("bevel_length", optional=True, one_of="lead"),
        Field("bevel_start_diameter", optional=True, one_of="lead"),
        Field("relief_angle", optional=True),
        Field("reaming_stock", optional=True),
        Field("corner_wear", optional=True),
        Field("corner_wear_length", optional=True),
        Field("back_taper", optional=True, one_of="taper"),
        Field("taper_ratio", optional=True, one_of="taper"),
    ),
    outputs=(
        "bevel_length",
        "bevel_start_diameter",
        "axial_stock",
        "square_stock",
        "bevel_length_after",
        "bevel_start_after",
        "size_lost",
        "diameter_after",
        "least_bevel_length",
        "bevel_angle",
        "normal_relief_angle",
        "radial_relief_angle",
        "axial_relief_angle",
    ),
    cautions=(*AT_THE_WHEEL, "sharp-edges"),
    compute=_compute,
    role=Role(
        place=45,
        of_course=("reamer",),
        about="corner_wear",
        ground=("bevel",),
        sets=("bevel_angle", "axial_stock"),
        hands_on="bevel_angle",
        tells=("pass", "note"),
    ),
    sample={
        "diameter": 12.0,
        "bevel_angle": math.radians(45),
        "bevel_length": 1.5,
        "relief_angle": math.radians(7),
        "reaming_stock": 0.2,
        "corner_wear": 0.12,
        "taper_ratio": 0.0002,
    },
)
