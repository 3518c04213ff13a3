"""The parts of an answer, and its page: what was given, what comes out, what is read on the way, and what it means."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterable, Mapping
from dataclasses import replace
from types import MappingProxyType

from geometry.calculation import Check, Result
from geometry.edge.surface_input import RELIEF_KEYS
from geometry.quantities import quantity
from geometry.surfaces import SURFACES
from library.book.model import Book, Entry
from library.calc.answer import Answer, off_by
from library.calc.field_titles import title_in
from library.calc.inputs import Input, shown
from library.calc.surfaces import RELIEF
from library.calc.throw_per import with_per
from library.calc.wording import in_one_paragraph
from library.equipment.driving import Worked
from library.equipment.model import Machine
from library.equipment.settings import GraduationLine, cost_said, graduation_lines
from library.equipment.settings import said as turned
from library.pages.cautions import at_arms_length, in_full
from library.pages.page import Checks, Named, Page, Said, Section, Table, Values
from library.pages.station_table import OTHER_SIDES, read_points, read_where, stations
from library.units.show import say, show, show_answer
from library.units.system import Display

WORST_FIRST = ("stop", "watch", "pass", "note")

HEEL_READ = frozenset({"drop", "heel_drop"})
"""Answers whose title does not say where the indicator points, which is told where other sides stand beside them."""

RELIEFS_OF_FORMS = frozenset({"eccentric_relief_angle", "flat_relief_angle"})
"""What the relief is if it has a form; that of the form that was found is the relief itself."""

RELIEFS_TOLD = RELIEFS_OF_FORMS | {RELIEF}
"""The same, and the relief of the form that was found."""

NOBODYS: Mapping[str, str] = MappingProxyType({})
"""No value is told as anybody's."""

_ORIGINS = {"given": "typed", "entry": "from the book", "default": "default"}


def answer_page(
    found: Answer,
    book: Book | None,
    display: Display,
    entry: Entry | None = None,
    *,
    cautions: bool = False,
    more: str = "",
    whose: Mapping[str, str] = NOBODYS,
) -> Page:
    """Everything of an answer: the worst verdict first, the answer last, where a terminal leaves it in sight.

    Args:
        found: an answer that has a result.
        book: gives the sources.
        display: the units.
        entry: the entry that filled what was not typed.
        cautions: tells each caution in full with its source.
        more: where they stand in full, so that two lines of them will do; without it all of them are told in words.
        whose: the word for whose a value is that was given and nobody typed, such as nominal or kept, by quantity.

    Raises:
        ValueError: when there is no result to tell.
    """
    result = found.result
    if result is None:
        raise ValueError("an answer without a result has nothing to tell")
    worst, others = parted(result.checks)
    parts = (
        given(found, book, display, whose),
        rows(result, display),
        stations(result.stations, display, name=read_where(found), points=read_points(found)),
        checks(others, display),
        outputs(found, result.outputs, display),
    )
    sections = tuple(Section("", (part,)) for part in parts if part is not None)
    verdict = judged.as_verdict() if (judged := checks(worst, display)) is not None else None
    warned = Section("", (at_arms_length(found.cautions, more),))
    warnings = in_full(found.cautions, book) if cautions else warned
    head = (*([Section("", (verdict,))] if verdict else []), *([warnings] if found.cautions else []))
    title = f"{found.sheet.title}: {entry.title}" if entry is not None else found.sheet.title
    return Page(title, (*head, *sections))


def parted(found: Iterable[Check]) -> tuple[list[Check], list[Check]]:
    """What stands above all numbers, and the rest: all that stops or is to be watched, else what comes first."""
    told = sorted(found, key=lambda one: WORST_FIRST.index(one.state))
    first = sum(one.state in {"stop", "watch"} for one in told) or 1
    return told[:first], told[first:]


def given(found: Answer, book: Book | None, display: Display, whose: Mapping[str, str] = NOBODYS) -> Values:
    """Every value that was counted with: who gave it, as it was typed, and what the book says of it."""
    used = [found.inputs[field.key] for field in found.fields if field.key in found.inputs]
    return Values(tuple(_given(found, one, book, display, whose.get(one.key, "")) for one in used))


def _given(found: Answer, one: Input, book: Book | None, display: Display, word: str) -> Named:
    title = with_per(title_in(found.sheet, one.key, found.surface), one.key, found.inputs)
    said = shown(one.key, one.value, display)
    whence = word or _ORIGINS[one.origin]
    if book is not None and one.recommended is not None:
        return Named(title, said, whence, (f"In the book: {in_one_paragraph(book, one.recommended)}",))
    return Named(title, said, whence + (f": {one.text}" if one.text != said else ""))


def outputs(found: Answer, keys: Iterable[str], display: Display) -> Values | None:
    """Answered quantities, and how far each may be off where that is known; nothing where there are none.

    A relief in the view in which it is given is told once.
    """
    if found.result is None:
        return None
    values = [(key, found.result.outputs[key]) for key in keys]
    named = tuple(_output(found, key, value, display) for key, value in values if not _is_told(found, key))
    return Values(named, at_edge=True) if named else None


def _output(found: Answer, key: str, value: float, display: Display) -> Named:
    row, spread = quantity(key), found.spreads.get(key)
    name, said = output_title(found, key), show_answer(value, row, display)
    if spread is None or not spread.dominant:
        return Named(name, said)
    most = quantity(spread.dominant).title.lower()
    return Named(name, said, f"{off_by(row.kind, spread, display)}, mostly from {most}")


def output_title(found: Answer, key: str) -> str:
    """What an answered quantity is called: by its calculation where that says more, else by its surface and its view."""
    named = found.result.named if found.result is not None else {}
    title = with_per(named.get(key) or title_in(found.sheet, key, found.surface), key, found.inputs)
    outputs = found.result.outputs if found.result is not None else {}
    if key in HEEL_READ and not OTHER_SIDES.isdisjoint(outputs) and (points := read_points(found)):
        return f"{title}, {points}"
    return title


def _is_told(found: Answer, key: str) -> bool:
    """Whether an output only repeats the relief of the surface, which is given or answered in the same view or form."""
    if found.result is not None and key in RELIEFS_OF_FORMS:
        return found.result.outputs[key] == found.result.outputs.get(RELIEF)
    surface = SURFACES.get(found.surface)
    if surface is None or found.result is None or key != RELIEF_KEYS[surface.view]:
        return False
    one = found.inputs.get(RELIEF)
    relief = found.result.outputs.get(RELIEF, one.value if one is not None else None)
    return isinstance(relief, float) and math.isclose(relief, found.result.outputs[key], abs_tol=1e-9)


def settings(found: Answer, display: Display, machine: Machine | None = None) -> dict[str, Named]:
    """What is set on the machine, by quantity, in the order in which it is set.

    Args:
        found: an answer; nothing comes of one without a result.
        display: the units.
        machine: gives the graduations, so that a setting is told in divisions too.
    """
    if found.result is None:
        return {}
    numbers = found.result.outputs
    keys = list(found.sheet.role.sets_with(numbers))
    if machine is not None:
        keys += [key for key in numbers if key not in keys and machine.setting_graduation(key) is not None]
    asked = {one.key for one in found.fields}
    values = {key: one.value for key, one in found.inputs.items() if key in asked}
    lines = (
        graduation_lines(machine, Worked(found.sheet, values, dict(numbers))) if machine is not None else ()
    )
    told = {line.key: _on_its_graduation(line, display) for line in lines}
    return {key: replace(_output(found, key, numbers[key], display), below=told.get(key, ())) for key in keys}


def _on_its_graduation(line: GraduationLine, display: Display) -> tuple[str, ...]:
    """A setting in divisions, and what the rounding to them costs; a graduation that is too coarse for it is to be watched."""
    cost = cost_said(line, display)
    return (turned(line), *([f"{'WATCH ' if line.is_coarse else ''}{cost}"] if cost else []))


def column_title(result: Result, key: str) -> str:
    """The head of a column of the table of an answer."""
    return result.heads.get(key) or quantity(key).title.lower()


def rows(result: Result, display: Display, name: str = "") -> Table | None:
    """The table of an answer that has one; under a name, a number that is the same in all rows is told once, beside it."""
    if not result.rows:
        return None
    keys = list(dict.fromkeys(key for row in result.rows for key in row.values))
    said = {
        key: [show(row.values[key], quantity(key).kind, display) if key in row.values else ""
              for row in result.rows] for key in keys}  # fmt: skip
    told = {key: [cell for cell in said[key] if cell] for key in keys if name}
    same = {key: cells[0] for key, cells in told.items() if len(cells) > 1 and len(set(cells)) == 1}
    once = ", ".join(f"{column_title(result, key)} {cell}" for key, cell in same.items())
    keys = [key for key in keys if key not in same]
    heading = (f"{name} ({once})" if once else name, *(column_title(result, key) for key in keys))
    return Table(
        heading,
        tuple((row.label, *(said[key][at] for key in keys)) for at, row in enumerate(result.rows)),
    )


def checks(found: Iterable[Check], display: Display, states: Collection[str] = WORST_FIRST) -> Checks | None:
    """What the numbers mean at the machine, the worst first; only those of some states, and nothing where there are none."""
    told = sorted((one for one in found if one.state in states), key=lambda one: WORST_FIRST.index(one.state))
    return Checks(tuple((one.state, say(one.sentence, display)) for one in told)) if told else None


def wanted(found: Answer) -> Said | None:
    """What is still to be given before there is an answer, alternatives together; nothing where nothing is."""
    missing = {issue.key for issue in found.issues if issue.missing}
    groups = {field.one_of for field in found.fields if field.key in missing and field.one_of}
    names: dict[str, list[str]] = {}
    for field in found.fields:
        if field.key in missing or field.one_of in groups:
            title = title_in(found.sheet, field.key, found.surface)
            names.setdefault(field.one_of or field.key, []).append(title[:1].lower() + title[1:])
    if not names:
        return None
    # Titles have commas of their own, as those of reliefs with their view.
    told = "; ".join(" or ".join(group) for group in names.values())
    return Said((f"The answer stands here as soon as you have given: {told}.",), "quiet")
