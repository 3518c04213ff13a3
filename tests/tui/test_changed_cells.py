"""Only changed cells are sent, and a terminal that gets them shows exactly what is wanted."""

from __future__ import annotations

import pyte
from hypothesis import given
from hypothesis import strategies as st

from tui.changed_cells import CLEAR, ChangedCells

WIDTH, HEIGHT = 12, 3

texts = st.text(alphabet="ab \u00e4\u5203\u5de5\u2500", max_size=WIDTH + 2)
codes = st.sampled_from(["", "1", "7", "1;31", "36"])
puts = st.tuples(
    st.integers(0, WIDTH - 1), st.integers(0, HEIGHT - 1), st.lists(st.tuples(texts, codes), max_size=3)
)
frames = st.lists(st.lists(puts, max_size=4), min_size=1, max_size=4)

Attributes = tuple[str, str, bool, bool]


def shown(screen: pyte.Screen) -> list[list[Attributes]]:
    rows = [[screen.buffer[y][x] for x in range(screen.columns)] for y in range(screen.lines)]
    return [[seen(cell) for cell in row] for row in rows]


def seen(cell: pyte.screens.Char) -> Attributes:
    """What can be seen of a cell: of a blank neither its colour nor how bright it would be."""
    if cell.data == " " and not cell.reverse:
        return " ", "default", False, False
    return cell.data, cell.fg, cell.bold, cell.reverse


def painted(frame: list[tuple[int, int, list[tuple[str, str]]]], cells: ChangedCells) -> str:
    for x, y, pieces in frame:
        cells.put(x, y, pieces)
    return cells.changes()


def whole(cells: ChangedCells) -> list[list[Attributes]]:
    """The same picture painted from nothing on a fresh terminal."""
    cells.forget()
    screen = pyte.Screen(WIDTH, HEIGHT)
    pyte.Stream(screen).feed(cells.changes())
    return shown(screen)


def in_whole_rows(
    frame: list[tuple[int, int, list[tuple[str, str]]]],
) -> list[tuple[int, int, list[tuple[str, str]]]]:
    """The puts as Textual makes them: a row at a time, padded to its end."""
    return [(0, y, [*pieces, (" " * WIDTH, "")]) for _, y, pieces in frame]


@given(frames)
def test_a_terminal_that_gets_the_changes_shows_what_one_painted_anew_shows(
    many: list[list[tuple[int, int, list[tuple[str, str]]]]],
) -> None:
    cells = ChangedCells(WIDTH, HEIGHT)
    screen = pyte.Screen(WIDTH, HEIGHT)
    stream = pyte.Stream(screen)
    for frame in many:
        stream.feed(painted(in_whole_rows(frame), cells))
    assert shown(screen) == whole(cells)


@given(frames)
def test_a_frame_that_changes_nothing_sends_nothing(
    many: list[list[tuple[int, int, list[tuple[str, str]]]]],
) -> None:
    cells = ChangedCells(WIDTH, HEIGHT)
    for frame in many:
        painted(in_whole_rows(frame), cells)
    assert painted(in_whole_rows(many[-1]), cells) == ""


def test_the_first_frame_clears_and_sends_only_what_is_not_blank() -> None:
    cells = ChangedCells(80, 24)
    cells.put(0, 5, [("x" + " " * 79, "")])
    assert cells.changes() == CLEAR + "\x1b[6Hx"


def test_one_changed_digit_costs_one_move_and_one_digit() -> None:
    cells = ChangedCells(80, 24)
    cells.put(0, 0, [("drop 0.281 mm", "")])
    cells.changes()
    cells.put(0, 0, [("drop 0.282 mm", "")])
    assert cells.changes() == "\x1b[1;10H2"


def test_an_emptied_row_is_erased_not_overwritten() -> None:
    cells = ChangedCells(80, 24)
    cells.put(0, 2, [("y" * 80, "7")])
    cells.changes()
    cells.put(0, 2, [(" " * 80, "")])
    assert cells.changes() == "\x1b[3H\x1b[K"


def test_no_style_is_left_in_force_after_a_frame() -> None:
    cells = ChangedCells(80, 24)
    cells.put(0, 0, [("STOP", "1;31")])
    assert cells.changes().endswith("\x1b[m")


def test_what_stands_outside_the_screen_is_left_out() -> None:
    cells = ChangedCells(4, 1)
    cells.put(2, 0, [("abcdef", "")])
    cells.put(0, 7, [("never", "")])
    assert cells.changes() == CLEAR + "\x1b[1;3Hab"


def listed(first: int, chosen: int, count: int = 10) -> list[tuple[int, int, list[tuple[str, str]]]]:
    """A list of numbered lines as Textual paints it, one of them chosen."""
    return [
        (
            0,
            y,
            [
                (f"{'>' if number == chosen else ' '} tool {number:03d}", "7" if number == chosen else ""),
                (" " * 20, ""),
            ],
        )
        for y, number in enumerate(range(first, first + count))
    ]


def fed(stream: pyte.Stream, cells: ChangedCells, frame: list[tuple[int, int, list[tuple[str, str]]]]) -> int:
    sent = painted(frame, cells)
    stream.feed(sent)
    return len(sent)


def test_a_list_that_moves_on_by_a_line_is_moved_by_the_terminal() -> None:
    cells, screen = ChangedCells(20, 12), pyte.Screen(20, 12)
    stream = pyte.Stream(screen)
    fed(stream, cells, listed(0, 9))
    for first in (1, 2, 3):
        assert fed(stream, cells, listed(first, first + 9)) < 90
        assert screen.display[0].split() == ["tool", f"{first:03d}"]
        assert screen.display[9].split() == [">", "tool", f"{first + 9:03d}"]
    for first in (2, 1, 0):
        assert fed(stream, cells, listed(first, first)) < 120
        assert screen.display[0].split() == [">", "tool", f"{first:03d}"]
        assert screen.display[9].split() == ["tool", f"{first + 9:03d}"]


scrolls = st.lists(
    st.tuples(st.integers(0, 30), st.integers(0, 9), st.integers(5, 12)), min_size=1, max_size=8
)


@given(scrolls)
def test_however_a_list_moves_the_terminal_shows_what_one_painted_anew_shows(
    steps: list[tuple[int, int, int]],
) -> None:
    cells, screen = ChangedCells(20, 12), pyte.Screen(20, 12)
    stream = pyte.Stream(screen)
    for first, chosen, count in steps:
        fed(stream, cells, listed(first, first + chosen, count))
    anew = pyte.Screen(20, 12)
    cells.forget()
    pyte.Stream(anew).feed(cells.changes())
    assert shown(screen) == shown(anew)


@given(st.lists(st.integers(-1, 1), min_size=1, max_size=25), st.integers(0, 9))
def test_a_list_walked_line_by_line_is_shown_right_at_every_step(steps: list[int], start: int) -> None:
    cells, screen = ChangedCells(20, 12), pyte.Screen(20, 12)
    stream = pyte.Stream(screen)
    first = chosen = start
    for step in steps:
        chosen = max(0, chosen + step)
        first = min(max(first, chosen - 9), chosen)
        fed(stream, cells, listed(first, chosen))
        for y in range(10):
            words = [">"] * (first + y == chosen) + ["tool", f"{first + y:03d}"]
            assert screen.display[y].split() == words


def test_a_blank_is_sent_again_only_where_its_style_can_be_seen() -> None:
    screen = ChangedCells(6, 1)
    screen.put(0, 0, [("a    b", "2")])
    screen.changes()
    screen.put(0, 0, [("a", "2"), ("    ", ""), ("b", "2")])
    assert screen.changes() == ""
    screen.put(0, 0, [("a", "2"), ("    ", "7"), ("b", "2")])
    assert screen.changes() == "\x1b[1;2H\x1b[7m    \x1b[m"
