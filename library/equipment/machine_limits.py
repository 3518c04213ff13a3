"""Check a calculation against the limits of machine and wheel: a stop for each, with the value that would fix it."""

from __future__ import annotations

from geometry.calculation import Check, passed, stop, watch
from geometry.quantities import quantity
from geometry.sentences import Amount, Kind, Rounding, Sentence, rotation, speed
from geometry.wheel.speed import rotational_speed, surface_speed
from library.equipment.driving import Worked, drive
from library.equipment.model import Machine, Reach, Wheel

SLACK = 1e-9
"""The share by which a limit may be passed, for it is a sum of roundings and no metal."""


def reach_checks(machine: Machine, worked: Worked) -> tuple[Check, ...]:
    """A stop for every setting that is beyond the tilt of the head or the travel of its slide."""
    found = []
    for key, wanted in worked.settings().items():
        graduation = machine.setting_graduation(key)
        if key == "wheel_tilt":
            found.append(_beyond(worked, key, wanted, "wheel head", machine.head_tilt))
        if graduation is not None:
            found.append(_beyond(worked, key, wanted, graduation.title, graduation.reach))
    return tuple(check for check in found if check is not None)


def _beyond(worked: Worked, key: str, wanted: float, title: str, reach: Reach) -> Check | None:
    low, high = reach.low, reach.high
    if high is not None and wanted > high.number + SLACK * abs(high.number):
        limit = high.number
    elif low is not None and wanted < low.number - SLACK * abs(low.number):
        limit = low.number
    else:
        return None
    kind = quantity(key).kind
    parts: dict[str, Amount | str] = {
        "what": quantity(key).title,
        "wanted": Amount(wanted, kind),
        "title": title,
        "limit": Amount(limit, kind),
    }
    says = "{what} of {wanted}: the {title} goes only to {limit}. "
    cure = drive(worked, key, limit)
    if cure is None or (cure.key == "relief_angle" and cure.angle + cure.change <= 0):
        return stop(says + "Set it another way, or on another machine.", **parts)
    says += f"{'Lower' if cure.change < 0 else 'Raise'} the {{angle}} to {{allowed}}, or use another machine."
    rounding = Rounding.DOWN if cure.change < 0 else Rounding.UP
    parts |= {"angle": quantity(cure.key).title.lower(),
              "allowed": Amount(cure.angle + cure.change, Kind.ANGLE, rounding)}  # fmt: skip
    return stop(says, **parts)


def speed_checks(machine: Machine, wheel: Wheel, chosen: float | None = None) -> tuple[Check, ...]:
    """Which spindle speeds of the machine the wheel's rating allows.

    Args:
        machine: with its spindle speeds.
        wheel: with its rating and diameter.
        chosen: the speed it shall run at, in rad/s, where it is known.

    Returns:
        A stop when the chosen speed, or every speed there is, would exceed the rating; a watch while the rating
        or the diameter is not known, or when only some of the speeds are allowed.
    """
    highest = highest_speed(wheel)
    if isinstance(highest, Sentence):
        return (Check("watch", highest),)
    speeds = [one.number for one in machine.spindle_speeds]
    if chosen is not None:
        return (_one_speed(wheel, chosen, highest, speeds),)
    if not speeds:
        return ()
    allowed = [one for one in speeds if one <= highest * (1 + SLACK)]
    if not allowed:
        return (_no_speed(wheel, min(speeds), highest),)
    parts: dict[str, Amount | str] = {
        "wheel": wheel.title,
        "machine": machine.title,
        "highest": rotation(highest, Rounding.DOWN),
    }
    marked = "" if _turns_known(wheel) else " Never turn it faster than the turns marked on it."
    if len(allowed) == len(speeds):
        return (
            passed(
                "{wheel} may run at every speed of {machine}: its rating allows {highest}." + marked, **parts
            ),
        )
    return (
        watch("Run at {fastest} or slower: {wheel} must not run at {slowest} on {machine}, as its rating allows {highest}." + marked,
              fastest=rotation(max(allowed)), slowest=rotation(min(set(speeds) - set(allowed))), **parts),
    )  # fmt: skip


def highest_speed(wheel: Wheel) -> float | Sentence:
    """The fastest that the wheel may turn, in rad/s, or a sentence on what must be known first."""
    if wheel.rated_speed is None:
        return Sentence("The book has no rating for {wheel}. Read it off the wheel before you mount it, and write it down; "
                        "a wheel without a readable rating is not used.", {"wheel": wheel.title})  # fmt: skip
    if wheel.rated_speed.key == "rated_rotational_speed":
        return wheel.rated_speed.measure.number
    if wheel.diameter is None:
        return Sentence(
            "The book has no diameter for {wheel}, so its speed is not checked. Measure it now, worn as it is, and write it down.",
            {"wheel": wheel.title},
        )
    return rotational_speed(_largest(wheel), wheel.rated_speed.measure.number)


def _turns_known(wheel: Wheel) -> bool:
    """Whether it is known which turns are marked on a wheel, by its rating or by its diameter when new."""
    now, new = wheel.diameter, wheel.new_diameter
    in_turns = wheel.rated_speed is not None and wheel.rated_speed.key == "rated_rotational_speed"
    return in_turns or (now is not None and new is not None and new.number >= now.number * (1 - SLACK))


def _largest(wheel: Wheel) -> float:
    """The larger diameter of now and when new: a worn wheel is turned no faster than it was when new."""
    return max(one.number for one in (wheel.diameter, wheel.new_diameter) if one is not None)


def _one_speed(wheel: Wheel, chosen: float, highest: float, speeds: list[float]) -> Check:
    parts: dict[str, Amount | str] = {
        "wheel": wheel.title,
        "chosen": rotation(chosen, Rounding.UP),
        "highest": rotation(highest, Rounding.DOWN),
    }
    if chosen <= highest * (1 + SLACK):
        return passed("{wheel} may run at {chosen}: its rating allows {highest}.", **parts)
    slower = [one for one in speeds if one <= highest * (1 + SLACK)]
    says = "{wheel} must not run at {chosen}: its rating allows {highest}, and beyond it it can burst. "
    if slower:
        return stop(says + "Change to {slower}.", slower=rotation(max(slower), Rounding.DOWN), **parts)
    return stop(says + "Turn it at {highest} or less, or mount a wheel rated for more.", **parts)


def _no_speed(wheel: Wheel, slowest: float, highest: float) -> Check:
    parts: dict[str, Amount | str] = {
        "wheel": wheel.title,
        "slowest": rotation(slowest, Rounding.UP),
        "highest": rotation(highest, Rounding.DOWN),
    }
    says = (
        "{wheel} must not be mounted here: the slowest speed is {slowest}, and its rating allows {highest}. "
    )
    if wheel.diameter is None:
        return stop(says + "Take a wheel rated for {slowest} or more.", **parts)
    parts["rim"] = speed(surface_speed(_largest(wheel), slowest), Rounding.UP)
    return stop(says + "Take a wheel of this size rated for {rim} or more.", **parts)
