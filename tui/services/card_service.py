"""The service of the job cards: searched, opened, saved, merged, restored from a draft."""

from __future__ import annotations

import itertools
from collections.abc import Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from datetime import date, datetime
from pathlib import Path

from library.book.folders import cache_folder
from library.book.model import Book, Entry
from library.cards import starting
from library.cards.bare_numbers import completed, in_the_units_of
from library.cards.close import reopened
from library.cards.folders_not_read import folders_not_read
from library.cards.forms import as_fields
from library.cards.history import Visit, visit_of
from library.cards.index import card_rows
from library.cards.merging import settled, with_all, with_those_that_fit
from library.cards.met_meanwhile import AnotherCard, ClosedMeanwhile, is_another, look_at
from library.cards.model import Card
from library.cards.rows import CardRow, row_of
from library.cards.saving import SavedCard, save_merged
from library.cards.searching import of_tool
from library.cards.store import NoCard, Opened, create, discard, load
from library.drafts.draft import Draft
from library.editing.merging import Choice, Conflict
from library.errors import SaveError
from library.files.reach import is_missing
from library.search.along import Along

NOTHING_ALONG = Along()

MOST_VISITS = 8
"""Earlier cards of one tool that are read for what stands beside a card."""


@dataclass(frozen=True)
class CardInHand:
    """A card opened for editing, with what a later save compares it to.

    Attributes:
        card: as it is now.
        opened: as it was read; nothing for a new card.
        about: what its drafts are known by.
        started: the texts that it had when it was begun; those it has now where nothing is said.
    """

    card: Card
    opened: Opened | None
    about: str
    started: Mapping[str, str] | None = None


@dataclass(frozen=True)
class CardConflicts:
    """The outcome of a save that meets a conflict: fields that both wrote; nothing is saved until a person has chosen."""

    conflicts: tuple[Conflict, ...]


class CardService:
    """Searches, opens, saves and restores the cards of one shop.

    Args:
        shop: the shop's folder.

    Attributes:
        rows: a row for every card, the newest first; nothing before they are read.
        not_read: what kept folders of cards from being read, a sentence each; empty where all were.
    """

    def __init__(self, shop: Path) -> None:
        self.shop = shop
        self.rows: tuple[CardRow, ...] | None = None
        self._named: set[str] = set()
        self._discarded: set[str] = set()
        self.not_read = ""
        self._visits: tuple[tuple[CardRow, ...] | None, tuple[str, str], list[Visit]] | None = None

    def today(self) -> date:
        """The day on which cards are begun and finished."""
        return datetime.now().date()

    def read_rows(self) -> tuple[CardRow, ...]:
        """Read the rows of all cards; takes a moment, so it is called in a thread."""
        self.not_read = " ".join(str(one) for one in folders_not_read(self.shop))
        return card_rows(self.shop, cache_folder())

    def earlier(self, tool: str) -> list[CardRow]:
        """The cards of a tool by its own name, the oldest first."""
        return of_tool(self.rows or (), tool)

    def visits(self, tool: str, card_id: str = "") -> list[Visit]:
        """The cards of a tool before one of them, with its sizes, the oldest first; one that cannot be read is passed over.

        They are read anew as soon as any card was saved or the list was read again.

        Args:
            tool: its own name in the shop.
            card_id: of the card that they are before; empty for one that is not saved yet, which comes after all.
        """
        asked = tool, card_id
        if self._visits is None or self._visits[0] is not self.rows or self._visits[1] != asked:
            found = []
            before = [row for row in self.earlier(tool) if not card_id or row.id < card_id]
            for row in before[-MOST_VISITS:]:
                with suppress(NoCard):
                    found.append(visit_of(self.load(row.id).card))
            self._visits = (self.rows, asked, found)
        return self._visits[2]

    def load(self, card_id: str) -> Opened:
        """Open a card; raises ``NoCard`` with a sentence where that is not possible."""
        return load(self.shop, card_id)

    def save(
        self,
        opened: Opened | None,
        card: Card,
        choices: Sequence[Choice] = (),
        started: Mapping[str, str] | None = None,
        *,
        opens_again: bool = False,
    ) -> SavedCard | CardConflicts:
        """Save a card, a new one under the next free id of today; so is one that was taken away, or has made way for another.

        Args:
            opened: as it was read; nothing for a new card.
            card: as it shall be.
            choices: answers to what was met before.
            started: the texts that the card had when what is typed was begun; those it was read with where nothing is
                said. A draft may be older than what is saved.
            opens_again: whether what somebody else closed meanwhile may be opened again for it.

        Raises:
            ClosedMeanwhile: when somebody else closed it as a record, and it may not be opened again.
            SaveError: with a sentence; nothing is changed then.
        """
        card = completed(card)
        if opened is None:
            return self._created(card)
        if started is not None and started != as_fields(opened.card):
            found = settled(started, card, opened.card, choices)
            if not isinstance(found, Card):
                return CardConflicts(found)
            card = found

        def met(theirs: Opened) -> Opened:
            try:
                look_at(opened, card, theirs)
            except ClosedMeanwhile:
                if not opens_again:
                    raise
                return replace(theirs, card=reopened(theirs.card))
            return theirs

        try:
            saved = save_merged(self.shop, opened, card, choices, met=met)
        except AnotherCard as other:
            return self._created(card, other.sentence.removesuffix(" Nothing was saved."))
        except NoCard as gone:
            if not is_missing(opened.path):
                raise SaveError(gone.sentence, opened.path) from gone
            # Somebody took the card away; what is typed here is not lost with it.
            return self._created(card, f"Card {opened.card.id} was discarded or moved away meanwhile.")
        if not isinstance(saved, SavedCard):
            return CardConflicts(saved)
        # What was answered on the day it was closed holds no more for a card that two people changed.
        return replace(self._stored(saved.opened), merged=saved.merged)

    def _created(self, card: Card, why: str = "") -> SavedCard:
        """A card saved under a new id, with what is said where it had another."""
        was = card.id
        saved = self._stored(create(self.shop, card, self.today(), self._discarded))
        now = saved.opened.card.id
        if not why:
            return saved
        where = (
            "It is there again, as you have it here."
            if now == was
            else f"What you have here is saved as {now}."
        )
        return replace(saved, under=f"{why} {where}")

    def discard(self, opened: Opened) -> None:
        """Remove the file of a card that is a draft; raises ``SaveError`` with a sentence where that must not be.

        In this run its id is not given again: the card may still be open elsewhere.
        """
        discard(self.shop, opened)
        self._discarded.add(opened.card.id)
        if self.rows is not None:
            self.rows = tuple(row for row in self.rows if row.id != opened.card.id)

    def _stored(self, opened: Opened) -> SavedCard:
        if self.rows is not None:
            others = [row for row in self.rows if row.id != opened.card.id]
            self.rows = tuple(sorted([row_of(opened.card), *others], key=lambda row: row.id, reverse=True))
        return SavedCard(opened)

    def begin(
        self, book: Book, entry: Entry | None, units: str, along: Along = NOTHING_ALONG, machine: str = ""
    ) -> CardInHand:
        """A new card from an entry, or an empty one where there is none.

        Args:
            book: with the shop's machines and wheels.
            entry: to begin from.
            units: ``mm`` or ``in``.
            along: size, thread and number of flutes of the tool, where they are known.
            machine: the id of the one in hand, for a card that has none of itself.
        """
        card = (
            starting.from_entry(book, entry, units, along.size) if entry else starting.empty(book, "", units)
        )
        card = card if card.machine else replace(card, machine=machine)
        return self._new(starting.found_with(card, along))

    def begin_again(self, card_id: str, book: Book) -> CardInHand:
        """A new card for the same job; raises ``NoCard`` where there is no such card."""
        return self._new(starting.again(self.load(card_id).card, book))

    def open(self, card_id: str) -> CardInHand:
        """A card of the shop; raises ``NoCard`` where there is no such card."""
        opened = self.load(card_id)
        return CardInHand(opened.card, opened, card_id)

    def brought_back(self, draft: Draft, book: Book) -> CardInHand:
        """The card that a draft is of, with everything that the draft holds.

        Args:
            draft: as it was kept.
            book: gives a new card what its entry recommends.
        """
        self._named.add(draft.about)
        changed = {way: text for way, text in draft.fields.items() if text != draft.started.get(way, "")}
        changed |= {way: "" for way in draft.started if way not in draft.fields}
        try:
            opened = self.load(draft.about)
        except NoCard:
            opened = None
        if opened is None or self.is_of_another(draft):
            begun = self._begun(draft.fields, book)
            return CardInHand(with_all(begun, draft.fields), None, draft.about, draft.started)
        card = reopened(opened.card) if opened.card.done else opened.card
        card = in_the_units_of(card, draft.fields.get("units", card.units))
        return CardInHand(with_those_that_fit(card, changed), opened, draft.about, draft.started)

    def fits_what_is_saved(self, brought_back: CardInHand) -> bool:
        """Whether a card that a draft was laid on holds something new, and nothing that was saved otherwise since.

        Nor was it closed as a record since, which the draft would open again.
        """
        opened, started = brought_back.opened, brought_back.started or {}
        if opened is None or opened.read_only or opened.card.done or brought_back.card == opened.card:
            return False
        return isinstance(settled(started, brought_back.card, opened.card), Card)

    def is_of_another(self, draft: Draft) -> bool:
        """Whether under the id of a draft another card stands now than the one that it was typed on."""
        try:
            now = self.load(draft.about)
        except NoCard:
            return False
        return not now.read_only and is_another(draft.started, as_fields(now.card))

    def fields_now(self, draft: Draft) -> Mapping[str, str] | None:
        """The texts of the card that a draft is of, as it is saved now; nothing where there is no such card."""
        try:
            return as_fields(self.load(draft.about).card)
        except NoCard:
            return None

    def _begun(self, fields: Mapping[str, str], book: Book) -> Card:
        """A new card as it was begun: from an earlier one, from an entry, or empty."""
        if again := fields.get("again"):
            try:
                return starting.again(self.load(again).card, book)
            except NoCard:
                pass
        try:
            return starting.from_entry(book, book.entries[fields.get("entry", "")])
        except KeyError:
            return starting.empty(book)

    def _new(self, card: Card) -> CardInHand:
        """A card that is not saved yet, by a name that no other draft has, whatever the clock says."""
        name = begun = f"new card, begun {datetime.now():%Y-%m-%d %H:%M:%S}"
        others = itertools.count(2)
        while name in self._named:
            name = f"{begun} ({next(others)})"
        self._named.add(name)
        return CardInHand(card, None, name)
