"""The drawings on the calculator's page: beside the numbers where there is room, large by one key elsewhere."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from typing import Any

import pytest

from geometry.calculations import calculation
from library.book.model import Citation, Entry, Measure, Value
from library.calc.answer import answer
from library.units.system import METRIC
from tests.tui.view.whole_page import whole
from tui.figure.alphabet import ASCII
from tui.figure.quantity_figures import sketch_of
from tui.figure.sketch.cone import grown_of
from tui.figure.sketch.model import Path
from tui.view.calculator_page import CalculatorPage
from tui.view.figure_page import column_width, drawn_as, has_drawing, pictured, quantity_figure
from tui.view.form import Form
from tui.view.lines import text_of, width_of
from tui.view.text_line import TextLine

Program = Callable[..., AbstractAsyncContextManager[Any]]


def page(name: str = "relief-drop", rake: float | None = None, **typed: str) -> CalculatorPage:
    values = {}
    if rake is not None:
        values["rake_angle"] = Value(
            "rake_angle", usual=Measure("rake", math.radians(rake)), citation=Citation("shop")
        )
    entry = Entry("reamer", "reamer", "Hand reamer", "steel", values=values)
    form = Form(calculation(name), entry, {key: TextLine.ending(text) for key, text in typed.items()})
    form.take(answer(form.sheet, form.texts(), entry=entry, display=METRIC))
    return CalculatorPage(form, ASCII)


def clearing() -> CalculatorPage:
    return page(diameter="12", relief_angle="8", land_width="2", relief_form="eccentric")


def drawn(one: CalculatorPage, width: int, height: int, *, large: bool = False) -> str:
    lines = whole(one, width, height, large=large)
    assert len(lines) == height
    assert all(width_of(line) <= width for line in lines)
    return "\n".join(map(text_of, lines))


@pytest.mark.parametrize("width", [111, 120, 150, 200])
def test_tooth_and_plot_stand_beside_the_numbers_where_the_screen_is_wide(width: int) -> None:
    text = drawn(clearing(), width, 34)
    for words in (
        "heel",
        "19.10    0.281",
        "relief drawn",
        "drop below the circle, mm",
        "PASS",
    ):
        assert words in text


def test_the_drawings_stay_where_they_are_when_the_numbers_scroll() -> None:
    one = clearing()
    whole(one, 120, 16)
    before = [line[83:] for line in drawn(one, 120, 16).splitlines()[:10]]
    one.view.scroll(4)
    assert [line[83:] for line in drawn(one, 120, 16).splitlines()[:10]] == before


@pytest.mark.parametrize("size", [(80, 22), (60, 18), (100, 28)])
def test_large_drawings_keep_the_field_in_hand_the_answer_and_the_checks_in_sight(
    size: tuple[int, int],
) -> None:
    one = clearing()
    one.form.focus = "diameter"
    text = drawn(one, *size, large=True)
    for words in ("> Diameter", "Indicator drop at the heel 0.281 mm", "relief drawn", "drop below", "PASS"):
        assert words in text


def test_on_the_smallest_screens_large_drawings_give_way_but_nothing_breaks() -> None:
    one = clearing()
    for width in range(20, 62):
        for height in range(7, 20):
            assert len(whole(one, width, height, large=True)) == height


def test_before_there_is_an_answer_the_quantity_in_hand_is_drawn() -> None:
    empty = page()
    beside, large = drawn(empty, 120, 34), drawn(empty, 80, 22, large=True)
    for text in (beside, large):
        assert re.search(r"<[-.':|]+ diameter [-.':|]+>", text)
    assert "as soon as you have given: diameter" in large


def test_each_field_in_hand_has_its_own_picture() -> None:
    empty = page()
    seen = set()
    for key in ("diameter", "land_width", "relief_angle", "relief_form", "land_measured_as"):
        empty.form.focus = key
        seen.add(drawn(empty, 120, 34).split("Given")[0])
    assert len(seen) == 5


def test_where_there_is_nothing_to_draw_it_is_said_so_that_the_key_can_be_hidden() -> None:
    assert has_drawing(clearing().form)  # the answer
    assert has_drawing(page().form)  # the field in hand, before there is an answer
    wheel = page("wheel-speed", wheel_diameter="200", rotational_speed="3000 rpm", rated_speed="35 m/s").form
    wheel.focus = "rated_speed"
    assert not has_drawing(wheel)
    wheel.focus = "wheel_diameter"
    assert has_drawing(wheel)


def test_what_cannot_be_read_is_told_over_the_drawing_too() -> None:
    text = drawn(page(diameter="wide", relief_angle="8", land_width="2"), 80, 22, large=True)
    assert text.startswith(" FIX    Diameter")


def test_a_calculation_without_a_drawing_says_so() -> None:
    one = page("wheel-speed", wheel_diameter="200", rotational_speed="3000 rpm", rated_speed="35 m/s")
    one.form.focus = "rated_speed"
    assert "This calculation has no drawing." in drawn(one, 80, 22, large=True)


def test_where_the_answer_has_no_drawing_the_quantity_in_hand_has_its_picture_on_a_small_screen() -> None:
    one = page("feed-clearance", surface="lip", diameter="8", relief_angle="12 deg")
    one.form.focus = "relief_angle"
    text = drawn(one, 80, 20, large=True)
    assert "This calculation has no drawing." not in text
    below = text.partition("Relief of the lip, along the axis\n")[2].splitlines()
    assert sum(bool(one.strip()) for one in below[:10]) > 7


def test_the_large_drawing_tells_the_verdict_once_and_how_the_numbers_come_back() -> None:
    text = drawn(clearing(), 80, 22, large=True)
    verdict = next(one for one in text.splitlines() if one.startswith(" PASS")).removeprefix(" PASS").strip()
    assert text.count(verdict[:30]) == 1
    assert "Ctrl+G shows all again" in text
    assert "Ctrl+G" not in drawn(clearing(), 80, 22)


def test_the_rake_of_the_book_leans_the_face() -> None:
    one = page(rake=12, diameter="12", relief_angle="8", land_width="2", relief_form="eccentric")
    assert "rake 12.00 deg" in drawn(one, 120, 34)
    assert "rake" not in drawn(clearing(), 120, 34)


def test_columns_for_drawings_begin_where_both_have_room() -> None:
    assert column_width(110, 3) == 0
    assert column_width(111, 3) == 28
    assert column_width(300, 3) == 70


async def test_one_key_shows_the_drawings_and_the_same_key_the_numbers(program: Program) -> None:
    async with program() as hands:
        await hands.press(*"bro", "f2", "f2", *"drop", "space", *"at", "enter", *"5.08")
        assert "relief drawn" not in hands.shown()
        await hands.press("ctrl+g")
        before = hands.shown()
        assert "relief drawn" in before
        await hands.press("backspace", "backspace")
        assert hands.shown() != before
        assert "relief drawn" in hands.shown()
        await hands.press("ctrl+g")
        assert "relief drawn" not in hands.shown()
        assert "1/4" in hands.shown()


@pytest.mark.parametrize(
    ("key", "title"),
    [
        ("relief_angle", "Relief of the end, along the axis"),
        ("secondary_relief_angle", "Second relief of the end, along the axis"),
    ],
)
def test_the_relief_of_an_end_is_pictured_on_the_end_and_says_that_it_lies_along_the_axis(
    key: str, title: str
) -> None:
    one = page("end-teeth", diameter="20", dish_depth="0.04", relief_angle="2", secondary_relief_angle="12")
    one.form.focus = key
    assert pictured(one.form) in {"end_relief_angle", "second_end_relief_angle"}
    beside = [one.rpartition("\u2502")[2].strip() for one in drawn(one, 120, 30).splitlines()[3:5]]
    assert " ".join(beside).strip() == title


def picture_of(key: str, direction: str) -> list[str]:
    one = page(
        "back-taper", diameter="20", taper_direction=direction, back_diameter="20.5", taper_length="100"
    )
    one.form.focus = key
    return [
        text_of(row) for row in quantity_figure(drawn_as(pictured(one.form), one.form.answer), 34, 12, ASCII)
    ]


@pytest.mark.parametrize(
    "key", ["back_diameter", "taper_ratio", "taper_length", "taper_angle", "swivel_angle"]
)
def test_a_tool_that_is_larger_toward_the_back_is_drawn_so(key: str) -> None:
    smaller, larger = (picture_of(key, way) for way in ("smaller", "larger"))
    assert smaller[0].strip() == larger[0].strip()  # the same quantity by its name
    assert "a back taper" not in " ".join(larger)
    assert larger != smaller


@pytest.mark.parametrize("key", ["back_diameter", "taper_angle", "distance_from_front"])
def test_the_outline_of_a_growing_tool_is_widest_at_its_back(key: str) -> None:
    for name, grows in (key, False), (grown_of(key), True):
        found = sketch_of(name)
        assert found is not None
        outline = [at for part in found.base if isinstance(part, Path) for at in part.points if at[1] > 0]
        front, back = min(outline), max(outline)
        assert (back[1] > front[1]) is grows
