"""A window over a long list: the chosen line is always in it."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from tui.view.viewport import Viewport

moves = st.lists(
    st.one_of(
        st.tuples(st.just("move"), st.integers(-50, 50)),
        st.tuples(st.just("page"), st.integers(-3, 3)),
        st.tuples(st.just("choose"), st.integers(-5, 200)),
        st.tuples(st.just("height"), st.integers(-1, 60)),
        st.tuples(st.just("count"), st.integers(0, 150)),
    ),
    max_size=25,
)


@given(moves)
def test_the_chosen_line_is_in_sight_after_every_step(steps: list[tuple[str, int]]) -> None:
    view = Viewport(100, 10)
    for what, number in steps:
        match what:
            case "move":
                view.move(number)
            case "page":
                view.page(number)
            case "choose":
                view.choose(number)
            case "height":
                view.resize(view.count, number)
            case _:
                view.resize(number, view.height)
        assert 0 <= view.chosen < max(view.count, 1)
        assert view.top <= view.chosen < view.top + view.height
        assert 0 <= view.top <= max(view.count - view.height, 0)


@given(st.integers(0, 200), st.integers(1, 60), st.integers(-300, 300))
def test_scrolling_stops_at_both_ends(count: int, height: int, by: int) -> None:
    view = Viewport(count, height)
    view.scroll(by)
    assert 0 <= view.top <= max(count - height, 0)
    assert view.below() == max(0, count - view.top - height)


@given(st.integers(1, 200), st.integers(1, 60), st.integers(0, 300), st.integers(0, 200))
def test_a_part_that_was_scrolled_to_stays_until_the_height_changes(
    count: int, height: int, by: int, chosen: int
) -> None:
    view = Viewport(count, height)
    view.choose(chosen)
    view.scroll(by)
    top = view.top
    view.refit(count, height)
    assert view.top == top
    view.refit(count, height + 1)
    assert view.top <= view.chosen < view.top + view.height
