"""A relief that a cam gives, held against the range that the book has for it: within it passes, past an end the sentence names that end."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from geometry.calculation import Calculation, Check, Result, passed
from geometry.edge.cam import READS_ALIKE
from geometry.sentences import Amount, Sentence
from library.book.model import Value
from library.calc.inputs import Input


def past(value: Value | None, found: float) -> str:
    """Which end of a range of the book a relief is past, as the end of a sentence; empty where it is within.

    Args:
        value: what the book says of the relief; nothing where it says nothing.
        found: the relief, in radians.

    Example:
        >>> from library.book.model import Measure
        >>> past(Value("relief_angle", high=Measure("8 deg", 0.1396)), 0.152)
        'more than the 8 deg of the book'
    """
    if value is None:
        return ""
    if value.high is not None and found > value.high.number + READS_ALIKE:
        return f"more than the {value.high.text} of the book"
    if value.low is not None and found < value.low.number - READS_ALIKE:
        return f"less than the {value.low.text} of the book"
    return ""


def within(value: Value | None, found: float) -> str:
    """The range of the book that a relief lies in; empty where the book has none, or the relief is past an end.

    Args:
        value: what the book says of the relief; nothing where it says nothing.
        found: the relief, in radians.

    Example:
        >>> from library.book.model import Measure
        >>> within(Value("relief_angle", low=Measure("4 deg", 0.0698), high=Measure("8 deg", 0.1396)), 0.128)
        "within the book's 4 deg to 8 deg"
    """
    if value is None or value.low is None or value.high is None or past(value, found):
        return ""
    return f"within the book's {value.low.text} to {value.high.text}"


def with_ends_passed(sheet: Calculation, inputs: Mapping[str, Input], result: Result) -> Result:
    """The result; a watch on a relief that is not the wanted one says too which end of the book's range it is past.

    What a cam gives the surface within the range is no watch, unless a person wants another relief than the book has.
    """
    key = sheet.role.cam.wanted if sheet.role.cam is not None else "relief_angle"
    value = inputs[key].recommended if key in inputs else None
    if value is None or not any(_found(one) is not None for one in result.checks):
        return result
    of_book = value if inputs[key].origin == "entry" and sheet.role.cam is not None else None
    return replace(result, checks=tuple(_told(_allowed(one, of_book), value) for one in result.checks))


def _allowed(check: Check, value: Value | None) -> Check:
    """The check; a pass where it is on what a cam gives a surface, and that lies within the range of the book."""
    found, says = _found(check), _of_a_cam(check)
    said = within(value, found) if found is not None and says else ""
    if not said:
        return check
    parts = {**check.sentence.parts, "range": said}
    named = {key: part for key, part in parts.items() if f"{{{key}}}" in says}
    return passed(says, **named)


_OF_A_CAM = {
    "surface": "The cam gives {found} on the {surface} where {wanted} was wanted: {range}.",
    "number": "Step {number}, {largest}, has {found} on its circle where {wanted} was wanted: {range}.",
    "diameter": "The relief at {diameter} is {found} where {wanted} was wanted: {range}.",
}
"""What is said of a relief that a cam gives within the range, by the part of the watch that tells where it gives it."""


def _of_a_cam(check: Check) -> str:
    """What is said instead of a watch on what a cam gives; empty where the watch is on anything else."""
    return next((says for key, says in _OF_A_CAM.items() if key in check.sentence.parts), "")


def _found(check: Check) -> float | None:
    """The relief that a watch holds against the wanted one; nothing of any other check."""
    found, wanted = (check.sentence.parts.get(name) for name in ("found", "wanted"))
    is_one = check.state == "watch" and isinstance(found, Amount) and isinstance(wanted, Amount)
    return found.value if is_one and isinstance(found, Amount) else None


def _told(check: Check, value: Value) -> Check:
    found = _found(check)
    end = past(value, found) if found is not None else ""
    if not end:
        return check
    first, stop, rest = check.sentence.template.partition(". ")
    parts = {**check.sentence.parts, "past": end}
    template = f"{first.removesuffix('.')}, and {{past}}.{' ' if stop else ''}{rest}"
    return replace(check, sentence=Sentence(template, parts))
