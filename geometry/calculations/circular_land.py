"""How wide a circular land is for its diameter, how an indicator proves it, and where it ends."""

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
    worst_first,
)
from geometry.complaints import complaint, settled
from geometry.cures import way
from geometry.plausible import relief_plausible
from geometry.preconditions import refuse
from geometry.role import Role
from geometry.sentences import Rounding, angle, length
from geometry.tooth import eccentric, flat
from geometry.tooth.circular_land import first_fall, narrowing_stock
from geometry.tooth.land import land_angle

WIDEST = 0.05
"""The circular land as a share of the diameter beyond which it squeezes the hole; common practice, no source."""

HAIR = 1e-6
"""The share by which a limit is undercut, so that what is advised is free of the complaint."""


@dataclass(frozen=True)
class _Land:
    """A circular land and the relief behind it.

    Attributes:
        diameter: of the circle, in mm.
        ends: where it ends behind the edge, in radians; nothing where no reading can tell.
        relief: where it ends, in radians.
        form: of the relief, ``eccentric`` or ``flat``.
        division: of the indicator, in mm.
        falls: how far behind its end the relief has fallen by one division, in radians; nothing where it never does.
    """

    diameter: float
    ends: float | None
    relief: float
    form: str
    division: float
    falls: float | None

    @property
    def width(self) -> float:
        """Round the circle, in mm."""
        return (self.ends or 0.0) * self.diameter / 2

    def drop(self, turned: float) -> float:
        """How far the relief lies inside the circle, ``turned`` (rad) behind the end, in mm."""
        if self.form == "eccentric":
            return eccentric.profile(self.relief, self.diameter)(turned)
        return flat.profile(self.relief, self.diameter)(turned)


def _land(given: Inputs) -> _Land:
    diameter, relief = given.number("diameter"), given.number("relief_angle")
    form, division = given.choice("relief_form"), given.number("indicator_division")
    falls = first_fall(division, relief, diameter, form)
    ends: float | None
    if given.has("margin_width"):
        ends = land_angle(given.number("margin_width"), diameter, "arc")
    else:
        ends = None if falls is None else max(0.0, given.number("first_division_angle") - falls)
    return _Land(diameter, ends, relief, form, division, falls)


def _never_falls(land: _Land) -> Check:
    """The complaint about a relief that no indicator of this division shows."""
    once_round = math.atan2(land.division, math.pi * land.diameter)
    deepest = math.acos(max(-1.0, 1 - 2 * land.division / land.diameter))
    enough = angle(deepest if land.form == "flat" else once_round, Rounding.UP)
    ways = [way("raise the relief above {enough}", "relief_angle", "enough", enough)]
    if land.form == "flat":
        finest = length(land.drop(land.relief) * (1 - HAIR), Rounding.DOWN)
        ways.append(way("take an indicator that shows {finest}", "indicator_division", "finest", finest))
    return complaint(
        "stop" if land.relief == 0 else "watch",
        "The relief never falls by one division of the indicator, so nothing shows where the circular land ends.",
        ways,
    )


def _width_check(given: Inputs, land: _Land) -> Iterator[Check]:
    most = WIDEST * land.diameter
    if land.width <= most * (1 + 1e-9):
        return
    says = (
        "A circular land of {land} is wide for a tool of {diameter}: it squeezes the hole and picks up metal."
    )
    parts = {"land": length(land.width), "diameter": length(land.diameter)}
    if given.has("margin_width"):
        narrow = length(most, Rounding.DOWN)
        yield complaint(
            "watch", says, [way("narrow it to {most} or less", "margin_width", "most", narrow)], **parts
        )
        return
    assert land.falls is not None, "a width that was read has a first division"
    turn = angle(land_angle(most, land.diameter, "arc") + land.falls, Rounding.DOWN)
    narrower = "grind its relief until the first division shows at {turn} or less"
    yield complaint("watch", says, [way(narrower, "first_division_angle", "turn", turn)], **parts)


def _proof(land: _Land) -> Iterator[Check]:
    """What the indicator shows of a land that is there."""
    if land.falls is None:
        yield _never_falls(land)
        return
    assert land.ends is not None, "only a relief that never shows leaves the end unknown"
    if land.ends == 0:
        yield note(
            "There is no circular land: the relief begins at the edge, and the first division shows {turn} behind it.",
            turn=angle(land.falls),
        )
        return
    reads = land.ends + land.falls
    if land.falls > land.ends * (1 + 1e-9):
        finest = land.drop(min(land.ends, land.relief if land.form == "flat" else math.inf)) * (1 - HAIR)
        yield complaint(
            "watch",
            "The indicator shows a land of {read}, more than twice as wide as it is.",
            [way("take an indicator that shows {finest}", "indicator_division", "finest",
                 length(finest, Rounding.DOWN))],
            ["measure the land under a glass"],
            read=length(reads * land.diameter / 2),
        )  # fmt: skip
        return
    yield passed(
        "The indicator proves the land: it stands still for {turn}, {land} round the circle, and has fallen one division "
        "of {division} at {reads} from the edge.",
        turn=angle(land.ends),
        land=length(land.width),
        division=length(land.division),
        reads=angle(reads),
    )


def _stock(given: Inputs, land: _Land) -> float | None:
    """What comes off the relief to narrow the land, where it is known how wide it is now."""
    if not given.has("margin_now") or land.ends is None:
        return None
    now = land_angle(given.number("margin_now"), land.diameter, "arc")
    if now < land.ends * (1 - 1e-9):
        raise refuse(
            "margin_now",
            "A circular land of {now} is narrower than the {land} wanted: grinding its relief only makes it narrower. Grind "
            "the circle first.",
            {"now": length(given.number("margin_now")), "land": length(land.width)},
        )
    return narrowing_stock(max(now, land.ends), land.ends, land.relief, land.diameter, land.form)


def _checks(given: Inputs) -> tuple[Check, ...]:
    land = _land(given)
    _stock(given, land)  # refuses a land that is too narrow already
    found = [
        *relief_plausible(land.relief, "land", key="relief_angle"),
        *_width_check(given, land),
        *_proof(land),
    ]
    return worst_first(found)


def _infeed(stock: float, land: _Land) -> Check:
    if stock == 0:
        return note("The circular land is as narrow as wanted already: grind no more off its relief.")
    return note(
        "Feed {stock} after the first spark, {way}: the circular land then is {land} wide. Look at it before the last cut.",
        stock=length(stock),
        way="square to the facet" if land.form == "flat" else "on the radius",
        land=length(land.width),
    )


def _rows(land: _Land) -> tuple[Row, ...]:
    """Where the land ends, and where the indicator has fallen by one, two and five divisions."""
    if land.falls is None or land.ends is None:
        return ()
    rows = [Row("circular land ends", {"turn_from_edge": land.ends, "drop": 0.0})]
    for divisions, label in ((1, "one division"), (2, "two divisions"), (5, "five divisions")):
        drop = divisions * land.division
        behind = first_fall(drop, land.relief, land.diameter, land.form)
        if behind is not None and land.ends + behind <= 2 * math.pi:
            rows.append(Row(label, {"turn_from_edge": land.ends + behind, "drop": drop}))
    return tuple(rows)


def _compute(given: Inputs) -> Result:
    land, outputs = _land(given), {}
    if land.ends is not None:
        outputs["margin_width"] = land.width
    if land.ends is not None and land.falls is not None:
        reads = land.ends + land.falls
        outputs |= {"first_division_angle": reads, "land_as_read": reads * land.diameter / 2}
    stock, checks = _stock(given, land), _checks(given)
    if stock is not None:
        outputs["land_stock"] = stock
        checks = worst_first((*checks, _infeed(stock, land)))
    return settled(Result(outputs, rows=_rows(land), checks=checks), given, lambda other, _: _checks(other))


CALCULATION = Calculation(
    name="circular-land",
    title="Circular land, proved by the indicator",
    question="Is the circular land right for its diameter, where does it end, and how does the indicator prove it?",
    wants="The diameter is that of the circle the edges run on; the circular land is measured round it, or found from how far "
    "the tool turns until the indicator has fallen by one division; the relief counts from the tangent where the land ends.",
    neglects="It takes the land as running true on the circle, which a tool out of true between its centres does not; whether "
    "the heel clears is another question. How wide is too wide is common practice, no source; ask the book for the width.",
    kinds=("reamer", "tap"),
    belongs_on=("land", "thread-land"),
    beside=True,
    inputs=(
        Field("diameter"),
        Field("margin_width", one_of="land"),
        Field("first_division_angle", one_of="land", measured=True),
        Field("relief_angle", fill_from=("land_relief_angle", "thread_relief_angle")),
        Field("relief_form", default="flat"),
        Field("indicator_division", default=0.01),
        Field("margin_now", optional=True, measured=True),
    ),
    outputs=("first_division_angle", "margin_width", "land_as_read", "land_stock"),
    cautions=(*AT_THE_WHEEL, "sharp-edges", "light-cut-on-a-land"),
    compute=_compute,
    role=Role(
        place=126,
        of_course=(),
        about="margin_width",
        ground=("land", "thread-land"),
        tells=("pass", "note"),
        tabled=True,
    ),
    sample={
        "diameter": 10.0,
        "margin_width": 0.2,
        "relief_angle": math.radians(6),
        "indicator_division": 0.005,
        "margin_now": 0.5,
    },
)
