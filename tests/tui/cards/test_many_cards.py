"""Two thousand cards: each key of a search finds exactly what there is; ten thousand are read in the library's tests."""

from __future__ import annotations

import time
from dataclasses import replace
from pathlib import Path

import pytest

from library.cards.index import card_rows
from library.cards.rows import CardRow
from tui.view.card_list_page import CardListPage
from tui.view.lines import text_of
from tui.view.text_line import TextLine

pytestmark = pytest.mark.depth
"""It takes long, and the server runs it."""

MANY = 2_000
FRAME = 1 / 60

MATERIALS = ("plain-steel", "aluminium-bronze", "grey-iron", "brass-free-cutting")
SIZES = ("M6", "M8", "M10", "M12", "3/4-10 UNC")
RESULTS = ("good", "scrapped")

CARD = """schema = 1

[[card]]
id = "{id}"
status = "done"
started = {day}
family = "tap"
result = "{result}"
notes = "Ground on a day like any other."

[card.tool]
name = "T-{tool}"
thread = "{size}"
work_material = "{material}"
"""


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder of cards, their tools, sizes and materials going round at different paces."""
    shop = tmp_path_factory.mktemp("many")
    for number in range(MANY):
        year, month, day = 2016 + number % 10, 1 + number // 10 % 12, 1 + number // 120 % 28
        date = f"{year}-{month:02}-{day:02}"
        name = f"{date}-{number // 3360 + 1:02}"
        folder = shop / "cards" / str(year)
        folder.mkdir(parents=True, exist_ok=True)
        text = CARD.format(id=name, day=date, result=RESULTS[number % 7 == 0], tool=number % 500, size=SIZES[number % 5],
                           material=MATERIALS[number % 4])  # fmt: skip
        (folder / f"{name}.toml").write_text(text)
    return shop


@pytest.fixture(scope="module")
def rows(shop: Path, tmp_path_factory: pytest.TempPathFactory) -> tuple[CardRow, ...]:
    """Their rows, once read from the files and once from the cache."""
    cache = tmp_path_factory.mktemp("cache")
    first = time.perf_counter()
    read = card_rows(shop, cache)
    second = time.perf_counter()
    again = card_rows(shop, cache)
    third = time.perf_counter()
    print(f"{MANY} cards read in {second - first:.2f} s, from the cache in {(third - second) * 1000:.0f} ms")
    assert again == read
    return again


def test_there_is_a_row_for_every_card_the_newest_first(rows: tuple[CardRow, ...]) -> None:
    assert len(rows) == MANY
    ids = [row.id for row in rows]
    assert ids == sorted(ids, reverse=True)
    assert rows[0].started.startswith("2025-12")


@pytest.mark.parametrize(
    ("query", "count"),
    [
        ("t-499", MANY // 500),
        ("m12", MANY // 5),
        ("size:M12 material:bronze", MANY // 20),
        ("aluminium-bronze", MANY // 4),
        ("date:2024", MANY // 10),
        ("from:2023 to:2024", 2 * MANY // 10),
        ("result:scrapped", len(range(0, MANY, 7))),
        ("tool=t-7", MANY // 500),
        ("nothing like it", 0),
    ],
)
def test_each_key_of_a_search_finds_exactly_what_there_is(
    rows: tuple[CardRow, ...], query: str, count: int
) -> None:
    page = CardListPage(rows)
    page.draw(80, 22)
    slowest = 0.0
    for place in range(len(query)):
        before = time.perf_counter()
        page.edit(TextLine.ending(query[: place + 1]))
        drawn = page.draw(80, 22)
        slowest = max(slowest, time.perf_counter() - before)
    print(f"{query!r}: the slowest key took {slowest * 1000:.1f} ms of a frame of {FRAME * 1000:.1f} ms")
    assert len(page.found) == count
    assert f"{count} of {MANY}" in text_of(drawn[0])


def test_the_card_that_was_begun_is_chosen_when_the_list_comes_back(rows: tuple[CardRow, ...]) -> None:
    few, new = rows[:20], replace(rows[0], id="2030-01-01-01")
    page = CardListPage(few)
    page.draw(80, 22)
    page.view.choose(7)
    page.fill(few, to_new=True)
    assert page.chosen == few[7]
    page.fill((*few[:3], new, *few[3:]), to_new=True)
    assert page.chosen == new


def test_a_search_that_goes_on_looks_only_through_what_was_found(rows: tuple[CardRow, ...]) -> None:
    page = CardListPage(rows)
    page.edit(TextLine.ending("bronze"))
    found = list(page.found)
    page.edit(TextLine.ending("bronze m12"))
    assert page.found == [row for row in found if row.size == "M12"]
    page.edit(TextLine.ending("bronze"))
    assert page.found == found
