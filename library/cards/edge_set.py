"""The angle of an edge that one calculation of a job finds and sets, and what is said where another one stands beside it.

The angle of a tap's chamfer follows from its threads and is set on the work head; all later calculations count with it.
A person may have measured another one, or typed one into a later calculation: which of them counts is said then.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence

from geometry.calculation import Check, note, watch
from geometry.quantities import quantity
from geometry.sentences import Amount, Kind, angle
from library.calc.answer import Answer
from library.calc.ranges import read_range
from library.cards.cams import Asked
from library.cards.chamfer import ANGLE, FINEST, THREADS
from library.cards.model import Card, Setting, Wanted
from library.cards.provenance import Provenance
from library.cards.step import Step
from library.units.read import UnitError, read

NEAR = math.radians(0.5)
"""By how much a measured angle may be another than the wanted one: what a common protractor shows; no source."""

_ALIKE = math.radians(FINEST) + 1e-9
"""Two angles (rad) this near to each other read alike."""


def sets_edge(before: Sequence[Step], key: str) -> Step | None:
    """The calculation that sets the angle of an edge, with which later ones count; nothing where none does.

    Args:
        before: the calculations that come before the later one.
        key: the angle.
    """
    return next(
        (
            one
            for one in before
            if one.in_use and one.sheet.role.hands_on == key and key in one.sheet.role.sets
        ),
        None,
    )


def beside_the_set_one(
    found: Answer, provenance: Mapping[str, Provenance], card: Card, before: Sequence[Step], ask: Asked
) -> Iterator[Check]:
    """What is said of a calculation whose angle of the edge is not the only one on the card.

    Args:
        found: the calculation, answered.
        provenance: of its inputs.
        card: with what was measured, typed and wanted.
        before: the calculations before it.
        ask: answers it with other texts.
    """
    if found.result is None:
        return
    for key in card.settings.get(found.sheet.name, Setting()).typed:
        step = sets_edge(before, key)
        if step is not None and step.answer.result is not None:
            yield from _typed(key, found, step)
    if ANGLE in found.sheet.role.sets and ANGLE in card.received:
        yield from _measured(found, provenance, card, ask)


def _typed(key: str, found: Answer, step: Step) -> Iterator[Check]:
    """Another angle typed into a calculation than the one that is set before it."""
    given, is_set = found.inputs.get(key), step.answer.result.outputs.get(key) if step.answer.result else None
    if given is None or is_set is None or not isinstance(given.value, float):
        return
    if abs(given.value - is_set) > _ALIKE:
        yield watch(
            "This is counted with the {title} of {typed} typed here, and {set} is what is set. Empty the line, and it is "
            "counted with {set} too.",
            cure=((key, None),),
            title=quantity(key).title.lower(),
            typed=angle(given.value),
            set=angle(is_set),
        )


def _measured(found: Answer, provenance: Mapping[str, Provenance], card: Card, ask: Asked) -> Iterator[Check]:
    """The angle that the chamfer came with, beside the one that is set."""
    is_set = found.result.outputs[ANGLE] if found.result is not None else 0.0
    came = max(_numbers(card.received[ANGLE]), key=lambda one: abs(one - is_set), default=None)
    if came is None:
        return
    if provenance.get(ANGLE) == "measured":
        threads = card.wanted.get(THREADS, Wanted("")).value
        other = _by_threads(threads, ask)
        if other is not None and abs(other - is_set) > _ALIKE:
            says = (
                "All is set and read by {came}, as the chamfer came; the {threads} threads wanted make {other}. For those "
                "empty the line Chamfer angle on the page Received."
            )
            yield _off(is_set, other, says, came=angle(is_set), threads=threads, other=angle(other))
    elif abs(came - is_set) > _ALIKE:
        why = (
            "which follows from the threads"
            if THREADS in found.inputs
            else "as it is wanted"
            if ANGLE in found.inputs
            else "which follows from its length"
        )
        says = "The chamfer came with {came}; all is set and read by {set}, {why}. If it keeps its angle, want {came}."
        yield _off(came, is_set, says, came=angle(came), set=angle(is_set), why=why)


def _off(one: float, another: float, says: str, /, **parts: Amount | str) -> Check:
    """A watch where two angles are further apart than a protractor may be, else a note."""
    return watch(says, **parts) if abs(one - another) > NEAR + 1e-9 else note(says, **parts)


def _by_threads(text: str, ask: Asked) -> float | None:
    """The angle (rad) that wanted threads make; nothing of a range, and of none."""
    if not text.strip() or read_range(THREADS, text) is not None:
        return None
    result = ask({ANGLE: "", THREADS: text}).result
    return result.outputs.get(ANGLE) if result is not None else None


def _numbers(readings: Sequence[str]) -> Iterator[float]:
    for text in readings:
        try:
            yield read(text, Kind.ANGLE, unit_wanted=True).number
        except UnitError:
            continue
