"""Help explains what is in front of the reader, and shows it."""

from __future__ import annotations

import re
from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from dataclasses import replace
from typing import Any

import pytest

from geometry.quantities import quantity
from library.book.model import Book, Entry
from library.book.rows import Row, Rows
from tests.each import each
from tui.actions import on_screen
from tui.figure.quantity_figures import FIGURES
from tui.keys import keymap
from tui.view.help_page import ABOUT, explained, help_lines
from tui.view.lines import text_of, width_of

Program = Callable[..., AbstractAsyncContextManager[Any]]


@pytest.mark.parametrize("width", [39, 59, 72, 79, 119])
@each("key", FIGURES)
def test_a_quantity_is_explained_with_its_drawing_within_the_width(key: str, width: int) -> None:
    lines = explained(quantity(key), width)
    text = "\n".join(map(text_of, lines))
    assert text.split("\n")[0].strip().startswith(quantity(key).title[:28])
    assert all(drawn in text for drawn in FIGURES[key])
    assert all(width_of(line) <= width for line in lines)


def test_on_a_very_narrow_screen_the_words_stand_alone() -> None:
    text = "\n".join(map(text_of, explained(quantity("land_width"), 30)))
    assert "cutting edge" in text
    assert FIGURES["land_width"][0] not in text


def test_a_text_of_the_help_names_only_what_its_screen_can_do_by_the_keys_in_force() -> None:
    keys = keymap({"calculate": ("f12",), "back": ("f2",)})
    assert not keys.problems
    for where, about in ABOUT.items():
        named = set(re.findall(r"\{([a-z-]+)\}", about))
        assert named <= on_screen(where).keys(), where
        assert not re.search(r"\b(Enter|Esc|F\d|Ctrl)\b", about), where
        text = " ".join(" ".join(text_of(one) for one in help_lines(where, keys, 79)).split())
        assert "{" not in text, where
        assert ("F12" in text) == ("calculate" in on_screen(where)), where
    assert "F12 goes straight to the calculator" in " ".join(
        " ".join(text_of(one) for one in help_lines("book", keys, 79)).split()
    )


async def test_help_in_the_calculator_begins_with_the_field_in_hand_and_its_drawing(program: Program) -> None:
    async with program() as hands:
        await hands.press(*"bro", "f2", "?")
        text = hands.shown()
        assert "Land width" in text
        assert "How: Along the circle (arc)" in text
        assert all(line in text for line in FIGURES["land_width"])


async def test_the_glossary_shows_the_drawing_of_what_is_sought(program: Program) -> None:
    async with program() as hands:
        await hands.menu("words explained")
        await hands.press(*"helix", "space", *"angle")
        assert all(line in hands.shown() for line in FIGURES["helix_angle"])


async def test_a_family_without_a_calculation_is_told_where_to_look(book: Book, program: Program) -> None:
    odd = Entry("broach", "pull-broach", "Pull broach", "steel")
    row = Row("entry", odd.id, odd.title, odd.family, odd.work_material, search="pull broach")
    larger = replace(book, entries={**book.entries, odd.id: odd}, rows=Rows.of([*book.rows, row]))
    async with program(other=larger) as hands:
        await hands.press(*"broach", "f2")
        assert (
            "No calculation serves a pull broach; 'heelclear calc' lists all that there are." in hands.shown()
        )
