"""A line that takes no more says so, whether it is filled by a paste or letter by letter."""

from __future__ import annotations

from typing import Any

TAKES_NO_MORE = "This line takes no more characters"


async def test_a_letter_behind_the_last_one_of_a_note_is_not_dropped_in_silence(at_the_yard: Any) -> None:
    async with at_the_yard() as hands:
        await hands.do("bronze spi", "<ctrl+f>")
        form = hands.app.screen.form
        form.go_to("notes")
        form.type("x" * (form.LONGEST - 1))
        assert TAKES_NO_MORE not in await hands.do("y")
        assert form.card.notes.endswith("xy")
        assert TAKES_NO_MORE in await hands.do("z")
        assert form.card.notes.endswith("xy")
        assert TAKES_NO_MORE not in await hands.do("<backspace>")


async def test_a_find_line_says_it_too(at_the_yard: Any) -> None:
    async with at_the_yard() as hands:
        page = hands.app.screen.session.page
        page.find = page.find.insert("x" * page.find.room)
        assert TAKES_NO_MORE in await hands.do("z")
