"""The list of what a line can hold, on cards and forms; and the way back from the setup sheet."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from typing import Any

import pytest

AtTheYard = Callable[..., AbstractAsyncContextManager[Any]]


async def test_back_from_the_setup_sheet_leads_to_the_card_and_the_key_on_the_sheet_still_prints(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        await hands.do("<f3>", "T-12-3", "<enter>", "<f7>", "<enter>")
        assert hands.app.screen.WHERE == "sheet"
        assert (await hands.do("<f7>")).startswith("Print: ")
        await hands.do("<f9>")
        assert hands.app.screen.WHERE == "sheet"
        shown = await hands.do("<f9>")
        assert hands.app.screen.WHERE == "card"
        assert "F8 opens it again; F7, then Enter, shows its setup sheet." in " ".join(shown.split())


async def test_a_closed_card_names_every_key_that_shows_its_sheet(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do("<f3>", "D-87", "<enter>")
        shown = await hands.do("<f8>", "close the card", "<enter>", "<down>", "<enter>")
        assert "is done, a record now. F7, then Enter, shows its setup sheet." in " ".join(shown.split())


async def test_the_ways_that_a_line_of_a_card_can_hold_stand_first_in_its_list_and_one_is_taken(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        shown = await hands.do("bronze spi", "<ctrl+f>", "<ctrl+n>", "<ctrl+n>", "<down>")
        hint = " ".join(shown.split())
        assert "Left, Right or the first letter (w again: the next with w) change it; F6 lists them." in hint
        listed = (await hands.do("<f6>")).splitlines()
        assert listed[0].startswith("Relief made by: one of these; then more lines")
        assert [one[2:20].strip() for one in listed[3:8]] == [
            "cam", "wheel head height", "tooth rest height", "inclined wheel", "work head",
        ]  # fmt: skip
        assert "Relief made by       tooth rest height" in await hands.do("tooth", "<enter>")


async def test_that_list_still_gives_one_more_line_and_so_does_that_of_a_number(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        await hands.do("bronze spi", "<ctrl+f>", "<ctrl+n>", "<ctrl+n>", "<down>")
        assert "> Body diameter" in await hands.do("<f6>", "body", "<enter>")
        hands.app.screen.form.go_to("wanted.rake_angle")
        shown = await hands.do("<f6>")
        assert shown.startswith("What else shall the tool have?")


async def test_a_choice_of_a_setting_and_the_unit_of_the_card_are_listed(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do("<f3>", "T-12-3", "<f8>", "same job", "<enter>", "<end>")
        form = hands.app.screen.form
        form.go_to("units")
        assert "Lengths in" in await hands.do("<f6>")
        assert "Lengths in           inches" in await hands.do("inch", "<enter>")
        form.open_calculation("lead-over-land")
        form.go_to("settings.lead-over-land.land_measured_as")
        listed = (await hands.do("<f6>")).splitlines()
        assert [one[2:20].strip() for one in listed[3:6]] == ["arc", "chord", ""]
        await hands.do("chord", "<enter>")
        assert form.card.settings["lead-over-land"].typed["land_measured_as"] == "chord"


@pytest.mark.parametrize("way", ["<end>", "<f6>"])
async def test_a_line_of_a_form_lists_what_it_can_hold_or_says_that_anything_may_be_typed(
    at_the_yard: AtTheYard, way: str
) -> None:
    async with at_the_yard() as hands:
        await hands.do("<f8>", "machines", "<enter>", "new wheel", "<enter>")
        if way == "<end>":
            assert "There is nothing to list for this line" in await hands.do("<f6>")
            return
        shown = await hands.do("<down>", "<down>")
        assert "F6 lists what this line can hold." in shown
        assert "type-1-straight" in await hands.do("<f6>")
        assert "> Shape             type-11-flaring-cup" in await hands.do("flaring", "<enter>")


async def test_a_field_of_a_calculation_lists_its_words_where_the_book_says_nothing_of_it(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        shown = await hands.do("reamer 12 h7", "<f2>")
        assert "Left and Right change it, F6 lists them." in " ".join(shown.split())
        assert (await hands.do("<f6>")).startswith("Tolerance of the hole")
        shown = await hands.do("h9", "<enter>")
        assert "> Tolerance of the hole H9           typed" in shown
        # Derived: the tolerance of grade 9 from 10 to 18 mm is 43 micrometres, as ISO 286-2 prints it.
        assert "12.043 mm" in shown


async def test_a_word_that_the_book_has_is_changed_in_the_book_as_before(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do("reamer 12 h7", "<f2>", "<f2>", "relief from an indicator", "<enter>")
        form = hands.app.screen.page.form
        form.focus = "relief_form"
        await hands.do("<f6>")
        assert hands.app.screen.WHERE != "pick"


async def test_another_surface_of_the_same_job_again_has_no_tolerance_of_the_first_and_gets_it_back(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        await hands.do("<f3>", "T-12-3", "<f8>", "same job", "<enter>")
        form = hands.app.screen.form
        (carried,) = {one.tolerance for key, one in form.card.after.items() if key == "drop"}
        assert carried
        form.go_to("wanted.surface")
        await hands.do("t")
        assert form.job.choice.surface == "thread-land"
        assert "drop" not in form.card.after
        await hands.do("<left>")
        assert form.job.choice.surface == "chamfer"
        assert form.card.after["drop"].tolerance == carried


async def test_where_the_calculations_of_a_job_are_is_said_by_the_name_of_the_step(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        shown = await hands.do("bronze spi", "<ctrl+f>", "<f2>")
        assert "those of the job are in the step Set." in " ".join(shown.split())
        assert " Set " in shown.splitlines()[1]
