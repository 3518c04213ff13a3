"""The cam of the drawer that a typed throw means: it counts with its own throw, however coarsely that was typed.

A cam marked 2.5 mm is told as 0.0984 in where inches are worked in, which is 0.6 um under its throw. Derived.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from geometry.sentences import Kind
from library.book.model import Measure
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
        The inputs; the text of one that means a cam is what stands on that.

    Example:
        >>> from library.book.model import Measure
        >>> grey = Machine("grey", "The grey grinder", cam_throws=(Measure("2.5 mm", 2.5),), throw_per="turn")
        >>> typed = {"chosen_throw": Input("chosen_throw", ".0984", "given", 2.49936)}
        >>> typed["throw_per"] = Input("throw_per", "turn", "default", "turn")
        >>> meant = with_cams_meant(typed, grey, Display("in"))["chosen_throw"]
        >>> meant.text, meant.value
        ('2.5 mm', 2.5)
    """
    found = dict(inputs)
    if machine is None or not machine.cam_throws or found.keys().isdisjoint(TYPED):
        return found
    cams = tuple(_counted(machine, inputs))
    for key in TYPED:
        one = found.get(key)
        if one is not None and one.origin == "given" and isinstance(one.value, float) and one.value:
            found[key] = _meant(one, one.value, cams, display)
    return found


def _counted(machine: Machine, inputs: Mapping[str, Input]) -> Iterator[Measure]:
    """The throws of the drawer as a calculation counts them."""
    per, flutes = (inputs[key].value if key in inputs else None for key in ("throw_per", "flutes"))
    for cam in machine.cam_throws if isinstance(per, str) else ():
        throw = counted_per(
            cam.number, machine.throw_per, str(per), int(flutes) if isinstance(flutes, float) else None
        )
        if throw is not None:
            yield cam if throw == cam.number else Measure(f"{throw:.12g} mm", throw)


def _meant(one: Input, typed: float, cams: Sequence[Measure], display: Display) -> Input:
    """A typed throw (mm) as that of the nearest cam, where that would be written as what was typed."""
    nearest = min(cams, key=lambda cam: abs(cam.number - typed), default=None)
    if nearest is None or nearest.number == typed:
        return one
    try:
        written = Display("in") if read(one.text, Kind.LENGTH, display).unit in INCHES else METRIC
    except UnitError:
        return one
    is_told_so = show(nearest.number, Kind.LENGTH, written) == show(typed, Kind.LENGTH, written)
    return replace(one, text=nearest.text, value=nearest.number) if is_told_so else one
