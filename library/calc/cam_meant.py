"""The cam of the drawer that a typed throw means: it counts with its own throw, however coarsely that was typed.

A cam marked 2.5 mm is told as 0.0984 in where inches are worked in, which is 0.6 um under its throw. Derived.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from geometry.sentences import Kind
from library.calc.inputs import Input
from library.equipment.cam_limits import TYPED, counted_per
from library.equipment.model import Machine
from library.units.read import UnitError, read
from library.units.show import show
from library.units.system import METRIC, Display

INCHES = frozenset({"in", "thou", "tenths"})
"""Units of a throw that is told in inches."""


def with_cams_meant(
    inputs: Mapping[str, Input], machine: Machine | None, display: Display
) -> dict[str, Input]:
    """The inputs of a calculation, each typed throw as that of the cam that is told so in the unit it was typed in.

    Args:
        inputs: by quantity.
        machine: with its drawer; nothing where none is in hand.
        display: the units of numbers typed without one.

    Returns:
        The inputs, their texts as they were typed.

    Example:
        >>> from library.book.model import Measure
        >>> grey = Machine("grey", "The grey grinder", cam_throws=(Measure("2.5 mm", 2.5),), throw_per="turn")
        >>> typed = {"chosen_throw": Input("chosen_throw", ".0984", "given", 2.49936)}
        >>> typed["throw_per"] = Input("throw_per", "turn", "default", "turn")
        >>> with_cams_meant(typed, grey, Display("in"))["chosen_throw"].value
        2.5
    """
    found = dict(inputs)
    if machine is None or not machine.cam_throws or found.keys().isdisjoint(TYPED):
        return found
    cams = tuple(_counted(machine, inputs))
    for key in TYPED:
        one = found.get(key)
        if one is not None and one.origin == "given" and isinstance(one.value, float) and one.value:
            found[key] = replace(one, value=_meant(one.text, one.value, cams, display))
    return found


def _counted(machine: Machine, inputs: Mapping[str, Input]) -> Iterator[float]:
    """The throws (mm) of the drawer as a calculation counts them."""
    per, flutes = (inputs[key].value if key in inputs else None for key in ("throw_per", "flutes"))
    for cam in machine.cam_throws if isinstance(per, str) else ():
        throw = counted_per(
            cam.number, machine.throw_per, str(per), int(flutes) if isinstance(flutes, float) else None
        )
        if throw is not None:
            yield throw


def _meant(text: str, typed: float, cams: Sequence[float], display: Display) -> float:
    """The throw (mm) of the nearest cam, where it would be written as what was typed; else what was typed."""
    nearest = min(cams, key=lambda cam: abs(cam - typed), default=typed)
    try:
        written = Display("in") if read(text, Kind.LENGTH, display).unit in INCHES else METRIC
    except UnitError:
        return typed
    is_told_so = show(nearest, Kind.LENGTH, written) == show(typed, Kind.LENGTH, written)
    return nearest if is_told_so else typed
