"""The list of the book: finding narrows it, emptying restores it, and what is chosen stays chosen."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from library.book.rows import Row, Rows
from library.book.word_forms import SAYS_NOTHING
from tui.view.book_page import BookPage
from tui.view.lines import text_of, width_of
from tui.view.text_line import TextLine

WORDS = ("tap", "drill", "brass", "steel", "hand", "spiral")


def made(titles: list[str], **others: str) -> Rows:
    return Rows.of(
        Row("entry", f"e{n}", title, "tap", "brass", search=title.casefold(), **others)
        for n, title in enumerate(titles)
    )


titles = st.lists(st.lists(st.sampled_from(WORDS), min_size=1, max_size=3).map(" ".join), max_size=12)


@given(titles, st.lists(st.sampled_from([*"tapbrsle ", "back"]), max_size=12))
def test_letter_by_letter_finds_what_the_whole_text_finds(many: list[str], keys: list[str]) -> None:
    page = BookPage(made(many))
    for key in keys:
        page.edit(page.find.erase_back() if key == "back" else page.find.insert(key))
    typed = page.find.text.split()
    words = [word for word in typed if word not in SAYS_NOTHING] or typed
    assert sorted(page.hits) == [n for n, title in enumerate(many) if all(word in title for word in words)]


@given(titles, st.integers(20, 200), st.integers(5, 60))
def test_every_line_fits_the_screen(many: list[str], width: int, height: int) -> None:
    lines = BookPage(made(many)).draw(width, height)
    assert len(lines) == height
    assert all(width_of(line) <= max(width, 60) for line in lines[4:])


def test_rows_that_have_the_words_as_typed_come_first() -> None:
    page = BookPage(made(["taper reamer, left hand", "tap for hand work", "hand taper", "brass hand tap"]))
    page.edit(TextLine.ending("hand tap"))
    assert list(page.hits) == [3, 1, 2, 0]


def test_in_a_narrow_list_names_that_begin_alike_are_told_apart_by_their_ends() -> None:
    names = [f"Countersink with flutes, {angle} degrees, plain steel" for angle in (82, 90)]
    rows = [text_of(line) for line in BookPage(made(names)).draw(33, 8)][3:5]
    assert [row.strip("> ") for row in rows] == [f"Counter…{name[-23:]}" for name in names]


def test_new_rows_keep_what_is_typed_and_chosen() -> None:
    page = BookPage(made(["hand tap", "brass tap", "steel tap"]))
    page.edit(TextLine.ending("tap"))
    page.view.move(2)
    page.fill(made(["new tap", "hand tap", "brass tap"], layer="shop"))
    assert page.find.text == "tap"
    chosen = page.chosen
    assert chosen is not None
    assert chosen.id == "e2"


def test_before_the_book_is_read_the_page_says_so() -> None:
    assert any("Opening the book" in text_of(line) for line in BookPage().draw(80, 20))


def test_an_empty_book_says_what_to_do() -> None:
    assert any("heelclear check" in text_of(line) for line in BookPage(made([])).draw(80, 20))


@pytest.mark.parametrize(
    ("others", "mark"),
    [({"layer": "shop"}, "shop"), ({"layer": "shop", "state": "broken"}, "fix"), ({}, "")],
)
def test_a_row_is_marked_by_a_word(others: dict[str, str], mark: str) -> None:
    drawn = text_of(BookPage(made(["hand tap"], **others)).draw(80, 20)[3])
    assert drawn.rstrip().endswith(mark or "Brass")


@pytest.mark.parametrize(
    ("sought", "told"),
    [
        ("tap 4 flutes", "  4 flutes go along, the book has 2 to 3 flutes  1 of 1"),
        ("tap 2 flutes", "  2 flutes go along  1 of 1"),
        ("hand tap hand tap hand tap 4 flutes 5/8-11", "  the book has 2 to 3 flutes"),
    ],
)
def test_another_number_of_flutes_in_the_book_is_told_beside_the_find_line(sought: str, told: str) -> None:
    page = BookPage(made(["hand tap"], ranges="flutes=2:3"))
    page.edit(TextLine.ending(sought))
    shown = text_of(page.draw(80, 10)[0])
    assert shown.rstrip().endswith(told)


@pytest.mark.parametrize(
    ("sought", "told"),
    [
        ("tap 4 flutes", "4 flutes go along"),
        ("4-flute tap m12", "M12 and 4 flutes go along"),
        ("tap 1 flute", "1 flute goes along"),
        ("tap m12", "M12 goes along"),
    ],
)
def test_what_goes_along_with_an_entry_is_told_beside_the_find_line(sought: str, told: str) -> None:
    page = BookPage(made(["hand tap"]))
    page.edit(TextLine.ending(sought))
    shown = text_of(page.draw(80, 10)[0])
    assert f"  {told}  1 of 1" in shown
    page.edit(TextLine.ending("tap 0 flutes"))
    assert "along" not in text_of(page.draw(80, 10)[0])


@pytest.mark.parametrize(
    ("width", "has_line"), [(80, True), (160, False)], ids=["no room beside", "room beside"]
)
def test_what_goes_along_stands_below_where_there_is_no_room_beside_the_find_line(
    width: int, has_line: bool
) -> None:
    page = BookPage(made(["hand tap for brass"], ranges="flutes=1:1"))
    page.edit(TextLine.ending("hand tap for brass hand tap 20 mm 3 flutes"))
    drawn = [text_of(line).rstrip() for line in page.draw(width, 12)]
    assert ("! 20 mm and 3 flutes go along, the book has 1 flute." in drawn) == has_line
    assert has_line == ("20 mm" not in drawn[0].replace(page.find.text, ""))


def test_a_size_that_does_not_go_along_and_an_angle_are_told_below_the_list() -> None:
    page = BookPage(made(["drill 90 degrees"]))
    page.edit(TextLine.ending("drill 11 x 6.6"))
    assert "! 6.6 does not go along." in [text_of(line).rstrip() for line in page.draw(80, 12)]
    page.edit(TextLine.ending("drill 11"))
    assert not any("not go along" in text_of(line) for line in page.draw(80, 12))


@pytest.mark.parametrize(
    ("typed", "kept"),
    [
        ("hand drill 10,5 8", "hand drill 10.5 mm 8"),
        ("hand drill 45 10 mm", "hand drill 45 10 mm"),
        ("pipe tap 1", "pipe tap 1"),
    ],
)
def test_with_another_unit_the_size_that_goes_along_stays_the_same(typed: str, kept: str) -> None:
    page = BookPage(made(["hand drill", "pipe tap"]))
    page.edit(TextLine.ending(typed))
    page.keep_meaning("mm")
    assert page.find.text == kept


def test_letter_by_letter_a_word_that_is_left_out_finds_what_the_whole_text_finds() -> None:
    from tests.library.search.finding_in_it import shipped

    whole = BookPage(shipped())
    whole.edit(TextLine.ending("cast iron machine tap bottoming"))
    page = BookPage(shipped())
    for count in range(len(whole.find.text) + 1):
        page.edit(TextLine.ending(whole.find.text[:count]))
    assert page.hits == whole.hits
    assert page.found.told == whole.found.told
