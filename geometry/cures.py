"""Advice that was tried before it is given: the changes of inputs that do remove a complaint.

A closed relation gives the value that would be just enough; whether it is, with all other inputs as they
are and the value rounded as a person reads it, is found out by computing again.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from geometry.calculation import Cure, Inputs, Together
from geometry.preconditions import GeometryError
from geometry.quantities import quantity
from geometry.sentences import Amount, Kind, Rounding

SHOWN_STEPS = {
    Kind.LENGTH: (0.0, 0.001, 0.01, 0.0254 / 10, 0.0254),
    Kind.ANGLE: (0.0, math.radians(0.01)),
}
"""How coarsely an amount may be shown, in mm and rad: a micron to a hundredth, a tenth of a thou to a thou."""

HAIR = 1e-12
"""What a value may be beyond its range by its last digit."""


EXACT_STEP = 1e-9
"""How far an amount that is to be exceeded is exceeded where it is shown with all its digits, in mm and rad."""


@dataclass(frozen=True)
class Step:
    """One input that is changed.

    Attributes:
        key: the input.
        name: the place of its amount in the sentence; empty where the input is left out.
        amount: what to give it; nothing leaves it out.
    """

    key: str
    name: str = ""
    amount: Amount | None = None


@dataclass(frozen=True)
class Way:
    """One way out of a complaint: the words that advise it, and the inputs that it changes."""

    says: str
    steps: tuple[Step, ...]


@dataclass(frozen=True)
class Advice:
    """The ways that remove a complaint, in words with their amounts, and as the cure of a check."""

    words: tuple[str, ...]
    parts: dict[str, Amount | str]
    cure: Cure

    @property
    def text(self) -> str:
        """One sentence that offers each of the ways."""
        return either(self.words)


def way(says: str, key: str, name: str = "", amount: Amount | None = None) -> Way:
    """A way that changes one input.

    Example:
        >>> way("leave the second angle out", "secondary_relief_angle").steps[0].amount is None
        True
    """
    return Way(says, (Step(key, name, amount),))


def as_shown(amount: Amount, step: float) -> float:
    """An amount rounded to a step in the way it asks for; to no step it stays as it is.

    Example:
        >>> from geometry.sentences import length
        >>> round(as_shown(length(1.6755, Rounding.DOWN), 0.01), 6)
        1.67
    """
    if step == 0:
        return amount.value
    steps = amount.value / step
    if amount.rounding is Rounding.DOWN:
        return math.floor(steps + 1e-9) * step
    if amount.rounding is Rounding.UP:
        return math.ceil(steps - 1e-9) * step
    return round(steps) * step


def that_help(ways: Iterable[Way], given: Inputs, cures: Callable[[Inputs], bool]) -> tuple[Way, ...]:
    """The ways that remove the complaint, in their order, whatever the unit in which they are shown.

    Args:
        ways: what may be advised.
        given: the inputs as they are.
        cures: whether other inputs are free of the complaint; a refusal counts as no.

    Example:
        >>> from geometry.sentences import length
        >>> narrow = way("narrow it to {most}", "land_width", "most", length(2.0, Rounding.DOWN))
        >>> len(that_help([narrow], Inputs({"land_width": 3.0}), lambda one: one.number("land_width") <= 2))
        1
    """
    return tuple(one for one in ways if _helps(one, given, cures))


def _helps(one: Way, given: Inputs, cures: Callable[[Inputs], bool]) -> bool:
    # Lengths are shown in one unit at a time; an angle is as coarse in each of them.
    lengths, angles = _outermost(one, Kind.LENGTH), _outermost(one, Kind.ANGLE)
    return all(_cured(one, given, cures, across, turned) for across in lengths for turned in angles)


def _outermost(one: Way, kind: Kind) -> tuple[float, ...]:
    """The steps at which an amount of this kind is shown as its least or its greatest.

    What is free of a complaint at both is free of it between them: no complaint begins and ends again within the
    hundredths that a person reads.
    """
    found: list[float] = []
    for step in one.steps:
        if step.amount is not None and step.amount.kind is kind:
            typed = {_typed(one.says, step, size): size for size in SHOWN_STEPS[kind]}
            found += [typed[min(typed)], typed[max(typed)]]
    return tuple(dict.fromkeys(found)) or (0.0,)


def _typed(says: str, step: Step, size: float) -> float:
    """What a person types who reads the amount of a step rounded to a size, and does as the words say."""
    assert step.amount is not None
    return as_shown(step.amount, size) + _beyond(says, step.name) * (size or EXACT_STEP)


def _cured(
    one: Way, given: Inputs, cures: Callable[[Inputs], bool], length_step: float, angle_step: float
) -> bool:
    changes: dict[str, float | None] = {}
    for step in one.steps:
        if step.amount is None:
            changes[step.key] = None
            continue
        value = _typed(one.says, step, angle_step if step.amount.kind is Kind.ANGLE else length_step)
        row = quantity(step.key)
        if not row.low - HAIR <= value <= row.high + HAIR:
            return False
        changes[step.key] = value
    try:
        return cures(given.but(changes))
    except GeometryError:
        return False


def _beyond(says: str, name: str) -> int:
    """Whether an amount has to be exceeded (1), to be kept under (-1), or to be met (0), by the words before it."""
    before = says.partition(f"{{{name}}}")[0].rstrip()
    if before.endswith(("above", "more than")):
        return 1
    return -1 if before.endswith(("under", "below", "less than", "narrower than")) else 0


def advise(ways: Sequence[Way]) -> Advice:
    """The ways as the words, amounts and cure of a check; where there is only one, it may change several inputs.

    Example:
        >>> from geometry.sentences import length
        >>> found = advise([way("narrow it to {most}", "land_width", "most", length(2.0)), way("leave it", "land_width")])
        >>> found.text, found.cure
        ('Narrow it to {most} or leave it.', (('land_width', 2.0), ('land_width', None)))
    """
    steps = [step for one in ways for step in one.steps]
    changes = tuple((step.key, None if step.amount is None else step.amount.value) for step in steps)
    return Advice(
        words=tuple(one.says for one in ways),
        parts={step.name: step.amount for step in steps if step.amount is not None},
        cure=Together(changes) if any(len(one.steps) > 1 for one in ways) else changes,
    )


def either(cures: Sequence[str]) -> str:
    """One sentence that offers each of the cures.

    Example:
        >>> either(["raise it", "lower it", "leave it"])
        'Raise it, lower it, or leave it.'
    """
    text = cures[0]
    if len(cures) > 1:
        text = ", ".join(cures[:-1]) + ("," if len(cures) > 2 else "") + " or " + cures[-1]
    return f"{text[0].upper()}{text[1:]}."
