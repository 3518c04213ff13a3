"""Finding cards among many, with a cache that may be lost at any time."""

from __future__ import annotations

import json
import time
from collections.abc import Callable
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from library.book import fetching
from library.cards import index
from library.cards.index import card_rows
from library.cards.model import Card, Tool
from library.cards.rows import CardRow, as_list, from_list, row_of
from library.cards.searching import of_tool, search, words_of
from library.cards.store import create, save

DAY = date(2026, 11, 25)
MATERIALS = ("plain-steel", "bronze", "aluminium-wrought", "brass-free-cutting", "titanium")
RESULTS = ("good", "scrapped", "", "to do again")


@pytest.fixture(autouse=True)
def settled(monkeypatch: pytest.MonkeyPatch) -> None:
    """Files are taken as old enough for their time stamps to be believed."""
    monkeypatch.setattr(fetching, "SETTLED", 0.0)


def some_card(number: int) -> Card:
    """The n-th of many invented cards, each field with its own period."""
    day = date(2000, 1, 1) + timedelta(days=number // 3)
    return Card(
        id=f"{day.isoformat()}-{number % 3 + 1:02}",
        status="done" if number % 7 else "draft",
        started=day,
        family=("tap", "twist-drill", "countersink")[number % 3],
        tool=Tool(f"T-{number % 500}", f"{number % 40 + 3} mm", "", "4", "", f"slip {number % 11}", MATERIALS[number % 5]),
        result=RESULTS[number % 4],
        notes="chattered at the second land" if number % 100 == 0 else "",
    )  # fmt: skip


ROWS = [row_of(some_card(number)) for number in range(300)]


def test_every_word_must_be_there_in_any_order_and_any_case() -> None:
    found = search(ROWS, "CHATTERED tap")
    # Every hundredth has the note; of 0, 100 and 200 the first is a tap, for 0 % 3 is 0.
    assert [row.id for row in found] == [ROWS[0].id]
    assert search(ROWS, "tap CHATTERED") == found
    assert search(ROWS, "  ") == ROWS
    assert search(ROWS, "nobody wrote this") == []


@pytest.mark.parametrize(
    ("query", "found"),
    [
        ("tool=T-14", lambda row: row.tool == "T-14"),
        ("tool:t-14", lambda row: "t-14" in row.tool.casefold()),
        ('size="12 mm"', lambda row: row.size == "12 mm"),
        ("material:bronze", lambda row: row.work_material == "bronze"),
        ("result:good", lambda row: row.result == "good"),
        ("status:draft", lambda row: row.status == "draft"),
        ("date:2000-02", lambda row: row.started.startswith("2000-02")),
        ("from:2000-02-10 to:2000-02-20", lambda row: "2000-02-10" <= row.started <= "2000-02-20"),
        ("from:2000-02 to:2000-02", lambda row: row.started.startswith("2000-02")),
        ('belongs="slip 3" family:tap', lambda row: row.belongs_to == "slip 3" and row.family == "tap"),
    ],
)
def test_fields_narrow_the_search(query: str, found: object) -> None:
    assert callable(found)
    expected = [row for row in ROWS if found(row)]
    assert search(ROWS, query) == expected
    assert expected


def test_a_card_without_a_day_is_found_by_no_range() -> None:
    assert search([CardRow("a", "draft")], "to:2030") == []
    assert search([CardRow("a", "draft")], "from:1990") == []


def test_a_word_with_a_colon_that_is_no_field_is_a_word() -> None:
    row = row_of(Card(id="a", notes="ratio 1:16"))
    assert search([row], "1:16") == [row]
    assert search([row], "tool:") == []


@given(st.text())
def test_no_query_breaks_the_search(query: str) -> None:
    assert len(search(ROWS[:20], query)) <= 20
    assert all(words_of(query))


def test_the_history_of_a_tool_is_found_by_its_whole_name_oldest_first() -> None:
    rows = [
        CardRow("3", "done", tool="T-1"),
        CardRow("1", "done", tool=" t-1 "),
        CardRow("2", "done", tool="T-14"),
    ]
    assert [row.id for row in of_tool(rows, "T-1")] == ["1", "3"]
    assert of_tool(rows, "") == []


def test_rows_come_newest_first_and_follow_what_is_saved(tmp_path: Path) -> None:
    book, cache = tmp_path / "book", tmp_path / "cache"
    first = create(book, Card(notes="first"), DAY)
    create(book, Card(notes="second"), DAY)
    assert [row.id for row in card_rows(book, cache)] == ["2026-11-25-02", "2026-11-25-01"]
    save(book, first, replace(first.card, result="good"))
    assert [row.result for row in card_rows(book, cache)] == ["", "good"]
    first.path.unlink()
    assert [row.id for row in card_rows(book, cache)] == ["2026-11-25-02"]


def test_what_has_not_changed_comes_from_the_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    create(tmp_path / "book", Card(notes="first"), DAY)
    before = card_rows(tmp_path / "book", tmp_path / "cache")

    def never(_: Path) -> object:
        raise AssertionError("the file was read again")

    monkeypatch.setattr("library.cards.index.fetch", never)
    assert card_rows(tmp_path / "book", tmp_path / "cache") == before


@pytest.mark.parametrize(
    "damage",
    ["", "{", "[]", "{}", '{"version": 3}', '{"version": 9, "rows": {}}', '{"version": 3, "rows": {"a": 3}}',
     '{"version": 3, "rows": {"2026/2026-11-25-01.toml": [[1, 2], ["a"]]}}', "\x00"],
)  # fmt: skip
def test_a_damaged_cache_is_made_anew(tmp_path: Path, damage: str) -> None:
    create(tmp_path / "book", Card(notes="first"), DAY)
    before = card_rows(tmp_path / "book", tmp_path / "cache")
    (file,) = (tmp_path / "cache").iterdir()
    good = file.read_text()
    file.write_text(damage)
    assert card_rows(tmp_path / "book", tmp_path / "cache") == before
    assert json.loads(file.read_text()) == json.loads(good)


def test_a_cache_that_cannot_be_written_only_costs_time(tmp_path: Path) -> None:
    create(tmp_path / "book", Card(notes="first"), DAY)
    (tmp_path / "cache").write_text("a file where the folder should be")
    assert len(card_rows(tmp_path / "book", tmp_path / "cache")) == 1
    assert len(card_rows(tmp_path / "book")) == 1


def test_a_card_that_cannot_be_read_is_listed_as_that(tmp_path: Path) -> None:
    path = create(tmp_path, Card(), DAY).path
    path.write_bytes(b"\xff\xfe\x00")
    path.with_name("huge.toml").write_bytes(b"#" * (1 << 21))
    rows = {row.id: row.status for row in card_rows(tmp_path)}
    assert rows["huge"] == "unreadable"
    assert len(rows) == 2


def test_a_book_without_cards_has_no_rows(tmp_path: Path) -> None:
    assert card_rows(tmp_path / "nowhere", tmp_path / "cache") == ()


def test_a_row_survives_the_cache() -> None:
    assert from_list(json.loads(json.dumps(as_list(ROWS[5])))) == ROWS[5]
    assert from_list(["too", "short"]) is None
    assert from_list("text") is None
    assert "text" not in ROWS[5].as_data()


MANY = [500, pytest.param(10_000, marks=pytest.mark.depth)]


@pytest.mark.parametrize("count", MANY)
def test_many_cards_are_searched_and_every_row_is_there(
    count: int, record_property: Callable[[str, object], None]
) -> None:
    rows = [row_of(some_card(number)) for number in range(count)]
    began = time.perf_counter()
    # Materials go round in fives, results in fours, so every twentieth is bronze (1) and good (0): 16 + 20 n.
    found = search(rows, "material:bronze result=good slip")
    # Reported, for a clock on a shared machine proves nothing.
    record_property("search_ms", round((time.perf_counter() - began) * 1000, 2))
    assert len(found) == count // 20
    assert len(search(rows, "chattered")) == count // 100
    assert len(search(rows, "")) == count


@pytest.mark.parametrize("count", MANY)
def test_many_files_make_as_many_rows_and_are_read_once(
    count: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    template = template_of_a_card(tmp_path)
    for number in range(count):
        card = some_card(number)
        year = tmp_path / "cards" / card.id[:4]
        year.mkdir(parents=True, exist_ok=True)
        (year / f"{card.id}.toml").write_text(template.format(id=card.id, tool=card.tool.name))
    rows = card_rows(tmp_path, tmp_path / "cache")
    assert len(rows) == count
    assert len(search(rows, "tool=T-14")) == count // 500
    read: list[Path] = []
    monkeypatch.setattr(index, "fetch", read.append)
    assert card_rows(tmp_path, tmp_path / "cache") == rows
    assert read == []


def template_of_a_card(tmp_path: Path) -> str:
    """The smallest card there is, with places for its id and the name of its tool."""
    opened = create(tmp_path, Card(tool=Tool("TOOL")), DAY)
    text = opened.path.read_text().replace("2026-11-25-01", "{id}").replace("TOOL", "{tool}")
    opened.path.unlink()
    return text
