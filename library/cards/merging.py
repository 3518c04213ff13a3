"""Merge a card that two people edited: what one of them typed goes over what the other one saved, field by field."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from library.cards.bare_numbers import in_the_units_of
from library.cards.editing import CardEditRefused, edited
from library.cards.forms import as_fields, changed_fields, with_fields
from library.cards.model import Card
from library.editing.merging import Choice, Conflict


def merge(
    base: Card, mine: Card, theirs: Card, choices: Sequence[Choice] = ()
) -> Card | tuple[Conflict, ...]:
    """The card with what both wrote; or, where both wrote in one place, what there is to choose.

    Args:
        base: as both of them read it.
        mine: as it shall be saved.
        theirs: as somebody else saved it meanwhile.
        choices: answers to conflicts of an earlier attempt; one counts only for the conflict that was shown.
    """
    # Where one of them changed the unit, a bare number of the other must not be read in it.
    base, theirs = (in_the_units_of(one, mine.units) for one in (base, theirs))
    typed = changed_fields(base, mine)
    both = _in_both(base, typed, theirs)
    kept = _kept_of_theirs(both, choices)
    if kept is None:
        return both
    return with_fields(theirs, {way: text for way, text in typed.items() if way not in kept})


def settled(
    started: Mapping[str, str], mine: Card, theirs: Card, choices: Sequence[Choice] = ()
) -> Card | tuple[Conflict, ...]:
    """A card that a draft was laid on, once it is known what holds where both are different; else what there is to choose.

    Args:
        started: the texts that the card had when the draft was begun.
        mine: what is saved now, with what was typed on it.
        theirs: as it is saved now.
        choices: answers to conflicts of an earlier attempt.
    """
    theirs = in_the_units_of(theirs, mine.units)
    base = in_the_units_of(with_all(theirs, started), mine.units)
    both = _in_both(base, changed_fields(base, mine), theirs)
    kept = _kept_of_theirs(both, choices)
    if kept is None:
        return both
    saved = as_fields(theirs)
    return with_fields(mine, {way: saved.get(way, "") for way in kept})


def _kept_of_theirs(both: Sequence[Conflict], choices: Sequence[Choice]) -> list[str] | None:
    """The places that are to stay as somebody else saved them; nothing where one of them is not answered."""
    answers = {choice.conflict: choice.side for choice in choices}
    if any(conflict not in answers for conflict in both):
        return None
    return [conflict.key for conflict in both if answers[conflict] == "theirs"]


def _in_both(base: Card, typed: Mapping[str, str], theirs: Card) -> tuple[Conflict, ...]:
    was, other = as_fields(base), changed_fields(base, theirs)
    return tuple(
        Conflict("card", base.id, way, was.get(way) or None, text or None, other[way] or None)
        for way, text in typed.items()
        if way in other and other[way] != text
    )


def with_all(card: Card, fields: Mapping[str, str]) -> Card:
    """The card with exactly these texts on it, as a draft of it was kept."""
    return with_those_that_fit(card, {way: "" for way in as_fields(card) if way not in fields} | dict(fields))


def with_those_that_fit(card: Card, texts: Mapping[str, str]) -> Card:
    """The card with texts written on it; a place that there is not on a card is passed over."""
    for way, text in texts.items():
        try:
            card = edited(card, way, text)
        except CardEditRefused:
            continue
    return card
