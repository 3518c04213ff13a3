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
        alone: what the rounding of this setting makes of it, the others being exact.
        others: what else is rounded in ``found``, by quantity.
    """

    key: str
    wanted: float
    found: float
    alone: float
    others: tuple[str, ...] = ()


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
    instead = _in_place_of(worked, set_to)
    outputs = _with(worked, instead, set_to)
    found = {}
    for key, one in instead.items():
        was = worked.values[one]
        if one in outputs and isinstance(was, float):
            others = tuple(other for other in instead if other != key)
            # The others as they were found: what was wanted in place of them would hold the rounding up.
            exact = {other: worked.outputs[other] for other in others}
            alone = _with(worked, instead, {**exact, key: set_to[key]}) if others else outputs
            found[key] = Made(one, was, outputs[one], alone.get(one, outputs[one]), others)
    return found


def _in_place_of(worked: Worked, set_to: Mapping[str, float]) -> dict[str, str]:
    """What the calculation was given, by the setting that it may be given in its place; nothing is replaced twice."""
    instead: dict[str, str] = {}
    for key in set_to:
        field = worked.sheet.field(key)
        group = field.one_of if field is not None else ""
        given = [
            one.key
            for one in worked.sheet.inputs
            if group and one.one_of == group and one.key in worked.values
        ]
        if given and key not in given and given[0] not in instead.values():
            instead[key] = given[0]
    return instead


def _with(worked: Worked, instead: Mapping[str, str], set_to: Mapping[str, float]) -> Mapping[str, float]:
    """What the calculation finds with settings in place of what it was given; nothing where it refuses them."""
    if not instead:
        return {}
    kept = {key: value for key, value in worked.values.items() if key not in instead.values()}
    try:
        return run(worked.sheet, kept | {key: set_to[key] for key in instead}).outputs
    except Refusal:
        return {}


def made_said(made: Made | None, display: Display) -> str:
    """What the rounding makes, to stand behind what it costs; empty where it shows no difference."""
    if made is None:
        return ""
    row = quantity(made.key)
    was, now, alone = (show(one, row.kind, display) for one in (made.wanted, made.found, made.alone))
    if was == now:
        return ""
    makes = f"makes the {row.title[:1].lower()}{row.title[1:]} {now} in place of {was}"
    if alone == now:
        return f", which {makes}"
    others = " and ".join(quantity(one).title.lower() for one in made.others)
    return f"; together with the rounded {others} that {makes}"
