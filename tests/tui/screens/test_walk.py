"""The way through the program from its start to the numbers, as a person takes it at 80x24."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from typing import Any

Program = Callable[..., AbstractAsyncContextManager[Any]]


async def test_the_book_opens_with_every_entry_and_the_keys_named(program: Program) -> None:
    async with program() as hands:
        text = hands.shown()
        assert "Hand tap, brass" in text
        assert "Twist drill, cast iron" in text
        assert "5 of 5" in text
        assert "F2 Calc" in text.splitlines()[-1]


async def test_typing_leaves_only_what_has_every_word(program: Program) -> None:
    async with program() as hands:
        await hands.press(*"steel", "space", *"sink")
        assert "Countersink 90 degrees" in hands.shown()
        assert "Step drill" not in hands.shown()
        await hands.press("ctrl+u")
        assert "Step drill" in hands.shown()


async def test_a_search_without_a_hit_says_what_to_do(program: Program) -> None:
    async with program() as hands:
        await hands.press(*"gear hob")
        assert "Ctrl+U" in hands.shown()
        await hands.press("enter")
        assert "no entry to open" in hands.shown()


async def test_painting_again_keeps_the_sentence_that_the_next_key_takes_away(program: Program) -> None:
    told = "There is nothing to compare on this screen."
    async with program() as hands:
        await hands.press("f8")
        assert told in await hands.press("ctrl+k")
        assert told in await hands.press("ctrl+l")
        assert told not in await hands.press("down")


async def test_an_entry_shows_values_sources_layers_cautions_and_notes(program: Program) -> None:
    async with program() as hands:
        await hands.press(*"bronze", "enter")
        text = hands.shown()
        assert "5 deg" in text
        assert "Keep [this] as it is." in text
        assert "CAUTION  Chips" in text
        assert "F4 in full" in text
        await hands.press("f4")
        assert "Chips are sharp." in hands.shown()
        assert "The maker's rating comes first." in hands.shown()


async def test_the_value_in_hand_is_marked_and_explained_under_the_values(
    program: Program,
) -> None:
    own = "The shop's own; the shipped book has 4 deg (2 deg to 6 deg)."
    async with program() as hands:
        await hands.press(*"bronze", "enter")
        assert own not in hands.shown()
        await hands.press("down", "down")
        assert in_hand(hands.lines()).startswith("> Thread land relief")
        assert own in hands.shown()
        assert "Source: this shop" in hands.shown()
        await hands.press("down")
        assert in_hand(hands.lines()).startswith("> Relief form")
        assert own not in hands.shown()
        await hands.press("up")
        assert own in hands.shown()


async def test_past_the_last_value_the_text_moves_and_comes_back_first(program: Program) -> None:
    async with program((80, 16)) as hands:
        await hands.press(*"bronze", "enter")
        head = hands.lines()[1:]
        note = next(place for place, line in enumerate(head) if line.startswith("NOTE"))
        await hands.press("down", "down", "down", "down")
        moved = hands.lines()[1:]
        assert in_hand(moved).startswith("> Relief form")
        assert not moved[note].startswith("NOTE")
        await hands.press("up")
        assert in_hand(hands.lines()).startswith("> Relief form")
        assert hands.lines()[1:][note].startswith("NOTE")


def in_hand(lines: list[str]) -> str:
    """The line with the mark."""
    return next(line for line in lines if line.startswith("> "))


async def test_from_the_list_to_the_answer_with_the_measured_land(program: Program) -> None:
    async with program() as hands:
        keys = [*"bro", "f2", *".2 in"]
        assert len(keys) <= 12
        await hands.press(*(("space" if key == " " else key) for key in keys))
        text = hands.shown()
        assert "Lead over the land" in text
        assert "0.216 mm" in text  # 3/4-10 with a land of 0.200 in: 0.0085 in; common practice, no source
        assert "typed" in text
        assert "book" in text
        assert "heel 30.56 0.216" in hands.words()  # 5.08 mm on a radius of 9.525 mm; derived
        assert "thread moves 0.216 mm along the axis" in text
        assert "Ring test" in text


async def test_switching_to_inches_keeps_what_was_typed_without_a_unit(program: Program) -> None:
    async with program() as hands:
        await hands.press(*"bro", "f2", *"5.08", "f5")
        text = hands.shown()
        assert "5.08 mm" in text
        assert "0.0085 in" in text


async def test_leaving_the_calculator_and_coming_back_keeps_what_was_typed(program: Program) -> None:
    async with program() as hands:
        await hands.press(*"bro", "f2", *"5.08", "f9", "f9")
        await hands.press(*"drill", "f9", *"bro", "f2")
        assert "5.08" in hands.shown()
        assert "0.216 mm" in hands.shown()


async def test_a_word_that_is_no_number_stays_and_its_sentence_stands_beside(program: Program) -> None:
    async with program() as hands:
        await hands.press(*"bro", "f2", *"wide")
        text = hands.shown()
        assert "wide" in text
        assert "fix" in text
        assert " FIX    Land width: 'wide'" in text
        await hands.press("ctrl+u")
        assert "needed" in hands.shown()


async def test_typing_over_a_value_of_the_book_and_emptying_it_brings_it_back(program: Program) -> None:
    async with program() as hands:
        await hands.press(*"bro", "f2", *["up"] * 9, *"1 in")
        assert "3/4 in" not in hands.shown()
        await hands.press("backspace", "backspace", "backspace", "backspace")
        assert "3/4 in" in hands.shown()


async def test_a_choice_turns_with_the_arrows_and_by_its_first_letter(program: Program) -> None:
    async with program() as hands:
        await hands.press(*"bro", "f2", *"5.08", "down", "right")
        assert "Land measured as chord" in hands.words()
        await hands.press("a")
        assert "Land measured as arc" in hands.words()


async def test_another_calculation_takes_over_what_was_typed(program: Program) -> None:
    async with program() as hands:
        await hands.press(*"bro", "f2", *"5.08", "f2", *"drop", "space", *"at", "enter")
        text = hands.shown()
        assert text.startswith("Indicator drop of the heel")
        assert "5.08" in text
        assert "heel 30.56 0.444" in hands.words()  # 5.08 mm x tan 5 deg; derived


async def test_every_screen_of_the_walk_can_be_left_without_escape(program: Program) -> None:
    async with program() as hands:
        for keys in (["enter"], ["f2"], ["f4"], ["f3"], ["?"], ["f8"], ["f6"], ["f2", "f2"]):
            await hands.press(*keys)
            await hands.press(*["f9"] * len(keys))
            assert "5 of 5" in hands.shown(), keys
        await hands.press("f9")
    assert hands.app.return_code == 0


async def test_problems_of_the_book_name_file_line_and_what_to_do(program: Program) -> None:
    async with program() as hands:
        assert "1 problem" in hands.shown()
        await hands.menu("problems")
        text = hands.shown()
        assert "own.toml, line 7, column 3" in text
        assert "Write 4 deg." in text


async def test_help_in_the_calculator_explains_its_quantities_and_its_keys(program: Program) -> None:
    async with program((80, 120)) as hands:
        await hands.press(*"bro", "f2", "?")
        text = hands.shown()
        assert "The width of the surface behind the" in text
        assert "Along the circle (arc)" in text
        assert "F6" in text


async def test_an_action_can_be_found_by_its_words_and_done(program: Program) -> None:
    async with program() as hands:
        await hands.press("f8", *"inches", "enter")
        assert hands.shown().splitlines()[0].endswith("in")
