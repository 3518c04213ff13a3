"""Text from a file can neither command the terminal nor mislead the eye."""

from __future__ import annotations

import sys
import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from library.sanitize import MARK, first_hidden, is_hidden, name_of, sanitize
from tests.each import each

ANY_TEXT = st.text(st.characters())

BIDI = "\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"
ZERO_WIDTH = "\u00ad\u034f\u115f\u1160\u180e\u200b\u200c\u200d\u2060\u2061\u2064\u3164\ufeff\uffa0\ufe0f\U000e0001\U000e0041"


@given(ANY_TEXT)
def test_nothing_that_is_shown_controls_anything(text: str) -> None:
    for character in sanitize(text):
        assert unicodedata.category(character) not in {"Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"}


@given(ANY_TEXT)
def test_the_text_keeps_its_length_and_what_is_harmless_in_it(text: str) -> None:
    shown = sanitize(text)
    assert len(shown) == len(text)
    assert all(after in {before, MARK, " "} for before, after in zip(text, shown, strict=True))
    assert sanitize(shown) == shown


@given(ANY_TEXT)
def test_lines_stay_lines_where_they_are_wanted(text: str) -> None:
    shown = sanitize(text, lines=True)
    assert shown.count("\n") == text.replace("\r\n", "\n").count("\n")
    assert sanitize(shown.replace("\n", "")) == shown.replace("\n", "")


@each("character", [*map(chr, range(32)), *map(chr, range(0x7F, 0xA0)), *BIDI, *ZERO_WIDTH, "\ud800"], ascii)
def test_every_control_bidi_and_zero_width_character_is_marked(character: str) -> None:
    assert sanitize(f"a{character}b") in {f"a{MARK}b", "a b" if character == "\t" else ""}
    assert is_hidden(character)
    assert first_hidden(f"a{character}b") == character


@pytest.mark.parametrize(
    "text",
    [
        "8\N{DEGREE SIGN}",
        "3/8\N{DOUBLE PRIME}",
        "Gr\u00f6\u00dfe \u00b5m \u00d8",
        "\u5200\u5177",
        "e\u0301",
        "\u0636",
    ],
)
def test_everyday_text_stays_as_it_is(text: str) -> None:
    assert sanitize(text) == text
    assert first_hidden(text) == ""


def test_odd_spaces_become_plain_ones() -> None:
    assert sanitize("3\u00a0mm\u2003x\ty") == "3 mm x y"
    assert first_hidden("3\u00a0mm") == ""


def test_accents_heaped_on_one_letter_are_marked() -> None:
    assert sanitize("o" + "\u0301" * 9) == "o" + MARK * 9
    assert sanitize("o" + "\u0301\u0323") == "o\u0301\u0323"


def test_a_hidden_character_is_named_by_its_code_point() -> None:
    assert name_of("\u202e") == "U+202E (right-to-left override)"
    assert name_of("\x1b") == "U+001B (escape)"
    assert name_of("\x85") == "U+0085 (a control character)"


def test_no_character_of_unicode_is_overlooked() -> None:
    dangerous = {"Cc", "Cf", "Cs", "Zl", "Zp"}
    missed = [code for code in range(sys.maxunicode + 1)
              if unicodedata.category(chr(code)) in dangerous and sanitize(chr(code)) not in {MARK, " "}]  # fmt: skip
    assert missed == []
