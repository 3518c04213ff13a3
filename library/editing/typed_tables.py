"""A table of the book that is no entry as a person types it into the lines of a form, and as its file has it."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from pathlib import Path
from typing import Literal

from geometry.sentences import Kind
from library.book.diagnostics import Diagnostics
from library.book.layers import build, read_part
from library.book.model import Book
from library.book.parsing import parse
from library.book.shapes import shapes
from library.editing import writing
from library.editing.divisions import DIVISION, changed_divisions, of_another_kind, typed_divisions
from library.editing.form_words import as_in_a_form, empty_line
from library.equipment.readers import in_two
from library.equipment.usual_graduations import GRADUATIONS
from library.guidance.model import STEPS, WHEEL_LINES
from library.issue import Issue
from library.sanitize import sanitize
from library.shop_threads.shapes import LENGTHS
from library.units.several import after_the_last, bare_commas, in_short, parted, with_the_last_unit

How = Literal["text", "name", "texts", "measures", "count", "counts", "day", "told", "graduations"]
"""How a key is typed: on one line; as the name of a quantity, also with blanks in it; as several parted by
commas, of measures with a unit behind the last alone; as a line of text and one for its source; or, of the graduations
of a machine, as a line for each that tells what one division is worth."""

KINDS: Mapping[str, Kind] = {"spindle_speeds": Kind.ROTATION, "cam_throws": Kind.LENGTH}
"""What the measures of a key are that holds several."""

SOURCE = " source"
"""Ends the line of a form for where a line of text is from: a word or the id of a source, then a comma and the place in it."""

TABLES: Mapping[str, Mapping[str, How]] = {
    "machine": {
        "title": "text",
        "index_ratio": "count",
        "plate_holes": "counts",
        "spindle_speeds": "measures",
        "cam_throws": "measures",
        "throw_per": "text",
        "note": "text",
        "graduations": "graduations",
    },
    "wheel": {
        **dict.fromkeys(("title", "shape", "diameter", "new_diameter", "abrasive", "grit", "grade", "bond", "rated_speed"), "text"),
        "dressed": "day",
        "note": "text",
    },
    "setup": {
        **dict.fromkeys(("title", "family", "surface"), "text"),
        "methods": "texts",
        "when": "texts",
        "like": "text",
        "synonyms": "texts",
        **dict.fromkeys(STEPS, "told"),
    },
    "recommended_wheel": {
        "title": "text",
        **dict.fromkeys(("tool_materials", "operations", "abrasives", "shapes"), "texts"),
        "like": "text",
        "synonyms": "texts",
        **dict.fromkeys(WHEEL_LINES, "told"),
    },
    "unsuited_wheel": {
        "title": "text",
        "state": "text",
        **dict.fromkeys(("tool_materials", "abrasives", "shapes", "methods"), "texts"),
        "why": "told",
        "take": "told",
    },
    "symptom": {
        "title": "text",
        "families": "texts",
        "synonyms": "texts",
        "when": "texts",
        "measure": "told",
        "value": "name",
        "way": "text",
        "change": "told",
    },
    "thread": {
        "title": "text",
        "synonyms": "texts",
        **dict.fromkeys(("series", "thread_form", "thread_taper", *LENGTHS, "pitch", "threads_per_inch"), "text"),
        "other_tap_drills": "texts",
        "starts": "count",
        "hand": "text",
        "flutes": "count",
        **dict.fromkeys(("note", "source", "place"), "text"),
    },
}  # fmt: skip
"""The tables that have a form, by their names in brackets, with the keys that stand in it."""


def lines_of(array: str, key: str) -> tuple[str, ...]:
    """The lines of a form that one key of a table is typed on.

    Example:
        >>> lines_of("setup", "hold"), lines_of("wheel", "bond")
        (('hold', 'hold source'), ('bond',))
    """
    match TABLES[array][key]:
        case "told":
            return key, key + SOURCE
        case "graduations":
            return tuple(DIVISION + name for name in GRADUATIONS)
        case _:
            return (key,)


def as_written(array: str, texts: Mapping[str, str]) -> dict[str, object]:
    """The keys of a table as they stand in its file; blank texts are left out.

    Args:
        array: the kind of table.
        texts: what was typed, by line.

    Example:
        >>> as_written("machine", {"title": "The old one", "plate_holes": "15, 16", "division of the tilt": "15 min"})
        {'title': 'The old one', 'plate_holes': [15, 16], 'graduations': {'tilt': {'division': '15 min', 'sets': ['wheel_tilt']}}}
        >>> as_written("setup", {"hold": "In a collet.", "hold source": "manual-1990, page 3"})
        {'hold': {'text': 'In a collet.', 'source': 'manual-1990', 'place': 'page 3'}}
    """
    found = {key: _value(how, key, texts) for key, how in TABLES[array].items()}
    return {key: value for key, value in found.items() if value not in ("", [], {})}


def changed(array: str, now: Mapping[str, str], started: Mapping[str, str]) -> dict[str, object]:
    """The keys of a table that are different now, each as it shall stand in its file; ``None`` for one that goes.

    Of a key that is a table in itself only that part changes which was typed anew: what the shop sets and reads on a
    graduation stays, and so do its own keys beside a text and its source.

    Args:
        array: the kind of table.
        now: what stands in the form.
        started: what stood there at first.
    """
    fields: dict[str, object] = {}
    for key, how in TABLES[array].items():
        new, old = _value(how, key, now), _value(how, key, started)
        if new == old:
            continue
        if how == "graduations":
            fields[key] = changed_divisions(now, started)
        elif isinstance(new, dict) and isinstance(old, dict) and new:
            parts = {**old, **new}
            fields[key] = {part: new.get(part) for part in parts if new.get(part) != old.get(part)}
        else:
            fields[key] = new or None
    return fields


def as_typed(array: str, table: Mapping[str, object]) -> dict[str, str]:
    """What stands in a form for a table of a file: the inverse, for the keys that a form has."""
    texts: dict[str, str] = {}
    for key, how in TABLES[array].items():
        raw = table.get(key)
        if raw is None:
            continue
        if how == "graduations":
            texts |= typed_divisions(raw)
        elif how == "told" and isinstance(raw, Mapping):
            named = [_text(raw[part]) for part in ("source", "place") if part in raw]
            texts |= {key: _text(raw.get("text", "")), key + SOURCE: ", ".join(named)}
        elif how == "measures" and isinstance(raw, list):
            texts[key] = in_short(KINDS[key], [_text(one) for one in raw], between=", ")
        else:
            texts[key] = _text(raw)
    return texts


def laid_over(old: object, new: object) -> object:
    """A value over another; of tables each part over its own: what the new one does not name stays, ``None`` goes.

    A line of text that stands alone is one without a source.

    Example:
        >>> laid_over({"text": "Dry.", "source": "shop"}, {"text": "Flooded.", "place": None})
        {'text': 'Flooded.', 'source': 'shop'}
    """
    if isinstance(old, str) and isinstance(new, Mapping):
        old = {"text": old}
    if not (isinstance(old, Mapping) and isinstance(new, Mapping)):
        return new
    laid = {**old, **{key: laid_over(old.get(key), one) for key, one in new.items()}}
    return {key: one for key, one in laid.items() if one is not None}


def complaints(array: str, name: str, texts: Mapping[str, str], book: Book | None = None) -> dict[str, str]:
    """What is wrong with a table as it is typed, by line; the reader of the book itself looks at it.

    Args:
        array: the kind of table.
        name: its id.
        texts: what was typed.
        book: gives the ids that may be named; a machine and a wheel name none.
    """
    shape = shapes()[array]
    written = {"id": name or "as-typed", **as_written(array, texts)}
    raw = f"schema = 1\n\n{writing.table(array, written)}".encode("utf-8", "replace")
    diagnostics = Diagnostics(_known(book, array, name) if book is not None else {})
    parsed = parse(raw, Path("as-typed.toml"), "shop")
    for table in parsed.tables:
        if table.array == array:
            part = read_part(table, shape, diagnostics)
            if shape.look_over is not None:
                shape.look_over(build([part], shape), part.location)
    found = {**of_another_kind(texts), **_of_bare_commas(texts)} if array == "machine" else {}
    # Of several faults of a list a unit that is missing is told last: the others say more of what is meant.
    for issue in sorted((*parsed.findings, *diagnostics.findings), key=_is_without_unit):
        line = _line_of(array, issue)
        is_listed = line in KINDS and _is_without_unit(issue)
        fix = after_the_last(KINDS[line], texts.get(line, "")) if is_listed else ""
        said = as_in_a_form(issue.wrong, fix or issue.fix, is_named=array in ("setup", "symptom"))
        found.setdefault(line if line in texts else "", said)
    return found


def _is_without_unit(issue: Issue) -> bool:
    return "has no unit" in issue.wrong


def _of_bare_commas(texts: Mapping[str, str]) -> dict[str, str]:
    """What is asked of the lists in which a comma and no blank stands between two figures, by line."""
    asked = {key: bare_commas(kind, texts.get(key, "")) for key, kind in KINDS.items()}
    return {key: " ".join(in_two(wrong)) for key, wrong in asked.items() if wrong}


def _known(book: Book, array: str, name: str) -> dict[str, frozenset[str]]:
    """The ids of the book, the table that is typed among those of its kind."""
    more = {kind: frozenset(found) for kind, found in book.more.items()}
    own = {array: more.get(array, frozenset()) | {name}}
    return {"family": frozenset(book.families), "source": frozenset(book.sources), **more, **own}


def _line_of(array: str, issue: Issue) -> str:
    """The line on which stands what an issue complains of; empty where it is the table as a whole."""
    keys = issue.way.split(".")[1:]
    has_no_source = "has no source" in issue.text
    if not keys and empty_line(issue) in TABLES[array]:
        return empty_line(issue)
    if not keys:
        return "source" if has_no_source and "source" in TABLES[array] else ""
    how = TABLES[array].get(keys[0])
    if how == "graduations":
        return DIVISION + keys[1] if keys[1:] else ""
    if how == "told" and (has_no_source or keys[-1] in ("source", "place")):
        return keys[0] + SOURCE
    return keys[0]


def _value(how: How, key: str, texts: Mapping[str, str]) -> object:
    """What the lines of a key mean; something empty where nothing stands on them."""
    text = texts.get(key, "").strip()
    match how:
        case "told":
            source, _, place = (part.strip() for part in texts.get(key + SOURCE, "").partition(","))
            parts = {"text": text, "source": source, "place": place}
            return {name: one for name, one in parts.items() if one}
        case "graduations":
            divisions = {name: texts.get(DIVISION + name, "").strip() for name in GRADUATIONS}
            return {name: {"division": one, **GRADUATIONS[name]} for name, one in divisions.items() if one}
        case "measures":
            measures = [one for one in parted(text) if one]
            return [*(with_the_last_unit(KINDS[key], measures) or measures)]
        case "texts" | "counts":
            listed = text.replace(";", ",") if how == "counts" else text
            return [_one(how, part.strip()) for part in listed.split(",") if part.strip()]
        case _:
            return _one(how, text)


def _one(how: How, text: str) -> object:
    if how == "name":
        return "_".join(text.casefold().split())
    if how in ("count", "counts") and text.isdecimal() and len(text) < 10:
        return int(text)
    if how == "day":
        try:
            return date.fromisoformat(text)
        except ValueError:
            return text
    return text


def _text(value: object) -> str:
    return sanitize(", ".join(map(str, value)) if isinstance(value, list) else str(value))
