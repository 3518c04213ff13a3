"""Entries are marked in the list and set side by side; what differs is marked by a sign."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from library.book.model import Book, Citation, Entry, Family, Measure, Value
from library.pages.columns import body_lines, columns, heading_lines
from library.pages.comparison import side_by_side
from library.pages.reader import Reader, text_of
from tui.main import main

pytestmark = pytest.mark.depth
"""It takes long, and the server runs it."""

Program = Callable[[], AbstractAsyncContextManager[Any]]


def entry(name: str, title: str, **usual: str) -> Entry:
    values = {
        key: Value(key, usual=Measure(text, float(text.split()[0])), citation=Citation("shop"))
        for key, text in usual.items()
    }
    return Entry(name, "tap", title, "brass", values=values)


BOOK = Book({}, families={"tap": Family("tap", "Taps")})
THREE = (
    entry("a", "Tap A", rake_angle="5 deg", chamfer_relief_angle="4 deg"),
    entry("b", "Tap B", rake_angle="5 deg"),
    entry(
        "c",
        "Tap with a title that is far too long for its column",
        rake_angle="6 deg",
        chamfer_relief_angle="4 deg",
    ),
)


def texts(
    width: int = 80, first: int = 0, sources: bool = False, entries: tuple[Entry, ...] = THREE
) -> list[str]:
    shown = columns(width, len(entries), first)
    block = side_by_side(BOOK, entries, sources=sources)
    return [" ".join(text_of(one).split()) for one in body_lines(block, shown, Reader(width))]


def test_a_line_that_differs_has_a_star_and_one_that_does_not_an_equals_sign() -> None:
    lines = texts()
    assert "= Family Taps Taps Taps" in lines
    assert "= Work material brass brass brass" in lines
    assert "* Rake angle 5 deg P 5 deg P 6 deg P" in lines
    assert "* Chamfer relief 4 deg P - 4 deg P" in lines
    assert "= Rake angle 5 deg P 5 deg P" in texts(entries=THREE[:2])


def test_sources_stand_below_with_the_number_of_their_entry() -> None:
    lines = texts(sources=True)
    at = lines.index("* Chamfer relief 4 deg P - 4 deg P")
    assert lines[at + 1 : at + 3] == ["1 Source: this shop", "3 Source: this shop"]
    assert not [line for line in texts() if "Source" in line]


def test_a_narrow_screen_shows_some_of_them_and_the_arrows_the_others() -> None:
    assert columns(59, 3, 0).count == 2
    assert "* Rake angle 5 deg P 5 deg P" in texts(59)
    assert "* Rake angle 5 deg P 6 deg P" in texts(59, first=1)
    shown = "\n".join(
        text_of(one) for one in heading_lines(side_by_side(BOOK, THREE), columns(59, 3, 1), Reader(59))
    )
    assert "2 Tap B" in shown
    assert "1 Tap A" not in shown


@given(st.integers(30, 200), st.integers(2, 6), st.integers(0, 9), st.booleans())
def test_every_line_fits_and_every_entry_comes_into_sight(
    width: int, count: int, first: int, sources: bool
) -> None:
    entries = [entry(str(n), f"Tap number {n}", rake_angle="5 deg") for n in range(count)]
    shown = columns(width, count, first)
    assert 1 <= shown.count <= count
    assert 0 <= shown.first <= count - shown.count
    block, reader = side_by_side(BOOK, entries, sources=sources), Reader(width)
    lines = [*heading_lines(block, shown, reader), *body_lines(block, shown, reader)]
    assert all(len(text_of(one)) <= width for one in lines)
    seen = {
        n
        for start in range(count)
        for n in range(columns(width, count, start).first, columns(width, count, start).first + shown.count)
    }
    assert seen == set(range(count))


async def test_two_marked_entries_are_set_side_by_side(program: Program) -> None:
    async with program() as hands:
        shown = await hands.press("ctrl+t")
        assert " *Tap          Spiral-point tap" in shown
        assert "1 marked" in shown
        assert "Marked: Spiral-point tap. The next one is chosen now." in shown
        shown = await hands.press("ctrl+t")
        assert "2 marked" in shown
        shown = await hands.press("ctrl+k")
        lines = [" ".join(line.split()) for line in shown.splitlines()]
        assert lines[0].startswith("Side by side: 2 entries")
        assert "1 Spiral-point tap 2 Tap for brass" in lines
        assert "* Rake angle 5 deg (3 deg to 8 deg) - -" in lines
        assert "* Chamfer relief - 3 deg P ?" in lines
        assert "Handbook" not in shown
        assert "Handbook of the Tool Room" in (await hands.menu("sources"))
        assert "Handbook" not in await hands.menu("sources")
        assert "2 marked" in await hands.press("f9")


async def test_one_mark_is_set_beside_the_chosen_entry_and_marks_outlive_the_find_line(
    program: Program,
) -> None:
    async with program() as hands:
        await hands.type("spiral")
        await hands.press("ctrl+t", "ctrl+u")
        await hands.type("bronze")
        assert "1 Spiral-point tap 2 Tap for bronze" in " ".join((await hands.press("ctrl+k")).split())


@pytest.mark.parametrize("marks", [0, 1])
async def test_too_few_marks_say_what_to_do(program: Program, marks: int) -> None:
    async with program() as hands:
        await hands.type("spiral")
        await hands.press(*["ctrl+t"] * marks)
        shown = await hands.press("ctrl+k")
        assert "Mark two entries or more with Ctrl+T; then Ctrl+K shows them side by side." in shown


async def test_marks_are_taken_away_one_by_one_or_all_at_once(program: Program) -> None:
    async with program() as hands:
        await hands.press("ctrl+t", "ctrl+t", "up", "ctrl+t")
        assert "1 marked" in hands.shown()
        await hands.press("ctrl+u", "escape")
        assert "1 marked" in hands.shown()
        await hands.press("down", "ctrl+t")
        assert "2 marked" in hands.shown()
        shown = await hands.menu("marks")
        assert "The marks of 2 entries are taken away; Ctrl+T marks the chosen one again." in shown
        assert "marked" not in shown


async def test_what_is_compared_follows_the_book(program: Program, shop: Any) -> None:
    async with program() as hands:
        await hands.press("down", "ctrl+t", "ctrl+t", "ctrl+k")
        file = shop / "taps.toml"
        file.write_text(file.read_text().replace("'4 deg'", "'9 deg'"))
        hands.app.file_watch.look()
        await hands.settle()
        assert "9 deg" in hands.shown()
        file.write_text("schema = 1\n")
        hands.app.file_watch.look()
        await hands.settle()
        assert hands.app.screen.WHERE == "book"


def test_the_plain_command_marks_what_differs_with_the_same_signs(
    shop: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["--library", str(shop), "compare", "bronze-tap", "brass-tap"]) == 0
    lines = [" ".join(line.split()) for line in capsys.readouterr().out.splitlines()]
    assert "* Chamfer relief 4 deg P 3 deg P ?" in lines
    assert main(["--library", str(shop), "compare", "bronze-tap", "bronze-tap"]) == 0
    assert "= Chamfer relief 4 deg P 4 deg P" in [
        " ".join(line.split()) for line in capsys.readouterr().out.splitlines()
    ]
