"""Lines of pieces: what is fitted has exactly its width, and what is wrapped loses no word."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from rich.cells import cell_len

from library.sanitize import sanitize
from tui.ascii_text import in_ascii
from tui.view.lines import Piece, beside, fit, line, padded, text_of, width_of, wrap

foreign = st.text(max_size=30)


@given(foreign, st.integers(0, 40), st.booleans())
def test_fitted_text_has_exactly_the_width_asked_for(text: str, width: int, right: bool) -> None:
    assert cell_len(fit(text, width, right=right)) == width


@pytest.mark.parametrize(
    ("whole", "width", "shown"),
    [
        ("White cup 100 may run at 3600 rpm", 29, "White cup 100 may run at …"),
        ("gives 7.27 deg, 6.5 wanted", 18, "gives 7.27 deg, …"),
        ("gives 7.27 deg, 6.5 wanted", 20, "gives 7.27 deg, 6.5…"),
        ("off by -0.035 mm", 12, "off by …"),
        ("of 1-1/2 in", 6, "of …"),
        ("M12x1.25 left", 7, "M12x…"),
        ("T-12-5 and T-12-6", 5, "T-12…"),
        ("0.413 mm", 4, "…"),
    ],
)
def test_a_number_is_shown_whole_or_not_at_all(whole: str, width: int, shown: str) -> None:
    assert fit(whole, width).rstrip() == shown
    assert fit(whole, width, right=True).lstrip() == shown


@given(st.lists(foreign, max_size=4), st.integers(0, 60))
def test_a_padded_line_has_exactly_the_width_asked_for(texts: list[str], width: int) -> None:
    one = line(*(Piece(sanitize(text)) for text in texts))
    assert width_of(padded(one, width)) == width


@given(st.lists(st.text(alphabet="abcdef0123", min_size=1, max_size=8), max_size=30), st.integers(10, 60))
def test_wrapping_keeps_every_word_in_order(words: list[str], width: int) -> None:
    lines = wrap(" ".join(words), width, first="- ", rest="  ")
    assert " ".join(text_of(one)[2:] for one in lines).split() == words
    assert all(width_of(one) <= width for one in lines)


@given(foreign)
def test_plain_text_shows_only_itself(text: str) -> None:
    assert sanitize(text).replace("\N{REPLACEMENT CHARACTER}", "").isprintable()
    assert sanitize(sanitize(text)) == sanitize(text)


@given(foreign)
def test_ascii_is_as_wide_as_what_it_stands_for(text: str) -> None:
    shown = in_ascii(sanitize(text))
    assert shown.isascii()
    assert len(shown) == cell_len(sanitize(text))


def test_two_columns_stand_beside_each_other_however_long_each_is() -> None:
    both = beside([line("a")], [line("x"), line("y")], 3, "|")
    assert [text_of(one) for one in both] == ["a  |x", "   |y"]
