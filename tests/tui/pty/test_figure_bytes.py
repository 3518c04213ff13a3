"""The drawings of the calculator over a slow line: they follow every key, in few bytes."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

Open = Callable[..., Any]
LONG = 0.3
"""Seconds of sleep after which nothing that was begun behind the screen is still to come."""

FIGURES = "\x07"
"""Ctrl+G."""


def at_the_answer(opened: Any) -> None:
    opened.wait_for(" of ")
    opened.press("adjustable")
    for _ in range(20):  # until the book is read, F2 has nothing to open
        opened.press("f2")
        if any("needed" in line for line in opened.screen()):
            break
    opened.press("f2")
    opened.press("margin")
    opened.press("enter")
    opened.press("12")
    opened.press("down")
    opened.press("2")
    opened.wait_for("heel ")


@pytest.mark.depth
@pytest.mark.parametrize("letters", ["braille", "blocks", "ascii"])
def test_a_key_in_the_calculator_redraws_tooth_and_plot_within_its_budget_and_hidden_they_cost_nothing(
    terminal: Open, letters: str
) -> None:
    opened = terminal("--figures", letters)
    at_the_answer(opened)
    assert max(len(opened.press(key)) for key in (".", "5", "8", "\x7f", "\x7f", "\x7f")) <= 400
    opened.press(FIGURES)
    opened.wait_for("relief drawn")
    opened.rest(least=LONG)
    sizes = [len(opened.press(key)) for key in (".", "5", "8", "\x7f", "2")]
    opened.press("down", "down", "down")
    sizes += [len(opened.press(key)) for key in ("8", "\x7f", "1")]
    assert max(sizes) <= 1300
    assert max(sizes) > 200  # the drawings did follow


@pytest.mark.depth
def test_drawings_are_of_ascii_where_only_ascii_may_be_sent(terminal: Open) -> None:
    opened = terminal("--ascii", "--figures", "braille", columns=120, rows=36)
    at_the_answer(opened)
    opened.press(FIGURES)
    opened.wait_for("relief drawn")
    assert opened.written.isascii()


@pytest.mark.depth
def test_the_console_of_linux_gets_blocks_and_no_braille(terminal: Open) -> None:
    opened = terminal(TERM="linux", columns=120, rows=36)
    at_the_answer(opened)
    text = "\n".join(opened.screen())
    assert any(sign in text for sign in "▀▄█")
    assert not any("\u2800" < character <= "\u28ff" for character in text)


@pytest.mark.depth
def test_a_key_in_the_calculator_beside_other_panes_stays_within_its_budget(terminal: Open) -> None:
    opened = terminal("--figures", "braille", columns=120, rows=36)
    at_the_answer(opened)
    for columns, rows, budget in ((120, 36, 1300), (160, 48, 2500)):
        opened.resize(columns, rows)
        opened.rest(least=LONG)
        sizes = [len(opened.press(key)) for key in (".", "5", "8", "\x7f", "\x7f", "2")]
        assert max(sizes) <= budget
        assert max(sizes) > 200  # the drawings did follow
    opened.press("down", "down", "down")
    assert max(len(opened.press(key)) for key in ("8", "\x7f", "1")) <= budget
