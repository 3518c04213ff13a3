"""The taper of a tool in all the ways it is stated, smaller or larger toward the back, and the swivel that grinds it."""

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
from geometry.quantities.reamer import LARGER, SMALLER
from geometry.role import Role
from geometry.sentences import Amount, Rounding, angle, length, ratio
from geometry.setting.cut_taper import Cut, cut_checks
from geometry.setting.taper import (
    PER,
    STEEP,
    diameter_behind,
    over,
    swivel_of_taper,
    taper_of_angle,
    taper_of_diameters,
)

CUTS_ONE = "choose larger in the line 'Toward the back' where the tool cuts a taper"
"""What else a taper may mean that is no back taper."""

SCALE_SHOWS = math.radians(0.1)
"""The least swivel that the scale of a table shows well: a tenth of a degree; no source."""


def _cuts(given: Inputs) -> bool:
    """Whether the tool cuts a taper, so that it is larger toward the back."""
    return given.choice("taper_direction") == LARGER


STATED = ("taper_ratio", "back_taper", "taper_angle", "swivel_angle", "back_diameter")
"""The inputs that state the taper, of which one is given."""


def _taper(given: Inputs) -> float:
    """The taper in the way in which the tool runs, for each unit of length, from whichever way it was stated."""
    if given.has("taper_ratio"):
        return given.number("taper_ratio")
    if given.has("back_taper") and not _cuts(given):
        return given.number("back_taper") / PER
    if given.has("taper_angle"):
        return taper_of_angle(given.number("taper_angle"))
    if given.has("swivel_angle"):
        return 2 * math.tan(given.number("swivel_angle"))
    if not given.has("back_diameter"):
        raise NotGiven("Give the taper, or the diameter at the back.", "taper_ratio")
    if not given.has("taper_length"):
        raise NotGiven("Give the taper length between the two diameters as well.", "taper_length")
    fall = taper_of_diameters(
        given.number("diameter"), given.number("back_diameter"), given.number("taper_length")
    )
    return 0.0 - fall if _cuts(given) else fall


def _set_taper(given: Inputs) -> float:
    """The taper that the table is swivelled for: what was measured is ground to what is wanted."""
    if _cuts(given) and given.has("back_diameter") and given.has("wanted_taper"):
        return given.number("wanted_taper")
    return _taper(given)


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


def _grows(given: Inputs, taper: float, per: float | None) -> Check:
    """The stop for a tool that is larger at the back."""
    says = "The tool grows toward the back, by {growth} over {per}: it binds in its hole."
    growth, told = over(-taper, per)
    parts: dict[str, Amount | str] = {"growth": growth, "per": told}
    if given.has("swivel_angle"):
        turned = angle(-given.number("swivel_angle"), Rounding.UP)
        other = way("swivel the table {turned} the other way", "swivel_angle", "turned", turned)
        return complaint("stop", says, [other], **parts)
    always = ["swivel the table the other way", *([CUTS_ONE] if -taper >= STEEP else [])]
    return complaint("stop", says, [_more_taper(given)], always, **parts)


def _checks(given: Inputs, taper: float, per: float | None) -> Iterator[Check]:
    """What is said of a tool that is to be smaller toward the back."""
    if taper < 0:
        yield _grows(given, taper, per)
        return
    if taper == 0:
        says = "There is no taper: the body is as large at the back as at the front and may bind."
        yield complaint("watch", says, [_more_taper(given)])
        return
    back = given.number("back_diameter") if given.has("back_diameter") else None
    doubts = back_plausible(back, given.number("diameter")) if back is not None else ()
    yield from doubts
    loss, told = over(taper, per)
    parts = {"loss": loss, "per": told, "taper": ratio(taper)}
    if taper >= STEEP and not doubts:
        says = (
            "The tool would be smaller toward the back by {loss} on the diameter over {per}, a taper of {taper} for each unit of "
            "length: no back taper is so steep."
        )
        yield complaint("watch", says, (), [CUTS_ONE], **parts)
    elif taper < STEEP:
        yield passed(
            "The tool is smaller toward the back: it loses {loss} on the diameter over {per}, a taper of {taper} for each unit of "
            "length.",
            **parts,
        )
    yield _setting(taper, per, "falls")


def _setting(taper: float, per: float | None, moves: str) -> Check:
    """How the table is set, and what an indicator along the side shows for it."""
    swivel = swivel_of_taper(taper)
    fall, told = over(taper / 2, per)
    parts = {"per": told, "fall": fall}
    if swivel < SCALE_SHOWS:
        return note(
            f"The swivel of the table is less than its scale shows: set it so that an indicator along the side {moves} {{fall}} over "
            "{per}.",
            **parts,
        )
    toward = ", so that the tool grows toward its shank," if moves == "rises" else ""
    return note(
        f"Swivel the table {{swivel}}{toward} and prove it: an indicator along the side {moves} {{fall}} over {{per}}.",
        swivel=angle(swivel),
        **parts,
    )


def _row(given: Inputs, taper: float, distance: float) -> Row:
    cuts = _cuts(given)
    values = {
        "distance_from_front": distance,
        "diameter_there": diameter_behind(given.number("diameter"), -taper if cuts else taper, distance),
        "indicator_rise" if cuts else "indicator_fall": taper * distance / 2,
    }
    return Row("Behind the front" if distance > 0 else "At the front", values)


def _distances(given: Inputs) -> list[float]:
    """The places behind the front to show, from the front on."""
    if given.has("distance_from_front"):
        return sorted(given.numbers("distance_from_front"))
    return [given.number("taper_length")] if given.has("taper_length") else []


def _per(given: Inputs) -> float | None:
    """The length over which the sentences tell the taper; nothing where none was given."""
    distances = _distances(given)
    return distances[-1] if distances and distances[-1] > 0 else None


def _larger_checks(given: Inputs) -> Iterator[Check]:
    """What is said of a tool that cuts a taper."""
    per, to_set = _per(given), _set_taper(given)
    if not (_waits(given) and given.has("wanted_taper")):
        wanted = given.number("wanted_taper") if given.has("wanted_taper") else None
        stated = next(key for key in STATED if given.has(key))
        measured_over = given.number("taper_length") if stated == "back_diameter" else per
        yield from cut_checks(Cut(given.number("diameter"), _taper(given), measured_over, wanted, stated))
    if to_set > 0:
        yield _setting(to_set, per, "rises")


def _waits(given: Inputs) -> bool:
    """Whether the diameter at the back says nothing yet, for want of the length."""
    return given.has("back_diameter") and not given.has("taper_length")


def _all_checks(given: Inputs) -> tuple[Check, ...]:
    if _cuts(given):
        return worst_first(_larger_checks(given))
    taper = _taper(given)
    for distance in _distances(given):
        diameter_behind(given.number("diameter"), taper, distance)  # refuses what comes to a point before
    return worst_first(_checks(given, taper, _per(given)))


def _compute(given: Inputs) -> Result:
    to_set = _set_taper(given)
    taper = to_set if _waits(given) else _taper(given)
    outputs = {
        "swivel_angle": swivel_of_taper(to_set),
        "taper_ratio": taper,
        "taper_angle": 2 * swivel_of_taper(taper),
    }
    rows = tuple(_row(given, to_set, distance) for distance in _distances(given))
    if rows:
        outputs |= {key: value for key, value in rows[-1].values.items() if key != "distance_from_front"}
    return settled(
        Result(outputs, rows=rows, checks=_all_checks(given)), given, lambda other, _: _all_checks(other)
    )


CALCULATION = Calculation(
    name="back-taper",
    title="Taper toward the back and its swivel",
    question="How much smaller is the tool toward the back, or larger where it cuts a taper, and how far is the table swivelled for it?",
    wants="The diameter is that at the front, over the edges, of a tool that cuts a taper its small end; state the taper on the diameter in any one way: over 100 mm, as a ratio, "
    "by the diameter at the back and how far back it was measured, as the whole angle, or as the angle of one side.",
    neglects="It takes the side as straight and the tool as running true between its centres. "
    "The indicator readings are those of one side, half of what the diameter loses or gains.",
    kinds=("reamer", "twist-drill", "tap", "step-drill", "subland-drill", "counterbore"),
    belongs_on=("land", "thread-land"),
    inputs=(
        Field("diameter"),
        Field("taper_direction", default=SMALLER),
        Field("back_taper", one_of="taper", when=("taper_direction", SMALLER)),
        Field("taper_ratio", one_of="taper"),
        Field("back_diameter", one_of="taper"),
        Field("taper_angle", one_of="taper"),
        Field("swivel_angle", one_of="taper"),
        Field("taper_length", optional=True),
        Field("wanted_taper", optional=True, when=("taper_direction", LARGER), fill_from=("taper_ratio",)),
        Field("distance_from_front", optional=True, many=True),
    ),
    outputs=(
        "swivel_angle",
        "taper_ratio",
        "taper_angle",
        "diameter_there",
        "indicator_fall",
        "indicator_rise",
    ),
    cautions=AT_THE_WHEEL,
    compute=_compute,
    role=Role(
        place=150,
        of_course=("reamer",),
        about="back_diameter",
        ground=("land", "thread-land"),
        sets=("swivel_angle",),
        said_of_setting="fall",
        asks=("wanted_taper",),
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
