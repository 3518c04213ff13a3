"""The cam of a job: which one out of the drawer is taken, and what it gives beside what is wanted.

A fixed cam gives what it gives. The job takes the one that was typed, else the one that comes nearest within the range
of the book, else the nearest in the drawer that gives the wanted relief or more, else the largest there is; everything
after it follows from that cam.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from geometry.calculation import Given
from geometry.complaints import untried
from geometry.edge.cam import CLOSE, TOWARD_THE_AXIS, Wanted, out_of_drawer
from geometry.evaluate import Refusal, run
from geometry.figure import undrawn
from library.book.model import Measure, Value
from library.calc.answer import Answer
from library.equipment.model import Machine
from library.units.show import show

ROUND = frozenset({"land", "thread-land"})
"""Surfaces along the axis, to which a throw along the axis gives nothing."""

Asked = Callable[[Mapping[str, str]], Answer]
"""Answers a calculation with some texts put in."""


def taken_from_drawer(found: Answer, ask: Asked, machine: Machine) -> Measure | None:
    """The fixed cam that a calculation takes when nobody typed one.

    Args:
        found: the calculation as it is answered without a cam.
        ask: answers it with one.
        machine: with its drawer.

    Returns:
        The nearest cam within the range, else above the need, else the largest; nothing where no cam is called for or the need is not known.
    """
    role, cams = found.sheet.role.cam, machine.cam_throws
    if not cams or role is None or _made_otherwise(found):
        return None
    wanted, answer = found.inputs.get(role.wanted), "relief_angle"
    if wanted is None and role.else_wanted:
        wanted, answer = found.inputs.get(role.else_wanted), role.else_wanted
    per = found.inputs.get("throw_per")
    if wanted is None or not isinstance(wanted.value, float):
        return None
    by_tooth = per is not None and per.value == "tooth"
    if (by_tooth and "flutes" not in found.inputs) or _is_set(found, machine, by_tooth=by_tooth):
        return None
    values: dict[str, Given] = {key: one.value for key, one in found.inputs.items() if key != role.throw}

    def gives(cam: Measure) -> float | None:
        try:
            return run(found.sheet, {**values, role.throw: cam.number}).outputs.get(answer)
        except Refusal:
            return None

    with untried(), undrawn():
        best, is_enough = out_of_drawer(cams, gives, _with_limits(wanted.value, wanted.recommended))
        if is_enough and not found.issues:
            return best  # It was looked at just now, and there is nothing else amiss.
        return best if relief_of(ask({role.throw: best.text})) is not None else None


def _with_limits(relief: float, recommended: Value | None) -> Wanted:
    """The relief that is wanted, with the range that the book has for it."""
    ends = (recommended.low, recommended.high) if recommended is not None else (None, None)
    return Wanted(relief, *(one.number if one is not None else None for one in ends))


def _is_set(found: Answer, machine: Machine, *, by_tooth: bool) -> bool:
    """Whether the adjustable cam of the machine is set to the throw that is needed, so that no fixed one is taken."""
    low, high = machine.cam_throw_range.low, machine.cam_throw_range.high
    outputs = found.result.outputs if found.result is not None else {}
    keys = ("needed_radial_throw", "throw_per_tooth" if by_tooth else "throw_per_turn")
    needed = next((outputs[key] for key in keys if key in outputs), None)
    if needed is None or high is None:
        return False
    return (low.number if low is not None else 0.0) - CLOSE <= needed <= high.number + CLOSE


def _made_otherwise(found: Answer) -> bool:
    """Whether the throw is given already, or the surface takes none toward the axis."""
    given = {key for key, one in found.inputs.items() if one.origin != "default"}
    if given & {"chosen_throw", "radial_throw"}:
        return True
    role = found.sheet.role.cam
    field = found.sheet.field(role.throw) if role is not None else None
    if "axial_throw" in given and (field is None or field.optional):
        # A throw along the axis may make the relief alone, but where one toward the axis is always needed.
        return True
    form = found.inputs.get("relief_form")
    if form is not None and form.value != "eccentric":
        return True
    surface = found.inputs.get("surface")
    return surface is not None and surface.value not in TOWARD_THE_AXIS


def relief_of(found: Answer) -> float | None:
    """The relief (rad) that a calculation found; nothing without an answer."""
    return None if found.result is None else found.result.outputs.get("relief_angle")


def carried_on(before: Answer, found: Answer) -> dict[str, str]:
    """The throw of an earlier calculation, for a later one of the same job: one cam serves the whole tool.

    Args:
        before: the earlier calculation, answered.
        found: the later one as it is without a cam.

    Returns:
        Texts for the later one; empty where its surface is moved along the axis too, so that the throw says too little.
    """
    serves, served = found.sheet.role.cam, before.sheet.role.cam
    if serves is None or served is None:
        return {}
    key, throw = serves.throw, before.inputs.get(served.throw)
    axial = before.inputs.get("axial_throw")
    surface = found.inputs.get("surface")
    if (
        throw is None
        or found.sheet.field(key) is None
        or surface is None
        or surface.value not in TOWARD_THE_AXIS
    ):
        return {}
    if axial is not None and axial.value != 0 and surface.value not in ROUND:
        return {}
    texts = {key: throw.text}
    if "flutes" in before.inputs and "flutes" not in found.inputs:
        texts["flutes"] = before.inputs["flutes"].text
    per = before.inputs.get("throw_per")
    return texts | ({"throw_per": str(per.value)} if per is not None else {})


@dataclass(frozen=True)
class ByCam:
    """What the chosen cam gives beside what is wanted.

    Attributes:
        throw: of the cam, as typed or as the machine has it.
        given: the relief that it gives, in radians.
        wanted: the relief that is wanted.
        heel: the reading at the heel by the cam, in mm.
        wanted_heel: the reading that the wanted relief would have; nothing where that has none.
    """

    throw: str
    given: float
    wanted: float
    heel: float
    wanted_heel: float | None

    @property
    def differs(self) -> bool:
        """Whether it gives another relief than the wanted one, as angles are shown."""
        return show_angle(self.given) != show_angle(self.wanted)


def show_angle(angle: float) -> str:
    """An angle as it stands on a sheet."""
    from geometry.sentences import Kind

    return show(angle, Kind.ANGLE)


def by_cam(found: Answer) -> ByCam | None:
    """What the cam chosen for the readings gives; nothing where none was chosen or there is no answer."""
    cam, wanted = found.inputs.get("chosen_throw"), found.inputs.get("relief_angle")
    if found.result is None or cam is None or wanted is None or not isinstance(wanted.value, float):
        return None
    outputs = found.result.outputs
    if "relief_angle" not in outputs:
        return None
    values: dict[str, Given] = {key: one.value for key, one in found.inputs.items() if key != "chosen_throw"}
    try:
        with untried(), undrawn():
            heel = run(found.sheet, values).outputs.get("heel_drop")
    except Refusal:
        heel = None
    return ByCam(cam.text, outputs["relief_angle"], wanted.value, outputs["heel_drop"], heel)
