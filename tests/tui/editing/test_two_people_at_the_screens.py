"""Somebody else changes the book while a person types: different things are joined, the same thing is asked about."""

from __future__ import annotations

import threading
from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

import pytest

from library.files.watching import Watch

Program = Callable[[], AbstractAsyncContextManager[Any]]
Files = Callable[[], dict[str, str]]

MINE_AND_THEIRS = [(("down", "enter"), "5 deg"), (("down", "down", "enter"), "9 deg")]


@pytest.fixture
def others(shop: Path) -> Callable[[str, str], None]:
    """Another person's hand in the shop's file: replaces one text by another."""

    def change(old: str, new: str) -> None:
        file = shop / "taps.toml"
        text = file.read_text()
        assert old in text
        file.write_text(text.replace(old, new))

    return change


async def _at_the_relief(hands: Any, typed: str = "5 deg") -> None:
    """The form of the bronze tap's relief, with a number typed."""
    await hands.open("bronze")
    await hands.choose("chamfer relief")
    await hands.type(typed)


async def test_a_change_of_another_key_between_looking_and_saving_is_kept_too(
    program: Program, files: Files, others: Callable[[str, str], None]
) -> None:
    async with program() as hands:
        await _at_the_relief(hands)
        await hands.press("ctrl+r")
        others('"Tap for brass"', '"Tap for brass, long"')
        assert "What others changed meanwhile is kept too." in await hands.press("enter")
    text = files()["taps.toml"]
    assert '"5 deg"' in text
    assert '"Tap for brass, long"' in text
    assert "# measured in May" in text


@pytest.mark.parametrize(("key", "kept"), MINE_AND_THEIRS)
async def test_the_same_value_between_looking_and_saving_is_asked_about(
    program: Program, files: Files, others: Callable[[str, str], None], key: tuple[str, ...], kept: str
) -> None:
    async with program() as hands:
        await _at_the_relief(hands)
        await hands.press("ctrl+r")
        others("'4 deg'", "'9 deg'")
        asked = await hands.press("enter")
        assert "Both of you changed this" in asked
        assert "chamfer relief angle of bronze-tap" in asked
        assert "It was" in asked
        assert "4 deg" in asked
        assert "5 deg" in asked
        assert "Yours here" in asked
        assert "Saved by somebody else, in taps.toml" in asked
        assert "> Leave it for now" in asked
        assert "Keep what is saved: chamfer relief angle of bronze-tap" in asked
        assert "9 deg" in asked
        assert "The same in all: source shop." in asked
        assert "'9 deg'" in files()["taps.toml"]
        assert "Saved." in await hands.press(*key)
        assert f"{kept}; the shop" in hands.shown()
    assert kept in files()["taps.toml"]


async def test_going_back_from_the_question_saves_nothing_and_loses_nothing(
    program: Program, files: Files, others: Callable[[str, str], None]
) -> None:
    async with program() as hands:
        await _at_the_relief(hands)
        await hands.press("ctrl+r")
        others("'4 deg'", "'9 deg'")
        theirs = files()
        await hands.press("enter")
        await hands.press("f9")
        await hands.press("f9")
        assert hands.field("Usual") == "5 deg"
        assert files() == theirs


@pytest.mark.parametrize(("key", "kept"), MINE_AND_THEIRS)
async def test_the_same_field_while_the_form_stood_open_is_asked_about_before_looking(
    program: Program, files: Files, others: Callable[[str, str], None], key: tuple[str, ...], kept: str
) -> None:
    async with program() as hands:
        await _at_the_relief(hands)
        others("'4 deg'", "'9 deg'")
        asked = await hands.press("ctrl+r")
        assert "chamfer relief angle usual of bronze-tap" in asked
        assert "'9 deg'" in files()["taps.toml"]
        after = await hands.press(*key)
        if kept == "5 deg":
            assert "Before saving" in after
            await hands.press("enter")
        else:
            assert "Nothing was changed" in after
            assert hands.field("Usual") == "9 deg"
    assert kept in files()["taps.toml"]


async def test_another_field_while_the_form_stood_open_needs_no_question(
    program: Program, files: Files, others: Callable[[str, str], None]
) -> None:
    async with program() as hands:
        await _at_the_relief(hands)
        others('source = "shop"}', 'source = "shop", note = "Look again."}')
        assert "Before saving" in await hands.press("ctrl+r")
        await hands.press("enter")
    assert """{usual="5 deg",   source = "shop", note = "Look again."}""" in files()["taps.toml"]


async def test_what_others_changed_is_noticed_and_taken_into_lines_that_nobody_touched(
    program: Program, others: Callable[[str, str], None]
) -> None:
    async with program() as hands:
        await _at_the_relief(hands)
        others('source = "shop"}', 'source = "shop", note = "Look again."}')
        hands.app.file_watch.look()
        await hands.settle()
        assert "Changed by somebody else: taps.toml. The book was read again." in hands.shown()
        assert hands.field("Usual") == "5 deg"
        assert hands.field("Note") == "Look again."
        others("'4 deg'", "'9 deg'")
        hands.app.file_watch.look()
        await hands.settle()
        assert "Somebody else changed usual while you type. Yours stays here" in hands.shown()
        assert hands.field("Usual") == "5 deg"


async def test_a_clock_looks_at_the_files_without_being_asked(
    program: Program, others: Callable[[str, str], None], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("tui.services.file_watch.EVERY", 0.05)
    async with program() as hands:
        others("'4 deg'", "'9 deg'")
        await hands.until(lambda: "Changed by somebody else: taps.toml." in hands.shown())


async def test_what_the_program_saves_itself_is_nobody_elses(program: Program, files: Files) -> None:
    async with program() as hands:
        await _at_the_relief(hands)
        await hands.press("ctrl+r")
        assert "Saved." in await hands.press("enter")
        hands.app.file_watch.look()
        await hands.settle()
        assert "somebody else" not in hands.shown()
    assert '"5 deg"' in files()["taps.toml"]


class SlowLook:
    """A look at the files that waits until it is let go, before it looks."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch) -> None:
        self.begun = threading.Event()
        self.let_go = threading.Event()
        self.count = 0
        looked = Watch.changed

        def changed(watch: Watch) -> tuple[Path, ...]:
            self.count += 1
            self.begun.set()
            assert self.let_go.wait(60)
            return looked(watch)

        monkeypatch.setattr(Watch, "changed", changed)


async def test_a_look_that_is_slower_than_a_save_blames_nobody_and_no_second_one_begins_meanwhile(
    program: Program, monkeypatch: pytest.MonkeyPatch
) -> None:
    async with program() as hands:
        await _at_the_relief(hands)
        await hands.press("ctrl+r")
        slow = SlowLook(monkeypatch)
        hands.app.file_watch.look()
        await hands.until(slow.begun.is_set)
        hands.app.file_watch.look()
        await hands.press_meanwhile("enter")
        await hands.until(lambda: "Saved." in hands.shown())
        slow.let_go.set()
        await hands.settle()
        assert slow.count == 1
        assert "Saved." in hands.shown()
        assert "somebody else" not in hands.shown()


async def test_what_is_seen_while_a_save_is_under_way_and_refused_in_the_end_is_told_at_the_next_look(
    program: Program, others: Callable[[str, str], None]
) -> None:
    begun, let_go = threading.Event(), threading.Event()

    def refused() -> None:
        begun.set()
        assert let_go.wait(60)
        raise OSError(5, "Input/output error")

    async with program() as hands:
        others("'4 deg'", "'9 deg'")
        hands.app.file_watch.look()
        hands.app.background.begin("Saving.", refused, lambda _: None)
        await hands.until(begun.is_set)
        await hands.until(lambda: hands.app.file_watch.has_untold)
        assert "somebody else" not in hands.shown()
        let_go.set()
        await hands.settle()
        assert "Input/output error" in hands.shown()
        hands.app.file_watch.look()
        await hands.settle()
        assert "Changed by somebody else: taps.toml." in hands.shown()


async def test_an_entry_that_others_took_out_is_told_of_and_its_screens_are_left(
    program: Program, shop: Path
) -> None:
    async with program() as hands:
        await hands.open("bronze")
        (shop / "taps.toml").write_text("schema = 1\n")
        hands.app.file_watch.look()
        await hands.settle()
        assert "taps.toml. The book was read again. This entry is not in the book any more." in hands.words()
        assert hands.app.screen.WHERE == "book"


async def test_what_is_typed_for_an_entry_that_others_took_out_stays(program: Program, shop: Path) -> None:
    async with program() as hands:
        await _at_the_relief(hands)
        (shop / "taps.toml").write_text("schema = 1\n")
        hands.app.file_watch.look()
        await hands.settle()
        assert hands.field("Usual") == "5 deg"
        assert "There is no entry 'bronze-tap' any more" in await hands.press("ctrl+r")


async def test_a_title_that_both_changed_is_asked_about(
    program: Program, files: Files, others: Callable[[str, str], None]
) -> None:
    async with program() as hands:
        await hands.open("bronze")
        await hands.choose("title")
        await hands.type(", mine")
        others('"Tap for bronze"', '"Tap for bronze, theirs"')
        asked = await hands.press("ctrl+r")
        assert "title of bronze-tap" in asked
        assert "Tap for bronze, mine" in asked
        assert "Tap for bronze, theirs" in asked
        await hands.press("down", "enter")
        await hands.press("enter")
    assert 'title = "Tap for bronze, mine"' in files()["taps.toml"]


async def test_taking_back_keeps_what_others_changed_since(
    program: Program, files: Files, others: Callable[[str, str], None]
) -> None:
    async with program() as hands:
        await _at_the_relief(hands)
        await hands.press("ctrl+r")
        await hands.press("enter")
        others('"Tap for brass"', '"Tap for brass, long"')
        await hands.press("f9", "f9", "f6")
        await hands.choose("take back")
        await hands.press("enter")
        assert "Takes back the last save: Taken back: bronze-tap" in await hands.type("take back")
        look = await hands.press("enter")
        assert "Done again: bronze-tap" in look
    text = files()["taps.toml"]
    assert "4 deg" in text
    assert '"Tap for brass, long"' in text


async def test_a_file_with_a_mistake_cannot_be_changed_and_says_where_it_is(
    program: Program, shop: Path, others: Callable[[str, str], None]
) -> None:
    async with program() as hands:
        await _at_the_relief(hands)
        others('source = "from memory"', 'source = "from memory')
        said = await hands.press("ctrl+r")
        assert "taps.toml, line 15" in " ".join(said.split())
        assert "Nothing can be changed in this file until that is fixed." in " ".join(said.split())
        assert hands.field("Usual") == "5 deg"
