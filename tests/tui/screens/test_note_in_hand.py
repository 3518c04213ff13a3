"""The note of the value in hand: its source is never lost, and one key has what has no room."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from typing import Any

from library.book.opening import open_book
from library.pages.entry import in_hand

Program = Callable[..., AbstractAsyncContextManager[Any]]


async def test_a_note_that_is_cut_names_the_key_that_has_it_in_full(program: Program) -> None:
    book = open_book()
    async with program(other=book) as hands:
        await hands.do("hand tap bronze", "<enter>", "<down>", "<down>", "<down>")
        assert "> Chamfer relief" in hands.shown()
        assert "Source: from memory" in hands.words()
        assert any(line.rstrip().endswith("…        ? in full") for line in hands.lines())
        await hands.resize(80, 60)
        whole = in_hand(book, book.entries["tap-hand-bronze"].values["chamfer_relief_angle"])
        assert whole in " ".join((await hands.do("?")).split())


async def test_a_note_that_has_room_names_no_key(program: Program) -> None:
    async with program(other=open_book()) as hands:
        await hands.do("hand tap bronze", "<enter>")
        assert "> Rake angle" in hands.shown()
        assert "? in full" not in hands.shown()
