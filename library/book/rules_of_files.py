"""The rules of a book while its files are read: what they give, when they changed, and where two of them are alike."""

from __future__ import annotations

import re
import zlib
from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import combinations
from pathlib import Path

from library.book.diagnostics import Diagnostics, shown
from library.book.fetching import Signature, Unreadable, fetch
from library.book.index import FileRead
from library.book.layers import Part, build, read_part
from library.book.loader import Gone, Loader
from library.book.model import Entry, Layer, Material
from library.book.parsing import decoded, parse
from library.book.raw_table import RawTable
from library.book.rows import Row, extents_of
from library.book.rules import Rule, Rules, Scope, nearest, scope_in, scope_of
from library.book.shapes import shapes
from library.issue import Issue, Place

_HEADERS = re.compile(r"^[ \t]*+\[\[?[ \t]*+(?:rule|material)[ \t]*+[\].]", re.MULTILINE)
_ARRAYS = ("rule", "material")


def rules_in(
    files: Sequence[tuple[Path, Layer, Signature]], kept: Mapping[Path, tuple[FileRead, int]]
) -> tuple[Rules, int]:
    """The rules of all files, and a number that changes with them and with what they go by.

    Args:
        files: of both layers, shipped first.
        kept: what files gave before; one that had neither rule nor material and is unchanged is not read again.
    """
    tables: dict[tuple[str, str], dict[Layer, RawTable]] = {}
    for path, layer, signature in files:
        before = kept.get(path)
        if (
            before
            and before[0].note.signature == signature
            and not any(row.array in _ARRAYS for row in before[0].rows)
        ):
            continue
        for table in _tables(path, layer):
            of_layers = tables.setdefault((table.array, table.id), {})
            if layer not in of_layers or of_layers[layer].broken:
                of_layers[layer] = table
    rules: dict[str, Rule] = {}
    groups: dict[str, str] = {}
    for (array, name), of_layers in tables.items():
        made = build([_part(of_layers[layer]) for layer in of_layers], shapes()[array])
        if isinstance(made, Rule):
            rules[name] = made
        elif isinstance(made, Material) and made.iso_513:
            groups[name] = made.iso_513
    said = [table.text for (array, _), found in tables.items() if array == "rule" for table in found.values()]
    stamp = zlib.crc32(repr((said, sorted(groups.items()))).encode("utf-8", "replace"))
    return Rules(map(scope_of, rules.values()), groups, rules.get), stamp


def _tables(path: Path, layer: Layer) -> list[RawTable]:
    try:
        raw, _ = fetch(path)
    except Unreadable:
        return []
    if not _HEADERS.search(decoded(raw)):
        return []
    return [table for table in parse(raw, path, layer).tables if table.array in _ARRAYS and table.id]


def _part(table: RawTable) -> Part:
    return read_part(table, shapes()[table.array], Diagnostics(is_deaf=True, has_places=False))


def alike_rules(
    rows: Sequence[Row], materials: Iterable[Row], entries: Iterable[Row], reads: Sequence[FileRead]
) -> list[Issue]:
    """What to say of two rules that give an entry the same quantity, where neither says more about the tool.

    Args:
        rows: of the rules.
        materials: their rows.
        entries: their rows; they are only read where two rules could be alike.
        reads: what each file gave.
    """
    by_id = {row.id: row for row in rows}
    scopes = [scope for row in rows if (scope := scope_in(row.id, row.ranges)) is not None]
    pairs = [(one, other) for one, other in combinations(scopes, 2) if _may_be_alike(one, other)]
    if not pairs:
        return []
    families = {name for pair in pairs for scope in pair for name in scope.family}
    rules = Rules(scopes, {row.id: row.work_material for row in materials}, lambda _: None)
    loader = Loader([read.note for read in reads])
    found: dict[tuple[str, str], Issue] = {}
    for row in entries:
        entry = _entry(loader, row) if row.family in families else None
        if entry is None:
            continue
        for one, other, key in _ties(rules.fitting(entry)):
            if key not in entry.values and (one.id, other.id) not in found:
                found[one.id, other.id] = _issue(by_id[one.id], by_id[other.id], key, entry, reads)
    return list(found.values())


def _may_be_alike(one: Scope, other: Scope) -> bool:
    return (
        one.rank == other.rank
        and bool(set(one.family) & set(other.family))
        and any(other.gives.get(key) == layer for key, layer in one.gives.items())
        and all(
            mine is None or yours is None or set(mine) & set(yours)
            for mine, yours in ((one.work_material, other.work_material), (one.iso_513, other.iso_513))
        )
    )


def _entry(loader: Loader, row: Row) -> Entry | None:
    try:
        made = loader.make(row)
    except Gone:
        return None
    return made if isinstance(made, Entry) else None


def _ties(fitting: Sequence[Scope]) -> Iterator[tuple[Scope, Scope, str]]:
    """Rules that say equally much and give the same, where no other is nearer."""
    layers: tuple[Layer, ...] = ("shop", "shipped")
    for key in dict.fromkeys(key for scope in fitting for key in scope.gives):
        for layer in layers:
            first = nearest(fitting, key, layer)
            for other in fitting:
                is_tie = first is not None and first is not other and first.rank == other.rank
                if first is not None and is_tie and other.gives.get(key) == layer:
                    yield first, other, key
            if first is not None:
                break


def _issue(one: Row, other: Row, key: str, entry: Entry, reads: Sequence[FileRead]) -> Issue:
    here, there = extents_of(other)[-1], extents_of(one)[-1]
    file = reads[there.file].note.path.name
    wrong = (
        f"{shown(entry.title)} has {key} from this rule and from {shown(one.id)} ({file}, line {there.line}), and neither "
        "says more about the tool than the other."
    )
    fix = "Say in one of them more exactly for which tools it is, with when, except or work_material."
    return Issue(other.id, key, "warning", wrong, fix, Place(reads[here.file].note.path, here.line))
