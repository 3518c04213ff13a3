"""Open the book: the shipped layer, the shop's over it, and every problem on the way."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import cast

from library.book.desk import Desk, Spot, Spots, nearest, shown
from library.book.fetching import Unreadable, fetch
from library.book.layers import Part, build, read_part
from library.book.model import Book, Caution, Entry, Family, Finding, Layer, Material, Place, Source
from library.book.parsing import parse
from library.book.shapes import SHAPES
from library.book.sheet import Sheet
from library.book.walking import walk

SHIPPED = Path(__file__).parent.parent / "shipped"
"""The folder of the data that came with the program."""

SCHEMA = 1
"""The version of the way a book is written."""


def open_book(shop: Path | None = None) -> Book:
    """Read the shipped data and a shop's own folder over it.

    Args:
        shop: the shop's folder; one that is not there is empty.

    Returns:
        The book, with every problem of every file.
    """
    desk = Desk()
    sheets = _sheets(SHIPPED, "shipped", desk) + (_sheets(shop, "shop", desk) if shop else [])
    tables = _by_kind(sheets, desk)
    desk.known = {array: frozenset(found) for array, found in tables.items()}
    made = {array: _read(array, found, desk) for array, found in tables.items()}
    return Book(
        cast(Mapping[str, Entry], made["entry"]),
        cast(Mapping[str, Family], made["family"]),
        cast(Mapping[str, Material], made["material"]),
        cast(Mapping[str, Caution], made["caution"]),
        cast(Mapping[str, Source], made["source"]),
        tuple(sorted(desk.findings, key=_order)),
    )


def _order(finding: Finding) -> tuple[str, int, int]:
    return str(finding.place.file), finding.place.line, finding.place.column


def _sheets(folder: Path, layer: Layer, desk: Desk) -> list[Sheet]:
    found = walk(folder)
    desk.findings.extend(found.findings)
    sheets: list[Sheet] = []
    for path, _ in found.files:
        try:
            raw, _ = fetch(path)
        except Unreadable as error:
            desk.findings.append(Finding(Place(path), "", error.wrong, error.mend))
            continue
        parsed = parse(raw, path, layer)
        desk.findings.extend(parsed.findings)
        _want_schema(parsed.sheets, path, desk)
        sheets.extend(parsed.sheets)
    return sheets


def _by_kind(sheets: list[Sheet], desk: Desk) -> dict[str, dict[str, list[Sheet]]]:
    tables: dict[str, dict[str, list[Sheet]]] = {array: {} for array in SHAPES}
    for sheet in sheets:
        spot = Spot(desk, Spots(sheet))
        if not sheet.array:
            _check_top(sheet, spot)
        elif sheet.array.startswith("x-"):
            continue
        elif sheet.array not in SHAPES:
            near = nearest(sheet.array, list(SHAPES))
            mend = f"Did you mean [[{near}]]?" if near else "Begin its name with x- to keep it as your own."
            spot.complain(f"A book has no table {shown(sheet.array)}.", mend, "watch")
        elif not sheet.id:
            _complain_of_no_id(sheet, spot)
        else:
            _place_it(tables[sheet.array].setdefault(sheet.id, []), sheet, spot)
    return tables


def _check_top(sheet: Sheet, spot: Spot) -> None:
    for key, raw in sheet.table.items():
        if key == "schema" and raw != SCHEMA:
            spot.at(key).complain(f"The schema {shown(raw)} is not known here.",
                                  f"Write schema = {SCHEMA}, or open the book with a newer Heelclear.")  # fmt: skip
        elif key in SHAPES:
            spot.at(key).complain(f"{key} is given a value here.", f"Write each one below a line [[{key}]].")
        elif key != "schema" and not key.startswith("x-"):
            spot.at(key).complain(
                f"{shown(key)} stands above the first table.", "Move it below its [[entry]].", "watch"
            )


def _want_schema(sheets: list[Sheet], file: Path, desk: Desk) -> None:
    if (
        len(sheets) > 1
        and not sheets[0].array
        and not {"schema"} & (sheets[0].table.keys() | sheets[0].unread)
    ):
        wrong = "The file does not say in which way it is written."
        desk.findings.append(
            Finding(Place(file), "schema", wrong, f"Begin it with schema = {SCHEMA}.", "watch")
        )


def _complain_of_no_id(sheet: Sheet, spot: Spot) -> None:
    if "id" in sheet.table:
        spot.at("id").complain(
            f"The id is {shown(sheet.table['id'])}; a text is wanted.", 'Write it in quotes: "...".'
        )
    elif "id" not in sheet.unread:
        spot.complain(f"This [[{sheet.array}]] has no id.", 'Add id = "..." as its first line.')


def _place_it(same: list[Sheet], sheet: Sheet, spot: Spot) -> None:
    if sheet.brackets == "single":
        spot.complain(f"[{sheet.array}] stands in single brackets.", f"Write it as [[{sheet.array}]].")
    other = same[-1] if same and same[-1].layer == sheet.layer else None
    if other is None:
        same.append(sheet)
    elif other.broken:
        same[-1] = sheet
    elif not sheet.broken:
        spot.at("id").complain(f"The id {shown(sheet.id)} is taken by {other.file.name}, line {other.line}.",
                               "Give one of them another id, or make one of the two.")  # fmt: skip


def _read(array: str, tables: Mapping[str, list[Sheet]], desk: Desk) -> dict[str, object]:
    shape = SHAPES[array]
    made = {}
    for name, sheets in tables.items():
        parts: list[Part] = [read_part(sheet, shape, desk) for sheet in sheets]
        made[name] = build(parts, shape)
    return made
