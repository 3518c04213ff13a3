"""The life of one physical tool: every card of it, its size each time, and how many sharpenings are left."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace

from geometry.calculation import Field
from geometry.calculations import calculation_doing
from geometry.role import LASTING
from geometry.sentences import Kind
from library.book.model import Book
from library.cards.bare_numbers import completed, display_of
from library.cards.bench import asked_again
from library.cards.job import Job, work_out
from library.cards.model import Card, Inspection, Readings, Setting
from library.cards.provenance import greatest, joined
from library.cards.shall_be import greatest_number
from library.cards.step import Step
from library.units.read import UnitError, read

STOCK = "stock_per_sharpening"
"""What is taken off each time; neither tool nor machine nor wheel nor book says it, only a person on the card."""


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
    ordered = sorted(cards, key=lambda one: one.id)
    by_id = {card.id: card for card in ordered}
    lasting = [card.id for card in reversed(ordered) if may_last(card)]
    left = left_as_of(lasting, lambda card_id: left_of(by_id[card_id], book))
    return life_of(name, [visit_of(card) for card in ordered], left)


def life_of(name: str, visits: Sequence[Visit], left: tuple[int | None, str]) -> History:
    """The life of a tool from its sharpenings.

    Args:
        name: of the tool.
        visits: the oldest first.
        left: the sharpenings left, and the card that says so.
    """
    sizes = [size for visit in visits for size in (visit.before, visit.after) if size is not None]
    return History(name, tuple(visits), sizes[-1] if sizes else None, *left)


def left_as_of(ids: Iterable[str], left: Callable[[str], int | None]) -> tuple[int | None, str]:
    """The sharpenings left by the first card that says so, and its id; no card after it is worked out.

    Args:
        ids: of cards, the last one first.
        left: works a card out.

    Example:
        >>> left_as_of(["c", "b", "a"], {"c": None, "b": 4, "a": 5}.get)
        (4, 'b')
    """
    return next(((count, card_id) for card_id in ids if (count := left(card_id)) is not None), (None, ""))


def left_of(card: Card, book: Book) -> int | None:
    """How often the tool of a card can still be sharpened, by the book as it is."""
    return sharpenings_left(work_out(card, book))


def may_last(card: Card) -> bool:
    """Whether a card may say how many sharpenings are left: none does that does not say what each one takes off."""
    setting = card.settings.get(calculation_doing(LASTING).name, Setting())
    return any(STOCK in one for one in (setting.typed, card.received, card.wanted))


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

    It is worked out with the size after grinding where that was measured, else as the tool came; nothing where the
    calculation was left out, or nothing calls for it.
    """
    step = job.doing(LASTING)
    found = lasting_now(job, step).answer.result if step is not None and step.in_use else None
    return None if found is None else int(found.outputs["sharpenings_left"])


def ground_to_last(job: Job) -> str:
    """What is ground in the sharpenings that are counted: a land that is ground on this job costs size in its own way."""
    step = job.doing(LASTING)
    ground = step.answer.inputs.get("ground_on") if step is not None else None
    return "the end" if ground is not None and ground.value == "end" else "the faces"


def lasting_now(job: Job, step: Step) -> Step:
    """A calculation of a job; that of how often the tool can be sharpened again with its size after grinding, once measured.

    Args:
        job: the card worked out.
        step: any of its calculations.
    """
    if step.sheet.role.does != LASTING:
        return step
    measured = job.card.after.get("diameter", Inspection()).readings
    return job.answers.remembered_of(job.steps, ("left", measured), lambda: _lasting(job, step))


def _lasting(job: Job, step: Step) -> Step:
    after = job.card.after.get("diameter", Inspection())
    if greatest_number(job, "diameter", after.readings) is None:
        return step
    size = greatest(joined(after.readings), Field("diameter"), job.display)
    answer = asked_again(step, {"diameter": size}, job.answers)
    before, now = (one.result.checks if one.result is not None else () for one in (step.answer, answer))
    return replace(step, answer=answer, checks=(*now, *(one for one in step.checks if one not in before)))
