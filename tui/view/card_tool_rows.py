"""The first and the last step of a job card: what the tool is, and how the job ended."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from library.book.model import Book
from library.calc import ranges
from library.calc.by_family import is_threaded
from library.cards.issues import keeps_open
from library.cards.job import Job
from library.cards.results import USUAL
from library.cards.size_told import no_diameter
from library.cards.starting import HOLE_CLASS, OF_A_HOLE
from library.equipment.model import machines, wheels
from tui.view.card_row import Opened, Row

_UNITS = {"mm": "millimetres", "in": "inches"}

_TO_CHOOSE = "Left and Right change it, or its first letter, again for the next."

ALONE = "1"
"""The flutes of a tool that has one edge alone."""


def tool_rows(job: Job, opened: Opened) -> list[Row]:
    """What is known of the tool, and the machine and the wheel it is ground on."""
    card, tool, book = job.card, job.card.tool, job.book
    called_by_it = is_threaded(job.family)
    threaded = called_by_it or bool(tool.thread)
    thread = _text(
        "tool.thread", "Thread", tool.thread, "As marked: M16 x 2, 5/8-11 UNC, M20 x 2.5 LH, Tr 20 x 8 P4. A size without a "
        "thread, such as 8.7 mm of a drill, belongs into the line Size.",
    )  # fmt: skip
    sized = _of_book(job, "diameter")
    size = _text("tool.size", "Size", tool.size, f"{_spaced(no_diameter(job))}{_brings(sized)}As you say it: 12 mm, 5/8 in; of a step drill 6, 8, 10 mm."
                 f"{_class_told(job)}", wants=not (called_by_it and tool.thread), offers=sized)  # fmt: skip
    size = replace(size, said=_with_its_class(job))
    counted = "".join(_of_book(job, "flutes"))
    return [
        _text("tool.name", "Tool", tool.name, "Its own name or number in this shop; its history is found by it."),
        _family(book, card.family),
        *([thread, size] if threaded else [size]),
        _flutes(tool.flutes, counted, _range_of_book(job, "flutes")),
        _material(book, tool.work_material),
        _text("tool.belongs_to", "Belongs to", tool.belongs_to, "The customer, or the machine that it is used on."),
        _text("tool.marks", "Marks", tool.marks, "What its maker stamped on it."),
        _equipment(job, "machine", "Machine", {name: one.title for name, one in machines(book).items()}),
        _equipment(job, "wheel", "Wheel", {name: one.title for name, one in wheels(book).items()}),
        Row("units", "Lengths in", card.units, hint=f"The unit of a length typed without one into a setting. {_TO_CHOOSE}",
            choices=tuple(_UNITS), said=_UNITS),
    ]  # fmt: skip


def _text(
    way: str, label: str, text: str, hint: str, *, wants: bool = True, offers: tuple[str, ...] = ()
) -> Row:
    """A line of words; only a size or a thread gives way to typing, as a number does."""
    is_value = way in {"tool.size", "tool.thread"}
    return Row(
        way, label, text, hint=hint, offers=offers, wants=wants and not text, overtype=is_value, is_text=True
    )


def _flutes(text: str, of_book: str, of_many: str) -> Row:
    """The number of its edges, as the book has it until they are counted; of a tool with a single one they need not be."""
    hint = f"Count its edges; the book has {of_many or 'no number for this tool'}."
    if of_book:
        hint = f"Count its edges. Right takes {of_book}, as the book has it."
    told = of_book if not text else ""
    return Row("tool.flutes", "Flutes", text, told, "book" if told else "", hint,
               offers=(of_book,) if of_book else (), wants=not text and of_book != ALONE)  # fmt: skip


def _class_of_hole(job: Job) -> str:
    """The class of the hole that a reamer is for, such as H7, where somebody gave it; one that is presumed is no part of a size."""
    step = job.step(OF_A_HOLE)
    found = step.answer.inputs.get(HOLE_CLASS) if step is not None else None
    return str(found.value) if found is not None and found.origin != "default" else ""


def _with_its_class(job: Job) -> Mapping[str, str]:
    """The size as it is shown, the class of the hole behind it."""
    size, of_hole = job.card.tool.size, _class_of_hole(job)
    return {size: f"{size} {of_hole}"} if size and of_hole else {}


def _class_told(job: Job) -> str:
    """Where the class of the hole is changed, which stands behind the size."""
    of_hole = _class_of_hole(job)
    return (
        f" The class of its hole, {of_hole}, stands in the step Set; typed behind the size, it is changed there."
        if of_hole
        else ""
    )


def _of_book(job: Job, key: str) -> tuple[str, ...]:
    """What the book has for a quantity of the tool, to be brought into its line; nothing where it has no number."""
    found = job.entry.values.get(key)
    return (found.usual.text,) if found is not None and found.usual is not None else ()


def _range_of_book(job: Job, key: str) -> str:
    """From where to where the book has a quantity of the tool, of which no number is usual; empty where it has none."""
    found = job.entry.values.get(key)
    return ranges.said(found) if found is not None else ""


def _spaced(said: str) -> str:
    return f"{said} " if said else ""


def _brings(offers: tuple[str, ...]) -> str:
    return f"Right takes {offers[0]}, as the book has it. " if offers else ""


def _family(book: Book, family: str) -> Row:
    said = {name: one.title for name, one in book.families.items()}
    return Row("family", "Family", family, hint=f"It decides which settings there are. {_TO_CHOOSE} " + "{change} lists them.",
               choices=("", *said), said=said, wants=not family)  # fmt: skip


def _material(book: Book, material: str) -> Row:
    said = {name: one.title for name, one in book.materials.items()}
    return Row("tool.work_material", "Work material", material, hint="The work material. {change} lists those of the book; any other may be typed.",
               said=said, wants=not material, is_text=True)  # fmt: skip


def _equipment(job: Job, way: str, label: str, said: Mapping[str, str]) -> Row:
    if not said:
        hint = (
            f"The book has no {way} yet. "
            + "{change} opens a form that writes one down, as {menu}, machines, does from anywhere; the card can wait for it."
        )
        return Row(
            way,
            label,
            getattr(job.card, way),
            "none in the book yet",
            hint=hint,
            choices=("",),
            said=said,
            below=("{change} on this line writes one down.",),
        )
    now: str = getattr(job.card, way)
    return Row(way, label, now, hint=_TO_CHOOSE + " {change} lists them with what the book knows of each.",
               choices=("", *said), said=said, wants=not now)  # fmt: skip


def lines_of(way: str, label: str, text: str, hint: str, *, one_more: bool, more: str = "") -> list[Row]:
    """A text of several lines, a row for each.

    Args:
        way: to the text.
        label: stands before the first line.
        text: the whole text.
        hint: what belongs there.
        one_more: whether an empty line follows, to go on writing.
        more: what is said too where something stands in a line: behind an empty one none is begun.
    """
    lines = text.split("\n")
    if one_more and lines[-1]:
        lines.append("")
    return [
        Row(
            f"{way}#{number}",
            "" if number else label,
            line,
            hint=f"{hint} {more}" if more and line else hint,
            wants=not text,  # Once something is written, who goes on leaves the line behind it to who goes down.
            overtype=False,
            is_text=True,
            wide=True,
        )
        for number, line in enumerate(lines)
    ]


CLOSES = "{go-on} then asks whether to close the card."
"""What Enter does at the end of a card, behind which nothing is left to fill in."""

STAYS_OPEN = "{go-on} then goes to what keeps the card open."
"""What it does there while something does not add up."""


def _minutes(text: str) -> Mapping[str, str]:
    """A bare number as it counts: in minutes."""
    return {text: f"{text} min"} if text.strip().isdecimal() else {}


def end_rows(job: Job, opened: Opened) -> list[Row]:
    """Notes, time spent, and the result with what is to be said of it."""
    card = job.card
    # A result of an older card stays, also where no other card has it.
    results = dict.fromkeys((*(opened.results or USUAL), *([card.result] if card.result else [])))
    at_last = STAYS_OPEN if keeps_open(job) else CLOSES
    on = at_last if card.minutes and card.result else "{go-on} goes on."
    return [
        *lines_of("notes", "Notes", card.notes, f"Whatever the next person should know. {on}",
                  one_more=True, more="{down} begins another line."),
        Row("minutes", "Time spent", card.minutes, said=_minutes(card.minutes),
            hint=f"Such as 25 min or 1 h 20 min.{f' {at_last}' if card.result else ''}", wants=not card.minutes),
        Row("result", "Result", card.result, hint="How it ended: Left and Right change it, or its first letter; {change} lists "
            f"them. {at_last}", choices=("", *results), wants=not card.result),
        Row("remarks", "Remarks", card.remarks, hint=f"What is to be said of the result. {at_last}", overtype=False, is_text=True),
    ]  # fmt: skip
