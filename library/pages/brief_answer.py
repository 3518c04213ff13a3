"""An answer within one screen: the worst verdict, the cautions, what was given, readings, and the answer last.

What a table says already is not said twice. What finds no room is left to the whole page: first what a person typed
himself a moment ago, then the remarks that are no verdict. No output, no STOP and no WATCH is ever left out. A table that is
longer than a screen stands before the verdict, so that this and the answer are what is left in sight.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace

from geometry.calculation import Check, Result, Station
from library.book.model import Book, Entry
from library.calc.answer import Answer
from library.calc.field_titles import title_in
from library.calc.inputs import Input, shown
from library.calc.throw_per import with_per
from library.pages.answer import outputs, parted, rows
from library.pages.as_text import as_text
from library.pages.cautions import at_arms_length, in_full
from library.pages.page import Block, Checks, Facts, Page, Section, Table
from library.pages.reader import Reader
from library.pages.station_table import read_points, read_where, stations
from library.pages.unit_in_head import shorter, unit_in_head
from library.units.show import say
from library.units.system import Display

SCREEN = 24
"""Lines of the smallest screen."""

MORE = "--given"
"""The option that tells everything."""


def brief_answer(
    found: Answer,
    book: Book | None,
    display: Display,
    reader: Reader,
    entry: Entry | None = None,
    *,
    cautions: bool = False,
    more: str = "",
) -> Page:
    """An answer that has a result, in as many words as a screen has room for.

    Args:
        found: the answer.
        book: gives the sources of the cautions.
        display: the units.
        reader: the width that the page is printed at.
        entry: the entry that filled what was not typed.
        cautions: tells each caution in full with its source.
        more: where they stand in full.

    Raises:
        ValueError: when there is no result to tell.
    """
    if found.result is None:
        raise ValueError("an answer without a result has nothing to tell")
    title = f"{found.sheet.title}: {entry.title}" if entry is not None else found.sheet.title
    warned = (at_arms_length(found.cautions, more),) if found.cautions else ()
    for verdict, tables, answer in _parts(found, found.result, display):
        page = Page(title, (Section("", (*verdict, *warned, *tables, *answer)),), close=True)
        if len(as_text(page, reader).splitlines()) <= SCREEN:
            break
    else:
        # The end of a page is what is left on the screen.
        page = Page(title, (Section("", (*tables, *verdict, *warned, *answer)),), close=True)
        verdict = tables
    if not cautions or not found.cautions:
        return page
    (told,) = page.sections
    rest = tuple(block for block in told.blocks if block not in warned)
    # They stand behind the verdict; behind the tables, where those are longer than a screen.
    first, rest = rest[: len(verdict)], rest[len(verdict) :]
    return replace(page, sections=(Section("", first), in_full(found.cautions, book), Section("", rest)))


def _parts(
    found: Answer, result: Result, display: Display
) -> Iterator[tuple[tuple[Block, ...], tuple[Block, ...], tuple[Block, ...]]]:
    """The verdict; what was given, the tables and what else is told; the answer. From all of it to the least."""
    bad, good = parted(result.checks)
    verdict = tuple(one.as_verdict() for one in _checks(bad, display))
    tables = tuple(_tables(found, result, display))
    answer = tuple(_outputs(found, result, display))
    verdicts = [one for one in good if one.state != "note"]
    used = [found.inputs[field.key] for field in found.fields if field.key in found.inputs]
    of_book = [one for one in used if one.origin == "entry"]
    for inputs, kept in ((used, good), (of_book, good), (of_book, verdicts), ([], verdicts), ([], [])):
        given = _given(found, inputs, len(used) - len(inputs), len(good) - len(kept), display)
        yield verdict, (given, *tables, *_checks(kept, display)), answer


def _checks(told: list[Check], display: Display) -> tuple[Checks, ...]:
    return (Checks(tuple((one.state, say(one.sentence, display)) for one in told)),) if told else ()


def _given(found: Answer, told: list[Input], values: int, sentences: int, display: Display) -> Facts:
    """What was counted with, one behind the other, and how much is not told here."""
    pairs = [
        (
            with_per(title_in(found.sheet, one.key, found.surface), one.key, found.inputs),
            shown(one.key, one.value, display),
        )
        for one in told
    ]
    left = [
        f"{count} {word}{'' if count == 1 else 's'}"
        for count, word in ((values, "value"), (sentences, "sentence"))
        if count
    ]
    return Facts((*pairs, *([(f"With {MORE}", " and ".join(left))] if left else [])))


def _tables(found: Answer, result: Result, display: Display) -> Iterator[Table]:
    read = [one for one in result.stations if one.fraction > 0 or any(one.readings.values())]
    for table in (
        rows(result, display),
        stations(read, display, name=read_where(found), points=read_points(found)),
    ):
        if table is not None:
            yield unit_in_head(shorter(table))


def _outputs(found: Answer, result: Result, display: Display) -> Iterator[Block]:
    """What comes out and stands in no table."""
    spread = {key for key, one in found.spreads.items() if one.dominant}
    keys = [key for key, value in result.outputs.items() if key in spread or not _told(key, value, result)]
    block = outputs(found, keys, display)
    if block is not None:
        yield Facts(
            tuple(
                (one.title, f"{one.value} ({one.beside})" if one.beside else one.value)
                for one in block.values
            )
        )


def _told(key: str, value: float, result: Result) -> bool:
    """Whether a table tells an output under its own name, or the reading at the heel does."""
    heel: Station | None = result.stations[-1] if result.stations else None
    told = [row.values[key] for row in result.rows if key in row.values]
    if heel is not None:
        named = {"land_angle": heel.angle, **heel.readings}
        named |= {"heel_drop": heel.readings["drop"]} if "drop" in heel.readings else {}
        told += [named[key]] if key in named else []
    return any(math.isclose(value, one, rel_tol=1e-9, abs_tol=1e-12) for one in told)
