"""The find line understands conditions: entries are found by their recommended values while they are typed."""

from __future__ import annotations

import time
from array import array
from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

import pytest

from library.book.rows import Row, Rows
from library.search.finding import by_condition
from library.units.system import METRIC
from tui.main import main
from tui.view.book_page import BookPage
from tui.view.text_line import TextLine

pytestmark = pytest.mark.depth
"""It takes long, and the server runs it."""

Program = Callable[[], AbstractAsyncContextManager[Any]]


async def test_only_entries_whose_values_fit_are_left(program: Program) -> None:
    async with program() as hands:
        shown = await hands.type("tap rake>4")
        assert "1 of 3" in shown
        assert "Spiral-point tap" in shown
        assert "Tap for bronze" not in shown
        await hands.press("ctrl+u")
        shown = await hands.type("relief<=3deg")
        assert "1 of 3" in shown
        assert "Tap for brass" in shown
        await hands.press("ctrl+u")
        assert "1 of 3" in await hands.type("relief_form=ecc")


@pytest.mark.parametrize("text", ["rake>", "rake> ", "rake>3 d", "rake>3 de", "rake>3 deg", "tap rake>3d"])
async def test_a_half_typed_condition_is_no_mistake(program: Program, text: str) -> None:
    async with program() as hands:
        shown = await hands.type(text)
        assert "!" not in shown
        assert "Spiral-point tap" in shown


async def test_a_name_that_nobody_knows_is_told_and_the_rest_still_finds(program: Program) -> None:
    async with program() as hands:
        shown = await hands.type("bronze rakke>8")
        assert "! No quantity is called 'rakke'; did you mean rake?" in shown
        assert "1 of 3" in shown
        assert "Tap for bronze" in shown
        shown = await hands.press(*["backspace"] * 8)
        assert "!" not in shown


async def test_a_number_of_the_wrong_kind_is_told_once_it_is_finished(program: Program) -> None:
    async with program() as hands:
        assert "!" not in await hands.type("rake>3mm")
        assert "! 'rake>3mm': " in await hands.type(" tap")


async def test_a_length_is_read_in_the_units_that_are_worked_in(program: Program, shop: Path) -> None:
    file = shop / "taps.toml"
    file.write_text(file.read_text() + 'land_width = { usual = "2 mm", source = "shop" }\n')
    async with program() as hands:
        assert "1 of 3" in await hands.type("land>1")
        assert "0 of 3" in await hands.press("f5")
        assert "1 of 3" in await hands.press("f5")


async def test_nothing_that_fits_says_what_to_do(program: Program) -> None:
    async with program() as hands:
        shown = await hands.type("rake>80")
        assert "or a wider condition" in " ".join(shown.split())
        assert "Ctrl+U" in shown


async def test_a_quantity_without_a_number_says_how_to_ask_for_one(program: Program) -> None:
    async with program() as hands:
        assert "rake>8 finds by number" in " ".join((await hands.type("flutes")).split())


def test_the_plain_command_finds_the_same(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["--library", str(shop), "find", "tap", "rake>4"]) == 0
    assert capsys.readouterr().out.split()[0] == "gun-tap"
    assert main(["--library", str(shop), "find", "rakke>4"]) == 2
    assert "did you mean rake?" in capsys.readouterr().err


def many(count: int) -> Rows:
    """Rows as a large book has them."""
    spans = "rake_angle=0.05235987756:0.1396263402 chamfer_relief_angle=0.0872664626:0.0872664626 flutes=3:3"
    return Rows.of(
        Row(
            "entry",
            f"tap-{number}",
            f"Tap {number}",
            "tap",
            "bronze",
            "shop",
            "",
            spans,
            f"tap {number} bronze",
        )
        for number in range(count)
    )


def test_ten_thousand_entries_are_answered_within_a_key() -> None:
    page = BookPage(many(10_000))
    page.by_condition = lambda rows, text: by_condition(rows, text, METRIC)
    page.edit(TextLine.ending("tap rake>4"))
    assert len(page.hits) == 10_000
    begun = time.process_time()
    for text in ("tap rake>45", "tap rake>5", "tap rake>5 1", "tap rake>5 12"):
        page.edit(TextLine.ending(text))
    assert time.process_time() - begun < 2
    assert len(page.hits) > 100


def test_plain_words_ask_for_no_numbers() -> None:
    page = BookPage(many(100))
    page.by_condition = None
    page.edit(TextLine.ending("bronze 7"))
    assert page.chosen is not None
    assert page.chosen.id == "tap-7"
    assert not page.waits_for_units
    page.edit(TextLine.ending("bronze rake>"))
    assert page.waits_for_units
    assert len(page.hits) == 100


def test_a_spoilt_cache_does_not_end_the_search() -> None:
    rows = Rows(b"entry\ttap\nnonsense\n", array("Q", [10, 19]), b"tap\nnonsense")
    page = BookPage(rows)
    page.by_condition = lambda rows, text: by_condition(rows, text, METRIC)
    page.edit(TextLine.ending("rake>4"))
    assert list(page.hits) == []
