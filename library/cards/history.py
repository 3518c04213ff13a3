"""The life of one physical tool: every card of it, its size each time, and how many sharpenings are left."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace

from geometry.calculation import Field
from geometry.calculations import calculation_doing
from geometry.role import LASTING
from geometry.sentences import Kind
from library.book.model import Book
from library.cards.bare_numbers import completed, display_of
from library.cards.inspecting import greatest_number
from library.cards.job import Job, work_out
from library.cards.model import Card, Inspection, Readings, Setting
from library.cards.provenance import greatest, joined
from library.units.read import UnitError, read


@dataclass(frozen=True)
class Visit:
    """One sharpening of the tool.

    Attributes:
        card: the card of it.
        before: its diameter as it came, in mm; nothing where it was not measured.
        after: its diameter after grinding, in mm.
    """

    card: Card
    before: float | None
    after: float | None


@dataclass(frozen=True)
class History:
    """A tool's cards, the oldest first.

    Attributes:
        name: of the tool.
        visits: its sharpenings.
        size: the last diameter that was measured, in mm.
        left: the sharpenings left, from the last card that has an answer to that; nothing where none has.
        left_as_of: the card that says so.
    """

    name: str
    visits: tuple[Visit, ...]
    size: float | None = None
    left: int | None = None
    left_as_of: str = ""


def history(name: str, cards: Iterable[Card], book: Book) -> History:
    """Put together the life of a tool.

    Args:
        name: its own name in the shop.
        cards: all of its cards, in any order.
        book: to work them out with.
    """
    jobs = [work_out(card, book) for card in sorted(cards, key=lambda one: one.id)]
    visits = tuple(_visit(job) for job in jobs)
    sizes = [size for visit in visits for size in (visit.before, visit.after) if size is not None]
    left = next(((count, job.card.id) for job in reversed(jobs) if (count := sharpenings_left(job)) is not None),
                (None, ""))  # fmt: skip
    return History(name, visits, sizes[-1] if sizes else None, *left)


def _visit(job: Job) -> Visit:
    return visit_of(job.card)


def visit_of(card: Card) -> Visit:
    """The sizes before and after one sharpening, from the card alone."""
    card = completed(card)
    after = card.after.get("diameter", Inspection())
    return Visit(card, _diameter(card, card.received.get("diameter", ())), _diameter(card, after.readings))


def _diameter(card: Card, readings: Readings) -> float | None:
    """The greatest of some readings, in mm; nothing where none can be read."""
    display = display_of(card)
    text = greatest(joined(readings), Field("diameter"), display)
    try:
        value = read(text, Kind.LENGTH, display).number
    except UnitError:
        return None
    return value if math.isfinite(value) else None


def sharpenings_left(job: Job) -> int | None:
    """How often the tool can still be sharpened after this job.

    It is worked out with the size after grinding where that was measured, else as the tool came.
    """
    measured = job.card.after.get("diameter", Inspection()).readings
    return job.answers.remembered_of(job.steps, ("left", measured), lambda: _left(job))


def _left(job: Job) -> int | None:
    lasting = calculation_doing(LASTING).name
    after = job.card.after.get("diameter", Inspection())
    if greatest_number(job, "diameter", after.readings) is not None:
        setting = job.card.settings.get(lasting, Setting())
        size = greatest(joined(after.readings), Field("diameter"), job.display)
        setting = replace(setting, typed={**setting.typed, "diameter": size})
        card = replace(job.card, settings={**job.card.settings, lasting: setting})
        job = work_out(card, job.book, job)
    step = job.step(lasting)
    found = step.answer.result if step else None
    return None if found is None else int(found.outputs["sharpenings_left"])
