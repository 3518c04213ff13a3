"""What a calculation is filled with by itself is as of now when the screen comes back; what a person typed stays."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

import pytest

from library.book.opening import open_book
from tui.app import Heelclear
from tui.session import Session

HandsOn = Callable[..., AbstractAsyncContextManager[Any]]

MACHINES = """schema = 1

[[machine]]
id = "grey"
title = "Grey"
throw_per = "tooth"
cam_throws = [{cams}]
"""
FEW = '"1/16 in", "3/32 in", "1/8 in"'
TO_THE_CAMS = ("1/2-13 unc tap steel", *("<down>",) * 3, "<enter>", "<f2>", "<f2>", "cam", "<enter>")


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    folder = tmp_path / "shop"
    folder.mkdir()
    (folder / "machines.toml").write_text(MACHINES.format(cams=FEW))
    return folder


@pytest.fixture
def at_work(shop: Path, tmp_path: Path, hands_on: HandsOn) -> AbstractAsyncContextManager[Any]:
    """The program on a shop's own book, to be saved into."""
    return hands_on(Heelclear(Session(), lambda: open_book(shop), shop, tmp_path / "state"), shop)


async def test_cams_that_are_changed_while_a_calculation_lies_below_are_chosen_from(
    at_work: AbstractAsyncContextManager[Any],
) -> None:
    async with at_work as hands:
        await hands.do(*TO_THE_CAMS)
        assert "WATCH The nearest cam above the need, 1.587 mm" in hands.words()
        assert "Throws in the drawer 1/16, 3/32, machine" in hands.words()
        await hands.do("<f8>", "machines", "<enter>", "<enter>", "<f6>", *("<down>",) * 4)
        await hands.do("<ctrl+u>", "1/32, 3/64 in", "<ctrl+r>", "<enter>")
        assert "Saved" in hands.words()
        await hands.do("<f9>", "<f9>")
        # Of the new ones 3/64 in, which is 1.191 mm, is the one above the need; of the old ones it was 1/16 in.
        assert "PASS The cam of 1.191 mm" in hands.words()
        assert any("1/32" in line and "machine" in line for line in hands.lines())


async def test_cams_that_another_program_takes_away_are_not_chosen_from_and_typed_ones_stay(
    at_work: AbstractAsyncContextManager[Any], shop: Path
) -> None:
    async with at_work as hands:
        await hands.do(*TO_THE_CAMS)
        file = shop / "machines.toml"
        file.write_text(file.read_text().replace(f"cam_throws = [{FEW}]\n", ""))
        hands.app.files_changed([file])
        await hands.settle()
        assert "Throws in the drawer if any" in hands.words()
        while not any(line.startswith("> Throws in the drawer") for line in hands.lines()):
            await hands.do("<down>")
        await hands.do("2.5 mm")
        file.write_text(MACHINES.format(cams=FEW))
        hands.app.files_changed([file])
        await hands.settle()
        assert "2.5 mm typed" in hands.words()


async def test_another_machine_in_hand_brings_its_cams_into_the_calculation_below(
    at_work: AbstractAsyncContextManager[Any], shop: Path
) -> None:
    more = MACHINES.partition("\n\n")[2].format(cams='"0.8 mm"').replace("grey", "red").replace("Grey", "Red")
    with (shop / "machines.toml").open("a") as file:
        file.write("\n" + more)
    async with at_work as hands:
        await hands.do(*TO_THE_CAMS)
        await hands.do("<f8>", "machines", "<enter>", "red", "<ctrl+t>", "<f9>")
        assert "0.8 mm machine" in hands.words()


async def test_a_value_of_the_book_is_as_of_now_in_every_calculation_that_was_opened(
    at_work: AbstractAsyncContextManager[Any], shop: Path
) -> None:
    own = shop / "own.toml"
    written = """schema = 1

[[entry]]
id = "own-tap"
family = "tap"
title = "Tap of the quay"
work_material = "plain-steel"

[entry.land_width]
usual = "{land} mm"
source = "shop"
"""
    own.write_text(written.format(land=3))
    async with at_work as hands:
        await hands.do("tap of the quay", "<f2>", "<f2>", "drop", "<enter>")
        assert "Land width 3 mm book" in hands.words()
        await hands.do("<f2>", "cam out", "<enter>")
        own.write_text(written.format(land=2))
        hands.app.files_changed([own])
        await hands.settle()
        await hands.do("<f2>", "drop", "<enter>")
        assert "Land width 2 mm book" in hands.words()


async def test_a_card_that_lies_below_takes_its_cam_out_of_the_drawer_as_it_is_now(
    at_work: AbstractAsyncContextManager[Any], shop: Path
) -> None:
    file = shop / "machines.toml"
    file.write_text(MACHINES.format(cams='"1 mm"'))
    async with at_work as hands:
        await hands.do("second plug", "<ctrl+f>", "<f8>", "machines", "<enter>")
        card = next(one for one in hands.app.screen_stack if getattr(one, "WHERE", "") == "card")
        file.write_text(MACHINES.format(cams='"1.6 mm"'))
        hands.app.files_changed([file])
        await hands.settle()
        assert [cam.text for cam in card.form.job.machine.cam_throws] == ["1.6 mm"]
