"""The shipped tables as plain data, read without the program's own reader."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest

import library

Table = dict[str, Any]
Tables = dict[str, list[Table]]

SHIPPED = Path(library.__file__).parent / "shipped"


@pytest.fixture(scope="session")
def shipped_files() -> list[Path]:
    """Every file of the shipped book."""
    return sorted(SHIPPED.rglob("*.toml"))


@pytest.fixture(scope="session")
def data_files(shipped_files: list[Path]) -> list[Path]:
    """The shipped book and the tables of threads."""
    return shipped_files + sorted((SHIPPED.parent / "threads" / "tables").glob("*.toml"))


@pytest.fixture(scope="session")
def tables(shipped_files: list[Path]) -> Tables:
    """All tables of all shipped files, by kind: ``entry``, ``source``, ``caution`` and so on."""
    found: Tables = {}
    for file in shipped_files:
        for kind, rows in tomllib.loads(file.read_text(encoding="utf-8")).items():
            if kind != "schema":
                found.setdefault(kind, []).extend(rows)
    return found
