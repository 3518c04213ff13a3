"""Plan a batch of cards: the order in which the fewest settings change, and what changes from card to card."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from library.book.model import Book, Caution
from library.calc.cautions import by_danger
from library.calc.left_hand import LEFT_HAND, TO_A_SIDE
from library.cards.hand import is_left
from library.cards.history import sharpenings_left
from library.cards.job import Job, flutes_of, work_out
from library.cards.model import Card
from library.cards.setting_line import SettingLine
from library.cards.settings_lines import setting_lines
from library.units.system import Display

OTHER = "to the other side"
"""Said of what is set for a left-hand tool by the number of a right-hand one."""


@dataclass(frozen=True)
class Turn:
    """One card of the batch, when its turn comes.

    Attributes:
        card: the card.
        changes: what is set anew for it; for the first one all that does not stay.
        exactly: what stays set, where its own exact value is another than the one that was told with the setting.
        flutes: how many edges are ground with these settings; nothing where nobody counted.
        left: sharpenings left after it; nothing where that is not known.
    """

    card: Card
    changes: tuple[SettingLine, ...]
    exactly: tuple[SettingLine, ...] = ()
    flutes: int | None = None
    left: int | None = None


@dataclass(frozen=True)
class Plan:
    """A batch in the order in which it is ground.

    Attributes:
        stays: settings that are the same for every card, set once; where they are rounded from several values, what they give.
        turns: the cards in order.
        changes: how often something is set anew after the first card.
        changes_as_given: how often it would be in the order in which the cards were named.
        cautions: of all cards together.
    """

    stays: tuple[SettingLine, ...]
    turns: tuple[Turn, ...]
    changes: int
    changes_as_given: int
    cautions: tuple[Caution, ...] = ()


def plan(cards: Sequence[Card], book: Book, display: Display) -> Plan:
    """Put a batch of cards in an order that saves set-ups.

    The next card is always the one that asks for the fewest changes, machine and wheel before graduations; among
    equals the one that was named first. That is not always the best order there is, but a short way to a good one.

    Args:
        cards: in the order in which they were named.
        book: to work them out with.
        display: the units to show.
    """
    jobs = [work_out(card, book) for card in cards]
    lines = [_all_lines(job, display) for job in jobs]
    if any(left := [is_left(job) for job in jobs]):
        lines = [_of_hand(own, is_left_hand=one) for one, own in zip(left, lines, strict=True)]
    order = min(
        (_order(lines, start) for start in range(len(jobs))), key=lambda one: _cost(lines, one), default=[]
    )
    as_given = list(range(len(jobs)))
    if _cost(lines, as_given) <= _cost(lines, order):
        order = as_given
    first = lines[order[0]] if order else ()
    stays = tuple(_set_once(line, lines) for line in first if all(_has(one, line) for one in lines))
    turns = tuple(_turns(jobs, lines, order, stays))
    warned = tuple(by_danger({one.id for job in jobs for one in job.cautions}, book))
    return Plan(stays, turns, _count(lines, order), _count(lines, as_given), warned)


def _turns(
    jobs: Sequence[Job],
    lines: Sequence[tuple[SettingLine, ...]],
    order: Sequence[int],
    stays: tuple[SettingLine, ...],
) -> Iterator[Turn]:
    """The cards in their order, each with what is set anew for it, and what of the rest it has exactly otherwise."""
    told = {line.title: line.value for line in stays}
    for place, number in enumerate(order):
        before = lines[order[place - 1]] if place else stays
        changes = tuple(line for line in lines[number] if not _has(before, line) and not _has(stays, line))
        told |= {line.title: line.value for line in changes}
        yield Turn(
            jobs[number].card,
            changes,
            tuple(line for line in lines[number] if line.value != told.get(line.title)),
            flutes_of(jobs[number].card.tool.flutes),
            sharpenings_left(jobs[number]),
        )


def _all_lines(job: Job, display: Display) -> tuple[SettingLine, ...]:
    """Machine, wheel and settings of a job, the slowest to change first."""
    machine = job.machine.title if job.machine else job.card.machine
    wheel = job.wheel.title if job.wheel else job.card.wheel
    mounted = [
        SettingLine("", name.lower(), name, title)
        for name, title in (("Machine", machine), ("Wheel", wheel))
        if title
    ]
    return (*mounted, *(line for line in setting_lines(job, display) if line.is_set))


def _of_hand(lines: Sequence[SettingLine], *, is_left_hand: bool) -> tuple[SettingLine, ...]:
    """The lines of a tool among others of either hand: for a left-hand one the same number goes to the other side."""
    if not is_left_hand:
        return SettingLine("", "hand", "Hand", "right-hand"), *lines
    hand = SettingLine("", "hand", "Hand", f"{LEFT_HAND}, {OTHER}")
    return hand, *(_turned_about(one) if one.key in TO_A_SIDE else one for one in lines)


def _turned_about(line: SettingLine) -> SettingLine:
    if line.graduation:
        return replace(line, graduation=f"{line.graduation}, {OTHER}")
    return replace(line, value=f"{line.value}, {OTHER}")


def _set_once(line: SettingLine, lines: Sequence[tuple[SettingLine, ...]]) -> SettingLine:
    """A setting of all cards: by its exact value where all have that, else by what the graduation gives."""
    values = {other.value for own in lines for other in own if line.same_as(other)}
    return replace(line, value=line.rounded) if line.rounded and len(values) > 1 else line


def _has(lines: Sequence[SettingLine], line: SettingLine) -> bool:
    return any(line.same_as(other) for other in lines)


def _order(lines: Sequence[tuple[SettingLine, ...]], start: int) -> list[int]:
    order, left = [start], [number for number in range(len(lines)) if number != start]
    while left:
        nearest = min(left, key=lambda number: _between(lines[order[-1]], lines[number]))
        order.append(nearest)
        left.remove(nearest)
    return order


def _between(before: tuple[SettingLine, ...], after: tuple[SettingLine, ...]) -> tuple[int, int]:
    """What changes from one job to the next: what is mounted, then everything."""
    changed = [line for line in after if not _has(before, line)]
    return sum(1 for line in changed if not line.sheet), len(changed)


def _cost(lines: Sequence[tuple[SettingLine, ...]], order: Sequence[int]) -> tuple[int, int]:
    steps = [_between(lines[one], lines[other]) for one, other in pairwise(order)]
    return sum(step[0] for step in steps), sum(step[1] for step in steps)


def _count(lines: Sequence[tuple[SettingLine, ...]], order: Sequence[int]) -> int:
    return _cost(lines, order)[1]
