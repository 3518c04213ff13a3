"""Which pane has the keys after one has been elsewhere, and what the calculate key does from each."""

from __future__ import annotations

import pytest

from tests.tui.conftest import Hands, Program
from tui.screens.base_screen import BaseScreen


def place(hands: Hands) -> str:
    """The screen in front."""
    screen = hands.app.screen
    assert isinstance(screen, BaseScreen)
    return screen.WHERE


@pytest.mark.parametrize(
    "keys", [("<ctrl+f>", "<f9>"), pytest.param(("<f3>", "<f9>"), marks=pytest.mark.depth)]
)
async def test_back_from_the_job_cards_the_list_has_the_keys_whichever_pane_they_were_opened_from(
    program: Program, keys: tuple[str, ...]
) -> None:
    async with program((160, 40)) as hands:
        await hands.do("<tab>", "<tab>", *keys)
        assert place(hands) == "book"
        await hands.do("<ctrl+u>", "sink")
        assert hands.app.session.page.find.text == "sink"
        assert not hands.app.session.tools_typed_for()


@pytest.mark.depth
async def test_on_a_narrow_screen_one_comes_back_from_a_card_to_the_calculation(program: Program) -> None:
    async with program((80, 24)) as hands:
        await hands.do("<f2>", "<ctrl+f>", "<f9>")
        assert place(hands) == "calculator"


@pytest.mark.depth
async def test_among_panes_one_goes_back_to_the_one_that_one_came_from(program: Program) -> None:
    async with program((160, 40)) as hands:
        places = []
        for keys in (("<f2>", "<f9>"), ("<tab>", "<tab>", "<f9>"), ("<f9>",)):
            await hands.do(*keys)
            places.append(place(hands))
        assert places == ["book", "entry", "book"]
        assert len(hands.app.screen_stack) == 1


@pytest.mark.depth
async def test_the_title_of_the_calculation_says_what_the_key_does_from_here(program: Program) -> None:
    async with program((160, 40)) as hands:
        told = []
        for keys in ((), ("<enter>",), ("<f2>",)):
            await hands.do(*keys)
            told.append([one in hands.lines()[1] for one in ("F2 goes here", "F2 lists")])
        assert told == [[True, False], [True, False], [False, True]]
