"""Settings in the graduations of the machine, and what the rounding to its graduations costs."""

from __future__ import annotations

from dataclasses import dataclass, replace

from geometry.quantities import quantity
from geometry.sentences import Kind
from geometry.setting.graduation import GraduationSetting, on_graduation
from library.equipment.driving import Drive, Worked, drive
from library.equipment.model import Graduation, Machine
from library.equipment.rounded import Made, made_by, made_said
from library.units.convert import from_geometry
from library.units.show import LEAST_ANGLE, show
from library.units.system import METRIC, Display

A_LARGE_PART = 0.2
"""A rounding beyond this part of what it changes is another setting. Common practice, no source."""


@dataclass(frozen=True)
class GraduationLine:
    """One setting on one graduation.

    Attributes:
        key: the quantity that is set.
        wanted: its exact value, in mm or radians.
        graduation: where it is set.
        setting: the divisions, what they give, and the error.
        cost: the angle that the rounding moves, where there is one.
        made: what was wanted and what all rounded settings make of it, where the calculation can be given the setting instead.
    """

    key: str
    wanted: float
    graduation: Graduation
    setting: GraduationSetting
    cost: Drive | None = None
    made: Made | None = None

    @property
    def is_coarse(self) -> bool:
        """Whether the rounding is a large part of what is set, so that the graduation is too coarse for it."""
        return not _too_little(self) and self.share > A_LARGE_PART

    @property
    def share(self) -> float:
        """The rounding as a part of what it changes: of the angle that the setting depends on, or of the setting itself."""
        change, of = self.setting.error, self.wanted
        if self.cost is not None and self.graduation.kind is not Kind.ANGLE:
            change, of = self.cost.change, self.cost.angle
        return abs(change / of) if of else 0.0

    @property
    def way(self) -> str:
        """The direction in the shop's own words; empty where nothing is turned or no word is known."""
        if not self.setting.divisions:
            return ""
        return self.graduation.more if self.setting.divisions > 0 else self.graduation.less


def graduation_lines(machine: Machine, worked: Worked) -> tuple[GraduationLine, ...]:
    """Every number of a calculation that this machine sets on a graduation, in the order of the calculation."""
    lines = []
    for key, wanted in worked.settings().items():
        graduation = machine.setting_graduation(key)
        if graduation is not None:
            lines.append(_line(key, wanted, graduation, worked))
    made = made_by(worked, {line.key: line.setting.set_value for line in lines})
    return tuple(replace(line, made=made.get(line.key)) for line in lines)


def _line(key: str, wanted: float, graduation: Graduation, worked: Worked) -> GraduationLine:
    setting = on_graduation(wanted, graduation.division.number)
    cost = None if graduation.kind is Kind.ANGLE else drive(worked, key, setting.set_value)
    return GraduationLine(key, wanted, graduation, setting, cost)


def said(line: GraduationLine) -> str:
    """The setting as a person turns it.

    Example:
        >>> from library.book.model import Measure
        >>> head = Graduation("head", "wheel head", Measure("0.01 mm", 0.01), Kind.LENGTH, more="up", less="down")
        >>> said(GraduationLine("wheel_head_height", 0.173, head, on_graduation(0.173, 0.01)))
        '17 divisions of 0.01 mm, wheel head up'
    """
    divisions = abs(line.setting.divisions)
    if _too_little(line):
        return f"less than half a division of {line.graduation.division.text} on the {line.graduation.title}, set by an indicator"
    if not divisions:
        return f"{line.graduation.title} at zero"
    parts = [_turned(divisions, line.graduation), line.graduation.title]
    return ", ".join(parts) + (f" {line.way}" if line.way else "")


def _too_little(line: GraduationLine) -> bool:
    """Whether an angle is so slight that its graduation cannot show it: at zero there would be none."""
    wanted = abs(from_geometry(line.wanted, Kind.ANGLE, "deg"))
    return line.graduation.kind is Kind.ANGLE and not line.setting.divisions and wanted >= LEAST_ANGLE


def _turned(divisions: int, graduation: Graduation) -> str:
    plain = f"{divisions} division{'s' if divisions > 1 else ''} of {graduation.division.text}"
    whole = divisions_per_turn(graduation)
    if whole is None or divisions <= whole:
        return plain
    turns, left = divmod(divisions, whole)
    said_turns = f"{turns} turn{'s' if turns > 1 else ''}"
    return f"{said_turns} and {left} of {graduation.division.text}" if left else said_turns


def in_short(line: GraduationLine) -> str:
    """The setting in the divisions of the machine, in as few words as do.

    Example:
        >>> from library.book.model import Measure
        >>> head = Graduation("head", "wheel head", Measure("0.01 mm", 0.01), Kind.LENGTH, more="up", less="down")
        >>> in_short(GraduationLine("wheel_head_height", 0.173, head, on_graduation(0.173, 0.01)))
        '17 div up'
    """
    divisions = abs(line.setting.divisions)
    if _too_little(line):
        return "by an indicator"
    if not divisions:
        return "at zero"
    whole = divisions_per_turn(line.graduation)
    said_so = f"{divisions} div"
    if whole is not None and divisions > whole:
        turns, left = divmod(divisions, whole)
        said_so = f"{turns} turn{'s' if turns > 1 else ''}" + (f" + {left}" if left else "")
    return f"{said_so} {line.way}".rstrip()


def off_in_short(line: GraduationLine, display: Display = METRIC) -> str:
    """What the rounding moves and how far, with its sign; empty where it moves nothing that is seen.

    Example:
        >>> from library.book.model import Measure
        >>> head = Graduation("head", "wheel head", Measure("0.01 mm", 0.01), Kind.LENGTH)
        >>> off_in_short(GraduationLine("wheel_head_height", 0.173, head, on_graduation(0.173, 0.01), Drive("relief_angle", 0.14, -0.0035)))
        '-0.20 deg relief'
    """
    if _too_little(line):
        return ""
    if line.graduation.kind is Kind.ANGLE:
        key, change, kind = line.key, line.setting.error, Kind.ANGLE
    elif line.cost is not None:
        key, change, kind = line.cost.key, line.cost.change, Kind.ANGLE
    else:
        key, change, kind = "", line.setting.error, line.graduation.kind
    size = show(abs(change), kind, display)
    if not any(sign in "123456789" for sign in size):
        return ""
    return f"{'-' if change < 0 else '+'}{size} {_named(key)}".rstrip()


def _named(key: str) -> str:
    return quantity(key).title.lower().removesuffix(" angle") if key else ""


def divisions_per_turn(graduation: Graduation) -> int | None:
    """How many divisions stand round the handle, or nothing when that is not known or not a whole number."""
    if graduation.per_turn is None:
        return None
    exact = graduation.per_turn.number / graduation.division.number
    return round(exact) if abs(exact - round(exact)) < 1e-6 * exact and round(exact) > 0 else None


def cost_said(line: GraduationLine, display: Display = METRIC) -> str:
    """What the rounding to the graduation costs, as a sentence without its full stop; empty when it costs nothing.

    Example:
        >>> from library.book.model import Measure
        >>> head = Graduation("head", "wheel head", Measure("0.01 mm", 0.01), Kind.LENGTH)
        >>> cost_said(GraduationLine("wheel_head_height", 0.173, head, on_graduation(0.173, 0.01), Drive("relief_angle", 0.14, -0.0035)))
        'rounding takes 0.20 deg off the relief angle'
    """
    if _too_little(line):
        return ""
    if line.graduation.kind is Kind.ANGLE:
        key, change = line.key, line.setting.error
    elif line.cost is not None:
        key, change = line.cost.key, line.cost.change
    else:
        return _error_said(line, display)
    title = quantity(key).title.lower()
    if abs(from_geometry(change, Kind.ANGLE, "deg")) < 0.005:
        return f"rounding changes the {title} by less than 0.01 deg"
    size = show(abs(change), Kind.ANGLE, display)
    told = f"rounding adds {size} to the {title}" if change > 0 else f"rounding takes {size} off the {title}"
    part = f", {100 * line.share:.0f} percent of it" if line.is_coarse else ""
    made = line.made if line.made is not None and line.made.key != key else None
    return told + part + made_said(made, display)


def _error_said(line: GraduationLine, display: Display) -> str:
    if abs(line.setting.error) < 1e-9:
        return ""
    size = show(abs(line.setting.error), line.graduation.kind, display)
    return f"rounding sets {size} {'more' if line.setting.error > 0 else 'less'}"


def divisions_said(divisions: float) -> str:
    """Divisions to a tenth, without a unit.

    Example:
        >>> divisions_said(17.26), divisions_said(-0.02)
        ('17.3', '0.0')
    """
    return f"{round(divisions, 1) + 0.0:.1f}"


def in_divisions(machine: Machine, key: str, value: float) -> float | None:
    """A reading in divisions of the graduation or indicator it is read on; nothing when the machine names none."""
    graduation = machine.reading_graduation(key)
    return None if graduation is None else value / graduation.division.number
