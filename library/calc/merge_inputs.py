"""Merge the inputs of a calculation by precedence: typed, taken out of a range of the book, of the entry, default."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from geometry.calculation import Calculation, Field
from geometry.quantities import quantity
from geometry.sentences import Kind
from geometry.surfaces import SURFACES
from library.book.bands import entry_at
from library.book.model import Book, Entry, Value
from library.calc.by_family import is_threaded
from library.calc.inputs import (
    Input,
    default_inputs,
    entry_inputs,
    in_book,
    typed_inputs,
)
from library.calc.ranges import ENDS, ends_of, is_range, said, taken
from library.calc.surfaces import FIELD, RELIEF, SECOND_RELIEF, belongs, choices, first, has_surface, own_keys
from library.calc.taper_reamers import with_taper_told
from library.calc.thread_in_diameter import with_thread
from library.issue import Issue
from library.units.system import Display


@dataclass(frozen=True)
class MergedInputs:
    """Everything a calculation is given.

    Attributes:
        inputs: by quantity key.
        issues: with what was typed.
        offers: ranges of the book for inputs that nobody gave.
        surface: the word of the surface that is worked on; empty where there is none.
        surfaces: the words to choose it from; empty where the calculation does not ask for it.
    """

    inputs: Mapping[str, Input]
    issues: tuple[Issue, ...]
    offers: Mapping[str, Value]
    surface: str = ""
    surfaces: tuple[str, ...] = ()


def merge_inputs(
    sheet: Calculation, typed: Mapping[str, str], entry: Entry | None, book: Book | None, display: Display
) -> MergedInputs:
    """Put together what a calculation is given: what was typed, then the entry, then the defaults.

    Args:
        sheet: the calculation.
        typed: by quantity key; a relief may be typed by the key of its surface.
        entry: that fills what was not typed.
        book: with the family of the entry.
        display: the units of numbers typed without one.
    """
    family = book.families.get(entry.family) if book is not None and entry is not None else None
    texts, unknown_thread = with_thread(sheet, typed, book, threaded=is_threaded(family))
    texts, misplaced = own_keys(sheet, texts)
    words = {key: text.strip().lower() for key, text in texts.items() if _takes_an_end(sheet, key, text)}
    inputs, issues = typed_inputs(sheet, {k: t for k, t in texts.items() if k not in words}, display)
    issues += [*unknown_thread, *(Issue(sheet.name, key, "error", text) for key, text in misplaced)]
    surfaces = choices(sheet, entry, book) if sheet.field(FIELD) is not None else ()
    issues += _strange_surface(sheet, inputs)
    if FIELD not in inputs and (named := first(sheet, entry, book)) and surfaces:
        inputs[FIELD] = Input(FIELD, named, "entry", named)
    surface = _surface(sheet, inputs)
    if entry is not None:
        entry = with_taper_told(entry_at(entry, _diameter(sheet, entry, inputs)), family)
    taken_ends, not_there = _ends(sheet, words, entry, surface, inputs, display)
    inputs |= taken_ends
    issues += not_there
    if entry is not None:
        for filled in entry_inputs(sheet, entry, {**inputs, **_held(words)}, surface):
            inputs[filled.key] = filled
    inputs |= {filled.key: filled for filled in default_inputs(sheet, inputs, display)}
    inputs = {key: _of_surface(one, surface) for key, one in inputs.items()}
    return MergedInputs(inputs, tuple(issues), _offers(sheet, entry, surface, inputs), surface, surfaces)


def _takes_an_end(sheet: Calculation, key: str, text: str) -> bool:
    field = sheet.field(key)
    return field is not None and quantity(key).kind is not Kind.CHOICE and text.strip().lower() in ENDS


def _held(words: Mapping[str, str]) -> dict[str, Input]:
    """Inputs for which a word was typed: the book does not fill them a second time."""
    return {key: Input(key, word, "given", word) for key, word in words.items()}


def _surface(sheet: Calculation, inputs: Mapping[str, Input]) -> str:
    """The word of the surface, from the input, from its default, or of a calculation that has only one."""
    field = sheet.field(FIELD)
    if field is None:
        return sheet.surfaces[0] if has_surface(sheet) else ""
    word = inputs[FIELD].value if FIELD in inputs else field.default
    return word if isinstance(word, str) and word in SURFACES else ""


def _strange_surface(sheet: Calculation, inputs: Mapping[str, Input]) -> list[Issue]:
    """A complaint where a surface was typed that the calculation does not work on."""
    word = inputs[FIELD].value if FIELD in inputs else ""
    if not word or not sheet.surfaces or word in sheet.surfaces:
        return []
    accepted = " or ".join(sheet.surfaces)
    wrong = f"{FIELD}: this calculation does not work on the {_called(word)}; it can be {accepted}."
    return [Issue(sheet.name, FIELD, "error", wrong)]


def _called(word: object) -> str:
    """How a surface is called in a sentence."""
    return SURFACES[word].title if isinstance(word, str) and word in SURFACES else str(word)


def _of_surface(filled: Input, surface: str) -> Input:
    """An input with the surface it belongs to and, for a relief, its view."""
    one = belongs(filled.key, surface)
    if one is None:
        return filled
    is_relief = filled.key in (RELIEF, SECOND_RELIEF)
    return replace(filled, surface=one.key, view=one.view if is_relief else "")


def _ends(
    sheet: Calculation,
    words: Mapping[str, str],
    entry: Entry | None,
    surface: str,
    inputs: Mapping[str, Input],
    display: Display,
) -> tuple[dict[str, Input], list[Issue]]:
    """Each low, middle or high that was typed, as the number that the book has there."""
    found: dict[str, Input] = {}
    issues: list[Issue] = []
    for key, word in words.items():
        field = sheet.field(key)
        value = in_book(entry, field, surface) if entry is not None and field is not None else None
        text = taken(value, word, display, _diameter(sheet, entry, inputs)) if value is not None else ""
        if not text:
            issues.append(Issue(sheet.name, key, "error", _no_end(key, word, value)))
            continue
        read, wrong = typed_inputs(sheet, {key: text}, display)
        found |= {one.key: replace(one, recommended=value) for one in read.values()}
        issues += wrong
    return found, issues


def _diameter(sheet: Calculation, entry: Entry | None, inputs: Mapping[str, Input]) -> float | None:
    """The diameter that a share of it is reckoned with."""
    typed = inputs.get("diameter")
    if typed is not None:
        return typed.value if isinstance(typed.value, float) else None
    field = sheet.field("diameter")
    value = in_book(entry, field) if entry is not None and field is not None else None
    return value.usual.number if value is not None and value.usual is not None else None


def _no_end(key: str, word: str, value: Value | None) -> str:
    if value is None or not ends_of(value):
        has = "has no range" if value is not None else "has nothing for it"
        return f"{key}: {word} takes the {word} of the book's range, and the book {has}; give a number."
    if word in ends_of(value):
        return f"{key}: the {word} of the book's {said(value)} cannot be taken here; give a number."
    return f"{key}: the book has {said(value)}, which has no {word}; give {' or '.join(ends_of(value))} or a number."


def _other_range(entry: Entry, field: Field) -> Value | None:
    """The range that the entry has for an input under another name, as one for the input itself."""
    value = entry.values.get(field.offered_from)
    return replace(value, key=field.key, usual=None) if value is not None else None


def _offers(
    sheet: Calculation, entry: Entry | None, surface: str, inputs: Mapping[str, Input]
) -> dict[str, Value]:
    """The ranges of the book for inputs that neither the person nor the entry gave."""
    if entry is None or all(one.low is None and one.high is None for one in entry.values.values()):
        return {}
    groups = {f.one_of for f in sheet.inputs if f.one_of and f.key in inputs}
    offers: dict[str, Value] = {}
    for field in sheet.inputs:
        is_given = field.key in inputs and inputs[field.key].origin != "default"
        value = in_book(entry, field, surface) or _other_range(entry, field)
        if value is not None and is_range(value) and not is_given and field.one_of not in groups - {""}:
            offers[field.key] = value
    return offers
