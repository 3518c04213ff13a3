"""The relation of a setting to the angle it depends on, solved both ways: what rounding a setting does to the angle."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from geometry.calculation import Calculation, Given
from geometry.evaluate import Refusal, run
from geometry.quantities import Quantity, quantity
from geometry.sentences import Kind
from geometry.setting.graduation import cost_in_angle

FIRST = ("relief_angle", "rake_angle")
"""The angles that a person means when he asks what a setting costs, before any other of the calculation."""

HALVINGS = 60
"""Halving a range of degrees so often leaves less of it than a number can hold."""


@dataclass(frozen=True)
class Worked:
    """A calculation with the values that it was run with and what it found.

    Attributes:
        sheet: the calculation.
        values: what it was given, by quantity.
        outputs: what it found, by quantity.
    """

    sheet: Calculation
    values: dict[str, Given]
    outputs: dict[str, float]

    def settings(self) -> dict[str, float]:
        """Every number that could be set or read: what was found, then what was given."""
        given = {key: value for key, value in self.values.items() if isinstance(value, float)}
        return self.outputs | {key: value for key, value in given.items() if key not in self.outputs}


@dataclass(frozen=True)
class Drive:
    """An angle of the calculation and how far it moves.

    Attributes:
        key: the angle.
        angle: as given, in radians.
        change: how far it moves when the setting is another, in radians.
    """

    key: str
    angle: float
    change: float


def drive(worked: Worked, key: str, value: float) -> Drive | None:
    """The angle that changes when the setting ``key`` becomes ``value``, and by how much.

    Args:
        worked: the calculation as it was run.
        key: a setting that it found.
        value: another value of it, in mm or radians.

    Returns:
        The first angle that the setting depends on, or nothing when it depends on none or no angle gives it.
    """
    if key not in worked.outputs:
        return None
    angles = [one for one, number in worked.values.items()
              if isinstance(number, float) and quantity(one).kind is Kind.ANGLE]  # fmt: skip
    for one in sorted(angles, key=lambda name: FIRST.index(name) if name in FIRST else len(FIRST)):
        angle = worked.values[one]
        assert isinstance(angle, float)
        change = _change(_setting_of(worked, one, key), one, angle, value)
        if change is not None:
            return Drive(one, angle, change)
    return None


def _setting_of(worked: Worked, angle_key: str, key: str) -> Callable[[float], float]:
    def setting(angle: float) -> float:
        return run(worked.sheet, worked.values | {angle_key: angle}).outputs[key]

    return setting


def _change(setting: Callable[[float], float], key: str, angle: float, value: float) -> float | None:
    """How far the angle moves for the setting to be ``value``; nothing when no angle that makes sense gives it."""
    try:
        return cost_in_angle(setting, angle, value)
    except (Refusal, KeyError):
        # The search has left the range of the calculation; halving stays inside it.
        return _halved(setting, quantity(key), angle, value)


def _halved(setting: Callable[[float], float], row: Quantity, angle: float, value: float) -> float | None:
    for end in (row.low, row.high):
        try:
            at_end, here = setting(end) - value, setting(angle) - value
            if at_end * here > 0:
                continue
            near, far = angle, end
            for _ in range(HALVINGS):
                middle = (near + far) / 2
                near, far = (middle, far) if (setting(middle) - value) * here > 0 else (near, middle)
            return far - angle
        except (Refusal, KeyError):
            continue
    return None
