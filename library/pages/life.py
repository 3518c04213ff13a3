"""The pages of several cards: the life of one tool, and the plan of a batch."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from geometry.sentences import Kind
from library.cards.history import History
from library.cards.planning import Plan, Turn
from library.cards.setting_line import SettingLine
from library.pages.cautions import at_arms_length
from library.pages.page import Page, Said, Section, Table
from library.units.show import show
from library.units.system import Display


def life_page(found: History, display: Display) -> Page:
    """The life of a tool, the oldest card first, then what is left of it; a card that is no record yet has no result."""

    def size(value: float | None) -> str:
        return "" if value is None else show(value, Kind.LENGTH, display)

    rows = tuple(
        (one.card.id, size(one.before), size(one.after), one.card.minutes, one.card.ended)
        for one in found.visits
    )
    left = "not known. Fill in 'Size lost in sharpening' on a card of this tool"
    if found.left is not None:
        left = (
            f"{found.left}, as of card {found.left_as_of}, by grinding the faces or the end as that card says"
        )
    last = (Said((f"Last measured: {size(found.size)}.",)),) if found.size is not None else ()
    table = Table(("card", "came with", "left with", "min", "result"), rows)
    rest = Section("", (*last, Said((f"Sharpenings left: {left}.",), "strong")))
    return Page(f"The life of {found.name}", (Section("", (table,)), rest))


def batch_page(found: Plan, more: str = "") -> Page:
    """A batch in the order in which it is ground: what is set once, then card by card what changes.

    Args:
        found: the plan.
        more: where the cautions stand in full, so that two lines of them will do.
    """
    many = "1 setting changes" if found.changes == 1 else f"{found.changes} settings change"
    saved = found.changes_as_given - found.changes
    order = f"{saved} fewer than in the order named" if saved else "and the order named is as good as any"
    sections = (
        *([Section("", (at_arms_length(found.cautions, more),))] if found.cautions else ()),
        Section("Set once, and leave", (_settings(found.stays, "nothing is the same for all"),)),
        *(_turn(number, turn) for number, turn in enumerate(found.turns, 1)),
        Section("", (Said((f"{many} between the cards, {order}.",), "strong"),)),
    )
    return Page(f"Plan for {len(found.turns)} cards", sections)


def _turn(number: int, turn: Turn) -> Section:
    parts = [f"{number}. {turn.card.id}  {turn.card.title}"]
    if turn.flutes:
        parts.append(f"{turn.flutes} flute{'s' if turn.flutes > 1 else ''}")
    if turn.left is not None:
        parts.append(f"{turn.left} sharpening{'' if turn.left == 1 else 's'} left after it")
    exactly = tuple(f"{one.title} of this card, before rounding: {one.value}" for one in turn.exactly)
    blocks = (_settings(turn.changes, "nothing to change"), *((Said(exactly),) if exactly else ()))
    return Section(", ".join(parts), blocks)


def _settings(found: Iterable[SettingLine], nothing: str) -> Said:
    told: Sequence[str] = [f"{one.title}: {', '.join(filter(None, (one.value, one.counted, one.graduation)))}"
                           for one in found]  # fmt: skip
    return Said(tuple(told)) if told else Said((nothing,), "quiet")
