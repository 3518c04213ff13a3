"""The back taper of a tool in all the ways it is stated, and the swivel that grinds it."""

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
    Row,
    note,
    passed,
    worst_first,
)
from geometry.complaints import complaint, settled
from geometry.cures import Way, way
from geometry.plausible import back_plausible
from geometry.preconditions import NotGiven
from geometry.role import Role
from geometry.sentences import Amount, Rounding, angle, length, ratio
from geometry.setting.taper import diameter_behind, swivel_of_taper, taper_of_angle, taper_of_diameters

PER = 100.0
"""Back taper is stated over this length in mm; the sentences take it where no length was given."""

SCALE_SHOWS = math.radians(0.1)
"""The least swivel that the scale of a table shows well: a tenth of a degree; no source."""


def _taper(given: Inputs) -> float:
    """The loss of diameter for each unit of length, from whichever way it was stated."""
    if given.has("taper_ratio"):
        return given.number("taper_ratio")
    if given.has("back_taper"):
        return given.number("back_taper") / PER
    if given.has("taper_angle"):
        return taper_of_angle(given.number("taper_angle"))
    if given.has("swivel_angle"):
        return 2 * math.tan(given.number("swivel_angle"))
    if not given.has("taper_length"):
        raise NotGiven("Give the taper length between the two diameters as well.", "taper_length")
    return taper_of_diameters(
        given.number("diameter"), given.number("back_diameter"), given.number("taper_length")
    )


def _more_taper(given: Inputs) -> Way:
    """What gives the tool some taper, in the words of the input that holds it."""
    if given.has("back_diameter"):
        front = length(given.number("diameter"))
        return way("bring the diameter at the back below {front}", "back_diameter", "front", front)
    if given.has("swivel_angle"):
        return way("swivel the table above {zero}", "swivel_angle", "zero", angle(0.0))
    if given.has("taper_angle"):
        return way("give the whole angle above {zero}", "taper_angle", "zero", angle(0.0))
    if given.has("back_taper"):
        return way("bring the taper above {zero} over 100 mm", "back_taper", "zero", length(0.0))
    return way("bring the taper above {zero} for each unit of length", "taper_ratio", "zero", ratio(0.0))


def _grows(given: Inputs, taper: float, per: float) -> Check:
    """The stop for a tool that is larger at the back."""
    says = "The tool grows toward the back, by {growth} in {per}: it binds in its hole."
    parts: dict[str, Amount | str] = {"growth": length(-taper * per), "per": length(per)}
    if given.has("swivel_angle"):
        turned = angle(-given.number("swivel_angle"), Rounding.UP)
        other = way("swivel the table {turned} the other way", "swivel_angle", "turned", turned)
        return complaint("stop", says, [other], **parts)
    return complaint("stop", says, [_more_taper(given)], ["swivel the table the other way"], **parts)


def _checks(given: Inputs, taper: float, per: float) -> Iterator[Check]:
    if taper < 0:
        yield _grows(given, taper, per)
        return
    if taper == 0:
        says = "There is no taper: the body is as large at the back as at the front and may bind."
        yield complaint("watch", says, [_more_taper(given)])
        return
    if given.has("back_diameter"):
        yield from back_plausible(given.number("back_diameter"), given.number("diameter"))
    yield passed(
        "The tool is smaller toward the back: it loses {loss} on the diameter in {per}, a taper of {taper} for each unit of "
        "length.",
        loss=length(taper * per),
        per=length(per),
        taper=ratio(taper),
    )
    yield _setting(taper, per)


def _setting(taper: float, per: float) -> Check:
    swivel = swivel_of_taper(taper)
    parts = {"per": length(per), "fall": length(taper * per / 2)}
    if swivel < SCALE_SHOWS:
        return note(
            "The swivel of the table is less than its scale shows: set it so that an indicator along the side falls {fall} in {per}.",
            **parts,
        )
    return note(
        "Swivel the table {swivel} and prove it: an indicator along the side falls {fall} in {per}.",
        swivel=angle(swivel),
        **parts,
    )


def _row(front: float, taper: float, distance: float) -> Row:
    there = diameter_behind(front, taper, distance)
    values = {
        "distance_from_front": distance,
        "diameter_there": there,
        "indicator_fall": taper * distance / 2,
    }
    return Row("Behind the front" if distance > 0 else "At the front", values)


def _distances(given: Inputs) -> list[float]:
    """The places behind the front to show, from the front on."""
    if given.has("distance_from_front"):
        return sorted(given.numbers("distance_from_front"))
    return [given.number("taper_length")] if given.has("taper_length") else []


def _all_checks(given: Inputs) -> tuple[Check, ...]:
    distances, taper = _distances(given), _taper(given)
    for distance in distances:
        diameter_behind(given.number("diameter"), taper, distance)  # refuses what comes to a point before
    per = distances[-1] if distances and distances[-1] > 0 else PER
    return worst_first(_checks(given, taper, per))


def _compute(given: Inputs) -> Result:
    front, taper = given.number("diameter"), _taper(given)
    swivel = swivel_of_taper(taper)
    outputs = {"swivel_angle": swivel, "taper_ratio": taper, "taper_angle": 2 * swivel}
    rows = tuple(_row(front, taper, distance) for distance in _distances(given))
    if rows:
        outputs |= {key: rows[-1].values[key] for key in ("diameter_there", "indicator_fall")}
    return settled(
        Result(outputs, rows=rows, checks=_all_checks(given)), given, lambda other, _: _all_checks(other)
    )


CALCULATION = Calculation(
    name="back-taper",
    title="Back taper and its swivel",
    question="How much smaller is the tool toward the back, and how far is the table swivelled for it?",
    wants="The diameter is that at the front, over the edges; state the taper on the diameter in any one way: over 100 mm, as a ratio, "
    "by the diameter at the back and how far back it was measured, as the whole angle, or as the angle of one side.",
    neglects="It takes the side as straight and the tool as running true between its centres. "
    "The indicator readings are those of one side, half of what the diameter loses.",
    kinds=("reamer", "twist-drill", "tap", "step-drill", "subland-drill", "counterbore"),
    belongs_on=("land", "thread-land"),
    inputs=(
        Field("diameter"),
        Field("back_taper", one_of="taper"),
        Field("taper_ratio", one_of="taper"),
        Field("back_diameter", one_of="taper"),
        Field("taper_angle", one_of="taper"),
        Field("swivel_angle", one_of="taper"),
        Field("taper_length", optional=True),
        Field("distance_from_front", optional=True, many=True),
    ),
    outputs=("swivel_angle", "taper_ratio", "taper_angle", "diameter_there", "indicator_fall"),
    cautions=AT_THE_WHEEL,
    compute=_compute,
    role=Role(
        place=150,
        of_course=("reamer",),
        about="back_diameter",
        ground=("land", "thread-land"),
        sets=("swivel_angle",),
        tells=("note",),
        as_ground=True,
    ),
    sample={
        "diameter": 10.0,
        "back_diameter": 9.95,
        "taper_length": 80.0,
        "distance_from_front": (20.0, 40.0, 80.0),
    },
)
