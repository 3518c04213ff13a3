"""What earlier calculations of a job hand on to the later ones: how an edge lies, and the size that a measurement tells."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence

from geometry.quantities import quantity
from geometry.role import MEASURED_TOO
from geometry.sentences import Kind
from library.book.model import Entry
from library.cards.measured_again import measured_after
from library.cards.model import Card
from library.cards.provenance import KnownText, Provenance
from library.cards.step import Step
from library.units.show import show
from library.units.system import Display

_STRONGER: tuple[Provenance, ...] = ("wanted", "default", "measured", "to be")
"""Where a text comes from that counts more than a number that was worked out from another measurement."""


def of_edges(before: Iterable[Step], entry: Entry) -> Iterator[KnownText]:
    """How edges lie by earlier calculations; one that only was told it says nothing against the book.

    Args:
        before: those that are in use.
        entry: what the tool shall have.
    """
    for step in before:
        role = step.sheet.role
        key = role.hands_on
        if not key or _is_measured(step) or (key in entry.values and key not in role.sets):
            continue
        given = step.answer.inputs.get(key)
        angles = set(given.value) if given is not None and isinstance(given.value, tuple) else set()
        if step.answer.result is not None and key in step.answer.result.outputs:
            angles = {step.answer.result.outputs[key]}
        # Shoulders that lie at several angles have no one angle to hand on.
        if len(angles) == 1 and isinstance(angle := angles.pop(), float):
            yield KnownText(key, f"{math.degrees(angle):.6f}".rstrip("0").rstrip(".") + " deg", "worked")


def of_measuring(before: Iterable[Step], card: Card, display: Display) -> Iterator[KnownText]:
    """The sizes that earlier calculations found from what was measured on the tool.

    Nothing comes of one that stops, of one that was told the size, and of a size that a person decided otherwise.

    Args:
        before: those that are in use.
        card: with what is wanted.
        display: the unit in which the size is written.
    """
    for step in before:
        key, result = step.sheet.role.hands_on, step.answer.result
        if not _is_measured(step) or result is None or step.stopped or key in step.answer.inputs:
            continue
        wanted = card.wanted.get(key)
        if key in result.outputs and (wanted is None or (wanted.book and not wanted.changed)):
            text = show(result.outputs[key], quantity(key).kind, display)
            for name in (key, MEASURED_TOO.get(key, key)):
                yield KnownText(name, text, "worked")


def as_ground(before: Iterable[Step], card: Card, display: Display) -> Iterator[KnownText]:
    """The diameter that the tool has once its circle is ground, where an earlier calculation says that it must be.

    As it was measured after grinding, else as that calculation says. A size that a person decided on goes before it.

    Args:
        before: those that are in use.
        card: with what was measured, and what is wanted.
        display: the unit in which the size is written.
    """
    wanted = card.wanted.get("diameter")
    if wanted is not None and (wanted.changed or not wanted.book):
        return
    for step in before:
        for key, name in MEASURED_TOO.items():
            if step.provenance.get(name) != "measured":
                continue
            if again := measured_after(card, key):
                yield KnownText(key, again, "measured")
            for check in step.checks:
                ground = next((number for one, number in check.cure if one == name), None)
                if isinstance(ground, float):
                    yield KnownText(key, show(ground, quantity(key).kind, display), "worked")


def with_measured(known: Sequence[KnownText], found: Iterable[KnownText]) -> tuple[KnownText, ...]:
    """What is known, and what a measurement tells behind what was measured itself and before what is only stamped on the tool."""
    measured = tuple(one for one in known if one.provenance in _STRONGER)
    return (*measured, *found, *(one for one in known if one.provenance not in _STRONGER))


def _is_measured(step: Step) -> bool:
    """Whether what a calculation hands on is a size that follows from what was measured on the tool."""
    key = step.sheet.role.hands_on
    return bool(key) and quantity(key).kind is Kind.LENGTH
