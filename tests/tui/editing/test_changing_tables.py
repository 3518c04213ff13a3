"""Entries and families are added, copied, renamed and taken out; texts of an entry are changed on one line."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

Program = Callable[[], AbstractAsyncContextManager[Any]]
Files = Callable[[], dict[str, str]]


async def test_a_new_entry_goes_into_the_file_of_its_family_and_is_chosen_in_the_list(
    program: Program, files: Files
) -> None:
    before = files()
    async with program() as hands:
        await hands.press("f6")
        await hands.choose("new entry")
        assert hands.field("Family") == "tap"
        await hands.press("down")
        await hands.type("Pipe tap, 1/4 NPT")
        assert hands.field("Id") == "pipe-tap-1-4-npt"
        await hands.press("down", "down")
        await hands.type("brass")
        assert '+ id = "pipe-tap-1-4-npt"' in await hands.press("ctrl+r")
        listed = await hands.press("enter")
        assert "Saved." in listed
        assert "> Tap          Pipe tap, 1/4 NPT" in listed
        assert hands.app.session.page.chosen.id == "pipe-tap-1-4-npt"
    added = '\n[[entry]]\nid = "pipe-tap-1-4-npt"\nfamily = "tap"\ntitle = "Pipe tap, 1/4 NPT"\nwork_material = "brass"\n'
    assert files() == {"taps.toml": before["taps.toml"] + added}


async def test_a_new_entry_is_chosen_even_where_the_find_line_would_hide_it(program: Program) -> None:
    async with program() as hands:
        await hands.type("bronze")
        await hands.press("f6")
        await hands.choose("new entry")
        await hands.press("down")
        await hands.type("Odd one")
        await hands.press("ctrl+r")
        listed = await hands.press("enter")
        assert "Find:" in listed
        assert "Find: bronze" not in listed
        assert "> Tap          Odd one" in listed


async def test_the_id_follows_the_title_until_somebody_types_one(program: Program) -> None:
    async with program() as hands:
        await hands.press("f6")
        await hands.choose("new entry")
        await hands.press("down")
        await hands.type("Tap A")
        await hands.press("down")
        await hands.type("-own")
        await hands.press("up")
        await hands.type("B")
        assert hands.field("Title") == "Tap AB"
        assert hands.field("Id") == "tap-a-own"


async def test_an_id_that_is_taken_or_cannot_be_is_refused_on_the_form(
    program: Program, files: Files
) -> None:
    before = files()
    async with program() as hands:
        await hands.press("f6")
        await hands.choose("new entry")
        await hands.press("down")
        await hands.type("Gun tap")
        assert "! There is an entry gun-tap already." in hands.shown()
        assert "Fix what is marked" in await hands.press("ctrl+r")
        await hands.press("down")
        assert "small letters, digits and hyphens only" in await hands.type(" A")
    assert files() == before


async def test_a_family_is_turned_with_the_arrows(program: Program, files: Files) -> None:
    async with program() as hands:
        await hands.press("f6")
        await hands.choose("new entry")
        await hands.press("right")
        assert hands.field("Family") == "twist-drill"
        await hands.type("t")
        assert hands.field("Family") == "tap"
        await hands.type("t")
        assert hands.field("Family") == "twist-drill"
        await hands.press("down")
        await hands.type("Short drill")
        await hands.press("ctrl+r")
        await hands.press("enter")
    assert 'id = "short-drill"\nfamily = "twist-drill"' in files()["twist-drill.toml"]


async def test_a_new_family_can_be_used_at_once(program: Program, files: Files) -> None:
    async with program() as hands:
        await hands.press("f6")
        await hands.choose("new family")
        await hands.type("Broaches")
        await hands.press("down", "down")
        await hands.type("They are pulled through.")
        await hands.press("ctrl+r")
        await hands.press("enter")
        await hands.choose("new entry")
        assert "broaches" in hands.shown()
    assert files()["families.toml"] == (
        'schema = 1\n\n[[family]]\nid = "broaches"\ntitle = "Broaches"\nwhat = "They are pulled through."\n'
    )


async def test_a_new_family_says_what_it_is_ground_like_or_its_surfaces(
    program: Program, files: Files
) -> None:
    async with program() as hands:
        await hands.press("f6")
        await hands.choose("new family")
        await hands.type("Spade drills")
        await hands.press("down", "down", "down")
        await hands.type("tt")
        assert hands.field("Ground like") == "twist-drill"
        await hands.press("down")
        await hands.type("lip, lnad")
        assert "There is no surface lnad; there are land, thread-land" in hands.shown()
        for _ in "lnad":
            await hands.press("backspace")
        await hands.type("land")
        await hands.press("ctrl+r")
        await hands.press("enter")
    assert files()["families.toml"].endswith(
        'title = "Spade drills"\nlike = "twist-drill"\nsurfaces = ["lip", "land"]\n'
    )


async def test_a_copy_of_a_shipped_entry_is_the_shops_own(program: Program, files: Files) -> None:
    async with program() as hands:
        await hands.open("spiral")
        await hands.choose("copy")
        assert hands.field("Id") == "gun-tap-ours"
        await hands.type(", ours")
        await hands.press("ctrl+r")
        listed = await hands.press("enter")
        assert "> Tap          Spiral-point tap, ours" in listed
    text = files()["taps.toml"]
    assert 'id = "gun-tap-ours"\nfamily = "tap"\ntitle = "Spiral-point tap, ours"' in text
    assert 'rake_angle = { low = "3 deg", usual = "5 deg", high = "8 deg", source = "handbook"' in text


async def test_another_id_keeps_every_remark_and_the_list_goes_with_it(
    program: Program, files: Files
) -> None:
    before = files()["taps.toml"]
    async with program() as hands:
        await hands.open("bronze")
        await hands.choose("another id")
        await hands.press("ctrl+u")
        await hands.type("bell-tap")
        await hands.press("ctrl+r")
        listed = await hands.press("enter")
        assert hands.app.session.page.chosen.id == "bell-tap"
        assert "> Tap          Tap for bronze" in listed
    assert files()["taps.toml"] == before.replace('"bronze-tap"', '"bell-tap"')


async def test_removing_an_own_entry_goes_back_to_the_list_and_can_be_taken_back(
    program: Program, files: Files
) -> None:
    before = files()
    async with program() as hands:
        await hands.open("bronze")
        await hands.choose("remove")
        listed = await hands.press("enter")
        assert "Saved. This entry is not in the book any more." in listed
        assert "Tap for brass" not in listed
        await hands.press("ctrl+u")
        assert "Tap for bronze" not in hands.shown()
        assert "bronze-tap" not in files()["taps.toml"]
        await hands.press("f6")
        assert "Takes back the last save: bronze-tap: removed" in await hands.type("take back")
        await hands.press("enter")
        said = await hands.press("enter")
        assert "Taken back." in said
        assert "Saved." not in said
        await hands.press("f9")
        assert "Tap for bronze" in hands.shown()
    assert files() == before


async def test_removing_the_shops_part_of_a_shipped_entry_leaves_the_shipped_one(
    program: Program, files: Files, shop: Path
) -> None:
    (shop / "changes.toml").write_text('schema = 1\n\n[[entry]]\nid = "gun-tap"\ntitle = "Our gun tap"\n')
    async with program() as hands:
        await hands.open("our gun")
        await hands.choose("remove")
        assert "Change Spiral-point tap" in await hands.press("enter")
    assert files()["changes.toml"] == "schema = 1\n"


async def test_title_other_words_and_cautions_are_changed_on_one_line(program: Program, files: Files) -> None:
    async with program() as hands:
        await hands.open("spiral")
        await hands.choose("title")
        await hands.type(" (ours)")
        await hands.press("ctrl+r")
        await hands.press("enter")
        await hands.choose("other words")
        await hands.type(", bull-nose tap")
        await hands.press("ctrl+r")
        await hands.press("enter")
        await hands.choose("cautions")
        await hands.type(", dusts")
        assert "The book has no caution dusts; it has eyes, dust." in hands.words()
        await hands.press("backspace")
        assert "no caution" not in hands.shown()
        await hands.press("ctrl+r")
        await hands.press("enter")
        await hands.press("f9", "f9", "ctrl+u")
        assert "Spiral-point tap (ours)" in await hands.type("bull-nose")
    assert files()["changes.toml"] == (
        'schema = 1\n\n[[entry]]\nid = "gun-tap"\ntitle = "Spiral-point tap (ours)"\n'
        'synonyms = ["gun tap", "bull-nose tap"]\ncautions = ["eyes", "dust"]\n'
    )


async def test_a_title_must_not_be_empty_but_other_words_may(program: Program, files: Files) -> None:
    async with program() as hands:
        await hands.open("spiral")
        await hands.choose("title")
        assert "must not be empty" in await hands.press("ctrl+u")
        await hands.press("f9")
        await hands.choose("other words")
        await hands.press("ctrl+u", "ctrl+r")
        await hands.settle()
        await hands.press("enter")
    assert "synonyms = []" in files()["changes.toml"]


async def test_notes_and_files_say_what_to_do_where_no_editor_is_named(program: Program) -> None:
    async with program() as hands:
        await hands.open("bronze")
        assert "Neither VISUAL nor EDITOR names an editor." in await hands.choose("notes")
        await hands.choose("editor taps.toml")
        assert "Neither VISUAL nor EDITOR names an editor." in hands.words()
        assert "it is line 4" in hands.words()


async def test_a_shipped_entry_has_no_file_of_the_shops_to_open_and_says_what_to_do(program: Program) -> None:
    async with program() as hands:
        await hands.open("spiral")
        await hands.choose("editor lines")
        assert "the file that came with the program is never changed" in hands.words()
        assert "copy the entry" in hands.words()


async def test_without_git_the_history_and_sharing_say_so_and_all_else_works(program: Program) -> None:
    async with program() as hands:
        await hands.open("spiral")
        await hands.choose("history")
        assert "no git work tree" in hands.words()
        await hands.press("f9", "f9", "f6")
        await hands.settle()
        assert "git init" in await hands.type("share") or "git init" in hands.words()
        assert "Pull" not in hands.shown()
