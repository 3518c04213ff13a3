"""Which diameter a job counts with where a tool is ground down to another: the one that it is to have.

A tool that keeps its size is set by the diameter that was measured. One that came larger than it is to be has no edge on
that circle any more once it is ground: heights, facets and drops taken from the old circle would leave its heel proud of
the new one.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from geometry.ground_down import is_ground_down
from geometry.kinds import NOT_GROUND_DOWN
from geometry.quantities import quantity
from library.cards.model import Card, Inspection, Wanted
from library.cards.of_that_day import is_dated
from library.cards.provenance import KnownText, Provenance
from library.cards.sizes import each_size
from library.cards.thread_names import of_thread
from library.units.read import UnitError, read
from library.units.system import Display

DIAMETER, BODY = "diameter", "body_diameter"

TO_BE: Provenance = "to be"
"""Where the diameter is from that a tool is ground down to."""


@dataclass(frozen=True)
class ToBe:
    """The diameter that a tool is ground down to.

    Attributes:
        text: as it was written.
        number: in mm.
        came: the largest that was measured, else the size that is marked on the tool, in mm.
        is_measured: whether that was measured.
    """

    text: str
    number: float
    came: float
    is_measured: bool


def to_be(card: Card, kind: str, display: Display, found: Sequence[KnownText] = ()) -> ToBe | None:
    """The diameter that the tool of a card is to have, where it came larger; nothing where it keeps its size.

    Written after grinding, wanted, or marked as its size: the first of these that there is. A tool with a body that stands
    outside is ground down by however little; any other by more than a tool may stand over its size by itself.

    Args:
        card: with its sizes and what was measured.
        kind: of the tool: a tap is made larger than the thread that it is called by.
        display: the units of numbers typed without one.
        found: what calculations tell of its size from what was measured on it.

    Example:
        >>> from library.cards.model import Tool
        >>> odd = Card(tool=Tool(size="9.7 mm"), received={"diameter": ("10 mm",)})
        >>> to_be(odd, "twist-drill", Display())
        ToBe(text='9.7 mm', number=9.7, came=10.0, is_measured=True)
        >>> to_be(odd, "tap", Display())
    """
    if kind in NOT_GROUND_DOWN or of_thread(card.tool.thread):
        return None
    sizes = _numbers(each_size(card.tool.size), display)
    marked = sizes[0] if len(sizes) == 1 else None
    if len(sizes) > 1 or (target := next(_targets(card, marked, display), None)) is None:
        return None
    worked = [one.text for one in found if one.key == DIAMETER]
    measured = [number for _, number in _numbers(card.received.get(DIAMETER, ()) or worked, display)]
    came = max(measured, default=marked[1] if marked is not None else math.nan)
    text, number = target
    return (
        ToBe(text, number, came, bool(measured))
        if is_ground_down(came, number, body=_body(card, display))
        else None
    )


def laid_before(known: Sequence[KnownText], found: ToBe | None, card: Card) -> tuple[KnownText, ...]:
    """What is known of a job, the diameter that the tool is to have before the one that it came with.

    A closed card counts with what it has written down.

    Args:
        known: the strongest first.
        found: what the tool is ground down to; nothing where it keeps its size.
        card: of the job.
    """
    if found is None or (
        is_dated(card) and not any(DIAMETER in one.filled for one in card.settings.values())
    ):
        return tuple(known)
    return (KnownText(DIAMETER, found.text, TO_BE), *(one for one in known if one.key != DIAMETER))


def with_what_decides(card: Card) -> dict[str, Inspection]:
    """What of the inspection settings hang on: the diameter that the tool shall have."""
    found = card.after.get(DIAMETER)
    return {DIAMETER: Inspection(wanted=found.wanted)} if found is not None and found.wanted.strip() else {}


def _targets(card: Card, marked: tuple[str, float] | None, display: Display) -> Iterator[tuple[str, float]]:
    for text in (card.after.get(DIAMETER, Inspection()).wanted, card.wanted.get(DIAMETER, Wanted("")).value):
        yield from _numbers((text,), display)
    if marked is not None:
        yield marked


def _body(card: Card, display: Display) -> float | None:
    """The body that stands outside, in mm, as it was measured or typed into a calculation."""
    typed = (one.typed.get(BODY, "") for one in card.settings.values() if not one.skipped)
    texts = (*card.received.get(BODY, ()), *typed)
    return max((number for _, number in _numbers(texts, display)), default=None)


def _numbers(texts: Sequence[str], display: Display) -> list[tuple[str, float]]:
    """Those of some texts that are a diameter, each with its number in mm."""
    found = []
    for text in texts:
        try:
            number = read(text, quantity(DIAMETER).kind, display).number
        except UnitError:
            continue
        if 0 < number < math.inf:
            found.append((text.strip(), number))
    return found
