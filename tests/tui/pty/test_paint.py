"""What is written to the terminal: the same picture as Textual's own, in fewer bytes, and nothing when idle."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

Open = Callable[..., Any]

SIZES = ((60, 20), (120, 36), (200, 60), (1, 1), (80, 24))

LONG = 0.3
"""Seconds of sleep after which nothing that was begun behind the screen is still to come."""

WALK = (
    "tap",
    "down",
    "enter",
    "pagedown",
    "f2",
    "12",
    "f5",
    "?",
    "f9",
    "f6",
    "f9",
)
"""Keys over every kind of screen; each is followed by a look at the picture."""


def cells(opened: Any) -> list[list[tuple[Any, ...]]]:
    screen = opened.emulated()
    return [
        [
            # Of a blank neither its colour can be seen nor how bright it would be.
            (c.data, c.bg, c.reverse) if c.data == " " else (c.data, c.fg, c.bg, c.bold, c.reverse)
            for c in (screen.buffer[y][x] for x in range(screen.columns))
        ]
        for y in range(screen.lines)
    ]


def soon_alike(one: Any, other: Any) -> bool:
    """Whether both come to show the same; a busy machine may take a moment over a key."""
    for _ in range(40):
        if cells(one) == cells(other):
            return True
        one.rest()
        other.rest()
    return False


@pytest.mark.depth
def test_only_changed_cells_and_whole_lines_give_the_same_picture(terminal: Open) -> None:
    sparing, usual = terminal(), terminal(HEELCLEAR_PAINT="lines")
    for one in (sparing, usual):
        one.wait_for(" of ")
    assert soon_alike(sparing, usual)
    for key in WALK:
        sparing.press(key)
        usual.press(key)
        assert soon_alike(sparing, usual), key
    # How many paints fall together depends on the machine, so the share is not exact.
    assert len(sparing.written) < len(usual.written) / 2


@pytest.mark.depth
def test_an_idle_program_writes_nothing(at_the_book: Any) -> None:
    opened = at_the_book
    assert not opened.read(3.5)  # longer than from one look at the files to the next


def test_repaint_by_key_sends_the_whole_picture_again(at_the_book: Any) -> None:
    opened = at_the_book
    before = cells(opened)
    opened.written = b""
    opened.press("ctrl+l")
    assert cells(opened) == before


@pytest.mark.depth
@pytest.mark.parametrize(
    "sizes", [((60, 20), (1, 1)), pytest.param(SIZES, marks=pytest.mark.depth)], ids=["two", "all"]
)
def test_another_size_keeps_place_and_text(at_the_book: Any, sizes: tuple[tuple[int, int], ...]) -> None:
    opened = at_the_book
    opened.press("tap", "down", "down")
    chosen = chosen_row(opened.screen())
    for size in sizes:
        opened.resize(*size)
        opened.rest(least=LONG)
        opened.written = b""
        opened.resize(81, 25)
        assert chosen_row(opened.wait_for("Find: tap")) == chosen, size


def chosen_row(shown: list[str]) -> str:
    """The beginning of the row with the mark; its end depends on the width."""
    return next(line[:40] for line in shown if line.startswith(">"))


def test_bytes_of_a_key_stay_within_the_budget(terminal: Open) -> None:
    opened = terminal(columns=100, rows=30)
    opened.wait_for(" of ")
    opened.rest(least=LONG)
    held = len(opened.press(*["down"] * 8))  # what stands beside the list follows when the keys rest
    letters = [len(opened.press(letter)) for letter in "tap"]
    assert held / 8 <= 400
    assert max(letters) <= 5000
    opened.press("f2")
    opened.rest(least=LONG)
    digits = [len(opened.press(digit)) for digit in ("1", "2", ".", "5")]
    assert max(digits) <= 1300
    assert held > 0


def test_a_step_through_the_list_takes_at_most_60_bytes(terminal: Open) -> None:
    opened = terminal()
    opened.wait_for(" of ")
    opened.rest(least=LONG)
    in_sight = [len(opened.press("down")) for _ in range(8)]
    opened.press(*["down"] * 8)
    further = [len(opened.press("down")) for _ in range(8)]
    assert min(in_sight) > 0
    assert max(in_sight) <= 60
    assert max(further) <= 160  # the list moves up, and a whole new line comes in


def test_page_keys_are_not_animated(at_the_book: Any) -> None:
    opened = at_the_book
    assert 0 < len(opened.press("pagedown")) <= 24 * 80 * 2
