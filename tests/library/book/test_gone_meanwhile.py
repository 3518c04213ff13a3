"""Tables whose file is removed, cut or changed by another program after the book was read."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import pytest

from library.book import loader
from library.book.loader import Gone
from library.book.model import Layer
from library.book.opening import open_book
from library.book.parsing import Parsed, parse
from library.equipment.model import machines, wheels

OWN = """\
schema = 1
[[entry]]
id = "own-tap"
family = "own"
title = "Own tap"
[[family]]
id = "own"
title = "Own taps"
kind = "tap"
[[machine]]
id = "grey"
title = "Grey"
[[machine]]
id = "green"
title = "Green"
[[wheel]]
id = "cup"
title = "Cup"
"""


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """The only file of a shop."""
    (tmp_path / "shop").mkdir()
    own = tmp_path / "shop" / "own.toml"
    own.write_text(OWN)
    return own


def had(tables: Mapping[str, object]) -> tuple[list[str], int]:
    """The ids of the shop's tables that can be had, and how many things that are."""
    own = [name for name, _ in tables.items() if name in {"own-tap", "own", "grey", "green", "cup"}]
    assert own == [name for name in own if name in tables and tables.get(name) is not None]
    return own, len([one for one in tables.values() if one.id in own])  # type: ignore[attr-defined]


def test_what_is_gone_is_passed_over_and_says_where_it_stood(file: Path) -> None:
    book = open_book(file.parent)
    file.unlink()
    assert had(book.families) == had(machines(book)) == had(wheels(book)) == ([], 0)
    assert book.entries.get("own-tap") is None
    assert "own-tap" not in book.entries
    with pytest.raises(Gone) as gone:
        book.entries["own-tap"]
    assert gone.value.sentence == (
        "'own-tap' stood in own.toml, which is not there any more: somebody else removed or renamed it. "
        "Put the file back, or go on without it."
    )


def test_what_is_left_of_a_file_can_be_had_and_the_rest_says_that_it_was_changed(file: Path) -> None:
    book = open_book(file.parent)
    file.write_text(OWN[: OWN.index('[[machine]]\nid = "green"')])
    assert had(machines(book)) == (["grey"], 1)
    assert had(book.families) == (["own"], 1)
    with pytest.raises(Gone) as gone:
        machines(book)["green"]
    assert gone.value.sentence == "own.toml was changed by somebody else and does not hold 'green' any more."


def test_a_folder_in_the_place_of_a_file_says_that_it_cannot_be_read(file: Path) -> None:
    book = open_book(file.parent)
    file.unlink()
    file.mkdir()
    with pytest.raises(Gone) as gone:
        book.entries["own-tap"]
    assert "own.toml, which cannot be read any more. This is a folder" in gone.value.sentence


def test_a_file_that_is_filled_again_gives_what_it_holds_then(file: Path) -> None:
    book = open_book(file.parent)
    file.unlink()
    assert "grey" not in machines(book)
    file.write_text("# Anew.\n" + OWN)
    assert had(machines(book)) == (["grey", "green"], 2)


def test_a_changed_file_is_taken_apart_once_and_not_for_every_table_of_it(
    file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    book = open_book(file.parent)
    file.write_text("# Changed.\n" + OWN)
    parsed: list[Path] = []

    def counted(raw: bytes, path: Path, layer: Layer) -> Parsed:
        parsed.append(path)
        return parse(raw, path, layer)

    monkeypatch.setattr(loader, "parse", counted)
    assert had(machines(book)) == (["grey", "green"], 2)
    assert had(wheels(book)) == (["cup"], 1)
    assert parsed == [file]
