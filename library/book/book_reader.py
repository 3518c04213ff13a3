"""Read the files of both layers, those that changed or all, and merge them: the shop's tables over the shipped ones, as rows and findings."""

from __future__ import annotations

import gc
import re
import zlib
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path

from library.book.diagnostics import MOST_FINDINGS, Diagnostics, KeyPositions, Location, shown
from library.book.fetching import Signature, Unreadable, fetch
from library.book.index import FileNote, FileRead, Index, code_stamp, shared_by
from library.book.known_troubles import with_known_troubles
from library.book.layers import Part, build, read_part
from library.book.likeness import goes_round
from library.book.loader import Gone, Loader
from library.book.model import Entry, Family, Layer, Material
from library.book.natural import natural
from library.book.parsing import decoded, parse
from library.book.plain_entries import plain_rows
from library.book.raw_table import RawTable
from library.book.rows import Extent, Row, Rows, extents_of
from library.book.rules import Rule, Rules, scope_text
from library.book.rules_of_files import alike_rules, rules_in
from library.book.schema import SCHEMA, is_newer, told_as_newer
from library.book.search_of import search_of, with_the_troubles_of_others
from library.book.shapes import Shape, shapes
from library.book.value_ranges import ranges_text
from library.issue import Issue, Place

Files = Sequence[tuple[Path, Layer, Signature]]
Kept = Mapping[Path, tuple[FileRead, int]]
Known = Mapping[str, frozenset[str]]


def gather(files: Files, kept: Kept, *, for_list: bool = False) -> tuple[Index, list[FileRead], int]:
    """Read a book.

    Args:
        files: of both layers, shipped first.
        kept: what files gave before.
        for_list: whether rows with title, family and material will do, so that plain files of the shop are not
            parsed; their problems are not found then, nor what a search looks at.

    Returns:
        The book as an index, what each file gave, and the context it was read in, both to be kept.
    """
    with _uncollected():
        return _gathered(files, kept, for_list=for_list)


@contextmanager
def _uncollected() -> Iterator[None]:
    """Nearly all that is made here is kept: looking through it for what is not costs a fifth of the time."""
    was = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was:
            gc.enable()


def _gathered(files: Files, kept: Kept, *, for_list: bool) -> tuple[Index, list[FileRead], int]:
    known = _known_ids(files, kept)
    rules, stamp = rules_in(files, kept)
    context = _context(files, known, stamp)
    lower = _Lower(known)
    reads = []
    for path, layer, signature in files:
        before = kept.get(path)
        if (
            before
            and before[1] == context
            and (before[0].note.layer, before[0].note.signature) == (layer, signature)
        ):
            read = before[0]
        else:
            plain = _read_plainly(path, layer, lower) if for_list and layer == "shop" else None
            read = plain or _read(path, layer, known, lower, rules)
        reads.append(read)
        if layer == "shipped":
            lower.add(read)
    return _laid_over(reads), reads, context


def _known_ids(files: Files, kept: Kept) -> dict[str, frozenset[str]]:
    """The ids of all tables that another table may name."""
    found: dict[str, set[str]] = {array: set() for array in shapes() if array != "entry"}
    header = re.compile(rf"^[ \t]*+\[\[?[ \t]*+(?:{'|'.join(map(re.escape, found))})[ \t]*+\]", re.MULTILINE)
    for path, layer, signature in files:
        before = kept.get(path)
        if before and before[0].note.signature == signature:
            pairs = [(row.array, row.id) for row in before[0].rows if row.array in found]
        else:
            pairs = _pairs(path, layer, header)
        for array, name in pairs:
            if array in found:
                found[array].add(name)
    return {array: frozenset(names) for array, names in found.items()}


def _pairs(path: Path, layer: Layer, header: re.Pattern[str]) -> list[tuple[str, str]]:
    try:
        raw, _ = fetch(path)
    except Unreadable:
        return []
    if not header.search(decoded(raw)):
        return []
    return [(table.array, table.id) for table in parse(raw, path, layer).tables]


def _context(files: Files, known: Known, rules: int) -> int:
    """A number that changes with everything outside a file that decides what it gives."""
    shipped = [(str(path), signature) for path, layer, signature in files if layer == "shipped"]
    ids = sorted((array, sorted(names)) for array, names in known.items())
    return zlib.crc32(repr((shipped, ids, rules, code_stamp())).encode("utf-8", "replace"))


class _Lower:
    """The shipped parts of tables, read again when the shop has a table of the same id."""

    def __init__(self, known: Known) -> None:
        self._known = known
        self._notes: list[FileNote] = []
        self.rows: dict[tuple[str, str], Row] = {}
        self._taker = Loader(self._notes)

    def add(self, read: FileRead) -> None:
        for row in read.rows:
            extent = extents_of(row)[0]._replace(file=len(self._notes))
            self.rows.setdefault((row.array, row.id), row._replace(parts=_plain(extent)))
        self._notes.append(read.note)

    def part(self, array: str, name: str, shape: Shape) -> Part | None:
        row = self.rows.get((array, name))
        if row is None:
            return None
        try:
            return self._taker.part(row, extents_of(row)[0], shape)
        except Gone:
            return None


def _read(path: Path, layer: Layer, known: Known, lower: _Lower, rules: Rules) -> FileRead:
    try:
        raw, signature = fetch(path)
    except Unreadable as error:
        finding = Issue("", "", "error", error.wrong, error.fix, Place(path))
        return FileRead(FileNote(path, layer, Signature(0, 0, -1)), (), (finding,))
    signature = _settled(raw, signature)
    diagnostics = Diagnostics(known, has_places=False)
    parsed = parse(raw, path, layer)
    rows = []
    _check_beginning(parsed.tables, path, diagnostics)
    for table in parsed.tables:
        if _is_named(table, diagnostics):
            rows.append(_row(table, shapes()[table.array], diagnostics, lower, rules))
    if more := diagnostics.untold:
        are = f"are {more} more problems" if more > 1 else "is one more problem"
        wrong = f"There {are} in this file than the {MOST_FINDINGS} that are told here."
        diagnostics.findings.append(
            Issue("", "", "error", wrong, "Fix these first.", Place(path), counts=more)
        )
    findings = tuple(_sorted([*parsed.findings, *diagnostics.findings]))
    return FileRead(FileNote(path, layer, signature), tuple(rows), findings)


def _read_plainly(path: Path, layer: Layer, lower: _Lower) -> FileRead | None:
    """The rows of a file of plain entries; nothing where it has to be read in full."""
    try:
        raw, signature = fetch(path)
    except Unreadable:
        return None
    rows = plain_rows(decoded(raw), layer, lower.rows)
    return None if rows is None else FileRead(FileNote(path, layer, _settled(raw, signature)), rows)


def _settled(raw: bytes, signature: Signature) -> Signature:
    """The signature, changed where the file may have changed again without its time stamp showing it."""
    fresh = signature.is_fresh
    return replace(signature, size=-1) if fresh or len(raw) != signature.size else signature


def _check_beginning(tables: list[RawTable], file: Path, diagnostics: Diagnostics) -> None:
    if not tables or tables[0].array:
        return
    top = tables[0]
    key_positions = KeyPositions(top)
    for key, raw in top.content.items():
        location = Location(diagnostics, key_positions, (key,))
        if key == "schema" and is_newer(raw):
            location.complain(
                told_as_newer(raw),
                "Change it with the newer one; here it is read as far as it is understood, and never written in.",
            )
        elif key == "schema" and raw != SCHEMA:
            location.complain(f"The schema {shown(raw)} is not known here.",
                          f"Write schema = {SCHEMA}.")  # fmt: skip
        elif key in shapes():
            location.complain(f"{key} is given a value here.", f"Write each one below a line [[{key}]].")
        elif key != "schema" and not key.startswith("x-"):
            location.complain(
                f"{shown(key)} stands above the first table.", "Move it below its [[entry]].", "warning"
            )
    if len(tables) > 1 and "schema" not in top.content and "schema" not in top.unread:
        wrong = "The file does not say in which way it is written."
        diagnostics.findings.append(
            Issue("", "schema", "warning", wrong, f"Begin it with schema = {SCHEMA}.", Place(file))
        )


def _is_named(table: RawTable, diagnostics: Diagnostics) -> bool:
    """Whether a table is of a known kind and has an id; notes an issue where not."""
    location = Location(diagnostics, KeyPositions(table))
    if not table.array or table.array.startswith("x-"):
        return False
    if table.array not in shapes():
        near = location.near(table.array, shapes())
        fix = f"Did you mean [[{near}]]?" if near else "Begin its name with x- to keep it as your own."
        location.complain(f"A book has no table {shown(table.array)}.", fix, "warning")
        return False
    if table.brackets == "single":
        location.complain(f"[{table.array}] stands in single brackets.", f"Write it as [[{table.array}]].")
    if not table.id and "id" in table.content:
        location.at("id").complain(
            f"The id is {shown(table.content['id'])}; a text is wanted.", 'Write it in quotes: "...".'
        )
    elif not table.id and "id" not in table.unread:
        location.complain(f"This [[{table.array}]] has no id.", 'Add id = "..." as its first line.')
    return bool(table.id)


def _row(table: RawTable, shape: Shape, diagnostics: Diagnostics, lower: _Lower, rules: Rules) -> Row:
    below = lower.part(table.array, table.id, shape) if table.layer == "shop" else None
    part = read_part(table, shape, diagnostics)
    made = build([below, part] if below else [part], shape)
    if shape.look_over is not None and not table.broken:
        shape.look_over(made, part.location)
    if isinstance(made, Entry):
        made = rules.over(made)
    row = Row(
        table.array,
        table.id,
        str(getattr(made, "title", "")),
        layer=table.layer,
        state="broken" if table.broken else "unread" if table.unread else "",
        search=search_of(table.id, made),
        parts=_plain(Extent(0, table.start, table.end, table.line)),
    )
    if isinstance(made, Entry):
        ranges = ranges_text(made.values.values())
        return row._replace(family=made.family, work_material=made.work_material, ranges=ranges)
    if isinstance(made, Family):
        _want_served(made, table, diagnostics)
        return row._replace(family=made.like, work_material=made.kind)
    if isinstance(made, Material):
        return row._replace(work_material=made.iso_513)
    if table.array == "symptom":
        seen_on = " ".join(getattr(made, "families", ()))
        return row._replace(family=seen_on, ranges=", ".join(getattr(made, "when", ())))
    return row._replace(ranges=scope_text(made)) if isinstance(made, Rule) else row


def _want_served(family: Family, table: RawTable, diagnostics: Diagnostics) -> None:
    """Complain of a family of which nothing is said that a calculation could go by."""
    said = {"like", "kind", "surfaces"} & {*table.content, *table.unread}
    if not (said or family.like or family.kind or family.surfaces or table.broken):
        wrong = "Nothing says how these tools are ground, so only calculations for every tool serve them."
        fix = 'Add like = "..." with the family that they are ground like, or surfaces = [...] with those that are relieved.'
        Location(diagnostics, KeyPositions(table)).complain(wrong, fix, "warning")


def _plain(extent: Extent) -> str:
    return ":".join(map(str, extent))


def _laid_over(reads: Sequence[FileRead]) -> Index:
    """Lay the shop's rows over the shipped ones; of two with one id in a layer the first counts, and is told of."""
    found: dict[tuple[str, str], Row] = {}
    findings = [finding for read in reads for finding in read.findings]
    for number, read in enumerate(reads):
        for alone in read.rows:
            row = alone._replace(parts=f"{number}:{alone.parts.partition(':')[2]}")
            other = found.get((row.array, row.id))
            if other is None or (other.layer == row.layer and other.state == "broken"):
                found[row.array, row.id] = row
            elif other.layer != row.layer:
                found[row.array, row.id] = row._replace(parts=f"{other.parts}|{row.parts}")
            elif row.state != "broken":
                findings.append(_twice(row, other, reads))
    others = {
        array: [row for (kind, _), row in found.items() if kind == array]
        for array in shapes()
        if array != "entry"
    }
    findings += _circles(others.get("family", ()), reads)
    findings += alike_rules(others.get("rule", ()), others.get("material", ()), _of_entries(found), reads)
    families = with_known_troubles(others.get("family", ()), others.get("symptom", ()))
    others["family"] = with_the_troubles_of_others(families)
    shared = shared_by(others)
    entries = sorted(_of_entries(found), key=lambda row: (row.family, natural(row.title), row.id))
    return Index([read.note for read in reads], Rows.of(entries, shared), others, tuple(_sorted(findings)))


def _of_entries(found: Mapping[tuple[str, str], Row]) -> Iterator[Row]:
    return (row for (kind, _), row in found.items() if kind == "entry")


def _twice(row: Row, other: Row, reads: Sequence[FileRead]) -> Issue:
    here, there = extents_of(row)[-1], extents_of(other)[-1]
    file = reads[there.file].note.path
    return Issue(
        row.id,
        "id",
        "error",
        f"The id {shown(row.id)} is taken by {file.name}, line {there.line}.",
        "Give one of them another id, or make one of the two.",
        Place(reads[here.file].note.path, here.line),
    )


def _circles(families: Sequence[Row], reads: Sequence[FileRead]) -> list[Issue]:
    """What to say of families that are like each other all the way round."""
    likes = {row.id: row.family for row in families}
    findings = []
    for row in families:
        if goes_round(row.id, lambda name: likes.get(name, "")):
            here = extents_of(row)[-1]
            wrong = f"The family is like {shown(row.family)}, and in the end like itself, so there is nothing to follow."
            fix = "Take like away from one of them, and say there which surfaces it has."
            findings.append(
                Issue(row.id, "like", "warning", wrong, fix, Place(reads[here.file].note.path, here.line))
            )
    return findings


def _sorted(findings: Sequence[Issue]) -> list[Issue]:
    return sorted(findings, key=lambda one: (str(one.place.file), one.place.line, one.place.column))
