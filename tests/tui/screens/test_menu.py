"""The menu: everything that can be done on a screen, in its parts, found by typing and done by Enter."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from typing import Any

import pytest

from tui.actions import EVERYWHERE, actions_of
from tui.view.menu_page import ORDER

Program = Callable[..., AbstractAsyncContextManager[Any]]

HEADINGS = ("HERE: Heelclear: the book", "KEEP", "PROGRAM", "GO", "BOOK")


async def test_on_a_narrow_screen_the_parts_stand_under_each_other_and_the_rest_is_counted(
    program: Program,
) -> None:
    async with program((70, 24)) as hands:
        lines = (await hands.press("f8")).splitlines()
        assert lines[3].startswith(HEADINGS[0])
        assert lines[4] == "> Enter   open the entry"
        assert "  F5      millimetres or inches" in lines
        assert any("more lines: PgDn" in line for line in lines)
        await hands.press("end")
        lines = hands.shown().splitlines()
        assert "  F3      job cards" in lines
        assert not any("more line" in line for line in lines)


@pytest.mark.parametrize("size", [(80, 24), (100, 36)])
async def test_from_80_columns_they_stand_in_two_columns(program: Program, size: tuple[int, int]) -> None:
    async with program(size) as hands:
        lines = (await hands.press("f8")).splitlines()
        places = {}
        for heading in HEADINGS:
            (line,) = [one for one in lines if heading in one]
            places[heading] = line.index(heading)
        assert places[HEADINGS[0]] == places["KEEP"] == places["PROGRAM"] == 0
        assert places["GO"] == places["BOOK"] >= size[0] // 2 - 1


async def test_at_80_columns_the_menu_of_the_book_and_its_titles_stand_whole(program: Program) -> None:
    async with program() as hands:
        shown = await hands.press("f8")
        titles = [
            one.rpartition("  ")[2].strip() for line in shown.splitlines()[3:-4] for one in line.split(" │ ")
        ]
        assert not any(title.endswith("…") for title in titles[1:])


async def test_right_goes_to_the_column_beside_and_left_comes_back(program: Program) -> None:
    async with program() as hands:
        await hands.press("f8")
        assert any("> F3      job cards" in one for one in (await hands.press("right")).splitlines())
        assert any("> Enter   open the entry" in one for one in (await hands.press("left")).splitlines())
        # In what is sought they go from sign to sign.
        await hands.type("card")
        await hands.press("left", "x")
        assert "Find: carxd" in hands.shown()


@pytest.mark.depth
async def test_down_goes_through_every_line_once_and_the_foot_explains_each(program: Program) -> None:
    for size in ((80, 24), (120, 36), (60, 12)):
        async with program(size) as hands:
            await hands.press("f8")
            seen = []
            count = len(hands.app.screen.choices())
            for _ in range(count):
                (chosen,) = [
                    part[2:].strip()
                    for line in hands.lines()
                    for part in line.split(" │ ")
                    if part.startswith("> ")
                ]
                seen.append(chosen)
                await hands.press("down")
            assert len(set(seen)) == count, size
            assert any(one.endswith("leave the program") for one in seen), size


async def test_problems_drafts_words_machines_and_the_book_are_reached_from_it(program: Program) -> None:
    async with program() as hands:
        for words, where in (
            ("problems", "findings"),
            ("words explained", "glossary"),
            ("machines", "machines"),
            ("new tool", "form"),
            ("new family", "form"),
            ("share", "changes"),
            ("job cards", "cards"),
        ):
            await hands.menu(words)
            assert where == hands.app.screen.WHERE
            await hands.press("f9")
            assert hands.app.screen.WHERE == "book"
        assert "there is nothing to 'take back the last save'" in await hands.menu("take back")


@pytest.mark.parametrize("words", ["new tool", "new entry"])
async def test_a_new_entry_is_called_so_and_found_as_a_new_tool_too(program: Program, words: str) -> None:
    async with program() as hands:
        assert "> new entry" in " ".join((await hands.press("f8", *words)).split())
        await hands.press("enter")
        assert hands.lines()[0].startswith("New entry")
        await hands.press("f9", "f6")
        await hands.choose("new entry" if words == "new tool" else "new tool")
        assert hands.lines()[0].startswith("New entry")


async def test_what_is_counted_is_counted_in_it(program: Program) -> None:
    async with program() as hands:
        await hands.press("ctrl+t", "ctrl+t")
        assert "compare marked tools: 2" in await hands.press("f8")
        assert "problems in the book: 1" in await hands.type("problems")


async def test_the_keys_told_are_the_reader_s_own(program: Program) -> None:
    from tui.keys import keymap
    from tui.session import Session

    async with program(
        (80, 60), session=Session(keymap=keymap({"cards": ("ctrl+y",), "glossary": ("ctrl+b",)}))
    ) as hands:
        lines = (await hands.press("f8")).splitlines()
        assert any(line.endswith("  Ctrl+Y  job cards") for line in lines)
        assert any(line.endswith("  Ctrl+B  words explained") for line in lines)


@pytest.mark.parametrize("where", EVERYWHERE)
def test_every_action_stands_in_a_part_of_the_menu(where: Any) -> None:
    assert {one.group for one in actions_of(where)} <= set(ORDER)
    assert [one for one in actions_of(where) if one.group == "program"]


async def test_over_a_calculator_typing_finds_the_calculations_of_the_tool_too(program: Any) -> None:
    async with program() as hands:
        await hands.press("f2", "f8")
        assert "Wheel speed against its rating" not in hands.shown()
        await hands.type("wheel speed")
        assert "Wheel speed against its rating" in hands.shown()
        await hands.press("enter")
        assert hands.app.screen.WHERE == "calculator"
        assert hands.lines()[0].startswith("Wheel speed against its rating")
    async with program() as hands:
        await hands.press("f8", *"wheel speed")
        assert "Nothing here has" in hands.shown()


async def test_a_question_takes_no_letters_and_says_what_answers_it(program: Program) -> None:
    async with program() as hands:
        await hands.do("bronze", "<f2>", "12", "<f9>", "<ctrl+u>", "<f9>")
        assert "Leave the program?" in hands.shown()
        assert "Find:" not in hands.shown()
        # Words of the sentence beside the deed, as they come from a hand that types on, and those of the deed.
        for text in ("bronze", "leave"):
            shown = await hands.type(text)
            assert any(line.startswith("> Go back") for line in hands.lines()), text
            assert "Letters answer nothing here. Up and Down choose the answer, Enter gives it." in shown
        await hands.press("enter")
        assert "Leave the program?" not in hands.shown()


async def test_what_can_do_nothing_as_the_screen_stands_is_not_offered_and_told_when_it_is_sought(
    program: Program,
) -> None:
    async with program() as hands:
        assert "> " not in await hands.press("f8", *"all marks")
        assert "Here and now there is nothing" in hands.words()
        await hands.press("f9", "ctrl+t")
        assert "take all marks away" in await hands.press("f8", *"all marks")
        # A calculation of a tool that tells nothing for the book has no line for it.
        await hands.press("f9", "f2", "f8")
        titles = [one.name for one in hands.app.screen.choices()]
        assert "put into the book what was measured" not in titles
        assert "change the book's value" in titles


async def test_letters_on_a_page_say_which_key_leads_to_where_typing_finds(program: Program) -> None:
    async with program() as hands:
        shown = await hands.press("enter", *"ta")
        assert "Nothing is typed on this page; F9 goes back to the list, where typing finds." in shown
        shown = await hands.press("f2", "f4", "t")
        assert "Nothing is typed on this page; F9 goes back to the line in hand." in shown
        shown = await hands.press("f1", "t")
        assert "Nothing is typed on this page; F9 goes back." in shown
        await hands.press("f9", "f9", "f9", "f9")
        assert "5 of 5" in hands.shown()


@pytest.mark.depth
async def test_what_is_sought_as_a_whole_word_comes_before_what_has_it_inside_another(
    program: Program,
) -> None:
    async with program() as hands:
        shown = await hands.do("<ctrl+t>", "<f8>", "side")
        found = [one for one in shown.splitlines() if "marked tools" in one or "mark the entry" in one]
        assert ["compare" in one for one in found] == [True, False]
        assert found[0].startswith("> ")
