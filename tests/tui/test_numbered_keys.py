"""The keys with a number: known in every mode of the usual terminals, and as Esc or Alt with a digit."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import AbstractAsyncContextManager
from typing import Any, cast

import pytest
from textual import _xterm_parser, constants, events
from textual._ansi_sequences import ANSI_SEQUENCES_KEYS
from textual._xterm_parser import XTermParser

from tui.function_keys import MODES, SCO, SCO_EVERYWHERE
from tui.held_escape import HeldEscape
from tui.private_textual import know_function_keys
from tui.screens.base_screen import BaseScreen

Program = Callable[..., AbstractAsyncContextManager[Any]]


@pytest.fixture
def parsed(monkeypatch: pytest.MonkeyPatch) -> Iterator[Callable[..., list[str]]]:
    """Reads bytes of a terminal as Textual does after the start, and leaves Textual as it was."""
    known = cast("dict[str, object]", ANSI_SEQUENCES_KEYS)
    before = dict(known)
    special = set(_xterm_parser.SPECIAL_SEQUENCES)
    monkeypatch.setattr(constants, "DISABLE_KITTY_KEY", constants.DISABLE_KITTY_KEY)

    def read(sent: str, term: str = "xterm") -> list[str]:
        know_function_keys(term)
        return [one.key for one in XTermParser().feed(sent) if isinstance(one, events.Key)]

    yield read
    known.clear()
    known.update(before)
    _xterm_parser.SPECIAL_SEQUENCES.update(special)


@pytest.mark.parametrize("mode", MODES)
def test_every_key_of_a_mode_is_known(parsed: Callable[..., list[str]], mode: str) -> None:
    assert len(MODES[mode]) == 10
    for number, sent in enumerate(MODES[mode], 1):
        assert parsed(sent) == [f"f{number}"], (mode, sent)


@pytest.mark.parametrize("term", ["scoansi", "cons25", "putty-sco"])
def test_the_keys_of_a_terminal_of_sco_are_known_where_the_terminal_says_that_it_is_one(
    parsed: Callable[..., list[str]], term: str
) -> None:
    for number, sent in enumerate(SCO, 1):
        assert parsed(sent, term) == [f"f{number}"], sent


def test_those_of_them_that_mean_nothing_else_are_known_everywhere(parsed: Callable[..., list[str]]) -> None:
    assert len(SCO_EVERYWHERE) == 4
    for key, sent in SCO_EVERYWHERE.items():
        assert parsed(sent) == [key]


def test_what_means_something_else_elsewhere_keeps_its_meaning_there(
    parsed: Callable[..., list[str]],
) -> None:
    assert parsed("\x1b[P") == ["f1"]
    assert parsed("\x1b[O") == []  # The terminal is not looked at any more.
    assert parsed("\x1bOp") == ["0"]  # The digit of a keypad in its own mode.
    assert parsed("\x1b[A\x1bOA") == ["up", "up"]


class Clock:
    """A clock that rings when it is told to."""

    def __init__(self) -> None:
        self.rings: Callable[[], None] | None = None

    def __call__(self, seconds: float, do: Callable[[], None]) -> Clock:
        assert 0.4 <= seconds <= 0.6
        self.rings = do
        return self

    def stop(self) -> None:
        self.rings = None


def key(name: str) -> events.Key:
    return events.Key(name, name if len(name) == 1 else None)


def names(found: list[events.Key]) -> list[str]:
    return [one.key for one in found]


@pytest.mark.parametrize("digit", "1234567890")
def test_escape_and_then_a_digit_are_the_key_with_that_number(digit: str) -> None:
    held = HeldEscape(Clock(), lambda: pytest.fail("it came in time"))
    number = digit if digit != "0" else "10"
    assert names(held.keys(key("escape"))) == []
    (found,) = held.keys(key(digit))
    assert found.key == f"f{number}"
    assert found.character is None
    assert not held.is_held
    assert names(held.keys(key(f"alt+{digit}"))) == [f"f{number}"]
    assert names(held.keys(key(digit))) == [digit]


def test_escape_and_another_key_are_both_themselves_in_their_order() -> None:
    held = HeldEscape(Clock(), lambda: None)
    held.keys(key("escape"))
    assert names(held.keys(key("down"))) == ["escape", "down"]
    held.keys(key("escape"))
    assert names(held.keys(key("escape"))) == ["escape"]
    assert held.is_held
    assert names(held.keys(key("alt+3"))) == ["escape", "f3"]
    assert names(held.keys(key("x"))) == ["x"]


def test_escape_alone_is_let_go_when_the_moment_is_over() -> None:
    clock, gone = Clock(), []
    held = HeldEscape(clock, lambda: gone.append("escape"))
    held.keys(key("escape"))
    assert clock.rings is not None
    clock.rings()
    assert gone == ["escape"]
    assert not held.is_held
    assert names(held.keys(key("2"))) == ["2"]


async def test_a_digit_after_escape_opens_and_never_stands_in_the_find_line(program: Program) -> None:
    async with program() as hands:
        hands.send("escape")
        await hands.messages()
        hands.send("2")
        await hands.settle()
        assert hands.app.screen.WHERE == "calculator"
        form = hands.app.screen.page.form
        assert "2" not in form.texts().values()
        for digit, where in (("4", "cautions"), ("1", "help"), ("3", "cards"), ("8", "menu")):
            hands.send("escape", digit)
            await hands.settle()
            assert where == hands.app.screen.WHERE
            hands.send("escape", "9")
            await hands.settle()
            assert hands.app.screen.WHERE == "calculator"


async def test_alt_with_a_digit_does_the_same_on_every_screen(program: Program) -> None:
    async with program() as hands:
        hands.send("alt+6")
        await hands.settle()
        assert hands.app.screen.WHERE == "changes"
        hands.send("alt+9")
        await hands.settle()
        assert hands.app.screen.WHERE == "book"
        assert hands.app.session.page.find.text == ""


async def test_escape_alone_goes_back_once_no_digit_came(program: Program) -> None:
    async with program() as hands:
        await hands.press("enter")
        hands.send("escape")
        await hands.messages()
        assert hands.app.screen.WHERE == "entry"
        await hands.until(lambda: hands.app.screen.WHERE == "book")


async def test_escape_in_the_book_empties_the_find_line_takes_no_mark_away_and_never_leaves(
    program: Program,
) -> None:
    async with program() as hands:
        await hands.press("ctrl+t", *"steel")
        await hands.press("escape")
        assert hands.app.session.page.find.text == ""
        assert "1 marked" in hands.shown()
        await hands.press("escape", "escape")
        assert "1 marked" in hands.shown()
        assert isinstance(hands.app.screen, BaseScreen)
        await hands.press("f9")
    assert hands.app.return_code == 0
