"""What comes of a tool when angles are set as a machine is graduated: the point of a drill, the threads of a chamfer."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from geometry.evaluate import Refusal, run
from geometry.quantities import quantity
from library.equipment.driving import Worked
from library.units.show import show
from library.units.system import Display


@dataclass(frozen=True)
class Made:
    """What was wanted in place of a setting, and what the setting makes of it as it is rounded.

    Attributes:
        key: the quantity that was wanted.
        wanted: in mm or radians, or a count.
        found: what the rounded settings make of it, in the same unit.
    """

    key: str
    wanted: float
    found: float


def made_by(worked: Worked, set_to: Mapping[str, float]) -> Mapping[str, Made]:
    """What all settings of a calculation make together, each as it is set on its graduation.

    Only settings are looked at that the calculation may be given in place of what it was given.

    Args:
        worked: the calculation as it was run.
        set_to: what is set in mm or radians, by quantity.

    Returns:
        What was wanted and what comes of it, by the quantity that is set; nothing where the calculation refuses them.

    Example:
        >>> from geometry.calculations import calculation
        >>> sheet = calculation("tap-chamfer")
        >>> given = {"diameter": 10.0, "pitch": 1.5, "chamfer_threads": 4.0}
        >>> found = made_by(Worked(sheet, given, dict(run(sheet, given).outputs)), {"chamfer_angle": 0.14})
        >>> round(found["chamfer_angle"].found, 2)
        4.35
    """
    values, instead = dict(worked.values), {}
    for key, value in set_to.items():
        field = worked.sheet.field(key)
        group = field.one_of if field is not None else ""
        given = [
            one.key for one in worked.sheet.inputs if group and one.one_of == group and one.key in values
        ]
        if given and key not in given:
            instead[key] = given[0]
            del values[given[0]]
            values[key] = value
    try:
        outputs = run(worked.sheet, values).outputs if instead else {}
    except Refusal:
        return {}
    wanted = {key: worked.values[one] for key, one in instead.items()}
    return {
        key: Made(one, was, outputs[one])
        for key, one in instead.items()
        if one in outputs and isinstance(was := wanted[key], float)
    }


def made_said(made: Made | None, display: Display) -> str:
    """What the rounding makes, to stand behind what it costs; empty where it shows no difference."""
    if made is None:
        return ""
    row = quantity(made.key)
    was, now = (show(one, row.kind, display) for one in (made.wanted, made.found))
    return (
        f", which makes the {row.title[:1].lower()}{row.title[1:]} {now} in place of {was}"
        if was != now
        else ""
    )
