"""One line among the settings of a job."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.quantities import quantity
from library.equipment.settings import GraduationLine
from library.units.show import show_answer
from library.units.system import Display

NO_GRADUATION = "no graduation given, for the machine names none that sets it"
"""Behind a setting of the work head that the machine names no graduation for."""


@dataclass(frozen=True)
class SettingLine:
    """One thing to set.

    Attributes:
        sheet: the calculation it comes from.
        key: the quantity; empty for the moves of the index.
        title: what is set.
        value: its exact value with its unit.
        graduation: the same in the graduations of the machine; empty where it has none.
        cost: what the rounding costs; empty where it costs nothing.
        stopped: whether its calculation says stop, so that it must not be set.
        divisions: the graduation in as few words as do; empty where the machine has none.
        off: what the rounding moves, or what a cam gives, in as few words as do; empty where that is nothing.
        is_check: whether it is only measured, to check what another line sets.
        apart: for what it is set, where that is ground in a job of its own; else empty.
        counted: from where it counts and which way it goes; empty where that goes without saying.
        rounded: what the graduation gives, with its unit; empty where the machine has none.
    """

    sheet: str
    key: str
    title: str
    value: str
    graduation: str = ""
    cost: str = ""
    stopped: bool = False
    divisions: str = ""
    off: str = ""
    is_check: bool = False
    apart: str = ""
    counted: str = ""
    rounded: str = ""

    @property
    def is_set(self) -> bool:
        """Whether it is set in this job, and counted among its settings."""
        return not self.is_check and not self.apart

    def same_as(self, other: SettingLine) -> bool:
        """Whether both are set alike: on the graduation where there is one, else by the exact value."""
        mine, theirs = self.graduation or self.value, other.graduation or other.value
        return (self.title, mine) == (other.title, theirs)


def rounded_said(line: GraduationLine | None, display: Display) -> str:
    """What the graduation gives for a setting, with its unit; empty where there is none.

    Args:
        line: the setting on its graduation.
        display: the units.
    """
    return show_answer(line.setting.set_value, quantity(line.key), display) if line is not None else ""
