"""Import of measurements from comma-separated text, and export of records and measurements to it."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from geometry.quantities import QUANTITIES
from library.book.diagnostics import nearest
from library.cards.editing import LONGEST_LINE, readings_of
from library.cards.job import flutes_of
from library.cards.model import Card, Inspection, Readings
from library.cards.provenance import joined
from library.cards.safe_cells import guarded_row, unguarded
from library.sanitize import sanitize

HEADING = ("card", "when", "quantity", "flute", "reading")
"""The columns of measurements, in any order; ``when`` is ``received`` or ``after``."""

RECORD = ("card", "status", "begun", "done", "tool", "family", "entry", "size", "thread", "flutes", "work_material",
          "belongs_to", "marks", "machine", "wheel", "wrong", "received", "wanted", "after", "minutes", "result",
          "remarks", "notes")  # fmt: skip
"""The columns of records."""

MOST_ROWS = 20_000
MOST_FLUTES = 60


@dataclass(frozen=True)
class Imported:
    """What a table of measurements asks for.

    Attributes:
        cards: the changed cards by id.
        problems: a sentence for each row that cannot be used; while there is one, nothing is to be saved.
        readings: how many readings were taken.
    """

    cards: Mapping[str, Card]
    problems: tuple[str, ...] = ()
    readings: int = 0


def records(cards: Iterable[Card]) -> str:
    """All cards, a row for each, as comma-separated text."""
    return written_records(record(card) for card in cards)


def written_records(rows: Iterable[Sequence[str]]) -> str:
    """Rows of ``record`` as comma-separated text."""
    return _written(RECORD, rows)


def record(card: Card) -> list[str]:
    """A card as a row, in the order of ``RECORD``."""
    tool = card.tool
    return [
        card.id,
        card.status,
        card.started.isoformat() if card.started else "",
        card.finished.isoformat() if card.finished else "",
        tool.name,
        card.family,
        card.entry,
        tool.size,
        tool.thread,
        tool.flutes,
        tool.work_material,
        tool.belongs_to,
        tool.marks,
        card.machine,
        card.wheel,
        card.wrong,
        "; ".join(f"{key} {joined(found)}" for key, found in card.received.items()),
        "; ".join(f"{key} {_wanted(card, key)}" for key in card.wanted),
        "; ".join(f"{key} {joined(one.readings)}" for key, one in card.after.items()),
        card.minutes,
        card.result,
        card.remarks,
        card.notes.rstrip(),
    ]


def _wanted(card: Card, key: str) -> str:
    """What the tool shall have; flutes that were counted on it are not what the book has for such tools."""
    one = card.wanted[key]
    counted = key == "flutes" and not one.changed and flutes_of(card.tool.flutes) is not None
    return card.tool.flutes if counted else one.value


def measurements(cards: Iterable[Card]) -> str:
    """All readings of the cards in the form that ``import_measurements`` takes."""
    rows = []
    for card in cards:
        for key, found in card.received.items():
            rows += _rows(card.id, "received", key, found)
        for key, one in card.after.items():
            rows += _rows(card.id, "after", key, one.readings)
    return _written(HEADING, rows)


def _rows(card: str, when: str, key: str, readings: Readings) -> list[list[str]]:
    """A row for each reading; one that stands for the tool as a whole has no flute, and a gap has no row."""
    whole = len(readings) == 1 and readings_of(readings[0]) == readings
    rows = ([card, when, key, "" if whole else str(flute), text] for flute, text in enumerate(readings, 1))
    return [row for row in rows if row[-1].strip()]


def _written(heading: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    out = io.StringIO(newline="")
    writer = csv.writer(out, lineterminator="\r\n", quoting=csv.QUOTE_ALL)
    writer.writerow(heading)
    writer.writerows(guarded_row([sanitize(cell, lines=True) for cell in row]) for row in rows)
    return out.getvalue()


def import_measurements(text: str, cards: Mapping[str, Card]) -> Imported:
    """Put the readings of a table on their cards.

    Columns may be parted by commas, semicolons or tabs. A flute without a number is the tool as a whole; a reading
    covers the one that stood there, and other flutes keep theirs.

    Args:
        text: of the file, with its heading.
        cards: the cards that the table may name, by id.

    Returns:
        The changed cards, or every problem.
    """
    try:
        rows = _read(text)
    except csv.Error as error:
        return Imported({}, (f"The table cannot be read: {error}. Save it as comma-separated text.",))
    if not rows:
        return Imported({}, (f"The table is empty. Its first line names the columns: {', '.join(HEADING)}.",))
    columns = [unguarded(cell).strip().casefold() for cell in rows[0][1]]
    missing = [name for name in HEADING if name not in columns and name != "flute"]
    if missing:
        return Imported({}, (f"Line 1: there is no column {' and no column '.join(missing)}. The first line names the "
                             f"columns: {', '.join(HEADING)}.",))  # fmt: skip
    if len(rows) > MOST_ROWS:
        return Imported({}, (f"The table has {len(rows)} lines; {MOST_ROWS} are the most. Divide it.",))
    return _taken(rows[1:], columns, cards)


def _read(text: str) -> list[tuple[int, list[str]]]:
    """The rows that hold anything, each with its line."""
    plain = text.removeprefix("\ufeff")
    first = plain.split("\n", 1)[0]
    sign = max(",;\t", key=first.count)
    reader = csv.reader(io.StringIO(plain, newline=""), delimiter=sign, strict=True)
    return [(reader.line_num, row) for row in reader if any(cell.strip() for cell in row)]


def _taken(
    rows: Sequence[tuple[int, list[str]]], columns: Sequence[str], cards: Mapping[str, Card]
) -> Imported:
    changed: dict[str, Card] = {}
    problems: list[str] = []
    taken = 0
    for line, cells in rows:
        row = {name: unguarded(cell.strip()).strip() for name, cell in zip(columns, cells, strict=False)}
        wrong = _wrong(row, cards)
        if wrong:
            problems.append(f"Line {line}: {wrong}")
            continue
        card = changed.get(row["card"], cards[row["card"]])
        changed[row["card"]] = _with_reading(card, row)
        taken += 1
    return Imported({}, tuple(problems)) if problems else Imported(changed, (), taken)


def _wrong(row: Mapping[str, str], cards: Mapping[str, Card]) -> str:
    """What is wrong with a row, a sentence; empty where nothing is."""
    card, when, key, flute = (row.get(name, "") for name in HEADING[:4])
    if card not in cards:
        return f"there is no card {card!r}."
    if when not in {"received", "after"}:
        return f"when is {when!r}; it can be received or after."
    if key not in QUANTITIES:
        near = nearest(key, list(QUANTITIES))
        return f"there is no quantity {key!r}." + (f" Did you mean {near}?" if near else "")
    if flute and not (flute.isdecimal() and flute.isascii() and 1 <= int(flute) <= MOST_FLUTES):
        return f"flute is {flute!r}; it is a number from 1 to {MOST_FLUTES}, or left empty for the tool as a whole."
    if len(row.get("reading", "")) > LONGEST_LINE:
        return f"the reading is longer than {LONGEST_LINE} characters."
    return "" if row.get("reading") else "the reading is empty."


def _with_reading(card: Card, row: Mapping[str, str]) -> Card:
    when, key, flute, text = row["when"], row["quantity"], row.get("flute", ""), row["reading"]
    inspection = card.after.get(key, Inspection())
    before = card.received.get(key, ()) if when == "received" else inspection.readings
    if flute:
        place = int(flute) - 1
        readings = [*before, *[""] * (place + 1 - len(before))]
        readings[place] = text
    else:
        readings = list(readings_of(text))
    if when == "received":
        return replace(card, received={**card.received, key: tuple(readings)})
    return replace(card, after={**card.after, key: replace(inspection, readings=tuple(readings))})
