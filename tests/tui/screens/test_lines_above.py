"""Where lines of a list or of a text are above what is in sight, the page says so, as it does of those below."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from typing import Any

import pytest

from library.book.opening import open_book
from tui.screens.chooser import Choice, Chooser
from tui.screens.reading import Reading
from tui.session import Session
from tui.view.entry_page import EntryPage
from tui.view.lines import Line, line, text_of

Program = Callable[..., AbstractAsyncContextManager[Any]]


class Letters(Chooser):
    WHERE = "calculations"

    def choices(self) -> list[Choice]:
        return [Choice(letter, letter, "") for letter in "abcdefghijklmnop"]


class Lines(Reading):
    WHERE = "help"

    def text(self, width: int) -> list[Line]:
        return [line(str(number)) for number in range(40)]


def words(lines: list[Line]) -> str:
    return "\n".join(map(text_of, lines))


def test_a_list_says_how_many_lines_are_above() -> None:
    screen = Letters(Session())
    assert "above" not in words(screen.body(60, 12))
    screen.view.choose(15)
    lines = screen.body(60, 12)
    # Derived: 12 lines less find line, two rules and two for the chosen one leave 7 of 16.
    assert text_of(lines[1]).rstrip() == "── 9 lines above: Up ──"


def test_a_text_says_it_at_its_foot() -> None:
    screen = Lines(Session())
    screen.body(60, 11)
    screen.view.scroll(4)
    assert text_of(screen.body(60, 11)[-1]).rstrip() == "── 26 more lines: PgDn ── 4 above: PgUp ──"
    screen.view.scroll(99)
    assert text_of(screen.body(60, 11)[-1]).rstrip() == "── 30 lines above: PgUp ──"


@pytest.mark.parametrize("height", [18, 5])
def test_the_text_of_an_entry_says_it_under_the_values_or_at_its_foot(height: int) -> None:
    book = open_book()
    page = EntryPage(book.entries["tap-hand-plain-steel"])
    assert "above" not in words(page.body(book, None, 80, height))
    page.view.scroll(3)
    said = words(page.body(book, None, 80, height))
    assert "3 lines above: Up" in said or "3 above: PgUp" in said


async def test_the_values_above_the_one_that_is_changed_stay_in_sight(program: Program) -> None:
    async with program() as hands:
        lines = (await hands.do("bro", "<enter>", "<down>", "<down>", "<f6>")).splitlines()
        at = next(number for number, text in enumerate(lines) if text.startswith("> "))
        assert at > 3, "the values before it stand over it"
        assert "above" not in "\n".join(lines)
