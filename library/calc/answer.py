"""Answer a calculation from what was typed and from the chosen entry: the one door to it for screen, command and card."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from geometry.calculation import Calculation, Check, Field, Given, Result, worst_first
from geometry.evaluate import Problem, Refusal, asked_for, run
from geometry.plausible import diameter_plausible
from geometry.quantities import QUANTITIES
from geometry.sentences import Amount, Kind, Sentence
from library.book.model import Book, Caution, Entry, Value
from library.calc.cam_meant import with_cams_meant
from library.calc.cautions import cautions_for
from library.calc.citation import briefly
from library.calc.far_from_book import doubts, said_otherwise
from library.calc.inputs import Input, of_no_surface, shown
from library.calc.left_hand import sides_changed
from library.calc.merge_inputs import merge_inputs
from library.calc.past_the_range import with_ends_passed
from library.calc.ranges import said
from library.calc.surfaces import FIELD
from library.issue import Issue, Severity
from library.units.grammar import example
from library.units.show import say
from library.units.system import METRIC, Display

if TYPE_CHECKING:
    from geometry.uncertainty import Spread
    from library.equipment.model import Machine


TOO_WIDE = Sentence("The +/- is so wide that nothing can be said with it. Look at it and at its unit again.")
"""What is said where the plus or minus of the inputs is beyond all arithmetic."""


@dataclass(frozen=True)
class Answer:
    """Everything a screen, a command or a card shows of one computation.

    Attributes:
        sheet: the calculation.
        fields: the inputs that matter for these values, in the order in which a person measures.
        inputs: the values used, by quantity key.
        result: what was found; nothing while something is missing or wrong.
        issues: what is missing or wrong, all of it.
        spreads: how far each output may be off, where an input carries ``+/-``.
        cautions: the warnings that belong to it, ending with the one that defers to others.
        offers: ranges that the book has for inputs that nobody gave; they fill nothing by themselves.
        surface: the word of the surface that is worked on; empty where there is none.
        surfaces: the words to choose it from; empty where the calculation does not ask for it.
    """

    sheet: Calculation
    fields: tuple[Field, ...]
    inputs: Mapping[str, Input]
    result: Result | None = None
    issues: tuple[Issue, ...] = ()
    spreads: Mapping[str, Spread] = field(default_factory=dict)
    cautions: tuple[Caution, ...] = ()
    offers: Mapping[str, Value] = field(default_factory=dict)
    surface: str = ""
    surfaces: tuple[str, ...] = ()


def answer(
    sheet: Calculation,
    typed: Mapping[str, str],
    *,
    entry: Entry | None = None,
    book: Book | None = None,
    display: Display = METRIC,
    holds_size: bool = True,
    cautions: tuple[Caution, ...] | None = None,
    machine: Machine | None = None,
) -> Answer:
    """Answer a calculation.

    Args:
        sheet: the calculation.
        typed: what the person typed, by quantity key; blank texts do not count. ``low``, ``middle`` and ``high``
            take that out of the range that the entry has.
        entry: the entry that fills what was not typed.
        book: gives the surfaces of the entry's family and the texts of the cautions.
        display: the units of numbers typed without one, and of the sentences.
        holds_size: whether a typed diameter and what was read off the tool are held against those of the entry, and a
            left-hand tool is told as one; a card does both once for the whole job.
        cautions: those of the calculation and the entry, where they are known; else they are looked up.
        machine: in hand; a throw that is typed as one of its cams is told counts as the throw of that cam.

    Returns:
        The answer, with its issues where it could not be computed; nothing is raised for bad input.
    """
    found = merge_inputs(sheet, typed, entry, book, display)
    inputs, issues = with_cams_meant(found.inputs, machine, display), list(found.issues)
    values = {key: filled.value for key, filled in inputs.items()}
    given = {key: filled.value for key, filled in inputs.items() if filled.origin != "default"}
    fields = asked_for(sheet, values)
    if cautions is None:
        cautions = cautions_for(sheet, entry, book) if book is not None else ()
    asked = {one.key for one in fields}
    offers = {key: value for key, value in found.offers.items() if key in asked}
    base = Answer(sheet, fields, inputs, None, (), {}, cautions, offers, found.surface, found.surfaces)
    unread = {issue.key for issue in issues}

    def refused(problems: tuple[Problem, ...]) -> Answer:
        told = [
            _issue(problem, _said(problem.key, problem.sentence, inputs, display), base, entry, book)
            for problem in problems
            if problem.key not in unread
        ]
        return replace(base, issues=(*issues, *told))

    try:
        result = run(sheet, given)
    except Refusal as refusal:
        return refused(refusal.problems)
    if issues:
        return replace(base, issues=tuple(issues))
    result = with_ends_passed(sheet, inputs, result)
    widths = _half_widths(fields, inputs)
    if holds_size:
        result = _with_doubts_of_the_size(inputs, entry, found.surface, result)
        doubted = (
            *doubts(sheet.name, result, entry, found.surface),
            *said_otherwise(sheet.name, result, entry),
            *sides_changed(sheet, entry),
        )
        result = replace(result, checks=worst_first((*doubted, *result.checks))) if doubted else result
    try:
        result, spreads = (
            _with_tolerance_check(sheet, given, widths, result),
            _spreads(sheet, given, widths),
        )
    except Refusal as refusal:
        return refused(refusal.problems)
    except (ArithmeticError, ValueError):
        # The last net, as in geometry.evaluate: no +/- may end the program.
        return refused((Problem(next(iter(widths)), TOO_WIDE),))
    return replace(base, result=result, spreads=spreads)


def _said(key: str, sentence: Sentence, inputs: Mapping[str, Input], display: Display) -> str:
    """The sentence of a problem, naming its key and what was given where the sentence does not."""
    text = say(sentence, display)
    if key and key in inputs and key not in text:
        if isinstance(inputs[key].value, tuple):
            return f"{key}: {text}"  # A list stands in its field, and would bury the sentence.
        return f"{key} = {shown(key, inputs[key].value, display)}: {text}"
    return text


def _issue(problem: Problem, text: str, found: Answer, entry: Entry | None, book: Book | None) -> Issue:
    """A problem of geometry, whose sentence has been written out."""
    severity: Severity = "missing" if problem.missing else "error"
    return Issue(
        found.sheet.name, _asked_first(problem, found), severity, _wanted(problem, text, found, entry, book)
    )


def _asked_first(problem: Problem, found: Answer) -> str:
    """The input that a problem is at: of alternatives of which none is given that for which the book has a range."""
    field = found.sheet.field(problem.key)
    if not problem.missing or field is None or not field.one_of:
        return problem.key
    group = (one.key for one in found.fields if one.one_of == field.one_of)
    return next((key for key in group if key in found.offers), problem.key)


def _wanted(problem: Problem, text: str, found: Answer, entry: Entry | None, book: Book | None) -> str:
    """The sentence that asks for an input, with what may be given for it and what the book has."""
    row = QUANTITIES.get(problem.key)
    if row is None or not problem.missing or not problem.sentence.template.startswith("Give {"):
        return text
    words = found.surfaces if problem.key == FIELD and found.surfaces else row.choices
    has = _in_book(problem.key, found, entry, book or Book({}))
    such = example(row.kind).partition(" or ")[0] if has else example(row.kind)
    accepted = " or ".join(words) if words else f"such as {such}"
    return f"{text.removesuffix('.')}, {accepted}{has}."


def _in_book(key: str, found: Answer, entry: Entry | None, book: Book) -> str:
    """What the book has for an input that it does not fill, as the end of a sentence; empty where it has nothing."""
    one = found.sheet.field(key)
    group = [f.key for f in found.fields if one is not None and one.one_of and f.one_of == one.one_of] or [
        key
    ]
    for offered in group:
        if offered in found.offers:
            value = found.offers[offered]
            of = "" if len(group) == 1 else f"{offered} "
            band = f" {value.band}" if value.band else ""
            return f"; the book has {of}{said(value)}{band} ({briefly(book, value.citation)})"
    lost = of_no_surface(entry, one) if entry is not None and one is not None else None
    if lost is not None and lost.first() is not None:
        return (
            f"; the shop's book has {lost.usual.text if lost.usual else said(lost)}, but not of which surface"
        )
    return ""


def _half_widths(fields: tuple[Field, ...], inputs: Mapping[str, Input]) -> dict[str, float]:
    """The plus or minus of each input that is asked for and has one."""
    wanted = {one.key for one in fields}
    return {key: one.half_width for key, one in inputs.items() if one.half_width and key in wanted}


def _spreads(
    sheet: Calculation, values: Mapping[str, Given], widths: Mapping[str, float]
) -> Mapping[str, Spread]:
    if not widths:
        return {}
    from geometry.uncertainty import spread

    return spread(sheet, values, widths)


def _with_tolerance_check(
    sheet: Calculation, values: Mapping[str, Given], widths: Mapping[str, float], result: Result
) -> Result:
    """The result, with a watch where the plus or minus of the inputs can turn it into a stop."""
    if not widths:
        return result
    from geometry.tolerance_check import tolerance_check

    found = tolerance_check(sheet, values, widths)
    return replace(result, checks=(found, *result.checks)) if found else result


def _with_doubts_of_the_size(
    inputs: Mapping[str, Input], entry: Entry | None, surface: str, result: Result
) -> Result:
    """The result, with a doubt where a diameter was typed that the tool of the entry cannot have.

    On a cone any circle may have been measured, so that a smaller one is never doubted.
    """
    size = entry.values.get("diameter") if entry is not None else None
    typed = inputs.get("diameter")
    if size is None or typed is None or typed.origin != "given" or isinstance(typed.value, str):
        return result
    own = [
        one.number for one in (size.low, size.usual, size.high) if one is not None and not one.per_diameter
    ]
    measured = typed.value if isinstance(typed.value, tuple) else (typed.value,)
    found: list[Check] = []
    for value in measured if own else ():
        nearest = min(own, key=lambda one: abs(one - value))
        if min(own) <= value <= max(own) or (surface == "cone" and value < nearest):
            continue
        found += diameter_plausible(value, nearest)
    return replace(result, checks=worst_first((*found, *result.checks))) if found else result


def off_by(key_kind: Kind, found: Spread, display: Display) -> str:
    """The half-width of an output as text, such as ``+/- 0.012 mm``."""
    return "+/- " + say(Sentence("{width}", {"width": Amount(found.half_width, key_kind)}), display)
