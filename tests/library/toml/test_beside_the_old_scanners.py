"""The one scanner finds what the two before it found, over the documents of the property tests; for one commit."""

from __future__ import annotations

import random
from pathlib import Path

import pytest
from hypothesis import given

from library.toml import layout_old, positions_old
from library.toml.scanner import positions, remarks, scan
from tests.library.toml.test_scanner import SHIPPED, accepted, documents
from tests.long_edit_run import make

BAD = Path(__file__).parents[1] / "book" / "bad"


def compare(text: str) -> None:
    if accepted(text) is None:
        return
    assert positions(text) == positions_old.positions(text)
    assert list(positions(text)) == list(positions_old.positions(text))
    new = [(one.path, one.header, one.start, one.end, one.value, one.is_header) for one in scan(text)]
    old = layout_old.Layout(text).statements
    assert new == [(one.way, one.header, one.start, one.end, one.value, one.is_header) for one in old]
    assert remarks(text) == layout_old.remarks(text)


@given(documents())
def test_of_any_document(text: str) -> None:
    compare(text)


@pytest.mark.parametrize("seed", range(300))
def test_of_the_texts_of_the_random_edits(seed: int) -> None:
    compare("\n".join(line for line, _, _ in make(random.Random(seed)).lines))


@pytest.mark.parametrize("file", [*SHIPPED.rglob("*.toml"), *BAD.glob("*.toml")], ids=lambda file: file.stem)
def test_of_the_files(file: Path) -> None:
    compare(file.read_bytes().decode("utf-8", "surrogateescape"))
