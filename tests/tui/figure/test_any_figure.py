"""Whatever numbers a figure holds and however small the room is, a drawing comes out whole or not at all."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.figure import Curve, Figure
from geometry.side_view import Mark, SideView
from library.units.system import INCH
from tui.figure.alphabet import ALPHABETS, ASCII, Alphabet
from tui.figure.profile import profile_lines
from tui.figure.side import side_lines
from tui.figure.tooth import tooth_lines
from tui.view.lines import Line, text_of, width_of

numbers = st.one_of(
    st.floats(allow_nan=False), st.floats(-2.0, 2.0), st.sampled_from([0.0, 5e-324, 1e308, -1e308])
)
places = st.tuples(numbers, numbers)
curves = st.builds(
    Curve,
    st.sampled_from(["eccentric", "flat", "gap wanted"]),
    st.lists(places, max_size=60).map(tuple),
    st.lists(numbers, max_size=4).map(tuple),
)
figures = st.builds(Figure, numbers, numbers, st.lists(curves, max_size=5).map(tuple), numbers)
likely_figures = st.builds(
    Figure,
    st.floats(0.1, 100.0),
    st.floats(1e-6, 6.5),
    st.lists(
        st.builds(
            Curve,
            st.just("flat"),
            st.lists(st.tuples(st.floats(0.0, 6.5), st.floats(-3.0, 3.0)), min_size=2, max_size=50).map(
                lambda points: tuple(sorted(points))
            ),
        ),
        max_size=5,
    ).map(tuple),
    st.floats(-1.5, 1.5),
)
views = st.builds(
    SideView,
    st.lists(places, max_size=30).map(lambda points: tuple(sorted(points))),
    st.lists(st.builds(Mark, st.just("step 1"), numbers, numbers), max_size=6).map(tuple),
    st.sampled_from(["", "lengths of the steps as an example"]),
)
alphabets = st.sampled_from(list(ALPHABETS.values()))
columns, rows = st.integers(-1, 110), st.integers(-1, 34)


def whole_or_nothing(lines: Sequence[Line], columns: int, rows: int, alphabet: Alphabet) -> None:
    if not lines:
        return
    assert len(lines) == rows
    assert all(width_of(one) <= columns for one in lines)
    assert alphabet is not ASCII or all(text_of(one).isascii() for one in lines)
    assert all(text_of(one).isprintable() for one in lines)


@given(st.one_of(figures, likely_figures), columns, rows, alphabets)
def test_any_tooth(figure: Figure, columns: int, rows: int, alphabet: Alphabet) -> None:
    lines = tooth_lines(figure, columns, rows, alphabet)
    whole_or_nothing(lines, columns, rows, alphabet)
    assert tooth_lines(figure, columns, rows, alphabet) == lines


@given(st.one_of(figures, likely_figures), columns, rows, alphabets)
def test_any_profile(figure: Figure, columns: int, rows: int, alphabet: Alphabet) -> None:
    lines = profile_lines(figure, (), INCH, columns, rows, alphabet)
    whole_or_nothing(lines, columns, rows, alphabet)
    assert profile_lines(figure, (), INCH, columns, rows, alphabet) == lines


@given(views, columns, rows, alphabets)
def test_any_side_view(view: SideView, columns: int, rows: int, alphabet: Alphabet) -> None:
    whole_or_nothing(side_lines(view, columns, rows, alphabet), columns, rows, alphabet)


@given(likely_figures, st.integers(28, 100), st.integers(6, 30), alphabets)
def test_a_tooth_of_any_likely_shape_is_drawn_at_every_size_asked_for(
    figure: Figure, columns: int, rows: int, alphabet: Alphabet
) -> None:
    assert len(tooth_lines(figure, columns, rows, alphabet)) == rows
    assert len(profile_lines(figure, (), INCH, columns, rows, alphabet)) == (rows if figure.curves else 0)


@pytest.mark.parametrize("size", [(19, 12), (40, 4), (0, 0), (-3, -3), (1, 1)])
def test_too_little_room_gives_no_lines(heel: Callable[[str], object], size: tuple[int, int]) -> None:
    figure = Figure(6.0, 0.3, (Curve("flat", ((0.0, 0.0), (0.3, 0.1))),))
    assert tooth_lines(figure, *size, ASCII) == []
    assert profile_lines(figure, (), INCH, *size, ASCII) == []
    assert side_lines(SideView(((0.0, 1.0), (2.0, 1.0))), *size, ASCII) == []
