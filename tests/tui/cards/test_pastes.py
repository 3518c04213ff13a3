"""What is pasted is text only: whatever it holds, nothing is acted upon and nothing of it is shown raw."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import AbstractAsyncContextManager
from typing import Any

import pytest
from textual import events
from textual._xterm_parser import XTermParser
from textual.message import Message

from library.sanitize import is_hidden
from tui.pasted import END, MOST, START
from tui.private_textual import take_pastes_as_text

pytestmark = pytest.mark.depth
"""It takes long, and the server runs it."""

AtTheYard = Callable[..., AbstractAsyncContextManager[Any]]

STEERING = (
    *("\x1b", "\x1b\x1b", "\x1b[", "\x1b[2", "\x1b[20", "\x1b[201", "\x1bO", "\x1bOQ", "\x1b[19~", "\x1b[B", "\x1b[I", "\x1b[O"),
    *("\x1b[31m", "\x1b[8;24;80t", "\x1b[48;24;80;480;800t", "\x1b[<0;3;3M", "\x1b[<64;3;3M", "\x1b[12;40R"),
    *("\x1b[?2026;2$y", "\x1b]0;owned\x07", "\x1b]52;c;aGk=\x1b\\", "\x1bP1;2q\x1b\\", "\x1b9", "\x1b" + "[" * 40),
    *("\x1b[200~", "\x1b[201", "\x03", "\x11", "\x07", "\x08\x7f", "\x0c", "\x00", "\x9b2J", "\x9b", "\x1a", "\x12"),
)  # fmt: skip
"""What a terminal obeys, and what the program reads as a key, a click or a report: whole, or cut short."""

UNSEEN = ("\u202e", "\u200b", "\u2066", "\u200f", "\ufeff", "\u3164", "\ufe0f", "\u00ad", "a" + "\u0301" * 9)
"""What turns a line round, or takes no room or too much of it."""


@pytest.fixture
def read(monkeypatch: pytest.MonkeyPatch) -> Iterator[Callable[..., list[Message]]]:
    """Reads what a terminal sends as the program does, in pieces."""
    before = XTermParser.feed
    take_pastes_as_text()

    def events_of(*pieces: str) -> list[Message]:
        parser = XTermParser()
        return [one for piece in pieces for one in parser.feed(piece)]

    yield events_of
    XTermParser.feed = before  # type: ignore[method-assign]


def told(found: list[Message]) -> list[tuple[str, str]]:
    """Kind and text of each event."""
    return [
        (type(one).__name__, one.text if isinstance(one, events.Paste) else getattr(one, "key", ""))
        for one in found
    ]


@pytest.mark.parametrize("odd", STEERING)
def test_a_paste_is_one_paste_whatever_it_holds_and_wherever_a_terminal_cuts_it(
    read: Callable[..., list[Message]], odd: str
) -> None:
    inside = f"{odd}8 deg{odd}"
    sent = f"x{START}{inside}{END}y"
    text = inside.replace("\x1b", "").replace("\x00", "")
    for at in range(1, len(sent)):
        assert told(read(sent[:at], sent[at:])) == [("Key", "x"), ("Paste", text), ("Key", "y")], (sent, at)


def test_letter_by_letter_and_two_pastes_in_a_row(read: Callable[..., list[Message]]) -> None:
    sent = f"{START}\x1b[B{END}{START}\x1bOQ{END}\x1b[B"
    assert told(read(*sent)) == [("Paste", "[B"), ("Paste", "OQ"), ("Key", "down")]


def test_keys_outside_of_a_paste_are_keys_as_ever(read: Callable[..., list[Message]]) -> None:
    assert told(read("a\x1b[B\x1bOQ")) == [("Key", "a"), ("Key", "down"), ("Key", "f2")]


def test_of_a_huge_paste_no_more_is_taken_than_any_field_could_hold(
    read: Callable[..., list[Message]],
) -> None:
    ((kind, text),) = told(read(START, "7" * 3 * MOST, "8" * MOST, END))
    assert (kind, text) == ("Paste", "7" * MOST)


KINDS: dict[str, tuple[tuple[str, ...], Callable[[Any], str]]] = {
    "book": ((), lambda screen: screen.session.page.find.text),
    "calculator": (("ramp", "<f2>", "<ctrl+u>"), lambda screen: screen.page.form.in_hand.text),
    "cards": (("<f3>",), lambda screen: screen.page.find.text),
    "card": (("<f3>", "d-87", "<enter>", "<ctrl+u>"), lambda screen: screen.form.in_hand.text),
    "form": (("ramp", "<enter>", "<f6>", "title", "<enter>", "<ctrl+u>"), lambda screen: screen.form.in_hand.text),
    "menu": (("<f8>",), lambda screen: screen.find.text),
    "entry": (("ramp", "<enter>"), lambda _: "9 a b"),
}  # fmt: skip
"""The way to one screen of each kind, and what is typed on it; on the last one nothing is."""


async def test_on_every_kind_of_screen_a_paste_is_words_with_blanks_and_nothing_else(
    at_the_yard: AtTheYard, read: Callable[..., list[Message]]
) -> None:
    hostile = f"9\r\na{''.join(STEERING)}{''.join(UNSEEN)}\n\tb".replace("\x1b[200~", "")
    async with at_the_yard() as hands:
        for kind, (way, typed) in KINDS.items():
            while hands.app.screen.WHERE != "book":
                hands.app.pop_screen()
                await hands.settle()
            await hands.do("<ctrl+u>", *way)
            assert kind == hands.app.screen.WHERE
            stack = list(hands.app.screen_stack)
            for text in ("9\r\na\n\n\tb\n", hostile):
                for event in read(f"{START}{text}{END}"):
                    hands.app.post_message(event)
                await hands.settle()
                assert list(hands.app.screen_stack) == stack, kind
                assert not [one for one in hands.shown() if one != "\n" and is_hidden(one)], kind
                held = typed(hands.app.screen)
                assert (held[:3], held[-2:]) == ("9 a", " b"), kind
                assert not [one for one in held if is_hidden(one)], kind
                await hands.press("ctrl+u")


@pytest.mark.parametrize(("kind", "longest"), [("card", 600), ("menu", 200)])
async def test_a_paste_longer_than_its_line_is_cut_and_that_is_said(
    at_the_yard: AtTheYard, kind: str, longest: int
) -> None:
    way, typed = KINDS[kind]
    async with at_the_yard() as hands:
        await hands.do(*way, "1")
        hands.app.post_message(events.Paste("12345678\n" * 200))
        await hands.settle()
        assert typed(hands.app.screen) == ("1" + "12345678 " * 200)[:longest]
        assert f"its first {longest - 1} characters are here" in hands.words()
