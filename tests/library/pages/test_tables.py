"""Tables: whole in any width, never cut, their columns told apart."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from hypothesis import given
from hypothesis import strategies as st

from library.pages.page import Table
from library.pages.reader import Line, Reader, text_of
from library.pages.tables import table_lines


def table(heading: Sequence[str], rows: Iterable[Sequence[str]], width: int) -> list[Line]:
    return table_lines(Table(tuple(heading), tuple(map(tuple, rows))), Reader(width))


def width_of(line: Line) -> int:
    return len(text_of(line))


HEADING = (
    "",
    "facet angle",
    "facet width",
    "facet begins at",
    "indicator where it begins",
    "facet above the axis",
)
ROWS = [
    ("facet 1, primary land", "10.00 deg", "0.800 mm", "0.00 deg", "0.000 mm", "4.924 mm"),
    ("facet 2", "24.09 deg", "2.530 mm", "9.21 deg", "0.075 mm", "4.755 mm"),
]


def test_with_room_each_heading_is_one_line() -> None:
    lines = [text_of(one) for one in table(HEADING, ROWS, width=120)]
    assert len(lines) == 3
    assert "indicator where it begins" in lines[0]


def test_without_room_headings_are_wrapped_and_every_number_stays() -> None:
    lines = table(HEADING, ROWS, width=80)
    text = "\n".join(map(text_of, lines))
    assert all(width_of(one) <= 80 for one in lines)
    assert all(cell in text for row in ROWS for cell in row)
    assert "…" not in text
    assert text.split("\n")[-2].startswith("facet 1, primary land")


def test_before_a_column_goes_into_another_table_the_units_go_into_the_headings() -> None:
    lines = table(HEADING, ROWS, width=58)
    text = "\n".join(map(text_of, lines))
    assert all(width_of(one) <= 58 for one in lines)
    assert text.count("facet 1, primary land") == 1
    assert [line.split()[-5:] for line in text.split("\n")[-2:]] == [
        ["10.00", "0.800", "0.00", "0.000", "4.924"],
        ["24.09", "2.530", "9.21", "0.075", "4.755"],
    ]
    assert " ".join(text.split()).count("deg") == 2


def test_with_too_little_room_for_all_columns_they_come_in_turns_with_their_row_names() -> None:
    lines = table(HEADING, ROWS, width=54)
    text = "\n".join(map(text_of, lines))
    assert all(width_of(one) <= 54 for one in lines)
    assert all(cell in text for row in ROWS for cell in row)
    assert text.count("facet 1, primary land") == 2


words = st.text("abcdefg ", max_size=18).map(lambda text: " ".join(text.split()))
cells = st.text("0123456789.", min_size=1, max_size=9)


@given(
    st.integers(1, 6).flatmap(
        lambda count: st.tuples(
            st.lists(words, min_size=count, max_size=count),
            st.lists(st.lists(cells, min_size=count, max_size=count), min_size=1, max_size=5),
        )
    ),
    st.integers(20, 120),  # a word longer than the line would be broken
)
def test_no_width_loses_a_cell(made: tuple[list[str], list[list[str]]], width: int) -> None:
    heading, rows = made
    text = "\n".join(map(text_of, table(heading, rows, width=width)))
    assert "…" not in text
    found = text.replace(":", "").split()
    assert all(cell in found for row in rows for cell in row)
    assert all(word in found for head in heading for word in head.split())
