"""The list of problems lays out only what is in sight, so that ten thousand of them are as quick as ten."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from library.book.model import Book
from library.issue import Issue, Place
from tui.screens.findings import FindingsScreen
from tui.session import Session
from tui.view.lines import Line, text_of, wrap

MANY = 10_000
HEIGHT = 20


def _screen(count: int) -> FindingsScreen:
    issues = tuple(
        Issue(f"odd-{number}", "rake_angle", "error", "It has no unit. " * (1 + number % 3), "Write it.", Place(Path("a.toml"), number + 1))
        for number in range(count)
    )  # fmt: skip
    return FindingsScreen(Session(book=Book({}, findings=issues)))


def _shown(screen: FindingsScreen, height: int = HEIGHT) -> list[str]:
    return [text_of(one) for one in screen.body(60, height)]


def _chosen(lines: list[str]) -> list[str]:
    return [one for one in lines if one.startswith("> ")]


def test_a_key_lays_out_no_more_than_a_few_screenfuls(monkeypatch: pytest.MonkeyPatch) -> None:
    screen, calls = _screen(MANY), 0

    def counted(*args: Any, **more: Any) -> list[Line]:
        nonlocal calls
        calls += 1
        return wrap(*args, **more)

    monkeypatch.setattr("tui.screens.findings.wrap", counted)
    for act in (
        screen.do_down,
        screen.do_last,
        screen.do_up,
        screen.do_page_up,
        screen.do_first,
        screen.do_page_down,
    ):
        before = calls
        act()
        assert _chosen(_shown(screen)) or act in (screen.do_page_up, screen.do_page_down)
        assert calls - before < 6 * HEIGHT, act.__name__


def test_each_problem_comes_into_sight_whole_when_it_is_chosen() -> None:
    screen = _screen(40)
    for turn in (screen.do_down, screen.do_up):
        for step in range(40):
            number = step if turn == screen.do_down else 39 - step
            lines = _shown(screen)
            assert _chosen(lines) == [f"> ERROR  odd-{number}.rake_angle"]
            assert f"a.toml, line {number + 1}, column 1" in "\n".join(lines)
            turn()


@pytest.mark.parametrize("count", [1, 3, 40])
def test_paging_down_and_up_shows_every_line_once_and_stops_at_the_ends(count: int) -> None:
    screen = _screen(count)
    first = _shown(screen)
    seen = [*first[:-1]]
    while "more problem" in (edge := _shown(screen)[-1]):
        assert "PgDn" in edge
        screen.do_page_down()
        seen += _shown(screen)[:-1]
    told = {one.strip() for one in seen if "line" in one and "column" in one}
    assert told == {f"a.toml, line {number + 1}, column 1" for number in range(count)}
    at_the_end = _shown(screen)
    screen.do_page_down()
    assert _shown(screen) == at_the_end
    for _ in range(count):
        screen.do_page_up()
        _shown(screen)
    assert _shown(screen) == first


def test_a_screen_lower_than_one_problem_shows_its_head() -> None:
    screen = _screen(5)
    screen.do_last()
    assert _chosen(_shown(screen, 3)) == ["> ERROR  odd-4.rake_angle"]
