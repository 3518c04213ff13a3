"""The store of cards on the disk: one file for each, in a folder for each year, read whole and saved whole."""

from __future__ import annotations

import os
import re
from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from library.book.diagnostics import Diagnostics, KeyPositions, Location
from library.book.fetching import Unreadable, fetch
from library.book.parsing import Parsed, parse
from library.book.raw_table import RawTable
from library.cards.model import SCHEMA, Card
from library.cards.reading import read_card
from library.cards.unknown_names import complain_of_the_rest
from library.cards.writing import as_table, as_toml
from library.editing.document import EditRefused
from library.editing.plan import with_table
from library.errors import ChangedMeanwhile, Refused, SaveError, named, refusal
from library.files.bounds import Bounds, outside
from library.files.file_state import fingerprint, settle
from library.files.reach import is_missing
from library.files.safe_write import Saved, remove_safely, write_safely
from library.files.write_together import NotTogether, ToWrite, write_together
from library.issue import Issue, Place

FOLDER = "cards"
"""The folder of a book that holds its cards."""

MOST_IN_A_DAY = 9999
"""Cards that one day may have."""

_ID = re.compile(r"[0-9A-Za-z][0-9A-Za-z_-]{0,63}")
_DATED = re.compile(r"(?P<year>[0-9]{4})-[0-9]{2}-[0-9]{2}-[0-9]{2,4}")


@dataclass(frozen=True)
class Opened:
    """A card as it was read.

    Attributes:
        card: what could be read of it.
        path: its file.
        raw: the bytes of the file.
        findings: every problem of the file.
        read_only: why it must not be written over, a sentence; else empty.
        broken: whether the file, or a part of it, cannot be read.
    """

    card: Card
    path: Path
    raw: bytes
    findings: tuple[Issue, ...] = ()
    read_only: str = ""
    broken: bool = False


class NoCard(Refused, LookupError):
    """There is no card of that id, or its file cannot be read."""


def card_path(book: Path, card_id: str) -> Path:
    """The file of a card: ``cards/2026/2026-11-25-01.toml``.

    Raises:
        NoCard: for an id that no card can have, such as one with a slash.

    Example:
        >>> card_path(Path("book"), "2026-11-25-01").as_posix()
        'book/cards/2026/2026-11-25-01.toml'
    """
    if not _ID.fullmatch(card_id):
        raise NoCard(f"{card_id!r} is no id of a card; it is a day and a number, such as 2026-11-25-01.")
    dated = _DATED.fullmatch(card_id)
    folder = book / FOLDER / dated["year"] if dated else book / FOLDER
    return folder / f"{card_id}.toml"


def load(book: Path, card_id: str) -> Opened:
    """Read a card by its id.

    Raises:
        NoCard: when there is none, or its file cannot be read at all.
    """
    path = card_path(book, card_id)
    if is_missing(path):
        raise NoCard(f"There is no card {card_id}. 'heelclear cards' lists them.")
    return load_file(path, Bounds(book))


def load_file(path: Path, bounds: Bounds) -> Opened:
    """Read a card from its file.

    Args:
        path: of the file.
        bounds: of the book that it belongs to.

    Raises:
        NoCard: when the file cannot be read at all, or is a link that leads out of the book.
    """
    if bounds.is_outside(path):
        raise NoCard(outside(path, f"The card {named(path)}"))
    try:
        raw, _ = fetch(path)
    except Unreadable as error:
        raise NoCard(f"The card {named(path)} cannot be read: {error}") from error
    return from_bytes(raw, path)


def from_bytes(raw: bytes, path: Path) -> Opened:
    """The card in the bytes of a file, every problem noted."""
    parsed = parse(raw, path, "shop")
    diagnostics = Diagnostics(findings=list(parsed.findings))
    schema = _schema(parsed, diagnostics)
    tables = [table for table in parsed.tables if table.array == "card"]
    complain_of_the_rest(parsed, diagnostics)
    if not tables:
        diagnostics.findings.append(
            Issue("", "", "error", "This file holds no card.", "Begin it with [[card]].", Place(path))
        )
        return Opened(Card(id=path.stem, schema=schema), path, raw, tuple(diagnostics.findings),
                      f"{named(path)} holds no card that can be read{_where(parsed)}; fix it by hand.", True)  # fmt: skip
    location = Location(diagnostics, KeyPositions(tables[0]))
    card = read_card(tables[0].content, location, schema)
    if card.id != path.stem:
        location.at("id").complain(f"The card is called {card.id!r} but its file {path.name!r}.",
                               f'Write id = "{path.stem}", or rename the file.', "warning")  # fmt: skip
        card = replace(card, id=path.stem)
    findings = sorted(diagnostics.findings, key=lambda one: (one.place.line, one.place.column))
    return Opened(
        card, path, raw, tuple(findings), _why_read_only(card, parsed, tables), bool(_where(parsed))
    )


def _schema(parsed: Parsed, diagnostics: Diagnostics) -> int:
    top = next((table for table in parsed.tables if not table.array), None)
    schema = top.content.get("schema", SCHEMA) if top else SCHEMA
    if isinstance(schema, int) and not isinstance(schema, bool) and schema >= 1:
        return schema
    assert top is not None
    Location(diagnostics, KeyPositions(top)).at("schema").complain(
        "The schema is no whole number from 1.", "Write schema = 1."
    )
    return SCHEMA


def _where(parsed: Parsed) -> str:
    """Where the first thing is that cannot be read, and what it is; empty where all of the file can."""
    wrong = next((one for one in parsed.findings if one.severity == "error"), None)
    if wrong is None:
        return ""
    return f" (line {wrong.place.line}, column {wrong.place.column}: {wrong.wrong.rstrip('.')})"


def _why_read_only(card: Card, parsed: Parsed, tables: list[RawTable]) -> str:
    if card.newer:
        return (
            f"Card {card.id} was written by a newer Heelclear (schema {card.schema}; this one writes {SCHEMA}). "
            "It can be read and printed; take the newer program to change it."
        )
    if where := _where(parsed):
        return f"A part of card {card.id} cannot be read{where}, so it is not written over. Fix its file by hand first."
    if len(tables) > 1:
        return f"The file of card {card.id} holds {len(tables)} cards; give each a file of its own first."
    return ""


def create(book: Path, card: Card, day: date, given_up: Collection[str] = ()) -> Opened:
    """Save a new card under the next free id of the day.

    Args:
        book: the shop's folder; it is made when it is not there yet.
        card: without an id.
        day: it is begun on.
        given_up: ids that are not given again, because their cards may still be open somewhere.

    Raises:
        SaveError: when it cannot be saved.
    """
    for number in range(1, MOST_IN_A_DAY + 1):
        card_id = f"{day.isoformat()}-{number:02}"
        if card_id in given_up or os.path.exists(card_path(book, card_id)):
            continue
        new = replace(card, id=card_id, started=day, schema=SCHEMA)
        try:
            return _written(book, new, None, fingerprint(None))
        except ChangedMeanwhile:
            # Somebody else took the number between the look and the saving.
            continue
    raise SaveError(f"There are {MOST_IN_A_DAY} cards of {day} already; use another day.", book / FOLDER)


def save(book: Path, opened: Opened, card: Card) -> Opened:
    """Save a changed card over the one that was read.

    Args:
        book: the shop's folder.
        opened: as it was read.
        card: as it shall be; it keeps the id and the schema of the one read.

    Raises:
        ChangedMeanwhile: when somebody else changed the file since it was read.
        SaveError: when it must not or cannot be saved; the file is as it was.
    """
    now = replace(card, id=opened.card.id, schema=opened.card.schema)
    return _written(book, now, opened, fingerprint(opened.raw))


def discard(book: Path, opened: Opened) -> None:
    """Remove the file of a card that is a draft; nothing of it can be had back from here.

    Args:
        book: the shop's folder.
        opened: as it was read.

    Raises:
        ChangedMeanwhile: when somebody else changed or removed the file since it was read.
        SaveError: for a record, for a card that must not be written over, or when it cannot be removed.
    """
    if opened.read_only:
        raise SaveError(opened.read_only, opened.path)
    if opened.card.done:
        raise SaveError(
            f"Card {opened.card.id} is a record, and a record is not discarded. Open it again first, where it was closed "
            "by mistake.",
            opened.path,
        )
    remove_safely(opened.path, root=book, expected=fingerprint(opened.raw))


def save_all(book: Path, changed: Sequence[tuple[Opened, Card]]) -> None:
    """Save several changed cards over those that were read: all of them, or none.

    Args:
        book: the shop's folder.
        changed: each card as it was read, and as it shall be.

    Raises:
        NotTogether: with a sentence for each card that must not or cannot be saved; all files are as they were.
    """
    files: list[ToWrite] = []
    errors: list[SaveError] = []
    for opened, card in changed:
        try:
            data = _proved(replace(card, id=opened.card.id, schema=opened.card.schema), opened, opened.path)[
                0
            ]
            files.append(ToWrite(opened.path, data, fingerprint(opened.raw)))
        except SaveError as error:
            errors.append(error)
    if errors:
        raise NotTogether(errors)
    write_together(files, root=book)


def _proved(card: Card, opened: Opened | None, path: Path) -> tuple[bytes, Opened]:
    """What to write for a card, and the card as it reads back; raises where that is not what was typed."""
    if opened is not None and opened.read_only:
        raise SaveError(opened.read_only, path)
    data = _bytes(card, opened)
    again = from_bytes(data, path)
    if again.card != card or again.read_only:
        raise SaveError(
            f"Card {card.id} would not read back as it was typed, so it was not saved. Take strange characters and "
            "very long lines out of it.",
            path,
        )
    return data, again


def _written(book: Path, card: Card, opened: Opened | None, expected: str) -> Opened:
    path = opened.path if opened else card_path(book, card.id)
    data, again = _proved(card, opened, path)
    settle(path, book)
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise refusal(error, path.parent) from error
    saved: Saved = write_safely(path, data, root=book, expected=expected)
    return replace(again, raw=saved.data if saved.data is not None else data)


def _bytes(card: Card, opened: Opened | None) -> bytes:
    """What to write: the whole, or the same file changed in place where a person has written in it."""
    if opened is None or opened.raw == as_toml(opened.card).encode():
        return as_toml(card).encode()
    try:
        return with_table(opened.path, opened.raw, "card", as_table(card))
    except EditRefused as refused:
        raise SaveError(refused.sentence, opened.path) from refused
