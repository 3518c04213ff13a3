"""The pictures of quantities: each marks what is asked for, in every alphabet and size, or says why it has none."""

from __future__ import annotations

import math

import pytest

from geometry.quantities import QUANTITIES
from tests.each import each
from tui.figure.alphabet import ALPHABETS, ASCII, BRAILLE, Alphabet
from tui.figure.quantity_figures import FIGURES, NOTHING, SMALL, has_picture, picture_lines, sketch_of
from tui.figure.sketch.drawing import sketch_lines
from tui.figure.sketch.model import Arrow, Bow, Measure, Name, Part, Path, Sketch
from tui.view.lines import text_of, width_of

DRAWN = [key for key in QUANTITIES if key not in NOTHING]
every_alphabet = pytest.mark.parametrize("alphabet", ALPHABETS.values(), ids=lambda one: one.name)


def sketch(key: str) -> Sketch:
    found = sketch_of(key)
    assert found is not None
    return found


def test_every_quantity_has_a_picture_or_a_reason_why_not() -> None:
    for key in QUANTITIES:
        if key in NOTHING:
            assert sketch_of(key) is None
            assert not has_picture(key)
            assert len(NOTHING[key].split()) >= 5, f"{key}: a reason is a few words"
        else:
            assert sketch(key).base, f"{key} has nothing to mark"
            assert sketch(key).marks, f"{key} marks nothing"
    assert set(NOTHING) <= set(QUANTITIES)
    assert len(NOTHING) <= 12


def without_names(parts: tuple[Part, ...]) -> tuple[object, ...]:
    """What the marks are but for their words, so that no picture differs by a word alone."""
    return tuple(
        one.points
        if isinstance(one, Path)
        else (one.start, one.end)
        if isinstance(one, Measure | Arrow)
        else (one.centre, one.radius, one.start, one.end)
        if isinstance(one, Bow)
        else one.at
        for one in parts
    )


def test_no_two_quantities_are_marked_alike() -> None:
    found: dict[object, str] = {}
    for key in DRAWN:
        one = sketch(key)
        marked = (without_names(one.base), without_names(one.marks))
        assert marked not in found, f"{key} is drawn as {found.get(marked)}"
        found[marked] = key


@every_alphabet
def test_no_two_pictures_look_alike_even_without_their_names(alphabet: Alphabet) -> None:
    drawn: dict[str, str] = {}
    for key in DRAWN:
        text = "\n".join(map(text_of, picture_lines(key, *SMALL, alphabet)))
        assert text.strip()
        assert text not in drawn, f"{key} looks like {drawn.get(text)}"
        drawn[text] = key


@every_alphabet
@pytest.mark.parametrize("size", [SMALL, (24, 7), (100, 30)])
def test_every_picture_fits_its_room_in_every_alphabet(alphabet: Alphabet, size: tuple[int, int]) -> None:
    for key in DRAWN:
        lines = picture_lines(key, *size, alphabet)
        assert len(lines) == size[1], key
        assert all(width_of(one) == size[0] for one in lines), key
        assert alphabet is not ASCII or all(text_of(one).isascii() for one in lines), key


@pytest.mark.parametrize("size", [SMALL, (37, 12), (78, 16)])
def test_every_name_in_a_picture_is_whole(size: tuple[int, int]) -> None:
    for key in DRAWN:
        text = "\n".join(map(text_of, picture_lines(key, *size, ASCII)))
        for one in sketch(key).marks:
            if not isinstance(one, Path) and one.text:
                assert one.text in text, f"{one.text!r} of {key} is cut in\n{text}"


def test_no_room_gives_no_picture() -> None:
    assert picture_lines("diameter", 23, 9, ASCII) == picture_lines("diameter", 40, 5, ASCII) == []
    assert picture_lines("rated_speed", 80, 24, ASCII) == []


@each("key", FIGURES)
def test_a_small_picture_is_plain_and_of_a_quantity_of_the_book(key: str) -> None:
    assert key in QUANTITIES
    lines = FIGURES[key]
    assert len(lines) <= SMALL[1]
    assert all(len(line) <= SMALL[0] and line.isascii() and line.isprintable() for line in lines)
    assert all(line == line.rstrip() for line in lines)


@every_alphabet
def test_what_is_asked_for_stands_out_without_colour(alphabet: Alphabet) -> None:
    way = ((0.0, 0.0), (10.0, 5.0))
    thin, thick = (
        {sign for one in sketch_lines(drawn, 40, 9, alphabet) for sign in text_of(one)}
        for drawn in (Sketch((Path(way),), ()), Sketch((), (Path(way, "part"),)))
    )
    assert thick - thin
    assert alphabet is BRAILLE or not (thick & thin) - {" "}


def marks_of(key: str, kind: type[Part]) -> list[Part]:
    return [one for one in sketch(key).marks if isinstance(one, kind)]


def test_a_diameter_is_marked_through_the_axis_and_an_angle_as_large_as_it_is_named() -> None:
    (whole,) = marks_of("point_angle", Bow)
    (half,) = marks_of("half_point_angle", Bow)
    assert isinstance(whole, Bow)
    assert isinstance(half, Bow)
    assert abs(whole.end - whole.start) == pytest.approx(2 * abs(half.end - half.start))
    for key in (
        "diameter",
        "least_diameter",
        "diameter_after",
        "wheel_diameter",
        "body_diameter",
        "hole_diameter",
    ):
        (across,) = marks_of(key, Measure)
        assert isinstance(across, Measure)
        assert (across.start[0] + across.end[0], across.start[1], across.end[1]) == (0.0, 0.0, 0.0)


def test_the_face_of_a_rake_above_zero_leans_back_under_its_tooth() -> None:
    # Derived: the tool turns to the left, so that its tooth lies at the right of the face; the radius to the edge
    # comes from the axis at the left of the plane of the face.
    (offset,) = marks_of("face_offset", Measure)
    assert isinstance(offset, Measure)
    assert offset.end[0] > offset.start[0] == 0.0
    (rake,) = marks_of("rake_angle", Bow)
    assert isinstance(rake, Bow)
    assert math.hypot(*rake.centre) == pytest.approx(10.0)  # the edge lies on the circle
    assert rake.centre[0] == pytest.approx(offset.end[0])
    assert math.sin(math.radians(abs(rake.end - rake.start))) == pytest.approx(offset.end[0] / 10.0)


def test_the_two_heights_show_the_sides_that_the_words_say() -> None:
    assert "above" in QUANTITIES["wheel_head_height"].definition
    names = {one.text: one.at for one in sketch("wheel_head_height").base if isinstance(one, Name)}
    (height,) = marks_of("wheel_head_height", Measure)
    assert isinstance(height, Measure)
    assert height.end[1] > height.start[1] == 0.0  # from the axis of the tool up to that of the wheel
    assert names["wheel"][0] < names["edge"][0]
    assert "below" in QUANTITIES["tooth_rest_height"].definition
    (below,) = marks_of("tooth_rest_height", Measure)
    assert isinstance(below, Measure)
    assert below.start[1] < below.end[1] == 0.0  # from the rest up to the axis of the tool


def test_behind_the_edge_the_land_lies_on_the_side_on_which_it_has_relief() -> None:
    # Derived. The wheel is on the left of the tool. A straight wheel whose axis stands above has a tangent at the edge
    # that leans to the tool going up: above the edge the land is inside the circle, below it the metal would stand out.
    radius, relief, step = 6.0, math.radians(8), 0.5
    head_up = (-radius + step * math.sin(relief), step * math.cos(relief))
    head_down = (-radius - step * math.sin(relief), -step * math.cos(relief))
    assert math.hypot(*head_up) < radius < math.hypot(*head_down)
    for key in ("wheel_head_height", "tooth_rest_height"):
        assert "land" in QUANTITIES[key].definition
        assert "above" in QUANTITIES[key].definition
