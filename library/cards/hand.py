"""Which way the tool of a job turns as it cuts: told where it is set, for a left-hand one is set to the other side."""

from __future__ import annotations

from library.calc.left_hand import HAND, LEFT, is_left_hand
from library.cards.job import Job


def is_left(job: Job) -> bool:
    """Whether the tool is left-hand: as the card or its thread says it, else as the book has the entry, else its family.

    Args:
        job: the card worked out.
    """
    book, card = job.book, job.card
    wanted = card.wanted.get(HAND)
    if said := (wanted.value.strip() if wanted is not None else "") or job.known_text(HAND):
        return said == LEFT
    if card.entry in book.entries:
        return is_left_hand(book.entries[card.entry])
    alike = [one for one in book.entries.values() if one.family == card.family]
    return bool(alike) and all(is_left_hand(one) for one in alike)
