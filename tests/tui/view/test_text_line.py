"""One line of typed text: its cursor stays in it, and nothing that cannot be shown gets in."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from tui.view.lines import text_of
from tui.view.text_line import LONGEST, TextLine

steps = st.lists(
    st.one_of(
        st.sampled_from(["left", "right", "backspace", "delete", "f12"]).map(lambda key: ("key", key)),
        st.text(max_size=5).map(lambda text: ("text", text)),
    ),
    max_size=30,
)


@given(steps, st.integers(1, 20))
def test_whatever_is_typed_the_cursor_is_in_the_text_and_in_sight(
    done: list[tuple[str, str]], width: int
) -> None:
    line = TextLine()
    for kind, what in done:
        line = line.edited(what) if kind == "key" else line.insert(what)
    assert 0 <= line.cursor <= len(line.text) <= LONGEST
    assert line.text.isprintable()
    pieces = line.pieces(width)
    assert len(text_of(pieces)) == width
    assert [piece.role for piece in pieces].count("cursor") == 1


def test_a_text_too_long_for_its_field_shows_that_its_beginning_is_out_of_sight() -> None:
    assert text_of(TextLine.ending("3.2 mm +/- 0.05").pieces(14)) == "… mm +/- 0.05 "
    assert text_of(TextLine.ending("3.2 mm").pieces(14)) == "3.2 mm        "


@given(st.text(alphabet="ab1 ./", max_size=20), st.integers(0, 20))
def test_a_character_typed_and_taken_back_leaves_the_line_as_it_was(text: str, cursor: int) -> None:
    line = TextLine(text, min(cursor, len(text)))
    assert line.insert("x").erase_back() == line


def test_a_paste_is_cut_at_the_longest_line() -> None:
    assert len(TextLine().insert("9" * 10_000).text) == LONGEST


def test_control_characters_of_a_paste_are_left_out() -> None:
    assert TextLine().insert("3.2\x1b[2J\x07").text == "3.2[2J"
