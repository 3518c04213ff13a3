"""Serialize an answer as plain data, for ``--json``, scripts and job cards: unrounded, every number with its unit."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from geometry.calculation import Check, Given, Result
from geometry.quantities import quantity
from geometry.sentences import Kind
from library.book.model import Book, Caution
from library.calc.answer import Answer
from library.calc.citation import cited
from library.calc.ranges import said
from library.units.convert import from_geometry
from library.units.show import say
from library.units.system import METRIC, Display

__all__ = ["Json", "as_data", "caution_data", "check_data", "cited", "notes_of", "number", "unit"]

Json = dict[str, Any]


def number(key: str, value: float, display: Display) -> float:
    """The unrounded value of a quantity in the unit that is worked in."""
    kind = quantity(key).kind
    return from_geometry(value, kind, display.unit(kind))


def _value(key: str, value: Given, display: Display) -> float | str | list[float]:
    if isinstance(value, str):
        return value
    if isinstance(value, tuple):
        return [number(key, one, display) for one in value]
    return number(key, value, display)


def unit(key: str, display: Display) -> str:
    """The unit in which ``number`` gives a quantity; empty for a count, a ratio or a word."""
    return display.unit(quantity(key).kind)


def as_data(found: Answer, book: Book, display: Display = METRIC) -> Json:
    """The answer as it is printed by ``heelclear calc NAME --json``.

    Args:
        found: an answer, with or without a result.
        book: gives the titles of the documents that cautions cite.
        display: lengths in millimetres or inches; angles are degrees, speeds m/s or ft/min.

    Returns:
        A dictionary of plain values; ``offers`` are ranges that the book has for what was not given; ``outputs``, ``stations``, ``rows`` and ``checks`` are empty while
        something is missing or wrong, and ``problems`` says what.
    """
    result = found.result or Result({})
    asked = {field.key for field in found.fields}
    return {
        "calculation": found.sheet.name,
        "inputs": {
            key: {"value": _value(key, filled.value, display), "unit": unit(key, display), "from": filled.origin,
                  "text": filled.text}
            | ({"plus_minus": number(key, filled.half_width, display)} if filled.half_width is not None else {})
            | ({"source": cited(book, filled.recommended.citation), "note": filled.recommended.note}
               if filled.recommended is not None else {})
            | ({"band": filled.recommended.band}
               if filled.recommended is not None and filled.recommended.band else {})
            | ({"surface": filled.surface} if filled.surface else {})
            | ({"view": filled.view} if filled.view else {})
            for key, filled in found.inputs.items()
            if key in asked
        },
        "offers": {
            key: {"book": said(value), "source": cited(book, value.citation), "note": value.note}
            | ({"band": value.band} if value.band else {})
            for key, value in found.offers.items()
        },
        "outputs": {
            key: {"value": number(key, value, display), "unit": unit(key, display)} | _spread(found, key, display)
            for key, value in result.outputs.items()
        },
        "stations": [
            {"fraction": station.fraction, "angle": from_geometry(station.angle, Kind.ANGLE, "deg")}
            | _values(station.readings, display)
            for station in result.stations
        ],
        "rows": [{"label": row.label} | _values(row.values, display) for row in result.rows],
        "checks": check_data(result.checks, display),
        "notes": notes_of(result.checks, display),
        "cautions": [caution_data(book, caution) for caution in found.cautions],
        "problems": [{"key": issue.key, "text": issue.text} for issue in found.issues],
    }  # fmt: skip


def check_data(checks: Sequence[Check], display: Display) -> list[dict[str, str]]:
    """The verdicts as plain data; notes carry none and stand apart."""
    return [
        {"state": check.state, "text": say(check.sentence, display)}
        for check in checks
        if check.state != "note"
    ]


def notes_of(checks: Sequence[Check], display: Display) -> list[str]:
    """The facts and instructions among the checks, in words."""
    return [say(check.sentence, display) for check in checks if check.state == "note"]


def _values(values: Mapping[str, float], display: Display) -> dict[str, float]:
    return {key: number(key, value, display) for key, value in values.items()}


def _spread(found: Answer, key: str, display: Display) -> Json:
    if key not in found.spreads:
        return {}
    spread = found.spreads[key]
    return {
        "plus_minus": number(key, spread.half_width, display),
        "most_from": spread.dominant,
        "first_order_holds": spread.straight,
    }


def caution_data(book: Book, caution: Caution) -> dict[str, str]:
    """A caution as plain data, its source written out."""
    return {"key": caution.id, "text": caution.text, "source": cited(book, caution.citation)}
