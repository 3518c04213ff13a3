"""A form of lines: what gives way to typing, what follows the book, and what is never lost."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st
from rich.cells import cell_len

from tui.view.lines import Piece, cut, text_of, width_of
from tui.view.text_form import Blank, TextForm

BLANKS = (
    Blank("usual", "Usual", "What to take first.", overtype=True),
    Blank("style", "Style", "Left and Right change it.", ("flat", "facets", "eccentric")),
    Blank("note", "Note", "A remark."),
)
STARTED = {"usual": "5 deg", "style": "flat", "note": "Look."}


def form(**started: str) -> TextForm:
    return TextForm(BLANKS, STARTED | started)


def at(key: str, **started: str) -> TextForm:
    made = form(**started)
    made.focus = key
    return made


def test_the_first_character_takes_the_place_of_a_number_and_the_cursor_says_so() -> None:
    one = at("usual")
    assert Piece("5", "cursor") in one.draw(80)[0]
    one.type("6")
    one.type("0")
    assert one.values()["usual"] == "60"


def test_an_arrow_goes_to_the_end_of_it_first_and_changes_nothing() -> None:
    one = at("usual")
    one.edit("left")
    one.type("!")
    assert one.values()["usual"] == "5 deg!"


def test_backspace_and_delete_do_what_they_always_do() -> None:
    one = at("usual")
    one.edit("backspace")
    assert one.values()["usual"] == "5 de"
    other = at("note")
    other.edit("home")
    other.edit("delete")
    assert other.values()["note"] == "ook."


def test_a_remark_is_gone_on_with() -> None:
    one = at("note")
    one.type("!")
    assert one.values()["note"] == "Look.!"


def test_choices_go_round_and_by_their_letters() -> None:
    one = at("style")
    one.edit("left")
    assert one.values()["style"] == "eccentric"
    one.edit("right")
    one.type("f")
    assert one.values()["style"] == "facets"
    one.type("f")
    assert one.values()["style"] == "flat"
    for nothing in ("x", " ", "backspace"):
        one.type(nothing) if len(nothing) == 1 else one.edit(nothing)
        assert one.values()["style"] == "flat"
    one.clear()
    assert one.values()["style"] == "flat"


def test_a_text_that_nobody_touched_follows_the_book_and_one_that_was_touched_stays() -> None:
    one = at("usual")
    one.type("6 deg")
    assert one.follow({"usual": "7 deg", "style": "facets", "note": "Look."}) == ["Usual"]
    assert one.values() == {"usual": "6 deg", "style": "facets", "note": "Look."}
    assert one.started == {"usual": "5 deg", "style": "facets", "note": "Look."}
    assert one.follow({"usual": "6 deg", "style": "facets", "note": "Look."}) == []


def test_what_was_typed_earlier_comes_back_with_what_it_was_typed_over() -> None:
    one = form(usual="7 deg", note="New.")
    one.take_up({"usual": "6 deg", "style": "flat", "note": "Look."}, STARTED)
    assert one.values() == {"usual": "6 deg", "style": "flat", "note": "New."}
    assert one.started == {"usual": "5 deg", "style": "flat", "note": "New."}
    one.focus = "usual"
    one.type("9")
    assert one.values()["usual"] == "9"


def test_blanks_at_the_ends_are_no_change() -> None:
    one = at("note")
    one.type(" ")
    assert not one.is_changed()
    one.type("x")
    assert one.is_changed()
    one.start_over(STARTED)
    assert one.values() == STARTED


def test_more_than_a_book_takes_is_cut_and_a_long_text_that_is_there_already_can_be_changed() -> None:
    one = at("note", note="x" * 300)
    one.type("y" * 10_000)
    assert len(one.values()["note"]) == TextForm.LONGEST
    one.edit("backspace")
    one.type("z")
    assert one.values()["note"].endswith("yz")


def test_a_long_text_in_hand_is_shown_over_several_lines_with_its_end_in_sight() -> None:
    one = at("note", note="word " * 100 + "end")
    shown = "\n".join(text_of(line) for line in one.draw(60))
    assert "end" in shown
    one.edit("home")
    shown = "\n".join(text_of(line) for line in one.draw(60))
    assert "end" not in shown
    assert shown.count("word") > 10


def test_what_is_wrong_stands_in_place_of_the_hint() -> None:
    one = at("usual")
    assert "What to take first." in "\n".join(map(text_of, one.draw(80)))
    one.wrong = {"usual": "It has no unit.", "": "It has no source."}
    shown = "\n".join(map(text_of, one.draw(80)))
    assert "! It has no unit." in shown
    assert "! It has no source." in shown
    assert "What to take first." not in shown


keys = st.sampled_from(["left", "right", "home", "end", "backspace", "delete", "next", "clear"])


@given(
    st.lists(st.one_of(keys, st.text(max_size=3).map(lambda text: f"+{text}")), max_size=40),
    st.integers(20, 90),
)
def test_whatever_is_done_each_line_fits_and_one_cursor_at_most_is_shown(done: list[str], width: int) -> None:
    one = form()
    for what in done:
        if what == "next":
            one.move(1)
        elif what == "clear":
            one.clear()
        elif what.startswith("+"):
            one.type(what[1:])
        else:
            one.edit(what)
    drawn = one.draw(width)
    assert [piece.role for line in drawn for piece in line].count("cursor") <= 1
    if all(text.isascii() for text in one.values().values()):
        assert all(width_of(line) <= max(width, 28) for line in drawn)


@given(st.text(alphabet="ab \u00e9\u4e00", max_size=300), st.integers(1, 60))
def test_a_text_that_is_cut_is_whole_when_it_is_joined_and_no_part_is_too_wide(text: str, width: int) -> None:
    parts = cut(text, max(width, 2))
    assert "".join(parts) == text
    assert all(cell_len(part) <= max(width, 2) for part in parts)


@given(st.text(alphabet="abc ", min_size=50, max_size=300), st.integers(0, 300))
def test_wherever_the_cursor_is_in_a_long_text_it_is_shown_once(text: str, steps: int) -> None:
    one = at("note", note=text)
    for _ in range(min(steps, len(text))):
        one.edit("left")
    drawn = one.draw(60)
    assert [piece.role for line in drawn for piece in line].count("cursor") == 1
    assert all(width_of(line) <= 60 for line in drawn)
