"""An entry on a screen of 80x24: all its values at once, the one in hand explained, the cautions always there."""

from __future__ import annotations

import re

import pytest

from geometry.quantities import quantity
from library.book.model import Book, Citation, Entry, Measure, Value
from library.book.opening import open_book
from library.pages.entry import in_hand, in_hand_parts, values_table
from library.pages.entry_sources import tags
from library.pages.page import Table
from library.units.system import INCH, METRIC
from tui.view.entry_page import EntryPage, value_lines
from tui.view.lines import Line, filled, text_of, width_of

BODY = 22
"""Lines between title and key bar on a screen of 24."""


@pytest.fixture(scope="module")
def shipped() -> Book:
    return open_book()


def shown(page: EntryPage, book: Book, width: int, height: int) -> list[Line]:
    """The entry with its cautions, exactly so many lines."""
    warned = page.cautions(book, width, "F4 in full")
    return filled([*page.body(book, None, width, max(height - len(warned), 0)), *warned], height)


def drawn(page: EntryPage, book: Book, width: int = 80, height: int = BODY) -> list[str]:
    return [text_of(one).rstrip() for one in shown(page, book, width, height)]


def joined(lines: list[str]) -> str:
    return " ".join(" ".join(lines).split())


def test_all_values_of_every_entry_are_in_sight_with_what_to_grind_and_the_cautions(shipped: Book) -> None:
    for entry in shipped.entries.values():
        lines = drawn(EntryPage(entry), shipped)
        assert len(lines) == BODY
        for key in entry.values:
            assert any(line[2:].startswith(quantity(key).title) for line in lines), (entry.id, key)
        assert any(line.startswith("GRIND  ") for line in lines), entry.id
        meant = lines[1 + len(entry.values)].split(" ─")[0].split(", ")
        for sign in set(re.sub(r"\[\d+\]|\s", "", "".join(tags(shipped, entry).values()))):
            assert [one for one in meant if one.startswith(f"{sign} ")], (entry.id, sign, meant)
        assert lines[-2].startswith("CAUTION  under marked speed"), entry.id
        assert lines[-1].endswith("F4 in full"), entry.id


def test_each_value_in_hand_is_marked_and_told_in_full_here_or_at_the_foot(shipped: Book) -> None:
    for entry in list(shipped.entries.values())[::5]:
        page = EntryPage(entry)
        for place, (key, value) in enumerate(entry.values.items()):
            lines = drawn(page, shipped)
            assert lines[1 + place].startswith(f"> {quantity(key).title}"), (entry.id, key)
            told = in_hand(shipped, value).split()
            start = "".join(told)[:60]
            assert start in "".join("".join(lines).split()), (entry.id, key)
            if "".join(told) not in "".join("".join(lines).split()):
                assert any(line.endswith("? in full") for line in lines), (entry.id, key)
                assert not any("……" in line for line in lines), (entry.id, key)
                source = in_hand_parts(shipped, value, brief=True)[1]
                assert "".join(source.split()) in "".join("".join(lines).split()), (entry.id, key)
                whole = joined(drawn(page, shipped, height=400))
                assert joined([value.note]) in whole
                assert f"{quantity(key).title} " in whole
            page.move(1)


def test_no_blank_line_stands_over_a_text_that_goes_on_below(shipped: Book) -> None:
    for entry in list(shipped.entries.values())[::5]:
        page = EntryPage(entry)
        for _ in entry.values:
            lines = drawn(page, shipped)
            if "more line" in lines[-1]:
                head = lines[: next(at for at, line in enumerate(lines) if set(line) == {"─"})]
                assert "" not in head, (entry.id, page.key)
            page.move(1)


def test_the_text_stays_where_it_was_scrolled_to_while_the_values_are_gone_through(shipped: Book) -> None:
    page = EntryPage(shipped.entries["tap-hand-plain-steel"])
    drawn(page, shipped)
    page.view.scroll(7)
    for at in range(len(page.entry.values)):
        page.chosen = at
        drawn(page, shipped)
        assert page.view.top == 7


def test_the_text_is_read_to_its_end(shipped: Book) -> None:
    entry = next(iter(shipped.entries.values()))
    page = EntryPage(entry)
    drawn(page, shipped)
    page.view.scroll(1000)
    last = drawn(page, shipped)
    assert entry.id in joined(last)
    assert not any("more line" in line for line in last)


@pytest.mark.parametrize("size", [(80, 22), (60, 18), (120, 34), (40, 10), (20, 5), (3, 2), (1, 1)])
def test_every_size_is_filled_and_none_overflows(shipped: Book, size: tuple[int, int]) -> None:
    width, height = size
    for entry in list(shipped.entries.values())[::9]:
        lines = shown(EntryPage(entry), shipped, width, height)
        assert len(lines) == height
        if width >= 40:
            assert max(map(width_of, lines)) <= width


def test_on_a_narrow_screen_a_value_and_its_range_stay_whole(shipped: Book) -> None:
    entry = shipped.entries["tap-hand-plain-steel"]
    lines = [text_of(one) for one in value_lines(values_table(shipped, entry), 44)]
    (relief,) = [line for line in lines if "6 deg (4 to 8)" in line]
    assert relief.startswith("  Chamfer relief ")
    assert max(map(len, lines)) <= 44


def test_a_unit_stands_once_behind_a_range_only_where_all_of_it_has_that_one() -> None:
    def told(*cells: str) -> str:
        rows = (("Some angle", *cells, "C"), ("Another one", "a long word of 16", "1 deg", "", "C"))
        _, first, *_ = value_lines(Table(("", "usual", "low", "high", "src"), rows), 48)
        return text_of(first).removeprefix("  Some angle").removesuffix("  C").strip()

    assert told("", "12 deg", "15 deg") == "12 to 15 deg"
    assert told("3 mm", "0.1 in", "0.2 in") == "3 mm (0.1 in to 0.2 in)"
    assert told("", "3 deg 30 min", "4 deg 30 min") == "3 deg 30 min to 4 deg 30 min"
    assert told("7 deg", "5 deg", "") == "7 deg (5 deg or more)"
    assert told("", "", "0.25 D") == "0.25 D or less"


def test_a_range_without_room_leaves_a_sign_and_is_told_of_the_value_in_hand() -> None:
    value = Value(
        "land_width", Measure("0.0079 in"), Measure("0.0118 in"), Measure("0.0157 in"), Citation("shop")
    )
    page = EntryPage(Entry("one", "tap", "One", values={"land_width": value}))
    lines = drawn(page, Book({}), width=36)
    assert "0.0118 in (..)" in lines[1]
    assert "Land width: 0.0118 in (0.0079 in to 0.0157 in)." in joined(lines)
    wide = drawn(page, Book({}), width=80)
    assert "0.0079 in" in wide[1]
    assert "Land width. " in joined(wide)


def test_beside_the_list_a_value_keeps_its_range(shipped: Book) -> None:
    page = EntryPage(shipped.entries["tap-hand-bronze"])
    lines = [text_of(one).rstrip() for one in page.body(shipped, METRIC, 43, 25, live=False)]
    assert lines[1].split("  ")[-1].strip() == "?+"
    assert "7 deg (5 to 10)" in lines[1]


def test_an_entry_without_values_is_shown_too() -> None:
    page = EntryPage(Entry("none", "tap", "None", notes="Nothing is known of it."))
    page.move(1)
    page.move(-1)
    assert page.key == ""
    lines = drawn(page, Book({}))
    assert lines[0] == "The book has no values for this tool yet; F6 puts them in."
    assert not any("usual" in line for line in lines)
    assert "NOTE   Nothing is known of it." in lines


@pytest.mark.parametrize(
    ("family", "sought", "trouble"),
    [
        ("twist-drill", "drill cuts large", "Cuts large"),
        ("twist-drill", "drill wanders", "Drifts"),
        ("reamer", "burns reamer", "Burns the edge at the grinder"),
        ("tap", "tap breaks", "Breaks"),
    ],
)
def test_the_trouble_that_an_entry_was_found_by_stands_first_below_its_values(
    shipped: Book, family: str, sought: str, trouble: str
) -> None:
    tool = next(one for one in shipped.entries.values() if one.family == family)
    with_it = drawn(EntryPage(tool, sought), shipped)
    plain = drawn(EntryPage(tool, family), shipped)
    place = [line.strip() for line in with_it].index(trouble)
    assert with_it[:place] == plain[:place]
    assert not any(trouble in line for line in plain)


def test_in_inches_all_values_are_in_sight_too_and_none_of_them_is_in_millimetres(shipped: Book) -> None:
    for entry in list(shipped.entries.values())[::4]:
        lines = [text_of(one).rstrip() for one in EntryPage(entry).body(shipped, INCH, 80, 20)]
        for key, row in zip(entry.values, lines[1 : 1 + len(entry.values)], strict=True):
            title = quantity(key).title
            assert row[2:].startswith(title), (entry.id, key)
            assert " mm" not in row[2 + len(title) :], (entry.id, row)


def test_what_the_book_has_in_another_unit_is_told_of_the_value_in_hand() -> None:
    land = Value(
        "land_width", Measure("0.5 mm", 0.5), None, Measure("1 mm", 1.0), Citation("shop"), "Narrow."
    )
    page = EntryPage(Entry("one", "tap", "One", values={"land_width": land}))
    lines = [text_of(one) for one in page.body(Book({}), INCH, 80, 20)]
    assert lines[1].split()[:7] == [">", "Land", "width", "0.0197", "in", "0.0393", "in"]
    assert any("Land width. Book: 0.5 mm to 1 mm. Narrow." in line for line in lines)
    metric = [text_of(one) for one in page.body(Book({}), METRIC, 80, 20)]
    assert "0.5 mm" in metric[1]
    assert not any("book:" in line for line in metric)
