"""Save a card that somebody else may have changed meanwhile: what both wrote in different places is kept."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from library.book.diagnostics import shown
from library.cards.merging import merge
from library.cards.model import Card
from library.cards.store import Opened, load, save, save_all
from library.editing.merging import Choice, Conflict
from library.errors import ChangedMeanwhile, SaveError
from library.files.write_together import NotTogether

MOST_TRIES = 100
"""Times that a card is read and merged again; each time somebody else has saved it between the reading and the saving."""


@dataclass(frozen=True)
class SavedCard:
    """A card that was saved.

    Attributes:
        opened: as it is in its file now.
        merged: whether somebody else had written on it meanwhile, which is kept too.
        under: why it stands where it does, a sentence, where that is not plain; else empty.
    """

    opened: Opened
    merged: bool = False
    under: str = ""


def save_merged(
    book: Path,
    opened: Opened,
    card: Card,
    choices: Sequence[Choice] = (),
    ready: Callable[[Card], Card] = lambda card: card,
    met: Callable[[Opened], Opened] = lambda theirs: theirs,
) -> SavedCard | tuple[Conflict, ...]:
    """Save a changed card; where somebody else saved it since it was read, on what that one left.

    Args:
        book: the shop's folder.
        opened: as it was read.
        card: as it shall be.
        choices: answers to what both changed, from an earlier attempt.
        ready: makes the card ready to be saved, such as by closing it; asked anew for each merged card.
        met: looks at what somebody else saved before anything is laid on it, and gives what it is to be laid on; it may
            refuse.

    Returns:
        The card as it was saved; or, where both wrote in one place, what there is to choose, and nothing is saved.

    Raises:
        NoCard: when somebody took the card away.
        SaveError: when it cannot be saved, or somebody else left a file that cannot be read; the file is as it was.
    """
    now, whole = opened, card
    for number in range(MOST_TRIES):
        try:
            return SavedCard(save(book, now, ready(whole)), merged=number > 0)
        except ChangedMeanwhile:
            if number == MOST_TRIES - 1:
                raise
        now = load(book, opened.card.id)
        if now.read_only:
            raise SaveError(f"{now.read_only} Nothing was saved.", now.path)
        found = merge(opened.card, card, met(now).card, choices)
        if not isinstance(found, Card):
            return found
        whole = found
    raise AssertionError("the last try returns or raises")


def save_all_merged(
    book: Path, changed: Sequence[tuple[Opened, Card]], ready: Callable[[Card], Card] = lambda card: card
) -> tuple[Conflict, ...]:
    """Save several changed cards, all or none; where somebody else saved one of them meanwhile, on what that one left.

    Args:
        book: the shop's folder.
        changed: each card as it was read, and as it shall be.
        ready: makes each card ready to be saved; asked anew for a merged one, and may refuse it.

    Returns:
        What two wrote in one place, and then nothing is saved; nothing when all are saved.

    Raises:
        NoCard: when somebody took one of the cards away.
        Refused: from ``ready``.
        NotTogether: with a sentence for each card that cannot be saved; all files are as they were.
    """
    now = [(opened, ready(card)) for opened, card in changed]
    for number in range(MOST_TRIES):
        try:
            save_all(book, now)
        except NotTogether as error:
            if number == MOST_TRIES - 1 or not all(isinstance(one, ChangedMeanwhile) for one in error.errors):
                raise
        else:
            return ()
        conflicts: list[Conflict] = []
        now = []
        for opened, card in changed:
            theirs = load(book, opened.card.id)
            found = card if theirs.raw == opened.raw else merge(opened.card, card, theirs.card)
            if isinstance(found, Card):
                now.append((theirs, ready(found)))
            else:
                conflicts += found
        if conflicts:
            return tuple(conflicts)
    raise AssertionError("the last try returns or raises")


def told_of_both(conflicts: Sequence[Conflict]) -> list[str]:
    """A sentence for each place that two wrote in, for somebody who is not asked.

    Example:
        >>> told_of_both([Conflict("card", "2026-11-25-01", "minutes", None, "20", "25")])
        ["minutes of card 2026-11-25-01 was changed meanwhile by somebody else, to '25'. Nothing was saved; look at the card and set it again."]
    """
    return [
        f"{one.key} of card {one.id} was changed meanwhile by somebody else, "
        f"{'and is empty now' if one.theirs is None else f'to {shown(one.theirs)}'}. "
        "Nothing was saved; look at the card and set it again."
        for one in conflicts
    ]
