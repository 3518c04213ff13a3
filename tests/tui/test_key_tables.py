"""The document of the keys: what it says of them is what the registry has."""

from __future__ import annotations

import re
from pathlib import Path

from tests.key_table import DOCUMENT, document
from tui.actions import EVERYWHERE
from tui.own_keys import read_keys

TEXT = DOCUMENT.read_text(encoding="utf-8")


def rows(heading: str) -> list[list[str]]:
    """The cells of the table under a heading, without its head."""
    section = TEXT.partition(f"\n## {heading}\n")[2].partition("\n## ")[0]
    found = [line.strip("|").split("|") for line in section.splitlines() if line.startswith("|")]
    return [[cell.strip() for cell in row] for row in found[2:]]


def test_the_tables_are_those_of_the_registry() -> None:
    assert document(TEXT) == TEXT, "run: python tests/key_table.py"


def test_no_key_stands_twice_in_the_document() -> None:
    keys = [key for row in rows("Keys") for key in row[0].split()]
    assert len(keys) == len(set(keys)) > 30


def test_every_screen_has_a_row_and_help_and_back_on_it() -> None:
    found = {row[0]: row[1:] for row in rows("Key by screen")}
    assert set(found) == set(EVERYWHERE)
    heads = re.search(r"\| screen \|(.*)\|", TEXT)
    assert heads is not None
    columns = [cell.strip() for cell in heads[1].split("|")]
    for where, row in found.items():
        assert row[columns.index("?")] == row[columns.index("F9")] == "x", where


def test_the_example_of_own_keys_is_taken_without_a_problem(tmp_path: Path) -> None:
    example = re.search(r"```toml\n(.*?)```", TEXT, re.DOTALL)
    assert example is not None
    (tmp_path / "keys.toml").write_text(example[1], encoding="utf-8")
    found = read_keys(tmp_path / "keys.toml")
    assert found.problems == ()
    assert found.keys("units") == ("f2",)
    assert found.keys("glossary") == ("ctrl+y",)
