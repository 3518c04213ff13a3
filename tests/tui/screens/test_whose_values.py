"""The calculator says what is kept from before, which wheel is brought, and where the foot's text stands in full."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

from library.book.opening import open_book
from library.demo import lay_out

Program = Callable[..., AbstractAsyncContextManager[Any]]

REAMER = "hand reamer plain 12 h7"
TO_THE_DROP = ("<f2>", "indicator drop", "<enter>")


async def test_coming_back_with_the_same_words_says_what_is_kept_and_how_to_forget_it(
    program: Program,
) -> None:
    async with program(other=open_book()) as hands:
        await hands.do(REAMER, "<f2>", *TO_THE_DROP, "2")
        assert "Land width 2 typed" in hands.words()
        await hands.do("<f9>", "<f2>")
        assert "Land width 2 typed" in hands.words()
        await hands.do("<f9>", "<ctrl+u>", REAMER, "<f2>")
        assert "Land width 2 kept" in hands.words()
        assert "Kept from what was typed for such a tool before: land width." in hands.words()
        await hands.menu("start over")
        assert "Nothing is changed." in hands.words()
        await hands.sure()
        assert "Land width needed" in hands.words()
        assert "Diameter 12 mm nominal" in hands.words()


async def test_a_wheel_that_an_arrow_brings_is_named(program: Program, tmp_path: Path) -> None:
    yard = tmp_path / "yard"
    lay_out(yard)
    async with program(other=open_book(yard)) as hands:
        await hands.do(REAMER, "<f2>", "<f2>", "wheel speed", "<enter>")
        assert "Left and Right bring the wheels of the shop." in hands.words()
        await hands.do("<right>")
        assert "Of White cup 100." in hands.words()
        assert "Wheel diameter 98 mm wheel" in hands.words()
        assert "Rated surface speed 25 m/s wheel" in hands.words()


async def test_a_wheel_that_is_written_down_meanwhile_is_brought_too(
    program: Program, tmp_path: Path
) -> None:
    yard = tmp_path / "yard"
    lay_out(yard)
    async with program(other=open_book(yard)) as hands:
        await hands.do(REAMER, "<f2>", "<f2>", "wheel speed", "<enter>")
        wheels = yard / "wheels.toml"
        more = '\n[[wheel]]\nid = "new"\ntitle = "New cup"\ndiameter = "125 mm"\n'
        wheels.write_text(wheels.read_text() + more)
        hands.app.session.book = open_book(yard)
        hands.app.screen.book_changed()
        await hands.do("<left>")
        assert "Of New cup." in hands.words()


async def test_what_the_foot_has_no_room_for_stands_first_in_the_help(program: Program) -> None:
    async with program(other=open_book()) as hands:
        await hands.do("acme", "<f2>", "<f2>", "cam out", "<enter>", "<down>", "<down>")
        assert "… ? in full" in hands.words()
        assert "By the rule for taps. Source: from memory" not in hands.words()
        await hands.do("?")
        assert "By the rule for taps. Source: from memory" in hands.words()
