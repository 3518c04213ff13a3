"""A job card on the screen: its steps, its lines, what stands beside them, and how it is kept."""

from __future__ import annotations

import tomllib
from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

import pytest

from library.cards.store import load
from tui.screens.base_screen import BaseScreen
from tui.view.lines import width_of

AtTheYard = Callable[..., AbstractAsyncContextManager[Any]]

A_TAP = ("bronze spi", "<ctrl+f>")


def cards_in(shop: Path) -> set[str]:
    return {path.stem for path in (shop / "cards").rglob("*.toml")}


async def test_one_key_begins_a_card_from_the_list_the_entry_and_the_calculator(
    at_the_yard: AtTheYard,
) -> None:
    for way in ((), ("<enter>",), ("<f2>",)):
        async with at_the_yard() as hands:
            await hands.do("bronze spi", *way)
            shown = await hands.do("<ctrl+f>")
            assert shown.startswith("New job card")
            assert "[Tool]" in shown
            assert "Taps" in shown
            assert "Aluminium bronze" in shown
            assert "3 deg" in await hands.do("<ctrl+n>", "<ctrl+n>")


async def test_what_was_typed_into_the_calculator_is_on_the_card(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do("bronze spi", "<f2>")
        form = hands.app.screen.page.form
        for key, text in (("diameter", "M12"), ("land_width", "3.2"), ("land_measured_as", "c")):
            form.focus = key
            await hands.do(text)
        await hands.do("<ctrl+f>")
        card = hands.app.screen.form.card
        assert card.tool.thread == "M12"
        assert card.received == {"land_width": ("3.2 mm",), "land_measured_as": ("chord",)}


async def test_enter_goes_on_to_what_is_wanted_and_down_to_every_line(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do(*A_TAP, "T-9", "<enter>")
        # The family stands between; it came from the entry, so Enter passes it.
        assert hands.app.screen.form.row.way == "tool.thread"
        await hands.do("<up>")
        assert hands.app.screen.form.row.way == "family"
        for _ in range(10):
            await hands.do("<down>")
        assert hands.app.screen.form.step == 1
        await hands.do("<ctrl+p>")
        assert hands.app.screen.form.step == 0


async def test_the_relief_that_was_found_follows_each_key(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do(
            *A_TAP,
            "<down>",
            "<down>",
            "M12",
            "<ctrl+n>",
            "<down>",
            "12 mm",
            "<down>",
            "2 mm",
            "<down>",
            "a",
            "<down>",
        )
        # atan(0.2 / 2) = 5.71 deg and atan(0.25 / 2) = 7.13 deg along an arc; derived.
        assert "5.71 deg" in await hands.do(".2 mm")
        assert "7.13 deg" in await hands.do(*["<left>"] * 3, "5")


async def test_a_problem_stands_under_its_line_and_in_full_at_the_foot_while_in_hand(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        await hands.do(*A_TAP, "<ctrl+n>", "<down>", "<down>")
        shown = await hands.do("3,2")
        assert "[Received!]" in shown
        assert "STOP  Land width: '3,2'" in shown.splitlines()[1]
        assert "STOP: '3,2' has a comma" in shown
        lines = (await hands.do("<down>")).splitlines()
        place = next(number for number, text in enumerate(lines) if text.startswith("  Land width"))
        assert "! '3,2' has a comma" in lines[place + 1]


async def test_a_changed_value_asks_for_its_reason_and_emptied_it_is_the_books_again(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        await hands.do(*A_TAP, "<ctrl+n>", "<ctrl+n>")
        hands.app.screen.form.go_to("wanted.rake_angle")
        shown = await hands.do("4 deg")
        assert "In the book                3 deg" in shown or "3 deg" in shown
        assert "why" in shown
        await hands.do("<down>", "it chipped")
        assert hands.app.screen.form.card.wanted["rake_angle"].reason == "it chipped"
        await hands.do("<up>", "<ctrl+u>")
        one = hands.app.screen.form.card.wanted["rake_angle"]
        assert (one.value, one.reason) == ("3 deg", "")


async def test_a_card_with_problems_is_saved_as_a_draft_and_never_refused(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        before = cards_in(hands.shop)
        shown = await hands.do(*A_TAP, "T-9", "<ctrl+n>", "<down>", "wide", "<ctrl+r>")
        assert "Saved as" in shown
        new = (cards_in(hands.shop) - before).pop()
        card = load(hands.shop, new).card
        assert not card.done
        assert card.received["diameter"] == ("wide",)


async def test_leaving_saves_what_was_typed_and_an_untouched_new_card_leaves_nothing(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        before = cards_in(hands.shop)
        await hands.do(*A_TAP, "<f9>")
        assert cards_in(hands.shop) == before
        shown = await hands.do("<ctrl+f>", "T-9", "<f9>")
        assert "is saved" in shown
        new = cards_in(hands.shop) - before
        assert len(new) == 1
        assert load(hands.shop, new.pop()).card.tool.name == "T-9"


async def test_a_card_is_not_closed_while_something_does_not_add_up_and_the_line_is_shown(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        shown = await hands.do(*A_TAP, "<ctrl+n>", "<down>", "wide", "<ctrl+n>", "<f8>", "close", "<enter>")
        assert "stays a draft" in shown
        assert hands.app.screen.form.row.way == "received.diameter"


async def test_a_closed_card_takes_no_typing_until_it_is_opened_again(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do("<f3>", "t-58", "<enter>")
        shown = await hands.do("x")
        assert "This card is closed" in shown
        asked = await hands.menu("reopen")
        assert asked.startswith("Open card 2026-04-22-01, T-58-1")
        await hands.press("enter")
        assert hands.app.screen.form.card.done
        await hands.menu("reopen")
        await hands.sure()
        await hands.do("x")
        assert hands.app.screen.form.card.tool.name == "T-58-1x"


async def test_doing_it_again_keeps_the_tool_and_empties_what_was_measured(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        shown = await hands.do("<f3>", "t-58", "<f8>", "the same job", "<enter>")
        assert shown.startswith("New job card: T-58-1")
        card = hands.app.screen.form.card
        assert card.again == "2026-04-22-01"
        assert card.received == {}
        assert "other card" in shown
        shown = " ".join((await hands.do("<ctrl+n>")).split())
        assert "Left with last time" in shown
        assert "2026-04-22-01" in shown
        assert "Indicator drop: 21, 22, 21, 21" in shown


async def test_lines_of_notes_are_lines_on_the_card(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do(
            *A_TAP, *["<ctrl+n>"] * 5, "First; why?", "<down>", "Second.", "<enter>", "25", "<enter>", "g"
        )
        card = hands.app.screen.form.card
        assert card.notes == "First; why?\nSecond."
        assert (card.minutes, card.result) == ("25", "good")


async def test_enter_goes_on_from_notes_as_from_every_line_and_the_hint_says_what_begins_another(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        # From an empty line Down goes on to the time spent, and so no other line is promised there.
        empty = " ".join((await hands.do(*A_TAP, *["<ctrl+n>"] * 5)).split())
        assert "Enter goes on." in empty
        assert "begins another line" not in empty
        assert "Down begins another line" in " ".join((await hands.do("Keep the blue wheel.")).split())
        await hands.do("<enter>", "25 min", "<enter>", "g")
        card = hands.app.screen.form.card
        assert (card.notes, card.minutes, card.result) == ("Keep the blue wheel.", "25 min", "good")


async def test_the_other_unit_of_length_keeps_what_was_typed(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do(*A_TAP, *["<ctrl+n>"] * 3)
        await hands.do("<down>", "<down>") if "stock" not in hands.app.screen.form.row.way else None
        hands.app.screen.form.go_to("settings.size-loss.stock_per_sharpening")
        await hands.do(".3", "<f5>")
        card = hands.app.screen.form.card
        assert card.units == "in"
        assert card.settings["size-loss"].typed["stock_per_sharpening"] == ".3 mm"


async def test_a_shop_without_a_machine_comes_to_the_form_of_a_new_one(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        (hands.shop / "machines.toml").unlink()
        hands.app.read_again("")
        await hands.settle()
        await hands.do(*A_TAP)
        hands.app.screen.form.go_to("machine")
        shown = await hands.do("<f6>")
        assert shown.startswith("New machine")


async def test_machines_wheels_families_and_quantities_can_be_picked_from_a_list(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        await hands.do(*A_TAP)
        hands.app.screen.form.go_to("wheel")
        assert "rated 25 m/s" in await hands.do("<f6>", "white")
        await hands.do("<enter>")
        assert hands.app.screen.form.card.wheel == "white-cup-100"
        await hands.do("<ctrl+n>", "<f6>", "helix angle", "<enter>", "15 deg")
        assert hands.app.screen.form.card.received["helix_angle"] == ("15 deg",)


async def test_a_calculation_that_rests_is_woken_and_one_can_be_left_out(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do(*A_TAP)
        hands.app.screen.form.go_to("rest")
        hands.app.screen.form.change_step(1)
        form = hands.app.screen.form
        form.go_to("settings.size-loss")
        await hands.do("<right>")
        assert form.card.settings["size-loss"].skipped
        assert "left out of the job; Right takes it in again." in hands.shown()
        await hands.do("<left>")
        assert "in the job again." in hands.shown()
        assert "size-loss" not in form.card.settings


@pytest.mark.depth
async def test_every_step_fits_at_every_size(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do("<f3>", "t-12", "<enter>")
        for _ in range(6):
            screen = hands.app.screen
            assert isinstance(screen, BaseScreen)
            for size in ((80, 24), (60, 20), (120, 36), (200, 60)):
                await hands.resize(*size)
                assert all(width_of(one) <= size[0] for one in screen.lines(*size)), size
                assert any(text.startswith((">", " >")) for text in hands.lines()), size
            await hands.do("<ctrl+n>")


async def test_no_size_is_too_small_to_go_on(at_the_yard: AtTheYard) -> None:
    async with at_the_yard(size=(1, 1)) as hands:
        await hands.do("<f3>", "<enter>")
        for size in ((1, 1), (3, 2), (20, 5)):
            await hands.resize(*size)
            for _ in range(6):
                await hands.do("<down>", "<pagedown>", "<ctrl+n>")
        assert hands.app.screen.WHERE == "card"


async def test_the_setup_sheet_is_shown_and_written_in_three_forms(
    at_the_yard: AtTheYard, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    out = tmp_path / "out"
    out.mkdir()
    monkeypatch.chdir(out)
    async with at_the_yard() as hands:
        shown = await hands.do("<f3>", "t-58", "<enter>", "<f7>", "<enter>")
        assert "Setup sheet 2026-04-22-01" in shown
        for kind in ("text", "markdown", "web"):
            assert "Written to" in await hands.do("<f7>", kind, "<enter>")
    written = {path.suffix: path.read_text() for path in out.iterdir()}
    assert set(written) == {".txt", ".md", ".html"}
    assert all("T-58-1" in text for text in written.values())
    assert "<svg" in written[".html"]


async def test_what_was_learned_goes_back_to_the_book_with_the_card_as_its_note(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        shown = await hands.do("<f3>", "d-87", "<enter>", "<f8>", "learned", "<enter>")
        assert "nothing is written yet" in shown
        await hands.do("<enter>")
        book = tomllib.loads((hands.shop / "ferry-yard.toml").read_text())
        entry = next(one for one in book["entry"] if one["id"] == "ferry-hatch-dowel-drill")
        assert entry["land_relief_angle"]["usual"] == "10 deg"
        assert entry["land_relief_angle"]["source"] == "shop"
        assert "2026-11-20-01" in entry["land_relief_angle"]["note"]
        await hands.settle()
        assert hands.app.screen.WHERE == "card"


async def test_left_and_right_take_the_ends_of_a_range_of_the_book(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do("second plug", "<ctrl+f>")
        form = hands.app.screen.form
        form.go_to("wanted.hook_angle")
        taken = []
        for _ in range(4):
            taken.append(form.card.wanted["hook_angle"].value)
            await hands.do("<right>")
        assert taken == ["5 to 15 deg", "5 deg", "10 deg", "15 deg"]
        assert form.card.wanted["hook_angle"].value == "5 to 15 deg"


async def test_the_line_behind_written_notes_is_not_counted_as_one_to_fill_in(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        assert "3 to fill in" in await hands.do(*A_TAP, *["<ctrl+n>"] * 5)
        assert "2 to fill in" in await hands.do("First; why?", "<down>")
        assert "2 to fill in" in await hands.do("Second.", "<down>")
