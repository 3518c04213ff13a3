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
    stop,
    watch,
    worst_first,
)
from geometry.checking import NotGiven
from geometry.quantities import quantity
from geometry.sentences import angle, length, ratio
from geometry.setting.taper import diameter_behind, swivel_of_taper, taper_of_angle, taper_of_diameters

PER = 100.0
"""Back taper is stated over this length in mm; the sentences take it where no length was given."""

SCALE_SHOWS = math.radians(0.1)
"""The least swivel that the scale of a table shows well: a tenth of a degree; no source."""


HAIR = 1e-6
"""The share by which a diameter that would just bind is lessened, so that what is advised does not."""


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


def _checks(given: Inputs, taper: float, per: float) -> Iterator[Check]:
    front = given.number("diameter")
    below = front * (1 - HAIR)
    may = given.has("back_diameter") and below >= quantity("back_diameter").low
    smaller = (("back_diameter", below),) if may else ()
    if taper < 0 and not smaller:
        yield stop(
            "The tool grows toward the back, by {growth} in {per}: it binds in its hole. Swivel the table the other way.",
            growth=length(-taper * per),
            per=length(per),
        )
        return
    if taper < 0:
        yield stop(
            "The tool grows toward the back, by {growth} in {per}: it binds in its hole. Bring the diameter at the back below "
            "{front}.",
            cure=smaller,
            growth=length(-taper * per),
            per=length(per),
            front=length(front),
        )
        return
    if taper == 0:
        yield watch(
            "There is no taper: the body is as large at the back as at the front and may bind. Bring the diameter at the back "
            "below {front}.",
            cure=smaller,
            front=length(front),
        )
        return
    yield passed(
        "The tool is smaller toward the back: it loses {loss} on the diameter in {per}, a taper of {taper} for each unit of "
        "length.",
        loss=length(taper * per),
        per=length(per),
        taper=ratio(taper),
    )
    yield _setting(taper, per)


def _setting(taper: float, per: float) -> Check:
    parts = {
        "per": length(per),
        "swivel": angle(swivel_of_taper(taper)),
        "fall": length(taper * per / 2),
    }
    if swivel_of_taper(taper) < SCALE_SHOWS:
        return note(
            "Swivel the table {swivel}, less than its scale shows: set it so that an indicator along the side falls {fall} "
            "in {per}.",
            **parts,
        )
    return note(
        "Swivel the table {swivel} and prove it: an indicator along the side falls {fall} in {per}.", **parts
    )


def _row(front: float, taper: float, distance: float) -> Row:
    there = diameter_behind(front, taper, distance)
    values = {
        "distance_from_front": distance,
        "diameter_there": there,
        "indicator_fall": taper * distance / 2,
    }
    return Row("Behind the front" if distance > 0 else "At the front", values)


def _compute(given: Inputs) -> Result:
    front, taper = given.number("diameter"), _taper(given)
    swivel = swivel_of_taper(taper)
    outputs = {"swivel_angle": swivel, "taper_ratio": taper, "taper_angle": 2 * swivel}
    if given.has("distance_from_front"):
        distances = sorted(given.numbers("distance_from_front"))
    else:
        distances = [given.number("taper_length")] if given.has("taper_length") else []
    rows = tuple(_row(front, taper, distance) for distance in distances)
    if rows:
        outputs |= {key: rows[-1].values[key] for key in ("diameter_there", "indicator_fall")}
    return Result(
        outputs,
        rows=rows,
        checks=worst_first(_checks(given, taper, distances[-1] if distances and distances[-1] > 0 else PER)),
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
)
