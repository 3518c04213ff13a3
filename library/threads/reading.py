"""Load the tables of standard threads that come with the program, cached after the first time."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from typing import Any

from library.book.model import Citation
from library.threads.model import Origin, Series, Thread

TABLES = Path(__file__).parent / "tables"
"""The folder of the tables, one series in each file."""

_SERIES_WORDS = ("id", "title", "thread_form", "taper", "engagement")
_LISTS = ("synonyms", "other_tap_drills")


@lru_cache(maxsize=1)
def all_threads() -> Mapping[str, Thread]:
    """Every thread by its id, series by series."""
    return {
        thread.id: thread
        for series, rows in _tables()
        for thread in (Thread(series=series, **_tidy(row)) for row in rows)
    }


@lru_cache(maxsize=1)
def all_series() -> Mapping[str, Series]:
    """Every series by its id."""
    return {series.id: series for series, _ in _tables()}


@lru_cache(maxsize=1)
def _tables() -> tuple[tuple[Series, list[dict[str, Any]]], ...]:
    found = (tomllib.loads(file.read_text(encoding="utf-8")) for file in sorted(TABLES.glob("*.toml")))
    return tuple((_series(table["series"]), table["thread"]) for table in found)


def _series(table: dict[str, Any]) -> Series:
    origins = {
        column: Origin(Citation("published", row["source"], row["place"]), row.get("note", ""))
        for column, row in table.items()
        if column not in _SERIES_WORDS
    }
    return Series(**{word: table[word] for word in _SERIES_WORDS if word in table}, origins=origins)


def _tidy(row: dict[str, Any]) -> dict[str, Any]:
    return {key: tuple(value) if key in _LISTS else value for key, value in row.items()}
