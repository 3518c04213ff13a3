"""Which characters drawings are made of, by what is known of the terminal."""

from __future__ import annotations

import pytest

from tui.figure.alphabet import ALPHABETS
from tui.terminal import drawing
from tui.theme import theme


@pytest.mark.parametrize(
    ("variables", "chosen"),
    [
        ({"TERM": "xterm-256color"}, "braille"),
        ({"TERM": "xterm", "COLORTERM": "truecolor"}, "braille"),
        ({"TERM": "tmux-256color"}, "braille"),
        ({"TERM": "xterm"}, "blocks"),
        ({"TERM": "screen"}, "blocks"),
        ({"TERM": "linux", "COLORTERM": "truecolor"}, "blocks"),
        ({"TERM": "vt220"}, "blocks"),
        ({}, "blocks"),
    ],
)
def test_braille_is_sent_only_where_the_font_is_likely_to_have_it(
    variables: dict[str, str], chosen: str
) -> None:
    assert drawing(variables) == chosen


def test_ascii_has_the_last_word_and_every_choice_is_an_alphabet() -> None:
    assert theme(ascii_only=True, drawing="braille").drawing == "ascii"
    assert theme(drawing="blocks").drawing == "blocks"
    assert all(theme(drawing=name).drawing in ALPHABETS for name in ALPHABETS)
