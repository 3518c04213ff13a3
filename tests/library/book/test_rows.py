"""The list is there at once: from the cache, from an older one, or from a first look at the files."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from library.book.opening import open_book, quick_rows
from library.book.rows import FEW, Rows
from library.book.value_ranges import ranges_of
from tests.library.book.small_books import write


def test_the_quick_rows_are_those_of_the_book(shop: Path) -> None:
    book = open_book(shop)
    rows = quick_rows(shop)
    assert rows.fresh
    assert list(rows) == list(book.rows)
    assert len(rows) == len(book.entries)
    assert rows.ids() == list(book.entries)


def test_quick_rows_of_a_changed_book_are_the_old_ones_and_say_so(shop: Path) -> None:
    open_book(shop)
    write(shop / "b.toml", "b9")
    rows = quick_rows(shop)
    assert not rows.fresh
    assert rows.find("b1") is not None


def test_quick_rows_of_an_unknown_book_are_there_all_the_same(shop: Path) -> None:
    rows = quick_rows(shop)
    assert not rows.fresh
    found = rows.find("a1")
    assert found is not None
    assert (found.title, found.family, found.work_material, found.layer) == (
        "Tap a1",
        "tap",
        "bronze",
        "shop",
    )
    assert len(rows) == len(open_book(shop).rows)


def test_a_row_is_found_by_the_words_of_its_family_and_its_synonyms(shop: Path) -> None:
    rows = open_book(shop).rows
    assert {rows[number].id for number in quick_rows(shop).matching("GUN tap a1")} == {"a1"}
    assert quick_rows(shop).matching("a1", among=[]) == []
    assert quick_rows(shop).matching("nothing-like-it") == []


def test_a_row_has_the_ranges_of_its_values_for_finding_by_number(shop: Path) -> None:
    open_book(shop)
    row = quick_rows(shop).find("a1")
    assert row is not None
    told = dict(part.split("=") for part in row.ranges.split())
    (span,) = ranges_of(told["rake_angle"])
    assert span == pytest.approx((0.0523599, 0.1396263), rel=1e-4)
    assert "land_width" not in told, "a share of a diameter is no length"
    rows = quick_rows(shop)
    assert {rows[number].id: text for number, text in rows.values_of("rake_angle").items()}["a1"] == told[
        "rake_angle"
    ]
    assert rows.values_of("no_such_quantity") == {}


def test_an_entry_whose_file_changed_since_is_found_by_its_id(shop: Path) -> None:
    book = open_book(shop)
    (shop / "a.toml").write_text("# a new remark\n" + (shop / "a.toml").read_text().replace("5 deg", "6 deg"))
    usual = book.entries["a1"].values["rake_angle"].usual
    assert usual is not None
    assert usual.text == "6 deg"
    assert book.entries["a1"].values["rake_angle"].place.line == 10


def test_an_entry_that_is_gone_is_not_invented(shop: Path) -> None:
    book = open_book(shop)
    write(shop / "a.toml", "a2")
    (shop / "b.toml").unlink()
    assert book.entries.get("a1") is None
    assert book.entries.get("b1") is None
    assert book.entries["a2"].title == "Tap a2"


WARM = """
import sys
from pathlib import Path
from library.book.opening import quick_rows, open_book
rows = quick_rows(Path(sys.argv[1]))
assert rows.fresh and rows[0].title
assert open_book(Path(sys.argv[1])).findings is not None
print(sorted({name.split(".")[0] for name in sys.modules} & {"tomllib", "pint", "difflib", "geometry", "fractions"}))
"""


def test_a_warm_start_loads_neither_parser_nor_units(shop: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("library.book.fetching.SETTLED", 0.0)  # The files were written just now.
    open_book(shop)
    run = subprocess.run([sys.executable, "-c", WARM, str(shop)], capture_output=True, text=True, check=False)
    assert run.stdout == "[]\n", run.stderr


def test_a_row_is_found_by_its_id_however_often_it_was_asked_for(shop: Path) -> None:
    rows = open_book(shop).rows
    assert isinstance(rows, Rows)
    first = [rows.find(name) for name in ("a1", "c2", "no-such", "a")]
    for _ in range(FEW):
        rows.find("b1")
    assert [rows.find(name) for name in ("a1", "c2", "no-such", "a")] == first
    assert [row.id if row else None for row in first] == ["a1", "c2", None, None]
