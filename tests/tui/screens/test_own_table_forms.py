"""Machines and wheels are made and changed on the screen, with the same safety as entries."""

from __future__ import annotations

import tomllib
from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

import pytest

from library.book.opening import open_book

Program = Callable[..., AbstractAsyncContextManager[Any]]


async def test_a_new_machine_is_typed_checked_looked_at_and_saved(program: Program) -> None:
    async with program() as hands:
        await hands.do("<f8>", "machines", "<enter>", "new machine", "<enter>")
        shown = await hands.do("Old Nan", "<down>", "<down>", "<down>", "<down>", "2800")
        assert "old-nan" in shown
        assert "! " in shown  # a speed without its unit
        shown = await hands.do(" rpm", "<ctrl+r>")
        assert "+ [[machine]]" in shown
        await hands.press("enter")
        (machine,) = tomllib.loads((hands.shop / "machines.toml").read_text())["machine"]
        assert machine == {"id": "old-nan", "title": "Old Nan", "spindle_speeds": ["2800 rpm"]}


@pytest.mark.depth
async def test_the_list_comes_back_with_the_new_line_chosen_whatever_was_sought(program: Program) -> None:
    async with program() as hands:
        hands.app._open_book = lambda: open_book(hands.shop if hands.shop.exists() else None)
        await hands.do("<f8>", "machines", "<enter>", "new wheel", "<enter>", "Zircon cup", "<ctrl+r>")
        shown = await hands.do("<enter>")
        assert "> Zircon cup" in shown


async def test_a_wheel_is_changed_where_it_stands_and_what_was_typed_is_not_lost(
    program: Program, tmp_path: Path
) -> None:
    shop = tmp_path / "shop"
    shop.mkdir()
    (shop / "wheels.toml").write_text(
        'schema = 1\n\n[[wheel]]\nid = "cup"\ntitle = "White cup" # ours\nrated_speed = "35 m/s"\n'
    )
    async with program(other=open_book(shop)) as hands:
        shown = await hands.do("<f8>", "machines", "<enter>", "white cup", "<enter>")
        assert "RATED 35 m/s" in " ".join(shown.split())
        await hands.do("<f6>", "<down>", "<down>", "98 mm", "<f9>")
        shown = await hands.do("<f9>", "<f6>")
        assert "What you typed here before is back" in shown
        shown = await hands.do("<ctrl+r>")
        assert '+ diameter = "98 mm"' in shown
        await hands.press("enter")
    assert '# ours\nrated_speed = "35 m/s"\ndiameter = "98 mm"\n' in (shop / "wheels.toml").read_text()


@pytest.mark.depth
async def test_a_step_of_a_shipped_set_up_is_changed_over_it_and_the_shop_becomes_its_source(
    program: Program, tmp_path: Path
) -> None:
    shop = tmp_path / "shop"
    shop.mkdir()
    async with program(other=open_book(shop)) as hands:
        await hands.do("<f8>", "set-ups", "<enter>", "tap chamfer eccentric", "<f6>")
        shown = await hands.do(*["<down>"] * 7, " Tighten by hand.")
        assert "Hold: source      shop" in shown
        (shop / "own.toml").write_text(
            'schema = 1\n\n[[setup]]\nid = "tap-chamfer-cam"\nhold = { text = "By the flats.", source = "shop" }\n'
        )
        shown = await hands.do("<ctrl+r>")
        assert "Both of you changed this" in shown
        assert "By the flats." in shown
        shown = await hands.do("<down>", "<enter>")  # keep mine
        assert "Tighten by hand." in shown
        await hands.press("enter")
    (table,) = tomllib.loads((shop / "own.toml").read_text())["setup"]
    assert table["id"] == "tap-chamfer-cam"
    assert table["hold"]["text"].endswith(" Tighten by hand.")
    assert table["hold"]["source"] == "shop"


async def test_a_trouble_is_found_by_the_tool_that_carries_it_read_by_enter_and_changed_by_f6(
    program: Program, tmp_path: Path
) -> None:
    shop = tmp_path / "shop"
    shop.mkdir()
    async with program(other=open_book(shop)) as hands:
        listed = await hands.do("<f8>", "troubles and", "<enter>", "burns reamer")
        assert "> Burns the edge at the grinder" in listed
        read = " ".join((await hands.do("<enter>")).split())
        assert "LOOK AT The wheel: glazed" in read
        assert "CURE Dress it" in read
        assert "Other causes of it LOOK AT The infeed of each pass." in read
        shown = await hands.do("<f6>")
        assert "Change the trouble grinding-burns-wheel" in shown
        await hands.do("!", "<ctrl+r>")
        assert "LOOK AT" in await hands.do("<enter>")
        assert "Find: burns reamer" in await hands.do("<f9>")
    (table,) = tomllib.loads((shop / "symptoms.toml").read_text())["symptom"]
    assert table == {"id": "grinding-burns-wheel", "title": "Burns the edge at the grinder!"}
