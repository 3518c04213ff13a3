"""Check a throw against the cams of a machine: the drawer of fixed ones, and one whose throw is set.

That a fixed cam has throw enough is no good news by itself: it gives what it gives, and the calculation that takes
it says whether that is near what is wanted.
"""

from __future__ import annotations

from geometry.calculation import Check, passed, stop, watch
from geometry.edge.cam import NEAR_ENOUGH
from geometry.quantities import quantity
from geometry.sentences import Amount, Kind, Rounding, angle, length
from library.equipment.driving import Drive, Worked, drive
from library.equipment.model import Machine

SLACK = 1e-9
"""The share by which a throw may pass a limit, for it is a sum of roundings and no metal."""

TITLES = {"radial_throw": "radial throw", "needed_radial_throw": "radial throw", "axial_throw": "axial throw"}
"""What a throw is called that is one of two; the one for a cylinder is only the throw."""

TYPED = ("chosen_throw", "radial_throw", "axial_throw")
"""The inputs that hold the throw of a cam that was chosen."""


def cam_checks(machine: Machine, worked: Worked, flutes: int | None) -> tuple[Check, ...]:
    """What the cams of the machine cannot do, or what the nearest of them would give."""
    if not machine.has_cams:
        return ()
    found = []
    for key, travel, per in _travels(worked):
        needed = counted_per(travel, per, machine.throw_per, flutes)
        if needed is None:
            found.append(watch("How many flutes has the tool? The cams of {machine} are counted per {per}.",
                               machine=machine.title, per=machine.throw_per))  # fmt: skip
        elif needed > 0:
            found += _judged(machine, worked, key, needed, needed / travel)
    return tuple(found)


def _travels(worked: Worked) -> list[tuple[str, float, str]]:
    """What a cam has to do: the quantity, how far it moves (mm), and whether that is per turn or per tooth."""
    per = worked.values.get("throw_per")
    by_hand = [(key, value, per) for key in TYPED
               if isinstance(per, str) and isinstance(value := worked.values.get(key), float) and value != 0]  # fmt: skip
    if by_hand:
        return by_hand
    if "throw_per_turn" in worked.outputs:
        return [("throw_per_turn", worked.outputs["throw_per_turn"], "turn")]
    if "needed_radial_throw" not in worked.outputs or not isinstance(per, str):
        return []
    return [("needed_radial_throw", worked.outputs["needed_radial_throw"], per)]


def counted_per(travel: float, per: str, wanted: str, flutes: int | None) -> float | None:
    """A throw (mm) that is counted per turn or per tooth, counted as it is wanted; nothing for want of the flutes.

    Example:
        >>> counted_per(6.0, "turn", "tooth", 3), counted_per(6.0, "turn", "tooth", None)
        (2.0, None)
    """
    if per == wanted:
        return travel
    if not flutes:
        return None
    return travel / flutes if wanted == "tooth" else travel * flutes


def _judged(machine: Machine, worked: Worked, key: str, needed: float, share: float) -> list[Check]:
    """One throw held against the cams there are."""
    low, high = machine.cam_throw_range.low, machine.cam_throw_range.high
    parts: dict[str, Amount | str] = {
        "what": TITLES.get(key, "throw"),
        "needed": length(needed),
        "per": "from tooth to tooth" if machine.throw_per == "tooth" else "in one turn",
    }
    least = low.number if low is not None else 0.0
    if high is not None and least * (1 - SLACK) <= needed <= high.number * (1 + SLACK):
        return [passed("The {what} has to be {needed} {per}: the adjustable cam is set to that, up to {high}.",
                       high=high.text, **parts)]  # fmt: skip
    if key in TYPED and machine.cam_throws:
        return _in_drawer(machine, key, needed, share, parts)
    numbers = [one.number for one in machine.cam_throws]
    largest = max([*numbers, *([high.number] if high is not None else [])], default=None)
    if largest is not None and needed > largest * (1 + SLACK):
        return [_too_small(worked, key, needed, largest, share, parts)]
    if not numbers and low is not None and needed < least:
        return [stop("The {what} has to be {needed} {per}, and the adjustable cam is set to {low} at the least. Take "
                     "another cam, or another machine.", low=low.text, **parts)]  # fmt: skip
    nearest = next((cam for cam in machine.cam_throws if cam.number >= needed * (1 - SLACK)), None)
    if nearest is None:
        return []
    cure = drive(worked, key, nearest.number / share)
    return [_nearest(nearest.text, cure, parts)] if cure is not None else []


def _in_drawer(
    machine: Machine, key: str, needed: float, share: float, parts: dict[str, Amount | str]
) -> list[Check]:
    """A chosen throw must be one that there is; what it gives the calculation says."""
    if any(abs(cam.number - needed) <= SLACK * needed for cam in machine.cam_throws):
        return []
    near = min(machine.cam_throws, key=lambda cam: abs(cam.number - needed))
    return [stop("There is no cam of {needed} {per} in the drawer of {machine}; the nearest has {near}. Take that one, "
                 "or get one of {needed}.", cure=((key, near.number / share),), machine=machine.title, near=near.text,
                 **parts)]  # fmt: skip


def _nearest(cam: str, cure: Drive, parts: dict[str, Amount | str]) -> Check:
    """The nearest fixed cam above the need, by the relief that it would give."""
    given = angle(cure.angle + cure.change)
    says = "The {what} has to be {needed} {per}: the nearest cam above the need, {cam}, gives {given}"
    if abs(cure.change) <= NEAR_ENOUGH:
        return passed(says + ", near what is wanted.", cam=cam, given=given, **parts)
    return watch(says + ", not the {wanted} wanted.", cam=cam, given=given, wanted=angle(cure.angle), **parts)


def _too_small(
    worked: Worked, key: str, needed: float, largest: float, share: float, parts: dict[str, Amount | str]
) -> Check:
    says = "The {what} has to be {needed} {per}, and the largest cam at hand has {largest}. "
    parts = {**parts, "largest": length(largest), "more": length(needed, Rounding.UP)}
    cure = drive(worked, key, largest / share)
    if cure is None or cure.angle + cure.change <= 0:
        return stop(says + "Get a cam of {more} or more.", **parts)
    parts |= {"angle": quantity(cure.key).title.lower(),
              "allowed": Amount(cure.angle + cure.change, Kind.ANGLE, Rounding.DOWN)}  # fmt: skip
    return stop(says + "Lower the {angle} to {allowed}, or get a cam of {more} or more.", **parts)
