"""How far an answer moves when each measurement may be out by its plus or minus.

The law of propagation of uncertainty, JCGM 100:2008 clause 5.1.2: each input's slope times its half width,
combined in quadrature. That is first order, so the ends of every input and two far corners are computed
too, and the answer says whether a straight line was good enough.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from geometry.calculation import Calculation, Given, Inputs
from geometry.complaints import untried
from geometry.evaluate import Problem, Refusal, asked_for, run, with_defaults
from geometry.quantities import quantity
from geometry.sentences import Kind, Sentence

STRAIGHT_WITHIN = 0.1
"""A straight line is good enough while the ends miss it by less than this part of the half width; no source."""

_STEP = 6e-6
"""The cube root of the rounding of a float: the step at which a central difference keeps most digits."""

_NOTHING = 1e-100
"""A half width so small that no arithmetic can tell it from none."""

_NOISE = 1e-9
"""Changes smaller than this part of an answer may be rounding and are not called curvature."""


@dataclass(frozen=True)
class Spread:
    """How far one output may be out.

    Attributes:
        half_width: the plus or minus of the output, in its own unit.
        shares: how much of the half width's square each input brings, from 0 to one.
        dominant: the input that brings most; empty when none brings anything.
        straight: whether first order can be trusted over the whole of every plus or minus.
    """

    half_width: float
    shares: Mapping[str, float]
    dominant: str
    straight: bool


@dataclass(frozen=True)
class _Input:
    """One number among the inputs: the key, which of several it is, its value and its half width."""

    key: str
    place: int
    value: float
    half_width: float


@dataclass
class _Tally:
    """Sums for one output: the change that each input brings, and how far its ends miss that."""

    changes: dict[_Input, float] = field(default_factory=dict)
    misses: dict[_Input, float] = field(default_factory=dict)


def spread(
    sheet: Calculation, values: Mapping[str, Given], half_widths: Mapping[str, float]
) -> dict[str, Spread]:
    """How far each output of a calculation moves for the half widths of its inputs.

    Relation: ``u(y)^2`` is the sum of ``(df/dx_i u_i)^2``, the slopes by central differences. The inputs are
    taken as measured one by one; several values of one input are each out on their own. A counted output
    has no slope, so for it the larger change at the two ends is taken. Valid as far as ``straight`` says.

    Args:
        sheet: the calculation.
        values: its inputs, as for ``run``.
        half_widths: the plus or minus of each input, in the unit of the input, from zero.

    Returns:
        For each output its spread.

    Raises:
        Refusal: when the calculation cannot answer, or a half width belongs to a word, to a count, to
            something not given, or is below zero.

    Example:
        >>> from geometry.calculations import calculation
        >>> values = {"diameter": 12.0, "pitch": 1.75, "land_width": 3.2}
        >>> found = spread(calculation("lead-over-land"), values, {"land_width": 0.05, "diameter": 0.01})
        >>> round(found["lead_over_land"].half_width, 5), found["lead_over_land"].dominant
        (0.00232, 'land_width')
    """
    filled = with_defaults(sheet, values)
    problems = tuple(_problems(sheet, filled, half_widths))
    if problems:
        raise Refusal(problems)
    with untried():
        middle = run(sheet, values).outputs
    inputs = tuple(_inputs(filled, half_widths))
    tallies = {key: _Tally() for key in middle}
    for one in inputs:
        _vary(sheet, filled, middle, one, tallies)
    nothing = dict.fromkeys(half_widths, 0.0)
    return {key: _sum_up(sheet, filled, key, middle[key], tallies[key], nothing) for key in middle}


def _problems(
    sheet: Calculation, filled: Mapping[str, Given], half_widths: Mapping[str, float]
) -> Iterator[Problem]:
    asked = {one.key for one in asked_for(sheet, filled)}
    for key, half_width in half_widths.items():
        if key not in asked or key not in filled:
            yield Problem(key, Sentence("Give {key} before its plus or minus.", {"key": key}))
        elif isinstance(filled[key], str) or quantity(key).whole or quantity(key).kind is Kind.CHOICE:
            yield Problem(
                key, Sentence("{key} is counted or chosen, so it has no plus or minus.", {"key": key})
            )
        elif not (math.isfinite(half_width) and half_width >= 0):
            yield Problem(key, Sentence("The plus or minus of {key} must be 0 or more.", {"key": key}))


def _inputs(filled: Mapping[str, Given], half_widths: Mapping[str, float]) -> Iterator[_Input]:
    for key, half_width in half_widths.items():
        if half_width < _NOTHING:
            continue
        for place, number in enumerate(Inputs(filled).numbers(key)):
            yield _Input(key, place, number, half_width)


def _moved(
    sheet: Calculation, filled: Mapping[str, Given], moves: Mapping[_Input, float]
) -> Mapping[str, float]:
    """The outputs with some inputs moved; nothing where the calculation refuses."""
    changed = dict(filled)
    for one, by in moves.items():
        value = changed[one.key]
        if isinstance(value, tuple):
            changed[one.key] = (*value[: one.place], one.value + by, *value[one.place + 1 :])
        else:
            changed[one.key] = one.value + by
    try:
        with untried():
            return run(sheet, changed).outputs
    except Refusal:
        return {}


def _vary(
    sheet: Calculation,
    filled: Mapping[str, Given],
    middle: Mapping[str, float],
    one: _Input,
    tallies: Mapping[str, _Tally],
) -> None:
    """Move one input by a little and by its whole half width, either way, and note what each output does."""
    step = _STEP * max(abs(one.value), one.half_width)
    down, up = (_moved(sheet, filled, {one: by}) for by in (-step, step))
    low, high = (_moved(sheet, filled, {one: by}) for by in (-one.half_width, one.half_width))
    for key, tally in tallies.items():
        ends = (_difference(middle, low, key), _difference(high, middle, key))
        if quantity(key).whole:
            change = max((abs(end) for end in ends if end is not None), default=0.0)
        else:
            change = _slope(middle, down, up, key, step) * one.half_width
        tally.changes[one] = change
        tally.misses[one] = max(math.inf if end is None else abs(end - change) for end in ends)


def _difference(after: Mapping[str, float], before: Mapping[str, float], key: str) -> float | None:
    return after[key] - before[key] if key in after and key in before else None


def _slope(
    middle: Mapping[str, float], down: Mapping[str, float], up: Mapping[str, float], key: str, step: float
) -> float:
    """The slope from both sides, or from the one side on which such a tool exists; 0 where none does."""
    sides = (_difference(middle, down, key), _difference(up, middle, key))
    known = [side for side in sides if side is not None]
    return math.fsum(known) / (len(known) * step) if known else 0.0


def _sum_up(
    sheet: Calculation,
    filled: Mapping[str, Given],
    key: str,
    middle: float,
    tally: _Tally,
    nothing: Mapping[str, float],
) -> Spread:
    half_width = math.hypot(*tally.changes.values())
    shares = dict(nothing)
    for one, change in tally.changes.items():
        part = (change / half_width) ** 2 if half_width else 0.0
        shares[one.key] += part
    dominant = max(shares, key=lambda name: shares[name]) if half_width else ""
    straight = _is_straight(tally, half_width, middle) and _corners_agree(sheet, filled, key, middle, tally)
    return Spread(half_width, shares, dominant, straight)


def _is_straight(tally: _Tally, half_width: float, middle: float) -> bool:
    """Whether every input's ends lie on its straight line, near enough."""
    missed = math.hypot(*tally.misses.values())
    return missed <= STRAIGHT_WITHIN * half_width + _NOISE * abs(middle)


def _corners_agree(
    sheet: Calculation, filled: Mapping[str, Given], key: str, middle: float, tally: _Tally
) -> bool:
    """Whether moving all inputs together, the worst way and back, adds up as moving them one by one does."""
    if len(tally.changes) < 2:
        return True
    worst = math.fsum(abs(change) for change in tally.changes.values())
    for sign in (-1.0, 1.0):
        moves = {one: sign * math.copysign(one.half_width, change) for one, change in tally.changes.items()}
        corner = _moved(sheet, filled, moves).get(key)
        if corner is None or abs(corner - middle - sign * worst) > STRAIGHT_WITHIN * worst + _NOISE * abs(
            middle
        ):
            return False
    return True
