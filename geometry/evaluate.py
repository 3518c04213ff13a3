"""Evaluate a calculation: validate its inputs, then compute.

Every problem of the inputs is collected before anything is computed, each as a sentence about one quantity, so that a
person fixes them in one go. This is the one door to a computation; whatever it is given, nothing but ``Refusal`` leaves it.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from dataclasses import field as part
from functools import lru_cache

from geometry.calculation import Calculation, Field, Given, Inputs, Result, worst_first
from geometry.complaints import told_of_advice
from geometry.figure import is_drawn
from geometry.preconditions import GeometryError, NotGiven
from geometry.quantities import Quantity, quantity
from geometry.sentences import Amount, Kind, Rounding, Sentence
from geometry.slips import slips

MOST_REMEMBERED = 64
"""Results that are remembered, about as many as a card and a calculator on the screen ask for at one key."""


@dataclass(frozen=True)
class Problem:
    """Something that keeps a calculation from answering.

    Not an ``Issue`` of the library: an issue is text in the units of the person who reads it, and geometry knows
    neither. It keeps the amounts as numbers inside a sentence, which the library writes out (``library.calc.answer``).

    Attributes:
        key: the quantity to give or to change.
        sentence: what is wrong and what would be accepted.
        missing: true when the value is only not there yet, so that a form need not shout.
    """

    key: str
    sentence: Sentence
    missing: bool = False


NO_SUCH_TOOL = Sentence(
    "No tool has all these measures together, so there is no answer. Look at each value and its unit again."
)
"""What is said where a calculation stumbles over values that it did not foresee."""


class Refusal(ValueError):
    """A calculation cannot answer; ``problems`` says why, every reason at once."""

    def __init__(self, problems: tuple[Problem, ...]) -> None:
        self.problems = problems
        super().__init__(" ".join(str(problem.sentence) for problem in problems))


def with_defaults(sheet: Calculation, given: Mapping[str, Given]) -> dict[str, Given]:
    """The values given, and the calculation's defaults for what was not.

    Example:
        >>> from geometry.calculations import calculation
        >>> with_defaults(calculation("lead-over-land"), {"pitch": 1.5})["hand"]
        'right'
    """
    filled: dict[str, Given] = {f.key: f.default for f in sheet.inputs if f.default is not None}
    for field in sheet.inputs:
        if field.one_of and any(other.key in given for other in _alternatives(sheet, field)):
            filled.pop(field.key, None)
    return filled | dict(given)


def asked_for(sheet: Calculation, values: Mapping[str, Given]) -> tuple[Field, ...]:
    """The inputs that matter for these values: those whose ``when`` is met by an input that matters itself."""

    def matters(field: Field | None) -> bool:
        if field is None or not field.when:
            return True
        return values.get(field.when[0]) in field.when[1:] and matters(sheet.field(field.when[0]))

    return tuple(field for field in sheet.inputs if matters(field))


def run(sheet: Calculation, given: Mapping[str, Given]) -> Result:
    """Compute a calculation; what was computed just before from the same inputs is not computed again.

    Args:
        sheet: the calculation.
        given: values by quantity key, in mm, radians, mm/s, rad/s, counts or words.

    Returns:
        The result.

    Raises:
        Refusal: when something is missing, unknown, out of range, or no such tool can exist.

    Example:
        >>> from geometry.calculations import calculation
        >>> values = {"diameter": 12.0, "pitch": 1.75, "land_width": 3.2}
        >>> round(run(calculation("lead-over-land"), values).outputs["lead_over_land"], 5)
        0.14854
    """
    words = frozenset(f"{key} {value!r}" for key, value in given.items())
    return _run(_Asked(sheet, words, is_drawn(), told_of_advice(), given))


@dataclass(frozen=True)
class _Asked:
    """Everything that a result follows from: inputs are compared as they are written, for 4 is not 4.0 to everybody."""

    sheet: Calculation
    words: frozenset[str]
    is_drawn: bool
    advice: tuple[bool, bool]
    given: Mapping[str, Given] = part(compare=False)


def forget() -> None:
    """Compute everything anew from here on, where the time that it takes is measured.

    Example:
        >>> forget()
    """
    _run.cache_clear()


@lru_cache(maxsize=MOST_REMEMBERED)
def _run(to: _Asked) -> Result:
    sheet, given = to.sheet, to.given
    values = with_defaults(sheet, given)
    asked = asked_for(sheet, values)
    problems = (
        *_unknown(sheet, given),
        *_missing(asked, values),
        *_unfit(asked, values),
        *_other_surface(sheet, values),
    )
    if problems:
        raise Refusal((*problems, *_at_odds(sheet, asked, values, problems)))
    wanted = {field.key for field in asked}
    inputs = Inputs({key: value for key, value in values.items() if key in wanted}, wanted - given.keys())
    try:
        return _doubted(inputs, sheet.compute(inputs))
    except GeometryError as error:
        missing = isinstance(error, NotGiven)
        raise Refusal((Problem(error.key, error.sentence, missing),)) from error
    except Refusal:
        raise
    except (ArithmeticError, ValueError) as error:
        # The last net: no input may end the program, not even one that the calculation did not foresee.
        raise Refusal((Problem("", NO_SUCH_TOOL),)) from error


def _doubted(inputs: Inputs, found: Result) -> Result:
    """A result with what looks like a slip; one that stops already is looked at again anyway."""
    if any(one.state == "stop" for one in found.checks):
        return found
    doubts = tuple(slips(inputs, found.outputs))
    return replace(found, checks=worst_first((*found.checks, *doubts))) if doubts else found


def _alternatives(sheet: Calculation, field: Field) -> list[Field]:
    return [f for f in sheet.inputs if field.one_of and f.one_of == field.one_of]


def _unknown(sheet: Calculation, given: Mapping[str, Given]) -> Iterator[Problem]:
    for key in given:
        if sheet.field(key) is None:
            accepted = ", ".join(field.key for field in sheet.inputs)
            yield Problem(key, Sentence("This calculation does not ask for {key}; it takes {accepted}.",
                                        {"key": key, "accepted": accepted}))  # fmt: skip


def _missing(asked: tuple[Field, ...], values: Mapping[str, Given]) -> Iterator[Problem]:
    seen: set[str] = set()
    for field in asked:
        if not field.one_of:
            if field.key not in values and not field.optional:
                yield Problem(field.key, _wanted(field.key), missing=True)
            continue
        if field.one_of in seen:
            continue
        seen.add(field.one_of)
        yield from _one_of([f for f in asked if f.one_of == field.one_of], values)


def _one_of(group: list[Field], values: Mapping[str, Given]) -> Iterator[Problem]:
    present = [field.key for field in group if field.key in values]
    names = " or ".join(field.key for field in group)
    if not present and not all(field.optional for field in group):
        yield Problem(group[0].key, Sentence("Give {names}.", {"names": names}), missing=True)
    elif len(present) > 1:
        yield Problem(
            present[1], Sentence("Give only one of {names}: they say the same thing.", {"names": names})
        )


def _wanted(key: str) -> Sentence:
    title = quantity(key).title.lower()
    if title == key.replace("_", " "):
        return Sentence("Give {key}.", {"key": key})
    return Sentence("Give {key} ({title}).", {"key": key, "title": title})


def _unfit(asked: tuple[Field, ...], values: Mapping[str, Given]) -> Iterator[Problem]:
    for field in asked:
        if field.key in values:
            found = unfit(quantity(field.key), values[field.key], many=field.many)
            if found is not None:
                yield Problem(field.key, found)


def _other_surface(sheet: Calculation, values: Mapping[str, Given]) -> Iterator[Problem]:
    """A surface of a tool that this calculation does not serve."""
    word = values.get("surface")
    if sheet.surfaces and isinstance(word, str) and word not in sheet.surfaces:
        yield Problem(
            "surface",
            Sentence(
                "This calculation is not for the {word}; it serves {served}.",
                {"word": word, "served": " or ".join(sheet.surfaces)},
            ),
        )


def _at_odds(
    sheet: Calculation, asked: tuple[Field, ...], values: Mapping[str, Given], problems: tuple[Problem, ...]
) -> Iterator[Problem]:
    """What does not fit another input, or is wanted because of it, told before all else is given: neither is for later."""
    if sheet.agree is None:
        return
    wrong = {problem.key for problem in problems}
    there = {one.key: values[one.key] for one in asked if one.key in values and one.key not in wrong}
    try:
        sheet.agree(Inputs(there))
    except GeometryError as error:
        yield Problem(error.key, error.sentence, missing=isinstance(error, NotGiven))


def unfit(row: Quantity, value: Given, *, many: bool = False) -> Sentence | None:
    """What is wrong with a value of a quantity, as a sentence; nothing when it makes sense.

    Args:
        row: the quantity.
        value: one number, several, or a word.
        many: whether several numbers are allowed.

    Example:
        >>> from geometry.quantities import quantity
        >>> str(unfit(quantity("hand"), "middle"))
        "hand is 'middle'; it can be right or left."
    """
    if row.kind is Kind.CHOICE:
        if value in row.choices:
            return None
        return Sentence(
            "{key} is {value}; it can be {choices}.",
            {"key": row.key, "value": _quoted(value), "choices": " or ".join(row.choices)},
        )
    if isinstance(value, str):
        return Sentence("{key} is {value}; it wants a number.", {"key": row.key, "value": _quoted(value)})
    numbers = value if isinstance(value, tuple) else (value,)
    if not numbers:
        return Sentence("{key} has no value in it; give one or more.", {"key": row.key})
    if len(numbers) != 1 and not many:
        return Sentence("{key} takes one value here, not {count}.", {
            "key": row.key, "count": Amount(len(numbers), Kind.COUNT)})  # fmt: skip
    return next((found for found in (_unfit_number(row, number) for number in numbers) if found), None)


def _quoted(value: object) -> str:
    return repr(value) if isinstance(value, str) else str(value)


def _unfit_number(row: Quantity, number: float) -> Sentence | None:
    if not math.isfinite(number):
        return Sentence("{key} must be an ordinary number.", {"key": row.key})
    if row.whole and number != int(number):
        return Sentence("{key} is {value}; it must be a whole number.", {
            "key": row.key, "value": Amount(number, Kind.RATIO)})  # fmt: skip
    slack = 1e-12 * max(abs(row.low), abs(row.high) if math.isfinite(row.high) else 0.0)
    if not row.low - slack <= number <= row.high + slack:
        return Sentence(
            "{key} is {value}; it can be from {low} to {high}.",
            {
                "key": row.key,
                "value": Amount(number, row.kind),
                "low": Amount(row.low, row.kind, Rounding.UP),
                "high": Amount(row.high, row.kind, Rounding.DOWN),
            },
        )
    return None
