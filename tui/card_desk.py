"""The job cards of one shop as the screens need them: found, opened, saved, brought back from a draft."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from library.book.model import Book
    from library.cards.model import Card
    from library.cards.rows import CardRow
    from library.cards.store import Opened
    from library.drafts.draft import Draft
    from library.editing.merging import Choice, Conflict


@dataclass(frozen=True)
class Stored:
    """A card that was saved.

    Attributes:
        opened: as it is in its file now.
        merged: whether somebody else had written on it meanwhile, which is kept too.
    """

    opened: Opened
    merged: bool = False


@dataclass(frozen=True)
class Met:
    """What somebody else wrote in the same places; nothing is saved until a person has chosen."""

    conflicts: tuple[Conflict, ...]


class CardDesk:
    """Where the cards of a shop lie.

    Args:
        shop: the shop's folder.

    Attributes:
        rows: a row for every card, the newest first; nothing before they are read.
    """

    def __init__(self, shop: Path) -> None:
        self.shop = shop
        self.rows: tuple[CardRow, ...] | None = None

    def today(self) -> date:
        """The day on which cards are begun and finished."""
        return datetime.now().date()

    def read_rows(self) -> tuple[CardRow, ...]:
        """Read the rows of all cards; takes a moment, so it is called in a thread."""
        from library.book.folders import cache_folder
        from library.cards.index import card_rows

        return card_rows(self.shop, cache_folder())

    def earlier(self, tool: str) -> list[CardRow]:
        """The cards of a tool by its own name, the oldest first."""
        from library.cards.searching import of_tool

        return of_tool(self.rows or (), tool)

    def load(self, card_id: str) -> Opened:
        """Open a card; raises ``NoCard`` with a sentence where that is not possible."""
        from library.cards.store import load

        return load(self.shop, card_id)

    def save(self, opened: Opened | None, card: Card, choices: Sequence[Choice] = ()) -> Stored | Met:
        """Save a card, a new one under the next free id of today.

        Args:
            opened: as it was read; nothing for a new card.
            card: as it shall be.
            choices: answers to what was met before.

        Raises:
            SaveRefused: with a sentence; nothing is changed then.
        """
        from library.cards.store import create, save
        from library.files.refusals import ChangedMeanwhile

        if opened is None:
            return self._stored(create(self.shop, card, self.today()))
        try:
            return self._stored(save(self.shop, opened, card))
        except ChangedMeanwhile:
            return self._merged(opened, card, choices)

    def _merged(self, opened: Opened, card: Card, choices: Sequence[Choice]) -> Stored | Met:
        """Write on the card as somebody else left it; where both wrote in one place, ask first."""
        from library.cards.forms import changed_fields, with_fields
        from library.cards.store import NoCard, create, save

        try:
            theirs = self.load(opened.card.id)
        except NoCard:
            # Somebody took the card away; what is typed here is not lost with it.
            return self._stored(create(self.shop, card, self.today()))
        mine = changed_fields(opened.card, card)
        met = _met(opened.card, mine, theirs.card)
        answers = {choice.conflict: choice.side for choice in choices}
        if any(conflict not in answers for conflict in met):
            return Met(met)
        kept = {conflict.key for conflict in met if answers[conflict] == "theirs"}
        both = with_fields(theirs.card, {way: text for way, text in mine.items() if way not in kept})
        # What was answered on the day it was closed holds no more for a card that two people changed.
        return replace(self._stored(save(self.shop, theirs, both)), merged=True)

    def _stored(self, opened: Opened) -> Stored:
        from library.cards.rows import row_of

        if self.rows is not None:
            others = [row for row in self.rows if row.id != opened.card.id]
            self.rows = tuple(sorted([row_of(opened.card), *others], key=lambda row: row.id, reverse=True))
        return Stored(opened)

    def brought_back(self, draft: Draft, book: Book) -> tuple[Card, Opened | None]:
        """The card that a draft is of, with everything that the draft holds.

        Args:
            draft: as it was kept.
            book: gives a new card what its entry recommends.

        Returns:
            The card, and how it was read; nothing where it was never saved, or is not there any more.
        """
        from library.cards.finishing import reopened
        from library.cards.store import NoCard

        changed = {way: text for way, text in draft.fields.items() if text != draft.started.get(way, "")}
        changed |= {way: "" for way in draft.started if way not in draft.fields}
        try:
            opened = self.load(draft.about)
        except NoCard:
            begun = self._begun(draft.fields, book)
            return _written(begun, _all_of(begun, draft.fields)), None
        return _written(reopened(opened.card) if opened.card.done else opened.card, changed), opened

    def _begun(self, fields: Mapping[str, str], book: Book) -> Card:
        """A new card as it was begun: from an earlier one, from an entry, or empty."""
        from library.cards import starting
        from library.cards.store import NoCard

        if again := fields.get("again"):
            try:
                return starting.again(self.load(again).card)
            except NoCard:
                pass
        try:
            return starting.from_entry(book, book.entries[fields.get("entry", "")])
        except KeyError:
            return starting.empty(book)


def _met(base: Card, mine: Mapping[str, str], theirs: Card) -> tuple[Conflict, ...]:
    from library.cards.forms import as_fields, changed_fields
    from library.editing.merging import Conflict

    was, other = as_fields(base), changed_fields(base, theirs)
    return tuple(
        Conflict("card", base.id, way, was.get(way) or None, text or None, other[way] or None)
        for way, text in mine.items()
        if way in other and other[way] != text
    )


def _all_of(card: Card, fields: Mapping[str, str]) -> dict[str, str]:
    """What has to be written on a card for it to have exactly these fields."""
    from library.cards.forms import as_fields

    return {way: "" for way in as_fields(card) if way not in fields} | dict(fields)


def _written(card: Card, texts: Mapping[str, str]) -> Card:
    """The card with texts written on it; a place that there is not on a card is passed over."""
    from library.cards.editing import CardEditRefused, edited

    for way, text in texts.items():
        try:
            card = edited(card, way, text)
        except CardEditRefused:
            continue
    return card
