"""What the shop's machine and wheels have for a quantity, to be brought into a line where nothing has to be typed."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Literal

from library.equipment.model import Machine, Wheel

THROWS = frozenset({"chosen_throw", "radial_throw", "axial_throw"})
"""What takes the throw of one cam."""

RATINGS = ("rated_speed", "rated_rotational_speed")

OF_A_WHEEL = ("wheel_diameter", "wheel_new_diameter", *RATINGS)
"""What is read off one wheel; it goes together, so that no rating stands beside the diameter of another wheel."""


@dataclass(frozen=True)
class Offer:
    """One machine or wheel with what it has.

    Attributes:
        whose: the title of the machine or the wheel.
        source: which of the two it is.
        texts: by quantity, each with its unit.
    """

    whose: str
    source: Literal["machine", "wheel"]
    texts: Mapping[str, str]


def of_machine(machine: Machine | None, key: str) -> tuple[Offer, ...]:
    """The cams or the speeds of a machine for a quantity that takes one of them.

    Example:
        >>> from library.book.model import Measure
        >>> grey = Machine("grey", "The grey grinder", cam_throws=(Measure("1 mm", 1.0), Measure("1.6 mm", 1.6)))
        >>> [one.texts["chosen_throw"] for one in of_machine(grey, "chosen_throw")]
        ['1 mm', '1.6 mm']
    """
    if machine is None:
        return ()
    has = machine.spindle_speeds if key == "rotational_speed" else machine.cam_throws if key in THROWS else ()
    return tuple(Offer(machine.title, "machine", {key: one.text}) for one in has)


def of_wheels(wheels: Iterable[Wheel], key: str) -> tuple[Offer, ...]:
    """The wheels that have a quantity written down, each with its diameters and its rating together.

    Example:
        >>> from library.book.model import Measure
        >>> cup = Wheel("cup", "White cup", diameter=Measure("98 mm", 98.0))
        >>> [one.texts for one in of_wheels([cup], "wheel_diameter")], of_wheels([cup], "rated_speed")
        ([{'wheel_diameter': '98 mm'}], ())
    """
    if key not in OF_A_WHEEL:
        return ()
    found = (Offer(one.title, "wheel", read_off(one)) for one in wheels)
    return tuple(one for one in found if key in one.texts)


def read_off(wheel: Wheel) -> dict[str, str]:
    """What is known of a wheel's diameters and of its rating, by quantity.

    Example:
        >>> from library.book.model import Measure
        >>> read_off(Wheel("cup", "White cup", diameter=Measure("98 mm", 98.0), new_diameter=Measure("100 mm", 100.0)))
        {'wheel_diameter': '98 mm', 'wheel_new_diameter': '100 mm'}
    """
    known = (("wheel_diameter", wheel.diameter), ("wheel_new_diameter", wheel.new_diameter))
    texts = {key: one.text for key, one in known if one is not None}
    if wheel.rated_speed is not None:
        texts[wheel.rated_speed.key] = wheel.rated_speed.measure.text
    return texts
