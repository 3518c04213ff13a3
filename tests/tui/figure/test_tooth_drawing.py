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
from geometry.evaluate import forget, run
from geometry.figure import Curve, Figure
from tests.each import each
from tui.figure.alphabet import ALPHABETS, ASCII, BLOCKS, BRAILLE, Alphabet
from tui.figure.frame import TIMES, Frame, foot_of_face, foot_of_radius, frame_for
from tui.figure.shape import shape_of
from tui.figure.tooth import tooth_lines
from tui.view.lines import Line, text_of

Heel = Callable[[str], Result]
every_alphabet = each("alphabet", ALPHABETS.values(), lambda one: one.name)
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


@pytest.mark.parametrize(("alphabet", "solid"), [(ASCII, "^"), (BLOCKS, "▒"), (BRAILLE, "⣿")])
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
    assert "-- eccentric" in text
    assert "o flat" in text
    body = text.split("relief drawn")[0]
    assert body.count("o") > 6


def test_corners_of_facets_are_marked_and_facets_numbered_as_in_the_table(facets: Result) -> None:
    text = drawing(facets.figure, 80, 24)
    assert len(facets.rows) == 3
    assert text.count("+") == 2
    body = text.rsplit("relief drawn", 1)[0]
    assert [number for number in "123" if number in body] == ["1", "2", "3"]


def test_the_old_body_is_named_only_where_it_lies_on_the_sheet(facets: Result) -> None:
    assert facets.figure is not None
    text = drawing(facets.figure, 44, 13)
    assert "gap wanted" in text
    assert "old body" in text  # a millimetre outside the circle, drawn to scale
    narrow = Figure(
        6.0, 0.35, (Curve("flat", ((0.0, 0.0), (0.35, 0.1))), Curve("far", ((0.0, -3.0), (0.35, -3.0))))
    )
    assert "far" not in drawing(narrow, 44, 13)


@given(st.floats(1e-4, 2.0), st.floats(0.05, 3.0), st.integers(28, 100), st.integers(6, 30))
def test_the_stated_exaggeration_is_the_one_drawn(drop: float, land: float, columns: int, rows: int) -> None:
    figure = Figure(6.0, land, (Curve("cam", ((0.0, 0.0), (land, drop))),))
    frame = framed(figure, columns, rows)
    assert frame.times in TIMES
    on_circle, heel = frame.place(land), frame.place(land, drop / 6.0)
    # Derived: the radius to the heel leans by half the land; across it is drawn true, and down so many times.
    across, down = drop * math.sin(land / 2), drop * math.cos(land / 2) * frame.times
    assert (on_circle[0] - heel[0]) / frame.scale * 6.0 == pytest.approx(across)
    assert (heel[1] - on_circle[1]) / frame.scale * 6.0 == pytest.approx(down)
    stated = re.search(r"relief drawn (?:(\d+) times|true to size)", drawing(figure, columns, max(rows, 8)))
    assert stated


@given(st.floats(1.0, 15.0), st.integers(28, 100), st.integers(8, 30))
def test_the_heel_of_a_narrow_land_is_drawn_low_enough_to_be_seen(
    relief: float, columns: int, rows: int
) -> None:
    drop = 0.35 * math.tan(math.radians(relief))  # an even cam, in radii
    figure = Figure(6.0, 0.35, (Curve("cam", ((0.0, 0.0), (0.35, 6.0 * drop))),))
    frame = framed(figure, columns, rows)
    fall = math.dist(frame.place(0.35), frame.place(0.35, drop))
    assert fall >= 2 / 3  # a third of a row, the least that any alphabet shows
    assert frame.place(0.35, drop)[1] < 2 * rows


def framed(figure: Figure, columns: int, rows: int) -> Frame:
    shape = shape_of(figure)
    assert shape is not None
    return frame_for(shape, columns, rows, 5)


@given(st.floats(0.5, 25.0), st.floats(5.0, 170.0), st.integers(28, 120), st.integers(8, 40))
def test_a_flat_is_a_straight_line_at_every_land_and_exaggeration(
    relief: float, land: float, columns: int, rows: int
) -> None:
    # Derived: on the tool the flat is the straight line x cos a + y sin a = const, so its drop is R - R cos a / cos(t - a).
    leans, turned = math.radians(relief), math.radians(min(land, relief + 70))
    points = [(turned * n / 40, 1 - math.cos(leans) / math.cos(turned * n / 40 - leans)) for n in range(41)]
    frame = framed(Figure(1.0, turned, (Curve("flat", tuple(points)),)), columns, rows)
    (x1, y1), *between, (x2, y2) = [frame.place(*point) for point in points]
    for x, y in between:
        off = abs((x2 - x1) * (y - y1) - (y2 - y1) * (x - x1)) / math.hypot(x2 - x1, y2 - y1)
        assert off < 1e-6


def strokes_between(text: str, first: int, last: int) -> list[tuple[int, int]]:
    """The dots of braille between two columns, numbered across and down."""
    places = ((0, 0), (0, 1), (0, 2), (1, 0), (1, 1), (1, 2), (0, 3), (1, 3))
    return [
        (2 * column + places[bit][0], 4 * row + places[bit][1])
        for row, one in enumerate(text.splitlines())
        for column, sign in enumerate(one[:last])
        if column >= first and 0x2800 < ord(sign) <= 0x28FF
        for bit in range(8)
        if ord(sign) - 0x2800 >> bit & 1
    ]


@pytest.mark.parametrize(("columns", "rows"), [(40, 14), (60, 20), (118, 30)])
def test_a_flat_of_60_degrees_lies_on_its_chord_to_within_a_dot_and_is_to_scale(
    columns: int, rows: int
) -> None:
    # Derived: at 30 degrees of relief a flat over 60 degrees is the chord itself, level on the sheet.
    leans, turned = math.radians(30), math.radians(60)
    points = tuple(
        (turned * n / 48, 6 - 6 * math.cos(leans) / math.cos(turned * n / 48 - leans)) for n in range(49)
    )
    text = drawing(Figure(6.0, turned, (Curve("flat", points),)), columns, rows, BRAILLE)
    assert "relief drawn true to size" in text
    lines = text.splitlines()
    edge = next(row for row, one in enumerate(lines) if "heel" in one)
    row = max(
        range(len(lines)),
        key=lambda n: sum(0x2800 < ord(sign) <= 0x28FF for sign in lines[n][10 : columns - 12]),
    )
    assert abs(row - edge) <= 1
    heights = {y for _, y in strokes_between(lines[row], 12, columns - 12)}
    assert max(heights) - min(heights) <= 1


@every_alphabet
@every_size
def test_nothing_is_filled_or_hatched_where_the_heel_clears(
    heel: Heel, alphabet: Alphabet, columns: int, rows: int
) -> None:
    figure = heel("eccentric").figure
    assert figure is not None
    lines = tooth_lines(figure, columns, rows, alphabet)
    assert not any(piece.role == "warn" for one in lines for piece in one)
    text = "\n".join(text_of(one) for one in lines)
    assert not any(sign in text for sign in ("░", "▒", "/", "^", "⣿"))


@pytest.mark.parametrize("land", [2.0, 2.6, 4.0, 6.28])
@pytest.mark.parametrize("relief", [4.0, 8.0])
@every_alphabet
def test_the_filled_part_begins_where_the_contour_leaves_the_circle(
    land: float, relief: float, alphabet: Alphabet
) -> None:
    # Derived: a flat that leaves the circle at the angle a is back on it 2 a behind the edge.
    turned, leans = land / 6, math.radians(relief)
    points = tuple(
        (turned * n / 48, 6 - 6 * math.cos(leans) / math.cos(turned * n / 48 - leans)) for n in range(49)
    )
    figure = Figure(6.0, turned, (Curve("flat", points),))
    lines = tooth_lines(figure, 80, 24, alphabet)[:-3]
    filled = [column for one in lines for column in columns_in_role(one, "warn")]
    shape = shape_of(figure)
    assert shape is not None
    frame = frame_for(shape, 80, 24 - len(tooth_lines(figure, 80, 24, alphabet)[21:]), 6, 2)
    leaves, ends = frame.place(2 * leans)[0], frame.place(*shape.outlines[0].points[-1])[0]
    assert min(filled) == pytest.approx(leaves, abs=1.6)
    assert max(filled) == pytest.approx(ends, abs=1.6)


def columns_in_role(one: Line, role: str) -> list[int]:
    found: list[int] = []
    column = 0
    for piece in one:
        if piece.role == role:
            found += range(column, column + len(piece.text))
        column += len(piece.text)
    return found


@given(st.floats(-0.5, 0.6), st.floats(0.1, 2.5), st.integers(34, 120), st.integers(9, 36))
def test_the_face_leans_from_the_radius_by_the_rake_itself(
    rake: float, land: float, columns: int, rows: int
) -> None:
    figure = Figure(6.0, land, (Curve("cam", ((0.0, 0.0), (land, 0.1 * land))),), rake)
    shape = shape_of(figure)
    assert shape is not None
    frame = frame_for(shape, columns, rows, 6)
    edge = frame.place(0.0)
    leaning = [
        math.atan2(foot[0] - edge[0], foot[1] - edge[1])
        for foot in (foot_of_face(frame, shape), foot_of_radius(frame))
    ]
    assert leaning[0] - leaning[1] == pytest.approx(rake)
    assert leaning[1] == pytest.approx(land / 2)  # the middle of the land is on top


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
    first = heel("flat").figure
    forget()
    again = heel("flat").figure
    assert first is not again
    assert drawing(first, 40, 12, alphabet) == drawing(again, 40, 12, alphabet)


def test_a_figure_for_the_face_alone_says_its_rake_and_that_the_land_is_an_example() -> None:
    text = drawing(
        run(calculation("face-offset"), {"diameter": 12.0, "rake_angle": math.radians(10)}).figure, 44, 14
    )
    assert "rake 10.00 deg" in text
    assert "land as an example" in text
    assert "relief" not in text
