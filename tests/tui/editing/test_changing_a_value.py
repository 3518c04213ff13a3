"""A recommended value is changed on its form, looked at, saved, and taken back to what was shipped."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

import pytest

Program = Callable[[], AbstractAsyncContextManager[Any]]
Files = Callable[[], dict[str, str]]


async def test_a_changed_number_is_looked_at_saved_and_shown_as_the_shops_own(
    program: Program, files: Files
) -> None:
    before = files()
    async with program() as hands:
        await hands.open("spiral")
        await hands.choose("rake")
        assert hands.field("Source") == "handbook"
        await hands.type("6 deg")
        assert hands.field("Usual") == "6 deg"
        assert hands.field("Source") == "shop"
        assert hands.field("Place in it") == ""
        look = await hands.press("ctrl+r")
        assert "Before saving: nothing is written yet" in look
        assert '+ id = "gun-tap"' in look
        assert files() == before
        after = await hands.press("enter")
        assert "Saved." in after
        assert "6 deg; the shop" in after
        entry = " ".join((await hands.press("f9")).split())
        assert "> Rake angle 6 deg P+" in entry
        assert "Source: this shop" in entry
        assert "the shipped book has 5 deg (3 deg to 8 deg)" in entry
    assert files() == before | {
        "changes.toml": (
            'schema = 1\n\n[[entry]]\nid = "gun-tap"\nrake_angle = { usual = "6 deg", source = "shop" }\n'
        )
    }


async def test_only_the_changed_part_of_the_line_changes_in_the_shops_file(
    program: Program, files: Files
) -> None:
    before = files()["taps.toml"]
    async with program() as hands:
        await hands.open("bronze")
        await hands.choose("chamfer relief")
        await hands.type("5 deg")
        await hands.press("ctrl+r")
        await hands.press("enter")
    assert files() == {"taps.toml": before.replace("'4 deg'", '"5 deg"')}


async def test_a_value_that_was_not_there_gets_the_shop_as_its_source(program: Program, files: Files) -> None:
    async with program() as hands:
        await hands.open("bronze")
        await hands.choose("land width")
        assert hands.field("Source") == ""
        await hands.type("1/8 in")
        assert hands.field("Source") == "shop"
        await hands.press("ctrl+r")
        await hands.press("enter")
    assert 'land_width = { usual = "1/8 in", source = "shop" }' in files()["taps.toml"]


async def test_the_place_of_a_value_of_the_shop_is_told_with_its_source(program: Program) -> None:
    async with program() as hands:
        await hands.open("spiral")
        await hands.choose("rake")
        await hands.do("6 deg", "<down>", "<down>", "<down>", "trials of May", "<ctrl+r>", "<enter>")
        await hands.do("<f9>")
        assert "Source: this shop, trials of May" in hands.words()


async def test_taking_the_number_back_takes_the_source_back_too(program: Program) -> None:
    async with program() as hands:
        await hands.open("spiral")
        await hands.choose("rake")
        await hands.type("6 deg")
        assert hands.field("Source") == "shop"
        assert [hands.field(end) for end in ("Min.", "Max.")] == ["", ""]
        assert "its range went with the old one" in hands.words()
        await hands.press(*["backspace"] * 5)
        await hands.type("5 deg")
        assert [hands.field(end) for end in ("Min.", "Max.")] == ["3 deg", "8 deg"]
        assert hands.field("Source") == "handbook"
        assert hands.field("Place in it") == "table 3"
        assert "Nothing was changed" in await hands.press("ctrl+r")


@pytest.mark.parametrize(("least", "most"), [("3 deg", "10 deg"), ("4 deg", "8 deg")])
async def test_one_number_that_the_book_has_too_does_not_bring_its_source_back(
    program: Program, least: str, most: str
) -> None:
    # The book has 3 to 8 degrees, 5 usual, of the handbook.
    async with program() as hands:
        await hands.open("spiral")
        await hands.choose("rake")
        await hands.do("6 deg", "<up>", least, "<down>", "<down>", most)
        assert [hands.field(end) for end in ("Min.", "Usual", "Max.")] == [least, "6 deg", most]
        assert [hands.field(said) for said in ("Source", "Place in it", "Note")] == ["shop", "", ""]


async def test_the_usual_number_of_the_book_leaves_a_range_that_was_typed(program: Program) -> None:
    async with program() as hands:
        await hands.open("spiral")
        await hands.choose("rake")
        await hands.do("6 deg", "<down>", "10 deg", "<up>", "<ctrl+u>", "5 deg")
        assert [hands.field(end) for end in ("Min.", "Usual", "Max.")] == ["", "5 deg", "10 deg"]
        assert hands.field("Source") == "shop"
        await hands.do("<down>", "8 deg")
        assert [hands.field(end) for end in ("Min.", "Usual", "Max.")] == ["3 deg", "5 deg", "8 deg"]
        assert hands.field("Source") == "handbook"


async def test_a_source_that_somebody_typed_is_left_alone(program: Program) -> None:
    async with program() as hands:
        await hands.open("spiral")
        await hands.choose("rake")
        await hands.type("6 deg")
        await hands.press("down", "down")
        await hands.type("from memory")
        await hands.press("up", "up", "right", "backspace")
        assert hands.field("Source") == "from memory"


async def test_what_is_wrong_is_told_at_each_key_and_cannot_be_saved(program: Program, files: Files) -> None:
    before = files()
    async with program() as hands:
        await hands.open("spiral")
        await hands.choose("rake")
        assert "! '6 mm' is given as a length. An angle is wanted" in await hands.type("6 mm")
        assert "Fix what is marked with !" in await hands.press("ctrl+r")
        assert "!" not in await hands.press("ctrl+u", *"6 deg")
        assert hands.field("Min.") == ""
        await hands.press("ctrl+u", *"2 deg", "up", *"3 deg")
        assert "! Usual is '2 deg', less than Min., which is '3 deg'." in hands.words()
    assert files() == before


async def test_a_number_without_a_unit_is_degrees_and_one_that_is_come_back_to_gives_way(
    program: Program, files: Files
) -> None:
    async with program() as hands:
        await hands.open("spiral")
        await hands.choose("rake")
        await hands.press(*"7", "down", "up", *"6")
        assert hands.field("Usual") == "6"
        await hands.press("ctrl+r", "enter")
    assert 'usual = "6 deg"' in files()["changes.toml"]


async def test_the_note_of_another_source_goes_with_it_and_comes_back_with_the_number(
    program: Program, shop: Path
) -> None:
    file = shop / "taps.toml"
    file.write_text(file.read_text().replace('"from memory" }', '"from memory", note = "Heard once." }'))
    async with program() as hands:
        await hands.open("tap for brass")
        await hands.choose("chamfer relief")
        await hands.press(*"9 deg")
        assert (hands.field("Source"), hands.field("Note")) == ("shop", "")
        await hands.press("ctrl+u", *"3 deg")
        assert (hands.field("Source"), hands.field("Note")) == ("from memory", "Heard once.")


async def test_a_published_source_needs_its_place(program: Program, files: Files) -> None:
    async with program() as hands:
        await hands.open("bronze")
        await hands.choose("chamfer relief")
        await hands.press("down", "down")
        await hands.type("handbok")
        assert "! There is no source 'handbok' in the book. Did you mean 'handbook'?" in hands.words()
        await hands.press("ctrl+u")
        assert "named without a place in it" in await hands.type("handbook")
        await hands.press("down")
        assert "!" not in await hands.type("table 9?")
        await hands.press("ctrl+r")
        await hands.press("enter")
    assert 'source = "handbook", place = "table 9?"' in files()["taps.toml"]


async def test_what_is_wrong_is_told_by_the_lines_of_the_form(program: Program) -> None:
    async with program() as hands:
        await hands.open("bronze")
        await hands.choose("chamfer relief")
        await hands.type("200 deg")
        assert "! Chamfer relief is 200 deg. It can be from" in hands.words()
        await hands.press("ctrl+u")
        await hands.type("8 +/- 1 deg")
        assert "Give Min. and Max. instead." in hands.words()
        await hands.press("ctrl+u")
        await hands.press("down", "down")
        await hands.press("ctrl+u")
        await hands.type("nobody")
        assert "Write shop, common practice, from memory, or the id of one that is there." in hands.words()
        assert "_" not in hands.words()
        assert "[[" not in hands.words()


async def test_a_choice_is_turned_with_the_arrows_and_by_its_first_letter(
    program: Program, files: Files
) -> None:
    async with program() as hands:
        await hands.open("spiral")
        await hands.choose("relief form")
        await hands.press("right")
        turned = hands.field("Usual")
        assert turned != "eccentric"
        await hands.press("left")
        assert hands.field("Usual") == "eccentric"
        await hands.type("f")
        assert hands.field("Usual").startswith("f")
        await hands.press("ctrl+r")
        await hands.press("enter")
    assert 'relief_form = { usual = "flat"' in files()["changes.toml"]


async def test_back_to_shipped_takes_the_shops_value_out_again(
    program: Program, files: Files, shop: Path
) -> None:
    (shop / "changes.toml").write_text(
        'schema = 1\n\n[[entry]]\nid = "gun-tap"\ntitle = "Our gun tap"\n'
        'rake_angle = { usual = "6 deg", source = "shop" }  # less chatter\n'
    )
    async with program() as hands:
        await hands.open("our gun")
        assert "the shipped 5 deg (3 deg to 8 deg) comes back" in await hands.type("back rake")
        look = await hands.choose("back rake")
        assert '- rake_angle = { usual = "6 deg", source = "shop" }  # less chatter' in look
        assert "5 deg (3 deg to 8 deg); shipped" in await hands.press("enter")
    assert files()["changes.toml"] == 'schema = 1\n\n[[entry]]\nid = "gun-tap"\ntitle = "Our gun tap"\n'


async def test_a_value_by_a_rule_is_changed_for_this_tool_alone_and_taken_back_to_the_rule(
    program: Program, files: Files, shipped: Path
) -> None:
    (shipped / "rules.toml").write_text(
        'schema = 1\n\n[[rule]]\nid = "gun"\ntitle = "gun taps"\nfamily = "tap"\nwhen = ["gun-tap"]\n'
        'flutes = { low = 2, usual = 3, high = 4, source = "common practice" }\n'
    )
    async with program() as hands:
        await hands.open("spiral")
        assert "3 (2 to 4); shipped, by the rule for gun taps." in await hands.type("flutes")
        await hands.press("ctrl+u")
        await hands.choose("flutes")
        await hands.type("4")
        await hands.press("ctrl+r")
        await hands.press("enter")
        assert 'flutes = { usual = 4, source = "shop" }' in files()["changes.toml"]
        await hands.press("ctrl+u")
        told = " ".join((await hands.type("back flutes")).split())
        assert "Takes the shop's 4 out; 3 (2 to 4) comes back, by the rule for gun taps." in told
        await hands.choose("back flutes")
        assert "3 (2 to 4); shipped, by the rule for gun taps." in await hands.press("enter")
    assert "flutes" not in files().get("changes.toml", "")


async def test_a_value_that_cannot_be_read_is_shown_as_it_stands_and_can_be_fixed(
    program: Program, files: Files, shop: Path
) -> None:
    file = shop / "taps.toml"
    file.write_text(file.read_text().replace("'4 deg'", "'4'"))
    async with program() as hands:
        await hands.open("bronze")
        form = await hands.choose("chamfer relief")
        assert "In taps.toml, line 8: '4' has no unit." in form
        assert hands.field("Usual") == "4"
        await hands.type("4 deg")
        assert "Both of you" not in await hands.press("ctrl+r")
        await hands.press("enter")
        assert hands.app.session.problem_count() == 0
    assert (
        'chamfer_relief_angle = {usual="4 deg",   source = "shop"}  # measured in May' in files()["taps.toml"]
    )


@pytest.mark.parametrize("key", ["right", "end", "left"])
async def test_a_part_of_a_value_can_be_changed_without_typing_all_of_it(program: Program, key: str) -> None:
    async with program() as hands:
        await hands.open("spiral")
        await hands.choose("rake")
        await hands.press(key)
        await hands.type(" 30 min")
        assert hands.field("Usual") == "5 deg 30 min"


async def test_looking_and_going_back_saves_nothing_and_keeps_what_was_typed(
    program: Program, files: Files
) -> None:
    before = files()
    async with program() as hands:
        await hands.open("spiral")
        await hands.choose("rake")
        await hands.type("6 deg")
        await hands.press("ctrl+r")
        await hands.press("f9")
        assert hands.field("Usual") == "6 deg"
    assert files() == before
