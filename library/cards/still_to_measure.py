"""What is measured after grinding, and whether any of it was: a card without a reading says nothing of the tool."""

from __future__ import annotations

from library.cards.model import Card

INSPECTED = ("drop", "diameter")
"""What is measured on every tool after it was ground."""


def still_to_measure(card: Card) -> tuple[str, ...]:
    """What is measured on every tool after grinding, while nothing at all was; empty as soon as there is a reading.

    Example:
        >>> still_to_measure(Card())
        ('drop', 'diameter')
    """
    is_measured = any(text.strip() for one in card.after.values() for text in one.readings)
    return () if is_measured else INSPECTED
