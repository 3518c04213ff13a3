"""The drawing of a tooth: its words, its stated exaggeration, its marks, readable in every alphabet."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Result
from geometry.calculations import calculation
from geometry.evaluate import run
from geometry.figure import Curve, Figure
from tui.figure.alphabet import ALPHABETS, ASCII, BLOCKS, BRAILLE, Alphabet
from tui.figure.frame import TIMES, foot_of_face, frame_for
from tui.figure.shape import shape_of
from tui.figure.tooth import tooth_lines
from tui.view.lines import text_of

Heel = Callable[[str], Result]
every_alphabet = pytest.mark.parametrize("alphabet", ALPHABETS.values(), ids=lambda one: one.name)
every_size = pytest.mark.parametrize(
    ("columns", "rows"), [(28, 9), (34, 10), (39, 10), (40, 12), (60, 16), (80, 20), (100, 30)]
)


def drawing(figure: Figure | None, columns: int, rows: int, alphabet: Alphabet = ASCII) -> str:
    assert figure is not None
    return "\n".join(text_of(one) for one in tooth_lines(figure, columns, rows, alphabet))


@every_alphabet
@every_size
@pytest.mark.parametrize("form", ["eccentric", "flat"])
def test_edge_heel_face_and_exaggeration_are_named_at_every_size(
    heel: Heel, alphabet: Alphabet, columns: int, rows: int, form: str
) -> None:
    text = drawing(heel(form).figure, columns, rows, alphabet)
    for word in ("edge", "heel", "face", "relief drawn", form):
        assert word in text, f"{word} is missing in\n{text}"


@every_alphabet
@every_size
def test_only_a_heel_outside_the_circle_is_called_proud(
    heel: Heel, alphabet: Alphabet, columns: int, rows: int
) -> None:
    assert "PROUD" in drawing(heel("flat").figure, columns, rows, alphabet)
    assert "PROUD" not in drawing(heel("eccentric").figure, columns, rows, alphabet).upper()


@pytest.mark.parametrize(("alphabet", "solid"), [(ASCII, "^"), (BLOCKS, "██"), (BRAILLE, "⣿")])
def test_metal_outside_the_circle_has_a_character_of_its_own(
    heel: Heel, alphabet: Alphabet, solid: str
) -> None:
    assert drawing(heel("flat").figure, 40, 13, alphabet).count(solid) >= 3
    assert solid not in drawing(heel("eccentric").figure, 40, 13, alphabet)


def test_the_edge_is_at_the_left_and_the_heel_at_the_right(heel: Heel) -> None:
    rows = drawing(heel("eccentric").figure, 60, 16).splitlines()
    edge = next(row.index("edge") for row in rows if "edge" in row)
    assert edge < next(row.index("heel") for row in rows if "heel" in row)


def test_flat_and_eccentric_stand_in_one_drawing_with_their_own_letters(heel: Heel) -> None:
    text = drawing(heel("eccentric").figure, 40, 13)
    assert "// eccentric" in text
    assert "o flat" in text
    assert text.count("o") > 10


def test_corners_of_facets_are_marked_and_facets_numbered_as_in_the_table(facets: Result) -> None:
    text = drawing(facets.figure, 80, 24)
    assert len(facets.rows) == 3
    assert text.count("+") == 2
    body = text.rsplit("relief drawn", 1)[0]
    assert [number for number in "123" if number in body] == ["1", "2", "3"]


def test_the_old_body_is_named_only_where_it_lies_on_the_sheet(facets: Result) -> None:
    text = drawing(facets.figure, 44, 13)
    assert "gap wanted" in text
    assert "old body" not in text  # a millimetre outside at three times is off the sheet


@given(st.floats(1e-4, 2.0), st.floats(0.05, 3.0), st.integers(28, 100), st.integers(6, 30))
def test_the_stated_exaggeration_is_the_one_drawn(drop: float, land: float, columns: int, rows: int) -> None:
    figure = Figure(6.0, land, (Curve("cam", ((0.0, 0.0), (land, drop))),))
    shape = shape_of(figure)
    assert shape is not None
    frame = frame_for(shape, columns, rows, 5)
    assert frame.times in TIMES
    on_circle, heel = frame.place(land), frame.place(land, drop / 6.0)
    drawn = math.dist(on_circle, heel) / frame.scale * 6.0
    assert drawn == pytest.approx(min(frame.times * drop, 6.0))
    stated = re.search(r"relief drawn (?:(\d+) times|true to size)", drawing(figure, columns, max(rows, 8)))
    assert stated


@given(st.floats(1e-3, 0.5), st.integers(28, 100), st.integers(8, 30))
def test_the_heel_of_a_narrow_land_is_drawn_low_enough_to_be_seen(
    drop: float, columns: int, rows: int
) -> None:
    figure = Figure(6.0, 0.35, (Curve("cam", ((0.0, 0.0), (0.35, drop))),))
    shape = shape_of(figure)
    assert shape is not None
    frame = frame_for(shape, columns, rows, 5)
    fall = math.dist(frame.place(0.35), frame.place(0.35, drop / 6.0))
    assert fall >= min(2.0, rows / 6)  # a cell is two high
    assert frame.place(0.35, drop / 6.0)[1] < 2 * rows


def test_no_relief_is_said_in_words() -> None:
    figure = Figure(6.0, 0.3, (Curve("flat", ((0.0, 0.0), (0.3, 0.0))),))
    assert "no relief to draw" in drawing(figure, 40, 12)


def test_a_relief_too_large_to_exaggerate_is_drawn_true_to_size() -> None:
    figure = Figure(6.0, 1.0, (Curve("cam", ((0.0, 0.0), (1.0, 4.0))),))
    assert "true to size" in drawing(figure, 40, 12)


@given(st.floats(0.02, 0.6))
def test_the_face_leans_under_the_land_for_a_positive_rake_and_forward_for_a_negative(rake: float) -> None:
    figure = Figure(6.0, 1.3, (Curve("cam", ((0.0, 0.0), (1.3, 0.2))),))
    feet = []
    for leaning in (rake, 0.0, -rake):
        shape = shape_of(replace(figure, rake_angle=leaning))
        assert shape is not None
        feet.append(foot_of_face(frame_for(shape, 60, 20, 6), shape)[0])
    assert feet == sorted(feet, reverse=True)
    assert feet[0] > feet[1] > feet[2]


@every_alphabet
def test_the_same_figure_gives_the_same_text(heel: Heel, alphabet: Alphabet) -> None:
    first, again = heel("flat").figure, heel("flat").figure
    assert first is not again
    assert drawing(first, 40, 12, alphabet) == drawing(again, 40, 12, alphabet)


def test_a_figure_for_the_face_alone_says_its_rake_and_that_the_land_is_an_example() -> None:
    text = drawing(
        run(calculation("face-offset"), {"diameter": 12.0, "rake_angle": math.radians(10)}).figure, 44, 14
    )
    assert "rake 10.00 deg" in text
    assert "land as an example" in text
    assert "relief" not in text
