"""Parse the inputs of a calculation from each of their origins: typed, an entry of the book, the default."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Literal

from geometry.calculation import Calculation, Field, Given
from geometry.evaluate import with_defaults
from geometry.quantities import QUANTITIES, quantity
from geometry.sentences import Kind
from library.book.model import Entry, Measure, Value
from library.book.retired import OF_NO_SURFACE
from library.calc.of_several import is_list
from library.calc.surfaces import book_key
from library.calc.thread_in_diameter import place_of_thread
from library.issue import Issue
from library.units.grammar import example, tidy
from library.units.read import UnitError, read, read_many
from library.units.show import show
from library.units.system import Display

Origin = Literal["given", "entry", "default"]


@dataclass(frozen=True)
class Input:
    """One input with its value.

    Attributes:
        key: the quantity.
        text: as typed, as it stands in the book, or the default as it is shown.
        origin: who gave it.
        value: for geometry: mm, radians, mm/s, rad/s, a count, several of these, or a word.
        half_width: how far it may be off either way, where that was typed.
        share_of_diameter: true where the book gives it as a share of the diameter.
        recommended: what the book says of it, with range, source and note, where the book gave it.
        surface: the word of the surface that it belongs to; empty where it belongs to none.
        view: of a relief, the view in which it is given: normal, radial or axial.
    """

    key: str
    text: str
    origin: Origin
    value: Given
    half_width: float | None = None
    share_of_diameter: bool = False
    recommended: Value | None = None
    surface: str = ""
    view: str = ""


def typed_inputs(
    sheet: Calculation, typed: Mapping[str, str], display: Display
) -> tuple[dict[str, Input], list[Issue]]:
    """Read what was typed into the fields of a calculation; blank fields do not count.

    A value in the unit of a sister quantity goes there: ``pitch=10 tpi`` is threads per inch.
    """
    found: dict[str, Input] = {}
    issues: list[Issue] = []
    for key, text in typed.items():
        if not text.strip():
            continue
        field = sheet.field(key)
        if field is None:
            issues.append(Issue(sheet.name, key, "error", _not_asked(sheet, key)))
            continue
        try:
            filled = _typed(sheet, field, text, display)
        except UnitError as error:
            wrong = _of_a_thread(sheet, field, text) or _of_a_list(field, text, display) or str(error)
            issues.append(Issue(sheet.name, key, "error", f"{key}: {wrong}"))
        else:
            if filled.key in found:
                wrong = f"{key}: {text.strip()!r} says the same as {filled.key}; give one of them."
                issues.append(Issue(sheet.name, key, "error", wrong))
            found[filled.key] = filled
    return found, issues


def _of_a_thread(sheet: Calculation, field: Field, text: str) -> str:
    """What is said of the name of a thread where a number is wanted; empty where the text is none."""
    row = quantity(field.key)
    if row.kind is Kind.CHOICE or not any(sign.isdigit() for sign in text) or not any(map(str.isalpha, text)):
        return ""
    from library.threads import find_threads

    if not find_threads(text.strip()):
        return ""
    place = place_of_thread(sheet)
    goes = f", which goes into {place}" if place and place != field.key else ""
    return f"{text.strip()!r} is the name of a thread{goes}; a number is wanted here, such as {example(row.kind)}."


def _of_a_list(field: Field, text: str, display: Display) -> str:
    """What is said of several values where one is wanted; empty where the text is no list."""
    row = quantity(field.key)
    if field.many or row.kind is Kind.CHOICE or not is_list(text):
        return ""
    try:
        count = len(read_many(text, row.kind, display, whole=row.whole))
    except UnitError:
        return ""
    return f"{tidy(text)!r} is a list of {count}; one value is wanted here, such as {example(row.kind)}."


def _not_asked(sheet: Calculation, key: str) -> str:
    accepted = ", ".join(field.key for field in sheet.inputs)
    near = get_close_matches(key, [field.key for field in sheet.inputs], n=1, cutoff=0.5)
    hint = f" Did you mean {near[0]}?" if near else ""
    return f"{key}: {sheet.name} does not ask for that; it takes {accepted}.{hint}"


def _typed(sheet: Calculation, field: Field, text: str, display: Display) -> Input:
    row = quantity(field.key)
    if row.kind is Kind.CHOICE:
        return Input(field.key, text, "given", _word(text, row.choices))
    if field.many:
        readings = read_many(text, row.kind, display, whole=row.whole)
        widths = [one.half_width for one in readings if one.half_width]
        return Input(
            field.key, text, "given", tuple(one.number for one in readings), max(widths, default=None)
        )
    sisters = [quantity(key) for key in row.other_kinds if sheet.field(key) is not None]
    others = tuple(sister.kind for sister in sisters)
    reading = read(text, row.kind, display, other_kinds=others, whole=row.whole)
    key = field.key if reading.kind is row.kind else next(s.key for s in sisters if s.kind is reading.kind)
    return Input(key, text, "given", reading.number, reading.half_width)


def _word(text: str, choices: tuple[str, ...]) -> str:
    by_word = {choice.lower(): choice for choice in choices}
    word = "-".join(text.lower().split())
    if word in by_word:
        return by_word[word]
    # Whole parts come before a mere beginning: type-1 is not type-11, and dish is type-12-dish.
    whole = [
        choice for choice in by_word if f"{choice}-".startswith(f"{word}-") or choice.endswith(f"-{word}")
    ]
    begun = [choice for choice in by_word if choice.startswith(word)]
    for fitting in (whole, begun):
        if word and len(fitting) == 1:
            return by_word[fitting[0]]
    raise UnitError(f"{text.strip()!r} is not one of the choices; it can be {' or '.join(choices)}.")


def entry_inputs(
    sheet: Calculation, entry: Entry, taken: Mapping[str, Input], surface: str = ""
) -> Iterator[Input]:
    """What an entry of the book gives for the inputs that were not typed; a range gives nothing by itself.

    Args:
        sheet: the calculation.
        entry: of the book.
        taken: the inputs that are given already.
        surface: the word of the surface that is worked on; its reliefs alone fill a relief.
    """
    if not entry.values:
        return
    groups = {field.one_of for field in sheet.inputs if field.one_of and field.key in taken}
    diameter = taken.get("diameter")
    for field in sorted(sheet.inputs, key=lambda one: one.key != "diameter"):
        if field.measured or field.key in taken or field.one_of in groups - {""}:
            continue
        value = in_book(entry, field, surface)
        measure = _measure_for(field, value) if value is not None else None
        if value is None or measure is None:
            continue
        filled = _from_book(field, value, measure, diameter.value if diameter else None)
        if filled is not None:
            groups.add(field.one_of)
            diameter = filled if field.key == "diameter" else diameter
            yield filled


def in_book(entry: Entry, field: Field, surface: str = "") -> Value | None:
    """What an entry has for an input: a value, a range, or nothing.

    A relief that the shop wrote of no surface fills nothing, and no shipped one is taken in its place.
    """
    if field.measured:
        return None
    if field.end_of is not None:
        return in_book(entry, Field(field.end_of[0]), surface)
    own = book_key(field.key, surface)
    keys = (own,) if own != field.key and own else (field.key, *field.fill_from)
    for key in keys:
        found = entry.values.get(key)
        if key in OF_NO_SURFACE or found is None or found.first() is None:
            continue
        if (found.layer == "shipped" or found.by_rule) and of_no_surface(entry, field) is not None:
            continue
        return found
    return None


def _measure_for(field: Field, value: Value) -> Measure | None:
    """What of a value fills an input: what is usual, or the end of its range that the input asks for."""
    if field.end_of is None:
        return value.usual
    return value.low if field.end_of[1] == "low" else value.high


def of_no_surface(entry: Entry, field: Field) -> Value | None:
    """A relief that the shop's book has for an input without saying of which surface."""
    found = entry.values.get(field.key) if field.key in OF_NO_SURFACE else None
    return found if found is not None and found.layer == "shop" else None


def _from_book(field: Field, value: Value, measure: Measure, diameter: Given | None) -> Input | None:
    number: Given = measure.word if quantity(field.key).kind is Kind.CHOICE else measure.number
    if measure.per_diameter:
        if not isinstance(diameter, float) or diameter <= 0:
            return None  # What is wrong with the diameter is said once, where it was typed.
        number = measure.number * diameter
    return Input(
        field.key, measure.text, "entry", number, share_of_diameter=measure.per_diameter, recommended=value
    )


def default_inputs(sheet: Calculation, taken: Mapping[str, Input], display: Display) -> Iterator[Input]:
    """The calculation's own defaults for what neither the person nor the entry gave."""
    for key, value in with_defaults(sheet, {key: one.value for key, one in taken.items()}).items():
        if key not in taken:
            yield Input(key, shown(key, value, display), "default", value)


def shown(key: str, value: Given, display: Display) -> str:
    """A value as text, in the reader's units."""
    if isinstance(value, str):
        return value
    numbers = value if isinstance(value, tuple) else (value,)
    return ", ".join(show(number, QUANTITIES[key].kind, display) for number in numbers)
