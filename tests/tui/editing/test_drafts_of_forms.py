"""What was typed and not saved is there again: in the same run, and after any end of the program."""

from __future__ import annotations

import itertools
import re
import tomllib
from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

import pytest

from library.drafts.draft import Draft
from library.drafts.draft_store import Drafts

Program = Callable[[], AbstractAsyncContextManager[Any]]
Files = Callable[[], dict[str, str]]


@pytest.fixture
def drafts(tmp_path: Path) -> Callable[[], list[dict[str, Any]]]:
    """Reads the drafts on the disk."""
    return lambda: [
        tomllib.loads(path.read_text()) for path in sorted((tmp_path / "state" / "drafts").glob("*.toml"))
    ]


async def _at_the_relief(hands: Any, typed: str = "5 deg") -> None:
    await hands.open("bronze")
    await hands.choose("chamfer relief")
    await hands.type(typed)


async def _leave_something_behind(program: Program, typed: str = "5 deg") -> None:
    async with program() as hands:
        await _at_the_relief(hands, typed)
        hands.app.autosave.keep_now()


async def test_a_draft_is_on_the_disk_half_a_second_after_the_first_key_although_typing_goes_on(
    program: Program, drafts: Callable[[], list[dict[str, Any]]]
) -> None:
    async with program() as hands:
        await _at_the_relief(hands, "")
        await hands.press("down", "down", "down", "down")
        typed = itertools.cycle("0123456789")

        def one_more_key_and_kept() -> bool:
            hands.send(next(typed))
            return bool(drafts())

        await hands.until(one_more_key_and_kept)
        kept = drafts()
        assert len(kept) == 1
        assert kept[0]["about"] == "bronze-tap.chamfer_relief_angle"
        assert kept[0]["fields"]["note"].startswith("01")
        assert kept[0]["started"]["usual"] == "4 deg"


async def test_a_form_that_is_left_and_opened_again_has_what_was_typed(program: Program) -> None:
    async with program() as hands:
        await _at_the_relief(hands)
        changes = await hands.press("f9")
        assert "Typed and not saved yet; Enter goes on with it." in changes
        form = await hands.choose("chamfer relief")
        assert "What you typed here before is back." in form
        assert hands.field("Usual") == "5 deg"
        await hands.press("ctrl+r")
        await hands.press("enter")
        await hands.choose("chamfer relief")
        assert "is back" not in hands.shown()


async def test_a_form_that_an_earlier_run_left_has_what_was_typed_when_it_is_opened_again(
    program: Program, drafts: Callable[[], list[dict[str, Any]]]
) -> None:
    await _leave_something_behind(program)
    async with program() as hands:
        await hands.until(lambda: hands.app.session.left_behind)
        await hands.open("bronze")
        assert "Typed and not saved yet; Enter goes on with it." in hands.words()
        await hands.choose("chamfer relief")
        assert "What you typed here before is back." in hands.words()
        assert hands.field("Usual") == "5 deg"
        assert hands.app.session.left_behind == []
    assert [one["fields"]["usual"] for one in drafts()] == ["5 deg"]


async def test_starting_over_puts_the_book_s_value_back_and_drops_the_draft(
    program: Program, drafts: Callable[[], list[dict[str, Any]]]
) -> None:
    async with program() as hands:
        await _at_the_relief(hands)
        hands.app.autosave.keep_now()
        assert len(drafts()) == 1
        asked = await hands.menu("start over")
        assert "Change chamfer relief" in asked.splitlines()[0]
        assert "> Go back" in asked
        assert "Usual: 5 deg" in hands.words() or "Usual: 5 deg" in await hands.press("down")
        await hands.press("f9")
        assert hands.field("Usual") == "5 deg"
        await hands.menu("start over")
        await hands.sure()
        assert hands.field("Usual") == "4 deg"
        assert drafts() == []
        assert "Nothing was changed" in await hands.press("ctrl+r")


async def test_saving_drops_the_draft(program: Program, drafts: Callable[[], list[dict[str, Any]]]) -> None:
    async with program() as hands:
        await _at_the_relief(hands)
        hands.app.autosave.keep_now()
        await hands.press("ctrl+r")
        await hands.press("enter")
        assert drafts() == []


async def test_the_next_start_offers_it_and_taking_it_up_goes_on_where_it_was_left(
    program: Program, files: Files, drafts: Callable[[], list[dict[str, Any]]]
) -> None:
    await _leave_something_behind(program)
    async with program() as hands:
        assert "1 unsaved" in hands.shown()
        listed = await hands.menu("unsaved")
        assert "Chamfer relief: Tap for bronze" in listed
        assert "usual: 5 deg (was 4 deg)" in listed
        await hands.press("enter")
        assert hands.field("Usual") == "5 deg"
        assert len(drafts()) == 1
        await hands.press("ctrl+r")
        await hands.press("enter")
        assert "Saved." in hands.shown()
        assert "unsaved" not in await hands.press("f9", "f9")
    assert '"5 deg"' in files()["taps.toml"]
    assert drafts() == []


async def test_a_spoilt_draft_is_told_of_at_the_start_and_the_others_are_offered(
    program: Program, tmp_path: Path
) -> None:
    await _leave_something_behind(program)
    spoilt = tmp_path / "state" / "drafts" / f"{'0' * 16}-{'1' * 16}.toml"
    spoilt.write_bytes(b"fields = " + b"[" * 20_000)
    async with program() as hands:
        await hands.until(lambda: "1 unsaved" in hands.shown())
        assert "A draft cannot be read" in hands.words()
        assert "Chamfer relief: Tap for bronze" in await hands.menu("unsaved")
    assert not spoilt.exists()


async def test_what_was_taken_up_and_not_saved_is_offered_again(program: Program) -> None:
    await _leave_something_behind(program)
    async with program() as hands:
        await hands.menu("unsaved")
        await hands.press("enter")
    async with program() as hands:
        assert "1 unsaved" in hands.shown()


async def test_comparing_shows_what_was_typed_what_stood_there_and_what_is_there_now(
    program: Program, shop: Path
) -> None:
    await _leave_something_behind(program)
    file = shop / "taps.toml"
    file.write_text(file.read_text().replace("'4 deg'", "'9 deg'"))
    async with program() as hands:
        await hands.menu("unsaved")
        await hands.press("ctrl+k")
        lines = [" ".join(line.split()) for line in hands.shown().splitlines()]
        assert "Typed 5 deg" in lines
        assert "When begun 4 deg" in lines
        assert "In the book now 9 deg" in lines
        assert "Somebody else changed it since" in hands.shown()
        await hands.press("enter")
        assert hands.field("Usual") == "5 deg"
        assert "chamfer relief angle usual of bronze-tap" in await hands.press("ctrl+r")


async def test_a_line_that_nobody_typed_in_is_not_put_back_to_its_old_state_by_a_draft(
    program: Program, files: Files, shop: Path
) -> None:
    await _leave_something_behind(program)
    file = shop / "taps.toml"
    file.write_text(file.read_text().replace('source = "shop"}', 'source = "shop", high = "12 deg"}'))
    async with program() as hands:
        await hands.menu("unsaved")
        await hands.press("enter")
        assert hands.field("Usual") == "5 deg"
        assert hands.field("Max.") == "12 deg"
        await hands.press("ctrl+r")
        await hands.press("enter")
    assert """{usual="5 deg",   source = "shop", high = "12 deg"}""" in files()["taps.toml"]


async def test_dropping_forgets_it_for_good(
    program: Program, drafts: Callable[[], list[dict[str, Any]]]
) -> None:
    await _leave_something_behind(program)
    async with program() as hands:
        await hands.menu("unsaved")
        asked = await hands.menu("discard")
        assert asked.startswith("Discard Chamfer relief: Tap for bronze?")
        assert "> Go back" in asked
        await hands.press("enter")
        assert len(drafts()) == 1
        await hands.menu("discard")
        assert "It is forgotten" in await hands.sure()
        assert "unsaved" not in hands.lines()[0]
        assert drafts() == []
        assert "there is nothing to 'unsaved, from before'" in await hands.menu("unsaved")


async def test_a_draft_of_another_book_stays_with_that_one(
    program: Program, tmp_path: Path, files: Files, drafts: Callable[[], list[dict[str, Any]]]
) -> None:
    other = tmp_path / "other"
    other.mkdir()
    there = Drafts(tmp_path / "state" / "drafts", book=other)
    there.keep(Draft("value", "bronze-tap.chamfer_relief_angle", {"usual": "5 deg"}, {"usual": "4 deg"}))
    there.close()
    before = files()
    async with program() as hands:
        await hands.menu("unsaved")
        said = " ".join((await hands.press("enter")).split())
        assert "typed in another book" in said
        assert len(drafts()) == 1
        # A folder that was moved asks nobody any more.
        other.rename(tmp_path / "moved")
        await hands.press("enter")
        assert hands.field("Usual") == "5 deg"
    assert files() == before


async def test_a_draft_about_something_that_is_gone_stays_and_says_so(
    program: Program, shop: Path, drafts: Callable[[], list[dict[str, Any]]]
) -> None:
    await _leave_something_behind(program)
    (shop / "taps.toml").write_text("schema = 1\n")
    async with program() as hands:
        await hands.menu("unsaved")
        assert "not in the book any more" in await hands.press("enter")
        await hands.press("ctrl+k")
        assert "not in the book any more" in hands.shown()
        assert "5 deg" in hands.shown()
        assert len(drafts()) == 1


@pytest.mark.depth
async def test_new_tables_and_texts_are_kept_too(program: Program) -> None:
    async with program() as hands:
        await hands.press("f6")
        await hands.choose("new entry")
        await hands.press("right", "down")
        await hands.type("Short drill")
        await hands.press("f9", "f9")
        await hands.open("spiral")
        await hands.choose("other words")
        await hands.type(", plug")
        await hands.press("f9")
        await hands.choose("copy")
        await hands.type(" B")
    async with program() as hands:
        assert "3 unsaved: F8" in hands.shown()
        await hands.menu("unsaved")
        await hands.choose("new entry")
        assert hands.field("Family") == "twist-drill"
        assert hands.field("Title") == "Short drill"
        assert hands.field("Id") == "short-drill"
        # The others are still there, so it is back to them.
        await hands.press("f9")
        await hands.choose("other words")
        assert hands.field("Other words") == "gun tap, plug"
        await hands.press("f9")
        await hands.choose("copy")
        assert hands.field("Title") == "Spiral-point tap B"


async def test_figures_of_the_last_tool_are_forgotten_at_an_orderly_end_and_kept_at_any_other(
    program: Program, drafts: Callable[[], list[dict[str, Any]]]
) -> None:
    async with program() as hands:
        await hands.type("bronze")
        await hands.press("f2")
        await hands.type("3.2")
        hands.app.autosave.keep_now()
        assert len(drafts()) == 1
    assert drafts() == []
    async with program() as hands:
        await hands.type("bronze")
        await hands.press("f2")
        await hands.type("3.2")
        hands.app.leave(143)
    assert len(drafts()) == 1
    async with program() as hands:
        await hands.menu("unsaved")
        await hands.press("enter")
        assert "3.2" in hands.shown()


async def test_a_disk_that_refuses_the_draft_is_told_of_once_and_typing_goes_on(
    program: Program, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "state").mkdir()
    (tmp_path / "state" / "drafts").write_text("no folder")
    async with program() as hands:
        await _at_the_relief(hands)
        await hands.until(lambda: "What you type is not kept as a draft." in hands.shown())
        asked = []
        refused = Drafts.keep

        def keep(self: Drafts, draft: Draft) -> None:
            asked.append(draft)
            refused(self, draft)

        monkeypatch.setattr(Drafts, "keep", keep)
        await hands.type(" 3")
        await hands.until(lambda: asked)
        await hands.settle()
        assert "not kept" not in hands.shown()
        assert hands.field("Usual") == "5 deg 3"


async def test_a_draft_that_was_left_behind_is_not_lost_when_the_disk_refuses_to_take_it_over(
    program: Program, drafts: Callable[[], list[dict[str, Any]]], monkeypatch: pytest.MonkeyPatch
) -> None:
    from library.errors import SaveError

    await _leave_something_behind(program)

    def full(self: Drafts, draft: object) -> None:
        raise SaveError("The disk is full.", Path("draft"))

    async with program() as hands:
        monkeypatch.setattr(Drafts, "keep", full)
        await hands.menu("unsaved")
        await hands.press("enter")
        assert "The disk is full." in hands.shown()
        assert hands.field("Usual") == "5 deg"
    assert len(drafts()) == 1


async def test_only_drafts_that_nobody_touched_for_long_are_put_away_from_the_list_of_the_book(
    program: Program, tmp_path: Path
) -> None:
    await _leave_something_behind(program)
    (new,) = (tmp_path / "state" / "drafts").glob("*.toml")
    old = new.with_name("0123456789abcdef-0123456789abcdef.toml")
    old.write_text(
        re.sub(r"kept = .*", "kept = 2020-02-03T04:05:06", new.read_text()).replace("bronze-tap", "brass-tap")
    )
    async with program() as hands:
        assert "2 unsaved" in hands.lines()[0]
        asked = await hands.press("f8", *"old drafts", "enter")
        assert "Tap for brass" in asked
        assert "2020-02-03" in asked
        assert "Tap for bronze" not in asked
        await hands.sure()
        assert "1 unsaved" in hands.lines()[0]
    assert new.exists()
    assert not old.exists()
