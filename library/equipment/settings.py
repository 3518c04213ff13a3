"""Settings in the graduations of the machine, and what the rounding to its dials costs."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.quantities import quantity
from geometry.sentences import Kind
from geometry.setting.dial import DialSetting, on_dial
from library.equipment.driving import Drive, Worked, drive
from library.equipment.model import Dial, Machine
from library.units.convert import from_geometry
from library.units.show import show
from library.units.system import METRIC, Display


@dataclass(frozen=True)
class DialLine:
    """One setting on one dial.

    Attributes:
        key: the quantity that is set.
        wanted: its exact value, in mm or radians.
        dial: where it is set.
        setting: the divisions, what they give, and the error.
        cost: the angle that the rounding moves, where there is one.
    """

    key: str
    wanted: float
    dial: Dial
    setting: DialSetting
    cost: Drive | None = None

    @property
    def way(self) -> str:
        """The direction in the shop's own words; empty where nothing is turned or no word is known."""
        if not self.setting.divisions:
            return ""
        return self.dial.more if self.setting.divisions > 0 else self.dial.less


def dial_lines(machine: Machine, worked: Worked) -> tuple[DialLine, ...]:
    """Every number of a worksheet that this machine sets on a dial, in the order of the worksheet."""
    lines = []
    for key, wanted in worked.settings().items():
        dial = machine.setting_dial(key)
        if dial is not None:
            lines.append(_line(key, wanted, dial, worked))
    return tuple(lines)


def _line(key: str, wanted: float, dial: Dial, worked: Worked) -> DialLine:
    setting = on_dial(wanted, dial.division.number)
    cost = None if dial.kind is Kind.ANGLE else drive(worked, key, setting.set_value)
    return DialLine(key, wanted, dial, setting, cost)


def said(line: DialLine) -> str:
    """The setting as a person turns it.

    Example:
        >>> from library.book.model import Measure
        >>> head = Dial("head", "wheel head", Measure("0.01 mm", 0.01), Kind.LENGTH, more="up", less="down")
        >>> said(DialLine("offset", 0.173, head, on_dial(0.173, 0.01)))
        '17 divisions of 0.01 mm, wheel head up'
    """
    divisions = abs(line.setting.divisions)
    if not divisions:
        return f"{line.dial.title} at zero"
    parts = [_turned(divisions, line.dial), line.dial.title]
    return ", ".join(parts) + (f" {line.way}" if line.way else "")


def _turned(divisions: int, dial: Dial) -> str:
    plain = f"{divisions} division{'s' if divisions > 1 else ''} of {dial.division.text}"
    whole = divisions_per_turn(dial)
    if whole is None or divisions <= whole:
        return plain
    turns, left = divmod(divisions, whole)
    said_turns = f"{turns} turn{'s' if turns > 1 else ''}"
    return f"{said_turns} and {left} of {dial.division.text}" if left else said_turns


def divisions_per_turn(dial: Dial) -> int | None:
    """How many divisions stand round the handle, or nothing when that is not known or not a whole number."""
    if dial.per_turn is None:
        return None
    exact = dial.per_turn.number / dial.division.number
    return round(exact) if abs(exact - round(exact)) < 1e-6 * exact and round(exact) > 0 else None


def cost_said(line: DialLine, display: Display = METRIC) -> str:
    """What the rounding to the dial costs, as a sentence without its full stop; empty when it costs nothing.

    Example:
        >>> from library.book.model import Measure
        >>> head = Dial("head", "wheel head", Measure("0.01 mm", 0.01), Kind.LENGTH)
        >>> cost_said(DialLine("offset", 0.173, head, on_dial(0.173, 0.01), Drive("relief_angle", 0.14, -0.0035)))
        'rounding takes 0.20 deg off the relief angle'
    """
    if line.dial.kind is Kind.ANGLE:
        key, change = line.key, line.setting.error
    elif line.cost is not None:
        key, change = line.cost.key, line.cost.change
    else:
        return _error_said(line, display)
    title = quantity(key).title.lower()
    if abs(from_geometry(change, Kind.ANGLE, "deg")) < 0.005:
        return f"rounding changes the {title} by less than 0.01 deg"
    size = show(abs(change), Kind.ANGLE, display)
    return f"rounding adds {size} to the {title}" if change > 0 else f"rounding takes {size} off the {title}"


def _error_said(line: DialLine, display: Display) -> str:
    if abs(line.setting.error) < 1e-9:
        return ""
    size = show(abs(line.setting.error), line.dial.kind, display)
    return f"rounding sets {size} {'more' if line.setting.error > 0 else 'less'}"


def in_divisions(machine: Machine, key: str, value: float) -> float | None:
    """A reading in divisions of the dial or indicator it is read on; nothing when the machine names none."""
    dial = machine.reading_dial(key)
    return None if dial is None else value / dial.division.number
