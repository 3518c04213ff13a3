"""Both ends of every shoulder of a step drill held against the least and the most relief that will do.

On one shoulder the relief falls from its inner to its outer end, as the tangent goes with one over the diameter; one
throw for several shoulders spreads it further. Derived.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from geometry.calculation import Check
from geometry.complaints import complaint
from geometry.cone import relief as cone
from geometry.cone.steps import RelievedShoulder, Shoulder
from geometry.cures import Way
from geometry.sentences import Amount, Rounding, angle, count, length

SHOWS = 1e-5
"""A relief (rad) this near to its limit shows as that limit: half of the last digit of an angle."""


@dataclass(frozen=True)
class End:
    """One end of a shoulder whose relief is out of its limits.

    Attributes:
        shoulder: which one.
        name: of the end: inner or outer.
        diameter: there, in mm.
        relief: square to the cone, in radians.
        over: whether it is more than the most that will do, and not less than the least.
    """

    shoulder: Shoulder
    name: str
    diameter: float
    relief: float
    over: bool


def out_of_range(cuts: Sequence[RelievedShoulder], low: float | None, high: float | None) -> tuple[End, ...]:
    """The ends of shoulders that have less or more relief than will do, from the point up.

    Args:
        cuts: the shoulders under their cam.
        low: the least relief in radians, square to the cone; nothing where there is no such limit.
        high: the most.

    Example:
        >>> import math
        >>> from geometry.cone.steps import relieved
        >>> cut = relieved(Shoulder(1, math.pi / 2, 6.0, 10.0), 4.0, 0.0, 2 * math.pi)
        >>> [(one.name, round(math.degrees(one.relief), 1)) for one in out_of_range([cut], 0.08, math.radians(8))]
        [('inner', 8.5)]
    """
    return tuple(_ends(cuts, low, high))


def _ends(cuts: Sequence[RelievedShoulder], low: float | None, high: float | None) -> Iterator[End]:
    for cut in cuts:
        for name, place in (("inner", cut.shoulder.inner), ("outer", cut.shoulder.outer)):
            found = cut.relief(place)
            if high is not None and found > high + SHOWS:
                yield End(cut.shoulder, name, place, found, over=True)
            elif low is not None and found < low - SHOWS:
                yield End(cut.shoulder, name, place, found, over=False)


def alone_within(shoulder: Shoulder, low: float, high: float) -> bool:
    """Whether some throw of its own keeps a shoulder within its limits from end to end.

    Args:
        shoulder: which one.
        low: the least relief in radians, square to the cone.
        high: the most.

    Example:
        >>> from math import radians
        >>> [alone_within(Shoulder(1, 2.0, 6.0, outer), radians(8), radians(12)) for outer in (8.0, 10.0)]
        [True, False]
    """
    least = cone.square_throw_for(low, shoulder.outer)
    return cone.relief_angle(least, shoulder.inner) <= high + SHOWS


@dataclass(frozen=True)
class OwnThrow:
    """The radial throws that keep one shoulder by itself within its limits.

    Attributes:
        shoulder: which one.
        least: in mm.
        most: in mm.
        per: "per turn" or "per tooth".
    """

    shoulder: Shoulder
    least: float
    most: float
    per: str


def range_check(
    found: Sequence[End],
    cuts: Sequence[RelievedShoulder],
    low: float | None,
    high: float | None,
    ways: Sequence[Way] = (),
    throws: Sequence[OwnThrow] = (),
) -> Check:
    """The watch for ends that are out of their limits: each with its shoulder, its diameter and its relief.

    Args:
        found: those ends, at least one.
        cuts: all shoulders.
        low: the least relief that will do, in radians, or nothing.
        high: the most, or nothing.
        ways: what may bring all of them within; what else may be said is told where there are none.
        throws: of each shoulder that can be served by itself, which throw does it.
    """
    parts: dict[str, Amount | str] = {}
    told = [_shoulder(list(ends), parts) for _, ends in groupby(found, key=lambda one: one.shoulder.number)]
    limits = {"low": low, "high": high}
    parts |= {name: angle(number) for name, number in limits.items() if number is not None}
    will_do = "{low} to {high} will do" if len(parts.keys() & limits) == 2 else "at most {high} will do"
    will_do = will_do if high is not None else "at least {low} will do"
    each = "each " if len(told) > 1 else ""
    says = f"S{'; '.join(told)[1:]}, {each}square to its cone: {will_do}."
    out = {one.shoulder for one in found}
    wanting = [one for one in throws if one.shoulder in out]  # The others have a throw that serves them.
    always = _one_by_one(cuts, low, high, parts, wanting, out) if not ways else ()
    return complaint("watch", says, ways, always, **parts)


def _shoulder(ends: Sequence[End], parts: dict[str, Amount | str]) -> str:
    """What is told of one shoulder; its amounts go into the parts."""
    number = ends[0].shoulder.number
    parts[f"number{number}"] = count(number)
    said = []
    for one in ends:
        at = f"{number}{one.name}"
        parts |= {f"found{at}": angle(one.relief), f"place{at}": length(one.diameter)}
        said.append(f"{{found{at}}} at its {one.name} end ({{place{at}}})")
    return f"shoulder {{number{number}}} has {' and '.join(said)}"


def _one_by_one(
    cuts: Sequence[RelievedShoulder],
    low: float | None,
    high: float | None,
    parts: dict[str, Amount | str],
    throws: Sequence[OwnThrow],
    out: Collection[Shoulder],
) -> tuple[str, ...]:
    """What helps where one throw cannot serve all: one for each shoulder, as far as a shoulder can be served at all.

    A throw serves all the steps that it is worked out with, so that a second one is worked out by itself.
    """
    if low is None or high is None:
        return ()
    never = [cut.shoulder for cut in cuts if not alone_within(cut.shoulder, low, high)]
    if not never:
        if len(cuts) < 2:
            return ()
        if len(throws) == 1 and out == {throws[0].shoulder}:
            which = _which(throws, parts, is_one=True)
            return (f"grind it {_OWN_CARD}{which}",)
        return (f"grind each shoulder with a throw of its own{_by_itself(throws, parts)}",)
    parts |= {f"never{one.number}": count(one.number) for one in never}
    which = " and ".join(f"{{never{one.number}}}" for one in never)
    own = f"grind each with a throw of its own{_by_itself(throws, parts)}; " if len(cuts) > 1 else ""
    return (f"{own}over the whole of shoulder {which} no throw keeps both limits",)


_OWN_CARD = "on a card of its two steps"
"""How a throw of its own is worked out; ground back are all shoulders alike, so that they still follow each other."""


def _by_itself(throws: Sequence[OwnThrow], parts: dict[str, Amount | str]) -> str:
    """How a throw of its own is had, and which it is for each shoulder; the amounts go into the parts."""
    return f", all as far back, {_OWN_CARD}{_which(throws, parts)}"


def _which(throws: Sequence[OwnThrow], parts: dict[str, Amount | str], *, is_one: bool = False) -> str:
    """The throws that serve, each with its shoulder where it is not the one that is spoken of; the amounts go into the parts."""
    said = []
    for one in throws:
        at = one.shoulder.number
        parts |= {f"least{at}": length(one.least, Rounding.UP), f"most{at}": length(one.most, Rounding.DOWN)}
        if not is_one:
            parts[f"shoulder{at}"] = count(at)
        said.append(
            f"{{least{at}}} to {{most{at}}} {one.per}" + ("" if is_one else f" for shoulder {{shoulder{at}}}")
        )
    return f": {', '.join(said)}" if said else ""
