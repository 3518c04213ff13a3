"""A check of a result over the tolerances of its inputs: whether some value within them would be a stop.

``geometry.uncertainty`` propagates the same tolerances to the numbers; this looks at the verdicts.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import product

from geometry.calculation import Calculation, Check, Given
from geometry.evaluate import Refusal, run
from geometry.sentences import Sentence

MOST_INPUTS = 5
"""Inputs of which every corner is tried, 32 of them; of more inputs only the corners where all move alike."""

_TEMPLATE = "Within your +/- this may be so: {} Measure closer, or leave the +/- as room beyond that."


def tolerance_check(
    sheet: Calculation, values: Mapping[str, Given], half_widths: Mapping[str, float]
) -> Check | None:
    """The stop that waits at the ends of the plus or minus, where the values as given have none.

    Derived: every input is put to both ends of its plus or minus, in all combinations; what is worst in between
    lies at one of them for an answer that only grows or only falls with each input. Several values of one input
    move together. Corners at which the calculation does not answer are passed over.

    Args:
        sheet: the calculation.
        values: its inputs, as for ``run``.
        half_widths: the plus or minus of each input, in the unit of the input, from zero.

    Returns:
        A watch that says what may be, with the advice that holds there; nothing where all is well at every
        corner, or where the values as given are stopped already.

    Raises:
        Refusal: when the calculation cannot answer for the values themselves.

    Example:
        >>> from geometry.calculations import calculation
        >>> near = {"diameter": 12.0, "relief_angle": 0.1396, "land_width": 1.65, "relief_form": "flat"}
        >>> print(tolerance_check(calculation("relief-drop"), near, {"land_width": 0.01}))
        None
        >>> tolerance_check(calculation("relief-drop"), near, {"land_width": 0.1}).state
        'watch'
    """
    widths = {key: width for key, width in half_widths.items() if width > 0}
    if not widths or _stop(run(sheet, values).checks):
        return None
    for corner in _corners(values, widths):
        try:
            found = _stop(run(sheet, corner).checks)
        except Refusal:
            continue
        if found is not None:
            return Check("watch", Sentence(_TEMPLATE.format(found.sentence.template), found.sentence.parts))
    return None


def _stop(checks: Sequence[Check]) -> Check | None:
    return next((check for check in checks if check.state == "stop"), None)


def _corners(values: Mapping[str, Given], widths: Mapping[str, float]) -> Iterator[dict[str, Given]]:
    if len(widths) <= MOST_INPUTS:
        all_signs: Iterator[tuple[int, ...]] = product((1, -1), repeat=len(widths))
    else:
        all_signs = iter([(1,) * len(widths), (-1,) * len(widths)])
    for signs in all_signs:
        moved = {key: sign * width for (key, width), sign in zip(widths.items(), signs, strict=True)}
        yield {key: _by(value, moved.get(key, 0.0)) for key, value in values.items()}


def _by(value: Given, move: float) -> Given:
    if isinstance(value, str):
        return value
    return tuple(one + move for one in value) if isinstance(value, tuple) else value + move
