"""A machine or a wheel as a person types it into a form, and as its file has it."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from pathlib import Path

from library.book.diagnostics import Diagnostics
from library.book.layers import read_part
from library.book.parsing import parse
from library.book.shapes import shapes
from library.editing import writing
from library.sanitize import sanitize

LISTS = frozenset({"plate_holes", "spindle_speeds", "cam_throws"})
"""Keys that hold several, parted by commas."""

COUNTS = frozenset({"index_ratio", "plate_holes"})
"""Keys that hold whole numbers."""

MACHINE = ("title", "index_ratio", "plate_holes", "spindle_speeds", "cam_throws", "throw_per", "note")
WHEEL = ("title", "shape", "diameter", "abrasive", "grit", "bond", "rated_speed", "dressed", "note")
"""The keys of each that a form has."""

GRADUATIONS: Mapping[str, Mapping[str, object]] = {
    "wheel-head": {"sets": ["wheel_head_height"], "more": "up", "less": "down"},
    "tooth-rest": {"sets": ["tooth_rest_height"], "more": "down", "less": "up"},
    "cross-slide": {"sets": ["face_offset"]},
    "tilt": {"sets": ["wheel_tilt"]},
    "work-head": {"sets": ["chamfer_angle", "half_point_angle"]},
    "table": {"sets": ["swivel_angle"]},
    "indicator": {"reads": ["drop", "axial_drop", "square_drop", "lead_over_land"]},
}
"""What is set or read on a graduation of that name, where a shop says no more of it than what one division is worth."""

DIVISION = "division of the "
"""Begins the line of a form for what one division of a graduation is worth."""


def as_written(array: str, texts: Mapping[str, str]) -> dict[str, object]:
    """The keys of a table as they stand in its file; blank texts are left out.

    Args:
        array: ``machine`` or ``wheel``.
        texts: what was typed, by key, and for each graduation what a division is worth.

    Example:
        >>> as_written("machine", {"title": "The old one", "plate_holes": "15, 16", "division of the tilt": "15 min"})
        {'title': 'The old one', 'plate_holes': [15, 16], 'graduations': {'tilt': {'division': '15 min', 'sets': ['wheel_tilt']}}}
    """
    keys = MACHINE if array == "machine" else WHEEL
    found = {key: _value(key, texts[key].strip()) for key in keys if texts.get(key, "").strip()}
    divisions = {name: texts.get(DIVISION + name, "").strip() for name in GRADUATIONS}
    graduations = {name: {"division": text, **GRADUATIONS[name]} for name, text in divisions.items() if text}
    return {**found, "graduations": graduations} if graduations and array == "machine" else found


def changed(array: str, now: Mapping[str, str], started: Mapping[str, str]) -> dict[str, object]:
    """The keys of a table that are different now, each as it shall stand in its file; ``None`` for one that goes.

    Of a graduation that is there already only the division changes: what the shop sets and reads on it stays.

    Args:
        array: ``machine`` or ``wheel``.
        now: what stands in the form.
        started: what stood there at first.
    """
    new, old = as_written(array, now), as_written(array, started)
    fields = {
        key: new.get(key) for key in {**old, **new} if new.get(key) != old.get(key) and key != "graduations"
    }
    graduations: dict[str, object] = {}
    for name in GRADUATIONS if array == "machine" else ():
        text, before = (texts.get(DIVISION + name, "").strip() for texts in (now, started))
        if text != before:
            graduations[name] = (
                None if not text else {"division": text, **({} if before else GRADUATIONS[name])}
            )
    return {**fields, "graduations": graduations} if graduations else fields


def as_typed(array: str, table: Mapping[str, object]) -> dict[str, str]:
    """What stands in a form for a table of the shop's file: the inverse, for the keys that a form has."""
    texts = {key: _text(table[key]) for key in (MACHINE if array == "machine" else WHEEL) if key in table}
    graduations = table.get("graduations")
    if array == "machine" and isinstance(graduations, Mapping):
        texts |= {
            DIVISION + name: _text(one["division"])
            for name, one in graduations.items()
            if name in GRADUATIONS and isinstance(one, Mapping) and "division" in one
        }
    return texts


def complaints(array: str, name: str, texts: Mapping[str, str]) -> dict[str, str]:
    """What is wrong with a table as it is typed, by line; the reader of the book itself looks at it.

    Args:
        array: ``machine`` or ``wheel``.
        name: its id.
        texts: what was typed.
    """
    written = {"id": name or "as-typed", **as_written(array, texts)}
    raw = f"schema = 1\n\n{writing.table(array, written)}".encode("utf-8", "replace")
    parsed, diagnostics = parse(raw, Path("as-typed.toml"), "shop"), Diagnostics()
    for table in parsed.tables:
        if table.array == array:
            read_part(table, shapes()[array], diagnostics)
    found: dict[str, str] = {}
    for issue in (*parsed.findings, *diagnostics.findings):
        parts = issue.way.split(".")
        line = (
            DIVISION + parts[2]
            if len(parts) > 2 and parts[1] == "graduations"
            else parts[1]
            if parts[1:]
            else ""
        )
        found.setdefault(line if line in texts else "", issue.text)
    return found


def _value(key: str, text: str) -> object:
    if key in LISTS:
        return [_one(key, part.strip()) for part in text.split(",") if part.strip()]
    return _one(key, text)


def _one(key: str, text: str) -> object:
    if key in COUNTS and text.isdecimal() and len(text) < 10:
        return int(text)
    if key == "dressed":
        try:
            return date.fromisoformat(text)
        except ValueError:
            return text
    return text


def _text(value: object) -> str:
    return sanitize(", ".join(map(str, value)) if isinstance(value, list) else str(value))
